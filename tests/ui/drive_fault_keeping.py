"""Nothing can be kept for the next start: the folder of the settings may only be read, the disk of unsaved work is
full.

    drive_fault_keeping.py LAYWRIGHT SAMPLES [SHOTS]
"""

import pathlib
import subprocess
import sys
import time

from window_driver import desk

PITCH = "traverse.pitch"
IN_A_SPACE = ["unshare", "--map-root-user", "--mount", "sh", "-c"]  # of its own, where anybody may mount
READ_ONLY = 'mount -t tmpfs none "$0" && mount -o remount,ro "$0" && exec "$@"'
FULL = 'mount -t tmpfs -o size=16k none "$0" && (cat /dev/zero >"$0"/filler 2>/dev/null; true) && exec "$@"'


def may_mount():
    return subprocess.run([*IN_A_SPACE, "mount -t tmpfs none /mnt"], capture_output=True).returncode == 0


def settings_not_kept(window, plan, folder):
    if may_mount():
        (folder / "config" / "laywright").mkdir(parents=True, exist_ok=True)
        w = window(plan, under=[*IN_A_SPACE, READ_ONLY, str(folder / "config" / "laywright")])
    else:
        (folder / "config").write_text("A file stands where the folder should be.\n", encoding="utf-8")
        w = window(plan)
    w.settled()
    state = w.until("it says that settings are not kept",
                    lambda s: any("Settings are not kept" in n for n in s["notices"]))
    assert str(folder / "config") in state["notices"][-1], f"it does not say where: {state['notices']}"
    w.shoot("settings-not-kept", after=0.5)
    w.click("dismiss notice")
    w.until("the message is gone", lambda s: not s["notices"])
    dark = w.state()["stage"]["dark"]
    w.key("l")
    w.until("another setting", lambda s: s["stage"]["dark"] != dark)
    time.sleep(5.0)  # settings are written every two seconds
    assert not w.state()["notices"], f"it is told again: {w.state()['notices']}"
    w.fill(PITCH, "0.29")
    w.key("ctrl+s")
    w.until("the plan is saved all the same", lambda s: not s["dirty"])
    w.settled()
    w.leave()


def work_not_kept(window, plan, folder):
    if not may_mount():
        print("not run: this system lets nobody mount a disk of their own")
        return
    (folder / "state" / "laywright").mkdir(parents=True, exist_ok=True)
    w = window(plan, under=[*IN_A_SPACE, FULL, str(folder / "state" / "laywright")])
    w.settled()
    w.fill(PITCH, "0.3")
    state = w.until("it says that unsaved work is not kept",
                    lambda s: any("No copy of unsaved work" in n for n in s["notices"]))
    assert any("No space left" in n for n in state["notices"]), f"it does not say why: {state['notices']}"
    w.shoot("work-not-kept", after=0.5)
    w.key("ctrl+s")
    w.until("the plan is saved all the same", lambda s: not s["dirty"])
    w.leave()


def main():
    with desk() as (window, copy):
        plan = copy("even.lay.toml")
        folder = pathlib.Path(plan).parent
        settings_not_kept(window, plan, folder)
        work_not_kept(window, plan, folder)
        print("nothing can be kept: as it should be")
    return 0


if __name__ == "__main__":
    sys.exit(main())
