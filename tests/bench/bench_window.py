"""How long the window keeps a person waiting, under a virtual display: the longest and the middle turn of its loop, and
the painter's passes, while the spool is turned, zoomed, a field is edited, the scrubber dragged, and while it rests.
Figures, not checks.

    bench_window.py LAYWRIGHT PLAN [SIZE]      SIZE: of the window's inside, 1280x800 by default
"""

import pathlib
import shutil
import statistics
import sys
import tempfile
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "ui"))
from window_driver import Window, start_display  # noqa: E402


class Turns:
    """Collects the times of all turns between two moments, from what the state file tells of the last ones."""

    def __init__(self, window):
        self.window, self.turns = window, []
        self.first = self.last = window.state()["times"]

    def look(self):
        now = self.window.state().get("times")
        if now and now["frames"] > self.last["frames"]:
            self.turns += now["turns_ms"][-(now["frames"] - self.last["frames"]):]
            self.last = now

    def report(self, name):
        self.look()
        turns = sorted(self.turns) or [0.0]
        passes = self.last["passes"] - self.first["passes"]
        print(f"{name:<28} {len(self.turns):5} turns, longest {turns[-1]:6.1f} ms, "
              f"19 of 20 within {turns[min(len(turns) - 1, len(turns) * 19 // 20)]:6.1f}, "
              f"middle {statistics.median(turns):5.1f} ms; {passes:4} passes, last {self.last['last_pass_ms']:5.1f} ms",
              flush=True)


def sweep(window, turns, name, start, end, steps=40, button=1):
    (x, y), (to_x, to_y) = window.place(name, *start), window.place(name, *end)
    window.xdo("mousemove", x, y)
    time.sleep(0.1)
    window.xdo("mousedown", button)
    for i in range(1, steps + 1):
        window.xdo("mousemove", x + (to_x - x) * i // steps, y + (to_y - y) * i // steps)
        time.sleep(0.02)
        turns.look()
    window.xdo("mouseup", button)


def phase(window, name, act):
    turns = Turns(window)
    act(turns)
    window.until("all is painted", lambda s: not s["laying"] and not s["scene_busy"] and s["painted"])
    time.sleep(0.3)
    turns.report(name)


def edit(window, turns):
    for value in ("0.31", "0.33"):
        window.click("field traverse.pitch", 0.3)
        window.key("ctrl+a")
        window.xdo("type", "--delay", "60", value)
        window.key("Return")
        turns.look()
        window.settled()


def zoom(window, _):
    window.xdo("mousemove", *window.place("picture"))
    for _ in range(18):
        window.xdo("click", 4)
        time.sleep(0.05)


def show(turns):
    for _ in range(50):
        time.sleep(0.1)
        turns.look()
    turns.window.key("Escape")


def main():
    program, plan = sys.argv[1], pathlib.Path(sys.argv[2])
    size = sys.argv[3] if len(sys.argv) > 3 else "1280x800"
    server, display = start_display()
    window = None
    try:
        with tempfile.TemporaryDirectory() as name:
            copy = pathlib.Path(name) / plan.name
            shutil.copy(plan, copy)
            window = Window(program, [copy], pathlib.Path(name), display, size)
            window.settled()
            window.until("painted", lambda s: s["painted"])
            times = window.state()["times"]
            print(f"first frame {times['first_frame_ms']:.0f} ms, first picture {times['first_picture_ms']:.0f} ms")
            phase(window, "turning", lambda t: sweep(window, t, "picture", (0.3, 0.3), (0.7, 0.4)))
            phase(window, "editing the pitch", lambda t: edit(window, t))
            phase(window, "scrubbing", lambda t: sweep(window, t, "scrub bar", (0.9, 0.5), (0.2, 0.5)))
            window.key("End")
            phase(window, "zooming in", lambda t: zoom(window, t))
            phase(window, "turning, close by", lambda t: sweep(window, t, "picture", (0.4, 0.4), (0.6, 0.5)))
            phase(window, "at rest, 2 s", lambda t: time.sleep(2.0))
            window.key("F9")
            phase(window, "shown to others, 5 s", show)
    finally:
        if window and window.process.poll() is None:
            window.process.terminate()
        server.terminate()
        server.wait()
    return 0


if __name__ == "__main__":
    sys.exit(main())
