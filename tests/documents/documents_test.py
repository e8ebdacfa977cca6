"""Every command line in a document, as it stands there, from its beginning to its end, by a person with a home of their
own and a machine that is not touched; what it says is printed is compared with what is, its pictures with what the
commands draw, and its links are followed.

    documents_test.py BUILD SOURCES DOCUMENT [PICTURES]

What would take long is stood in for, and CI runs it: building and testing this tree. What root would do goes into a
folder, and apt says what it would install. Commands that lay a plan many times get short winds, but for those whose
picture the document shows. With PICTURES, what the commands draw is put into that folder.
"""

import os
import pathlib
import re
import shutil
import subprocess
import sys
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "ui"))
sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "install"))

import pair  # noqa: E402
import reading  # noqa: E402
from installed import folder, ran  # noqa: E402
from window_driver import start_display  # noqa: E402

MANY_WINDS = ("cause", "improve", "capacity", "fit", "follow", "study", "record")
PLACEHOLDERS = {"ORDER": "samples/sixty-km.order.toml --fidelity 0.25", "PLAN": "samples/even.lay.toml", "FILE.pdf": "out/file.pdf"}


class Desk:
    """A copy of the tree as a person has it, built."""

    def __init__(self, here, home, root, tools, build, sources, display):
        self.here, self.home, self.root, self.display = here, home, root, display
        self.printed, self.shown = {}, set()
        cache = (build / "CMakeCache.txt").read_text(encoding="utf-8")
        self.can_share = "LAYWRIGHT_SHARE_PAGE:BOOL=ON" in cache
        for name in ("samples", "src", "tests", "cmake", "CMakePresets.json", "CMakeLists.txt"):
            (shutil.copytree if (sources / name).is_dir() else shutil.copy)(sources / name, here / name)
        for preset in ("demo", "test"):
            (here / "build").mkdir(exist_ok=True)
            (here / "build" / preset).symlink_to(build)
        (here / "short").mkdir()
        (here / "out").mkdir()
        for name in ("build", "out", "shards"):
            (here / "short" / name).symlink_to(here / name)
        shutil.copytree(here / "samples", here / "short/samples")
        for plan in (here / "short/samples").glob("*.lay.toml"):
            plan.write_text(re.sub(r'^length = .*$', "turns = 900", plan.read_text(encoding="utf-8"), flags=re.M),
                            encoding="utf-8")
        short = here / "short/samples/even.lay.toml"
        shutil.copy(short, here / "short/my-wind.lay.toml")
        (here / "my-spool.lay.toml").write_text(short.read_text(encoding="utf-8").replace("turns = 900", "turns = 60"),
                                                encoding="utf-8")
        self.stand_in(tools, "sudo", f'DESTDIR={root} exec "$@"')
        self.stand_in(tools, "apt", 'exec apt-get --simulate "$@"')
        self.stand_in(tools, "ctest", 'exec cmake "$@"')
        self.stand_in(tools, "clang-format", "exit 0")
        self.stand_in(tools, "clang-tidy", "exit 0")
        # Of presets, it looks only whether there is one of that name; all else is the real one's.
        real = shutil.which("cmake")
        self.stand_in(tools, "cmake", f"""
preset=$(echo " $* " | sed -n 's/.* --preset \\([a-z]*\\) .*/\\1/p')
[ -n "$preset" ] || exec {real} "$@"
{real} --list-presets | grep -q "\\"$preset\\""
""")
        (tools / "laywright").symlink_to(build / "src/app/laywright")
        self.env = dict(os.environ, HOME=str(home), LC_ALL="C", DISPLAY=display, LIBGL_ALWAYS_SOFTWARE="1",
                        PATH=f"{tools}:{home}/.local/bin:{os.environ['PATH']}")
        for name in ("MANPATH", "XDG_CONFIG_HOME", "XDG_STATE_HOME", "XDG_DATA_HOME"):
            self.env.pop(name, None)

    @staticmethod
    def stand_in(folder_, name, script):
        (folder_ / name).write_text("#!/bin/sh\n" + script + "\n", encoding="utf-8")
        (folder_ / name).chmod(0o755)

    def run(self, line):
        began = time.monotonic()
        words = line.split("#")[0].split() or ["a script"]
        command = words[1] if words[0].endswith("laywright") and len(words) > 1 else ""
        if words[0].endswith("laywright") and command in ("", "open"):
            self.see(line)
        elif command == "share" and not self.can_share:
            print(f"left out, since there is no share page in this build: {line}")
        elif line not in self.printed:
            array = re.search(r"--array=1-(\d+)", line)  # a script for each task of it
            for task in range(1, int(array[1]) + 1 if array else 2):
                self.printed[line] = ran("sh", "-ec", line, cwd=self.place_for(line, command),
                                         env=dict(self.env, SLURM_ARRAY_TASK_ID=str(task)))
        print(f"{time.monotonic() - began:6.1f} s  {line}", flush=True)

    def place_for(self, line, command):
        draws = any(name in line for name in self.shown) or ("--vary" in line and "study.png" in self.shown)
        return self.here / "short" if command in MANY_WINDS and not draws else self.here

    def see(self, line):
        """A window opens and stays, until it is told to go."""
        program = subprocess.Popen(["sh", "-c", "exec " + line], cwd=self.here, env=self.env)
        try:
            subprocess.run(["timeout", "60", "xdotool", "search", "--sync", "--onlyvisible", "--pid", str(program.pid)],
                           env=self.env, check=True, stdout=subprocess.DEVNULL)
            assert program.poll() is None, f"{line}: the window has gone"
        finally:
            program.terminate()
            program.wait(30)
        self.printed[line] = ""

    def said(self, part):
        return next(text for line, text in self.printed.items() if part in line)


def filled_in(span):
    for name, value in PLACEHOLDERS.items():
        span = re.sub(rf"\b{re.escape(name)}(?![\w.])", value, span)
    return span


def pictures_are_what_is_drawn(document, here, keep):
    """A picture that a command of the document drew under its name in out/."""
    for link in reading.links_of(document.read_text(encoding="utf-8")):
        drawn = list((here / "out").rglob(pathlib.Path(link).name)) if link.endswith(".png") else []
        if not drawn:
            continue
        shown = document.parent / link
        if pair.is_one(shown):
            pair.after_is_drawn(shown, drawn[0], keep)
        elif keep:
            shutil.copy(drawn[0], keep / drawn[0].name)
        else:
            pair.expect_alike(drawn[0], shown, link)


def links_lead_somewhere(document):
    text = document.read_text(encoding="utf-8")
    for link in reading.links_of(text):
        if link.startswith("http"):
            continue
        path, _, anchor = link.partition("#")
        target = document.parent / path if path else document
        assert target.exists(), f"{document.name}: nothing is at {link}"
        if anchor:
            assert anchor in reading.anchors_of(target.read_text(encoding="utf-8")), f"no such part: {link}"


def installing(desk):
    """What the README says of installing, when it has been done."""
    assert (desk.home / ".local/bin/laywright").is_file()
    assert (desk.root / "usr/local/bin/laywright").is_file()
    assert ":*.lay.toml\n" in (desk.home / ".local/share/mime/globs2").read_text(encoding="utf-8")
    opens = (desk.home / ".local/share/applications/mimeinfo.cache").read_text(encoding="utf-8")
    assert "application/x-laywright-plan=laywright.desktop;\n" in opens, opens
    assert "Inst laywright (" in desk.said("apt install"), desk.said("apt install")
    assert "CAUTIONS" in desk.said("man laywright")
    assert desk.said(".local/share/laywright/samples").startswith("Sensor fiber, even build\n")
    assert re.fullmatch(r"[\d.]+ mm left, .*greatest\n", desk.said("outer_diameter"))


def main():
    build, sources = pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2])
    document = sources / sys.argv[3]
    keep = pathlib.Path(sys.argv[4]) if len(sys.argv) > 4 else None
    text = document.read_text(encoding="utf-8")
    server, display = start_display()
    try:
        with folder() as here, folder() as home, folder() as root, folder() as tools:
            desk = Desk(here, home, root, tools, build, sources, display)
            desk.shown = {pathlib.Path(link).name for link in reading.links_of(text)}
            blocks = reading.blocks_of(text)
            for block in blocks:
                assert block.language in reading.LANGUAGES, f"line {block.line}: a block of what?"
                if block.language == "sh":
                    for line in reading.commands_of(block):
                        desk.run(line)
            for span in reading.spans_of(text):
                words = span.split()
                if words[0] == "laywright" and len(words) == 2 and words[1].isalpha():
                    span += " --help"
                desk.run(filled_in(span))
            for block in blocks:
                if command := reading.shown_output(block):
                    assert desk.printed[command].startswith(block.text), f"line {block.line}: {command} prints something else"
            if sys.argv[3] == "README.md":
                installing(desk)
            pictures_are_what_is_drawn(document, here, keep)
            links_lead_somewhere(document)
    finally:
        server.terminate()
        server.wait()


main()
