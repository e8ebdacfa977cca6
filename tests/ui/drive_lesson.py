"""Lessons opened from the menu and run to their end by keys and clicks: questions answered rightly and wrongly, plays watched,
settings tried until the goal is reached. The user's own plan stays as it was. Four, with all that steps can have; what each of
the ten asks, shows and lets try is held by tests/session/lesson_test.cpp, without a window.

    drive_lesson.py LAYWRIGHT SAMPLES [SHOTS]
"""

import pathlib
import sys
import time
import tomllib

from window_driver import desk, run, share_different

FOLDER = pathlib.Path(sys.argv[2]) / "lessons"
PITCH = "traverse.pitch"


def lesson_file(number):
    return next(FOLDER.glob(f"{number}-*.lesson.toml"))


def ready(w, number, step):
    return w.until(f"lesson {number}, step {step}", lambda s: s["lesson"]["number"] == number
                   and s["lesson"]["step"] == step and not s["lesson"]["waits"])["lesson"]


def open_lesson(w, number):
    """By the mouse from the menu; the even ones by keys alone."""
    if number % 2:
        w.click("menu Learn")
        w.click(f"lesson {number}")
    else:
        w.key("alt+l")
        w.until("the menu is open", lambda s: f"lesson {number}" in s["places"])
        w.calm()
        w.key(*["Down"] * (number - 1), "Return")
    return ready(w, number, 1)


def answer(w, number, step, right, last):
    """Even lessons are answered wrongly, to see that this is told, too. Of several questions, all come before it is seen."""
    wanted = right if number % 2 else right % 3 + 1
    assert not w.state()["stage"]["scrub"]["at_end"], "what is asked for is seen already"
    w.click(f"lesson answer {wanted}") if step == 2 and number == 1 else w.key(str(wanted))
    state = w.until("answered", lambda s: s["lesson"]["answer"] == wanted - 1)
    assert state["lesson"]["right"] == (wanted == right)
    w.key(str(right))  # the first answer counts
    time.sleep(0.3)
    assert w.state()["lesson"]["answer"] == wanted - 1
    if last:
        w.until("then it is seen", lambda s: s["stage"]["scrub"]["at_end"])
    else:
        assert not w.state()["stage"]["scrub"]["at_end"], "the next question is answered by what is seen"


def watch(w, number, play):
    """Both pictures fill, and stop at the end of the layer, or where it first goes wrong."""
    w.until("it plays", lambda s: s["stage"]["scrub"]["playing"])
    early = w.pixels("picture"), w.pixels("other picture")
    turn = w.state()["stage"]["scrub"]["turn"]
    if number > 2:  # the others are not waited for
        return
    state = w.until("it has stopped", lambda s: not s["stage"]["scrub"]["playing"])
    assert state["stage"]["scrub"]["turn"] > turn + play.get("to_layer", 1)
    assert state["lesson"]["place"] == ("until" in play), "what went wrong is pointed at"
    assert not state["stage"]["scrub"]["at_end"], "it went on to the end of the wind"
    time.sleep(0.5)
    late = w.pixels("picture"), w.pixels("other picture")
    for a, b in zip(early, late):
        assert share_different(a, b) > 0.02, "a picture did not fill"


def attempt(w, key, solution):
    """A step by the arrow keys moves the figure; then the value that the lesson knows to reach the goal."""
    first = w.until("what was is told", lambda s: s["lesson"]["tried"]["settled"])["lesson"]["tried"]
    assert not first["reached"] and first["now"] == first["before"]
    text = w.field(key)["text"]
    w.key("Down")
    w.until("a step less, or nothing lower", lambda s: s["lesson"]["tried"]["settled"])
    w.key("Right")  # the slider lies on its side
    w.until("a step more", lambda s: s["lesson"]["tried"]["settled"])
    w.key("Left", "Left")
    w.until("and less", lambda s: s["lesson"]["tried"]["settled"])
    choices = key == "traverse.motion"
    if choices:
        w.click("lesson choice 1")
    else:
        w.until("the key has changed it", lambda s: s["fields"][key]["text"] != text)
        w.click("lesson field", 0.3)
        w.until("it is typed into", lambda s: s["typing"] == key)
        w.key("ctrl+a")
        w.type(solution)
        w.key("Return")
        number = solution.split()[0]
        w.until("it is the plan's", lambda s: s["fields"][key]["text"] == number)
    done = w.until("the goal is reached", lambda s: s["lesson"]["tried"]["settled"]
                   and s["lesson"]["tried"]["reached"])["lesson"]["tried"]
    assert done["now"] != done["before"]
    w.shoot(f"lesson-{w.state()['lesson']['number']}-reached")
    w.click("lesson take back")
    w.until("as it was", lambda s: s["fields"][key]["text"] == text and s["lesson"]["tried"]["settled"]
            and not s["lesson"]["tried"]["reached"])


def take(w, number):
    lesson = tomllib.loads(lesson_file(number).read_text(encoding="utf-8"))
    steps = lesson["step"]
    last_asked = max(k for k, step in enumerate(steps, 1) if "ask" in step)
    open_lesson(w, number)
    for k, step in enumerate(steps, 1):
        ready(w, number, k)
        if "ask" in step:
            answer(w, number, k, step["right"], k == last_asked)
        if "play" in step:
            watch(w, number, step["play"])
        if "look" in lesson and k > last_asked and "point" not in step and not step.get("whole"):
            near = w.until("it looks from near, in a cut", lambda s: s["stage"]["wedge"] is not None)
            if k == last_asked + 1:
                w.click("lesson afar")
                w.until("whole spools", lambda s: s["stage"]["wedge"] is None)
                w.key("o")
                w.until("near again", lambda s: s["stage"]["wedge"] == near["stage"]["wedge"])
        if step.get("point", {}).get("finding"):
            w.until("it points at a finding", lambda s: s["stage"]["chosen_finding"] is not None)
        if step.get("cut"):
            w.until("it is cut", lambda s: s["stage"]["wedge"] is not None)
        if "point" in step or "look" in lesson:
            time.sleep(0.6)  # the camera flies there
            w.until("drawn", lambda s: s["painted"])
        w.shoot(f"lesson-{number}-{k}")
        if "try" in step:
            attempt(w, step["try"]["key"], step["solution"])
        if k < len(steps):
            w.click("lesson next") if k == 1 else w.key("Return")
    state = w.state()
    assert not state["dirty"] and state["question"] is None
    print(f"lesson {number}: as it should be", flush=True)


def the_plan_is_changed(w):
    w.settled()
    w.fill(PITCH, "0.3")
    w.until("changed", lambda s: s["dirty"])


def lessons_of_each_kind(w):
    """One question and two, a finding from near, a figure tried and a choice, with and without a look; and the last."""
    for number in (1, 2, 6, 10):
        take(w, number)


def from_one_to_the_next(w):
    """The last step of a lesson leads to the next one; that of the last leads out."""
    assert w.state()["lesson"]["step"] == w.state()["lesson"]["steps"]
    w.key("Return")
    state = w.until("out of the last", lambda s: s["lesson"] is None)
    assert not state["comparing"] and state["documents"] == 1
    w.click("menu Learn")
    w.click("lesson 6")
    ready(w, 6, 1)
    last = w.state()["lesson"]["steps"]
    for k in range(2, last + 1):
        w.click("lesson next")
        ready(w, 6, k)
    w.click("lesson back")
    ready(w, 6, last - 1)
    w.key("Return")
    ready(w, 6, last)
    w.click("lesson next")
    ready(w, 7, 1)


def nothing_is_saved_or_lost(w):
    w.key("ctrl+s")
    w.until("refused in words", lambda s: any("lesson" in n.lower() for n in s["notices"]))
    w.click("lesson leave")
    state = w.until("left", lambda s: s["lesson"] is None)
    assert state["documents"] == 1 and state["dirty"], "the plan that was open has changed"
    assert state["fields"][PITCH]["text"] == "0.3"
    w.key("ctrl+z")
    w.until("its history is its own", lambda s: not s["dirty"])


if __name__ == "__main__":
    with desk() as (new_window, copy_sample):
        plan = copy_sample("even.lay.toml")
        text = plan.read_text(encoding="utf-8")
        w = new_window(plan)
        run([the_plan_is_changed, lessons_of_each_kind, from_one_to_the_next, nothing_is_saved_or_lost], w)
        w.leave()
        assert plan.read_text(encoding="utf-8") == text
