"""Drives the real window with real input, under a virtual display, and checks each step by what the window says of
itself (laywright open --state) and by what is on the screen.

    drive_window.py LAYWRIGHT SAMPLES [SHOTS]      SHOTS: a folder for pictures of each step
"""

import json
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile
import time

WAIT_S = 60.0  # a shared machine that draws with its processor is slow


def start_display():
    """Xvfb on a display of its own choosing; gives the process and the display's name."""
    read, write = os.pipe()
    server = subprocess.Popen(
        ["Xvfb", "-displayfd", str(write), "-screen", "0", "1920x1080x24", "-nolisten", "tcp"],
        pass_fds=[write], stderr=subprocess.DEVNULL)
    os.close(write)
    with os.fdopen(read) as pipe:
        number = pipe.readline().strip()
    if not number:
        raise SystemExit("Xvfb did not start")
    return server, f":{number}"


class Window:
    def __init__(self, program, plan, folder, display, size, shots):
        self.state_file = folder / f"state-{time.monotonic_ns()}.json"
        self.shots = shots
        self.env = dict(os.environ, DISPLAY=display, XDG_CONFIG_HOME=str(folder / "config"),
                        XDG_STATE_HOME=str(folder / "state"), LIBGL_ALWAYS_SOFTWARE="1")
        self.size = size
        self.process = subprocess.Popen(
            [program, "open", plan, "--size", size, "--state", str(self.state_file)], env=self.env)

    def state(self):
        try:
            return json.loads(self.state_file.read_text(encoding="utf-8"))
        except (FileNotFoundError, json.JSONDecodeError):
            return {}

    def until(self, what, test):
        end = time.monotonic() + WAIT_S
        while time.monotonic() < end:
            state = self.state()
            try:
                if test(state):
                    return state
            except (KeyError, TypeError, IndexError):
                pass
            if self.process.poll() is not None:
                raise SystemExit(f"the window ended by itself, waiting until {what}")
            time.sleep(0.05)
        state.pop("places", None)
        raise SystemExit(f"in vain: {what}\n{json.dumps(state, indent=1)[:6000]}")

    def settled(self):
        return self.until("laid in full and drawn", lambda s: not s["laying"] and s["build"]["full"] and s["scene"]
                          and not s["scene_busy"])

    def xdo(self, *words):
        subprocess.run(["xdotool", *[str(w) for w in words]], env=self.env, check=True)

    def place(self, name, across=0.5, down=0.5):
        state = self.until(f"{name} is on the screen", lambda s: name in s["places"])
        x, y, width, height = state["places"][name]
        return int(x + across * width), int(y + down * height)

    def click(self, name, across=0.5, down=0.5):
        self.xdo("mousemove", *self.place(name, across, down))
        time.sleep(0.15)
        self.xdo("mousedown", 1)
        time.sleep(0.1)
        self.xdo("mouseup", 1)
        time.sleep(0.15)

    def drag(self, name, start, end):
        x, y = self.place(name, *start)
        to_x, to_y = self.place(name, *end)
        self.xdo("mousemove", x, y)
        time.sleep(0.15)
        self.xdo("mousedown", 1)
        for i in range(1, 6):
            self.xdo("mousemove", x + (to_x - x) * i // 5, y + (to_y - y) * i // 5)
            time.sleep(0.08)
        self.xdo("mouseup", 1)

    def key(self, keys):
        self.xdo("key", keys)

    def pixels(self, name="picture"):
        """A hash of what is on the screen there."""
        x, y, width, height = [int(v) for v in self.state()["places"][name]]
        shot = subprocess.run(["import", "-window", "root", "-crop", f"{width}x{height}+{x}+{y}", "-depth", "8", "rgb:-"],
                              env=self.env, check=True, capture_output=True)
        return shot.stdout

    def shoot(self, name):
        if self.shots:
            subprocess.run(["import", "-window", "root", "-crop", f"{self.size}+0+0", str(self.shots / f"{name}.png")],
                           env=self.env, check=True)


def share_different(a, b):
    assert len(a) == len(b), "the picture has changed its size"
    pairs = list(zip(a[::97], b[::97]))
    return sum(abs(x - y) > 12 for x, y in pairs) / len(pairs)


def change_pitch(w):
    before, shown = w.settled(), w.pixels()
    w.click("field traverse.pitch", 0.3)
    w.key("ctrl+a")
    w.xdo("type", "--delay", "60", "0.3")
    w.key("Return")
    w.until("the pitch is in the plan", lambda s: s["fields"]["traverse.pitch"]["text"] == "0.3" and s["dirty"])
    after = w.settled()
    w.until("a build of the new pitch is shown", lambda s: s["build"]["revision"] > before["build"]["revision"])
    after = w.settled()
    # The same length with fewer turns to a layer: more layers, and a larger diameter.
    assert after["build"]["layers"] > before["build"]["layers"], "a coarser pitch gave no more layers"
    assert abs(after["build"]["length_mm"] - before["build"]["length_mm"]) < 1.0, "the length changed"
    time.sleep(1.0)
    w.shoot("pitch")
    assert share_different(shown, w.pixels()) > 0.005, "the picture did not change with the pitch"


def wrong_value(w):
    w.settled()
    w.click("field traverse.pitch", 0.3)
    w.key("ctrl+a")
    w.xdo("type", "--delay", "60", "0")
    w.key("Return")
    state = w.until("the field says what is wrong", lambda s: s["fields"]["traverse.pitch"]["issues"]
                    and s["fields"]["traverse.pitch"]["text"] == "0" and not s["typing"])
    assert not state["sound"] and state["hint"], "a plan that is wrong is taken for sound"
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
    before = w.state()["stage"]["camera"]
    w.click("finding 0")
    after = w.until("the finding is chosen", lambda s: s["stage"]["chosen_finding"] == 0)["stage"]["camera"]
    assert after != before, "the camera did not fly"
    w.settled()
    time.sleep(0.5)
    w.shoot("finding")
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
    w.settled()
    time.sleep(0.8)
    whole = w.pixels()
    w.key("w")
    w.until("a wedge is cut", lambda s: s["stage"]["wedge"])
    w.settled()
    time.sleep(0.8)
    assert share_different(whole, w.pixels()) > 0.01, "the cut is not to be seen"
    w.shoot("wedge")
    w.key("w")
    w.key("Next")  # PageDown: one layer off
    w.until("one layer is off", lambda s: s["stage"]["last_layer"] == s["build"]["layers"] - 1)
    w.key("a")
    w.until("all is shown", lambda s: s["stage"]["last_layer"] is None and s["stage"]["wedge"] is None)


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
    w.settled()
    time.sleep(2.5)
    before = w.state()["times"]["frames"]
    time.sleep(3.0)
    after = w.state()["times"]["frames"]
    assert after == before, f"{after - before} frames were drawn while nothing happened"


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
        time.sleep(0.6)
        w.shoot(f"drawer-{tab.lower()}")
    w.click("section", 0.5, 0.5)
    w.key("k")
    w.until("two builds are compared", lambda s: s["comparing"] and "other picture" in s["places"])
    w.until("the differences are listed", lambda s: "differences" in s["places"])
    time.sleep(1.0)
    w.shoot("comparison")
    w.key("F1")
    w.until("the help sheet is open", lambda s: s["question"] is not None and "help close" in s["places"])
    w.shoot("help")
    w.key("Escape")
    w.until("the help sheet is closed", lambda s: s["question"] is None)


def no_display(program, plan):
    env = {k: v for k, v in os.environ.items() if k not in ("DISPLAY", "WAYLAND_DISPLAY")}
    run = subprocess.run([program, "open", plan], env=env, capture_output=True, text=True, timeout=60)
    assert run.returncode == 3, f"without a display the exit code is {run.returncode}"
    assert "display" in run.stderr, f"without a display it says: {run.stderr}"


def main():
    program, samples = sys.argv[1], pathlib.Path(sys.argv[2])
    shots = pathlib.Path(sys.argv[3]) if len(sys.argv) > 3 else None
    if shots:
        shots.mkdir(parents=True, exist_ok=True)
    server, display = start_display()
    window = None
    try:
        with tempfile.TemporaryDirectory() as name:
            plan = pathlib.Path(name) / "even.lay.toml"
            shutil.copy(samples / "even.lay.toml", plan)
            no_display(program, str(plan))
            window = Window(program, str(plan), pathlib.Path(name), display, "1280x800", shots)
            window.settled()
            time.sleep(0.5)
            window.shoot("first")
            for step in (change_pitch, wrong_value, pick_turn, click_finding, scrub, cut, orbit):
                step(window)
                print(f"{step.__name__}: as it should be", flush=True)
            save(window, plan)
            rests_when_idle(window)
            look(window)
            print(json.dumps(window.state()["times"]))
            window.key("ctrl+q")
            assert window.process.wait(30) == 0, "the window did not end well"
    finally:
        if window and window.process.poll() is None:
            window.process.terminate()
        server.terminate()
        server.wait()
    return 0


if __name__ == "__main__":
    sys.exit(main())
