"""The graphics driver is reset: the window is made anew and goes on; where it is reset again at once, the window ends
with its unsaved work kept. The environment's DRIVER_RESET_LIBRARY pretends it (driver_reset/driver_reset.cpp).

    drive_fault_reset.py LAYWRIGHT SAMPLES [SHOTS]
"""

import os
import pathlib
import sys
import time

from window_driver import WAIT_S, desk, share_different

PITCH = "traverse.pitch"


def reset(w, order):
    order.write_text("", encoding="utf-8")
    w.until("the window asks whether its OpenGL is lost", lambda _: not order.exists())


def goes_on(w, order, folder):
    w.settled()
    w.fill(PITCH, "0.29")
    w.settled()
    w.until("painted", lambda s: s["painted"])
    shown = w.pixels("tab Findings")
    reset(w, order)
    state = w.until("it says so", lambda s: any("driver was reset" in n for n in s["notices"]))
    assert state["dirty"] and state["fields"][PITCH]["text"] == "0.29", "the work is not there any more"
    assert list(folder.glob("state/laywright/recovery/*/*.toml")), "no copy of the unsaved work is kept"
    w.shoot("driver-reset")
    assert share_different(shown, w.at_rest("tab Findings")[0]) < 0.02, "the panels' letters are not as before"
    w.click("dismiss notice")
    w.until("it answers the mouse", lambda s: not s["notices"])
    w.settled()
    w.at_rest("picture")
    w.shoot("after-reset")


def draws_on(w):
    before = w.pixels()
    w.fill(PITCH, "0.4")
    w.until("the new build is painted", lambda s: s["fields"][PITCH]["text"] == "0.4" and s["painted"])
    assert share_different(before, w.at_rest("picture")[0]) > 0.005, "the picture does not change any more"


def resets_again(w, order, errors):
    time.sleep(5.5)  # so late it is a new trouble
    reset(w, order)
    reset(w, order)
    assert w.process.wait(WAIT_S) == 3, "the exit code is another"
    words = errors.read_text(encoding="utf-8")
    assert "reset twice" in words and "Unsaved work is kept" in words and "LIBGL_ALWAYS_SOFTWARE" in words, words


def main():
    with desk() as (window, copy):
        plan = copy("even.lay.toml")
        folder = pathlib.Path(plan).parent
        order, errors = folder / "reset", folder / "errors.txt"
        with errors.open("w") as stderr:
            w = window(plan, errors=stderr, preload=os.environ["DRIVER_RESET_LIBRARY"], DRIVER_RESET=str(order))
        goes_on(w, order, folder)
        draws_on(w)
        resets_again(w, order, errors)
        w = window()
        w.takes_up(PITCH, "0.4")
        w.leave()
        print("the driver is reset: as it should be")
    return 0


if __name__ == "__main__":
    sys.exit(main())
