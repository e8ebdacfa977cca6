"""The page on the screen of a phone, under fingers."""

from browser import Browser


def works(shop):
    with Browser(width=390, height=844, phone=True) as browser:
        browser.open(shop.page(shop.sample("parallel")))
        browser.wait_for_build()
        browser.settle()
        shop.shoot(browser, "phone")
        assert browser.value("document.documentElement.scrollWidth <= innerWidth"), "the page is wider than the screen"
        box = browser.element("#picture").rect
        assert box["width"] == 390 and 280 <= box["height"] <= 520, f"the picture has no room: {box}"
        small = browser.run("""
            return [...document.querySelectorAll('#app button, #app input, #app select')]
              .filter((it) => it.checkVisibility() && it.type !== 'checkbox' && it.type !== 'radio' && it.type !== 'range')
              .filter((it) => it.getBoundingClientRect().height < 29).map((it) => it.outerHTML)""")
        assert not small, f"too small for a finger: {small}"
        fingers(browser, box)
        tabs(shop, browser)
        assert not browser.complaints()
    shows_all_words(shop)


def shows_all_words(shop):
    """The longest of the samples' titles and subtitles; no other words are cut off."""
    with Browser(width=390, height=844, phone=True) as browser:
        browser.open(shop.page(shop.sample("turns-back-early")))
        browser.wait_for_build()
        browser.settle()
        cut = browser.run("""
            return [...document.querySelectorAll('header p, #moment, #figures dd, #figures dt, [role=tab]')]
              .filter((it) => it.scrollWidth > it.clientWidth + 1).map((it) => it.textContent)""")
        assert not cut, f"words are cut off: {cut}"
        browser.draw_finely()
        shop.shoot(browser, "page")


def fingers(browser, box):
    middle = (box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
    before = browser.seen()["camera"]
    browser.touch([middle, (middle[0] + 60, middle[1] + 40)])
    turned = browser.seen()["camera"]
    assert abs(before["azimuth"] - turned["azimuth"] - 60 * 0.35) < 3.0, (before, turned)
    assert turned["elevation"] > before["elevation"] + 5.0, (before, turned)
    assert turned["distance"] == before["distance"], "one finger zooms"

    left, right = (middle[0] - 40, middle[1]), (middle[0] + 40, middle[1])
    browser.touch([left, (left[0] - 40, left[1])], [right, (right[0] + 40, right[1])])
    near = browser.seen()["camera"]
    assert abs(turned["distance"] / near["distance"] - 2.0) < 0.1, "twice as far apart is not twice as near"
    assert near["azimuth"] == turned["azimuth"], "a pinch turns the spool"

    browser.run("page.ask('look', { azimuth: 0, elevation: 0 })")
    browser.settle()
    browser.tap(*middle)
    browser.wait("page.seen.picked", "a tap picks a turn")
    assert not browser.element("#turn").get_attribute("hidden"), "a tap does not tell"


def tabs(shop, browser):
    for name in ("findings", "look", "turn", "result"):
        browser.element(f"#tab-{name}").click()
        shown = browser.run("return [...document.querySelectorAll('[role=tabpanel]')].filter((it) => !it.hidden)"
                            ".map((it) => it.id)")
        assert shown == [name], f"{name} shows {shown}"
        shop.shoot(browser, f"phone-{name}")
    browser.element("#tab-result").send_keys("\ue014")  # right arrow
    assert browser.value("document.activeElement.id") == "tab-findings", "arrows do not go from tab to tab"
