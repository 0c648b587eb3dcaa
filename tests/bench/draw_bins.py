"""The inner arithmetic of draw-bins.c, vectorized with NumPy over blocks of draws small enough for the cache.

Usage: draw_bins.py DRAWS BINS ROUNDS. Prints seconds of the fastest round and a checksum.
"""

import sys
import time

import numpy as np

draws, bins, rounds = (int(word) for word in sys.argv[1:4])
BLOCK = 32
b = np.arange(bins)
month = (12 * b) // bins
night = ((36 * b) // bins % 3 == 2).astype(float)
temperature = -20.0 + 80.0 * b / bins
sun = np.where(night > 0, 0.0, 3.0 * (b % 11))
ground = 45.0 + month
share = np.full(bins, 1.0 / bins)
weather = np.stack([np.ones(bins), temperature, sun, ground, night])
first_of_month = np.searchsorted(month, np.arange(12))

best, check = float("inf"), 0.0
for _ in range(rounds):
    start = time.perf_counter()
    check = 0.0
    for first in range(0, draws, BLOCK):
        wobble = np.arange(first, min(draws, first + BLOCK)) / draws
        capacity = 60000.0 * (0.95 + 0.1 * wobble)
        base = (0.8 + 0.1 * wobble) * capacity - 9000.0
        # The line of the weather differs from draw to draw: one matrix product for a block.
        lines = np.stack([base, 120.0 + wobble, 15.0 + wobble, 20.0 - wobble, -80.0 + wobble], axis=1)
        useful = lines @ weather
        np.maximum(useful, (0.05 * capacity)[:, None], out=useful)
        np.divide(share[None, :], useful, out=useful)
        check += float(np.add.reduceat(useful, first_of_month, axis=1).sum())
    best = min(best, time.perf_counter() - start)
print(f"{best:.9f} {check!r}")
