"""Files: dropped ones, recent ones, the file sheet, a second plan beside the first, work that a killed program leaves
behind, and a long plan whose laying is stopped.

    drive_files.py LAYWRIGHT SAMPLES [SHOTS]
"""

import os
import signal
import sys

import drop_files
from window_driver import desk

PITCH = "traverse.pitch"


def drop(w, *files):
    # The dropper reads the display from the environment.
    os.environ["DISPLAY"] = w.env["DISPLAY"]
    drop_files.drop(w.number(), files)


def dropped_beside(w, second):
    w.settled()
    w.fill(PITCH, "0.27", end=None)  # typed, not taken yet: belongs to the first plan
    drop(w, second)
    state = w.until("the dropped plan is open", lambda s: s["documents"] == 2 and s["file"] == str(second))
    assert state["fields"][PITCH]["text"] != "0.27", "what was typed into one plan went into the other"
    w.settled()
    w.shoot("dropped")
    w.key("ctrl+Page_Up")
    first = w.until("the first plan again", lambda s: s["file"] != str(second))
    assert first["fields"][PITCH]["text"] == "0.27", "what was being typed was lost"
    w.key("ctrl+Page_Down")
    w.until("and back", lambda s: s["file"] == str(second))


def compared(w):
    w.settled()
    w.key("ctrl+k")
    w.until("it is asked which", lambda s: "compare 0" in s["places"])
    w.click("compare 0")
    w.until("two pictures and their differences",
            lambda s: s["comparing"] and "other picture" in s["places"] and "differences" in s["places"])
    w.settled()
    w.shoot("two-plans", after=1.0)


def dropped_nonsense(w, folder):
    wrong = folder / "holiday.txt"
    wrong.write_text("This is no plan.\n", encoding="utf-8")
    drop(w, wrong)
    state = w.until("it says that this is no plan", lambda s: s["notices"])
    assert "holiday.txt" in state["notices"][0], f"it does not name the file: {state['notices']}"
    assert state["documents"] == 2
    w.shoot("no-plan", after=0.3)
    w.click("dismiss notice")
    w.until("the message is gone", lambda s: not s["notices"])


def file_sheet(w, folder, third):
    w.key("ctrl+o")
    w.until("the files are listed", lambda s: f"file {third.name}" in s["places"])
    late = folder / "late.lay.toml"
    late.write_bytes(third.read_bytes())
    w.until("a file that has just come is listed, too", lambda s: f"file {late.name}" in s["places"])
    w.shoot("file-sheet")
    w.type(third.name)
    w.key("Return")
    w.until("the third is open", lambda s: s["documents"] == 3 and s["file"] == str(third))


def killed(w):
    w.settled()
    w.fill(PITCH, "0.29")
    w.until("changed", lambda s: s["dirty"] and s["fields"][PITCH]["text"] == "0.29")
    w.is_kept("*.toml", "0.29 mm")
    w.is_kept("settings.toml", w.state()["file"])  # among the recent ones
    w.process.send_signal(signal.SIGKILL)
    w.process.wait(20)


def recovered(window, third):
    w = window()
    state = w.until("the unsaved work is offered", lambda s: s["recovery_offers"] >= 1 and "recover 0" in s["places"])
    assert str(third) in state["recent"], "the newest plan is not among the recent ones"
    w.shoot("recovery")
    offers = state["recovery_offers"]
    for _ in range(offers):
        before = w.state()["documents"]
        w.click("recover 0")
        w.until("it is open", lambda s: s["documents"] == before + 1 or s["fields"][PITCH]["text"] == "0.29")
        if w.state()["fields"][PITCH]["text"] == "0.29":
            break
    state = w.until("the work is there", lambda s: s["fields"][PITCH]["text"] == "0.29" and s["dirty"])
    assert state["file"] == str(third)
    return w


def recent(w):
    w.click("menu File")
    w.until("the menu is open", lambda s: "menu recent" in s["places"])
    w.click("menu recent")
    w.until("the recent ones are listed", lambda s: "recent 1" in s["places"])
    w.shoot("recent")
    name = w.state()["recent"][1]
    w.click("recent 1")
    w.until("it is open", lambda s: s["file"] == name)


def stopped(w):
    w.settled()
    w.fill("wind.length", "900 km")
    w.until("a long plan is being laid", lambda s: s["laying"] and s["fields"]["wind.length"]["text"].startswith("9"))
    w.shoot("laying", after=0.5)
    w.key("Escape")
    state = w.until("it was stopped", lambda s: not s["laying"])
    assert "F5" in state["hint"], f"it does not say how to go on: {state['hint']}"
    w.shoot("stopped")
    w.key("ctrl+z")
    w.until("back", lambda s: not s["fields"]["wind.length"]["text"].startswith("9"))


def saved_without_ending(w, folder):
    w.settled()
    w.key("ctrl+shift+s")
    w.until("a name is asked", lambda s: "file name" in s["places"])
    w.key("ctrl+a")
    w.type("mine")
    w.shoot("no-ending", after=0.3)
    w.key("Return")
    w.until("the file has the ending of plans", lambda s: s["file"] == str(folder / "mine.lay.toml"))
    assert (folder / "mine.lay.toml").is_file() and not (folder / "mine").exists()


def main():
    with desk() as (window, copy):
        first, second = copy("even.lay.toml"), copy("even.lay.toml", "second.lay.toml")
        third = copy("even.lay.toml", "third.lay.toml")
        w = window(first)
        dropped_beside(w, second)
        compared(w)
        dropped_nonsense(w, first.parent)
        file_sheet(w, first.parent, third)
        killed(w)
        w = recovered(window, third)
        recent(w)
        stopped(w)
        saved_without_ending(w, first.parent)
        w.leave()
        print("files: as they should be")
    return 0


if __name__ == "__main__":
    sys.exit(main())
