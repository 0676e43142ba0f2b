"""How much wider a rail-size coil becomes when it is pressed, in the middle of a whole coil of solid
elements with both ends held flat: the elements of rail_coil.py, with large deflection.

Writes ../data/rail-growth.csv. Invented coils; N, mm. Some ten minutes.
"""

import subprocess
import sys
import tempfile
from pathlib import Path

import numpy as np

from rail_coil import COILS, deck, section
from table import DATA

CORE, RING, ALONG = 2, 1, 24
HEAD = """# Whole coils of round bar in solid elements, both ends held flat and not turning, pressed far: how much wider the middle
# turns become. Made by tests/outside/rail_growth.py: CalculiX 2.20, quadratic bricks (C3D20R), large deflection.
# E = 206 000 MPa, Poisson's ratio 0.3; mm. The height is turns times pitch. share: of the travel until turns would touch.
# growth: of the mean diameter, over the two turns in the middle.
bar,mean,pitch,turns,share,growth
"""


def growth(bar, mean, pitch, turns, press):
    lines = deck(bar, mean, pitch, turns, press, CORE, RING, ALONG).split("\n")
    # The first step presses; the rest is of no matter here.
    lines = lines[: lines.index("*END STEP")]
    flat, _ = section(CORE, RING)
    assert (0.0, 0.0) in flat, "a node on the axis of the bar"
    nodes = {}
    for line in lines[1 : lines.index("*ELEMENT, TYPE=C3D20R, ELSET=BAR")]:
        number, *place = line.split(",")
        nodes[int(number)] = np.array([float(part) for part in place])
    axis = []
    height = pitch * turns
    for station in range(round(turns * ALONG) * 2 + 1):
        turn = 2 * np.pi * station / (2 * ALONG)
        at = np.array([mean / 2 * np.cos(turn), mean / 2 * np.sin(turn), pitch * turn / (2 * np.pi)])
        if abs(at[2] - height / 2) < pitch - 1e-6:
            axis.append((turn, min(nodes, key=lambda number: np.abs(nodes[number] - at).sum())))
    assert len(axis) >= 4 * ALONG - 1
    lines += ["*NODE PRINT, NSET=AXIS", "U", "*END STEP"]
    start = lines.index("*MATERIAL, NAME=STEEL")
    lines[start:start] = ["*NSET, NSET=AXIS"] + [f"{number}," for _, number in axis]
    with tempfile.TemporaryDirectory() as folder:
        (Path(folder) / "coil.inp").write_text("\n".join(lines) + "\n")
        subprocess.run(["ccx", "-i", "coil"], cwd=folder, check=True, stdout=subprocess.DEVNULL)
        text = (Path(folder) / "coil.dat").read_text()
    block = text[text.rindex("displacements") :].split("\n")[2:]
    moved = {}
    for line in block:
        parts = line.split()
        if len(parts) == 4:
            moved[int(parts[0])] = np.array([float(part) for part in parts[1:]])
    # A circle whose middle may have moved, and drifts along the axis where the coil leans: its ends are
    # held flat, and what they do to the turns next to them swings on into the middle.
    rows, places = [], []
    for turn, number in axis:
        cosine, sine, up = np.cos(turn), np.sin(turn), turn - np.pi * turns
        rows += [[cosine, -sine, 1, up, 0, 0], [sine, cosine, 0, 0, 1, up]]
        places += list(nodes[number][:2] + moved[number][:2])
    found, *_ = np.linalg.lstsq(np.array(rows), np.array(places), rcond=None)
    return 2 * np.hypot(found[0], found[1]) - mean


def main():
    rows = []
    for bar, mean, pitch, turns in COILS:
        for share in [0.5, 0.9]:
            grown = growth(bar, mean, pitch, turns, share * (pitch - bar) * turns)
            rows.append(f"{bar},{mean},{pitch},{turns},{share},{grown:.6g}")
            print(rows[-1], file=sys.stderr, flush=True)
    (DATA / "rail-growth.csv").write_text(HEAD + "\n".join(rows) + "\n")


if __name__ == "__main__":
    main()
