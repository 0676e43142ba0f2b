"""The load of a nest in NumPy, whole columns at once. Prints the same lines as nest.c."""

import time

import numpy as np

heights = 0.2 + 1e-5 * np.arange(10_000)


def loads_at(touch, rate, heights):
    """Coil by coil, each with all heights."""
    loads = np.zeros_like(heights)
    for one, stiff in zip(touch, rate):
        loads += stiff * np.maximum(one - heights, 0.0)
    return loads


def quickest(name, rounds, calls, work):
    best = float("inf")
    for _ in range(rounds):
        start = time.perf_counter_ns()
        work()
        best = min(best, (time.perf_counter_ns() - start) / calls)
    print(f"{name}, {best:.4f}")


nest = ([0.3, 0.29], [400e3, 190e3])
touch, rate = map(np.array, nest)
quickest("one call", 200, 100, lambda: [float(rate @ np.maximum(touch - h, 0.0)) for h in heights[:100]])
quickest("slice", 1000, len(heights), lambda: loads_at(*nest, heights))
print(f"sum, {loads_at(*nest, heights).sum():.17g}")
for count in [1, 10, 100, 1000, 10_000]:
    coils = (0.3 - 1e-6 * np.arange(count), np.full(count, 1e3))
    few = heights[:1000]
    quickest(f"coils {count}", 100 if count < 1000 else 10, 1000, lambda: loads_at(*coils, few))
