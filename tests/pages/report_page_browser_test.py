#!/usr/bin/env python3
"""The report page in a real browser: report_page_browser_test.py PROGRAM SOURCE_DIR [SCREENSHOT_DIR]"""

import os
import subprocess
import sys
import tempfile

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "support"))
from browser import Browser  # noqa: E402

failures = []


def check(truth, what):
    if not truth:
        failures.append(what)
        print("FAILED: " + what)


# What sticks out of the page at its right edge, drawings that scroll in their own frame left aside.
STICKS_OUT = """
[...document.querySelectorAll('body *')].filter(e => !e.closest('figure.drawing') && !e.closest('.visually-hidden')
  && !e.closest('.skip') && !e.closest('svg') && e.getClientRects().length
  && e.getBoundingClientRect().right > document.documentElement.clientWidth + 1)
  .slice(0, 5).map(e => e.tagName + ' ' + e.textContent.slice(0, 40))
"""

# Text wider than the box that cuts it off.
CUT_OFF = """
[...document.querySelectorAll('body *')].filter(e => !e.closest('figure.drawing') && !e.closest('.visually-hidden')
  && !e.closest('.skip') && !e.closest('svg') && e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 0
  && getComputedStyle(e).overflowX !== 'visible').slice(0, 5).map(e => e.tagName + ' ' + e.textContent.slice(0, 40))
"""

# WCAG 2.1 contrast of every text against the ground it stands on.
CONTRAST = """
(() => {
  const parse = c => { const m = c.match(/[\\d.]+/g).map(Number); return m.length < 4 ? [...m, 1] : m; };
  const light = ([r, g, b]) => [r, g, b].map(v => v / 255)
    .map(v => v <= 0.03928 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4)
    .reduce((sum, v, i) => sum + v * [0.2126, 0.7152, 0.0722][i], 0);
  const ground = e => { for (; e; e = e.parentElement) { const c = parse(getComputedStyle(e).backgroundColor);
    if (c[3] > 0) return c; } return [255, 255, 255, 1]; };
  const poor = [];
  for (const e of document.querySelectorAll('body *')) {
    if (e.closest('svg') || e.closest('script') || !e.getClientRects().length) continue;
    if (![...e.childNodes].some(n => n.nodeType === 3 && n.textContent.trim())) continue;
    const [a, b] = [light(parse(getComputedStyle(e).color)), light(ground(e))].sort((x, y) => y - x);
    const ratio = (a + 0.05) / (b + 0.05);
    if (ratio < 4.5) poor.push(e.tagName + '.' + e.className + ' ' + ratio.toFixed(2) + ' ' + e.textContent.slice(0, 30));
  }
  return poor.slice(0, 5);
})()
"""

STRUCTURE = """
({ lang: document.documentElement.lang, h1: document.querySelectorAll('h1').length,
   scripts: document.querySelectorAll('script').length,
   images: document.querySelectorAll('img, iframe, object, embed, link').length,
   noCaption: [...document.querySelectorAll('table')].filter(t => !t.caption).length,
   noScope: [...document.querySelectorAll('th')].filter(t => !t.scope).length,
   skips: (() => { let last = 0, bad = 0; for (const h of document.querySelectorAll('h1,h2,h3,h4')) {
     const level = +h.tagName[1]; if (level > last + 1) bad++; last = level; } return bad; })(),
   deadLinks: [...document.querySelectorAll('a[href^="#"]')].filter(a => !document.getElementById(a.hash.slice(1)))
     .map(a => a.hash).slice(0, 5),
   unnamedDrawings: [...document.querySelectorAll('figure svg')].filter(s => s.getAttribute('role') !== 'img'
     || !(s.getAttribute('aria-label') || s.getAttribute('aria-labelledby') || s.querySelector('title'))).length,
   sameIds: (() => { const ids = [...document.querySelectorAll('[id]')].map(e => e.id);
     return ids.filter((id, i) => ids.indexOf(id) !== i).slice(0, 5); })() })
"""


def place_of(browser, selector_script):
    return browser.run("(() => { const e = %s; e.scrollIntoView({block: 'center', inline: 'center'});"
                       " const r = e.getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2]; })()"
                       % selector_script)


def marked(browser, within):
    return browser.run("[...document.querySelectorAll('%s .marked')].map(e => e.dataset.part)" % within)


def quiet(browser, page, what):
    check(browser.complaints == [], "%s: the console is not empty: %s" % (what, browser.complaints))
    check(browser.requests == ["file://" + os.path.abspath(page)], "%s: it asks for %s" % (what, browser.requests))


def sound_structure(browser, what):
    found = browser.run(STRUCTURE)
    wanted = {"lang": "en", "h1": 1, "scripts": 1, "images": 0, "noCaption": 0, "noScope": 0, "skips": 0,
              "deadLinks": [], "unnamedDrawings": 0, "sameIds": []}
    check(found == wanted, "%s: structure is %s" % (what, {k: v for k, v in found.items() if v != wanted[k]}))


def links_parts(browser, part):
    """Clicking a table row marks the part in the drawing, clicking the drawing marks the row, Escape clears."""
    row = "[...document.querySelectorAll('#lamps tbody tr')].find(r => r.dataset.part === %r)" % part
    browser.click(*place_of(browser, row + ".cells[1]"))
    drawings = browser.run("document.querySelectorAll('#plan svg').length > 0")
    for drawing in ("#lamps", "#commissioning") + (("#plan svg", "#diagram svg") if drawings else ()):
        check(part in marked(browser, drawing), "a click on the row of %s does not mark it in %s" % (part, drawing))
    browser.press("Escape", 27)
    browser.move(1, 1)
    check(marked(browser, "body") == [], "Escape leaves parts marked")
    if not drawings:
        return
    symbol = "[...document.querySelectorAll('#plan svg [data-part]')].find(r => r.dataset.part === %r)" % part
    browser.click(*place_of(browser, symbol))
    check(part in marked(browser, "#lamps"), "a click on %s in the plan does not mark its row" % part)
    browser.press("Escape", 27)
    browser.move(1, 1)
    browser.run(row + ".querySelector('a').focus()")
    check(part in marked(browser, "#plan svg"), "focus on the row of %s does not mark it in the plan" % part)


def fits(browser, page, width, media, what):
    browser.open(page, width=width, height=1100, media=media)
    check(browser.run("document.documentElement.scrollWidth") <= width, what + ": the page is wider than its window")
    check(browser.run(STICKS_OUT) == [], "%s: sticks out: %s" % (what, browser.run(STICKS_OUT)))
    check(browser.run(CUT_OFF) == [], "%s: cut off: %s" % (what, browser.run(CUT_OFF)))


def try_page(browser, page, what, shots, part=None):
    browser.open(page)
    quiet(browser, page, what)
    sound_structure(browser, what)
    if part is not None:
        links_parts(browser, part)
        quiet(browser, page, what + " after clicks")
    for dark in (False, True):
        browser.open(page, dark=dark)
        poor = browser.run(CONTRAST)
        check(poor == [], "%s, %s: poor contrast: %s" % (what, "dark" if dark else "light", poor))
        if shots:
            browser.screenshot(os.path.join(shots, "%s-%s.png" % (what, "dark" if dark else "light")))
    for width, media, name in ((360, "screen", "phone"), (320, "screen", "small phone"), (715, "print", "letter"),
                               (698, "print", "A4"), (1200, "screen", "desk")):
        fits(browser, page, width, media, "%s, %s" % (what, name))
        if shots and name == "phone":
            browser.screenshot(os.path.join(shots, what + "-phone.png"))
    if shots:
        browser.open(page, media="print")
        browser.pdf(os.path.join(shots, what + "-letter.pdf"), 8.5, 11)


def make_report(program, site, folder):
    done = subprocess.run([program, "report", site, "--output", folder], capture_output=True, text=True)
    check(done.returncode in (0, 1), "report of %s: status %d: %s" % (site, done.returncode, done.stderr))
    return os.path.join(folder, "report.html")


def main():
    program, source = sys.argv[1], sys.argv[2]
    shots = sys.argv[3] if len(sys.argv) > 3 else None
    with tempfile.TemporaryDirectory(prefix="rillwatt-report-") as scratch, Browser() as browser:
        sites = [("fernhollow", os.path.join(source, "examples/fernhollow/site.toml"), "walk-3"),
                 ("first-try", os.path.join(source, "examples/fernhollow-first-try/site.toml"), None),
                 ("hostile", os.path.join(source, "tests/pages/hostile/site.toml"), None)]
        for name, site, part in sites:
            page = make_report(program, site, os.path.join(scratch, name))
            if os.path.exists(page):
                try_page(browser, page, name, shots, part)
    print("%d failures" % len(failures))
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main())
