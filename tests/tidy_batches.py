#!/usr/bin/env python3
"""Reads sources with clang-tidy, many at a time: nine tenths of its time goes into the headers they share.

Usage: tidy_batches.py BUILD_FOLDER FILE...     BUILD_FOLDER holds compile_commands.json
Files that declare the same name outside their functions cannot be read as one; where a batch still does not
compile, its files are read one by one. Prints what is found; exit status 1 where anything is.
"""
import json
import os
import re
import shlex
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

MOST_FILES = 12  # of a batch: enough to share headers, few enough to keep all cores busy
TIDY = ["clang-tidy-14", "--quiet", "--warnings-as-errors=*"]


def declared(text):
    """Names that stand at the left margin: functions, constants and types of a file, mostly its own."""
    names = set()
    for line in text.splitlines():
        if not line or line[0] in " }#/" or line.startswith(("namespace", "using namespace")):
            continue
        words = re.findall(r"[A-Za-z_]\w*", re.split(r"[({=;\[]", line, maxsplit=1)[0])
        names.update(words[1:2] if words[:1] in (["struct"], ["class"], ["enum"]) else words[-1:])
    return names


def batches(files):
    found = []
    for file in sorted(files):
        names = declared(Path(file).read_text())
        batch = next((b for b in found if len(b["files"]) < MOST_FILES and not names & b["names"]), None)
        if batch is None:
            batch = {"files": [], "names": set()}
            found.append(batch)
        batch["files"].append(file)
        batch["names"] |= names
    return [batch["files"] for batch in found]


def flags(files, commands):
    """What the files are compiled with, all of it once."""
    kept = {}
    for file in files:
        words = iter(shlex.split(commands[os.path.abspath(file)]))
        for word in words:
            if word in ("-isystem", "-include"):
                kept[(word, next(words))] = None
            elif word.startswith(("-I", "-D", "-std=")):
                kept[(word,)] = None
    return [word for words in kept for word in words]


def read(arguments):
    done = subprocess.run(arguments, capture_output=True, text=True)
    return done.returncode, done.stdout


def tidy(build, number, files, commands):
    together = build / "batches" / f"{number}.cpp"
    together.write_text("".join(f'#include "{os.path.abspath(file)}"\n' for file in files))
    status, found = read([*TIDY, f"--config-file={os.path.abspath('.clang-tidy')}",
                          "--checks=-bugprone-suspicious-include", f"--header-filter={os.getcwd()}/(src|include)/",
                          str(together), "--", *flags(files, commands)])
    if "clang-diagnostic-error" not in found:
        return status, found
    alone = [read([*TIDY, "-p", str(build), file]) for file in files]
    return max(status for status, _ in alone), "".join(text for _, text in alone)


def main(build, files):
    commands = {entry["file"]: entry["command"] for entry in json.loads((build / "compile_commands.json").read_text())}
    (build / "batches").mkdir(exist_ok=True)
    with ThreadPoolExecutor(os.cpu_count()) as workers:
        answers = list(workers.map(lambda b: tidy(build, b[0], b[1], commands), enumerate(batches(files))))
    sys.stdout.write("".join(text for _, text in answers))
    return max((status for status, _ in answers), default=0)


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1]), sys.argv[2:]))
