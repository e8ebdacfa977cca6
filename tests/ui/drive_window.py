"""A plan is edited, looked at, cut, scrubbed, compared and saved.

    drive_window.py LAYWRIGHT SAMPLES [SHOTS]
"""

import json
import sys
import time

from window_driver import desk, run, share_different


def verdict_and_small_findings(w):
    w.settled()
    state = w.until("the verdict is there", lambda s: s["build"]["verdict"])
    assert state["build"]["verdict"]["grade"] == "good", state["build"]["verdict"]
    assert state["places"]["verdict"][3] > 0, "the verdict is not shown"
    assert {f["severity"] for f in state["build"]["findings"]} == {"small"}, "a sound wind has more than small findings"
    w.click("tab Findings")
    w.until("they are folded away", lambda s: "small findings" in s["places"] and "finding 0" not in s["places"])
    w.click("small findings")
    w.until("they are shown", lambda s: "finding 0" in s["places"])
    w.click("small findings")
    w.until("they are folded away again", lambda s: "finding 0" not in s["places"])
    w.shoot("verdict")


def change_pitch(w):
    before, shown = w.settled(), w.pixels()
    w.fill("traverse.pitch", "0.3")
    w.until("the pitch is in the plan", lambda s: s["fields"]["traverse.pitch"]["text"] == "0.3" and s["dirty"])
    after = w.settled()
    w.until("a build of the new pitch is shown", lambda s: s["build"]["revision"] > before["build"]["revision"])
    after = w.settled()
    # The same length with fewer turns to a layer: more layers, and a larger diameter.
    assert after["build"]["layers"] > before["build"]["layers"], "a coarser pitch gave no more layers"
    assert abs(after["build"]["length_mm"] - before["build"]["length_mm"]) < 1.0, "the length changed"
    changed, = w.at_rest("picture")
    w.shoot("pitch")
    assert share_different(shown, changed) > 0.005, "the picture did not change with the pitch"


def wrong_value(w):
    w.settled()
    w.fill("traverse.pitch", "0")
    state = w.until("the field says what is wrong", lambda s: s["fields"]["traverse.pitch"]["issues"]
                    and s["fields"]["traverse.pitch"]["text"] == "0" and not s["typing"])
    assert "Pitch is out of range" in state["hint"], f"the hint does not say it as a person would: {state['hint']}"
    assert not state["sound"], "a plan that is wrong is taken for sound"
    assert state["build"]["layers"] > 0, "the last sound build is gone"
    w.shoot("wrong-value")
    w.key("ctrl+z")
    w.until("undo takes the wrong value back", lambda s: s["sound"] and s["fields"]["traverse.pitch"]["text"] == "0.3")
    w.settled()


def pick_turn(w):
    w.click("picture", 0.5, 0.45)
    first = w.until("a turn is picked", lambda s: s["stage"]["picked"])["stage"]["picked"]
    w.key("period")
    w.until("the next turn is picked", lambda s: abs(s["stage"]["picked"]["turn"] - first["turn"] - 1.0) < 1e-6)
    w.key("comma")
    w.key("Down")
    below = w.until("the turn below is picked", lambda s: s["stage"]["picked"]["turn"] < first["turn"] - 1.0)
    assert below["stage"]["picked"]["r_mm"] < first["r_mm"], "the turn below does not lie below"
    w.click("tab Turn")
    w.shoot("turn")


def click_finding(w):
    w.click("tab Findings")
    if "finding 0" not in w.state()["places"]:
        w.click("small findings")
    before = w.state()["stage"]["camera"]
    w.click("finding 0")
    w.until("the finding is chosen", lambda s: s["stage"]["chosen_finding"] == 0)
    w.until("the camera flies there", lambda s: s["stage"]["camera"] != before)
    w.settled()
    w.shoot("finding", after=0.5)
    w.key("shift+BackSpace")
    w.key("a")
    w.key("5")
    w.until("let go, all is shown", lambda s: s["stage"]["chosen_finding"] is None)


def scrub(w):
    turns = w.state()["build"]["turns"]
    w.click("scrub bar", 0.4)
    at = w.until("the wind is shown in part", lambda s: not s["stage"]["scrub"]["at_end"])["stage"]["scrub"]["turn"]
    assert 0.3 * turns < at < 0.5 * turns, f"0.4 of the bar is not turn {at} of {turns}"
    w.key("Right")
    w.until("one turn on", lambda s: abs(s["stage"]["scrub"]["turn"] - at - 1.0) < 1e-3)
    w.key("space")
    w.until("it plays", lambda s: s["stage"]["scrub"]["playing"] and s["stage"]["scrub"]["turn"] > at + 5.0)
    w.key("space")
    w.until("it pauses", lambda s: not s["stage"]["scrub"]["playing"])
    w.settled()
    w.shoot("scrub")
    w.key("End")
    w.until("at the end", lambda s: s["stage"]["scrub"]["at_end"])


def cut(w):
    whole, = w.at_rest("picture")
    w.key("w")
    w.until("a wedge is cut", lambda s: s["stage"]["wedge"])
    assert share_different(whole, w.at_rest("picture")[0]) > 0.01, "the cut is not to be seen"
    w.shoot("wedge")
    w.key("w")
    w.key("Next")  # PageDown: one layer off
    w.until("one layer is off", lambda s: s["stage"]["last_layer"] == s["build"]["layers"] - 1)
    w.key("a")
    w.until("all is shown", lambda s: s["stage"]["last_layer"] is None and s["stage"]["wedge"] is None)


def legend(w):
    w.xdo("mousemove", 5, 5)  # no tip over the picture
    with_it, = w.at_rest("picture")
    w.key("e")
    w.until("there is no legend", lambda s: not s["stage"]["shows"]["legend"])
    assert share_different(with_it, w.at_rest("picture")[0]) > 0.001, "the legend is still to be seen"
    w.shoot("no-legend")
    w.is_kept("settings.toml", "legend = false")
    w.click("tab View")
    w.scroll_to("view Legend", w.place("tab View")[0])
    w.click("view Legend")
    w.until("there is a legend", lambda s: s["stage"]["shows"]["legend"])
    w.until("it is as it was", lambda _: share_different(with_it, w.at_rest("picture")[0]) < 0.0005)
    w.shoot("legend")


def orbit(w):
    before = w.state()["stage"]["camera"]
    w.drag("picture", (0.3, 0.3), (0.5, 0.35))
    after = w.until("the spool turned", lambda s: s["stage"]["camera"]["azimuth_deg"] != before["azimuth_deg"])
    assert after["stage"]["camera"]["distance_mm"] == before["distance_mm"], "turning changed the distance"
    w.xdo("mousemove", *w.place("picture"))
    w.xdo("click", 4)
    w.until("the wheel went nearer", lambda s: s["stage"]["camera"]["distance_mm"] < before["distance_mm"])
    w.key("5")


def save(w, plan):
    w.key("ctrl+z")
    w.until("undone", lambda s: s["fields"]["traverse.pitch"]["text"] != "0.3")
    w.key("ctrl+y")
    w.until("done again", lambda s: s["fields"]["traverse.pitch"]["text"] == "0.3")
    w.key("ctrl+s")
    w.until("saved", lambda s: not s["dirty"])
    text = plan.read_text(encoding="utf-8")
    assert 'pitch = "0.3 mm"' in text, "the new pitch is not in the file"
    assert "# guide travel per spool turn" in text, "a comment of the file was lost"


def rests_when_idle(w):
    w.xdo("mousemove", 5, 5)
    w.at_rest("picture")

    def frames_in_a_while():
        before = w.state()["times"]["frames"]
        time.sleep(3.0)
        return w.state()["times"]["frames"] - before

    # A window that never rests runs into the limit.
    w.until("it rests", lambda _: frames_in_a_while() == 0)


def look(w):
    for key, test in (("l", lambda s: s["stage"]["dark"]), ("u", lambda s: s["stage"]["inch"])):
        w.key(key)
        w.until(f"{key} has its effect", test)
    w.settled()
    w.shoot("dark-inch")
    w.key("l")
    w.key("u")
    for tab in ("Map", "Layers", "Curves", "Section"):
        w.click(f"tab {tab}")
        w.shoot(f"drawer-{tab.lower()}", after=0.6)
    w.click("section", 0.5, 0.5)
    w.key("k")
    w.until("two builds are compared", lambda s: s["comparing"] and "other picture" in s["places"])
    w.until("the differences are listed", lambda s: "differences" in s["places"])
    w.shoot("comparison", after=1.0)
    w.key("F1")
    w.until("the help sheet is open", lambda s: s["question"] is not None and "help close" in s["places"])
    w.shoot("help")
    w.key("Escape")
    w.until("the help sheet is closed", lambda s: s["question"] is None)


def main():
    with desk() as (window, copy):
        plan = copy("even.lay.toml")
        w = window(plan)
        w.settled()
        w.shoot("first", after=0.5)
        run((verdict_and_small_findings, change_pitch, wrong_value, pick_turn, click_finding, scrub, cut, legend, orbit), w)
        save(w, plan)
        rests_when_idle(w)
        look(w)
        print(json.dumps(w.state()["times"]))
        w.leave()
    return 0


if __name__ == "__main__":
    sys.exit(main())
