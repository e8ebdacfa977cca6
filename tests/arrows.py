"""Fails when a folder of src/ includes from a folder that it may not depend on.

    arrows.py SRC          reads every #include "FOLDER/..." under SRC
    arrows.py --self-test  proves that a wrong arrow is found
"""

import pathlib
import re
import sys
import tempfile

# Each folder and what it may include; the picture is in DEVELOPERS.md.
ARROWS = {
    "base": set(),
    "jobs": {"base"},
    "plan": {"base"},
    "store": {"base", "plan"},
    "pattern": {"base", "plan"},
    "lay": {"base", "plan"},
    "measure": {"base", "plan", "lay"},
    "lesson": {"base", "plan", "lay", "measure"},
    "payoff": {"base", "plan", "lay", "measure"},
    "takeup": {"base", "plan", "lay", "measure", "payoff"},
    "verdict": {"base", "plan", "pattern", "lay", "measure", "payoff", "takeup"},
    "advise": {"base", "jobs", "plan", "lay", "measure", "payoff", "takeup", "verdict"},
    "order": {"base", "jobs", "plan", "lay", "measure", "takeup", "verdict", "advise"},
    "follow": {"base", "jobs", "plan", "lay", "measure", "takeup", "verdict", "advise"},
    "figures": {"base", "plan", "pattern", "lay", "measure", "payoff", "takeup", "verdict"},
    "photo": {"base", "plan", "lay", "measure", "figures"},
    "records": {"base", "plan", "lay", "measure", "takeup", "advise", "figures"},
    "answers": {"base", "jobs", "plan", "lay", "measure", "payoff", "takeup", "verdict", "advise", "order", "follow", "figures"},
    "paper": {"base", "jobs", "plan", "pattern", "lay", "measure", "payoff", "takeup", "verdict", "advise", "order", "follow", "figures", "answers"},
    "scene": {"base", "plan", "lay", "measure", "payoff", "takeup"},
    "export": {"base", "plan", "lay", "measure", "payoff", "takeup", "figures", "paper", "scene"},
    "render": {"base", "plan", "lay", "measure", "scene"},
    "paint": {"base", "jobs", "plan", "lay", "measure", "scene", "render"},
    "desk": {"base", "plan", "pattern", "lay", "measure", "payoff", "takeup", "verdict", "figures", "scene"},
    "web": {"base", "plan", "pattern", "lay", "measure", "payoff", "verdict", "figures", "paper", "scene", "render", "desk"},
    "session": {"base", "jobs", "plan", "store", "pattern", "lay", "measure", "payoff", "lesson", "takeup", "verdict", "advise", "order", "follow", "figures", "records", "answers", "paper", "scene", "desk"},
    "ui": {"base", "jobs", "plan", "store", "pattern", "lay", "measure", "payoff", "lesson", "takeup", "verdict", "advise", "order", "follow", "figures", "records", "answers", "paper", "scene", "desk", "session"},
    "app": {"base", "jobs", "plan", "store", "pattern", "lay", "measure", "payoff", "takeup", "verdict", "advise", "order", "follow", "figures", "photo", "records", "answers", "paper", "scene", "export", "render", "paint", "web", "desk", "session", "ui"},
}

INCLUDE = re.compile(r'^\s*#\s*include\s*"([^"]+)"')


def wrong_arrows(src):
    wrong = []
    for path in sorted(src.rglob("*")):
        if path.suffix not in (".h", ".cpp"):
            continue
        folder = path.relative_to(src).parts[0]
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
            found = INCLUDE.match(line)
            if not found:
                continue
            target = found.group(1).split("/")[0]
            if folder not in ARROWS:
                wrong.append(f"{path}:{number}: the folder {folder} is not in the list of arrows")
            elif target != folder and target not in ARROWS[folder]:
                wrong.append(f"{path}:{number}: {folder} may not include {found.group(1)}")
            elif not (src / found.group(1)).is_file():
                wrong.append(f"{path}:{number}: no such header: {found.group(1)}")
    return wrong


def self_test():
    with tempfile.TemporaryDirectory() as name:
        src = pathlib.Path(name)
        for file, text in {
            "base/issue.h": "#pragma once\n",
            "lay/lay.h": '#include "base/issue.h"\n#include <vector>\n',
            "lay/own.h": '#include "lay/lay.h"\n',
        }.items():
            (src / file).parent.mkdir(exist_ok=True)
            (src / file).write_text(text, encoding="utf-8")
        assert wrong_arrows(src) == [], "right arrows were refused"
        for file, text in {
            "base/back.h": '#include "lay/lay.h"\n',
            "lay/absent.h": '#include "base/absent.h"\n',
            "lay/spaced.cpp": '  # include "measure/measure.h"\n',
        }.items():
            (src / file).write_text(text, encoding="utf-8")
            wrong = wrong_arrows(src)
            assert len(wrong) == 1 and file in wrong[0], f"{file} was not found: {wrong}"
            (src / file).unlink()


def main():
    if sys.argv[1:] == ["--self-test"]:
        self_test()
        return 0
    src = pathlib.Path(sys.argv[1])
    if not (src / "base").is_dir():
        print(f"{src} is not the source folder", file=sys.stderr)
        return 2
    wrong = wrong_arrows(src)
    print("\n".join(wrong) or "all arrows run down")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
