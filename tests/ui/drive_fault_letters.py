"""No letters on the system, or none that can be read: the window has plain ones and says so; sheet, picture and reports
are written, and say what is missing.

    drive_fault_letters.py LAYWRIGHT SAMPLES [SHOTS]
"""

import os
import pathlib
import subprocess
import sys

from window_driver import desk

PITCH = "traverse.pitch"
# In a space of its own, where anybody may mount, all letters are hidden.
WITHOUT = ["unshare", "--map-root-user", "--mount", "sh", "-c",
           'for f in /usr/share/fonts /usr/local/share/fonts; do [ ! -d $f ] || mount -t tmpfs none $f || exit; done; '
           'exec "$@"', "sh"]


# And what stands in their place cannot be read as letters: nothing, a text, a folder, a link to nowhere.
BROKEN = [*WITHOUT[:-2],
          WITHOUT[-2].replace('exec "$@"',
                              'cd /usr/share/fonts && mkdir -p truetype/dejavu truetype/noto/NotoSans-Regular.ttf && '
                              ': >truetype/dejavu/DejaVuSans.ttf && echo letters >truetype/dejavu/DejaVuSans-Bold.ttf && '
                              'ln -s nowhere truetype/noto/NotoSans-Bold.ttf && cd / && exec "$@"'), "sh"]


def plain_letters(window, plan, under):
    w = window(plan, under=under)
    w.settled()
    state = w.until("it says that letters are missing", lambda s: any("fonts-dejavu-core" in n for n in s["notices"]))
    assert len(state["notices"]) == 1, f"it says: {state['notices']}"
    assert state["notices"][0].isascii(), "its own message has signs that are missing"
    w.shoot("no-letters", after=1.0)
    w.click("dismiss notice")
    w.fill(PITCH, "0.3")
    w.until("it can be used", lambda s: s["fields"][PITCH]["text"] == "0.3" and s["dirty"])
    w.settled()
    w.shoot("no-letters-used", after=1.0)
    w.leave()


def on_paper(program, plan, folder):
    empty = folder / "fonts.conf"
    empty.write_text("<?xml version='1.0'?><!DOCTYPE fontconfig SYSTEM 'fonts.dtd'><fontconfig></fontconfig>\n",
                     encoding="utf-8")
    env = dict(os.environ, FONTCONFIG_FILE=str(empty), LIBGL_ALWAYS_SOFTWARE="1")
    for command, name in (("sheet", "plain.pdf"), ("picture", "plain.png"), ("lay", "reports")):
        out = folder / name
        where = ["--out", str(out)] if command == "lay" else ["-o", str(out)]
        run = subprocess.run([program, command, str(plan), *where], env=env, capture_output=True, text=True,
                             timeout=300)
        assert run.returncode == 0 and out.exists(), f"laywright {command}: {run.returncode}: {run.stderr}"
        assert "fonts-dejavu-core" in run.stderr, f"laywright {command} does not say what is missing: {run.stderr}"
    # With letters, nothing of the kind is said.
    run = subprocess.run([program, "sheet", str(plan), "-o", str(folder / "lettered.pdf")], env=dict(os.environ),
                         capture_output=True, text=True, timeout=300)
    assert run.returncode == 0 and "fonts-dejavu-core" not in run.stderr, run.stderr


def main():
    with desk() as (_, copy):
        plan = copy("even.lay.toml")
        on_paper(sys.argv[1], plan, pathlib.Path(plan).parent)
    if subprocess.run([*WITHOUT, "true"], capture_output=True).returncode != 0:
        print("not run: this system lets nobody hide its letters")
        return 0
    for under in (WITHOUT, BROKEN):
        with desk() as (window, copy):
            plain_letters(window, copy("even.lay.toml"), under)
    print("no letters: as it should be")
    return 0


if __name__ == "__main__":
    sys.exit(main())
