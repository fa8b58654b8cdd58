"""comparison.html, in a real browser: comparison_page.py PROGRAM JOB JOB"""

import json
import pathlib
import re
import sys
import tempfile
import unittest

import browser
from browser import Page

PROGRAM, *JOBS = sys.argv[1:]
PIXELS_A_MM = 96 / 25.4  # CSS Values and Units 3, 6.2


class Comparison(Page):
    @classmethod
    def setUpClass(cls):
        cls.folder = tempfile.TemporaryDirectory()
        out = cls.out = pathlib.Path(cls.folder.name) / "out"
        hot = pathlib.Path(cls.folder.name) / "hot.yaml"  # its arc cuts the wall: one design that fails
        hot.write_text(pathlib.Path(JOBS[0]).read_text().replace("current: 33 A", "current: 320 A").replace(
            "name: logger-25", "name: hot"))
        browser.run(PROGRAM, "compare", *JOBS, str(hot), "-o", str(out), "--show", "heat.run.1.hold",
                    "--rank", "purge.wait", "--rank", "cycle.time", fails=True)
        cls.browser = browser.start()
        cls.browser.get((out / "comparison.html").as_uri())

    @classmethod
    def tearDownClass(cls):
        super().tearDownClass()
        cls.folder.cleanup()

    def head(self, title):
        return self.script(
            "return [...document.querySelectorAll('#designs thead th')].findIndex((h) => h.title === arguments[0])", title)

    def test_a_answer(self):
        self.assertIn("2 of 3.", self.element("#answer").text)

    def test_b_table_sorts(self):
        for title in ("purge.wait", "heat.run.1.hold", "rules.failing"):
            column = self.head(title)
            for reverse in (False, True):
                self.script("arguments[0].click()",
                            self.elements("#designs thead button")[column])
                values = [float(v) for v in self.column("#designs", column) if v]
                self.assertEqual(values, sorted(values, reverse=reverse))

    def test_c_plot(self):
        self.assertEqual(len(self.elements("#plot circle")), 3)
        before = [c.get_attribute("cx") for c in self.elements("#plot circle")]
        self.script("const across = document.getElementById('across'); across.selectedIndex = (across.selectedIndex + 1) % across.length;"
                    "across.dispatchEvent(new Event('change'))")
        self.assertNotEqual(before, [c.get_attribute("cx") for c in self.elements("#plot circle")])
        self.assertEqual(len(self.elements("#plot circle.fail")), 1)

    def test_c_the_front_is_marked_in_table_and_plot(self):
        marked = self.elements("#designs tr.front")
        self.assertGreaterEqual(len(marked), 1)
        self.assertEqual(len(self.elements("#plot circle.front")), len(marked))
        self.assertFalse([row for row in marked if "hot" in row.text])
        self.assertIn("wait, time of a part", self.element("#answer").text)

    def test_c_outlines_are_as_large_as_the_results_say(self):
        self.browser.set_window_size(1280, 900)
        designs = json.loads((self.out / "comparison.json").read_text())["designs"]
        figures = self.elements("#outlines figure")
        self.assertEqual([f.text for f in figures], [d["name"] for d in designs])
        reduction = float(re.search(r"1:([0-9.]+) on paper", self.element("#outlines .scale").text)[1])
        self.assertEqual(self.element("#outlines .scale").text.split(" mm")[0], "100")
        bar = self.script("return document.querySelector('#outlines .scale svg').getBoundingClientRect().width")
        self.assertAlmostEqual(bar, 100 / reduction * PIXELS_A_MM, delta=0.1)

        def drawn(figure, view, part):  # metres at the printed scale
            across, up = self.script(
                "const box = arguments[0].querySelectorAll('svg')[arguments[1]].querySelector(`[data-part='${arguments[2]}']`)"
                ".getBoundingClientRect(); return [box.width, box.height]", figure, view, part)
            return across / PIXELS_A_MM * reduction / 1000, up / PIXELS_A_MM * reduction / 1000

        for figure, design, job in zip(figures, designs, [*JOBS, JOBS[0]]):
            line = 2.0 / PIXELS_A_MM * reduction / 1000  # an edge is as wide as its line
            length, height = drawn(figure, 0, "chamber-body")
            self.assertAlmostEqual(length, design["values"]["chamber.length"], delta=line)
            self.assertAlmostEqual(height, design["values"]["chamber.height"], delta=line)
            self.assertAlmostEqual(drawn(figure, 0, "base-plate")[0], design["values"]["base_plate.length"], delta=line)
            diameter = float(re.search(r"outside_diameter: ([0-9.]+) mm", pathlib.Path(job).read_text())[1]) / 1000
            self.assertAlmostEqual(drawn(figure, 1, "tube")[0], diameter, delta=line)
            self.assertAlmostEqual(drawn(figure, 0, "tube")[1], diameter, delta=line)

    def test_c_print_cuts_nothing_off(self):
        printed = browser.text_of_pdf(self.browser.execute_cdp_cmd("Page.printToPDF", {})["data"])
        for title in ("chips removed", "How large they are", "hot"):
            self.assertIn(title, printed)

    def test_d_grid(self):
        self.assertGreaterEqual(len(self.elements("#grid .mark.fail")), 1)

    def test_e_names(self):
        self.check_names()
        self.check_readable()

    def test_f_narrow(self):
        self.check_width(400)

    def test_z_quiet(self):
        self.check_quiet()


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1], verbosity=2)
