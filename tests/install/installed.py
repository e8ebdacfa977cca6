"""Installs a build folder into a temporary one, for the tests beside this file."""

import contextlib
import os
import pathlib
import subprocess
import tempfile


def ran(*words, code=0, **more):
    """What a command printed; it must return `code`."""
    run = subprocess.run([str(word) for word in words], capture_output=True, text=True, **more)
    assert run.returncode == code, f"{words} returned {run.returncode}:\n{run.stdout}{run.stderr}"
    return run.stdout


@contextlib.contextmanager
def folder():
    with tempfile.TemporaryDirectory(prefix="laywright-") as name:
        yield pathlib.Path(name)


@contextlib.contextmanager
def installed(build, component="program"):
    with folder() as prefix:
        ran("cmake", "--install", build, "--prefix", prefix, "--component", component)
        yield prefix


def bare(**more):
    """The environment of somebody who has never seen this tree."""
    of_a_sanitizer = {name: os.environ.get(name, "") for name in ("ASAN_OPTIONS", "LSAN_OPTIONS", "LD_PRELOAD")}
    return {"PATH": "/usr/bin:/bin", "HOME": "/nonexistent", "LC_ALL": "C", **of_a_sanitizer, **more}


def outer_diameters(text):
    """The figures of the line that both `laywright lay` and the program in samples/library print."""
    line = next(line for line in text.splitlines() if "mm greatest" in line)
    return line.replace("outer diameter", "").strip()
