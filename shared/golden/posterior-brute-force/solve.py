"""Solve one case twice, at the usual and at a finer resolution, and measure how far the reported numbers moved."""
import numpy as np
from brute_force import Posterior, SEARCH, USUAL
from answers import Answers, PROBABILITIES

TAIL = 1e-9     # ranges end where the marginal density has fallen to this share of its top


def first_ranges(case):
    o = case["options"]
    m, sd = o["tauPrior"]["mean"], o["tauPrior"]["sd"]
    med, log_sd = o["steepnessPrior"]["median"], o["steepnessPrior"]["logSd"]
    reach = 7 * sd + 2
    wide = (m - reach, m + reach)
    b = np.log(med)
    return {"theta": (wide[0] - 4, wide[1] + 4), "tau": wide, "t": (wide[0] - 4, wide[1] + 4),
            "beta": (b - 6.5 * log_sd, b + 6.5 * log_sd), "c": (0.0, 0.9), "g": (0.0, 0.6), "ss": (0.0, 2.2), "sb": (0.0, 1.6)}


def narrowed(y, density, lo, hi, pad):
    keep = np.nonzero(density > TAIL * density.max())[0]
    a, b = keep[0], keep[-1]
    left = lo if a - pad < 0 else max(lo, y[a - pad])
    right = hi if b + pad >= len(y) else min(hi, y[b + pad])
    return left, right


def search(case, extra=None):
    r = first_ranges(case)
    for _ in range(4):
        p = Posterior(case, SEARCH, r)
        new = dict(r)
        t = p.t
        new["tau"] = narrowed(t, p.tau_density, *r["tau"], 2)
        day = np.einsum("ijklt,ijkl->t", p.day_density, p.vol)
        new["t"] = narrowed(t, day, *r["t"], 2)
        new["t"] = (min(new["t"][0], new["tau"][0]), max(new["t"][1], new["tau"][1]))
        if p.theta_density is not None:
            new["theta"] = narrowed(p.theta, p.theta_density, *r["theta"], 2)
        else:
            new["theta"] = (new["tau"][0] - 4, new["tau"][1] + 4)   # beyond the reach of any session luck that matters
        for name, (axis, density) in p.marginals().items():
            if not axis.fixed:
                lo, hi = r[name]
                a, b = narrowed(axis.y, density, lo, hi, 1)
                new[name] = (lo if name in ("c", "g", "ss", "sb") and lo == 0 and a <= axis.y[2] else a, b)
        r = new
    return r


def movement(fine, coarse, answers):
    """Largest differences between the two resolutions, in the units of the accuracy wanted."""
    out = {"logEvidence": abs(fine["logEvidence"] - coarse["logEvidence"]), "meanInSd": 0.0, "sdRelative": 0.0,
           "tailProbability": 0.0, "chance": 0.0}
    for name, a in fine["parameters"].items():
        b = coarse["parameters"][name]
        out["meanInSd"] = max(out["meanInSd"], abs(a["mean"] - b["mean"]) / a["sd"])
        out["sdRelative"] = max(out["sdRelative"], abs(a["sd"] / b["sd"] - 1))
        cdf = answers.tail(name)
        for k, q in PROBABILITIES.items():
            out["tailProbability"] = max(out["tailProbability"], abs(cdf(b[k]) - q))
    for a, b in zip(fine["rates"], coarse["rates"]):
        for k in ("mean", "atLeast1of3", "atLeast2of6", "atLeast2of6InBurstsOf3"):
            out["chance"] = max(out["chance"], abs(a[k] - b[k]))
        for k, q in PROBABILITIES.items():
            out["tailProbability"] = max(out["tailProbability"], abs(answers.below(b[k], a["log2Seconds"]) - q))
    for a, b in zip(fine["exposures"], coarse["exposures"]):
        for k, q in PROBABILITIES.items():
            if k in b:
                out["tailProbability"] = max(out["tailProbability"], abs(answers.below(a["rate"], b[k]) - q))
    return out


def solve(case, usual=USUAL, factor=1.15):
    ranges, usual = search(case), usual.with_changes(case.get("grids", {}))
    first = Answers(Posterior(case, SEARCH, ranges)).report()
    coarse = Answers(Posterior(case, usual, ranges), first).report()
    answers = Answers(Posterior(case, usual.finer(factor), ranges), coarse)
    fine = answers.report()
    return fine, movement(fine, coarse, answers), ranges
