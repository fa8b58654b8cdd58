#!/usr/bin/python3
"""Reads the STEP files of a design as text, with no kernel: read_step.py FOLDER

Every file names its schema without a stray dot (ISO 10303-21: letters, digits, underscores, then an object identifier in
braces); every part of its own has one product, the material that the parts list names, and a colour on its solid. What the
sheets state as plus-minus stands in the part's file, of which rounding in inches leaves three fifths at least, and every
position and squareness. Prints each fault and exits 1 when there is one, or when there is nothing to read.
"""

import csv
import pathlib
import re
import sys

import ezdxf

SCHEMA = re.compile(r"FILE_SCHEMA\(\('[A-Z0-9_]+( \{( ?\d+)+ ?\})?'\)\);")


def instances(text):
    """Entities of the data section by number: name and arguments as text; of a complex one all its names."""
    data = text[text.index("DATA;") + 5 : text.rindex("ENDSEC;")]
    found, quoted, start = {}, False, 0
    for at, character in enumerate(data):
        quoted ^= character == "'"
        if character == ";" and not quoted:
            entry = re.match(r"\s*#(\d+)\s*=\s*(.*)", data[start:at], re.S)
            found[int(entry[1])] = re.sub(r"\n\s*", "", entry[2])
            start = at + 1
    return found


def references(entity):
    return [int(number) for number in re.findall(r"#(\d+)", re.sub(r"'(?:[^']|'')*'", "''", entity))]


def of_kind(entities, kind):
    return {number: entity for number, entity in entities.items() if re.search(rf"(?:^|[( ]){kind}\(", entity)}


def material(entities):
    """Name behind the product's material property."""
    for number, entity in of_kind(entities, "PROPERTY_DEFINITION").items():
        if entity.startswith("PROPERTY_DEFINITION('material property','material name',"):
            for link in of_kind(entities, "PROPERTY_DEFINITION_REPRESENTATION").values():
                owner, values = references(link)
                if owner == number:
                    item = entities[references(entities[values])[0]]
                    return re.match(r"DESCRIPTIVE_REPRESENTATION_ITEM\('([^']*)'", item)[1]
    return None


def coloured(entities):
    solids = of_kind(entities, "MANIFOLD_SOLID_BREP")
    styled = [references(entity)[-1] for entity in of_kind(entities, "STYLED_ITEM").values()]
    return bool(solids) and set(solids) <= set(styled) and bool(of_kind(entities, "COLOUR_RGB"))


def measure(entity):
    """Millimetres; ISO 10303-41 has a kind of measure before the number."""
    typed = re.search(r"LENGTH_MEASURE\(([-+0-9.E]+)\)", entity)
    if typed is None:
        raise ValueError(f"no length: {entity}")
    return float(typed[1])


def plus_minus(entities):
    """(nominal, tolerance) of every size and distance that has limits of its own, mm."""
    nominal = {}
    for entity in of_kind(entities, "DIMENSIONAL_CHARACTERISTIC_REPRESENTATION").values():
        dimension, shape = references(entity)
        nominal[dimension] = measure(entities[references(entities[shape])[0]])
    found = []
    for entity in of_kind(entities, "PLUS_MINUS_TOLERANCE").values():
        limits, dimension = references(entity)
        if entities[limits].startswith("LIMITS_AND_FITS("):
            continue
        lower, upper = (measure(entities[number]) for number in references(entities[limits]))
        if abs(lower + upper) > 1e-9:
            raise ValueError(f"limits {lower} and {upper}")
        found.append((nominal[dimension], upper))
    return found


def zones(entities):
    """Kind and width of every tolerance of place and squareness, mm."""
    found = []
    for kind in ("POSITION_TOLERANCE", "PERPENDICULARITY_TOLERANCE"):
        for entity in of_kind(entities, kind).values():
            numbers = [entities[number] for number in references(entity)]
            found.append((kind, next(measure(one) for one in numbers if "LENGTH_MEASURE(" in one)))
    return sorted(found)


def decoded(text):
    return re.sub(r"\\U\+([0-9A-F]{4})", lambda found: chr(int(found[1], 16)), text)


def sheet_texts(folder, part):
    """All lettering of the part's sheets, that of dimensions included, and how many mm its unit has."""
    texts = []
    for path in sorted((folder / "drawings").glob("*.dxf")):
        if re.fullmatch(rf"{re.escape(part)}(-\d+)?", path.stem):
            document = ezdxf.readfile(path)
            unit = 25.4 if document.header["$INSUNITS"] == 1 else 1.0
            texts += [decoded(text.dxf.text) for text in document.modelspace().query("TEXT")]
            for dimension in document.modelspace().query("DIMENSION"):
                texts += [decoded(text.dxf.text) for text in dimension.get_geometry_block().query("TEXT")]
    return texts, unit


def sheet_faults(folder, part, entities):
    texts, unit = sheet_texts(folder, part)
    stated = plus_minus(entities)
    for text in texts:
        said = re.match(r"(?:\d+× )?[⌀]?([0-9.]+) ±([0-9.]+)", text)
        if said:
            value, by = float(said[1]) * unit, float(said[2]) * unit
            step = unit * 10.0 ** -len(said[1].partition(".")[2]) if "." in said[1] else unit
            if not any(abs(nominal - value) <= 0.51 * step and by <= limit + 1e-6 and by > 0.59 * limit
                       for nominal, limit in stated):
                yield f"the sheet's {text} is not in the file: {stated}"
    known = zones(entities)
    for kind, sign in (("POSITION_TOLERANCE", "⌖"), ("PERPENDICULARITY_TOLERANCE", "⟂")):
        on_sheet, in_file = texts.count(sign), sum(1 for one in known if one[0] == kind)
        if on_sheet != in_file:
            yield f"{on_sheet} of {sign} on the sheet, {in_file} in the file"


def main(folder):
    faults, read = [], 0
    with open(folder / "parts-list.csv", newline="", encoding="utf-8") as stream:
        rows = {row["name"]: row for row in csv.DictReader(stream)}
    for path in [folder / "assembly.step", *sorted((folder / "parts").glob("*.step"))]:
        text = path.read_text(encoding="ascii")
        if not SCHEMA.search(re.sub(r"\n\s*", "", text)):
            faults.append(f"{path.name}: {re.search('FILE_SCHEMA.*', text)[0]}")
        if path.name == "assembly.step":
            continue
        read += 1
        entities, part = instances(text), path.stem
        if material(entities) != rows[part]["material"]:
            faults.append(f"{path.name}: material {material(entities)}, not {rows[part]['material']}")
        if not coloured(entities):
            faults.append(f"{path.name}: no colour on its solid")
        faults += [f"{path.name}: {fault}" for fault in sheet_faults(folder, part, entities)]
    if read == 0:
        faults.append("no part to read")
    print("\n".join(faults))
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(pathlib.Path(sys.argv[1])))
