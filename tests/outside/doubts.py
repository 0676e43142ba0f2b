"""Doubts of rates, loads and frames, by a library that carries them through any sum by itself.

Writes ../data/doubts.json. Invented springs and frames; N, mm.
"""

import random

import metrolopy
from uncertainties import ufloat

from table import write

chance = random.Random(11)


def spring():
    """A bar of 20 to 50 mm, each size with one standard uncertainty."""
    bar = chance.uniform(20, 50)
    mean = bar * chance.uniform(3.5, 8)
    across = chance.choice(["mean", "outside", "inside"])
    diameter = mean + {"mean": 0, "outside": bar, "inside": -bar}[across]
    total, dead = chance.uniform(5, 11), chance.uniform(1.4, 2.6)
    free = total * bar * chance.uniform(1.3, 1.9)
    sizes = {
        "bar": [bar, chance.uniform(0.05, 0.3)],
        "diameter": [diameter, chance.uniform(0.1, 1.5)],
        "total_turns": [total, chance.uniform(0.02, 0.2)],
        "dead_turns": [dead, chance.uniform(0.05, 0.4)],
        "shear_modulus": [chance.uniform(72e3, 82e3), chance.uniform(200, 1600)],
        "free": [free, chance.uniform(0.2, 2)],
    }
    return {"across": across, **sizes, "height": free * chance.uniform(0.7, 0.95)}


def rate_and_load(case, number):
    d, across, total, dead, modulus, free = (
        number(*case[name])
        for name in ["bar", "diameter", "total_turns", "dead_turns", "shear_modulus", "free"]
    )
    mean = across + {"mean": 0, "outside": -1, "inside": 1}[case["across"]] * d
    rate = modulus * d**4 / (8 * mean**3 * (total - dead))
    return rate, rate * (free - case["height"])


def solved():
    """Each spring by one library, and the same by another."""
    for _ in range(40):
        case = spring()
        rate, load = rate_and_load(case, ufloat)
        other = rate_and_load(case, metrolopy.gummy)
        for one, two in zip((rate, load), other):
            assert abs(one.std_dev / two.u - 1) < 1e-7, (one, two)
        yield {
            **case,
            "rate": [rate.nominal_value, rate.std_dev],
            "load": [load.nominal_value, load.std_dev],
        }


def determinant(a, b, c):
    return (
        a[0] * (b[1] * c[2] - b[2] * c[1])
        - a[1] * (b[0] * c[2] - b[2] * c[0])
        + a[2] * (b[0] * c[1] - b[1] * c[0])
    )


def frame(count):
    """A rigid frame on nests of three coils, every coil at work: heave and two slopes from three
    balances, by Cramer's rule in numbers that carry their doubts."""
    tape, steel = ufloat(0, chance.uniform(0.1, 0.5)), ufloat(0, chance.uniform(0.002, 0.01))
    places = [(900, 500), (900, -500), (-900, 520), (-900, -480), (0, 510), (0, -505)][:count]
    nests = []
    for x, y in places:
        coils = []
        for rate, free in [(280, 330), (120, 322), (60, 318)]:
            coils.append(
                {
                    "rate": rate * chance.uniform(0.9, 1.1),
                    "free": free + chance.uniform(-3, 3),
                    "raise": chance.uniform(-2, 2),
                    "own_free": chance.uniform(0.2, 0.9),
                    "own_rate": chance.uniform(0.005, 0.05),
                }
            )
        nests.append({"x": x, "y": y, "shim": chance.choice([0, 2, 5]), "coils": coils})
    weight = count * chance.uniform(18e3, 25e3)
    x_centre, y_centre = chance.uniform(-60, 60), chance.uniform(-40, 40)

    stiff, free = [], []
    for nest in nests:
        rates = [c["rate"] * (1 + ufloat(0, c["own_rate"]) + steel) for c in nest["coils"]]
        tops = [c["free"] + c["raise"] + ufloat(0, c["own_free"]) + tape for c in nest["coils"]]
        stiff.append(sum(rates))
        free.append(sum(k * top for k, top in zip(rates, tops)))
    rows = [(1, nest["x"], nest["y"]) for nest in nests]
    arms = (1, x_centre, y_centre)
    # Sum of load * row = weight * arms, with load = free - stiff * (z + slopes - shim).
    left = [[sum(k * r[i] * r[j] for k, r in zip(stiff, rows)) for j in range(3)] for i in range(3)]
    right = [
        sum((f + k * nest["shim"]) * r[i] for f, k, r, nest in zip(free, stiff, rows, nests))
        - weight * arms[i]
        for i in range(3)
    ]
    columns = list(zip(*left))
    whole = determinant(*columns)
    pose = [determinant(*[right if j == i else columns[j] for j in range(3)]) / whole for i in range(3)]

    answers = []
    for nest, k, f, row in zip(nests, stiff, free, rows):
        height = sum(p * r for p, r in zip(pose, row)) - nest["shim"]
        load = f - k * height
        for coil in nest["coils"]:
            assert coil["free"] + coil["raise"] > height.nominal_value + 5, "every coil at work"
        answers.append(
            {"load": [load.nominal_value, load.std_dev], "height": [height.nominal_value, height.std_dev]}
        )
    return {
        "weight": weight,
        "x": x_centre,
        "y": y_centre,
        "tape": tape.std_dev,
        "steel": steel.std_dev,
        "nests": nests,
        "at_rest": answers,
    }


write("doubts.json", {"springs": list(solved()), "frames": [frame(n) for n in [4, 4, 4, 6, 6, 6]]})
