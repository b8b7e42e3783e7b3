"""What each speed does to a posterior without luck, ceiling one, by sums over a grid of exposures for 80 % and steepnesses. Run from this folder: python3 make.py

Prior: half point normal(-6, 3) log2 seconds, steepness log-normal with median 1.6 and log-sd 0.35. Leaving a speed out is taking its likelihood out of the sum.
"""
import csv, json
from fractions import Fraction
import numpy as np
from scipy.special import expit
from scipy.stats import binom

rate = 0.8
rows = list(csv.DictReader(open("table.csv")))
x = np.array([np.log2(float(Fraction(r["exposure"]))) for r in rows])
n = np.array([int(r["frames"]) for r in rows])
k = np.array([int(r["keepers"]) for r in rows])


def work(steps):
    exposure = np.linspace(-14, 0, steps)[:, None]  # that has the rate asked for
    log_b = np.linspace(np.log(1.6) - 2.5, np.log(1.6) + 2.5, steps)[None, :]
    b = np.exp(log_b)
    tau = exposure + np.log(rate / (1 - rate)) / b
    prior = -0.5 * ((tau + 6) / 3) ** 2 - 0.5 * ((log_b - np.log(1.6)) / 0.35) ** 2
    eta = [b * (tau - xi) for xi in x]
    logs = [ki * -np.logaddexp(0, -e) + (ni - ki) * -np.logaddexp(0, e) for e, ni, ki in zip(eta, n, k)]
    def normalised(log):
        w = np.exp(log - log.max())
        return w / w.sum()

    def median(w):
        at = w.sum(axis=1)
        return float(np.interp(0.5, np.cumsum(at) - 0.5 * at, exposure[:, 0]))

    whole = normalised(prior + sum(logs))
    out = []
    for i in range(len(x)):
        rest = normalised(prior + sum(logs) - logs[i])
        p = expit(eta[i])
        mean = (whole * logs[i]).sum()
        out.append({
            "fitted": float((whole * p).sum()),
            "expected": float((rest * p).sum()),
            "leverage": float((whole * (logs[i] - mean) ** 2).sum()),
            "influence": median(rest) - median(whole),
            "fewer": float((rest * binom.cdf(k[i] - 1, n[i], p)).sum()),
            "exactly": float((rest * binom.pmf(k[i], n[i], p)).sum()),
            "logPredictive": float(np.log((rest * np.exp(logs[i])).sum())),
        })
    return out


fine, coarse = work(2401), work(1601)
moved = max(abs(a[name] - b[name]) for a, b in zip(fine, coarse) for name in a)
assert moved < 1e-5, moved
json.dump({"rate": rate, "moved-between-grids": moved, "speeds": fine}, open("expected.json", "w"), indent=1)
