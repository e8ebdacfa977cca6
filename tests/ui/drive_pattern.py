"""Patterns of a crossed wind in the window: the ribbon is told, each safe setting is set by a click or by keys, and taken back.

    drive_pattern.py LAYWRIGHT SAMPLES [SHOTS]
"""

import json
import subprocess
import sys
import time

from window_driver import desk, run


def told(plan):
    """What the command says of the plan's only row."""
    printed = subprocess.run([sys.argv[1], "pattern", str(plan), "--json"], check=True, capture_output=True, text=True)
    return json.loads(printed.stdout)["rows"][0]


def ribbons(state):
    return sum(f["kind"] == "ribbon" for f in state["build"]["findings"])


def laid_anew(w, before):
    w.until("another build is laid", lambda s: s["build"]["revision"] > before["build"]["revision"]
            and s["build"]["full"] and not s["laying"])
    return w.settled()


def set_buttons(state):
    return [name for name in state["places"] if name.startswith("pattern set ")]


class Checks:
    def __init__(self, row):
        self.row = row

    def tells_the_ribbon(self, w):
        state = w.settled()
        assert ribbons(state) > 0, "the sample has no ribbon"
        assert not set_buttons(state), "the panel is shown unasked"
        w.key("ctrl+r")
        state = w.until("the panel is there", lambda s: s["keys_in"] == "Pattern" and set_buttons(s))
        safe = self.row["safe_settings"]
        assert len(set_buttons(state)) == len(safe) == 4, set_buttons(state)
        assert "pattern curve" in state["places"], "there is no curve"
        w.shoot("pattern-ribbon", after=0.3)

    def each_setting_mends_it(self, w):
        for i, safe in enumerate(self.row["safe_settings"]):
            before = w.settled()
            w.click(f"pattern set {safe['key']} {i}")
            w.until(f"{safe['key']} is set", lambda s, safe=safe: abs(
                float(s["fields"][safe["key"]]["text"]) - safe["value"]) < 1e-9)
            state = laid_anew(w, before)
            assert ribbons(state) == 0, f"{safe['key']} {safe['value']} leaves a ribbon"
            assert not set_buttons(state), "a close pattern is to be set otherwise"
            w.shoot(f"pattern-set-{i}", after=0.3)
            w.key("ctrl+z")
            w.until("one undo takes it back", lambda s, safe=safe: float(
                s["fields"][safe["key"]]["text"]) == safe["instead_of"] and not s["can_undo"])
            assert ribbons(laid_anew(w, state)) > 0, "the ribbon is not back"

    def judged_over_draws_by_its_button(self, w):
        w.settled()
        w.click("verdict draws")
        w.until("it is judged over draws", lambda s: "of 5 draws" in s["advice"]["draws"].get("line", "")
                and "verdict draws" not in s["places"])
        w.shoot("over-draws", after=0.3)

    def by_keys_alone(self, w):
        before = w.settled()
        w.key("ctrl+0", "ctrl+r")
        w.until("the keyboard is in the panel", lambda s: s["keys_in"] == "Pattern")
        for _ in range(6):
            w.key("Return")
            w.calm()
            if w.state()["can_undo"]:
                break
            w.key("Down")
        w.until("a setting is set by keys", lambda s: s["can_undo"])
        state = laid_anew(w, before)
        assert ribbons(state) == 0, "what the keys set leaves a ribbon"
        w.key("Escape", "ctrl+z")
        laid_anew(w, state)


def nothing_to_set(w, name):
    """A close wind, or a stepped guide: words, no curve and no button."""
    w.settled()
    w.key("ctrl+r")
    w.until("the panel is there", lambda s: s["keys_in"] == "Pattern")
    time.sleep(0.5)
    state = w.state()
    assert not set_buttons(state) and "pattern curve" not in state["places"], "a pattern of a wind that has none"
    w.shoot(f"pattern-{name}")


def in_small_windows(window, plan):
    """The buttons stand within the window."""
    for size in ("1024x700", "800x600"):
        w = window(plan, size=size)
        w.settled()
        w.until("painted", lambda s: s["painted"])
        w.key("ctrl+r")
        w.until("the panel is there", set_buttons)
        width, height = (int(v) for v in size.split("x"))
        w.calm()
        state = w.state()
        for name in ("tab Pattern", *set_buttons(state)[:2]):
            box = state["places"][name]
            assert 0 <= box[0] and box[0] + box[2] <= width and box[1] + box[3] <= height, (size, name, box)
        w.shoot(f"pattern-{size}")
        w.leave()


def main():
    with desk() as (window, copy):
        plan = copy("whole-ratio.lay.toml")
        checks = Checks(told(plan))
        w = window(plan)
        run((checks.tells_the_ribbon, checks.each_setting_mends_it, checks.by_keys_alone,
             checks.judged_over_draws_by_its_button), w)
        w.leave()
        in_small_windows(window, plan)
        for sample in ("even", "parallel"):
            w = window(copy(f"{sample}.lay.toml"))
            nothing_to_set(w, sample)
            w.leave()
        print("patterns: as they should be")
    return 0


if __name__ == "__main__":
    sys.exit(main())
