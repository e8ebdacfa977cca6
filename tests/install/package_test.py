"""The Debian packages that cpack makes: what they say of themselves, what they hold, and that the program runs out of
one that was unpacked into an empty folder.

    package_test.py BUILD SOURCES CONFIGURATION
"""

import pathlib
import sys

from installed import bare, folder, outer_diameters, ran


def fields(package):
    """Its control file; what goes on over lines stays together."""
    text = ran("dpkg-deb", "-f", package).strip().replace("\n ", "\0")
    return {key: value.strip() for key, value in (line.split(":", 1) for line in text.splitlines())}


def control(package, section):
    said = fields(package)
    assert said["Section"] == section and said["Priority"] == "optional", said
    assert said["Architecture"] == ran("dpkg", "--print-architecture").strip(), said
    summary, *more = said["Description"].split("\0")
    assert 10 < len(summary) < 80 and len(more) >= 2, said["Description"]
    # As Debian's policy has it: a name, and an address in angle brackets.
    assert said["Maintainer"].startswith("The Laywright authors <"), said["Maintainer"]
    return said


def depends(said):
    return {part.split()[0] for part in said["Depends"].split(", ")}


def files(package):
    """Its files by path, all owned by root and written by nobody else."""
    found = {}
    for line in ran("dpkg-deb", "-c", package).splitlines():
        mode, owner, _, _, _, path = line.split(None, 5)
        assert owner == "root/root" and mode[5] == mode[8] == "-", line
        if not mode.startswith("d"):
            found[path.removeprefix("./")] = mode
    return found


def program(package, sources, configuration):
    said = control(package, "science")
    # Linked, so found by dpkg-shlibdeps; and loaded later.
    assert {"libc6", "libstdc++6", "libcairo2", "libqrencode4", "libglfw3", "libnlopt0", "libegl1", "fonts-dejavu-core"} <= depends(said)
    held = files(package)
    assert held["usr/bin/laywright"].startswith("-rwxr-xr-x"), held
    share = ["applications/laywright.desktop", "mime/packages/laywright.xml", "doc/laywright/copyright",
             "icons/hicolor/scalable/apps/laywright.svg", "icons/hicolor/128x128/apps/laywright.png",
             "man/man1/laywright.1", "bash-completion/completions/laywright"]
    share += [f"laywright/{path.relative_to(sources)}" for path in sources.glob("samples/**/*.toml")]
    missing = [path for path in share if f"usr/share/{path}" not in held]
    assert not missing, missing
    assert not [path for path in held if not path.startswith("usr/share/") and path != "usr/bin/laywright"], held

    with folder() as root:
        ran("dpkg-deb", "-x", package, root)
        laywright = root / "usr/bin/laywright"
        sample = root / "usr/share/laywright/samples/parallel.lay.toml"
        printed = ran(laywright, "lay", sample, "--out", root / "out", env=bare(), cwd="/")
        assert outer_diameters(printed)
        assert (root / "out/sheet.pdf").read_bytes().startswith(b"%PDF")
        if configuration == "Release":  # with assertions, a program holds the names of its sources
            assert bytes(sources) not in laywright.read_bytes(), "the program holds the path of its sources"


def library(package, sources):
    said = control(package, "libdevel")
    assert {"libfmt-dev", "libcairo2-dev", "libqrencode-dev", "libnlopt-dev"} <= depends(said)
    held = files(package)
    for path in ("usr/include/laywright/lay/lay.h", "usr/include/laywright/figures/summary.h", "usr/lib/liblaywright_lay.a",
                 "usr/lib/cmake/Laywright/LaywrightConfig.cmake", "usr/share/doc/liblaywright-dev/copyright",
                 "usr/share/doc/liblaywright-dev/examples/main.cpp"):
        assert path in held, path
    with folder() as root:
        ran("dpkg-deb", "-x", package, root)
        for path in root.glob("usr/lib/cmake/Laywright/*"):
            assert str(sources) not in path.read_text(encoding="utf-8"), f"{path.name} holds the path of the sources"


def main():
    build, sources, configuration = pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2]), sys.argv[3]
    with folder() as out:
        ran("cpack", "--config", build / "CPackConfig.cmake", "-C", configuration, "-B", out)
        packages = {path.name.split("_")[0]: path for path in out.glob("*.deb")}
        assert set(packages) == {"laywright", "liblaywright-dev"}, packages
        program(packages["laywright"], sources, configuration)
        library(packages["liblaywright-dev"], sources)


main()
