"""Showing mode: entered and left by key, fills while its figures count, pauses, begins again.

    drive_showing.py LAYWRIGHT SAMPLES [SHOTS]
"""

import time

from window_driver import desk, run, share_different


def showing(w, what, test):
    return w.until(what, lambda s: s["showing"] and test(s["showing"]))["showing"]


def it_begins(w):
    before = w.settled()
    w.camera = before["stage"]["camera"]
    w.key("F9")
    showing(w, "it is shown", lambda s: s["seconds"] > 0.0)
    w.window = [int(v) for v in w.size.split("x")]
    state = w.until("the picture has the whole window", lambda s: s["places"]["picture"][2:] == w.window)
    assert "menu File" not in state["places"] and "scrub bar" not in state["places"], "panels are left"


def figures_count(w):
    first = showing(w, "it fills", lambda s: 0.1 < s["filled"] < 0.5)
    shot = w.pixels()
    w.shoot("showing-early")
    second = showing(w, "on", lambda s: s["filled"] > first["filled"] + 0.3)
    assert share_different(shot, w.pixels()) > 0.02, "the picture stands still"
    for figure in ("length_mm", "turns", "diameter_mm"):
        assert second[figure] > first[figure], f"{figure} does not count"
    w.shoot("showing-half")


def space_pauses(w):
    w.key("space")
    held = showing(w, "paused", lambda s: s["paused"])
    time.sleep(1.5)
    state = w.state()
    assert state["showing"]["seconds"] == held["seconds"], "it goes on"
    w.until("painted finely", lambda s: s["painted"])
    w.shoot("showing-paused")
    w.key("i")
    showing(w, "sizes are told", lambda s: s["details"])
    w.key("l")
    w.until("dark", lambda s: s["stage"]["dark"])
    w.until("painted", lambda s: s["painted"])
    w.shoot("showing-dark")
    w.key("l", "i", "w")  # the last is a key of the window, not of this
    time.sleep(0.3)
    assert w.state()["stage"]["wedge"] is None, "a key that means nothing here has cut the spool"
    w.key("space")
    showing(w, "it goes on", lambda s: not s["paused"] and s["seconds"] > held["seconds"])


def filled_it_turns_and_begins_again(w):
    full = showing(w, "filled", lambda s: s["filled"] == 1.0)
    build = w.state()["build"]
    assert abs(full["length_mm"] - build["length_mm"]) < 1e-6 * build["length_mm"]
    assert abs(full["turns"] - build["turns"]) < 1e-6 * build["turns"]
    assert abs(full["diameter_mm"] - build["outer_diameter_mm"]) < 0.5
    first = w.pixels()
    time.sleep(3.0)
    assert share_different(first, w.pixels()) > 0.02, "it does not turn"
    w.shoot("showing-turns")
    showing(w, "it begins again", lambda s: s["filled"] < 0.2)


def escape_leaves(w):
    w.key("Escape")
    state = w.until("left", lambda s: s["showing"] is None and "menu File" in s["places"])
    assert state["stage"]["camera"] == w.camera, "the camera of the window has moved"
    w.settled()
    assert w.state()["stage"]["scrub"]["at_end"]
    w.shoot("showing-left")


def full_screen(w):
    small = w.state()["places"]["picture"]
    w.key("F11")
    w.until("the window has the whole screen", lambda s: s["places"]["picture"][2] > small[2] + 500)
    w.key("F9")
    showing(w, "shown", lambda s: s["seconds"] > 0.2)
    w.until("all of it", lambda s: s["places"]["picture"][2:] == [1920, 1080])
    w.key("Escape", "F11")
    w.until("as it was", lambda s: s["places"]["picture"][2] == small[2])


if __name__ == "__main__":
    with desk() as (new_window, copy_sample):
        w = new_window(copy_sample("even.lay.toml"))
        run([it_begins, figures_count, space_pauses, filled_it_turns_and_begins_again, escape_leaves, full_screen], w)
        w.leave()
        small = new_window(copy_sample("parallel.lay.toml"), size="800x600")
        small.settled()
        small.key("F9")
        showing(small, "half", lambda s: s["filled"] > 0.5)
        small.shoot("showing-small")
        small.leave()  # from within
