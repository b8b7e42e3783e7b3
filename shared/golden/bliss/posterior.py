"""Posterior of the falling curve of Bliss's table by plain two-dimensional Gauss-Legendre sums at 20 digits.
keepers = survivors; P = 1 / (1 + exp(-b (tau - x))), x = log2(exposure_s) = log10 dose; tau ~ normal(1.8, 1), ln b ~ normal(ln 30, 0.7);
ceiling 1, floor 0, no luck. Run: python3 posterior.py (mpmath; two minutes)."""
import csv
import json
import os
from mpmath import mp, mpf, exp, log, log1p, sqrt
from mpmath.calculus.quadrature import GaussLegendre

os.chdir(os.path.dirname(os.path.abspath(__file__)))
mp.dps = 20
LEVELS = {"q025": mpf("0.025"), "q50": mpf("0.5"), "q975": mpf("0.975")}
# reach of the sums: more than seven posterior sds each way
TAU, BETA = (mpf("1.743"), mpf("1.801")), (mpf("2.85"), mpf("4.15"))


def read():
    with open("table.csv") as f:
        rows = list(csv.DictReader(f))
    with open("posterior.csv", "w", newline="\n") as f:
        f.write("exposure_s,frames,keepers\n")
        for r in rows:
            f.write(f"{r['exposure_s']},{r['frames']},{int(r['frames']) - int(r['keepers'])}\n")
    return [(log(mpf(r["exposure_s"])) / log(2), int(r["frames"]), int(r["frames"]) - int(r["keepers"])) for r in rows]


DATA = read()


def log1pexp(a):
    return a + log1p(exp(-a)) if a > 0 else log1p(exp(a))


def density(tau, beta, top=mpf(186)):
    b, total = exp(beta), top
    for x, n, k in DATA:
        eta = b * (tau - x)
        total += k * eta - n * log1pexp(eta)
    total -= (tau - mpf("1.8")) ** 2 / 2 + log(2 * mp.pi) / 2
    total -= ((beta - log(30)) / mpf("0.7")) ** 2 / 2 + log(2 * mp.pi) / 2 + log(mpf("0.7"))
    return exp(total)


def solve(degree):
    nodes = GaussLegendre(mp).calc_nodes(degree, mp.prec)

    def on(lo, hi):
        return [((lo + hi) / 2 + (hi - lo) / 2 * x, w * (hi - lo) / 2) for x, w in nodes]

    def over(lo_hi_of_beta, beta_range=BETA, of=lambda tau, beta: 1):
        total = mpf(0)
        for beta, wb in on(*beta_range):
            lo, hi = lo_hi_of_beta(beta)
            if hi > lo:
                total += wb * sum(w * density(t, beta) * of(t, beta) for t, w in on(lo, hi))
        return total

    grid = [(t, beta, wt * wb * density(t, beta)) for beta, wb in on(*BETA) for t, wt in on(*TAU)]
    z = sum(m for _, _, m in grid)
    mean = lambda of: sum(m * of(t, beta) for t, beta, m in grid) / z

    def root(f, a, b, steps=60):
        """Regula falsi, Illinois."""
        fa, fb = f(a), f(b)
        for _ in range(steps):
            c = (a * fb - b * fa) / (fb - fa)
            fc = f(c)
            if abs(fc) < mpf("1e-10"):
                return c
            if fc * fb < 0:
                a, fa = b, fb
            else:
                fa /= 2
            b, fb = c, fc
        raise ValueError("no root")

    clip = lambda v: min(max(v, TAU[0]), TAU[1])
    tau_below = lambda v: over(lambda beta: (TAU[0], clip(v))) / z
    beta_below = lambda v: over(lambda beta: TAU, (BETA[0], v)) / z
    below = lambda rate, x: over(lambda beta: (TAU[0], clip(x + log(rate / (1 - rate)) / exp(beta)))) / z

    def moments(of):
        m = mean(of)
        return {"mean": m, "sd": sqrt(mean(lambda t, b: (of(t, b) - m) ** 2))}

    tau = moments(lambda t, b: t)
    log2b = moments(lambda t, b: b / log(2))
    tau.update({k: root(lambda v: tau_below(v) - p, tau["mean"] - 4 * tau["sd"], tau["mean"] + 4 * tau["sd"]) for k, p in LEVELS.items()})
    s = log2b["sd"] * log(2)
    m = log2b["mean"] * log(2)
    log2b.update({k: root(lambda v: beta_below(v) - p, m - 4 * s, m + 4 * s) / log(2) for k, p in LEVELS.items()})
    rates, exposures = [], []
    P = lambda t, b, x: 1 / (1 + exp(-exp(b) * (t - x)))
    for x in (mpf("1.72"), mpf("1.77"), mpf("1.84")):
        q = {}
        for k, p in LEVELS.items():
            mid = exp(m) * (tau["mean"] - x)
            eta = root(lambda e: below(1 / (1 + exp(-e)), x) - p, mid - 2, mid + 2)
            q[k] = 1 / (1 + exp(-eta))
        two = mean(lambda t, b: 1 - (1 - P(t, b, x)) ** 6 - 6 * P(t, b, x) * (1 - P(t, b, x)) ** 5)
        rates.append({"log2Seconds": x, "mean": mean(lambda t, b: P(t, b, x)), **q,
                      "atLeast1of3": mean(lambda t, b: 1 - (1 - P(t, b, x)) ** 3), "atLeast2of6": two, "atLeast2of6InBurstsOf3": two})
    for rate in (mpf("0.5"), mpf("0.8")):
        mid = tau["mean"] - log(rate / (1 - rate)) / exp(m)
        exposures.append({"rate": rate, **{k: root(lambda x: below(rate, x) - p, mid - 5 * tau["sd"], mid + 5 * tau["sd"]) for k, p in LEVELS.items()}, "outOfReach": mpf(0)})
    return {"logEvidence": log(z) - 186, "parameters": {"tau0": tau, "log2b": log2b}, "rates": rates, "exposures": exposures}


def plain(v):
    if isinstance(v, dict):
        return {k: plain(a) for k, a in v.items()}
    if isinstance(v, list):
        return [plain(a) for a in v]
    return float(mp.nstr(v, 12)) if isinstance(v, mpf) else v


def flat(v):
    return [b for a in (v.values() if isinstance(v, dict) else v) for b in flat(a)] if isinstance(v, (dict, list)) else [v]


coarse, fine = plain(solve(4)), plain(solve(5))      # 24 and 48 nodes each way
print("largest change from 24 to 48 nodes:", max(abs(a - b) / max(1, abs(b)) for a, b in zip(flat(coarse), flat(fine))))
case = {"name": "bliss-survivors", "table": "posterior.csv",
        "options": {"ceiling": "one", "floor": "0", "luck": "none", "tauPrior": {"mean": 1.8, "sd": 1}, "steepnessPrior": {"median": 30, "logSd": 0.7}}, **fine}
with open("posterior.json", "w", newline="\n") as f:
    json.dump({"cases": [case]}, f, indent=1)
    f.write("\n")
