"""Takes the documents' pictures of the window anew, by real input under a virtual display, as a person would come to
them; look at them before they are kept.

    window_pictures.py LAYWRIGHT SAMPLES samples/pictures
"""

import pathlib
import sys
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "ui"))

from window_driver import desk  # noqa: E402


def painted(w):
    w.until("painted finely", lambda s: s["painted"] and not s["scene_busy"])
    w.xdo("mousemove", 900, 8)  # no tool tip
    time.sleep(0.7)


def the_window(window, copy):
    w = window(copy("long-dwell.lay.toml"), size="1440x900")
    w.settled()
    painted(w)
    w.shoot("window")
    w.leave()


def why(window, copy):
    w = window(copy("pitch-too-fine.lay.toml", changes=(("length", "1 km"),)), size="1440x900")
    w.settled()
    w.click("finding 0")
    w.until("it is chosen", lambda s: s["stage"]["chosen_finding"] == 0)
    w.key("y")
    w.until("it is answered", lambda s: s["advice"]["cause"].get("text") and "cause set 0" in s["places"])
    painted(w)
    w.shoot("why")
    w.leave()


def a_lesson(window, copy):
    w = window(copy("even.lay.toml"))
    w.settled()
    w.click("menu Learn")
    w.click("lesson 2")
    w.until("it begins", lambda s: s["lesson"]["step"] == 1 and not s["lesson"]["waits"])
    w.key("Return")
    w.until("it asks", lambda s: s["lesson"]["step"] == 2 and not s["lesson"]["waits"])
    for step in (2, 3):
        w.key("2")
        w.until("it is answered", lambda s: s["lesson"]["answer"] == 1)
        if step == 2:
            w.key("Return")
            w.until("it asks again", lambda s: s["lesson"]["step"] == 3 and not s["lesson"]["waits"])
    w.until("it is seen", lambda s: s["stage"]["scrub"]["at_end"] and s["stage"]["wedge"] is not None)
    time.sleep(2.0)  # the camera flies there
    w.at_rest("picture", "other picture")
    painted(w)
    w.shoot("lesson")
    w.process.terminate()


def shown_to_others(window, copy):
    w = window(copy("even.lay.toml"))
    w.settled()
    w.key("F9")
    w.until("it has filled by half", lambda s: s["showing"]["filled"] > 0.6)
    w.key("space")
    painted(w)
    w.shoot("showing")
    w.process.terminate()


def main():
    with desk() as (window, copy):
        for picture in (the_window, why, a_lesson, shown_to_others):
            picture(window, copy)


main()
