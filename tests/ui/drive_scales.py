"""The window at sizes and scales from a small laptop to a large screen of fine pixels: the letters grow with the
screen's scale, and everything has its place.

    drive_scales.py LAYWRIGHT SAMPLES [SHOTS]
"""

import sys
import time

from window_driver import desk

# Screen, its dots per inch as the desktop tells them, size of the window, scale of the letters (dots per inch / 96).
CASES = (
    ("800x600", 96, "800x600", 1.0),
    ("1280x800", 96, "1280x800", 1.0),
    ("1920x1080", 144, "1920x1080", 1.5),
    ("3840x2160", 192, "3840x2160", 2.0),
)


def inside(box, outer):
    x, y, width, height = box
    return x >= -1 and y >= -1 and x + width <= outer[0] + 1 and y + height <= outer[1] + 1


def check(w, size, scale, name):
    state = w.settled()
    time.sleep(1.0)
    width, height = (int(v) for v in size.split("x"))
    assert abs(state["scale"] - scale) < 0.02, f"the letters' scale is {state['scale']}, not {scale}"
    for place in ("picture", "scrub bar", "tab Plan", "tab Findings", "tab Section", "field spool.barrel_diameter"):
        assert place in state["places"], f"{place} is not on the screen at {size}"
        assert inside(state["places"][place], (width, height)), f"{place} is cut off at {size}"
    picture = state["places"]["picture"]
    assert picture[2] > 0.38 * width and picture[3] > 0.3 * height, f"the picture is cramped: {picture}"
    field = state["places"]["field spool.barrel_diameter"]
    assert field[2] > 4.0 * 15.0 * scale, f"a field has no room for its value: {field}"
    w.shoot(f"{name}-light")
    w.key("l")
    w.until("dark", lambda s: s["stage"]["dark"])
    w.settled()
    w.shoot(f"{name}-dark", after=1.0)
    w.key("l")


def main():
    for screen, dpi, size, scale in CASES:
        with desk(screen, dpi) as (window, copy):
            w = window(copy("even.lay.toml"), size=size)
            check(w, size, scale, size)
            w.leave()
        print(f"{size} at {dpi} dots per inch: as it should be", flush=True)
    return 0


if __name__ == "__main__":
    sys.exit(main())
