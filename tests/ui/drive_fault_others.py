"""A plan's file in the hands of others while it is open: changed, deleted, open in a second window, both killed.

    drive_fault_others.py LAYWRIGHT SAMPLES [SHOTS]
"""

import pathlib
import re
import signal
import sys

from window_driver import Window, desk, start_display

PITCH = "traverse.pitch"


def pitch_in(file):
    return re.search(r'^pitch = "?([0-9.]+)', file.read_text(encoding="utf-8"), re.MULTILINE)[1]


def change(file, pitch):
    """As another program saves it."""
    text = re.sub(r'^pitch = "[^"]*"', f'pitch = "{pitch} mm"', file.read_text(encoding="utf-8"), count=1,
                  flags=re.MULTILINE)
    new = file.with_suffix(".new")
    new.write_text(text, encoding="utf-8")
    new.rename(file)


def refuses_to_save(w, file, pitch):
    w.key("ctrl+s")
    w.until("it says that the plan was not saved", lambda s: any("not saved" in n for n in s["notices"]))
    assert pitch_in(file) == pitch, "a save has replaced what somebody else had saved"
    assert w.state()["dirty"], "work that is not saved is taken for saved"


def dismiss_all(w):
    while w.state()["notices"]:
        before = len(w.state()["notices"])
        w.click("dismiss notice")
        w.until("one message fewer", lambda s: len(s["notices"]) < before)


def changed_on_disk(w, file):
    w.settled()
    w.fill(PITCH, "0.29")
    change(file, "0.31")
    state = w.until("it is told, and asked which to keep", lambda s: "read theirs" in s["places"]
                    and any("changed by another program" in n for n in s["notices"]))
    assert state["fields"][PITCH]["text"] == "0.29", "the work was replaced unasked"
    w.shoot("changed-by-others", after=0.5)
    refuses_to_save(w, file, "0.31")
    w.shoot("not-saved", after=0.5)
    w.click("read theirs")
    w.until("theirs is shown", lambda s: s["fields"][PITCH]["text"] == "0.31" and not s["dirty"])
    w.key("ctrl+z")
    w.until("mine comes back", lambda s: s["fields"][PITCH]["text"] == "0.29" and s["dirty"])
    dismiss_all(w)
    w.key("ctrl+s")
    w.until("now it is saved", lambda s: not s["dirty"])
    assert pitch_in(file) == "0.29"


def deleted(w, file):
    w.settled()
    text = file.read_text(encoding="utf-8")
    file.unlink()
    state = w.until("it is told that the file is gone", lambda s: any("no longer there" in n for n in s["notices"]))
    assert state["any_unsaved"], "the only copy of the plan could be closed without a question"
    w.shoot("file-gone", after=0.5)
    w.key("ctrl+s")
    w.until("it is written anew", lambda s: not s["any_unsaved"] and file.exists())
    assert file.read_text(encoding="utf-8") == text, "it is not the plan that it was"
    dismiss_all(w)


def two_windows(one, other, file):
    """Each has a display of its own: no window manager moves the keys between them."""
    other.settled()
    one.fill(PITCH, "0.27")
    other.fill(PITCH, "0.28")
    one.key("ctrl+s")
    one.until("the first is saved", lambda s: not s["dirty"])
    assert pitch_in(file) == "0.27"
    refuses_to_save(other, file, "0.27")
    other.until("the second is asked which to keep", lambda s: "keep mine" in s["places"])
    other.click("keep mine")
    other.until("its own is kept", lambda s: "keep mine" not in s["places"])
    other.key("ctrl+s")
    other.until("and saved", lambda s: not s["dirty"])
    assert pitch_in(file) == "0.28"
    one.until("now the first is told", lambda s: "read theirs" in s["places"])


def both_killed(one, other, window):
    one.fill(PITCH, "0.33")
    other.fill(PITCH, "0.34")
    one.is_kept("*.toml", "0.33 mm")
    other.is_kept("*.toml", "0.34 mm")
    for w in (one, other):
        w.process.send_signal(signal.SIGKILL)
        w.process.wait(20)
    w = window()
    w.until("the work of both is offered", lambda s: s["recovery_offers"] == 2 and "recover 1" in s["places"])
    w.shoot("two-recoveries", after=0.5)
    found = set()
    for left in (1, 0):
        w.click("recover 0")
        w.until("it is open", lambda s: s["recovery_offers"] == left and s["dirty"])
        found.add(w.state()["fields"][PITCH]["text"])
    assert found == {"0.33", "0.34"}, f"recovered: {found}"
    return w


def main():
    with desk() as (window, copy):
        file = copy("even.lay.toml")
        one = window(file)
        changed_on_disk(one, file)
        deleted(one, file)
        server, display = start_display()
        other = Window(sys.argv[1], [file], pathlib.Path(file).parent, display)
        try:
            two_windows(one, other, file)
            w = both_killed(one, other, window)
            w.leave()
        finally:
            if other.process.poll() is None:
                other.process.kill()
                other.process.wait()
            server.terminate()
            server.wait()
        print("the plan in other hands: as it should be")
    return 0


if __name__ == "__main__":
    sys.exit(main())
