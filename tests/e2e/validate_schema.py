#!/usr/bin/python3
"""Validates job files against the job schema: validate_schema.py SCHEMA JOB.yaml..."""

import json
import sys

import jsonschema
import yaml


def main() -> int:
    if len(sys.argv) < 3:
        print(__doc__, file=sys.stderr)
        return 2
    with open(sys.argv[1], encoding="utf-8") as file:
        schema = json.load(file)
    jsonschema.Draft202012Validator.check_schema(schema)
    validator = jsonschema.Draft202012Validator(schema)
    faults = 0
    for path in sys.argv[2:]:
        try:
            with open(path, encoding="utf-8") as file:
                job = yaml.safe_load(file)
        except (yaml.YAMLError, UnicodeDecodeError) as error:
            faults += 1
            print(f"{path}: {error}", file=sys.stderr)
            continue
        for error in validator.iter_errors(job):
            faults += 1
            place = ".".join(str(name) for name in error.absolute_path)
            print(f"{path}: {place}: {error.message}", file=sys.stderr)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
