"""Advice in the window: why a finding is there, better settings, a study; each followed by a click, and taken back.

    drive_advice.py LAYWRIGHT SAMPLES [SHOTS]
"""

import json
import subprocess
import sys
import time

from window_driver import desk, run

# 1 mm fiber, 20 turns a layer; the right stop stands 3 mm in, so that a gap stays at that flange.
PLAN = """format = "lay-plan 1"
title = "Narrow spool, right stop far in"

[spool]
barrel_diameter = "100 mm"
flange_diameter = "140 mm"
inside_width = "20.5 mm"

[fiber]
diameter = "1 mm"
friction = 0.5

[traverse]
pitch = "1.02 mm"
left_stop = "0.5 mm"
right_stop = "3 mm"
free_length = "100 mm"

[wind]
turns = 100
"""


def laid_anew(w, before):
    """The build of the plan as it was set since that state."""
    w.until("another build is laid", lambda s: s["build"]["revision"] > before["build"]["revision"]
            and s["build"]["full"] and not s["laying"])
    return w.settled()


def value(state, path):
    return float(state["fields"][path]["text"])


class Checks:
    def __init__(self, expected, over_five):
        self.expected = expected  # what the command says of the plan
        self.over_five = over_five  # its verdict over five draws

    def choose_by_key(self, w):
        w.settled()
        w.key("n")
        w.until("a finding is chosen", lambda s: s["stage"]["chosen_finding"] is not None and "cause ask" in s["places"])
        w.shoot("chosen")

    def why(self, w):
        """The gravest finding is asked about; the answer is the command's, word for word."""
        state = w.state()
        gravest = [f["kind"] for f in state["build"]["findings"]].index(self.expected["finding"]["kind"])
        assert gravest == 0 and state["stage"]["chosen_finding"] == 0, "the first of the list is not the gravest"
        w.click("cause ask")
        w.until("it is answered", lambda s: s["advice"]["cause"].get("text"))
        state = w.until("the answer can be read", lambda s: "cause text" in s["places"] and "cause set 0" in s["places"])
        cause = state["advice"]["cause"]
        assert cause["text"] == self.expected["text"], cause["text"]
        assert [r["text"] for r in cause["remedies"]] == [r["text"] for r in self.expected["remedies"]]
        assert not cause["stale"] and cause["set"] is None
        w.shoot("why", after=0.3)

    def set_remedy(self, w):
        before = w.state()
        path, wanted = next(iter(before["advice"]["cause"]["remedies"][0]["set"].items()))
        assert path == "traverse.right_stop", path
        w.click("cause set 0")
        w.until("the plan is set so", lambda s: s["advice"]["cause"]["set"] == 0
                and abs(value(s, path) - wanted) < 1e-6)
        state = laid_anew(w, before)
        gaps = [f for f in state["build"]["findings"] if f["kind"] == "flange_gap"]
        old = [f for f in before["build"]["findings"] if f["kind"] == "flange_gap"]
        assert sum(f["size_d"] for f in gaps) < 0.5 * sum(f["size_d"] for f in old), "the build has not changed"
        assert "cause is set 0" in state["places"], "it is not told that the plan is set so"
        w.shoot("remedy-set", after=0.3)
        w.key("ctrl+z")
        w.until("one undo takes it back", lambda s: value(s, path) == 3.0 and not s["can_undo"])
        laid_anew(w, state)

    def by_keys(self, w):
        """The same without a mouse: Y goes to the answer, arrows to its button."""
        w.key("y")
        w.until("the keyboard is in the answer", lambda s: s["keys_in"] == "Why")
        for _ in range(12):
            w.key("Down", "Return")
            w.calm()
            if w.state()["advice"]["cause"]["set"] is not None:
                break
        w.until("a remedy is set by keys", lambda s: s["advice"]["cause"]["set"] is not None)
        w.settled()
        before = w.state()
        w.key("Escape", "ctrl+z")
        w.until("and taken back", lambda s: not s["can_undo"])
        laid_anew(w, before)

    def stale(self, w):
        before = w.state()
        w.fill("traverse.pitch", "1.05")
        w.until("the answer is told to be old", lambda s: s["advice"]["cause"]["stale"] and "cause stale" in s["places"])
        before = laid_anew(w, before)
        w.shoot("stale")
        w.click("cause set 0")
        time.sleep(0.3)
        assert value(w.state(), "traverse.right_stop") == 3.0, "an old answer was followed"
        w.key("ctrl+z")
        w.until("it holds again", lambda s: not s["advice"]["cause"]["stale"])
        laid_anew(w, before)

    def compare(self, w):
        before = w.state()
        w.click("cause compare 0")
        w.until("both stand side by side", lambda s: s["comparing"] and "differences" in s["places"])
        before = laid_anew(w, before)
        w.shoot("compared", after=0.3)
        w.key("ctrl+z")
        w.until("taken back", lambda s: value(s, "traverse.right_stop") == 3.0)
        w.click("menu Compare")
        w.click("menu Stop comparing")
        w.until("one picture again", lambda s: not s["comparing"])
        laid_anew(w, before)


    def over_draws(self, w):
        """The build is judged by the worst of five draws, as the command does; another plan has its own verdict."""
        w.settled()
        w.until("it is judged", lambda s: s["build"]["verdict"])
        w.click("menu Build")
        w.click("menu Judge over draws")
        state = w.until("and over draws", lambda s: s["advice"]["draws"].get("line") and not s["advice"]["draws"]["busy"])
        assert state["advice"]["draws"]["line"] == self.over_five, state["advice"]["draws"]["line"]
        assert "of 5 draws" in self.over_five, self.over_five
        w.xdo("mousemove", *w.place("verdict", 0.3))
        w.shoot("over-draws", after=0.4)
        before = w.state()
        w.fill("traverse.pitch", "1.05")
        w.until("that is not of another plan", lambda s: s["advice"]["draws"]["stale"])
        state = laid_anew(w, before)
        w.key("ctrl+z")
        w.until("it is judged so still", lambda s: s["fields"]["traverse.pitch"]["text"] == "1.02"
                and s["build"]["full"] and not s["laying"] and not s["advice"]["draws"]["stale"])


def better(w):
    w.key("ctrl+b")
    w.until("it says what may be turned", lambda s: "better search" in s["places"])
    w.shoot("better-ask", after=0.3)
    w.click("better search")
    w.until("it is found", lambda s: s["advice"]["better"].get("proposals") and "better set 0" in s["places"])
    w.shoot("better-found", after=0.3)
    before = w.state()
    keys, wanted = before["advice"]["better"]["keys"], before["advice"]["better"]["proposals"][0]["values"]
    w.click("better set 0")
    state = w.until("the plan is set so", lambda s: s["advice"]["better"]["set"] == 0 and s["question"] is None)
    for key, number in zip(keys, wanted):
        assert abs(value(state, key) - number) < 1e-4, f"{key} is {value(state, key)}, not {number}"
    state = laid_anew(w, before)
    assert not [f for f in state["build"]["findings"] if f["kind"] == "flange_gap"], "a gap at a flange is left"
    w.key("ctrl+z")
    w.until("one undo takes it back", lambda s: value(s, "traverse.right_stop") == 3.0 and not s["can_undo"])
    laid_anew(w, state)


def type_into(w, name, text):
    w.click(name)
    w.key("ctrl+a")
    w.type(text)
    w.calm()


def study(w):
    w.key("F4")  # as high as it gets
    w.click("tab Study")
    w.until("it is asked what to vary", lambda s: "study run" in s["places"])
    for place, (low, high) in enumerate((("0.1", "0.9"), ("0.2", "1"))):
        type_into(w, f"study from {place}", low)
        type_into(w, f"study to {place}", high)
        type_into(w, f"study count {place}", "5")
    w.shoot("study-ask")
    w.click("study run")
    state = w.until("25 builds are laid", lambda s: len(s["advice"]["study"].get("rows", [])) == 25
                    and "study map" in s["places"])
    w.shoot("study", after=0.3)
    assert [a["path"] for a in state["advice"]["study"]["axes"]] == ["traverse.left_stop", "traverse.right_stop"]
    before = state
    # The fourth column, the second row from below.
    w.xdo("mousemove", *w.place("study map", 3.5 / 5, 1 - 1.5 / 5))
    w.shoot("study-hover", after=0.4)
    w.click("study map", 3.5 / 5, 1 - 1.5 / 5)
    state = w.until("the plan is that build's", lambda s: abs(value(s, "traverse.left_stop") - 0.7) < 1e-9
                    and abs(value(s, "traverse.right_stop") - 0.4) < 1e-9)
    assert state["advice"]["study"]["set"] == 3 * 5 + 1
    laid_anew(w, before)
    w.shoot("study-set")
    w.click("study figure")
    w.click("study figure fill_factor")
    w.until("another figure is shown", lambda s: s["advice"]["study"]["figure"] == "fill_factor")
    # Two builds on by keys: one to the left, one up.
    w.key("ctrl+t", "Left", "Up", "Return")
    w.until("Enter sets the build of the cursor", lambda s: abs(value(s, "traverse.left_stop") - 0.5) < 1e-9
            and abs(value(s, "traverse.right_stop") - 0.6) < 1e-9)
    w.settled()
    w.shoot("study-keys")
    w.key("Escape", "ctrl+z", "ctrl+z")
    w.until("both are taken back", lambda s: value(s, "traverse.right_stop") == 3.0 and not s["can_undo"])


def stop_study(w):
    """3600 builds would take a while: given up by its button, then by Escape; the map before stays."""
    for name in ("study count 0", "study count 1"):
        type_into(w, name, "60")
    for by_key in (False, True):
        w.click("study run")
        w.until("it runs", lambda s: s["advice"]["study"]["busy"] and "study stop" in s["places"])
        if not by_key:
            w.shoot("study-runs", after=1.5)
            w.click("study stop")
        else:
            w.key("Escape")
        state = w.until("it is stopped", lambda s: not s["advice"]["study"]["busy"] and "study run" in s["places"])
        assert state["advice"]["study"]["stopped"] and len(state["advice"]["study"]["rows"]) == 25
    for name in ("study count 0", "study count 1"):
        type_into(w, name, "5")


def curve(w):
    w.click("study key 1")
    w.click("study none")
    w.click("study run")
    w.until("a curve is laid", lambda s: len(s["advice"]["study"].get("rows", [])) == 5 and "study curve" in s["places"])
    w.shoot("curve", after=0.3)
    w.click("study curve", 0.97)
    w.until("a click sets the last", lambda s: abs(value(s, "traverse.left_stop") - 0.9) < 1e-9)
    w.settled()
    type_into(w, "study from 0", "far")
    w.until("a mistake is told", lambda s: "study run" in s["places"])
    w.shoot("curve-mistake", after=0.3)


def main():
    with desk() as (window, copy):
        plan = copy("even.lay.toml", "narrow.lay.toml")
        plan.write_text(PLAN, encoding="utf-8")
        told = subprocess.run([sys.argv[1], "cause", str(plan), "--json"], check=True, capture_output=True, text=True)
        judged = subprocess.run([sys.argv[1], "lay", str(plan), "--draws", "5", "--json"], check=True, capture_output=True,
                                text=True)
        checks = Checks(json.loads(told.stdout), json.loads(judged.stdout)["verdict"]["line"])
        w = window(plan)
        run((checks.choose_by_key, checks.why, checks.set_remedy, checks.by_keys, checks.stale, checks.compare, checks.over_draws, better, study,
             stop_study, curve), w)
        w.leave()
    return 0


if __name__ == "__main__":
    sys.exit(main())
