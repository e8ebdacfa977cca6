"""What `cmake --install` puts into an empty folder: the program runs there and lays an installed sample, and desktops
find its entry, types and icon.

    files_test.py BUILD SOURCES
"""

import pathlib
import sys

from installed import bare, installed, outer_diameters, ran


def program_and_samples(prefix, sources):
    program, share = prefix / "bin/laywright", prefix / "share/laywright/samples"
    plans = sorted(path.name for path in share.glob("*"))
    kept = [path.name for ending in ("lay", "order") for path in sources.glob(f"samples/*.{ending}.toml")]
    assert plans == sorted(kept + ["catalogue", "lessons"]), plans
    lessons = sorted(path.name for path in (share / "lessons").glob("*"))
    assert lessons == sorted(path.name for path in sources.glob("samples/lessons/*.lesson.toml")), lessons
    catalogues = sorted(path.name for path in (share / "catalogue").glob("*"))
    assert catalogues == sorted(path.name for path in sources.glob("samples/catalogue/*.toml")), catalogues
    listed = ran(program, "new", "--list", env=bare(), cwd="/")
    assert f"{share}/catalogue/spools.toml:" in listed, listed
    # 108.97: five layers of turns in nesting circles on 100 mm, 100 + 2 * (0.5 + 4 * 0.866 + 0.5) = 108.93, and what
    # the crossovers add (samples/commands.md, "What it prints").
    printed = ran(program, "lay", share / "parallel.lay.toml", env=bare(), cwd="/")
    middle = float(outer_diameters(printed).split(", ")[1].split()[0])
    assert 108.93 < middle < 109.1, middle
    assert ran(program, "--version", env=bare()).startswith("laywright ")


def desktop(prefix, sources):
    entry = prefix / "share/applications/laywright.desktop"
    said = ran("desktop-file-validate", entry)
    assert not said, said
    keys = dict(line.split("=", 1) for line in entry.read_text(encoding="utf-8").splitlines() if "=" in line)
    assert keys["Exec"].split()[0] == "laywright" and (prefix / "bin/laywright").is_file()
    assert keys["Icon"] == "laywright"

    # The desktop's own reader of types: shared-mime-info makes its cache, GLib asks it.
    ran("update-mime-database", prefix / "share/mime")
    data = f"{prefix}/share:/usr/share"
    for file, wanted in ((sources / "samples/even.lay.toml", "application/x-laywright-plan"),
                         (next(sources.glob("samples/lessons/*.lesson.toml")), "application/x-laywright-lesson")):
        told = ran("gio", "info", "-a", "standard::content-type", file,
                   env=bare(XDG_DATA_DIRS=data, XDG_DATA_HOME="/nonexistent"))
        assert f"standard::content-type: {wanted}" in told, told
        assert wanted in keys["MimeType"].split(";")


def icon(prefix):
    icons = prefix / "share/icons/hicolor"
    drawing = icons / "scalable/apps/laywright.svg"
    ran("xmllint", "--noout", drawing)
    size = ran("identify", "-format", "%m %w %h %k", icons / "128x128/apps/laywright.png").split()
    assert size[:3] == ["PNG", "128", "128"], size
    assert int(size[3]) > 50, "the icon is blank"  # colours


def main():
    build, sources = pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2])
    with installed(build) as prefix:
        program_and_samples(prefix, sources)
        desktop(prefix, sources)
        icon(prefix)
        # A person's own folder holds nothing of the library.
        assert not (prefix / "include").exists() and not (prefix / "lib").exists()
        licence = prefix / "share/doc/laywright/copyright"
        assert licence.read_bytes() == (sources / "LICENSE").read_bytes()
        held = {path.name for path in (prefix / "share/doc/laywright/libraries").iterdir()}
        assert {"libimgui-dev", "libcli11-dev", "nlohmann-json3-dev"} <= held, held


main()
