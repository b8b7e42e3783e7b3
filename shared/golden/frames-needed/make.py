"""Frames needed when rate and correlation are known, in exact fractions. Run from this folder: python3 make.py

Rates, correlations and assurances are the decimals as written, not the doubles nearest to them, so that exact ties count as met.
For every question that less than 100 000 frames answer: the smallest n, the chance of enough keepers with n, and with n - 1. Also compares with table.csv.
"""
import csv
from fractions import Fraction as F
from mpmath import mp, mpf, log, ceil

mp.dps = 50
SIXTY_DIGITS = 10**60


def cut(value):
    """Keep 60 digits: fractions of long products would grow without end."""
    return F(round(value * SIXTY_DIGITS), SIXTY_DIGITS)


def burst_law(n, keep, rho, top):
    """Chances of 0 .. top - 1 keepers among n frames of one burst: rising factorials, by the rule of three."""
    if rho == 0:
        a, b, d = keep, 1 - keep, F(0)
    else:
        a, b, d = keep * (1 - rho) / rho, (1 - keep) * (1 - rho) / rho, F(1)
    none = F(1)
    for i in range(n):
        none = none * (b + i * d) / (a + b + i * d)
        none = cut(none) if none.denominator > SIXTY_DIGITS**2 else none
    law = [none]
    for j in range(min(n, top - 1)):
        law.append(law[-1] * (n - j) * (a + j * d) / ((j + 1) * (b + (n - j - 1) * d)))
    return law


def add(x, y, top):
    out = [F(0)] * min(top, len(x) + len(y) - 1)
    for i, u in enumerate(x):
        for j, v in enumerate(y):
            if i + j < top:
                out[i + j] += u * v
    return [cut(v) for v in out]


def enough(n, keep, rho, k, burst):
    if n < k:
        return F(0)
    size = burst or n
    full, rest = divmod(n, size)
    law = [F(1)]
    part = burst_law(size, keep, rho, k)
    for _ in range(full):
        law = add(law, part, k)
    if rest:
        law = add(law, burst_law(rest, keep, rho, k), k)
    return 1 - sum(law)


def ask(keep, rho, burst, k, assurance):
    p, r, c = F(keep), F(rho), F(assurance)
    met = lambda n: enough(n, p, r, k, burst) >= c - F(1, 10**40)
    low, high = k - 1, k
    while not met(high):
        low, high = high, 2 * high
        if high > 10**5:
            return None
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (low, middle) if met(middle) else (middle, high)
    return [keep, rho, burst or "", k, assurance, high, float(enough(high, p, r, k, burst)), float(enough(high - 1, p, r, k, burst))]


rows = []
table = {"1": ["0.8", "0.9", "0.95", "0.99"], "2": ["0.9", "0.95"], "3": ["0.9", "0.95"], "5": ["0.95"], "10": ["0.95"]}
for keep in ["0.05", "0.1", "0.2", "0.3", "0.4", "0.5", "0.6", "0.7", "0.8", "0.9", "0.95"]:
    for k, assurances in table.items():
        for assurance in assurances:
            rows.append(ask(keep, "0", None, int(k), assurance))
for keep, rhos in {"0.2": ["0.05", "0.1", "0.2"], "0.3": ["0.1", "0.3"], "0.5": ["0.05", "0.1", "0.2", "0.3"], "0.1": ["0.1"]}.items():
    for rho in rhos:
        rows.append(ask(keep, rho, None, 1, "0.95"))
for keep in ["0.05", "0.3", "0.55", "0.85"]:
    for k in [1, 2, 5]:
        for assurance in ["0.8", "0.95", "0.99"]:
            for rho in ["0.1", "0.3"]:
                for burst in [None, 2, 6]:
                    rows.append(ask(keep, rho, burst, k, assurance))
rows = [row for row in rows if row]

success_run = []
for reliability in ["0.5", "0.7", "0.8", "0.9", "0.95", "0.99"]:
    for confidence in ["0.5", "0.8", "0.9", "0.95", "0.99"]:
        exact = log(1 - mpf(confidence)) / log(mpf(reliability))
        success_run.append([reliability, confidence, int(ceil(exact - mpf(10) ** -40))])

for row in csv.DictReader(open("table.csv")):
    found = [r[5] for r in rows if [r[0], r[1], str(r[2]), str(r[3]), r[4]] == [row["rate"], row["correlation"], "", row["keepers"], row["assurance"]]]
    assert set(found) == {int(row["frames"])}, (row, found)

for name, header, lines in [
    ("expected.csv", ["rate", "correlation", "burstsOf", "keepers", "assurance", "frames", "attained", "before"], rows),
    ("success-run.csv", ["reliability", "confidence", "tests"], success_run),
]:
    with open(name, "w", newline="") as f:
        w = csv.writer(f, lineterminator="\n")
        w.writerow(header)
        w.writerows(lines)
