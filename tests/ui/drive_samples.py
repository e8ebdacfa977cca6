"""Every sample in one window: opened, laid, a turn picked, a finding flown to, scrubbed, cut, edited, undone, saved.

    drive_samples.py LAYWRIGHT SAMPLES [SHOTS]
"""

import pathlib
import sys
import time

from window_driver import desk, share_different


def opened(w, plan, count):
    w.key("ctrl+o")
    w.until("the file sheet is open", lambda s: "file name" in s["places"])
    w.calm()
    w.type(str(plan))
    w.key("Return")
    w.until("it is open", lambda s: s["file"] == str(plan) and s["documents"] == count)
    return w.settled()


def looked_at(w, name):
    state = w.settled()
    w.shoot(f"sample-{name}", after=0.8)
    w.key("1", "z")
    w.calm()
    w.click("picture", 0.5, 0.5)
    w.until("a turn is picked", lambda s: s["stage"]["picked"])
    w.click("tab Findings")
    if state["build"]["findings"]:
        w.click("finding 0") if "finding 0" in w.state()["places"] else w.key("n")
        w.until("a finding is chosen", lambda s: s["stage"]["chosen_finding"] is not None)
        w.settled()
        w.shoot(f"sample-{name}-finding", after=0.5)
    w.key("shift+BackSpace", "a", "5")
    return state


def scrubbed_and_cut(w):
    w.click("scrub bar", 0.5)
    w.until("half of the wind", lambda s: not s["stage"]["scrub"]["at_end"])
    w.key("End")
    w.until("all of it", lambda s: s["stage"]["scrub"]["at_end"])
    w.settled()
    time.sleep(0.8)
    whole = w.pixels()
    w.key("w")
    w.until("a wedge is cut", lambda s: s["stage"]["wedge"])
    w.settled()
    until = time.monotonic() + 20.0
    while share_different(whole, w.pixels()) <= 0.005:
        assert time.monotonic() < until, "the cut is not to be seen"
        time.sleep(0.3)
    w.key("a")


def edited_and_saved(w, plan):
    before = w.state()["fields"]["traverse.pitch"]["text"]
    w.scroll_to("more traverse.pitch")
    w.click("more traverse.pitch")
    w.until("a step more", lambda s: s["fields"]["traverse.pitch"]["text"] != before and s["dirty"])
    w.key("ctrl+z")
    w.until("undone", lambda s: s["fields"]["traverse.pitch"]["text"] == before and not s["dirty"])
    text = plan.read_bytes()
    w.key("ctrl+y")
    w.until("done again", lambda s: s["dirty"])
    w.key("ctrl+s")
    w.until("saved", lambda s: not s["dirty"])
    assert plan.read_bytes() != text, "the step is not in the file"
    w.settled()


def main():
    samples = sorted(p.name for p in pathlib.Path(sys.argv[2]).glob("*.lay.toml"))
    assert len(samples) >= 12
    with desk() as (window, copy):
        plans = [copy(name) for name in samples]
        w = window(plans[0])
        w.settled()
        for i, plan in enumerate(plans):
            if i > 0:
                opened(w, plan, i + 1)
            looked_at(w, plan.name.split(".")[0])
            scrubbed_and_cut(w)
            edited_and_saved(w, plan)
            print(f"{plan.name}: as it should be", flush=True)
        w.leave()
    return 0


if __name__ == "__main__":
    sys.exit(main())
