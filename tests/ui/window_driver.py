"""Drives the real window with real input, under a virtual display, and checks each step by what the window says of
itself (laywright open --state) and by what is on the screen."""

import contextlib
import ctypes
import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile
import time

WAIT_S = 300.0  # only ends what hangs: nothing passes or fails by how long it takes


def start_display(screen="1920x1080", dpi=96):
    """Xvfb on a display of its own choosing; gives the process and the display's name."""
    read, write = os.pipe()
    server = subprocess.Popen(
        ["Xvfb", "-displayfd", str(write), "-screen", "0", f"{screen}x24", "-nolisten", "tcp", "-noreset"],
        pass_fds=[write], stderr=subprocess.DEVNULL)
    os.close(write)
    with os.fdopen(read) as pipe:
        number = pipe.readline().strip()
    if not number:
        raise SystemExit("Xvfb did not start")
    set_dots_per_inch(f":{number}", dpi)
    return server, f":{number}"


def set_dots_per_inch(display, dpi):
    """As a desktop tells it to its programs: the resource Xft.dpi, a property of the root window (xrdb does the same)."""
    resource_manager, string, replace = 23, 31, 0  # X11/Xatom.h, X11/X.h
    x11 = ctypes.CDLL("libX11.so.6")
    x11.XOpenDisplay.restype = ctypes.c_void_p
    x11.XDefaultRootWindow.restype = ctypes.c_ulong
    connection = ctypes.c_void_p(x11.XOpenDisplay(display.encode()))
    root = ctypes.c_ulong(x11.XDefaultRootWindow(connection))
    text = f"Xft.dpi:\t{dpi}\n".encode()
    x11.XChangeProperty(connection, root, ctypes.c_ulong(resource_manager), ctypes.c_ulong(string), 8, replace, text,
                        len(text))
    x11.XCloseDisplay(connection)


class Window:
    """A running program. `folder` holds its settings and state: a second one there goes on from the first. `under`:
    a command that runs it, words before its own; `errors`: an open file for what it says on standard error;
    `preload`: a library that is loaded before it."""

    def __init__(self, program, plans, folder, display, size="1280x800", shots=None, under=(), errors=None,
                 preload=None, **environment):
        # In memory where there is room for that: it is written with each frame, and brought to the disk each time.
        memory = "/dev/shm"
        self.told = tempfile.TemporaryDirectory(dir=memory if os.access(memory, os.W_OK) else None)
        self.state_file = pathlib.Path(self.told.name) / "state.json"
        self.shots = shots
        self.env = dict(os.environ, DISPLAY=display, XDG_CONFIG_HOME=str(folder / "config"),
                        XDG_STATE_HOME=str(folder / "state"), LIBGL_ALWAYS_SOFTWARE="1", **environment)
        own = dict(self.env)
        if preload:
            own["LD_PRELOAD"] = " ".join(filter(None, [own.get("LD_PRELOAD"), preload]))
            # An instrumented program insists on being loaded first, but for this option.
            own["ASAN_OPTIONS"] = own.get("ASAN_OPTIONS", "") + ":verify_asan_link_order=0"
        self.size = size
        self.mouse = None
        self.process = subprocess.Popen(
            [*under, program, "open", *map(str, plans), "--size", size, "--state", str(self.state_file)], env=own,
            stderr=errors)

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
            except (KeyError, TypeError, IndexError, FileNotFoundError):
                pass
            if self.process.poll() is not None:
                raise SystemExit(f"the window ended by itself, waiting until {what}")
            time.sleep(0.05)
        state.pop("places", None)
        raise SystemExit(f"in vain: {what}\n{json.dumps(state, indent=1)[:6000]}")

    def settled(self):
        return self.until("laid in full and drawn", lambda s: not s["laying"] and s["build"]["full"] and s["scene"]
                          and not s["scene_busy"])

    def xdo(self, *words, patience=3.0):
        """Input, and the first frame that knows of all of it: what reaches no window is waited for no longer than that."""
        kind, *more = words
        inputs = sum(2 * len(key.split("+")) for key in more) if kind == "key" else 2 * len(more[-1]) if kind == "type" else 1
        if kind == "mousemove":
            inputs = int(more != self.mouse)
            self.mouse = more
        before = self.count("inputs")
        subprocess.run(["xdotool", *[str(w) for w in words]], env=self.env, check=True, timeout=WAIT_S)
        end = time.monotonic() + patience
        while time.monotonic() < end and self.process.poll() is None and self.count("inputs") < before + inputs:
            time.sleep(0.01)

    def count(self, what):
        return self.state().get("times", {}).get(what, 0)

    def calm(self, patience=1.0):
        """The frames that an input brings are drawn, unless something else goes on moving."""
        last, end = self.count("frames") + 3, time.monotonic() + patience
        while time.monotonic() < end and not self.state().get("rests") and self.count("frames") < last:
            time.sleep(0.01)

    def place(self, name, across=0.5, down=0.5):
        """A point of it, once it has come to rest."""
        box, frames, since = None, set(), time.monotonic()
        end = since + WAIT_S
        while time.monotonic() < end:
            state = self.until(f"{name} is on the screen", lambda s: name in s["places"])
            if state["places"][name] != box:
                box, frames = state["places"][name], set()
            if state["times"]["frames"] not in frames:
                frames.add(state["times"]["frames"])
                since = time.monotonic()
            # No frame is due, it stands still over frames, or no more are drawn.
            if state["rests"] or len(frames) > 3 or time.monotonic() - since > 0.7:
                break
            time.sleep(0.04)
        else:
            raise SystemExit(f"{name} does not come to rest")
        x, y, width, height = box
        return int(x + across * width), int(y + down * height)

    def click(self, name, across=0.5, down=0.5):
        self.xdo("mousemove", *self.place(name, across, down))
        self.calm()
        self.xdo("mousedown", 1)
        self.calm()
        self.xdo("mouseup", 1)
        self.calm()

    def drag(self, name, start, end):
        x, y = self.place(name, *start)
        to_x, to_y = self.place(name, *end)
        self.xdo("mousemove", x, y)
        self.calm()
        self.xdo("mousedown", 1)
        for i in range(1, 6):
            self.xdo("mousemove", x + (to_x - x) * i // 5, y + (to_y - y) * i // 5)
            time.sleep(0.08)
        self.xdo("mouseup", 1)

    def key(self, *keys):
        """One after the other, each in a turn of the window's own, however slow it is."""
        for k in keys:
            self.xdo("key", k)

    def type(self, text):
        self.xdo("type", "--delay", "20", text)

    def name_file(self, path):
        """Into the file dialog that comes up."""
        self.until("a name is asked for", lambda s: "file name" in s["places"])
        self.click("file name")
        self.key("ctrl+a")
        self.type(str(path))
        self.calm()

    def scroll_to(self, name, x=20):
        """By the wheel at that place across the window, the plan's form by default, until the whole of it is in sight."""
        height = int(self.size.split("x")[1])
        for _ in range(60):
            y = self.place(name, down=0.0)[1]
            if 70 < y < height - 60:
                return
            self.xdo("mousemove", x, height // 2)
            self.xdo("click", 4 if y <= 70 else 5)
        raise SystemExit(f"{name} does not come into sight")

    def field(self, path):
        return self.state()["fields"][path]

    def fill(self, path, text, end="Return"):
        """Types into a field of the plan, whatever stands there."""
        self.scroll_to(f"field {path}")
        self.click(f"field {path}", 0.3)
        self.until(f"{path} is typed into", lambda s: s["typing"] == path)
        self.key("ctrl+a")
        self.type(text)
        self.until(f"{text} is typed", lambda s: s["typed"] == text)
        if end:
            self.key(end)
            self.until(f"{path} is left", lambda s: s["typing"] != path)

    def number(self):
        """Of the window, for the display's server."""
        found = subprocess.run(["xdotool", "search", "--pid", str(self.process.pid), "--name", "."], env=self.env,
                               check=True, capture_output=True, text=True)
        return int(found.stdout.split()[-1])

    def takes_up(self, path, text):
        """The one piece of unsaved work that is offered, in which this field of the plan has this text."""
        self.until("the work is offered", lambda s: s["recovery_offers"] == 1 and "recover 0" in s["places"])
        self.click("recover 0")
        self.until("and is there", lambda s: s["fields"][path]["text"] == text and s["dirty"])

    def leave(self):
        self.key("ctrl+q")
        if self.state().get("any_unsaved"):
            self.click("leave now")
        assert self.process.wait(WAIT_S) == 0, "the window did not end well"

    def at_rest(self, *names):
        """What is on the screen at these places, once all is painted as fine as it gets and moves no more."""
        self.settled()
        self.until("painted", lambda s: s["painted"])
        shots, end = None, time.monotonic() + WAIT_S
        while time.monotonic() < end:
            before, shots = shots, [self.pixels(name) for name in names]
            if shots == before and self.state()["painted"]:
                return shots
            time.sleep(0.2)
        raise SystemExit(f"{names} do not come to rest")

    def is_kept(self, name, words):
        """A file of that name, of what is kept for the next start, has these words."""
        roots = [pathlib.Path(self.env[home]) for home in ("XDG_CONFIG_HOME", "XDG_STATE_HOME")]
        self.until(f"{words} is kept", lambda _: any(
            words in file.read_text(encoding="utf-8") for root in roots for file in root.rglob(name)))

    def pixels(self, name="picture"):
        """A hash of what is on the screen there."""
        x, y, width, height = [int(v) for v in self.state()["places"][name]]
        shot = subprocess.run(["import", "-window", "root", "-crop", f"{width}x{height}+{x}+{y}", "-depth", "8", "rgb:-"],
                              env=self.env, check=True, capture_output=True)
        return shot.stdout

    def shoot(self, name, after=0.0):
        """What is seen so many seconds from now, where pictures of the steps are wanted."""
        if self.shots:
            time.sleep(after)
            subprocess.run(["import", "-window", "root", "-crop", f"{self.size}+0+0", str(self.shots / f"{name}.png")],
                           env=self.env, check=True)


def share_different(a, b):
    assert len(a) == len(b), "the picture has changed its size"
    pairs = list(zip(a[::97], b[::97]))
    return sum(abs(x - y) > 12 for x, y in pairs) / len(pairs)


def end(process):
    """Politely, or not: what stays would hold the test's output open, and whoever reads that would wait for it."""
    for way in (process.terminate, process.kill):
        if process.poll() is None:
            way()
            with contextlib.suppress(subprocess.TimeoutExpired):
                process.wait(20)


@contextlib.contextmanager
def desk(screen="1920x1080", dpi=96):
    """A display and a folder, and windows on them, all gone afterwards. Arguments of the test: program, samples, and
    a folder for pictures of each step, or none."""
    program, samples = sys.argv[1], pathlib.Path(sys.argv[2])
    shots = pathlib.Path(sys.argv[3]) if len(sys.argv) > 3 else None
    if shots:
        shots.mkdir(parents=True, exist_ok=True)
    server, display = start_display(screen, dpi)
    windows = []
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as name:
        folder = pathlib.Path(name)

        def window(*plans, **more):
            windows.append(Window(program, plans, folder, display, shots=shots, **more))
            return windows[-1]

        def copy(sample, to=None, changes=()):
            """A sample's copy, with values of its keys changed: (("pitch", "0.26 mm"),), each where it first stands."""
            text = (samples / sample).read_text(encoding="utf-8")
            for key, value in changes:
                text = re.sub(rf'^{key} = "[^"]*"', f'{key} = "{value}"', text, count=1, flags=re.MULTILINE)
            plan = folder / (to or sample)
            plan.write_text(text, encoding="utf-8")
            return plan

        try:
            yield window, copy
        finally:
            for process in [*(w.process for w in windows), server]:
                end(process)


def run(steps, w):
    for step in steps:
        step(w)
        print(f"{step.__name__}: as it should be", flush=True)
