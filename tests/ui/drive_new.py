"""A plan begun anew in the window: said by keys and by mouse, proposed, opened, saved.

    drive_new.py LAYWRIGHT SAMPLES [SHOTS]
"""

import pathlib
import sys

from window_driver import desk, run


def say(w, what, text):
    w.click(f"new {what}", 0.3)
    w.key("ctrl+a")
    w.type(text)


def what_is_wrong_stands_beside_it(w):
    w.key("ctrl+n")
    w.until("it asks", lambda s: "new spool" in s["places"])
    w.shoot("new-empty")
    # The keyboard is in the first field.
    w.type("63 x 50 x 80 mm")
    w.key("Return")
    w.until("what is missing is told", lambda s: {"fiber", "length"} <= set(s["beginning"]["issues"]))
    w.shoot("new-wrong")


def it_proposes_what_is_good(w):
    say(w, "spool", "63 x 100 x 80 mm")
    say(w, "fiber", "0.5 mm")
    say(w, "length", "300 m")
    w.key("Return")
    w.until("it has found settings", lambda s: s["beginning"]["verdict"] and "new open" in s["places"])
    w.shoot("new-proposed")
    assert w.state()["beginning"]["verdict"].startswith("Good"), w.state()["beginning"]


def another_answer_takes_the_proposal_away(w):
    say(w, "length", "320 m")
    w.until("it is to be proposed again", lambda s: "new propose" in s["places"] and "new open" not in s["places"])
    w.click("new propose")
    w.until("it has found settings", lambda s: s["beginning"]["verdict"] and "new open" in s["places"])


def it_opens_without_a_file(w):
    w.click("new open")
    state = w.until("it is open", lambda s: s["file"] == "" and s["dirty"] and "wind.length" in s["fields"]
                    and s["fields"]["wind.length"]["text"] == "320")
    assert state["fields"]["traverse.pitch"]["text"], state["fields"]
    w.settled()
    w.until("and is good", lambda s: s["build"]["verdict"]["grade"] == "good")
    w.shoot("new-open")


def it_is_saved_under_a_name(w):
    w.key("ctrl+s")
    w.name_file(w.folder / "begun")
    w.key("Return")
    w.until("it is saved", lambda s: s["file"].endswith("begun.lay.toml") and not s["dirty"])
    text = pathlib.Path(w.state()["file"]).read_text(encoding="utf-8")
    assert 'length = "320 m"' in text and "63 mm" in text, text


def a_search_is_given_up(w):
    w.key("ctrl+n")
    w.until("it asks", lambda s: "new spool" in s["places"])
    say(w, "spool", "150 x 236 x 95 mm")
    say(w, "fiber", "0.25 mm")
    say(w, "length", "25 km")
    w.key("Return")
    w.until("it searches", lambda s: s["beginning"]["busy"] and "new stop" in s["places"])
    w.shoot("new-busy")
    w.key("Escape")
    w.until("it is given up", lambda s: not s["beginning"]["busy"] and s["question"] is None)


def main():
    with desk() as (window, copy):
        plan = copy("even.lay.toml")
        w = window(plan)
        w.folder = plan.parent
        w.settled()
        run([what_is_wrong_stands_beside_it, it_proposes_what_is_good, another_answer_takes_the_proposal_away,
             it_opens_without_a_file, it_is_saved_under_a_name, a_search_is_given_up], w)
        w.leave()
    return 0


if __name__ == "__main__":
    sys.exit(main())
