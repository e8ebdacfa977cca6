"""An order over spools in the window: what is wrong with it, which spool takes what, a laying that is stopped, everything
written, and the plan of a spool opened.

    drive_order.py LAYWRIGHT SAMPLES [SHOTS]
"""

import csv
import json
import subprocess
import sys

from window_driver import desk, run

# A narrow spool with low flanges: laid in a moment.
REEL = (("flange_diameter", "160 mm"), ("inside_width", "20 mm"))

ORDER = """# Two reels.
format = "lay-order 1"
title = "Short lengths"
number = "7"
customer = "A and B"
plan = "reel.lay.toml"
[[piece]]
length = {length}
count = 2
[[piece]]
length = "90 m"
[delivery]
leader = "5 m"
[[spool]]
most = "300 m"
"""


def by_the_command(w, order, *more):
    return subprocess.run([sys.argv[1], "order", str(order), *more], check=True, capture_output=True, text=True).stdout


def what_is_wrong_stands_beside_it(w):
    w.key("ctrl+shift+o")
    w.until("it asks for a file", lambda s: s["question"] == "order to open" and "file short.order.toml" in s["places"])
    assert "file even.lay.toml" not in w.state()["places"], "plans are listed among the orders"
    w.shoot("order-files")
    w.name_file(w.order)
    w.key("Return")
    state = w.until("it is told", lambda s: s["question"] == "order" and "order issue 0" in s["places"])
    issue = state["order"]["issues"][0]
    assert (issue["line"], issue["key"]) == (8, "piece[0].length"), issue
    assert not state["order"]["busy"] and not state["order"]["spools"]
    w.place("order close")
    w.shoot("order-wrong")


def what_fits_nowhere_is_told(w):
    w.order.write_text(ORDER.format(length='"5 km"'), encoding="utf-8")
    w.click("order again")
    state = w.until("it is told", lambda s: s["order"]["not_placed"] and s["order"]["full"] and not s["order"]["busy"])
    issue = state["order"]["not_placed"][0]
    assert issue["line"] == 7 and "allow splices" in issue["what"], issue
    w.shoot("order-not-placed")


def mended_it_is_laid_as_by_the_command(w):
    w.order.write_text(ORDER.format(length='"200 m"'), encoding="utf-8")
    w.click("order again")
    state = w.until("it is laid in full", lambda s: s["order"]["full"] and len(s["order"]["spools"]) == 2
                    and "order open 1" in s["places"])
    said = by_the_command(w, w.order)
    joined = " ".join(said.split())
    for row in [*state["order"]["spools"], state["order"]["total"]]:
        for key in ("takes", "net", "gross", "diameter", "clearance", "verdict", "reason", "time"):
            assert row[key] in joined, f"{key} is {row[key]!r} in the window, but not in\n{said}"
    w.shoot("order-laid")


def everything_is_written(w):
    w.folder = w.order.parent / "written"
    w.click("order write")
    w.until("a folder is asked for", lambda s: s["question"] == "order folder" and "file name" in s["places"])
    w.shoot("order-folder")
    w.name_file(w.folder)
    w.key("Return")
    state = w.until("it is written", lambda s: s["order"]["saving"] and s["order"]["saving"]["done"])
    assert not state["order"]["saving"]["trouble"], state["order"]["saving"]
    w.shoot("order-written")
    by_the_command(w, w.order, "--out", str(w.order.parent / "by-command"))
    for name in ("batch.csv", "spool-1.lay.toml", "spool-2.lay.toml"):
        assert (w.folder / name).read_bytes() == (w.order.parent / "by-command" / name).read_bytes(), name
    for name in ("batch.pdf", "spool-1.pdf", "spool-2.pdf"):
        ours, theirs = [(folder / name).read_bytes() for folder in (w.folder, w.order.parent / "by-command")]
        assert ours.startswith(b"%PDF-"), name
        # With the picture, which is most of a sheet; only the time in it may differ.
        assert abs(len(ours) - len(theirs)) < 0.02 * len(theirs), (name, len(ours), len(theirs))
    with open(w.folder / "batch.csv", newline="", encoding="utf-8") as table:
        assert [row["verdict"] for row in csv.DictReader(table)][:2] == [s["verdict"] for s in state["order"]["spools"]]


def the_second_spools_plan_opens(w):
    before = w.state()["documents"]
    w.click("order open 1")
    state = w.until("its file is open", lambda s: s["documents"] == before + 1
                    and s["file"] == str(w.folder / "spool-2.lay.toml"))
    assert state["question"] is None and not state["dirty"]
    w.settled()
    w.shoot("order-plan")
    spool = state["order"]["spools"][1]
    laid = json.loads(subprocess.run([sys.argv[1], "lay", "--json", str(w.folder / "spool-2.lay.toml")], check=True,
                                     capture_output=True, text=True).stdout)
    assert f"{laid['totals']['outer_diameter']['greatest']:.3f}" == spool["diameter"], spool


def the_table_is_still_there_and_opens_a_copy_once_it_is_read_again(w):
    w.key("ctrl+shift+o")
    w.until("the table is there", lambda s: s["question"] == "order" and "order again" in s["places"])
    w.click("order again")
    w.until("it is laid anew", lambda s: s["order"]["full"] and s["order"]["spools"][1]["written"] is None)
    before = w.state()["documents"]
    w.click("order open 1")
    w.until("a copy is open", lambda s: s["documents"] == before + 1 and s["file"] == "" and s["dirty"]
            and s["title"] == "Short lengths, spool 2 of 2")


def a_laying_is_stopped(w):
    w.key("ctrl+o")
    w.name_file(w.long)
    w.key("Return")
    w.until("it is being laid", lambda s: s["order"]["file"] == str(w.long) and s["order"]["busy"]
            and "order stop" in s["places"])
    w.click("order stop")
    state = w.until("it was stopped", lambda s: s["order"]["stopped"] and not s["order"]["busy"])
    assert not state["order"]["full"], "it was laid before it could be stopped"
    w.shoot("order-stopped")
    w.key("Escape")
    w.until("the dialog is left", lambda s: s["question"] is None)


def main():
    with desk() as (window, copy):
        plan = copy("even.lay.toml")
        copy("even.lay.toml", "reel.lay.toml", REEL)
        order = plan.parent / "short.order.toml"
        order.write_text(ORDER.format(length="200"), encoding="utf-8")  # without a unit
        copy("long.lay.toml")
        w = window(plan)
        w.order, w.long = order, copy("sixty-km.order.toml")
        w.settled()
        run([what_is_wrong_stands_beside_it, what_fits_nowhere_is_told, mended_it_is_laid_as_by_the_command,
             everything_is_written, the_second_spools_plan_opens,
             the_table_is_still_there_and_opens_a_copy_once_it_is_read_again, a_laying_is_stopped], w)
        w.leave()
    return 0


if __name__ == "__main__":
    sys.exit(main())
