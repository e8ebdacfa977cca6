"""Pictures side by side: how the program drew something before, and how it does now.

    pair.py BEFORE AFTER PAIR    puts two pictures of one shape together

What is before cannot be drawn any more: it stays as it is. What is after is held against what the command draws, and made anew
from that.
"""

import pathlib
import re
import subprocess
import sys
import tempfile

FOLDER = "before-and-after"
SIZE, MOST_BYTES = "560x640>", 150_000
ALIKE = 0.03  # of full scale, root mean square


def is_one(picture):
    return picture.parent.name == FOLDER


def expect_alike(drawn, shown, name):
    run = subprocess.run(["compare", "-metric", "RMSE", drawn, shown, "null:"], capture_output=True, text=True, check=False)
    differs = re.search(r"\(([\d.e-]+)\)", run.stderr)
    assert differs and float(differs[1]) < ALIKE, f"{name} is not what the command draws: {run.stderr}"


def half(picture, side, to):
    """Left or right, of a pair."""
    subprocess.run(["convert", picture, "-gravity", side, "-crop", "50%x100%+0+0", "+repage", to], check=True)


def put_together(before, after, to):
    parts = [part for each in (before, after) for part in ("(", each, "-resize", SIZE, ")")]
    subprocess.run(["convert", *parts, "+append", "+dither", "-colors", "255", "-strip", f"PNG8:{to}"], check=True)
    assert to.stat().st_size < MOST_BYTES, f"{to} is too large"


def after_is_drawn(shown, drawn, keep):
    with tempfile.TemporaryDirectory() as name:
        before, after, small = (pathlib.Path(name) / f"{part}.png" for part in ("before", "after", "small"))
        half(shown, "West", before)
        half(shown, "East", after)
        if keep:
            put_together(before, drawn, keep / FOLDER / shown.name)
            return
        subprocess.run(["convert", drawn, "-resize", SIZE, small], check=True)
        expect_alike(small, after, f"the right half of {shown.name}")


if __name__ == "__main__":
    put_together(*(pathlib.Path(word) for word in sys.argv[1:4]))
