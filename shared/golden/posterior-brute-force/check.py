"""An independent, coarse check of expected.json by weighted random draws: nothing shared with brute_force.py but the model.
The lucks of days and bursts are drawn, a single frame's is averaged over 25 points; prints each number's distance from expected.json in Monte Carlo standard errors.
Run: python3 check.py [case ...]"""
import csv
import json
import os
import sys
import numpy as np
from scipy.stats import beta, norm

sys.dont_write_bytecode = True
os.chdir(os.path.dirname(os.path.abspath(__file__)))
DRAWS, BATCHES = 200_000, 12


def rows_of(case):
    with open(case["table"]) as f:
        for r in csv.DictReader(f):
            yield np.log2(float(r["exposure_s"])), int(r["frames"]), int(r["keepers"]), r.get("session") or "", r.get("burst") or ""


NODE, NODE_WEIGHT = np.polynomial.hermite_e.hermegauss(25)
NODE_WEIGHT = NODE_WEIGHT / NODE_WEIGHT.sum()


def half_normal(e, scale, rng):
    """Draws of an sd, half of them from its prior, half from a folded normal law around its posterior; log of prior over proposal."""
    mid, wide = e["mean"], 1.5 * e["sd"]
    s = np.abs(np.where(rng.random(DRAWS) < 0.5, rng.normal(0, scale, DRAWS), rng.normal(mid, wide, DRAWS)))
    prior = 2 * norm.pdf(s, 0, scale)
    return s, np.log(prior / (prior / 2 + (norm.pdf(s, mid, wide) + norm.pdf(-s, mid, wide)) / 2))


def share(e, flip, a, b, rng):
    """The same for a loss or a floor, with a beta law of the posterior's moments."""
    mean, var = (1 - e["mean"] if flip else e["mean"]), (1.3 * e["sd"]) ** 2
    size = mean * (1 - mean) / var - 1
    fit, prior = beta(mean * size, (1 - mean) * size), beta(a, b)
    v = np.where(rng.random(DRAWS) < 0.5, prior.rvs(DRAWS, random_state=rng), fit.rvs(DRAWS, random_state=rng))
    return v, np.log(prior.pdf(v) / (prior.pdf(v) / 2 + fit.pdf(v) / 2))


def normal(e, mean, sd, rng, unit=1.0):
    wide = 1.5 * e["sd"] * unit
    v = rng.normal(e["mean"] * unit, wide, DRAWS)
    return v, norm.logpdf(v, mean, sd) - norm.logpdf(v, e["mean"] * unit, wide)


def draw(case, rng):
    o, p, n = case["options"], case["parameters"], DRAWS
    luck, s = o["luck"] == "normal", o["steepnessPrior"]
    tau, logw = normal(p["tau0"], o["tauPrior"]["mean"], o["tauPrior"]["sd"], rng)
    ln_b, more = normal(p["log2b"], np.log(s["median"]), s["logSd"], rng, np.log(2))
    b, logw = np.exp(ln_b), logw + more
    c, g = np.full(n, 1.0 if o["ceiling"] in ("one", "estimated") else float(o["ceiling"])), np.zeros(n)
    if o["ceiling"] == "estimated":
        loss, more = share(p["ceiling"], True, 1.2, 38.8, rng)
        c, logw = 1 - loss, logw + more
    if o["floor"] == "estimated":
        g, more = share(p["floor"], False, 1, 49, rng)
        logw += more
    else:
        g += float(o["floor"])
    ss, sb = np.zeros(n), np.zeros(n)
    if luck:
        ss, more = half_normal(p["sessionLuck"], 0.35, rng)
        sb, again = half_normal(p["burstLuck"], 0.25, rng)
        logw += more + again
    chance = lambda half, x: g + (c - g) / (1 + np.exp(-np.clip(b * (half - x), -700, 700)))
    averaged = lambda half, x: sum(w * chance(half + sb * z, x) for z, w in zip(NODE, NODE_WEIGHT)) if luck else chance(half, x)
    sessions, bursts = {}, {}
    for x, frames, keepers, session, burst in rows_of(case):
        if session not in sessions:
            sessions[session] = tau + ss * rng.standard_normal(n)
        if burst and burst not in bursts:
            bursts[burst] = rng.standard_normal(n)
        rate = chance(sessions[session] + sb * bursts[burst], x) if burst else averaged(sessions[session], x)
        logw += keepers * np.log(rate) + (frames - keepers) * np.log1p(-rate)
    weight = np.exp(logw)
    day = tau + ss * rng.standard_normal(n)
    values = {"tau0": tau, "log2b": np.log2(b), "ceiling": c, "floor": g, "sessionLuck": ss, "burstLuck": sb}
    pairs = []
    for name, e in case["parameters"].items():
        pairs.append((e["mean"], values[name]))
        pairs += [(q, (values[name] <= e[k]).astype(float)) for k, q in (("q025", 0.025), ("q50", 0.5), ("q975", 0.975))]
    for e in case["rates"]:
        x = e["log2Seconds"]
        one, two = (chance(day + sb * rng.standard_normal(n), x) for _ in range(2))
        pairs += [(e["mean"], one), (e["atLeast1of3"], 1 - (1 - one) ** 3), (e["atLeast2of6"], 1 - (1 - one) ** 6 - 6 * one * (1 - one) ** 5)]
        a0, b0 = (1 - one) ** 3, (1 - two) ** 3
        a1, b1 = 3 * one * (1 - one) ** 2, 3 * two * (1 - two) ** 2
        pairs.append((e["atLeast2of6InBurstsOf3"], 1 - a0 * b0 - a0 * b1 - a1 * b0))
        rate = averaged(day, x)
        pairs += [(q, (rate <= e[k]).astype(float)) for k, q in (("q025", 0.025), ("q50", 0.5), ("q975", 0.975))]
    return np.array([weight.mean()] + [(weight * v).mean() for _, v in pairs]), [p for p, _ in pairs], (weight ** 2).mean()


def main():
    cases = json.load(open("expected.json"))["cases"]
    for case in cases:
        if sys.argv[1:] and case["name"] not in sys.argv[1:]:
            continue
        rng = np.random.default_rng(20261125)
        runs = [draw(case, rng) for _ in range(BATCHES)]
        m = np.array([r[0] for r in runs])
        want = np.array([1.0, *runs[0][1]]) * np.exp(case["logEvidence"])     # of the weights' mean; the rest as ratios
        ratio = m[:, 1:].mean(0) / m[:, 0].mean()
        leave = np.array([np.delete(m, i, 0).mean(0) for i in range(BATCHES)])
        jack = leave[:, 1:] / leave[:, :1]
        se = np.sqrt((BATCHES - 1) / BATCHES * ((jack - jack.mean(0)) ** 2).sum(0))
        z = (ratio - np.array(runs[0][1])) / np.maximum(se, 1e-12)
        ze = (m[:, 0].mean() - want[0]) / (m[:, 0].std(ddof=1) / np.sqrt(BATCHES))
        print(f"{case['name']}: {len(z) + 1} numbers, largest distance {max(abs(z).max(), abs(ze)):.1f} standard errors, "
              f"effective draws {DRAWS * BATCHES * m[:, 0].mean() ** 2 / np.mean([r[2] for r in runs]):.0f}, evidence {ze:+.1f}", flush=True)


if __name__ == "__main__":
    main()
