"""The share page in a browser: what it shows is what the command line says, and everything on it does what it says.

    drive_page.py LAYWRIGHT BUILD_HASH SAMPLES [FOLDER]

FOLDER: where pages and pictures stay; by default they are thrown away.
"""

import json
import pathlib
import subprocess
import sys
import tempfile

from selenium.webdriver.common.keys import Keys

from browser import Browser

import first_look
import for_customer
import on_a_phone
import without_program

# Those that lay in a second or two in a browser.
SMALL = ["even", "long-dwell", "loose-traverse", "parallel", "tapered-flanges", "whole-ratio"]



class Shop:
    """Makes pages and says what the command line says."""

    def __init__(self, program, hasher, samples, folder):
        self.program, self.hasher = program, hasher
        self.samples, self.folder = pathlib.Path(samples), pathlib.Path(folder)

    def sample(self, name):
        return self.samples / f"{name}.lay.toml"

    def page(self, plan, *options):
        page = self.folder / f"{pathlib.Path(plan).name.split('.')[0]}.html"
        subprocess.run([self.program, "share", plan, "-o", page, *options], check=True)
        return page

    def plan(self, name, text):
        path = self.folder / f"{name}.lay.toml"
        path.write_text(text, encoding="utf-8")
        return path

    def document(self, plan, *options):
        """Of one draw, as the page lays it and says."""
        laid = subprocess.run([self.program, "lay", plan, "--draws", "1", "--json", *options], check=True, capture_output=True)
        return json.loads(laid.stdout)

    def hash(self, plan, *seed):
        return subprocess.run([self.hasher, plan, *seed], check=True, capture_output=True, text=True).stdout.strip()

    def shoot(self, browser, name):
        browser.driver.save_screenshot(str(self.folder / f"{name}.png"))


def expect_same(shop, browser, plan, *seed):
    """The page's figures and build are the command line's, to the last bit."""
    options = ["--seed", *seed] if seed else []
    printed, shown = shop.document(plan, *options), browser.ask("results")["document"]
    for part in ("verdict", "totals", "layers", "findings"):
        assert shown[part] == printed[part], f"{plan}: {part} differ: {shown[part]} and {printed[part]}"
    assert browser.text("#verdict") == printed["verdict"]["line"], "the page tells another verdict"
    assert browser.ask("hash") == shop.hash(plan, *seed), f"{plan}: another build than the program's"


def expect_same_pattern(shop, browser, plan):
    """What the command says of each stretch of layers, shown where any is crossed."""
    printed = subprocess.run([shop.program, "pattern", plan, "--json"], check=True, capture_output=True)
    rows, shown = json.loads(printed.stdout)["rows"], browser.ask("results")["pattern"]["rows"]
    assert [row["text"] for row in shown] == [row["text"] for row in rows], f"{plan}: other patterns"
    crossed = any(row["verdict"] != "close wind" for row in rows)
    assert browser.element("#pattern").is_displayed() == crossed, f"{plan}: the pattern is shown or hidden wrongly"
    if not crossed:
        return
    browser.element("#pattern summary").click()
    told = browser.text("#pattern")
    for row in rows:
        for safe in row["safe_settings"]:
            assert f"{safe['key']} {safe['value']:.3f}\u00a0mm" in told, f"{safe} is not told: {told}"


def figures_are_equal(shop):
    with Browser() as browser:
        for name in SMALL:
            browser.open(shop.page(shop.sample(name)))
            browser.wait_for_build()
            expect_same(shop, browser, shop.sample(name))
            expect_same_pattern(shop, browser, shop.sample(name))
        browser.open(shop.page(shop.sample("loose-traverse"), "--seed", "7"))
        browser.wait_for_build()
        expect_same(shop, browser, shop.sample("loose-traverse"), "7")
        expect_quiet(browser)


def expect_quiet(browser):
    complaints = browser.complaints()
    assert not complaints, f"the console complains: {complaints}"
    inside = ("file://", "blob:", "data:")
    outside = [url for url in browser.requests() if not url.startswith(inside)]
    assert not outside, f"the page asks outside: {outside}"


def settings_are_tried(shop, browser):
    layers = browser.text("[data-figure='Layers']")
    field = browser.element("#field-traverse-pitch")
    field.clear()
    field.send_keys("0.35\n")
    browser.wait("page.changed && document.documentElement.dataset.build === 'full'", "the changed plan's build")
    text = browser.value("page.viewer.ask('planText').text")
    assert 'pitch = "0.35 mm"' in text and "# guide travel per spool turn" in text, "comments or the new pitch are gone"
    expect_same(shop, browser, shop.plan("changed", text))
    assert f"plan: {layers}" in browser.text("[data-figure='Layers']"), "what the plan gave is not told"

    # A step by the arrow key, as in the window: a fiftieth of the fiber, rounded.
    field.send_keys(Keys.ARROW_UP)
    assert field.get_attribute("value") != "0.35" and abs(float(field.get_attribute("value")) - 0.35) <= 0.02, "no step"
    field.send_keys(Keys.ARROW_DOWN)
    assert field.get_attribute("value") == "0.35", "no step back"

    # Another unit, and a dwell.
    field.clear()
    field.send_keys("10 mil\n")
    browser.element("#field-traverse-reversal-kind").send_keys("dwell")
    browser.wait("!document.getElementById('field-traverse-reversal-turns').disabled", "a dwell has turns")
    turns = browser.element("#field-traverse-reversal-turns")
    turns.clear()
    turns.send_keys("0.5\n")
    browser.wait_for_build()
    text = browser.value("page.viewer.ask('planText').text")
    assert 'pitch = "0.254 mm"' in text and 'kind = "dwell"' in text and "turns = 0.5" in text, text
    expect_same(shop, browser, shop.plan("dwell", text))

    # What cannot be wound says so at its field, and the last build stays.
    before = browser.ask("hash")
    field.clear()
    field.send_keys("wide\n")
    browser.wait("document.querySelector('#field-traverse-pitch-issues .error')", "an issue at the field")
    assert field.get_attribute("aria-invalid") == "true"
    assert browser.ask("hash") == before, "a plan that cannot be wound was laid"
    browser.element("#revert").click()
    browser.wait("!page.changed && document.documentElement.dataset.build === 'full'", "the plan as it came")
    assert field.get_attribute("value") == "0.256", field.get_attribute("value")
    expect_same(shop, browser, shop.sample("even"))


def layers_are_peeled(browser):
    whole, seen = browser.picture(), browser.seen()
    assert whole["colours"] > 200, f"the picture is empty: {whole}"
    browser.key("[")
    browser.key("[")
    peeled = browser.seen()
    assert peeled["last"] == seen["last"] - 2, "two layers were not taken off"
    assert browser.picture()["hash"] != whole["hash"], "the picture is the same without two layers"
    browser.key("a")
    assert browser.seen()["last"] == seen["last"]
    assert browser.picture()["hash"] == whole["hash"], "show all shows something else than before"
    for key, what in (("w", "wedge"), ("x", "cut")):
        browser.key(key)
        assert browser.seen()[what] is not None, f"{key} cuts nothing"
        assert browser.picture()["hash"] != whole["hash"]
        browser.key(key)
        assert browser.picture()["hash"] == whole["hash"], f"{key} again does not close the cut"


def wind_is_scrubbed(browser):
    browser.run("""const scrub = document.getElementById('scrub');
                   scrub.value = 0.25;
                   scrub.dispatchEvent(new Event('input'));""")
    seen = browser.seen()
    assert abs(seen["moment"]["length"] / seen["length"] - 0.25) < 1e-3, seen["moment"]
    browser.key(".")
    assert abs(browser.seen()["moment"]["turn"] - seen["moment"]["turn"] - 1.0) < 1e-6, "not one turn on"
    browser.key(" ")
    browser.wait(f"page.seen.moment.turn > {seen['moment']['turn'] + 3}", "the wind plays")
    browser.key(" ")
    assert not browser.seen()["playing"], "space does not stop the play"
    browser.key("End")
    assert browser.seen()["moment"]["atEnd"]


def picture_is_turned(browser):
    camera = browser.seen()["camera"]
    box = browser.element("#picture").rect
    middle = (box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
    browser.drag(middle, (middle[0] - 100, middle[1]))
    # 0.35 degrees to a pixel, to the right of the picture's left.
    turned = browser.seen()["camera"]
    assert abs(turned["azimuth"] - camera["azimuth"] - 35.0) < 1e-6, (camera, turned)
    assert abs(turned["elevation"] - camera["elevation"]) < 1e-6
    browser.command("Input.dispatchMouseEvent", type="mouseWheel", x=middle[0], y=middle[1], deltaX=0, deltaY=-300)
    browser.wait(f"page.viewer.ask('seen').camera.distance < {0.8 * camera['distance']}", "the wheel comes nearer")
    browser.key("0")
    browser.key("ArrowLeft")
    assert abs(browser.seen()["camera"]["azimuth"] - turned["azimuth"] + 6.0) < 1e-6, "the arrow does not turn it"
    browser.run("page.ask('look', { azimuth: 30, elevation: 20 })")


def turn_is_picked(browser):
    box = browser.element("#picture").rect
    browser.run("page.ask('look', { azimuth: 0, elevation: 0 })")
    browser.settle()
    browser.click_at(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
    facts = browser.seen()["picked"]
    assert facts, "a click on the wind picks nothing"
    # The eye looks along -Z at the middle of the spool: angle 90 degrees, half the inside width.
    assert abs(facts["angle"] - 90.0) < 2.0 and abs(facts["x"] - 47.5) < 1.0, facts
    assert not browser.element("#turn").get_attribute("hidden")
    assert f"{facts['layer']}, stroke to the {facts['direction']}" in browser.text("#turn")
    browser.element("[data-way='below']").click()
    below = browser.seen()["picked"]
    assert below["layer"] < facts["layer"] and below["r"] < facts["r"], (facts, below)
    browser.element("[data-way='none']").click()
    assert browser.seen()["picked"] is None


def finding_is_flown_to(browser):
    browser.element("#tab-findings").click()
    findings = browser.ask("results")["document"]["findings"]
    assert len(browser.driver.find_elements("css selector", ".finding")) == len(findings) > 2
    # Away from the flanges: near them a place stands aside, so that the picture is filled with fiber.
    one = next(i for i, each in enumerate(findings) if 5.0 < each["places"][0]["x"] < 90.0)
    if findings[one]["severity"] == "small":
        assert not browser.driver.find_elements("css selector", ".finding")[one].is_displayed(), "a small one is not folded"
        browser.element("#findings summary").click()
    browser.driver.find_elements("css selector", ".finding")[one].click()
    browser.wait(f"page.seen.chosen === {one} && !page.viewer.ask('seen').moving", "the flight")
    place = browser.ask("place", finding=one)
    width, height = browser.value("[page.viewer && document.getElementById('picture').width, "
                                  "document.getElementById('picture').height]")
    assert abs(place["x"] - width / 2) < 0.05 * width and abs(place["y"] - height / 2) < 0.05 * height, place
    browser.key("a")
    browser.key("0")


def units_are_changed(browser):
    browser.element("#tab-result").click()
    browser.element("[data-inch='true']").click()
    total = browser.ask("results")["document"]["totals"]
    inches = total["outer_diameter"]["greatest"] / 25.4
    assert f"{inches:.4f}" in browser.text("[data-figure='Outer diameter']"), "no inches"
    feet = float(f"{total['length_m'] / 0.3048:.5g}")
    assert f"{feet:,.10g}\u00a0ft" in browser.text("[data-figure='Fiber wound']"), "no feet"
    assert browser.text("#settings .unit") == "in"
    browser.element("[data-inch='false']").click()
    assert f"{total['outer_diameter']['greatest']:.2f}" in browser.text("[data-figure='Outer diameter']")


def everything_works(shop):
    with Browser() as browser:
        browser.open(shop.page(shop.sample("even")))
        browser.wait_for_build()
        browser.settle()
        shop.shoot(browser, "desktop")
        layers_are_peeled(browser)
        wind_is_scrubbed(browser)
        picture_is_turned(browser)
        turn_is_picked(browser)
        finding_is_flown_to(browser)
        units_are_changed(browser)
        settings_are_tried(shop, browser)
        expect_quiet(browser)


def main():
    program, hasher, samples = sys.argv[1:4]
    with tempfile.TemporaryDirectory() as made:
        folder = pathlib.Path(sys.argv[4] if len(sys.argv) > 4 else made)
        folder.mkdir(parents=True, exist_ok=True)
        shop = Shop(program, hasher, samples, folder)
        for step in (everything_works, figures_are_equal, on_a_phone.works, without_program.is_readable,
                     without_program.hostile_plan_stays_text, for_customer.on_a_phone, for_customer.prints_one_page, first_look.comes_before_all_else):
            step(shop)
            print(f"ok  {step.__module__.replace('__main__', 'page')}: {step.__name__.replace('_', ' ')}", flush=True)


if __name__ == "__main__":
    main()
