"""What the window says when it cannot do what it should: no display, no OpenGL, no file, a file that is no plan, a plan
that is not sound.

    drive_troubles.py LAYWRIGHT SAMPLES [SHOTS]
"""

import os
import pathlib
import subprocess
import sys

from window_driver import desk, start_display


def said(program, plan, env):
    run = subprocess.run([program, "open", str(plan)], env=env, capture_output=True, text=True, timeout=60)
    assert run.returncode == 3, f"the exit code is {run.returncode}: {run.stderr}"
    return run.stderr


def no_display(program, plan):
    env = {k: v for k, v in os.environ.items() if k not in ("DISPLAY", "WAYLAND_DISPLAY")}
    words = said(program, plan, env)
    assert "DISPLAY" in words and "laywright picture" in words, f"without a display it says: {words}"


def no_opengl(program, plan):
    server, display = start_display()
    try:
        words = said(program, plan, dict(os.environ, DISPLAY=display, LIBGL_DRIVERS_PATH="/nonexistent"))
        assert "OpenGL 3.3" in words and "driver" in words and "laywright lay" in words, f"without OpenGL: {words}"
    finally:
        server.terminate()
        server.wait()


def missing_file(window, folder):
    w = window(folder / "nowhere.lay.toml")
    state = w.until("it says that there is no such file", lambda s: s["notices"])
    assert "nowhere.lay.toml" in state["notices"][0]
    w.shoot("missing-file", after=0.5)
    w.leave()


def no_toml(window, folder):
    plan = folder / "broken.lay.toml"
    plan.write_text("[spool\nbarrel = 1\n", encoding="utf-8")
    w = window(plan)
    w.until("it says that this cannot be read", lambda s: s["notices"])
    w.shoot("broken-file", after=0.5)
    w.leave()


def unsound(window, copy):
    plan = copy("even.lay.toml", "unsound.lay.toml")
    lines = plan.read_text(encoding="utf-8").splitlines(keepends=True)
    from_fiber = next(i for i, line in enumerate(lines) if line.startswith("[fiber]"))
    to_traverse = next(i for i, line in enumerate(lines) if line.startswith("[traverse]"))
    plan.write_text("".join(lines[:from_fiber] + lines[to_traverse:]), encoding="utf-8")
    w = window(plan)
    state = w.until("it says what is not filled in", lambda s: s["hint"])
    assert "Fiber is not filled in" in state["hint"], f"it says: {state['hint']}"
    w.shoot("unsound", after=0.5)
    w.fill("fiber.diameter", "0.245")
    w.fill("fiber.friction", "0.3")
    w.settled()
    assert w.state()["sound"]
    w.shoot("mended")
    w.leave()


def main():
    with desk() as (window, copy):
        plan = copy("even.lay.toml")
        folder = pathlib.Path(plan).parent
        no_display(sys.argv[1], plan)
        no_opengl(sys.argv[1], plan)
        missing_file(window, folder)
        no_toml(window, folder)
        unsound(window, copy)
    return 0


if __name__ == "__main__":
    sys.exit(main())
