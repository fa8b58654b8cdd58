#!/usr/bin/python3
"""Checks that every source file includes only what its floor may: check_floors.py PROJECT_FOLDER | --self-test

A floor includes itself and the floors listed for it; the geometry kernel, the YAML library and printing stay where
they belong. Prints each breach as FILE:LINE: reason and exits 1 when there is one.
"""

import pathlib
import re
import sys

BELOW = {
    "units": set(),
    "files": set(),
    "letters": {"files"},
    "standards": {"units"},
    "job": {"units", "files", "standards"},
    "fixture": {"units", "files", "standards", "job"},
    "gas": {"units", "files", "standards", "job", "fixture"},
    "flow": {"units", "files", "standards", "job", "fixture", "gas"},
    "heat": {"units", "files", "standards", "job", "fixture"},
    "solids": {"units", "files", "standards", "job", "fixture"},
    "checks": {"units", "files", "standards", "job", "fixture", "gas", "heat"},
}
BELOW["drawing"] = BELOW["exchange"] = BELOW["report"] = set(BELOW)
BELOW["pages"] = set(BELOW)
BELOW["html"] = {"units", "files", "standards", "job", "fixture", "gas", "heat", "checks", "report"}
BELOW["dxf"] = set(BELOW) - {"html"}
BELOW["study"] = set(BELOW) - {"letters", "solids", "drawing", "exchange", "pages", "html", "dxf"}
BELOW["watch"] = BELOW["study"] | {"study"}
BELOW["cli"] = set(BELOW) - {"dxf"}
BELOW["solids_main"] = set(BELOW)  # the one program that joins dxflib

KERNEL_FLOORS = {"solids", "drawing", "exchange"}
YAML_FLOORS = {"job"}
GPL_FLOORS = {"dxf"}
PRINTING_FLOORS = {"cli"}

INCLUDE = re.compile(r'^\s*#\s*include\s*([<"])([^>"]+)[>"]')
PRINTING = re.compile(r"std::(cout|cerr|clog)\b|\b(?:std::)?(v?f?printf|puts|putchar)\s*\(|fmt::v?print\s*\(")
STRINGS = re.compile(r'"(?:[^"\\\n]|\\.)*"')


def without_comments(text):
    text = re.sub(r"/\*.*?\*/", lambda m: "\n" * m.group().count("\n"), text, flags=re.S)
    return re.sub(r"//[^\n]*", "", text)


def included_floor(name):
    parts = pathlib.PurePosixPath(name.removeprefix("purgewright/")).parts
    return parts[0] if len(parts) > 1 and parts[0] in BELOW else None


def include_fault(floor, quote, name):
    other = included_floor(name)
    if other and other != floor and other not in BELOW[floor]:
        return f"{floor} may not include {other}"
    if quote == '"' and ".." in pathlib.PurePosixPath(name).parts:
        return "an include path climbs out of its folder"
    if (name.endswith(".hxx") or name.startswith("opencascade/")) and floor not in KERNEL_FLOORS:
        return f"{floor} may not include the geometry kernel"
    if name.startswith("yaml-cpp/") and floor not in YAML_FLOORS:
        return f"{floor} may not include the YAML library"
    if name.startswith("dxflib/") and floor not in GPL_FLOORS:
        return f"{floor} may not include dxflib, which is under the GPL"
    if name in ("iostream", "print") and floor not in PRINTING_FLOORS:
        return f"{floor} may not print"
    return None


def faults(floor, text):
    for number, line in enumerate(without_comments(text).splitlines(), 1):
        include = INCLUDE.match(line)
        if include:
            fault = include_fault(floor, *include.groups())
            if fault:
                yield number, f"{fault}: {include.group(2)}"
        elif floor not in PRINTING_FLOORS and PRINTING.search(STRINGS.sub('""', line)):
            yield number, f"{floor} may not print: {line.strip()}"


def floor_of(path, top):
    inside = path.relative_to(top).parts
    if len(inside) == 1:  # the programs
        return "solids_main" if inside[0] == "solids_main.cpp" else "cli"
    return inside[0]


def check(project):
    count, broken = 0, 0
    for top in (project / "include" / "purgewright", project / "src"):
        for path in sorted(top.rglob("*.[ch]pp")):
            floor = floor_of(path, top)
            if floor not in BELOW:
                print(f"{path}: unknown floor {floor}", file=sys.stderr)
                broken += 1
                continue
            count += 1
            for number, fault in faults(floor, path.read_text(encoding="utf-8")):
                print(f"{path}:{number}: {fault}", file=sys.stderr)
                broken += 1
    if count == 0:
        print(f"{project}: no sources found", file=sys.stderr)
        return 1
    return 1 if broken else 0


def self_test():
    bad = [
        ("units", '#include "purgewright/job/job.hpp"'),
        ("fixture", '#include "gas/require.hpp"'),
        ("gas", '#include "purgewright/solids/parts.hpp"'),
        ("solids", '#include "purgewright/gas/purge.hpp"'),
        ("checks", '#include "purgewright/solids/parts.hpp"'),
        ("report", '#include "purgewright/cli/run.hpp"'),
        ("fixture", "#include <TopoDS_Shape.hxx>"),
        ("report", "#include <gp_Pnt.hxx>"),
        ("fixture", "#include <yaml-cpp/yaml.h>"),
        ("drawing", "#include <dxflib/dl_dxf.h>"),
        ("drawing", '#include "purgewright/dxf/writer.hpp"'),
        ("cli", '#include "purgewright/dxf/writer.hpp"'),
        ("solids", "#include <iostream>"),
        ("report", 'void f() { std::cout << "x"; }'),
        ("report", 'void f() { fmt::print("x"); }'),
        ("gas", 'void f() { printf("x"); }'),
        ("job", '#include "../fixture/parts.hpp"'),
    ]
    good = [
        ("job", "#include <yaml-cpp/yaml.h>"),
        ("solids", "#include <TopoDS_Shape.hxx>"),
        ("dxf", "#include <dxflib/dl_dxf.h>"),
        ("dxf", '#include "purgewright/drawing/sheet.hpp"'),
        ("cli", "#include <iostream>"),
        ("checks", '#include "purgewright/gas/purge.hpp"'),
        ("exchange", '#include "purgewright/solids/parts.hpp"'),
        ("report", "// never std::cout\n/* printf(1) */ auto a = \"std::cout printf(\";"),
        ("report", "auto t = fmt::format(1); std::snprintf(a);"),
    ]
    wrong = [item for item in bad if not list(faults(*item))]
    wrong += [item for item in good if list(faults(*item))]
    for floor, text in wrong:
        print(f"wrong verdict on {floor}: {text}", file=sys.stderr)
    return 1 if wrong else 0


def main():
    if len(sys.argv) != 2:
        print(__doc__, file=sys.stderr)
        return 2
    return self_test() if sys.argv[1] == "--self-test" else check(pathlib.Path(sys.argv[1]))


if __name__ == "__main__":
    sys.exit(main())
