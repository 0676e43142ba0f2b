"""When rail-size coils bend out sideways, and how stiff they are sideways: Haringx's column in the
place of the coil, integrated from foot to top, with the stiffness of one turn from the energy in its
bar. No formula of buckling or of a lateral rate is used.

Writes ../data/columns.json. Invented coils; N, mm.
"""

import math
import random

import numpy as np
from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq

from table import write

YOUNGS = 206_000.0
TURNS = 6.0
chance = random.Random(5)


def turn(bar, mean, modulus):
    """What one turn gives under a load along the axis, a moment across it, a load across it: from
    the bending and twisting energy round the turn, its slope left out as the theory does."""
    second = math.pi * bar**4 / 64
    bend, twist = YOUNGS * second, modulus * 2 * second
    radius = mean / 2

    def energy(moments):
        def at(angle):
            bending, twisting = moments(angle)
            return (bending**2 / bend + twisting**2 / twist) * radius

        return quad(at, 0, 2 * math.pi, epsabs=0, epsrel=1e-13, limit=200)[0]

    axial = energy(lambda angle: (0, radius))
    tilt = energy(lambda angle: (math.cos(angle), math.sin(angle)))
    # A load across the axis, in the plane of the turn, bends the bar about the axis.
    across = energy(lambda angle: (radius * math.sin(angle), 0))
    return axial, tilt, across


class Column:
    def __init__(self, coil, deflection):
        axial, tilt, across = turn(coil["bar"], coil["mean"], coil["shear_modulus"])
        height = coil["free"] - deflection
        self.height = height
        self.load = deflection / (TURNS * axial)
        self.bending = height / (TURNS * tilt)
        self.shear = height / (TURNS * across)

    def top(self, tilt, moment, across):
        """y' = t + (H + P t)/S, t' = M/B, M' = -P y' - H, from y = 0."""

        def slope(_, at):
            rise = at[1] + (across + self.load * at[1]) / self.shear
            return [rise, at[2] / self.bending, -self.load * rise - across]

        path = solve_ivp(slope, (0, self.height), [0, tilt, moment], "DOP853", rtol=1e-12, atol=1e-14)
        return path.y[:, -1]

    def bent(self, seating):
        """Changes its sign where the column can first stand bent."""
        size = self.bending / self.height
        tilted, turned = self.top(1, 0, 0), self.top(0, size, 0)
        pushed = self.top(0, 0, size / self.height)
        both = lambda i, j: (turned[i] * pushed[j] - turned[j] * pushed[i]) / (self.height * size)
        return {
            "both-pivoted": lambda: tilted[0] / self.height,
            "sliding": lambda: turned[1],
            "one-free": lambda: turned[2] / size,
            "guided": lambda: both(0, 1) * size,
            "one-pivoted": lambda: both(0, 2),
        }[seating]()

    def lateral(self):
        size = self.bending / self.height
        turned, pushed = self.top(0, size, 0), self.top(0, 0, size / self.height)
        moment = -pushed[1] / turned[1]
        return size / self.height / (moment * turned[0] + pushed[0])


def buckles(coil, seating):
    """The first deflection at which it can stand bent, none up to nine tenths of the free height."""
    steps = np.linspace(0.004, 0.9, 160) * coil["free"]
    before = Column(coil, steps[0]).bent(seating)
    for least, most in zip(steps, steps[1:]):
        after = Column(coil, most).bent(seating)
        if before * after < 0:
            return brentq(lambda s: Column(coil, s).bent(seating), least, most, xtol=1e-9)
        before = after
    return None


def coils():
    for slender in [1.6, 2.2, 2.8, 3.2, 3.8, 4.5, 5.4, 6.5, 8.0]:
        bar = chance.uniform(22, 50)
        mean = bar * chance.uniform(3.5, 7)
        poisson = chance.uniform(0.27, 0.32)
        yield {
            "bar": bar,
            "mean": mean,
            "free": slender * mean,
            "poisson": poisson,
            "shear_modulus": YOUNGS / (2 * (1 + poisson)),
        }


def solved():
    for coil in coils():
        found = {
            seating: buckles(coil, seating)
            for seating in ["guided", "one-pivoted", "both-pivoted", "sliding", "one-free"]
        }
        axial = 1 / (TURNS * turn(coil["bar"], coil["mean"], coil["shear_modulus"])[0])
        most = found["sliding"] or 0.6 * coil["free"]
        lateral = [
            [share * most, Column(coil, share * most).lateral() / axial] for share in [0.02, 0.2, 0.5, 0.8]
        ]
        yield {**coil, "rate": axial, "buckles": found, "lateral_over_axial": lateral}


write("columns.json", {"turns": [TURNS], "coils": list(solved())})
