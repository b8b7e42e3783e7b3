"""Sensitivity and specificity of a judge from frames judged twice: posterior means and quantiles by Gauss-Legendre product sums over
sensitivity, specificity and the rate at each speed (the library sums midpoints over the first two). Run: /usr/bin/python3 make.py"""
import json
import numpy as np
from scipy.optimize import brentq

RATE, WEIGHT = np.polynomial.legendre.leggauss(200)
RATE, WEIGHT = (1 + RATE) / 2, WEIGHT / 2
NODES, SHARES = np.polynomial.legendre.leggauss(96)


def nodes(low, high):
    return low + (high - low) * (1 + NODES) / 2, SHARES * (high - low) / 2


def density(s, c, speeds):
    """Prior times likelihood at arrays s (column) and c (row)."""
    f = 1 - c
    value = s**8 * c**8
    for twice, once, never in speeds:
        p = RATE[:, None, None]
        law = (
            (p * s**2 + (1 - p) * f**2) ** twice
            * (2 * (p * s * (1 - s) + (1 - p) * f * c)) ** once
            * (p * (1 - s) ** 2 + (1 - p) * c**2) ** never
        )
        value = value * np.einsum("i,ijk->jk", WEIGHT, law) * 4.0 ** (twice + once + never)
    return value


def mass(speeds, s_to=1.0, c_to=1.0, of=lambda s, c: 1):
    (s, ws), (c, wc) = nodes(0.5, s_to), nodes(0.5, c_to)
    s, c = s[:, None], c[None, :]
    return np.sum(ws[:, None] * wc[None, :] * density(s, c, speeds) * of(s, c))


CASES = {
    "alike": [(6, 0, 0), (5, 0, 1), (2, 0, 4), (0, 0, 6)],
    "some unlike": [(12, 0, 0), (10, 2, 0), (5, 3, 4), (1, 2, 9), (0, 0, 12)],
    "few": [(1, 1, 1)],
    "generous judge": [(20, 1, 0), (12, 6, 4), (4, 8, 12), (2, 6, 16)],
}
out = []
for name, speeds in CASES.items():
    total = mass(speeds)
    row = {"name": name, "speeds": speeds}
    row["sensitivity"] = [mass(speeds, of=lambda s, c: s) / total] + [
        brentq(lambda x: mass(speeds, s_to=x) / total - p, 0.5001, 1, xtol=1e-10) for p in (0.025, 0.975)
    ]
    row["specificity"] = [mass(speeds, of=lambda s, c: c) / total] + [
        brentq(lambda x: mass(speeds, c_to=x) / total - p, 0.5001, 1, xtol=1e-10) for p in (0.025, 0.975)
    ]
    out.append(row)
    print(row)
json.dump(out, open("expected.json", "w"), indent=1)
