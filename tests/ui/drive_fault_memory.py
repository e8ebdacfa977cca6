"""Too little memory for a plan: the window says so and stays, or ends with its unsaved work kept.

    drive_fault_memory.py LAYWRIGHT SAMPLES [SHOTS]
"""

import pathlib
import re
import subprocess
import sys
import time

from window_driver import desk

PITCH, LENGTH = "traverse.pitch", "wind.length"
MORE_MB = 220  # than it has when its first plan lies: enough to go on as it is


def is_instrumented(w):
    """A sanitizer reserves terabytes of addresses, so they cannot be limited."""
    return re.search(r"lib[atl]san", pathlib.Path(f"/proc/{w.process.pid}/maps").read_text()) is not None


def limit(w, megabytes):
    size = re.search(r"VmSize:\s*(\d+) kB", pathlib.Path(f"/proc/{w.process.pid}/status").read_text())
    most = (int(size[1]) + megabytes * 1024) * 1024
    subprocess.run(["prlimit", "--pid", str(w.process.pid), f"--as={most}"], check=True)
    print(f"it may use {most / 2 ** 20:.0f} MB of addresses, {megabytes} more than it has")


def too_long(w):
    w.fill(LENGTH, "200 km")
    end = time.monotonic() + 400.0
    while time.monotonic() < end and w.process.poll() is None:
        state = w.state()
        said = [state.get("hint", ""), *state.get("notices", [])]
        if any("not enough memory" in words for words in said):
            return True
        time.sleep(0.1)
    assert w.process.poll() is not None, f"it neither says so nor ends: {w.state().get('hint')}"
    return False


def main():
    with desk() as (window, copy):
        # It holds far more than there will be room for.
        plan = copy("even.lay.toml", changes=[("flange_diameter", "500 mm")])
        folder = pathlib.Path(plan).parent
        errors = folder / "errors.txt"
        with errors.open("w") as stderr:
            w = window(plan, errors=stderr)
        w.settled()
        w.until("painted", lambda s: s["painted"])
        if is_instrumented(w):
            w.leave()
            print("not run: the program is instrumented")
            return 0
        w.fill(PITCH, "0.29")
        w.settled()
        limit(w, MORE_MB)
        if too_long(w):
            w.shoot("too-little-memory", after=1.0)
            w.key("ctrl+z")
            w.until("it goes on with what there is room for",
                    lambda s: s["fields"][PITCH]["text"] == "0.29" and s["build"]["full"] and not s["laying"])
            w.settled()
            print("it stays")
        else:
            assert w.process.returncode == 3, f"it did not end well: {w.process.returncode}"
            words = errors.read_text(encoding="utf-8")
            assert "too little memory" in words and "Unsaved work is kept" in words, words
            print("it ends:", words.strip())
        if w.process.poll() is None:
            w.process.kill()
            w.process.wait(20)
        w = window()
        w.takes_up(PITCH, "0.29")
        w.leave()
        print("too little memory: as it should be")
    return 0


if __name__ == "__main__":
    sys.exit(main())
