"""Nests of three coils, and frames on them, as convex quadratic programs: the least energy.

Writes ../data/three-coil-nests.json. Invented nests and frames; N, mm.
"""

import random

import highspy
import numpy as np

from table import write

chance = random.Random(23)


def least(cost, square, rows, lower_rows, lower):
    """Least of cost·v + square·v²/2 where rows·v >= lower_rows and v >= lower."""
    solver = highspy.Highs()
    for option, value in [
        ("output_flag", False),
        ("primal_feasibility_tolerance", 1e-10),
        ("dual_feasibility_tolerance", 1e-10),
        ("qp_regularization_value", 0.0),
    ]:
        solver.setOptionValue(option, value)
    count = len(cost)
    model = highspy.HighsModel()
    model.lp_.num_col_, model.lp_.num_row_ = count, len(rows)
    model.lp_.col_cost_ = np.array(cost, float)
    model.lp_.col_lower_ = np.array(lower, float)
    model.lp_.col_upper_ = np.full(count, highspy.kHighsInf)
    model.lp_.row_lower_ = np.array(lower_rows, float)
    model.lp_.row_upper_ = np.full(len(rows), highspy.kHighsInf)
    matrix = np.array(rows, float)
    model.lp_.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
    starts, index, value = [0], [], []
    for row in matrix:
        for at in np.flatnonzero(row):
            index.append(int(at))
            value.append(float(row[at]))
        starts.append(len(index))
    model.lp_.a_matrix_.start_ = np.array(starts, np.int32)
    model.lp_.a_matrix_.index_ = np.array(index, np.int32)
    model.lp_.a_matrix_.value_ = np.array(value, float)
    model.hessian_.dim_ = count
    model.hessian_.format_ = highspy.HessianFormat.kTriangular
    starts, index, value = [0], [], []
    for at, part in enumerate(square):
        if part:
            index.append(at)
            value.append(float(part))
        starts.append(len(index))
    model.hessian_.start_ = np.array(starts, np.int32)
    model.hessian_.index_ = np.array(index, np.int32)
    model.hessian_.value_ = np.array(value, float)
    solver.passModel(model)
    solver.run()
    assert solver.getModelStatus() == highspy.HighsModelStatus.kOptimal, solver.getModelStatus()
    return list(solver.getSolution().col_value)


def coils():
    made = []
    for rate, free, solid in [(300, 330, 200), (130, 318, 196), (60, 310, 190)]:
        made.append(
            {
                "rate": rate * chance.uniform(0.8, 1.2),
                "free": free + chance.uniform(-12, 12),
                "solid": solid + chance.uniform(-8, 8),
                "raise": chance.choice([0, 0, 3.0, -4.0, 8.0]),
            }
        )
    return made


def nest():
    """Height and loads under eight loads, from one coil at work to past solid. In kN and cm, so that
    the numbers of the program are of one size."""
    members = coils()
    tops = [(c["free"] + c["raise"]) / 10 for c in members]
    rates = [c["rate"] / 100 for c in members]
    stop = max((c["solid"] + c["raise"]) / 10 for c in members)
    at_solid = sum(k * max(0, top - stop) for k, top in zip(rates, tops))
    points = []
    for share in [0.02, 0.08, 0.2, 0.4, 0.6, 0.8, 0.97, 1.1]:
        load = at_solid * share
        found = least(
            cost=[load, 0, 0, 0],
            square=[0, *rates],
            rows=[[1, *(float(i == j) for j in range(3))] for i in range(3)],
            lower_rows=tops,
            lower=[stop, 0, 0, 0],
        )
        loads = [1000 * k * x for k, x in zip(rates, found[1:])]
        points.append({"load": 1000 * load, "height": 10 * found[0], "loads": loads})
    return {"coils": members, "points": points}


def frame(count):
    """A rigid frame on nests of three coils, none driven solid; some coils and some nests loose."""
    places = [(900, 500), (900, -500), (-900, 500), (-900, -500), (300, 500), (300, -500)][:count]
    nests = []
    for x, y in places:
        ground = chance.choice([0, 0, 6.0, -20.0, 12.0])
        nests.append({"x": x, "y": y, "ground": ground, "coils": coils()})
    weight = count * chance.uniform(4e3, 22e3)
    centre = [chance.uniform(-250, 250), chance.uniform(-120, 120)]
    variables = 3 + 3 * count
    # Heave in cm, slopes in cm a metre; below zero too, so that each is moved up by a hundred.
    away = 100
    cost = [weight / 1000, weight / 1000 * centre[0] / 1000, weight / 1000 * centre[1] / 1000]
    square, rows, lower_rows = [0, 0, 0], [], []
    for at, under in enumerate(nests):
        for number, coil in enumerate(under["coils"]):
            square.append(coil["rate"] / 100)
            row = [0.0] * variables
            row[0], row[1], row[2] = 1, under["x"] / 1000, under["y"] / 1000
            row[3 + 3 * at + number] = 1
            rows.append(row)
            top = (coil["free"] + coil["raise"] + under["ground"]) / 10
            lower_rows.append(top + away * (row[0] + row[1] + row[2]))
    found = least(cost + [0] * 3 * count, square, rows, lower_rows, [0] * variables)
    answers = []
    for at, under in enumerate(nests):
        heave, along, across = (part - away for part in found[:3])
        height = 10 * (heave + along * under["x"] / 1000 + across * under["y"] / 1000) - under["ground"]
        loads = [
            10 * coil["rate"] * found[3 + 3 * at + number]
            for number, coil in enumerate(under["coils"])
        ]
        if any(height < c["solid"] + c["raise"] for c in under["coils"]):
            return None
        answers.append({"height": height, "load": sum(loads)})
    return {"weight": weight, "x": centre[0], "y": centre[1], "nests": nests, "at_rest": answers}


def frames(wanted):
    made = []
    while len(made) < wanted:
        one = frame(chance.choice([4, 4, 6]))
        if one and sum(at["load"] > 1 for at in one["at_rest"]) >= 3:
            made.append(one)
    return made


write("three-coil-nests.json", {"nests": [nest() for _ in range(12)], "frames": frames(16)})
