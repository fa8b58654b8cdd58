#!/usr/bin/python3
"""Reads the drawings of a design with readers of other makers:
read_drawings.py FOLDER WIDTH_MM HEIGHT_MM [LARGER_WIDTH_MM LARGER_HEIGHT_MM]

Every DXF passes ezdxf's audit, its entities lie within the sheet at the scale that the title block states, and each of its
dimensions measures, by ezdxf, the number that the sheet prints; every PDF has pages of the sheet's size, embedded
fonts and the numbers that its DXF dimensions carry; every SVG is well-formed and of the sheet's size. Most parts have the
first size, one that it cannot show legibly the larger one. all.pdf holds every page of the others. Every made part of
the parts list has a sheet that names the same stock. Prints each fault and exits 1 when there is one, or when there is nothing to read.
"""

import csv
import pathlib
import re
import subprocess
import sys
import xml.etree.ElementTree

import ezdxf
from ezdxf import bbox

POINTS_PER_MM = 72 / 25.4
# cairo writes sizes of pages with six digits.
SIZE_TOLERANCE_MM = 0.01


def run(*command):
    return subprocess.run(command, check=True, capture_output=True, text=True).stdout


def squeezed(text):
    return re.sub(r"\s+", "", text)


def decoded(text):
    return re.sub(r"\\U\+([0-9A-F]{4})", lambda found: chr(int(found.group(1), 16)), text)


def title_block(document, field):
    """The text that follows a field's name in the title block."""
    texts = [decoded(entity.dxf.text) for entity in document.modelspace().query("TEXT")]
    return texts[texts.index(field) + 1]


def full_size(document):
    """Drawing units of a millimetre of paper: the part stands in the file at full size, the sheet's frame is scaled."""
    paper, part = title_block(document, "Scale").split(":")
    inches = title_block(document, "Dimensions in") == "inches"
    if document.header["$INSUNITS"] != (1 if inches else 4):
        raise ValueError(f"$INSUNITS is {document.header['$INSUNITS']}")
    return float(part) / float(paper) / (25.4 if inches else 1.0)


def printed(dimension):
    """The sheet's own text in the dimension's picture."""
    return decoded(next(text.dxf.text for text in dimension.get_geometry_block().query("TEXT")))


def dimension_faults(dimension):
    """Whoever measures in the file gets the number that stands on the sheet, with its text round it."""
    override = dimension.override()
    measured = dimension.get_measurement() * override.get("dimlfac", 1.0)
    before, after = (decoded(part) for part in dimension.dxf.text.split("<>"))
    text = printed(dimension)
    if not (text.startswith(before) and text.endswith(after)):
        yield f"'{dimension.dxf.text}' is not the printed '{text}'"
        return
    number = text[len(before):len(text) - len(after)]
    decimals = override.get("dimdec")
    if abs(measured - float(number)) > 0.5 * 10.0 ** -decimals + 1e-6:
        yield f"measures {measured}, the sheet says {number}"
    if abs(measured - dimension.dxf.actual_measurement) > 1e-6:
        yield f"states {dimension.dxf.actual_measurement}, measures {measured}"
    shown = f"{measured:.{decimals}f}"
    zeros = override.get("dimzin")
    shown = re.sub(r"\.?0+$", "", shown) if zeros & 8 and "." in shown else shown
    shown = re.sub(r"^0\.", ".", shown) if zeros & 4 else shown
    tie = abs(measured * 10.0 ** decimals % 1.0 - 0.5) < 1e-5  # either neighbour is right
    if shown != number and not tie:
        yield f"a reader shows {shown}, the sheet says {number}"


def dxf_faults(path, paper):
    document = ezdxf.readfile(path)
    size = tuple(full_size(document) * length for length in paper)
    for dimension in document.modelspace().query("DIMENSION"):
        yield from dimension_faults(dimension)
    auditor = document.audit()
    for error in auditor.errors + auditor.fixes:
        yield f"audit: {error.code} {error.message}"
    if document.dxfversion < "AC1015":
        yield f"version {document.dxfversion} is older than R2000"
    space = document.modelspace()
    box = bbox.extents(space)
    least, greatest = box.extmin, box.extmax
    if least.x < -1e-6 or least.y < -1e-6 or greatest.x > size[0] + 1e-6 or greatest.y > size[1] + 1e-6:
        yield f"entities reach {least} to {greatest}, sheet {size}"
    # The centring marks run from edge to edge of the sheet.
    if abs(greatest.x - least.x - size[0]) > 1e-6 or abs(greatest.y - least.y - size[1]) > 1e-6:
        yield f"entities span {greatest - least}, sheet {size}"
    for name, corner in (("$EXTMIN", (0, 0)), ("$EXTMAX", size)):
        if any(abs(a - b) > 1e-6 for a, b in zip(document.header[name], corner)):  # of the scaled sheet
            yield f"{name} is {document.header[name]}"
    layers = {layer.dxf.name for layer in document.layers}
    for entity in space:
        if entity.dxf.layer not in layers:
            yield f"{entity.dxftype()} on unknown layer {entity.dxf.layer}"


def dxf_numbers(path):
    """Texts of all dimensions and of all lettering, as the sheet shows them."""
    for entity in ezdxf.readfile(path).modelspace():
        if entity.dxftype() == "DIMENSION":
            yield printed(entity)
        elif entity.dxftype() == "TEXT":
            yield decoded(entity.dxf.text)


def pdf_faults(path, sheets, size):
    pages = int(re.search(r"Pages:\s+(\d+)", run("pdfinfo", path)).group(1))
    if pages != len(sheets):
        yield f"{pages} pages for {len(sheets)} sheets"
    for page, found in enumerate(re.findall(r"size:\s+([\d.]+) x ([\d.]+)", run("pdfinfo", "-l", "99", path)), 1):
        if any(abs(float(a) / POINTS_PER_MM - b) > SIZE_TOLERANCE_MM for a, b in zip(found, size)):
            yield f"page {page} is {found} points"
    fonts = run("pdffonts", path).splitlines()[2:]
    if not fonts or any(line.split()[-5] != "yes" for line in fonts):
        yield f"fonts are not embedded: {fonts}"
    text = squeezed(run("pdftotext", "-raw", path, "-"))
    dimensioned = any(ezdxf.readfile(sheet).modelspace().query("DIMENSION") for sheet in sheets)
    if not dimensioned and path.stem != "assembly":  # balloons instead
        yield "no dimension on any sheet"
    for sheet in sheets:
        for wanted in dxf_numbers(sheet):
            if squeezed(wanted) not in text:
                yield f"{sheet.name} says {wanted}, the pages do not"


def svg_faults(path, size):
    root = xml.etree.ElementTree.parse(path).getroot()
    if root.tag != "{http://www.w3.org/2000/svg}svg":
        yield f"root is {root.tag}"
        return
    for name, wanted in zip(("width", "height"), size):
        number = re.fullmatch(r"([\d.]+)mm", root.get(name))
        if not number or abs(float(number.group(1)) - wanted) > SIZE_TOLERANCE_MM:
            yield f"{name} is {root.get(name)}"
    if sum(1 for _ in root.iter("{http://www.w3.org/2000/svg}path")) < 20:
        yield "hardly any lines"


def part_faults(folder, part):
    pdf = folder / f"{part['name']}.pdf"
    if not pdf.exists():
        yield "no sheet"
        return
    # Sizes of the list in the sheet's unit: "flat 12 mm x 150 mm, 213.5 mm long", to the digits of the sheet.
    sizes = [float(size) for size in re.findall(r"([\d.]+) (?:mm|in)\b", part["stock or size"])]
    shown = re.findall(r"(?:bar|flat|tube) ⌀?([\d.]+(?: × [\d.]+)*)(?:, ([\d.]+) long)?",
                       run("pdftotext", "-layout", pdf, "-"))
    numbers = [[float(n) for n in (" × ".join(filter(None, found))).split(" × ")] for found in shown]
    if not any(len(n) == len(sizes) and all(abs(a - b) < 1e-2 for a, b in zip(n, sizes)) for n in numbers):
        yield f"stock is {shown} on the sheet, {part['stock or size']} in the parts list"


def size_of(pdf, sizes):
    """The allowed size that the first page has, else the first one."""
    width = float(re.search(r"Page size:\s+([\d.]+)", run("pdfinfo", pdf)).group(1)) / POINTS_PER_MM
    return next((size for size in sizes if abs(size[0] - width) <= SIZE_TOLERANCE_MM), sizes[0])


def list_faults(pdf, parts):
    """Rows of the CSV file that the assembly's list does not hold, word by word."""
    text = squeezed(run("pdftotext", "-raw", str(pdf), "-"))  # cell by cell, broken into lines or not
    for part in parts:
        title = part["name"] if part["kind"] != "made" else part["name"].replace("-", " ").capitalize()
        size = part["stock or size"] if part["kind"] == "bought" else part["material"]
        row = f"{part['item']} {part['quantity']} {title} {size}"
        if squeezed(row) not in text:
            yield f"no row '{row}'"


def pages_of(pdf):
    """Size and text of each page."""
    sizes = re.findall(r"size:\s+([\d.]+ x [\d.]+)", run("pdfinfo", "-l", "999", pdf))
    return list(zip(sizes, run("pdftotext", "-raw", pdf, "-").split("\f")))


def whole_faults(whole, pdfs):
    """The one file of all sheets holds each page of the others once."""
    if sorted(pages_of(whole)) != sorted(page for pdf in pdfs for page in pages_of(pdf)):
        yield "its pages are not those of the other files"


def sheets_of(pdf):
    single = pdf.with_suffix(".dxf")
    return [single] if single.exists() else sorted(pdf.parent.glob(f"{pdf.stem}-[0-9].dxf"))


def main():
    folder, numbers = pathlib.Path(sys.argv[1]), [float(number) for number in sys.argv[2:]]
    sizes = list(zip(numbers[0::2], numbers[1::2]))
    faults, count, larger = 0, 0, 0

    def report(path, found):
        nonlocal faults
        for fault in found:
            print(f"{path.name}: {fault}", file=sys.stderr)
            faults += 1

    with open(folder.parent / "parts-list.csv", newline="", encoding="utf-8") as parts:
        listed = list(csv.DictReader(parts))
    for part in listed:
        if part["kind"] == "made":
            report(folder / part["name"], part_faults(folder, part))
    report(folder / "assembly.pdf", list_faults(folder / "assembly.pdf", listed))
    whole = folder / "all.pdf"
    pdfs = sorted(set(folder.glob("*.pdf")) - {whole})
    report(whole, whole_faults(whole, pdfs))
    for pdf in pdfs:
        sheets = sheets_of(pdf)
        size = size_of(pdf, sizes)
        larger += size != sizes[0]
        report(pdf, pdf_faults(pdf, sheets, size))
        for sheet in sheets:
            report(sheet, dxf_faults(sheet, size))
            report(sheet.with_suffix(".svg"), svg_faults(sheet.with_suffix(".svg"), size))
            count += 1
    if 4 * larger > count:
        report(folder, [f"{larger} parts on the larger size"])
    print(f"{count} sheets read")
    return 1 if faults or count == 0 else 0


if __name__ == "__main__":
    sys.exit(main())
