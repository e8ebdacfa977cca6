"""The share page from the window: asked for by menu and by key, saved, stopped, refused. A program without one says so, and
the rest is skipped; where SHARE_PAGE_IS_BUILT is ON, it may not be without.

    drive_page.py LAYWRIGHT SAMPLES [SHOTS]
"""

import html
import os
import re
import subprocess
import sys
import time

from window_driver import desk, run


def ask_for_name(w, path):
    w.click("page save")
    w.name_file(path)


NOT_WRITTEN = 3  # exit code
SHARE_PAGE = "share page"
SKIPPED = 77  # to CTest


def without_pictures(page):
    return re.sub(r"data:image/png;base64,[A-Za-z0-9+/=]*", "", page)


class Checks:
    def __init__(self, plan, written):
        self.folder, self.written = plan.parent, without_pictures(written)
        self.title = re.search(r'^title = "(.*)"', plan.read_text(encoding="utf-8"), re.MULTILINE)[1]

    def saved_by_menu(self, w):
        w.settled()
        w.click("menu File")
        w.until("the menu is open", lambda s: "menu Share page..." in s["places"])
        w.shoot("page-menu")
        w.click("menu Share page...")
        w.until("it tells what the page is", lambda s: "page save" in s["places"])
        w.shoot("page-dialog", after=0.3)
        path = self.folder / "wind.html"
        ask_for_name(w, path)
        w.shoot("page-name")
        w.key("Return")
        w.until("it is saved", lambda s: s["page"]["done"] and s["page"]["path"] == str(path))
        w.shoot("page-saved", after=0.3)
        assert w.state()["page"]["trouble"] == "", w.state()["page"]
        self.is_whole(path)
        w.key("Escape")
        w.until("the dialog is closed", lambda s: s["question"] is None)

    def is_whole(self, path):
        """One HTML file with the plan's title that refers to nothing but itself."""
        text = path.read_text(encoding="utf-8")
        assert text.startswith("<!doctype html>") and text.rstrip().endswith("</html>")
        assert f"<title>{html.escape(self.title)}</title>" in text, "the page has another title"
        outside = [it for it in re.findall(r'<[^>]*\b(?:src|href)="([^"]*)"', text) if not it.startswith("data:")]
        assert not outside, f"the page refers to {outside}"
        assert "<link" not in text and "@import" not in text
        assert without_pictures(text) == self.written, "it is not the page that laywright share writes"
        left = [it.name for it in self.folder.iterdir() if it.name.startswith(path.name) and it != path]
        assert not left, f"beside the page lies {left}"

    def saved_by_keys_alone(self, w):
        w.key("ctrl+e")
        w.until("the dialog is there", lambda s: s["question"] == SHARE_PAGE)
        w.calm()
        w.key("Return")  # the keyboard is on the button
        w.until("a name is asked for", lambda s: "file name" in s["places"])
        w.key("ctrl+a")
        path = self.folder / "keys.html"
        w.type(str(path))
        w.key("Return")
        w.until("it is saved", lambda s: s["page"]["done"] and s["page"]["path"] == str(path))
        self.is_whole(path)
        w.key("Escape")
        w.until("the dialog is closed", lambda s: s["question"] is None)

    def refused(self, w):
        w.key("ctrl+e")
        w.until("the dialog is there", lambda s: s["question"] == SHARE_PAGE)
        ask_for_name(w, self.folder / "wind.txt")
        w.shoot("page-wrong-name")
        w.key("Return")
        time.sleep(0.5)
        assert "file name" in w.state()["places"], "a page was saved under a name that no browser opens"
        w.key("ctrl+a")
        w.type(str(self.folder / "nowhere" / "wind.html"))
        w.key("Return")
        w.until("it is told why not", lambda s: s["page"]["done"] and s["page"]["trouble"])
        w.shoot("page-failed", after=0.3)
        w.key("Escape")
        w.until("the dialog is closed", lambda s: s["question"] is None)


def stopped(w, folder):
    """A longer wind takes a moment to draw: time enough to stop it."""
    w.settled()
    w.key("ctrl+e")
    w.until("the dialog is there", lambda s: s["question"] == SHARE_PAGE)
    path = folder / "stopped.html"
    ask_for_name(w, path)
    w.key("Return")
    w.until("it is being made", lambda s: s["page"] and not s["page"]["done"] and "page stop" in s["places"])
    w.shoot("page-making")
    w.click("page stop")
    state = w.until("it is over", lambda s: s["page"]["done"])
    w.shoot("page-stopped")
    assert state["page"]["stopped"] and not path.exists(), state["page"]


def for_a_customer(w, folder):
    """The same choices as the command's; what was chosen is remembered, and the page is the customer's."""
    w.settled()
    w.key("ctrl+e")
    w.until("the dialog is there", lambda s: s["question"] == SHARE_PAGE)
    w.click("page for customer")
    w.until("it is for a customer", lambda s: s["page_choices"]["for_customer"] and "page field Sender" in s["places"])
    for field, text in (("Customer", "Rowan Mills"), ("Sender", "Corder and Sons"), ("Logo", "none.png")):
        w.click(f"page field {field}")
        w.type(text)
        w.until(f"{field} is {text}", lambda s: s["page_choices"][field.lower()] == text)
    w.click("page verdict")
    w.until("the verdict is to be told", lambda s: s["page_choices"]["verdict"])
    w.shoot("page-customer")
    ask_for_name(w, folder / "customer.html")
    w.key("Return")
    w.until("the logo is not found", lambda s: s["page"]["done"] and s["page"]["trouble"])
    assert not (folder / "customer.html").exists(), "a page without its logo"
    w.click("page field Logo")
    w.key("ctrl+a")
    w.key("BackSpace")
    w.until("no logo", lambda s: s["page_choices"]["logo"] == "")
    ask_for_name(w, folder / "customer.html")
    w.key("Return")
    w.until("it is saved", lambda s: s["page"]["done"] and not s["page"]["trouble"])
    text = (folder / "customer.html").read_text(encoding="utf-8")
    assert 'data-for="customer"' in text and "For Rowan Mills, from Corder and Sons" in text and "Your spool holds" in text
    w.key("Escape")
    w.until("the dialog is closed", lambda s: s["question"] is None)


def without_page(w):
    """The program says that it has none; there is nothing else to drive."""
    w.settled()
    w.key("ctrl+e")
    state = w.until("it says why there is none", lambda s: s["notices"])
    assert "built without the share page" in state["notices"][0], state["notices"]
    w.shoot("no-page", after=0.3)
    w.leave()


def main():
    with desk() as (window, copy):
        plan = copy("even.lay.toml")
        w = window(plan)
        written = plan.parent / "written.html"
        if subprocess.run([sys.argv[1], "share", plan, "-o", written]).returncode == NOT_WRITTEN:
            assert os.environ.get("SHARE_PAGE_IS_BUILT") != "ON", "the program lacks the share page that it was built with"
            without_page(w)
            print("no share page in this program, and it says so: there is nothing else to drive")
            return SKIPPED
        checks = Checks(plan, written.read_text(encoding="utf-8"))
        run((checks.saved_by_menu, checks.saved_by_keys_alone, checks.refused), w)
        w.leave()
        w = window(copy("parallel.lay.toml"))
        for_a_customer(w, plan.parent)
        w.leave()
        w = window(copy("long.lay.toml"))
        stopped(w, plan.parent)
        w.key("Escape")
        w.leave()
        print("share page: as it should be")
    return 0


if __name__ == "__main__":
    sys.exit(main())
