"""Prints the table of payoff in samples/commands.md, over pitch and stops.

    payoff_table.py PROGRAM SAMPLES [LENGTH]

The sample even, LENGTH of it (1 km), is laid with each pitch and each pair of stops, and drawn off the side and over both ends.
"""

import json
import pathlib
import re
import subprocess
import sys
import tempfile

PITCHES_D = (0.96, 1.0, 1.04, 1.1, 1.2, 1.4, 2.0, 4.0, 20.0)
STOPS_MM = (-0.6, 0.1, 1.2)
CROSSED_D = 4.0


def with_settings(text, diameter, pitch_d, stop, length):
    for key, value in (("pitch", f"{pitch_d * diameter:.4f} mm"), ("left_stop", f"{stop} mm"),
                       ("right_stop", f"{stop} mm"), ("length", length)):
        text, count = re.subn(rf'^{key} = "[^"]*"', f'{key} = "{value}"', text, flags=re.M)
        if count != 1:
            sys.exit(f"{key} stands {count} times in the sample, not once")
    return text


def paid_off(program, plan, *options):
    run = subprocess.run([program, "payoff", plan, "--json", *options], capture_output=True, text=True, check=True)
    return json.loads(run.stdout)["payoff"]


def over_ends(program, plan, length_m):
    ends = [paid_off(program, plan, "--over-end", end) for end in ("left", "right")]
    caught = sum(end["caught_m"] for end in ends) / 2 / length_m
    return max(end["greatest_force"] for end in ends), sum(end["mean_force"] for end in ends) / 2, 100 * caught


def main(program, samples, length="1 km"):
    sample = (pathlib.Path(samples) / "even.lay.toml").read_text(encoding="utf-8")
    diameter = float(re.search(r'^diameter = "([\d.]+) mm"', sample, re.M)[1])
    number, unit = length.split()
    length_m = float(number) * {"km": 1000.0, "m": 1.0}[unit]
    print("| pitch | " + " | ".join(f"stops {stop} mm" for stop in STOPS_MM) + " |")
    print("|---|" + "---|" * len(STOPS_MM))
    with tempfile.TemporaryDirectory() as folder:
        plan = pathlib.Path(folder) / "plan.lay.toml"
        for pitch_d in PITCHES_D:
            cells = []
            for stop in STOPS_MM:
                plan.write_text(with_settings(sample, diameter, pitch_d, stop, length), encoding="utf-8")
                side = paid_off(program, plan)["greatest_force"]
                greatest, mean, caught = over_ends(program, plan, length_m)
                cells.append(f"{side:.2f} / {greatest:.2f}, {mean:.2f}, {caught:.1f} %")
            kind = ", crossed" if pitch_d >= CROSSED_D else ""
            print(f"| {pitch_d:g} d{kind} | " + " | ".join(cells) + " |", flush=True)


if __name__ == "__main__":
    if len(sys.argv) not in (3, 4):
        sys.exit(__doc__)
    main(*sys.argv[1:])
