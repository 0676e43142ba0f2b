"""Whole coils of a rail spring's size in solid elements: how stiff they are along and across, at rest
and pressed, both ends held flat. A general finite-element program (CalculiX, command ccx) does it.

Writes ../data/rail-coils.csv. Invented coils; N, mm. Some twenty minutes.
"""

import math
import subprocess
import sys
import tempfile
from pathlib import Path

import numpy as np

from table import DATA

YOUNGS, POISSON = 206_000.0, 0.3


def section(core, ring):
    """Quadrilaterals of eight nodes over a disc of radius 1: a square of core x core in the middle,
    ring layers around it. Nodes, and elements by node, counter-clockwise."""
    nodes, numbers, elements = [], {}, []

    def node(place):
        key = (round(place[0], 9), round(place[1], 9))
        if key not in numbers:
            numbers[key] = len(nodes)
            nodes.append(key)
        return numbers[key]

    def block(at, columns, rows):
        for i in range(columns):
            for j in range(rows):
                corners = [(0, 0), (1, 0), (1, 1), (0, 1), (0.5, 0), (1, 0.5), (0.5, 1), (0, 0.5)]
                elements.append([node(at((i + u) / columns, (j + v) / rows)) for u, v in corners])

    half = 0.5
    block(lambda u, v: (half * (2 * u - 1), half * (2 * v - 1)), core, core)
    for side in range(4):
        cosine, sine = round(math.cos(side * math.pi / 2)), round(math.sin(side * math.pi / 2))

        def around(u, v):
            angle = (2 * v - 1) * math.pi / 4
            inner, outer = (half, half * (2 * v - 1)), (math.cos(angle), math.sin(angle))
            x, y = ((1 - u) * a + u * b for a, b in zip(inner, outer))
            return cosine * x - sine * y, sine * x + cosine * y

        block(around, ring, core)
    return nodes, elements


def deck(bar, mean, pitch, turns, press, core, ring, along):
    """The input of the program: a helix of turns, pressed by press in one step, then moved by a
    millimetre in three ways, one after the other."""
    flat, quads = section(core, ring)
    radius, angle = mean / 2, math.atan(pitch / (math.pi * mean))
    count = round(turns * along)
    lines, numbers = ["*NODE, NSET=ALL"], {}

    def number(station, at):
        return numbers.setdefault((station, at), len(numbers) + 1)

    corner = {at for quad in quads for at in quad[:4]}
    for station in range(2 * count + 1):
        turn = 2 * math.pi * turns * station / (2 * count)
        outward = np.array([math.cos(turn), math.sin(turn), 0])
        forward = np.array([-math.sin(turn), math.cos(turn), 0]) * math.cos(angle)
        forward[2] = math.sin(angle)
        across = np.cross(forward, outward)
        centre = radius * outward + np.array([0, 0, pitch * turn / (2 * math.pi)])
        for at, (x, y) in enumerate(flat):
            if station % 2 and at not in corner:
                continue
            place = centre + bar / 2 * (x * outward + y * across)
            lines.append(f"{number(station, at)}, " + ", ".join(f"{part:.9f}" for part in place))
    lines.append("*ELEMENT, TYPE=C3D20R, ELSET=BAR")
    element = 0
    for layer in range(count):
        low, middle, high = 2 * layer, 2 * layer + 1, 2 * layer + 2
        for quad in quads:
            element += 1
            named = [number(low, at) for at in quad[:4]] + [number(high, at) for at in quad[:4]]
            named += [number(low, at) for at in quad[4:]] + [number(high, at) for at in quad[4:]]
            named += [number(middle, at) for at in quad[:4]]
            lines.append(f"{element}, " + ", ".join(map(str, named[:15])) + ",")
            lines.append(", ".join(map(str, named[15:])))
    for name, station in [("FOOT", 0), ("HEAD", 2 * count)]:
        lines.append(f"*NSET, NSET={name}")
        lines += [f"{number(station, at)}," for at in range(len(flat))]
    lines += ["*MATERIAL, NAME=STEEL", "*ELASTIC", f"{YOUNGS}, {POISSON}"]
    lines += ["*SOLID SECTION, ELSET=BAR, MATERIAL=STEEL", "*BOUNDARY", "FOOT, 1, 3"]
    large = ", NLGEOM" if press else ""
    moves = [(0, 0, -press)] if press else []
    moves += [(1, 0, -press), (0, 1, -press), (0, 0, -press - 1)]
    for x, y, z in moves:
        lines += [f"*STEP, INC=200{large}", "*STATIC", "0.25, 1." if (x, y, z) == moves[0] else "1., 1."]
        lines += ["*BOUNDARY"] + [f"HEAD, {way}, {way}, {by}" for way, by in zip((1, 2, 3), (x, y, z))]
        lines += ["*NODE PRINT, NSET=HEAD, TOTALS=ONLY", "RF", "*END STEP"]
    return "\n".join(lines) + "\n"


def stiffness(*what):
    """Force over movement of the head, three by three, and the load that presses it."""
    with tempfile.TemporaryDirectory() as folder:
        (Path(folder) / "coil.inp").write_text(deck(*what))
        subprocess.run(["ccx", "-i", "coil"], cwd=folder, check=True, stdout=subprocess.DEVNULL)
        text = (Path(folder) / "coil.dat").read_text().split("\n")
    forces, at_end = [], {}
    for at, line in enumerate(text):
        if "total force" in line:
            time = float(line.split()[-1])
            at_end[time] = [float(part) for part in text[at + 2].split()]
    forces = [np.array(at_end[time]) for time in sorted(at_end) if abs(time - round(time)) < 1e-9]
    press = what[4]
    pressed = forces.pop(0) if press else np.zeros(3)
    moved = np.array(forces) - pressed
    moved[2] = -moved[2]
    return moved, abs(pressed[2])


def answers(*what):
    """Rate along; and across, the mean of both ways, while the head is free to rise and to slip."""
    matrix, load = stiffness(*what)
    free = np.linalg.inv((matrix + matrix.T) / 2)
    return 1 / free[2, 2], 2 / (free[0, 0] + free[1, 1]), load


COILS = [(36.0, 180.0, 70.0, 5.0), (30.0, 120.0, 48.0, 6.0), (25.0, 150.0, 50.0, 7.0)]
HEAD = """# Whole coils of round bar in solid elements, both ends held flat and not turning. Made by tests/outside/rail_coil.py:
# CalculiX 2.20, quadratic bricks of reduced integration (C3D20R), large deflection where pressed.
# E = 206 000 MPa, Poisson's ratio 0.3; N, mm. The height is turns times pitch: the bar ends in the seats, no turn is dead.
# pressed: by how much of that height. load: then, the head kept from moving aside. along: rate along the axis, the slope
# there; across: rate across it, the mean of two directions; both with the head free to move otherwise, but not to tilt.
# mesh_along, mesh_across: how much they differ from those of a mesh with half as many elements each way. One with half as
# many again gives 572.654 and 377.875 for the first row: what is still wrong is about 0.2 %.
bar,mean,pitch,turns,pressed,load,along,across,mesh_along,mesh_across
"""


def main():
    rows = []
    for bar, mean, pitch, turns in COILS:
        for share in [0.0, 0.1, 0.2]:
            press = share * pitch * turns
            fine = answers(bar, mean, pitch, turns, press, 2, 2, 32)
            coarse = answers(bar, mean, pitch, turns, press, 1, 1, 16)
            off = [abs(one / two - 1) for one, two in zip(fine, coarse)]
            row = [bar, mean, pitch, turns, share, *(f"{part:.6g}" for part in (fine[2], *fine[:2]))]
            rows.append(",".join(map(str, row + [f"{part:.2g}" for part in off[:2]])))
            print(rows[-1], file=sys.stderr, flush=True)
    (DATA / "rail-coils.csv").write_text(HEAD + "\n".join(rows) + "\n")


if __name__ == "__main__":
    main()
