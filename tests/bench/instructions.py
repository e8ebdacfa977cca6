#!/usr/bin/env python3
"""Counts where the instructions of laying go, per station laid, by valgrind's callgrind: on a machine without hardware
counters, and whatever else runs. Of the long sample, its first kilometres, at three frictions.

    instructions.py LAYWRIGHT [KM] [FIDELITY]      5 km at full fidelity by default, which takes minutes

D1 are misses of the first cache for data, LL of the last one, as callgrind models those of this machine.
"""

import pathlib
import re
import subprocess
import sys
import tempfile

SAMPLE = pathlib.Path(__file__).parents[2] / "samples" / "long.lay.toml"
LAY = "laywright::lay(laywright::Plan const&, laywright::LaySettings const&, laywright::Progress&)"

# The first part that fits a function's name is its own.
PARTS = (
    ("Newton step", r"newton_step|solve|freedom_of|BandMatrix|memset"),
    ("settling: pull, friction, sliding", r"relax|update|force_on|settle|normal_of|slid|end_of_|stop_on"),
    ("exposed circles", r"Section::(insert|hidden|unlink)"),
    ("guide and lag", r"Guide::|lagged_behind|exp"),
    ("landing on the offset surface", r"set_down|Section::|StringWindow::add"),
    ("fixing, storing, length", r"laywright::lay\(|lrint|NodeStore|Build"),
    ("other", r""),
)


def plan(folder, friction, km):
    text = SAMPLE.read_text()
    text, lengths = re.subn(r'(?m)^length = ".*"', f'length = "{km} km"', text)
    text, frictions = re.subn(r"(?m)^friction = [0-9.]+", f"friction = {friction}", text)
    assert lengths == frictions == 1, f"{SAMPLE} has no line for its length or friction"
    path = folder / f"{friction}.lay.toml"
    path.write_text(text)
    return path


def counts(path):
    """Per function its own events and its calls, of a file of callgrind's."""
    names, own, calls, events = {}, {}, {}, []
    function = callee = None
    inclusive = False  # the line after calls= has what the callee took
    for line in path.read_text().splitlines():
        name = re.match(r"(c?)fn=\((\d+)\)(?: (.*))?", line)
        if line.startswith("events:"):
            events = line.split()[1:]
        elif name:
            names.setdefault(name[2], name[3])
            if name[1]:
                callee = name[2]
            else:
                function = name[2]
        elif line.startswith("calls="):
            calls[callee] = calls.get(callee, 0) + int(line[6:].split()[0])
            inclusive = True
        elif re.match(r"[+\-*\d]", line):
            if not inclusive:
                sums = own.setdefault(function, [0] * len(events))
                for i, value in enumerate(line.split()[1:]):
                    sums[i] += int(value)
            inclusive = False
    totals = [dict(zip(events, values), name=names[key], calls=calls.get(key, 0)) for key, values in own.items()]
    return [each for each in totals if each["Ir"]]


def stations(functions):
    return next(f["calls"] for f in functions if "StringWindow::add" in f["name"])


def profile(program, folder, friction, km, fidelity):
    out = folder / f"{friction}.callgrind"
    run = subprocess.run(
        ["valgrind", "--tool=callgrind", "--cache-sim=yes", f"--callgrind-out-file={out}", f"--toggle-collect={LAY}",
         program, "lay", "--fidelity", str(fidelity), plan(folder, friction, km)],
        capture_output=True, text=True)
    if run.returncode != 0:
        sys.exit(run.stderr)
    functions = counts(out)
    laid = stations(functions)
    every = sum(f["Ir"] for f in functions)
    visits = sum(f["calls"] for f in functions if "StringWindow::update" in f["name"])
    misses = {level: sum(f[f"{level}mr"] + f[f"{level}mw"] for f in functions) / laid for level in ("D1", "DL")}
    print(f"friction {friction}, {km} km, {laid} stations: {every / laid:.0f} instructions a station, "
          f"{visits / laid:.1f} visits of a node, misses {misses['D1']:.1f} D1, {misses['DL']:.2f} LL")
    left = functions
    for part, pattern in PARTS:
        here = [f for f in left if re.search(pattern, f["name"])]
        left = [f for f in left if f not in here]
        some = sum(f["Ir"] for f in here)
        d1 = sum(f["D1mr"] + f["D1mw"] for f in here) / laid
        print(f"  {part:36}{some / laid:7.0f}  {100 * some / every:5.1f} %   {d1:5.2f} D1", flush=True)


def main():
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    km = sys.argv[2] if len(sys.argv) > 2 else "5"
    fidelity = sys.argv[3] if len(sys.argv) > 3 else "1"
    with tempfile.TemporaryDirectory() as name:
        for friction in (0.6, 0.5, 0.3):
            profile(sys.argv[1], pathlib.Path(name), friction, km, fidelity)


if __name__ == "__main__":
    main()
