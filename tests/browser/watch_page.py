"""The page of `purgewright watch`, in a real browser: watch_page.py PROGRAM JOB OTHER_JOB

With `--times` it prints how long a save takes to be seen, which depends on the machine and is no test.
"""

import pathlib
import sys
import time
import unittest

import browser
from browser import Page
from watched import Watched

PROGRAM, JOB, OTHER = sys.argv[1:4]
TIMES = "--times" in sys.argv
STAR = " \u2605"
TEXT = pathlib.Path(JOB).read_text()
TITLE = "</title><script>document.title=1</script><img src=x onerror=alert(1)> & \"p\""


def titled(text, title):
    quoted = "'" + title.replace("'", "''") + "'"
    return "\n".join(f"  title: {quoted}" if l.strip().startswith("title:") else l for l in text.splitlines()) + "\n"


SOUND = titled(TEXT, TITLE)


def with_current(current, text=SOUND):
    assert "current: 33 A" in text
    return text.replace("current: 33 A", f"current: {current}")


class WatchedPage(Page):
    def wait(self, true, seconds=60):
        browser.wait_until(true, seconds)

    def part(self, name):
        return self.script("return document.querySelector(`[data-part='${arguments[0]}']`).textContent", name)

    def check_quiet(self):
        self.assertEqual([e for e in self.browser.get_log("browser") if e["level"] == "SEVERE"], [])
        asked = browser.asked_of_network(self.browser)
        self.assertGreater(len(asked), 0)
        self.assertEqual([a for a in asked if not a.startswith(self.watched.address)], [])

    @classmethod
    def tearDownClass(cls):
        super().tearDownClass()
        cls.watched.close()


class OneJob(WatchedPage):
    @classmethod
    def setUpClass(cls):
        cls.watched = Watched(PROGRAM, {"logger.yaml": SOUND})
        cls.browser = browser.start()
        cls.browser.get(cls.watched.address)
        browser.wait_until(lambda: cls.browser.find_elements("css selector", "#bench"))

    def drawn(self):
        return int(self.script("return document.getElementById('view').dataset.drawn ?? '0'"))

    def settle(self):
        """Until all of the page is of the last save."""
        self.wait(lambda: self.part("state").count("of this save") == 3, 240)

    def seen(self, save, word, part="settings"):
        """Milliseconds from a save to the word's coming into the part."""
        self.script(
            "window.seen = 0; const part = document.querySelector(`[data-part='${arguments[0]}']`), word = arguments[1];"
            "const watcher = new MutationObserver(() => { if (part.textContent.includes(word)) {"
            "  window.seen = Date.now(); watcher.disconnect(); } });"
            "watcher.observe(part, {childList: true, subtree: true})", part, word)
        saved = save()
        self.wait(lambda: self.script("return window.seen") > 0, 20)
        return self.script("return window.seen") - 1000 * saved

    def test_a_texts_stay_text(self):
        self.assertEqual(self.element("h1").text, TITLE)
        self.assertEqual(self.elements("img[src=x]"), [])

    def test_b_everything_comes(self):
        self.settle()
        self.assertGreater(self.drawn(), 0)
        self.assertGreater(len(self.elements("#plots img")), 1)
        self.assertGreater(len(self.elements(".sheet")), 5)
        self.assertEqual(self.elements(".tag"), [])
        self.assertNotIn("Not judged", self.element("#answer").text)  # the solids say whether parts share metal
        self.assertIn("logger-25", self.browser.title)

    def test_c_a_save_is_seen_and_what_was_opened_stays(self):
        self.settle()
        self.script("document.querySelector('#settings .number summary').click();"
                    "document.querySelector('#rules th:nth-child(4) button').click();"
                    "const find = document.getElementById('find'); find.value = 'oxygen floor';"
                    "find.dispatchEvent(new Event('input'));"
                    "const apart = document.getElementById('apart'); apart.value = 40; apart.dispatchEvent(new Event('input'))")
        before = self.drawn()
        took = self.seen(lambda: self.watched.save(with_current("31 A")), "31 A")
        if TIMES:
            print(f"a save is seen after {took:.0f} ms", file=sys.stderr)
        began = time.monotonic()
        self.wait(lambda: self.drawn() > before and self.part("state").count("of this save") >= 2, 240)
        if TIMES:
            print(f"its 3D view after {time.monotonic() - began:.1f} s", file=sys.stderr)
        self.assertTrue(self.script("return document.querySelector('#settings .number').open"))
        self.wait(lambda: self.script("return document.querySelector('#settings .number .origin') !== null"))
        self.assertEqual(self.element("#rules th:nth-child(4)").get_attribute("aria-sort"), "ascending")
        self.assertEqual(self.element("#find").get_attribute("value"), "oxygen floor")
        self.assertRegex(self.element("#found").text, r"^[1-9]\d* numbers")
        self.assertEqual(self.element("#apart").get_attribute("value"), "40")

    def test_d_a_file_that_takes_the_name_is_seen(self):
        for current in ("34 A", "36 A"):
            took = self.seen(lambda c=current: self.watched.save(with_current(c), by_rename=True), current)
            if TIMES:
                print(f"a file renamed is seen after {took:.0f} ms", file=sys.stderr)
        self.wait(lambda: "What this save changed" in self.part("changes"))

    def test_e_fault_stands_above_the_last_good_numbers_and_goes_with_its_cure(self):
        self.wait(lambda: "first ones" not in self.part("state") and not self.elements(".of-coarse"))
        faulty = with_current("36 A").replace("current:", "curent:")
        line = next(i for i, l in enumerate(faulty.splitlines(), 1) if "curent" in l)
        good = self.element("#bench").text
        self.watched.save(faulty)
        self.wait(lambda: "This save has a fault" in self.part("faults"))
        self.assertRegex(self.part("faults"), rf"logger\.yaml:{line}:\d+")
        self.assertEqual(self.element(".source mark").text, "curent")
        self.assertIn("current", self.element(".faults").text.split("mean")[1])
        self.assertEqual(self.element("#bench").text, good)
        self.assertIn("From before the fault", self.part("answer"))
        self.assertTrue(self.browser.title.startswith("Fault"))
        self.watched.save(with_current("37 A"))
        self.wait(lambda: self.part("faults") == "" and "37 A" in self.part("settings"))
        self.assertNotIn("From before the fault", self.part("answer"))

    def test_f_names(self):
        self.check_names()
        self.check_readable()

    def test_g_narrow(self):
        self.check_width(400)
        self.watched.save(with_current("37 A").replace("current:", "curent:"))
        self.wait(lambda: "This save has a fault" in self.part("faults"))
        self.check_width(400)
        self.watched.save(SOUND)
        self.wait(lambda: self.part("faults") == "")

    def test_h_files_that_it_links_to_are_there(self):
        self.settle()
        for link in ("setup-sheet.pdf", "results.json", "drawings/all.pdf", "drawings/end-plug.svg"):
            status = self.browser.execute_async_script(
                "fetch(arguments[0]).then((answer) => arguments[1](answer.status))", link)
            self.assertEqual(status, 200, link)

    def test_y_quiet(self):
        self.browser.get_log("performance")
        self.watched.save(with_current("32 A"))
        self.wait(lambda: "32 A" in self.part("settings"))
        self.check_quiet()

    def test_z_the_end_is_told(self):
        status, _ = self.watched.end()
        self.assertEqual(status, 0)
        self.wait(lambda: self.element("#lost").is_displayed(), 20)
        self.assertEqual(self.watched.left(), [])


class SeveralJobs(WatchedPage):
    @classmethod
    def setUpClass(cls):
        cls.watched = Watched(PROGRAM, {"logger.yaml": SOUND, "other.yaml": pathlib.Path(OTHER).read_text()})
        cls.browser = browser.start()
        cls.browser.get(cls.watched.address)
        browser.wait_until(lambda: "cautions" not in cls.browser.title and len(
            cls.browser.find_elements("css selector", ".side-by-side thead a")) == 2)

    def column(self, number):
        return self.script("return [...document.querySelectorAll('.side-by-side tr')].map((r) => r.cells[arguments[0]].textContent).join('\\n')", number)

    def test_a_a_column_each(self):
        self.wait(lambda: "wait" in self.column(0) and not any(
            words in self.column(n) for n in (1, 2) for words in ("none yet", "first ones")))
        self.assertIn("logger-25", self.column(1))
        self.assertIn("other.yaml", self.column(2))

    def test_b_a_save_renews_its_own_column(self):
        other = self.column(2).replace(STAR, "")
        self.watched.save(with_current("320 A"))
        self.wait(lambda: "No" in self.column(1).splitlines())
        self.assertIn("melts", self.column(1))
        self.assertEqual(self.column(2).replace(STAR, ""), other)

    def test_c_a_fault_stands_in_its_column(self):
        self.watched.save("job: {name: logger}\ntube: 3\n", job=1)
        self.wait(lambda: "not judged: a fault" in self.column(2))
        self.assertIn("other.yaml:2:", self.column(2))
        self.assertIn("from before the fault", self.column(2))
        self.assertNotIn("Yes", self.column(2))

    def test_d_names_and_width(self):
        self.check_names()
        self.check_readable()
        self.check_width(400)

    def test_e_head_leads_to_the_report(self):
        self.element(".side-by-side thead a").click()
        self.wait(lambda: self.elements("#bench"))
        self.assertEqual(self.element("h1").text, TITLE)

    def test_z_quiet(self):
        self.check_quiet()


class FaultAtFirst(WatchedPage):
    @classmethod
    def setUpClass(cls):
        cls.watched = Watched(PROGRAM, {"logger.yaml": "job: {name: logger}\n"})
        cls.browser = browser.start()
        cls.browser.get(cls.watched.address)

    def test_a_numbers_come_with_the_cure(self):
        self.wait(lambda: "There are no numbers yet" in self.part("faults"))
        self.check_names()
        self.check_readable()
        self.watched.save(SOUND)
        self.wait(lambda: self.elements("#bench"))
        self.assertEqual(self.part("faults"), "")


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1], verbosity=2)
