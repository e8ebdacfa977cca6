"""The page for a customer: on a phone under fingers, and printed."""

import base64
import json
import pathlib
import re
import subprocess

from browser import Browser

TITLE = "Enamelled wire for the new coil line, third delivery of five, wound on spools of size 100 as agreed"
LETTER = ["--for", "customer", "--title", TITLE, "--customer", "Rowan Mills, Coil Works", "--sender", "Corder & Sons",
          "--date", "29 November", "--greeting", "With thanks for your order. The spools leave on Monday."]
PAPERS = {"a4": (8.27, 11.69), "letter": (8.5, 11.0)}
FULLEST = ["--for", "customer", "--title", "WIDE TITLE " * 9, "--customer", "WIDE NAME " * 6, "--sender", "WIDE NAME " * 6,
           "--date", "WIDE DATE " * 6, "--greeting", "WIDE GREETING " * 42, "--verdict"]


def promised(shop, plan):
    """What capacity and lay say, in the words of the page: by their documents."""
    capacity = subprocess.run([shop.program, "capacity", plan, "--json"], check=True, capture_output=True)
    length = json.loads(capacity.stdout)["model"]["first_touch_length_m"]
    totals = shop.document(plan)["totals"]
    return [f"holds {float(f'{length:.3g}'):g} m of ", f"it is {round(totals['outer_diameter']['greatest'], 1):g} mm thick, "
            f"{round(totals['rim_clearance'], 1):g} mm below the rim"]


def page_of(shop, plan, name, *options):
    page = shop.folder / f"{name}.html"
    subprocess.run([shop.program, "share", plan, "-o", page, *options], check=True)
    return page


def on_a_phone(shop):
    plan = shop.sample("parallel")
    told = promised(shop, plan)
    page = page_of(shop, plan, "customer", *LETTER, "--logo", shop.samples / "mark.svg")
    text = page.read_text(encoding="utf-8")
    assert "# " not in re.search(r'id="plan">(.*?)</script>', text, re.S)[1].replace("\\u003c", ""), "comments go along"
    with Browser(width=390, height=844, phone=True) as browser:
        browser.open(page)
        browser.wait_for_build()
        browser.settle()
        browser.draw_finely()
        shop.shoot(browser, "customer-phone")
        assert browser.value("document.documentElement.scrollWidth <= innerWidth"), "the page is wider than the screen"
        head = browser.element("header h1")
        lines = browser.value("document.querySelector('header h1').clientHeight / parseFloat(getComputedStyle("
                              "document.querySelector('header h1')).lineHeight)")
        assert head.text == TITLE and round(lines) <= 2, f"the title has {lines} lines"
        assert browser.text("#subtitle") == "For Rowan Mills, Coil Works, from Corder & Sons, 29 November"
        assert browser.value("document.querySelector('header .logo').naturalWidth") == 800, "no logo"
        seen = browser.seen()
        assert seen["colouring"] == "material" and seen["dimensions"] and not seen["findings"], seen
        sentence = browser.text("#letter .told")
        assert all(words in sentence for words in told), (told, sentence)
        box = browser.element("#letter .told").rect
        assert box["y"] + box["height"] <= 844, f"the sentence is not on the first screen: {box}"
        assert not browser.element("#verdict").is_displayed(), "a verdict that nobody asked for"
        assert not browser.element("#findings").is_displayed(), "the findings are not folded"
        pinched(browser)
        browser.driver.find_elements("css selector", "#result > details > summary")[1].click()
        assert browser.element("#findings").is_displayed(), "a tap does not unfold the findings"
        settings_are_followed(browser)
        assert not browser.complaints()


def pinched(browser):
    box = browser.element("#picture").rect
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    far = browser.seen()["camera"]
    browser.touch([(x - 40, y), (x - 80, y)], [(x + 40, y), (x + 80, y)])
    near = browser.seen()["camera"]
    assert abs(far["distance"] / near["distance"] - 2.0) < 0.1, "twice as far apart is not twice as near"
    assert browser.value("visualViewport.scale") == 1, "the pinch enlarges the page instead of the spool"
    browser.tap(x, y)
    assert browser.seen()["picked"] is None, "a tap tells of a turn, for which this page has no place"


def settings_are_followed(browser):
    """Header and sentence are of what is shown; what was promised is not promised of other settings."""
    before = browser.text("#letter .wound")
    browser.driver.find_elements("css selector", "#result > details > summary")[0].click()
    field = browser.element("#field-traverse-pitch")
    browser.run("arguments[0].scrollIntoView()", field)
    field.clear()
    field.send_keys("1.1\n")
    browser.wait("page.changed && document.documentElement.dataset.build === 'full'", "the changed plan's build")
    assert "pitch 1.1 mm" in browser.text("#subtitle"), browser.text("#subtitle")
    after = browser.value("document.querySelector('#letter .wound').textContent")
    thick = browser.ask("results")["document"]["totals"]["outer_diameter"]["greatest"]
    assert after != before and f"{round(thick, 1):g} mm thick" in after, (before, after)
    assert not browser.element("#letter .holds").is_displayed(), "a promise of other settings"
    browser.run("document.getElementById('revert').click()")
    browser.wait("!page.changed && document.documentElement.dataset.build === 'full'", "the plan as it was sent")
    assert browser.value("document.querySelector('#letter .wound').textContent") == before
    assert browser.text("#subtitle").startswith("For Rowan Mills")


def printed(browser, paper):
    wide, high = PAPERS[paper]
    made = browser.command("Page.printToPDF", paperWidth=wide, paperHeight=high, printBackground=True, preferCSSPageSize=True)
    return base64.b64decode(made["data"])


def read(command, file):
    return subprocess.run([*command, file] + (["-"] if command[0] == "pdftotext" else []), check=True, capture_output=True,
                          text=True).stdout


def prints_one_page(shop):
    plan = shop.sample("parallel")
    told = promised(shop, plan)
    for name, options in (("customer", LETTER), ("fullest", FULLEST)):
        page = page_of(shop, plan, f"printed-{name}", *options, "--logo", shop.samples / "mark.svg")
        with Browser() as browser:
            browser.open(page)
            browser.wait_for_build()
            rows = browser.run("return [...document.querySelectorAll('#static .told-rows tr')].map((it) => it.textContent)")
            for paper in PAPERS:
                file = pathlib.Path(shop.folder / f"printed-{name}-{paper}.pdf")
                file.write_bytes(printed(browser, paper))
                pages = re.search(r"Pages:\s+(\d+)", read(["pdfinfo"], file))[1]
                assert pages == "1", f"{name} on {paper} takes {pages} pages"
                text = " ".join(read(["pdftotext", "-layout"], file).split())
                for words in told:
                    assert words in text, f"{words} is not printed on {paper}: {text}"
                for row in rows:
                    assert " ".join(row.split()).replace(" ", "") in text.replace(" ", ""), f"{row} is cut: {text}"
                assert "it can spring back." in text, "the foot of the page is cut"
                assert ("verdict" in name or "--verdict" in options) == ("Good" in text or "good" in text), text
                picture = browser.value("document.querySelector('#static .pictures img').naturalWidth")
                assert picture >= 1000, "the picture is too coarse for paper"
