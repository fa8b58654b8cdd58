"""A real browser without a window, driven over its standard interface, for the tests of pages.

Debian's chromium and chromium-driver; pictures in three dimensions come from the processor, so no graphics card is
needed. Works as root. Source: W3C WebDriver, by python3-selenium.
"""

import base64
import json
import pathlib
import subprocess
import tempfile
import time
import unittest

from selenium import webdriver
from selenium.webdriver.chrome.options import Options
from selenium.webdriver.chrome.service import Service

# Kept as they are, so that what two pictures differ in is what was changed between them.
COLOURS = """
  const [canvas] = arguments, copy = document.createElement('canvas');
  copy.width = 160; copy.height = 120;
  const pen = copy.getContext('2d');
  pen.drawImage(canvas, 0, 0, 160, 120);
  return Array.from(pen.getImageData(0, 0, 160, 120).data);
"""


def start(width=1280, height=900):
    options = Options()
    options.binary_location = "/usr/bin/chromium"
    for argument in (
        "--headless=new", "--no-sandbox", "--disable-dev-shm-usage", "--hide-scrollbars", "--use-gl=angle",
        "--use-angle=swiftshader", "--enable-unsafe-swiftshader", f"--window-size={width},{height}",
    ):
        options.add_argument(argument)
    options.set_capability("goog:loggingPrefs", {"browser": "ALL", "performance": "ALL"})
    return webdriver.Chrome(service=Service("/usr/bin/chromedriver"), options=options)


def run(program, *arguments, fails=False):
    done = subprocess.run([program, *arguments], capture_output=True, text=True, check=False)
    if done.returncode not in ((0, 1) if fails else (0,)):
        raise AssertionError(f"{arguments}: {done.returncode}\n{done.stderr}")
    return done.stdout


def asked_of_network(browser):
    """Addresses that the page asked for, but for what lies on this disk or in the page itself."""
    addresses = []
    for entry in browser.get_log("performance"):
        message = json.loads(entry["message"])["message"]
        if message["method"] == "Network.requestWillBeSent":
            addresses.append(message["params"]["request"]["url"])
    return [a for a in addresses if not a.startswith(("file:", "data:", "blob:"))]


def wait_until(true, seconds=60):
    end = time.monotonic() + seconds
    while not true():
        if time.monotonic() > end:
            raise AssertionError("it does not happen")
        time.sleep(0.05)


def text_of_pdf(encoded):
    with tempfile.NamedTemporaryFile(suffix=".pdf") as file:
        file.write(base64.b64decode(encoded))
        file.flush()
        return subprocess.run(["pdftotext", "-layout", file.name, "-"], capture_output=True, text=True, check=True).stdout


# Words whose colour stands too little out from what is behind them, in the colours that are shown. Source: WCAG 2.1,
# 1.4.3 (4.5 : 1; 3 : 1 from 24 px, or 18.66 px bold) and its relative luminance.
FAINT = """
  const parts = (text) => { const all = text.match(/[0-9.]+/g).map(Number); return all.length < 4 ? [...all, 1] : all; };
  const over = (top, below) => [0, 1, 2].map((i) => top[3] * top[i] + (1 - top[3]) * below[i]).concat(1);
  function behind(element) {
    const own = parts(getComputedStyle(element).backgroundColor);
    if (own[3] === 1) { return own; }
    return over(own, element.parentElement ? behind(element.parentElement) : [255, 255, 255, 1]);
  }
  const light = (colour) => [0.2126, 0.7152, 0.0722].reduce((sum, share, i) => {
    const c = colour[i] / 255;
    return sum + share * (c <= 0.03928 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
  }, 0);
  const faint = [];
  for (const element of document.querySelectorAll('body *')) {
    const words = [...element.childNodes].filter((n) => n.nodeType === 3).map((n) => n.data.trim()).join('');
    if (!words || !element.checkVisibility() || ['SCRIPT', 'STYLE', 'OPTION'].includes(element.tagName)) { continue; }
    const style = getComputedStyle(element), ground = behind(element);
    const ink = over(parts(element.namespaceURI.endsWith('svg') ? style.fill : style.color), ground);
    const [more, less] = [light(ink), light(ground)].sort((a, b) => b - a);
    const size = parseFloat(style.fontSize), large = size >= 24 || (size >= 18.66 && Number(style.fontWeight) >= 700);
    const ratio = (more + 0.05) / (less + 0.05);
    if (ratio < (large ? 3 : 4.5)) { faint.push(`${words.slice(0, 40)}: ${ratio.toFixed(2)} (${element.tagName} ${element.className})`); }
  }
  return faint;
"""

# What a screen reader or a keyboard would miss. Source: WCAG 2.1, 1.1.1, 1.3.1, 2.4.7; ARIA in HTML.
UNSAID = r"""
  const missed = [], say = (element, what) => missed.push(`${what}: ${element.outerHTML.slice(0, 90)}`);
  for (const svg of document.querySelectorAll('svg, canvas')) {
    const named = svg.getAttribute('aria-label') || svg.getAttribute('aria-labelledby') || svg.querySelector('title');
    if (!svg.closest('[aria-hidden=true]') && (svg.getAttribute('role') === null || !named)) { say(svg, 'a picture without role or name'); }
  }
  for (const head of document.querySelectorAll('th')) {
    if (!['col', 'row', 'colgroup', 'rowgroup'].includes(head.scope)) { say(head, 'a head without scope'); }
  }
  for (const table of document.querySelectorAll('table')) {
    if (!table.querySelector('th')) { say(table, 'a table without heads'); }
  }
  for (const control of document.querySelectorAll('input, select, textarea')) {
    if (!control.labels?.length && !control.getAttribute('aria-label') && !control.getAttribute('aria-labelledby')) { say(control, 'a control without label'); }
  }
  for (const named of document.querySelectorAll('[aria-labelledby], [aria-describedby], [aria-controls]')) {
    for (const key of ['aria-labelledby', 'aria-describedby', 'aria-controls']) {
      for (const id of (named.getAttribute(key) ?? '').split(/\s+/).filter(Boolean)) {
        if (!document.getElementById(id)) { say(named, `${key} leads nowhere`); }
      }
    }
  }
  return missed;
"""

# A ring or a frame round what the keyboard has reached.
UNSEEN = """
  const unseen = [];
  for (const element of document.querySelectorAll('a[href], button, summary, input, select, canvas[tabindex], [tabindex="0"]')) {
    if (!element.checkVisibility({visibilityProperty: true}) || element.disabled) { continue; }
    element.focus({focusVisible: true, preventScroll: true});
    const style = getComputedStyle(element);
    if (document.activeElement === element && (style.outlineStyle === 'none' || parseFloat(style.outlineWidth) < 2)) {
      unseen.push(element.outerHTML.slice(0, 90));
    }
  }
  document.activeElement?.blur();
  return unseen;
"""


class Page(unittest.TestCase):
    """A page open in a browser, and what is asked of each page alike."""

    browser = None
    address: pathlib.Path

    @classmethod
    def tearDownClass(cls):
        if cls.browser:
            cls.browser.quit()

    def element(self, css):
        return self.browser.find_element("css selector", css)

    def elements(self, css):
        return self.browser.find_elements("css selector", css)

    def script(self, text, *arguments):
        return self.browser.execute_script(text, *arguments)

    def column(self, table, number):
        return self.script(
            "return [...document.querySelectorAll(`${arguments[0]} tbody tr`)]"
            ".map((row) => row.cells[arguments[1]].dataset.sort ?? row.cells[arguments[1]].textContent.trim())",
            table, number)

    def check_names(self):
        """Whatever can be worked has a name that a screen reader says, headings go down by one, ids are unique."""
        for node in self.browser.execute_cdp_cmd("Accessibility.getFullAXTree", {})["nodes"]:
            said = {p["name"]: p["value"].get("value") for p in node.get("properties", [])}
            if said.get("focusable") and node["role"]["value"] not in ("RootWebArea", "WebArea"):
                self.assertNotEqual(node.get("name", {}).get("value", "").strip(), "", node)
        levels = [int(h.tag_name[1]) for h in self.elements("h1, h2, h3, h4")]
        self.assertEqual(levels.count(1), 1)
        for before, after in zip(levels, levels[1:]):
            self.assertLessEqual(after - before, 1)
        self.assertEqual(self.script("return document.documentElement.lang"), "en")
        self.assertEqual(self.script(
            "const ids = [...document.querySelectorAll('[id]')].map((e) => e.id);"
            "return ids.length - new Set(ids).size"), 0)
        self.assertEqual(self.script("return [...document.images].filter((i) => !i.alt).length"), 0)

    def check_readable(self):
        """Contrast in light and dark, names of pictures and controls, heads of tables, the keyboard's place."""
        for scheme in ("light", "dark"):
            self.browser.execute_cdp_cmd("Emulation.setEmulatedMedia", {
                "features": [{"name": "prefers-color-scheme", "value": scheme}]})
            self.assertEqual(self.script(FAINT), [], scheme)
        self.assertEqual(self.script(UNSAID), [])
        self.assertEqual(self.script(UNSEEN), [])

    def check_width(self, width):
        """Nothing makes the page itself scroll sideways."""
        self.browser.set_window_size(width, 800)
        self.assertLessEqual(self.script("return document.documentElement.scrollWidth - innerWidth"), 0)

    def check_quiet(self):
        self.assertEqual([e for e in self.browser.get_log("browser") if e["level"] == "SEVERE"], [])
        self.assertEqual(asked_of_network(self.browser), [])
