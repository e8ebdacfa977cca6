"""The whole job by mouse and keys: an order of 4.5 km over three spools, their plans and sheets, records of spools that were wound
with a hidden flaw, the fit that finds it, and the plan of a fourth spool that is good; the last spool on a PostgreSQL server, too.

    drive_whole_job.py LAYWRIGHT SAMPLES [SHOTS]

What is done at the machine, winding and reading off, is done as by whole_job_test.py.
"""

import csv
import json
import pathlib
import random
import shutil
import sys
import tempfile

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "ui"))

from whole_job_test import SEED, SLOW, Server, as_the_machine_winds, laid, laywright, the_order, wound_and_read
import window_driver
from window_driver import desk, run

window_driver.WAIT_S = 1800.0  # the fit lays some hundred winds of 1.5 km

def as_counted(table):
    """That table with the turns as the machine's counter shows them: from the start on."""
    rows = list(csv.DictReader(table.open(encoding="utf-8", newline="")))
    counted = table.with_suffix(".counted.csv")
    with counted.open("w", encoding="utf-8", newline="") as file:
        out = csv.writer(file)
        out.writerow(["layer", "counter_turns", "left_mm", "middle_mm", "right_mm"])
        turns = 0.0
        for row in rows:
            turns += float(row["layer_turns"])
            out.writerow([row["layer"], f"{turns:.0f}", row["left_mm"], row["middle_mm"], row["right_mm"]])
    return counted


class Job:
    def __init__(self, folder, place, server):
        self.folder, self.place, self.server = folder, place, server
        self.out = folder / "order"

    def plans(self):
        return sorted(self.out.glob("spool-*.lay.toml"))

    def the_order_is_laid(self, w):
        w.settled()
        w.key("ctrl+shift+o")
        w.until("it asks for a file", lambda s: s["question"] == "order to open")
        w.name_file(the_order(self.folder))
        w.key("Return")
        state = w.until("it is laid in full", lambda s: s["order"]["full"] and len(s["order"]["spools"]) == 3)
        assert [spool["verdict"] for spool in state["order"]["spools"]] == ["good"] * 3, state["order"]
        w.shoot("job-order")

    def plans_and_sheets_are_written(self, w):
        w.click("order write")
        w.until("a folder is asked for", lambda s: s["question"] == "order folder" and "file name" in s["places"])
        w.name_file(self.out)
        w.key("Return")
        w.until("they are written", lambda s: s["order"]["saving"] and s["order"]["saving"]["done"])
        assert len(self.plans()) == 3 and len(list(self.out.glob("spool-*.pdf"))) == 3, list(self.out.iterdir())

    def three_spools_are_wound_and_kept(self, w):
        chance = random.Random(SEED)
        for i, plan in enumerate(self.plans()):
            if w.state()["question"] != "order":
                w.key("ctrl+shift+o")
            w.click(f"order open {i}")
            w.until("its plan is open", lambda s, plan=plan: s["file"] == str(plan) and s["question"] is None)
            self.keep(w, i + 1, as_counted(wound_and_read(plan, self.folder, chance)))
            w.key("Escape")
            w.until("the records are left", lambda s: s["question"] is None)

    def keep(self, w, number, table):
        w.settled()
        w.key("ctrl+f")
        w.click("follow open")
        w.name_file(table)
        w.key("Return")
        w.until("the readings are there", lambda s: s["question"] is None and "follow state 0 not followed yet" in s["places"])
        w.key("ctrl+d")
        w.until("there are records", lambda s: s["question"] == "records")
        w.click("records tab keep")
        for place, text in (("keep spool", number), ("keep machine", "bench 2"), ("keep by", "late shift")):
            w.click(place)
            w.key("ctrl+a")
            w.type(str(text))
        w.click("keep rejected")
        w.click("keep reason")
        w.key("ctrl+a")
        w.type("turns ride up")
        w.click("keep take over")
        w.shoot(f"job-keep-{number}")
        w.click("keep now")
        w.until("it is kept", lambda s: f"spool {number}, " in s["records"]["page"]["heading"] and s["records"]["kept"])

    def the_last_one_is_fitted(self, w):
        w.key("ctrl+d")
        w.click("records tab list")
        state = w.until("all are listed", lambda s: len(s["records"]["list"]) == 3)
        assert all(record["state"] == "rejected" for record in state["records"]["list"]), state["records"]["list"]
        w.click("records row 3")
        w.until("its page is open", lambda s: s["records"]["page"]["heading"].startswith("Record 3"))
        w.click("records fit")
        w.until("it is fitted", lambda s: s["records"]["fit"]["number"] == 3 and "records carry" in s["places"])
        w.shoot("job-fitted")
        kept = json.loads(laywright("record", "show", 3, "--json", "--records", self.place))
        assert kept, kept

    def what_was_found_goes_into_the_fourth(self, w):
        """The plan of the last spool is open: with it the next one begins."""
        planned, set_now = next(each[1:] for each in w.state()["records"]["fit"]["would_carry"] if each[0] == "traverse.pitch")
        found = planned / set_now
        assert abs(found - SLOW) < 0.01, f"{found} of the pitch that was set, hidden {SLOW}"
        w.click("records carry")
        w.until("it is carried", lambda s: "records is carried" in s["places"])
        w.click("records close")
        w.until("the plan has it", lambda s: s["question"] is None and s["dirty"])
        fourth = self.folder / "spool-4.lay.toml"
        w.key("ctrl+shift+s")
        w.name_file(fourth)
        w.key("Return")
        w.until("it is saved", lambda s: s["file"] == str(fourth) and not s["dirty"])
        w.settled()
        w.shoot("job-fourth")
        verdict = laid(as_the_machine_winds(fourth, self.folder / "fourth.lay.toml"))["verdict"]
        flawed = laid(as_the_machine_winds(self.plans()[-1], self.folder / "flawed.lay.toml"))["verdict"]
        print(f"pitch as set times {found:.4f} (hidden: {SLOW}); flawed: {flawed['grade']}, fourth: {verdict['grade']}")
        assert verdict["grade"] == "good" and flawed["grade"] != "good", (verdict, flawed)

    def a_server_keeps_the_fourth(self, w):
        w.key("ctrl+d")
        w.until("there are records", lambda s: s["question"] == "records")
        w.click("records place")
        w.key("ctrl+a")
        w.type(self.server.address)
        w.key("Return")
        w.until("nothing was recorded there", lambda s: s["records"]["trouble"] == "" and not s["records"]["list"])
        w.click("records tab keep")
        w.click("keep spool")
        w.key("ctrl+a")
        w.type("4")
        w.click("keep accepted")
        w.click("keep now")
        w.until("it is kept", lambda s: s["records"]["page"]["heading"].endswith("accepted") and s["records"]["kept"])
        told = json.loads(laywright("record", "list", "--json", "--records", self.server.address))["records"]
        assert [record["spool"] for record in told] == ["4"], told
        w.shoot("job-server")
        w.key("Escape")


def main():
    base = pathlib.Path(tempfile.mkdtemp())
    server = Server(base)
    try:
        with desk() as (window, copy):
            folder = copy("even.lay.toml").parent
            job = Job(folder, folder / "shop.db", server)
            w = window(folder / "even.lay.toml", LAYWRIGHT_RECORDS=str(job.place))
            run([job.the_order_is_laid, job.plans_and_sheets_are_written, job.three_spools_are_wound_and_kept,
                 job.the_last_one_is_fitted, job.what_was_found_goes_into_the_fourth, job.a_server_keeps_the_fourth], w)
            w.leave()
    finally:
        server.end()
        shutil.rmtree(base)


if __name__ == "__main__":
    main()
