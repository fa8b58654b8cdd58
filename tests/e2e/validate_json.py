#!/usr/bin/python3
"""Validates JSON files against a JSON Schema: validate_json.py SCHEMA FILE.json..."""

import json
import sys

import jsonschema


def refuse_constant(name):
    raise ValueError(f"{name} is no JSON number")


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
        with open(path, encoding="utf-8") as file:
            content = json.load(file, parse_constant=refuse_constant)
        for error in validator.iter_errors(content):
            faults += 1
            place = ".".join(str(name) for name in error.absolute_path)
            print(f"{path}: {place}: {error.message}", file=sys.stderr)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
