"""The whole job, from the order to the inspected spool, by the command alone: 4.5 km over three spools, their plans and sheets, readings
of spools that were wound with a hidden flaw, records in a file and on a PostgreSQL server, the fit that finds the flaw, and a
fourth spool that is good.

    whole_job_test.py LAYWRIGHT SAMPLES

The spools are synthetic: this program lays them with the flaw that the plan does not know, and the readings are its diameters with
the scatter of a caliper. What is shown is that the chain closes; that the lay model is right is shown elsewhere.
"""

import csv
import json
import os
import pathlib
import random
import re
import shutil
import subprocess
import sys
import tempfile

LAYWRIGHT, SAMPLES = sys.argv[1], pathlib.Path(sys.argv[2])
QUICK = ["--fidelity", "0.5"]  # the least at which these winds are judged as at full
SLOW = 0.94  # the machine's guide travels so much less than its gears say: a pulley of another size
FITTED = ["--fidelity", "0.25"]  # its counts of turns do not depend on it
CALIPER_MM = 0.02  # one sigma
COUNTED = ["--turns-error", "0.2", "--diameter-error", "0.02 mm"]  # turns to the half, of some 600
READ_AFTER = 2  # layers
SEED = 20


def laywright(*words, codes=(0,)):
    done = subprocess.run([LAYWRIGHT, *map(str, words)], capture_output=True, text=True, check=False)
    assert done.returncode in codes, (words, done.returncode, done.stderr)
    return done.stdout


def laid(plan):
    return json.loads(laywright("lay", plan, "--draws", "1", "--json", *QUICK))


def set_in(text, table, key, value):
    """The key of a table of a plan, which has it."""
    head = re.search(rf"^\[{re.escape(table)}\].*$", text, re.MULTILINE).end()
    line = re.compile(rf"^{key} = \"[^\"]*\"", re.MULTILINE)
    assert line.search(text, head), (table, key)
    return text[:head] + line.sub(f'{key} = "{value}"', text[head:], count=1)


def pitch_of(plan):
    found = re.search(r'^pitch = "([\d.]+) mm"', plan.read_text(encoding="utf-8"), re.MULTILINE)
    return float(found.group(1))


def as_the_machine_winds(plan, to):
    """The plan as it comes out on the machine with the flaw."""
    text = plan.read_text(encoding="utf-8")
    to.write_text(set_in(text, "traverse", "pitch", f"{SLOW * pitch_of(plan):.5f} mm"), encoding="utf-8")
    return to


def wound_and_read(plan, folder, chance):
    """Readings after the first layers, as a person writes them."""
    wound = as_the_machine_winds(plan, folder / f"wound-{plan.name}")
    layers = laid(wound)["layers"][:READ_AFTER]
    table = folder / f"{plan.name}.csv"
    with table.open("w", encoding="utf-8", newline="") as file:
        rows = csv.writer(file)
        rows.writerow(["layer", "layer_turns", "left_mm", "middle_mm", "right_mm"])
        turns = 0.0
        for layer in layers:
            turns += layer["turns"]
            begun = folder / "begun.lay.toml"
            text = wound.read_text(encoding="utf-8")
            begun.write_text(re.sub(r'^length = "[^"]*"', f"turns = {turns:.3f}", text, count=1, flags=re.MULTILINE),
                             encoding="utf-8")
            outer = laid(begun)["totals"]["outer_diameter"]
            read = [f"{outer[side] + chance.gauss(0.0, CALIPER_MM):.2f}" for side in ("left", "middle", "right")]
            rows.writerow([layer["layer"], f"{layer['turns']:.0f}", *read])
    return table


class Server:
    """A PostgreSQL server of its own, on a socket in a folder; ended by its own program."""

    def __init__(self, folder):
        programs = sorted(pathlib.Path("/usr/lib/postgresql").glob("*/bin"))
        if not programs:
            raise SystemExit("there is no PostgreSQL server: install postgresql (sh cmake/install-packages.sh test)")
        self.programs, self.data = programs[-1], folder / "data"
        # It refuses to run as root.
        self.as_whom = ["runuser", "-u", "postgres", "--"] if os.geteuid() == 0 else []
        if self.as_whom:
            shutil.chown(folder, "postgres")
        folder.chmod(0o755)
        self.run("initdb", "-D", self.data, "-A", "trust", "-U", "laywright", "--no-sync")
        settings = f"-c listen_addresses= -c fsync=off -c unix_socket_directories={folder}"
        self.run("pg_ctl", "-D", self.data, "-w", "-o", settings, "-l", folder / "log", "start")
        self.address = f"postgresql://laywright@/postgres?host={folder}"

    def run(self, program, *words):
        subprocess.run([*self.as_whom, self.programs / program, *map(str, words)], check=True,
                       stdout=subprocess.DEVNULL, cwd="/")

    def end(self):
        self.run("pg_ctl", "-D", self.data, "-m", "fast", "-w", "stop")


def records_close_the_chain(place, plans, readings, folder):
    """Kept, listed, the last one fitted; gives the plan of the next spool, and what was found: the pitch in that which was set."""
    at = ["--records", place]
    for plan, table in zip(plans, readings):
        laywright("record", "add", plan, "--measured", table, "--reject", "turns ride up", "--by", "late shift", "--machine",
                  "bench 2", *FITTED, *at)
    kept = json.loads(laywright("record", "list", "--json", *at))["records"]
    assert len(kept) == len(plans), kept
    for record in kept:
        shown = json.loads(laywright("record", "show", record["number"], "--json", *at))
        assert shown["state"] == "rejected", shown
    following = folder / "spool-4.lay.toml"
    shutil.copy(plans[-1], following)
    fit = json.loads(laywright("record", "fit", kept[-1]["number"], "--carry-into", following, "--in-place", "--json",
                               *COUNTED, *FITTED, *at))
    pitch = next(each for each in fit["fitted"] if each["key"] == "traverse.pitch")
    found, sigma = pitch["value"] / pitch["planned"], pitch["sigma"] / pitch["planned"]
    assert abs(found - SLOW) < 4.0 * sigma and abs(1.0 - found) > 4.0 * sigma, pitch
    return following, f"{found:.4f} +- {sigma:.4f}"


def the_order(folder):
    """That of the samples, shortened to 4.5 km, on wider spools: each takes 1.5 km in six layers of some 580 turns."""
    plan = set_in((SAMPLES / "long.lay.toml").read_text(encoding="utf-8"), "spool", "inside_width", "150 mm")
    (folder / "long.lay.toml").write_text(plan, encoding="utf-8")
    order = (SAMPLES / "sixty-km.order.toml").read_text(encoding="utf-8")
    shorter, lengths = re.subn(r'"(\d+) km"', lambda length: f'"{75 * int(length[1])} m"', order)
    assert lengths == 5, order
    file = folder / "short.order.toml"
    file.write_text(shorter, encoding="utf-8")
    return file


def main():
    chance = random.Random(SEED)
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        out = folder / "order"
        batch = json.loads(laywright("order", the_order(folder), "--out", out, "--json", *QUICK))
        assert [spool["verdict"]["grade"] for spool in batch["spools"]] == ["good"] * 3, batch["spools"]
        plans = sorted(out.glob("spool-*.lay.toml"))
        assert len(plans) == 3 and len(list(out.glob("spool-*.pdf"))) == 3, list(out.iterdir())
        flawed = laid(as_the_machine_winds(plans[-1], folder / "flawed.lay.toml"))["verdict"]
        assert flawed["grade"] != "good", flawed
        readings = [wound_and_read(plan, folder, chance) for plan in plans]

        base = pathlib.Path(tempfile.mkdtemp())
        server = Server(base)
        try:
            for place in (folder / "records.db", server.address):
                following, found = records_close_the_chain(place, plans, readings, folder)
                fourth = laid(as_the_machine_winds(following, folder / "fourth.lay.toml"))["verdict"]
                print(f"{place}: pitch as set times {found} (hidden: {SLOW}); flawed: {flawed['grade']}, "
                      f"fourth: {fourth['grade']}", flush=True)
                assert fourth["grade"] == "good", fourth
        finally:
            server.end()
            shutil.rmtree(base)


if __name__ == "__main__":
    main()
