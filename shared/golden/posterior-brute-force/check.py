"""An independent, coarse check of expected.json by weighted random draws: nothing shared with brute_force.py but the model.
Every luck is drawn, also each frame's; prints each number's distance from expected.json in Monte Carlo standard errors.
Run: python3 check.py [case ...]"""
import csv
import json
import os
import sys
import numpy as np

sys.dont_write_bytecode = True
os.chdir(os.path.dirname(os.path.abspath(__file__)))
DRAWS, BATCHES = 200_000, 12


def rows_of(case):
    with open(case["table"]) as f:
        for r in csv.DictReader(f):
            yield np.log2(float(r["exposure_s"])), int(r["frames"]), int(r["keepers"]), r.get("session") or "", r.get("burst") or ""


def draw(case, rng):
    o, n = case["options"], DRAWS
    luck = o["luck"] == "normal"
    post = case["parameters"]["tau0"]
    tau = rng.normal(post["mean"], 1.5 * post["sd"], n)
    prior = o["tauPrior"]
    logw = -0.5 * ((tau - prior["mean"]) / prior["sd"]) ** 2 - np.log(prior["sd"]) + 0.5 * ((tau - post["mean"]) / (1.5 * post["sd"])) ** 2 + np.log(1.5 * post["sd"])
    b = np.exp(rng.normal(np.log(o["steepnessPrior"]["median"]), o["steepnessPrior"]["logSd"], n))
    c = 1 - rng.beta(1.2, 38.8, n) if o["ceiling"] == "estimated" else np.full(n, 1.0 if o["ceiling"] == "one" else float(o["ceiling"]))
    g = rng.beta(1, 49, n) if o["floor"] == "estimated" else np.full(n, float(o["floor"]))
    ss, sb = (np.abs(rng.normal(0, s, n)) * luck for s in (0.35, 0.25))
    chance = lambda half, x: g + (c - g) / (1 + np.exp(-np.clip(b * (half - x), -700, 700)))
    sessions, bursts = {}, {}
    for x, frames, keepers, session, burst in rows_of(case):
        if session not in sessions:
            sessions[session] = tau + ss * rng.standard_normal(n)
        for i in range(frames):
            if burst and burst not in bursts:
                bursts[burst] = rng.standard_normal(n)
            w = bursts[burst] if burst else rng.standard_normal(n)
            p = chance(sessions[session] + sb * w, x)
            logw += np.log(p if i < keepers else 1 - p)
    weight = np.exp(logw)
    day = tau + ss * rng.standard_normal(n)
    values = {"tau0": tau, "log2b": np.log2(b), "ceiling": c, "floor": g, "sessionLuck": ss, "burstLuck": sb}
    pairs = []
    for name, e in case["parameters"].items():
        pairs.append((e["mean"], values[name]))
        pairs += [(q, (values[name] <= e[k]).astype(float)) for k, q in (("q025", 0.025), ("q50", 0.5), ("q975", 0.975))]
    node, nw = np.polynomial.hermite_e.hermegauss(25)
    nw = nw / nw.sum()
    for e in case["rates"]:
        x = e["log2Seconds"]
        one, two = (chance(day + sb * rng.standard_normal(n), x) for _ in range(2))
        pairs += [(e["mean"], one), (e["atLeast1of3"], 1 - (1 - one) ** 3), (e["atLeast2of6"], 1 - (1 - one) ** 6 - 6 * one * (1 - one) ** 5)]
        a0, b0 = (1 - one) ** 3, (1 - two) ** 3
        a1, b1 = 3 * one * (1 - one) ** 2, 3 * two * (1 - two) ** 2
        pairs.append((e["atLeast2of6InBurstsOf3"], 1 - a0 * b0 - a0 * b1 - a1 * b0))
        rate = sum(w * chance(day + sb * z, x) for z, w in zip(node, nw))
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
