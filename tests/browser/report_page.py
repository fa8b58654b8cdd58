"""report.html of a design, in a real browser: report_page.py PROGRAM JOB"""

import pathlib
import sys
import tempfile
import unittest

import browser
from browser import COLOURS, Page

PROGRAM, JOB = sys.argv[1:3]
TITLE = "</title><script>document.title=1</script><img src=x onerror=alert(1)> & \"p\""
MOST_BYTES = 6_000_000


class Report(Page):
    @classmethod
    def setUpClass(cls):
        cls.folder = tempfile.TemporaryDirectory()
        out = pathlib.Path(cls.folder.name) / "out"
        job = pathlib.Path(cls.folder.name) / "job.yaml"
        lines = pathlib.Path(JOB).read_text().splitlines()
        title = "'" + TITLE.replace("'", "''") + "'"
        job.write_text("\n".join(f"  title: {title}" if l.strip().startswith("title:") else l for l in lines))
        cls.said = browser.run(PROGRAM, "design", str(job), "-o", str(out), fails=True)
        cls.address = out / "report.html"
        cls.browser = browser.start()
        cls.browser.get(cls.address.as_uri())
        browser.wait_until(lambda: cls.browser.execute_script("return document.getElementById('view').dataset.drawn"))

    @classmethod
    def tearDownClass(cls):
        super().tearDownClass()
        cls.folder.cleanup()

    def picture(self):
        """The view once it has been drawn after whatever was done last."""
        self.browser.execute_async_script(
            "const done = arguments[0]; requestAnimationFrame(() => requestAnimationFrame(() => done()))")
        return self.script(COLOURS, self.element("#view"))

    def set(self, css, value):
        self.script("arguments[0].value = arguments[1]; arguments[0].dispatchEvent(new Event('input'))",
                    self.element(css), value)

    def click(self, css):
        self.script("arguments[0].click()", self.element(css))

    def differs(self, do):
        before = self.picture()
        do()
        after = self.picture()
        return sum(a != b for a, b in zip(before, after)) > 50

    def test_a_size_and_place(self):
        self.assertLess(self.address.stat().st_size, MOST_BYTES)
        self.assertIn("report.html", self.said)

    def test_b_texts_stay_text(self):
        self.assertEqual(self.element("h1").text, TITLE)
        self.assertNotEqual(self.browser.title, "1")
        self.assertEqual(self.elements("img[src=x]"), [])

    def test_c_fixture_is_drawn(self):
        colours = set(zip(*[iter(self.picture())] * 4))
        self.assertGreater(len(colours), 100)

    def test_d_cut_moves(self):
        self.assertTrue(self.differs(lambda: self.click("#cut-along-on")))
        self.assertTrue(self.differs(lambda: self.set("#cut-along", -0.01)))
        self.assertIn("-10 mm", self.element("#cut-along-at").text)
        self.assertTrue(self.differs(lambda: self.click("#gas-on")))
        self.click("#gas-on")
        self.click("#cut-along-on")
        self.assertTrue(self.differs(lambda: self.click("#cut-across-on")))
        self.click("#cut-across-on")

    def test_e_taken_apart_turned_hidden(self):
        self.assertTrue(self.differs(lambda: self.set("#apart", 100)))
        self.set("#apart", 0)
        self.click("[data-look='0 0 1']")
        self.assertTrue(self.differs(lambda: self.set("#collar", 90)))
        self.click("[data-look='1 0.75 1.35']")
        self.set("#collar", 0)
        self.click(".shown-parts > summary")
        self.assertTrue(self.differs(lambda: self.click("#shown li:first-child input")))
        self.click("#show-all")

    def test_f_keys_turn_it_and_pointing_names_it(self):
        self.element("#view").send_keys("")
        self.assertTrue(self.differs(lambda: self.element("#view").send_keys("\ue012")))  # left
        self.element("#view").send_keys("0")
        self.script("document.querySelector('#shown input').dispatchEvent(new Event('focus'))")
        self.assertIn("Chamber body · aluminium", self.element("#pointed").text)

    def test_g_number_opens_in_place(self):
        number = self.element("#bench .number")
        self.script("arguments[0].querySelector('summary').click()", number)
        browser.wait_until(lambda: number.find_elements("css selector", ".origin"))
        self.assertIn("Source", number.find_element("css selector", ".origin").text)
        inner = number.find_element("css selector", ".origin .number")
        self.script("arguments[0].querySelector('summary').click()", inner)
        browser.wait_until(lambda: inner.find_elements("css selector", ".origin"))

    def test_h_drawing_unfolds(self):
        self.click(".sheet > summary")
        browser.wait_until(lambda: self.script("return document.querySelector('.sheet img')?.naturalWidth > 100"))

    def test_i_table_sorts(self):
        self.click("#rules th:nth-child(4) button")
        left = [float(value) for value in self.column("#rules table", 3) if value]
        self.assertGreater(len(left), 40)
        self.assertEqual(left, sorted(left))
        self.click("#rules th:nth-child(4) button")
        again = [float(value) for value in self.column("#rules table", 3) if value]
        self.assertEqual(again, sorted(left, reverse=True))

    def test_j_search(self):
        self.element("#find").send_keys("oxygen floor")
        self.assertRegex(self.element("#found").text, r"^[1-9]\d* numbers")
        self.assertTrue(all("oxygen" in f.text.lower() for f in self.elements(".figure") if f.is_displayed()))

    def test_k_names(self):
        self.check_names()
        self.check_readable()

    def test_l_print(self):
        text = browser.text_of_pdf(self.browser.print_page())
        self.assertLess(text.index("May I weld?"), text.index("Before anything else"))
        self.assertIn("Tack and weld in this order", text)

    def test_m_narrow(self):
        self.check_width(400)

    def test_z_quiet(self):
        self.check_quiet()


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1], verbosity=2, failfast=False)
