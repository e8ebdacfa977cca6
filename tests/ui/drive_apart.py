"""Two builds side by side, each moved alone; and what the panels remember from one start to the next.

    drive_apart.py LAYWRIGHT SAMPLES [SHOTS]
"""

import sys
import time

from window_driver import desk, run, share_different

SAME = 0.03  # of the pixels: the frame of the picture in hand comes and goes


def look(w):
    """What is seen of both once they are drawn in full."""
    return w.at_rest("picture", "other picture")


def unlink(w):
    w.key("k")
    w.until("two builds are compared", lambda s: s["comparing"] and "other picture" in s["places"])
    w.key("shift+k")
    w.settled()


def the_other_alone(w):
    camera = w.state()["stage"]["camera"]
    own, other = look(w)
    w.drag("other picture", (0.5, 0.5), (0.7, 0.6))
    own_after, other_after = look(w)
    w.shoot("other-alone")
    assert share_different(other, other_after) > 0.05, "the other picture did not turn"
    assert share_different(own, own_after) < SAME, "the first picture moved, too"
    assert w.state()["stage"]["camera"] == camera, "the camera of the first moved, too"


def keys_are_for_it(w):
    own, other = look(w)
    w.key("w")
    w.click("scrub bar", 0.3)
    w.xdo("mousemove", 20, 5)  # off the bar, whose tip lies over the pictures
    own_after, other_after = look(w)
    w.shoot("other-cut")
    assert share_different(other, other_after) > 0.03, "the other picture was not cut"
    assert share_different(own, own_after) < SAME, "the first picture was cut, too"
    assert w.state()["stage"]["scrub"]["at_end"], "the first scrubber moved, too"


def the_first_alone(w):
    camera = w.state()["stage"]["camera"]
    own, other = look(w)
    w.drag("picture", (0.5, 0.5), (0.3, 0.45))
    w.until("the first camera turns", lambda s: s["stage"]["camera"] != camera)
    own_after, other_after = look(w)
    assert share_different(own, own_after) > 0.05, "the first picture did not turn"
    assert share_different(other, other_after) < SAME, "the other picture moved, too"


def put_away(w):
    w.click("tab View")
    w.click("tab Layers")
    w.click("drawer button")
    w.until("the drawer is closed", lambda s: s["places"]["picture"][3] > 0)
    time.sleep(1.0)


def main():
    with desk() as (window, copy):
        plan = copy("even.lay.toml")
        w = window(plan)
        w.settled()
        run((unlink, the_other_alone, keys_are_for_it, the_first_alone, put_away), w)
        high = w.state()["places"]["picture"][3]
        w.leave()
        again = window(plan)
        again.settled()
        state = again.until("the drawer is closed as it was", lambda s: abs(s["places"]["picture"][3] - high) < 3.0)
        assert "findings filter" not in state["places"], "the findings are in front, not the view"
        again.shoot("again")
        again.leave()
    return 0


if __name__ == "__main__":
    sys.exit(main())
