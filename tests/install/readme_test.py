"""Every command line in the README's section on installing, as it stands there, by a person with a home of their own
and a machine that is not touched: what root would do goes into a folder, and apt says what it would install.

    readme_test.py BUILD SOURCES
"""

import os
import pathlib
import re
import sys

from installed import folder, ran


def lines_of(readme):
    section = re.search(r"^## Install\n(.*?)^## ", readme, re.MULTILINE | re.DOTALL)[1]
    return [line for block in re.findall(r"```\n(.*?)```", section, re.DOTALL) for line in block.splitlines() if line]


def stand_in(folder_, name, script):
    (folder_ / name).write_text("#!/bin/sh\n" + script + "\n", encoding="utf-8")
    (folder_ / name).chmod(0o755)


def main():
    build, sources = pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2])
    lines = lines_of((sources / "README.md").read_text(encoding="utf-8"))
    assert len(lines) >= 5, lines
    with folder() as here, folder() as home, folder() as root, folder() as tools:
        (here / "build").mkdir()
        (here / "build/demo").symlink_to(build)
        (here / "samples").symlink_to(sources / "samples")
        stand_in(tools, "sudo", f'DESTDIR={root} exec "$@"')
        stand_in(tools, "apt", 'exec apt-get --simulate "$@"')
        environment = dict(os.environ, HOME=str(home), LC_ALL="C",
                           PATH=f"{tools}:{home}/.local/bin:{os.environ['PATH']}")
        environment.pop("MANPATH", None)
        printed = {line: ran("sh", "-c", line, cwd=here, env=environment) for line in lines}

        def said(part):
            return next(text for line, text in printed.items() if part in line)

        assert (home / ".local/bin/laywright").is_file()
        assert (root / "usr/local/bin/laywright").is_file()
        assert ":*.lay.toml\n" in (home / ".local/share/mime/globs2").read_text(encoding="utf-8")
        opens = (home / ".local/share/applications/mimeinfo.cache").read_text(encoding="utf-8")
        assert "application/x-laywright-plan=laywright.desktop;\n" in opens, opens
        assert "Inst laywright (" in said("apt install"), said("apt install")
        assert "CAUTIONS" in said("man laywright")
        assert said("laywright lay").startswith("Sensor fiber, even build\n")
        assert re.fullmatch(r"[\d.]+ mm left, .*greatest\n", said("outer_diameter"))


main()
