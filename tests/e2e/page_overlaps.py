#!/usr/bin/python3
"""Words of a PDF's pages that leave the page or lie on each other, by poppler: page_overlaps.py FILE

A word's box is as tall as its font, so that words of lines set close touch by a little: less than a third of the lower
box's height, or than half a point across, is none. Prints each fault and exits 1 when there is one.
"""

import subprocess
import sys
import xml.etree.ElementTree

TOUCHING = 0.5  # points
OF_HEIGHT = 1 / 3


def main():
    text = subprocess.run(["pdftotext", "-bbox", sys.argv[1], "-"], check=True, capture_output=True, text=True).stdout
    space = "{http://www.w3.org/1999/xhtml}"
    faults, count = [], 0
    for page in xml.etree.ElementTree.fromstring(text).iter(space + "page"):
        width, height = float(page.get("width")), float(page.get("height"))
        words = [
            (word.text, *(float(word.get(key)) for key in ("xMin", "yMin", "xMax", "yMax")))
            for word in page.iter(space + "word")
        ]
        count += len(words)
        for i, (name, left, top, right, bottom) in enumerate(words):
            if left < 0 or top < 0 or right > width or bottom > height:
                faults.append(f"{name} leaves the page")
            for other, l2, t2, r2, b2 in words[:i]:
                across = min(right, r2) - max(left, l2)
                down = min(bottom, b2) - max(top, t2)
                if across > TOUCHING and down > OF_HEIGHT * min(bottom - top, b2 - t2):
                    faults.append(f"{name} lies on {other}")
    for fault in faults:
        print(fault)
    return 1 if faults or count == 0 else 0


if __name__ == "__main__":
    sys.exit(main())
