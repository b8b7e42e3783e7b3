"""Several curves that share one ceiling: given the ceiling the curves are independent, so each is summed by the code of
../posterior-brute-force on common nodes of the ceiling, weighted by the other curves' evidence at these nodes.
Run: python3 make.py [case ...] (numpy, scipy; some minutes)."""
import json
import os
import sys

sys.dont_write_bytecode = True
HERE = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, os.path.join(HERE, "..", "posterior-brute-force"))
os.chdir(HERE)
import numpy as np
from brute_force import Posterior, SEARCH, USUAL
from answers import Answers
from solve import movement, search

OPTIONS = {"ceiling": "estimated", "floor": "0", "luck": "normal", "tauPrior": {"mean": -5.6, "sd": 2}, "steepnessPrior": {"median": 1.6, "logSd": 0.35}}
GRIDS = USUAL.with_changes({"c": 44, "t": 320, "beta": 46})
CASES = [
    {"name": "two-setups", "about": "the first setup shows a ceiling, which the second, with few frames, shares",
     "options": OPTIONS, "at": [-7.5, -6.0, -4.5],
     "curves": {"fifty": (-8, 12, [10, 11, 10, 11, 7, 2]), "long": (-9, 3, [3, 2, 1, 0])}},
    {"name": "three-setups-no-luck", "about": "three setups without luck, one of them kept throughout",
     "options": {**OPTIONS, "luck": "none"}, "at": [-7.5, -6.0, -4.5],
     "curves": {"fifty": (-7, 6, [6, 5, 5, 3, 0]), "long": (-9, 6, [6, 5, 2, 1, 0]), "wide": (-6, 6, [6, 6, 6])}},
]


def rounded(v):
    if isinstance(v, dict):
        return {k: rounded(a) for k, a in v.items()}
    if isinstance(v, list):
        return [rounded(a) for a in v]
    return float(f"{v:.9g}") if isinstance(v, float) else v


def load(path, empty):
    return json.load(open(path)) if os.path.exists(path) else empty


def save(path, value):
    with open(path, "w", newline="\n") as f:
        json.dump(value, f, indent=1, ensure_ascii=False)
        f.write("\n")


def solve(case, res, ranges, before):
    curves = {}
    for name, (first, frames, keepers) in case["curves"].items():
        rows = [(float(first + i), frames, k, None) for i, k in enumerate(keepers)]
        curves[name] = {"options": case["options"], "sessions": [rows], "at": case["at"], "rates": [0.5, 0.8]}
    if ranges is None:
        ranges = {name: search(c) for name, c in curves.items()}
        top = max(r["c"][1] for r in ranges.values())
        for r in ranges.values():
            r["c"] = (0.0, top)
    given, common = {}, None
    for name, c in curves.items():
        p = Posterior(c, res, ranges[name])
        z, top = p.z_c
        given[name] = (z / z.max(), top + np.log(z.max()))
        common = p.c
    joint = np.prod([z for z, _ in given.values()], axis=0)
    log_evidence = sum(t for _, t in given.values()) + np.log((joint[:, 0] * common.prior * common.w).sum())
    out, answers = {}, {}
    for name, c in curves.items():
        others = np.prod([z for n, (z, _) in given.items() if n != name], axis=0)
        answers[name] = Answers(Posterior(c, res, ranges[name], others), before and before["curves"][name])
        out[name] = answers[name].report()
    return {"logEvidence": log_evidence, "curves": out}, answers, ranges


def write_table(case):
    with open(case["name"] + ".csv", "w", newline="\n") as f:
        f.write("setup,exposure_s,frames,keepers\n")
        for name, (first, frames, keepers) in case["curves"].items():
            for i, k in enumerate(keepers):
                f.write(f"{name},{2.0 ** (first + i)!r},{frames},{k}\n")


def entry(case):
    first, _, ranges = solve(case, SEARCH, None, None)
    coarse, _, _ = solve(case, GRIDS, ranges, first)
    fine, answers, _ = solve(case, GRIDS.finer(1.15), ranges, coarse)
    moved = [movement(fine["curves"][n], coarse["curves"][n], answers[n]) for n in case["curves"]]
    worst = {k: float(f"{max(m[k] for m in moved):.1e}") for k in moved[0]}
    worst["logEvidence"] = float(f"{abs(fine['logEvidence'] - coarse['logEvidence']):.1e}")
    print(case["name"], worst, flush=True)
    curves = [{"key": {"setup": n}, **rounded({k: v for k, v in report.items() if k != "logEvidence"})} for n, report in fine["curves"].items()]
    return {"name": case["name"], "about": case["about"], "table": case["name"] + ".csv", "options": case["options"],
            "logEvidence": rounded(fine["logEvidence"]), "curves": curves}, worst


def main():
    for case in CASES:
        if sys.argv[1:] and case["name"] not in sys.argv[1:]:
            continue
        write_table(case)
        found, moved = entry(case)
        known = {c["name"]: c for c in load("expected.json", {"cases": []})["cases"]} | {case["name"]: found}
        save("expected.json", {"cases": [known[c["name"]] for c in CASES if c["name"] in known]})
        certificate = load("certificate.json", {})
        certificate["convergence"] = certificate.get("convergence", {}) | {case["name"]: moved}
        save("certificate.json", certificate)


if __name__ == "__main__":
    main()
