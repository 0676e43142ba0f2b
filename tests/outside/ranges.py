"""The least and the most that tolerances leave of a rate and a load, enclosed by ball arithmetic:
boxes of sizes are cut in two until the bounds on both sides lie near each other. Nothing is said of
which way rate or load goes with a size.

Writes ../data/ranges.json. Invented drawings; N, mm.
"""

import heapq
import random

from flint import arb, ctx

from table import rounded, write

ctx.prec = 80
NAMES = ["bar", "diameter", "total_turns", "dead_turns", "shear_modulus", "free"]
chance = random.Random(41)


def drawing():
    bar = chance.uniform(20, 50)
    mean = bar * chance.uniform(3.5, 8)
    across = chance.choice(["mean", "outside", "inside"])
    total = chance.uniform(5, 11)
    free = total * bar * chance.uniform(1.3, 1.9)

    def around(value, by):
        return [value - chance.uniform(0.2, 1) * by, value + chance.uniform(0.2, 1) * by]

    return rounded({
        "across": across,
        "bar": around(bar, 0.02 * bar),
        "diameter": around(mean + {"mean": 0, "outside": bar, "inside": -bar}[across], 0.02 * mean),
        "total_turns": around(total, 0.25),
        "dead_turns": around(chance.uniform(1.5, 2.5), 0.5),
        "shear_modulus": around(78_500, 2_000),
        "free": around(free, 0.01 * free),
        "height": free * chance.uniform(0.7, 0.93),
    })


def between(low, high):
    """A ball that holds every number from one to the other."""
    return arb(low).union(arb(high))


def rate(case, box):
    d, across, total, dead, modulus, _ = (between(*box[name]) for name in NAMES)
    mean = {"mean": across, "outside": across - d, "inside": across + d}[case["across"]]
    return modulus * d**4 / (8 * mean**3 * (total - dead))


def load(case, box):
    return rate(case, box) * (between(*box["free"]) - arb(case["height"]))


def most(what, names, case, sign):
    """A lower and an upper bound on the greatest of sign times what, within 1e-4 of each other."""
    reached = float("-inf")
    heap, count = [], 0

    def push(box):
        nonlocal count, reached
        for corner in range(2 ** len(names)):
            ends = {name: (box[name][corner >> at & 1],) * 2 for at, name in enumerate(names)}
            reached = max(reached, float((sign * what(case, {**box, **ends})).lower()))
        count += 1
        heapq.heappush(heap, (-float((sign * what(case, box)).upper()), count, box))

    push({name: tuple(case[name]) for name in NAMES})
    while True:
        bound, _, box = heapq.heappop(heap)
        if -bound <= reached + 1e-4 * abs(reached):
            return sorted([sign * -bound, sign * reached])
        name = max(names, key=lambda n: (box[n][1] - box[n][0]) / box[n][1])
        low, high = box[name]
        for half in [(low, (low + high) / 2), ((low + high) / 2, high)]:
            push({**box, name: half})


def solved():
    for _ in range(12):
        case = drawing()
        yield {
            **case,
            "rate": [most(rate, NAMES[:5], case, sign) for sign in (-1, 1)],
            "load": [most(load, NAMES, case, sign) for sign in (-1, 1)],
        }


write("ranges.json", {"drawings": list(solved())})
