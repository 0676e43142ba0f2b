"""Which coils to put together so that the nests carry alike: the least spread of their loads, as a
mixed-integer program.

Writes ../data/matching.json. Invented benches; N at one height.
"""

import itertools
import random

import highspy
import numpy as np

from table import write

chance = random.Random(97)


def least_spread(roles, wanted):
    """Pick as many combinations as there are nests, no coil twice; greatest less least is least."""
    combinations = list(itertools.product(*(range(len(role)) for role in roles)))
    loads = [sum(role[at] for role, at in zip(roles, one)) for one in combinations]
    far = max(loads)
    solver = highspy.Highs()
    solver.setOptionValue("output_flag", False)
    solver.setOptionValue("mip_rel_gap", 0.0)
    solver.setOptionValue("mip_abs_gap", 1e-7)
    solver.setOptionValue("mip_feasibility_tolerance", 1e-9)
    solver.setOptionValue("primal_feasibility_tolerance", 1e-9)
    taken = [solver.addBinary() for _ in combinations]
    top, bottom = solver.addVariable(0, far), solver.addVariable(0, far)
    solver.addConstr(sum(taken) == wanted)
    for role in range(len(roles)):
        for coil in range(len(roles[role])):
            solver.addConstr(sum(t for t, one in zip(taken, combinations) if one[role] == coil) <= 1)
    for one, load in zip(taken, loads):
        solver.addConstr(top - load * one >= 0)
        solver.addConstr(bottom + (far - load) * one <= far)
    solver.minimize(top - bottom)
    assert solver.getModelStatus() == highspy.HighsModelStatus.kOptimal
    values = np.round(solver.getSolution().col_value[: len(combinations)])
    picked = [load for load, value in zip(loads, values) if value == 1]
    assert len(picked) == wanted
    return max(picked) - min(picked)


def bench(coils, roles, wanted):
    loads = [
        [round(chance.gauss(mean, 0.05 * mean), 1) for _ in range(coils)]
        for mean in [11_000, 4_200, 1_900][:roles]
    ]
    return {"roles": loads, "nests": wanted, "spread": least_spread(loads, wanted)}


sizes = [(6, 2, 4)] * 4 + [(8, 2, 4)] * 4 + [(9, 2, 6)] * 3 + [(4, 3, 3)] * 3 + [(5, 3, 4)] * 3
write("matching.json", {"benches": [bench(*size) for size in sizes]})
