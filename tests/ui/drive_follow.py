"""A wind that is followed in the window: readings are typed by mouse and keys, with a decimal comma; each row tells how it stands,
what is off and what to change now is told, and what it will be stands beside the plan. Readings are saved, cleared and opened.

    drive_follow.py LAYWRIGHT SAMPLES [SHOTS]
"""

import json
import subprocess
import sys

from window_driver import desk, run

PLAN = """format = "lay-plan 1"
title = "Followed"
[spool]
barrel_diameter = "150 mm"
flange_diameter = "236 mm"
inside_width = "12 mm"
[fiber]
diameter = "0.25 mm"
friction = 0.5
[traverse]
motion = "continuous"
pitch = "0.26 mm"
left_stop = "0.1 mm"
right_stop = "{right_stop}"
start = "left"
free_length = "30 mm"
[traverse.reversal]
kind = "instant"
[wind]
turns = 380
"""


def read_off(plan):
    """Turns and diameters after layers 1, 2 and 5 of a wind of that plan."""
    printed = subprocess.run([sys.argv[1], "lay", str(plan), "--json"], check=True, capture_output=True, text=True)
    return [c for c in json.loads(printed.stdout)["takeup"]["checkpoints"] if c["layer"] in (1, 2, 5)]


def states(state):
    return [name for name in state["places"] if name.startswith("follow state ")]


class Checks:
    def __init__(self, read, table):
        self.read, self.table = read, table

    def the_checklist_comes_by_keys(self, w):
        w.settled()
        w.key("ctrl+f")
        state = w.until("the checklist is there", lambda s: "follow cell 0 0" in s["places"])
        assert "follow row 3" in state["places"], "a checkpoint is missing"
        w.key("F4")
        w.shoot("follow-empty", after=0.5)

    def a_row_moves_the_scrubber(self, w):
        before = w.state()["stage"]
        w.click("follow row 1")
        w.until("the scrubber has moved", lambda s: s["stage"] != before)

    def readings_are_typed(self, w):
        for i, each in enumerate(self.read):
            diameters = each["outer_diameter"]
            for cell, value in ((0, each["turns"]), (2, diameters["left"]), (3, diameters["middle"])):
                w.click(f"follow cell {i} {cell}")
                w.type(f"{value:.2f}".replace(".", ","))
            w.key("Tab")  # on to the next cell by the keyboard
            w.until("it is typed into", lambda s, i=i: f"follow typing {i} 4" in s["places"])
            w.type(f"{diameters['right']:.2f}".replace(".", ","))
        w.until("rows wait", lambda s: "follow state 0 not followed yet" in s["places"])

    def what_is_off_is_told(self, w):
        w.click("follow now")
        state = w.until("it was followed", lambda s: "now" in s["advice"]["follow"] and not s["advice"]["follow"]["busy"])
        w.shoot("follow-told")
        assert state["advice"]["follow"]["on_plan"] is False
        assert any("Move the right stop" in each and "nearer to its flange" in each
                   for each in state["advice"]["follow"]["now"]), state["advice"]["follow"]
        state = w.until("rows tell", lambda s: any("diameter right" in name for name in states(s)))
        assert "follow off plan" in state["places"]
        w.shoot("follow-off", after=0.5)

    def what_it_will_be_stands_beside(self, w):
        w.click("follow show changed")
        w.until("both are compared", lambda s: s["comparing"])
        w.shoot("follow-forecast", after=2.0)

    def readings_are_saved_and_opened(self, w):
        w.key("ctrl+f")
        w.until("the checklist is in front", lambda s: "follow save" in s["places"] and "follow cell 0 0" in s["places"])
        w.click("follow save")
        w.name_file(self.table)
        w.click("file done")
        w.until("it is written", lambda s: self.table.is_file())
        assert f"{self.read[0]['outer_diameter']['right']:.2f}" in self.table.read_text(encoding="utf-8")
        w.until("the dialog is gone", lambda s: s["question"] is None)
        w.click("follow clear")
        w.until("nothing is typed", lambda s: "follow state 0 " in s["places"] and "follow off plan" not in s["places"])
        w.click("follow open")
        w.name_file(self.table)
        w.click("file done")
        w.until("the readings are back", lambda s: "follow state 0 not followed yet" in s["places"])
        w.key("ctrl+shift+f")
        w.until("it was followed by keys", lambda s: any("diameter right" in name for name in states(s)))


def main():
    with desk() as (window, copy):
        folder = copy("even.lay.toml").parent
        plan, hidden = folder / "followed.lay.toml", folder / "hidden.lay.toml"
        plan.write_text(PLAN.format(right_stop="0.1 mm"), encoding="utf-8")
        hidden.write_text(PLAN.format(right_stop="0.5 mm"), encoding="utf-8")
        checks = Checks(read_off(hidden), folder / "readings.csv")
        w = window(plan, size="1600x1000")
        run((checks.the_checklist_comes_by_keys, checks.a_row_moves_the_scrubber, checks.readings_are_typed,
             checks.what_is_off_is_told, checks.what_it_will_be_stands_beside, checks.readings_are_saved_and_opened), w)
        w.leave()


if __name__ == "__main__":
    main()
