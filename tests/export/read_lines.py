"""Reads exported lines with VTK and holds them against the exported table: read_lines.py LINES.vtp PATH.csv DIAMETER_MM

Both are made of one wind, by different code; the table's figures are text with five to six digits after the point.
Rise and gap are computed here once more, by looking at all turns of a layer.
"""

import csv
import math
import sys

import numpy
from vtkmodules.util.numpy_support import vtk_to_numpy
from vtkmodules.vtkIOXML import vtkXMLPolyDataReader

SUPPORTS = ["none", "barrel", "turn", "valley", "flange"]


def read_vtp(file):
    reader = vtkXMLPolyDataReader()
    reader.SetFileName(file)
    reader.Update()
    data = reader.GetOutput()
    assert data.GetNumberOfPoints() > 0, "no points"
    points = vtk_to_numpy(data.GetPoints().GetData()).astype(float)
    arrays = {}
    for i in range(data.GetPointData().GetNumberOfArrays()):
        array = data.GetPointData().GetArray(i)
        arrays[array.GetName()] = vtk_to_numpy(array)
    lines = data.GetLines()
    connectivity = vtk_to_numpy(lines.GetConnectivityArray())
    offsets = vtk_to_numpy(lines.GetOffsetsArray())
    return points, arrays, [connectivity[a:b] for a, b in zip(offsets[:-1], offsets[1:])]


def read_table(file):
    with open(file, encoding="utf-8") as stream:
        rows = list(csv.DictReader(line for line in stream if not line.startswith("#")))
    table = {key: numpy.array([float(row[key]) for row in rows]) for key in rows[0] if key != "support"}
    table["support"] = numpy.array([SUPPORTS.index(row["support"]) for row in rows])
    return table


def near(name, got, wanted, margin):
    off = numpy.abs(got - wanted)
    assert numpy.all(off <= margin), f"{name} is off by {off.max()}, more than {margin}"
    print(f"{name}: {len(off)} values, off by {off.max():.3g} at most, {margin:.3g} allowed")


def check_lines(lines, table, count):
    # One line per layer; each begins with the point that ends the one before; together they pass all points.
    layers = int(table["layer"].max())
    assert len(lines) == layers, f"{len(lines)} lines for {layers} layers"
    joined = numpy.concatenate([lines[0]] + [line[1:] for line in lines[1:]])
    assert numpy.array_equal(joined, numpy.arange(count)), "the lines do not pass the points one after the other"
    for before, after in zip(lines[:-1], lines[1:]):
        assert before[-1] == after[0], "the fiber breaks between two layers"
    for layer, line in enumerate(lines, 1):
        assert numpy.all(table["layer"][line[:-1]] == layer), f"line {layer} is not layer {layer}"


def check_beside(arrays, table, diameter):
    """Gap to the nearest turns of the layer, and rise over the line between the nearest two of the layer below."""
    stations = numpy.round(table["angle_deg"], 3)
    checked = {"gap_d": 0, "rise_d": 0}
    for node in range(0, len(stations), max(1, len(stations) // 400)):
        layer, x, r = table["layer"][node], table["x_mm"][node], table["r_mm"][node]
        at_station = stations == stations[node]
        own = numpy.flatnonzero(at_station & (table["layer"] == layer))
        xs = table["x_mm"][own[own != node]]
        sides = [x - xs[xs <= x].max()] if numpy.any(xs <= x) else []
        sides += [xs[xs > x].min() - x] if numpy.any(xs > x) else []
        if sides:
            gap = max(0.0, max(sides) / diameter - 1.0)
            assert abs(arrays["gap_d"][node] - gap) < 1e-3, f"gap at node {node}: {arrays['gap_d'][node]}, not {gap}"
            checked["gap_d"] += 1
        else:
            assert math.isnan(arrays["gap_d"][node]), f"a gap at node {node}, which has no neighbour"
        below = numpy.flatnonzero(at_station & (table["layer"] == layer - 1))
        left, right = below[table["x_mm"][below] <= x], below[table["x_mm"][below] > x]
        if len(left) == 0 or len(right) == 0:
            assert math.isnan(arrays["rise_d"][node]), f"a rise at node {node}, which has nothing below"
            continue
        a = left[numpy.argmax(table["x_mm"][left])]
        b = right[numpy.argmin(table["x_mm"][right])]
        share = (x - table["x_mm"][a]) / (table["x_mm"][b] - table["x_mm"][a])
        rise = (r - (1 - share) * table["r_mm"][a] - share * table["r_mm"][b]) / diameter
        assert abs(arrays["rise_d"][node] - rise) < 2e-3, f"rise at node {node}: {arrays['rise_d'][node]}, not {rise}"
        checked["rise_d"] += 1
    print(f"checked by looking at all turns: {checked}")
    assert min(checked.values()) > 50, "too few nodes were checked"


def check_tension(arrays, points, table):
    """Constant torque: tension times the mean radius of the turn stays what it is in the first turn."""
    tension = arrays["tension_N"]
    turn = numpy.floor(table["turn"] + 1e-9).astype(int)
    radius = numpy.array([table["r_mm"][turn == t].mean() for t in range(turn.max())])
    whole = turn < turn.max()
    torque = tension[whole] * radius[turn[whole]]
    near("torque in N mm", torque, numpy.full(len(torque), 0.5 * radius[0]), 0.5 * radius[0] * 2e-3)
    assert tension.max() - tension.min() > 0.001, "the tension does not fall"


def main():
    lines_file, table_file, diameter = sys.argv[1], sys.argv[2], float(sys.argv[3])
    points, arrays, lines = read_vtp(lines_file)
    table = read_table(table_file)
    count = len(table["turn"])
    assert len(points) == count, f"{len(points)} points, {count} rows"
    angle = 2 * math.pi * table["turn"]
    wanted = numpy.stack(
        [table["x_mm"], table["r_mm"] * numpy.cos(angle), table["r_mm"] * numpy.sin(angle)], axis=1)
    # A float of up to 128 has a step of 2^-17, half of which is its error; the table is rounded to 1e-5, and to 1e-6
    # turns.
    greatest = numpy.abs(points).max()
    step = 2.0 ** (math.floor(math.log2(greatest)) - 23)
    near("points in mm", points, wanted, 0.5 * step + 0.5e-5 + 2 * math.pi * 0.5e-6 * greatest)
    near("turn", arrays["turn"], table["turn"], 0.51e-6)
    near("length_m", arrays["length_m"], table["length_m"], 0.51e-6)
    near("layer", arrays["layer"], table["layer"], 0)
    near("support", arrays["support"], table["support"], 0)
    # The wind begins to the right, and each layer goes back.
    near("direction", arrays["direction"], numpy.where(table["layer"] % 2 == 1, 1, -1), 0)
    check_lines(lines, table, count)
    check_beside(arrays, table, diameter)
    check_tension(arrays, points, table)


if __name__ == "__main__":
    main()
