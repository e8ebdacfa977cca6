"""The installed program's window: it opens a copy of its own sample, has its lessons, and is what the desktop's entry takes it for.

    window_test.py BUILD SOURCES
"""

import pathlib
import subprocess
import sys

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "ui"))

from installed import folder, installed  # noqa: E402
from window_driver import Window, start_display  # noqa: E402


def main():
    sources = pathlib.Path(sys.argv[2])
    lessons = len(list(sources.glob("samples/lessons/*.lesson.toml")))
    server, display = start_display()
    try:
        with installed(sys.argv[1]) as prefix, folder() as home:
            window = Window(prefix / "bin/laywright", [], home, display)
            try:
                state = window.settled()
                sample = (prefix / "share/laywright/samples/even.lay.toml").read_text(encoding="utf-8")
                assert f'title = "{state["title"]}"' in sample, state["title"]
                assert state["file"] == "", f"a copy has no place yet: {state['file']}"
                window.click("menu Learn")
                window.until("its lessons are listed", lambda s: f"lesson {lessons}" in s["places"])
                # A desktop finds the entry of a window by this class.
                entry = (prefix / "share/applications/laywright.desktop").read_text(encoding="utf-8")
                name = entry.split("StartupWMClass=")[1].splitlines()[0]
                found = subprocess.run(["xdotool", "search", "--class", f"^{name}$"], env=window.env,
                                       capture_output=True, text=True, check=False)
                assert found.stdout.strip(), f"no window has the class {name}"
            finally:
                window.process.terminate()
                window.process.wait(20)
    finally:
        server.terminate()
        server.wait()


main()
