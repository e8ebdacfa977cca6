"""A system that starts no further thread: what waits for one says so, and comes when it is asked for again.

    drive_fault_threads.py LAYWRIGHT SAMPLES [SHOTS]

NO_THREADS_LIBRARY is the library that refuses them.
"""

import os
import pathlib
import sys

from window_driver import desk

PITCH = "traverse.pitch"


def says(trouble, what):
    return trouble.startswith(f"The system starts no further thread for {what}:") and "close other programs" in trouble


def a_panel(w, refused):
    """The threads of the window are there already, that of the map is not."""
    w.settled()
    refused.touch()
    w.click("tab Map")
    w.until("the map says so", lambda s: says(s["map"]["trouble"], "the map"))
    w.shoot("no-thread-for-the-map")
    refused.unlink()
    w.fill(PITCH, "0.29")
    w.settled()
    w.until("the map is drawn", lambda s: s["map"]["drawn"] and not s["map"]["trouble"])
    print("a panel: as it should be")


def from_the_start(w, refused):
    """No thread at all: the window is there, and paints by itself once there is something to see."""
    w.until("it says so", lambda s: says(s["hint"], "this wind"))
    w.shoot("no-thread-for-the-wind")
    refused.unlink()
    w.key("F5")
    w.settled()
    w.until("painted", lambda s: s["painted"])
    w.shoot("threads-again")
    print("from the start: as it should be")


def main():
    with desk() as (window, copy):
        plan = copy("even.lay.toml")
        refused = pathlib.Path(plan).parent / "refused"
        # The driver draws on the thread that asks: it cannot do without threads that it is refused.
        surroundings = {"preload": os.environ["NO_THREADS_LIBRARY"], "NO_THREADS_WHILE": str(refused),
                        "LP_NUM_THREADS": "0"}
        w = window(plan, **surroundings)
        a_panel(w, refused)
        w.leave()
        refused.touch()
        w = window(plan, **surroundings)
        from_the_start(w, refused)
        w.leave()
    return 0


if __name__ == "__main__":
    sys.exit(main())
