"""Records in the window, by mouse and keys: two spools of a plan are kept, one with readings; they are listed and filtered; what
another program adds comes by itself; a page is opened, the chart is seen, a spool is fitted, and what was found is carried into the
plan.

    drive_records.py LAYWRIGHT SAMPLES [SHOTS]
"""

import json
import os
import subprocess
import sys

from window_driver import desk, run

PLAN = """format = "lay-plan 1"
title = "Recorded"
[order]
number = "A-7"
[spool]
barrel_diameter = "100 mm"
flange_diameter = "140 mm"
inside_width = "20.5 mm"
[fiber]
diameter = "1 mm"
friction = 0.5
[traverse]
pitch = "1.02 mm"
left_stop = "{left_stop}"
right_stop = "0.5 mm"
free_length = "100 mm"
[wind]
turns = 100
line_speed = "60 m/min"
"""


def command(*words):
    return subprocess.run([sys.argv[1], *map(str, words)], check=True, capture_output=True, text=True).stdout


def read_off(plan):
    """Turns and diameters of a wind of that plan, at its checkpoints."""
    return json.loads(command("lay", plan, "--json"))["takeup"]["checkpoints"]


class Checks:
    def __init__(self, read, plan, place):
        self.read, self.plan, self.place = read, plan, place

    def records(self, w):
        return w.state()["records"]

    def fill(self, w, place, text):
        w.click(place)
        w.type(text)

    def to_the_end(self, w):
        """Of the page, by the wheel."""
        w.place("amend now")
        width, height = (int(v) for v in w.size.split("x"))
        w.xdo("mousemove", width // 4, height // 2)
        for _ in range(15):
            w.xdo("click", 5)
        w.calm()

    def nothing_is_there_yet(self, w):
        w.settled()
        w.key("ctrl+d")
        state = w.until("nothing was recorded yet", lambda s: s["question"] == "records" and "records none" in s["places"])
        assert state["records"]["trouble"] == "", state["records"]
        assert state["records"]["place"] == str(self.place), state["records"]["place"]
        w.shoot("records-none")

    def a_spool_is_kept_with_its_readings(self, w):
        w.click("records tab keep")
        self.fill(w, "keep spool", "17")
        self.fill(w, "keep machine", "winder 2")
        w.click("keep accepted")
        self.fill(w, "keep by", "late shift")
        for i, each in enumerate(self.read):
            diameters = each["outer_diameter"]
            values = {0: each["turns"], 2: diameters["left"], 3: diameters["middle"], 4: diameters["right"]}
            for cell, value in values.items():
                w.click(f"keep cell {i} {cell}")
                w.type(f"{value:.2f}".replace(".", ","))
        w.shoot("records-keep", after=0.3)
        w.click("keep now")
        state = w.until("it is kept, and its page is open",
                        lambda s: s["records"]["page"] and "records readings" in s["places"])
        assert state["records"]["kept"] == f"Record 1 of spool 17 is kept in {self.place}.", state["records"]
        assert state["records"]["page"]["heading"].startswith("Record 1: spool 17, "), state["records"]["page"]
        shown = json.loads(command("record", "show", 1, "--json", "--records", self.place))
        assert len(shown["readings"]) == len(state["records"]["page"]["readings"]) == 4 * len(self.read)
        assert shown["machine"] == "winder 2" and shown["order"] == "A-7" and shown["state"] == "accepted", shown
        w.shoot("records-page", after=0.5)

    def a_second_one_is_rejected(self, w):
        w.click("records tab keep")
        self.fill(w, "keep spool", "18")
        w.click("keep rejected")
        self.fill(w, "keep reason", "edge has slipped")
        w.click("keep now")
        w.until("it is kept", lambda s: s["records"]["page"]["heading"].startswith("Record 2: spool 18, ")
                and s["records"]["page"]["heading"].endswith("rejected"))

    def the_list_is_filtered(self, w):
        w.click("records tab list")
        state = w.until("both are listed", lambda s: [r["number"] for r in s["records"]["list"]] == [2, 1])
        assert [r["state"] for r in state["records"]["list"]] == ["rejected", "accepted"]
        self.fill(w, "records filter machine", "winder 2")
        w.key("Return")
        w.until("one is left", lambda s: [r["number"] for r in s["records"]["list"]] == [1])
        w.click("records filter clear")
        w.until("both are back", lambda s: len(s["records"]["list"]) == 2)

    def what_others_add_comes_by_itself(self, w):
        command("record", "add", self.plan, "--spool-number", 19, "--machine", "winder 2", "--measured",
                self.place.parent / "measured.csv", "--records", self.place)
        w.until("it is listed", lambda s: [r["number"] for r in s["records"]["list"]] == [3, 2, 1])
        w.shoot("records-list")

    def more_is_said_of_one(self, w):
        w.click("records row 3")
        w.until("its page is open", lambda s: s["records"]["page"]["heading"].startswith("Record 3"))
        self.to_the_end(w)
        w.click("amend accepted")
        w.click("amend now")
        state = w.until("it is accepted", lambda s: s["records"]["page"]["heading"].endswith("accepted"))
        assert len(state["records"]["page"]["history"]) == 2, state["records"]["page"]

    def the_chart_is_seen(self, w):
        w.click("records tab trends")
        state = w.until("there is a chart", lambda s: "records chart" in s["places"] and s["records"]["trends"]["chart"])
        assert state["records"]["trends"]["chart"].startswith("winder 2: outer diameter at the left"), state["records"]
        assert state["records"]["trends"]["all"][0]["points"] == 2
        told = command("record", "trends", "--records", self.place)
        for line in state["records"]["trends"]["all"][0]["said"]:
            assert line in told, f"{line}\n{told}"
        w.shoot("records-trends", after=0.3)

    def a_spool_is_fitted(self, w):
        w.click("records tab list")
        w.click("records row 1")
        w.click("records fit")
        w.until("its progress is seen", lambda s: s["records"]["fit"]["busy"] and s["records"]["fit"]["share"] > 0.1)
        state = w.until("it was fitted", lambda s: s["records"]["fit"]["number"] == 1 and "records carry" in s["places"])
        assert "left stop was" in state["records"]["fit"]["text"], state["records"]["fit"]
        w.until("the fit is kept", lambda s: s["records"]["page"]["history"][-1] == "a fit")
        w.shoot("records-fitted", after=0.5)

    def it_is_carried_into_the_plan(self, w):
        fit = w.state()["records"]["fit"]
        path, _, after = next(each for each in fit["would_carry"] if each[0] == "traverse.left_stop")
        w.click("records carry")
        w.until("it is carried", lambda s: s["records"]["fit"]["carried"] and "records is carried" in s["places"])
        w.shoot("records-carried")
        w.click("records close")
        state = w.until("the plan has it", lambda s: s["question"] is None and s["dirty"])
        assert abs(float(state["fields"][path]["text"].split()[0]) - after) < 1e-6, state["fields"][path]
        w.key("ctrl+z")
        w.until("it is taken back", lambda s: not s["dirty"])


def main():
    with desk() as (window, copy):
        folder = copy("even.lay.toml").parent
        plan, hidden, place = folder / "recorded.lay.toml", folder / "hidden.lay.toml", folder / "shop.db"
        plan.write_text(PLAN.format(left_stop="0.5 mm"), encoding="utf-8")
        hidden.write_text(PLAN.format(left_stop="1.0 mm"), encoding="utf-8")
        read = read_off(hidden)
        rows = ["layer,counter_turns,left_mm,middle_mm,right_mm"]
        for each in read:
            d = each["outer_diameter"]
            layer = "end" if each["at_end"] else each["layer"]
            rows.append(f"{layer},{each['turns']:.2f},{d['left']:.2f},{d['middle']:.2f},{d['right']:.2f}")
        (folder / "measured.csv").write_text("\n".join(rows) + "\n", encoding="utf-8")
        checks = Checks(read, plan, place)
        w = window(plan, size=os.environ.get("LAYWRIGHT_SHOT_SIZE", "1280x800"), LAYWRIGHT_RECORDS=str(place))
        run((checks.nothing_is_there_yet, checks.a_spool_is_kept_with_its_readings, checks.a_second_one_is_rejected,
             checks.the_list_is_filtered, checks.what_others_add_comes_by_itself, checks.more_is_said_of_one,
             checks.the_chart_is_seen, checks.a_spool_is_fitted, checks.it_is_carried_into_the_plan), w)
        w.leave()


if __name__ == "__main__":
    main()
