"""Recompute the expected numbers:  python3 make.py [case ...]   (all cases without names; about a minute each on one core)."""
import json
import os
import platform
import sys
import time

sys.dont_write_bytecode = True

os.chdir(os.path.dirname(os.path.abspath(__file__)))
from solve import solve
from cases import CASES
import numpy
import scipy

CERTIFICATE = "certificate.json"


def rounded(v):
    if isinstance(v, dict):
        return {k: rounded(a) for k, a in v.items()}
    if isinstance(v, list):
        return [rounded(a) for a in v]
    return float(f"{v:.9g}") if isinstance(v, float) else v


def write_table(case):
    labels = [name for i, name in ((3, "session"), (4, "burst")) if any(r[i] for r in case["rows"])]
    with open(case["name"] + ".csv", "w", newline="\n") as f:
        f.write(",".join(["exposure_s", "frames", "keepers", *labels]) + "\n")
        for r in case["rows"]:
            f.write(",".join([repr(r[0]), str(r[1]), str(r[2]), *(r[{"session": 3, "burst": 4}[a]] or "" for a in labels)]) + "\n")


def prepared(case):
    sessions = {}
    for seconds, frames, keepers, session, burst in case["rows"]:
        sessions.setdefault(session, []).append((float(numpy.log2(seconds)), frames, keepers, burst))
    return {**case, "sessions": list(sessions.values())}


def run(case):
    begun = time.time()
    found, moved, _ = solve(prepared(case))
    entry = {"name": case["name"], "about": case["about"], "table": case["name"] + ".csv", "options": case["options"], **rounded(found)}
    print(case["name"], f"{time.time() - begun:.0f} s", {k: f"{v:.1e}" for k, v in moved.items()}, flush=True)
    return entry, {k: float(f"{v:.1e}") for k, v in moved.items()}


def load(path, empty):
    return json.load(open(path)) if os.path.exists(path) else empty


def save(path, value):
    with open(path + ".new", "w", newline="\n") as f:
        json.dump(value, f, indent=1, ensure_ascii=False)
        f.write("\n")
    os.replace(path + ".new", path)


if __name__ == "__main__":
    wanted = [c for c in CASES if not sys.argv[1:] or c["name"] in sys.argv[1:]]
    for c in wanted:
        write_table(c)
    for c in wanted:
        entry, moved = run(c)
        old = load("expected.json", {"cases": []})
        kept = {e["name"]: e for e in old["cases"]}
        kept[c["name"]] = entry
        save("expected.json", {"cases": [kept[n["name"]] for n in CASES if n["name"] in kept]})
        certificate = load(CERTIFICATE, {})
        certificate.setdefault("convergence", {})[c["name"]] = moved
        certificate.setdefault("made-by", {})["program"] = f"Python {platform.python_version()}, numpy {numpy.__version__}, scipy {scipy.__version__}"
        certificate["convergence"] = {n["name"]: certificate["convergence"][n["name"]] for n in CASES if n["name"] in certificate["convergence"]}
        save(CERTIFICATE, certificate)
