#!/usr/bin/env python3
"""Runs the benchmarks and prints one table of ratios, from which tests/results.md has its own. Five minutes of processor time.

    table.py BUILD_FOLDER      that of preset bench

Each ratio is of two times of one run. Frames are those of whatever OpenGL there is.
"""

import pathlib
import re
import subprocess
import sys

from machine import machine


class Bench:
    """One run of a benchmark, and what it printed."""

    def __init__(self, folder, name, *arguments):
        command = [folder / "tests" / "bench" / name, *arguments]
        if not command[0].exists():
            sys.exit(f"error: {command[0]} is missing; build the preset bench (bench_general needs libbox2d-dev)")
        print("running", name, *arguments, file=sys.stderr, flush=True)
        run = subprocess.run(command, capture_output=True, text=True)
        if run.returncode != 0:
            sys.exit(f"error: {name} failed: {run.stderr}")
        self.name, self.text = name, run.stdout

    def find(self, pattern):
        """The groups of the first place that fits; numbers as such."""
        found = re.search(pattern, self.text, re.DOTALL)
        if not found:
            sys.exit(f"error: {self.name} printed nothing like {pattern}:\n{self.text}")
        return [float(each) for each in found.groups()]


def row(what, ratio, figures):
    print(f"| {what} | {ratio} | {figures} |", flush=True)


def laying(folder):
    bench = Bench(folder, "bench_lay")
    for friction in ("0.6", "0.5", "0.3"):
        seconds, each, copied, ratio = bench.find(
            rf"\n  lay long, friction {friction}: (\S+) s for .*?, (\d+) ns each; copied in (\S+) ns each; ratio (\d+)")
        row(f"laying 25 km, friction {friction} / a copy of the result in memory", f"{ratio:.0f}",
            f"{seconds:.3g} s, {each:.0f} / {copied:.2f} ns a station")
    stored, peak, ratio = bench.find(r"memory: (\S+) bytes per station stored, (\S+) at the peak of laying, ratio (\S+)")
    row("memory at the peak of laying / of the result", f"{ratio:.2f}", f"{peak:.2f} / {stored:.2f} bytes a station")
    clock, free = bench.find(r"two winds on two threads: (\S+) times as fast by the clock, (\S+) times with two cores")
    row("two winds in turn / on two threads", f"{clock:.2f}", f"{free:.2f} by processor time")


def study(folder):
    two, one, ratio = Bench(folder, "bench_advise", "study", "8").find(
        r"builds of 2 km: (\S+) s on two threads, (\S+) s on one; (\S+) times")
    row("study of 64 winds, one thread / two", f"{ratio:.2f}", f"{one:.1f} / {two:.1f} s")


def first_look(folder):
    bench = Bench(folder, "bench_workbench", "even", "long")
    for name in ("even", "long"):
        first, share, full = bench.find(
            rf"(?:^|\n){name}\n.*?first build:  median (\d+) ms.*?fidelity \S+, (\d+) %.*?full build: (\d+) ms")
        row(f"sample {name}: first look after an edit / the full build", f"1 / {full / first:.0f}",
            f"{first:.0f} ms, of {share:.0f} % of the wind / {full:.0f} ms")


def frames(folder):
    bench = Bench(folder, "bench_frames")
    lengths = ("1", "25", "100")
    for stage in ("whole spool", "25 times nearer"):
        of = [bench.find(rf"(?:^|\n){km} km, .*?  {stage}\s+turning\s+(\S+) \(.*?longest\s+(\S+),") for km in lengths]
        for i, kind in enumerate(("turning", "one settled pass")):
            first, middle, last = (each[i] for each in of)
            row(f"a frame, {stage}, {kind}: 25 km / 1 km, 100 km / 1 km", f"{middle / first:.2f}, {last / first:.2f}",
                f"{first:.1f} / {middle:.1f} / {last:.1f} ms")


def general(folder):
    bench = Bench(folder, "bench_general")
    line = r"\s+(\d+) ns each,\s+(\S+) times the section   fill (\S+).*?deepest\s+(\S+) d"
    for friction in ("0.5", "0.3"):
        for circles in ("200", "2000", "10000"):
            head = rf"(?:^|\n){circles} circles, \S+ d wide, friction {friction}\n.*?"
            own, _, own_fill, own_depth = bench.find(head + r"  section" + line)
            foreign, ratio, fill, depth = bench.find(head + r"  Box2D, stays" + line)
            row(f"{circles} circles, friction {friction}: Box2D / the section alone", f"{ratio:.0f}",
                f"{foreign / 1000:.1f} us / {own:.0f} ns a circle; fill {fill:.3f} / {own_fill:.3f}; "
                f"entering by {depth:.0e} / {own_depth:.0e} d")
    own, foreign = bench.find(r"away from the edges: section (\S+), Box2D (\S+)\n")
    row("circles at random without friction: packing", "", f"Box2D {foreign:.3f}, section {own:.3f}, known .818")


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    folder = pathlib.Path(sys.argv[1])
    print(f"{machine()}\n\n| what | ratio | figures |\n|---|---|---|")
    for part in (laying, study, first_look, general, frames):
        part(folder)


if __name__ == "__main__":
    main()
