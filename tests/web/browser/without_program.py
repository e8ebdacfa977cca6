"""The page where its program cannot run, on paper, and with a plan that means harm."""

from browser import Browser


def expect_readable(browser, document):
    assert not browser.element("#app").is_displayed(), "an empty program is shown"
    still = browser.element("#static")
    assert still.is_displayed()
    pictures = still.find_elements("css selector", "img")
    assert len(pictures) == 2 and all(picture.is_displayed() for picture in pictures)
    text = still.text
    totals = document["totals"]
    for row in (f"Turns {totals['turns']:,.1f}", f"Layers {totals['layers']}"):
        assert row in text, text[:600]
    assert f"{totals['outer_diameter']['greatest']:.2f} mm" in text
    assert document["verdict"]["line"] in text, "the verdict is missing"
    # The small ones are folded away.
    whole = still.get_attribute("textContent")
    assert all(found["text"] in whole for found in document["findings"]), "a finding is missing"


def is_readable(shop):
    page, document = shop.page(shop.sample("even")), shop.document(shop.sample("even"))
    with Browser(draws=False) as browser:
        browser.open(page)
        browser.wait("!document.getElementById('why').hidden", "why there is no spool in the round")
        assert "WebGL" in browser.text("#why")
        loaded = browser.value("[...document.images].every((it) => it.complete && it.naturalWidth > 600)")
        assert loaded, "a picture does not show"
        expect_readable(browser, document)
        shop.shoot(browser, "still")
    with Browser(scripts=False) as browser:
        browser.open(page)
        expect_readable(browser, document)
    with Browser() as browser:
        browser.open(page)
        browser.wait_for_build()
        browser.command("Emulation.setEmulatedMedia", media="print")
        expect_readable(browser, document)


HOSTILE = "</script><img src=x onerror=\\\"document.title='caught'\\\"><!-- \u2028 {{PLAN}} & <b>'"


def hostile_plan_stays_text(shop):
    text = shop.sample("parallel").read_text(encoding="utf-8")
    lines = [f'title = "{HOSTILE}"\nnotes = "{HOSTILE}"' if line.startswith("title") else line
             for line in text.splitlines() if not line.startswith("notes")]
    plan = shop.plan("hostile", "\n".join(lines) + "\n")
    # What would break a line is made visible.
    title = HOSTILE.replace('\\"', '"').replace("\u2028", "\\u2028")
    with Browser() as browser:
        browser.open(shop.page(plan))
        browser.wait_for_build()
        assert browser.text("h1") == title, browser.text("h1")
        assert browser.value("document.title") == title, browser.value("document.title")
        assert browser.value("document.querySelectorAll('img').length") == 2, "the plan brought a picture"
        assert browser.value("page.plan.text") == plan.read_text(encoding="utf-8"), "the plan is not as it was"
        assert not browser.complaints()
