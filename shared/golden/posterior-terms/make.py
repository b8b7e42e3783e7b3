"""Posteriors of curves with terms, invented tables: python3 make.py [case ...]"""
import json
import sys
import numpy as np
from bursts import motion_and_first_frame
from grids import PROBABILITIES, ceilings, logistic, solve

TAU0 = {"print": (np.log2(1 / 50) + 0.3, 2), "pixel": (np.log2(1 / 50) - 2, 2)}
FOCAL, CLOSER, RATED_STOP, HANDS = (1.1, 0.25), (1.5, 0.5), (0.6, 0.3), (np.log2(3), 0.6 / np.log(2))
ALL_RATES = (0.5, 0.8)


def ladder(slowest_first, keepers, frames=4):
    return [(float(slowest_first + i), frames, k) for i, k in enumerate(keepers)]


def together(*halves):
    """Independent blurs add as squares."""
    return -0.5 * np.log2(sum(2.0 ** (-2 * t) for t in halves))


def report(cloud, finish):
    """Means and sds from the grid, quantiles from points spread over its cells, drawn together by as much as that adds to the sd."""
    exact, spread = finish(cloud), dict(leaves(finish(cloud.spread())))
    for path, a in leaves(exact):
        if not a.pop("smooth", path.endswith("/ceiling")):
            b = spread[path]
            a.update({q: a["mean"] + (b[q] - b["mean"]) * a["sd"] / b["sd"] for q in PROBABILITIES})
    return exact


def numbers(cloud, effects, rates, names):
    """effects: (term, at, values); rates: (conditions, half point, steepness, log2 seconds)."""
    c = cloud.v["ceiling"]
    out = {"parameters": {n: cloud.summary(v) for n, v in names.items()}, "effects": [], "rates": []}
    if cloud.steps and len(np.unique(c)) > 1:
        out["parameters"]["ceiling"] = cloud.ceiling()
    for term, at, value in effects:
        out["effects"].append({"term": term, "at": at, **cloud.summary(value)})
    for under, t, b, x in rates:
        rate = c * logistic(b * (t - x))[0]
        out["rates"].append({"under": under, "log2Seconds": x, **cloud.summary(rate)})
    return out


def usual(cloud, **others):
    return {"tau0": cloud.v["tau0"], "log2b": cloud.v["logb"] / np.log(2), **others}


def far_stabiliser(n, ceiling=0.97, off=(4, 4, 3, 2, 1, 0, 0), on=(4, 4, 3, 3, 2, 1, 0)):
    rows = {0: ladder(-8, off), 4: ladder(-6, on)}
    half = lambda stops: lambda v: v["tau0"] + v["e"] * stops
    cloud = solve({"tau0": TAU0["print"], "e": RATED_STOP}, [(half(s), r) for s, r in rows.items()], ceiling,
                  {"logb": n(61 if ceiling else 41), "tau0": n(51), "e": n(51)})
    under = lambda s: {"stabiliser_mode": "lens" if s else "off", "stabiliser_stops": s, "magnification": 0}

    def finish(cloud):
        b = np.exp(cloud.v["logb"])
        return numbers(cloud, [("stabiliser=lens", {"stabiliser_stops": 4}, 4 * cloud.v["e"])],
                      [(under(s), half(s)(cloud.v), b, x) for s, x in [(0, -6.0), (0, -4.0), (4, -5.0), (4, -2.0)]],
                      usual(cloud, stabiliser=cloud.v["e"]))
    table = [{"exposure_s": 2.0**x, "frames": f, "keepers": k, "criterion": "print", "focal_eq_mm": 50, **under(s)} for s, r in rows.items() for x, f, k in r]
    return table, cloud, finish


def close_stabiliser(n):
    """Lens 100 mm: its focal length is the same in all frames, so that tau0 stands for it too."""
    rows = {(0.02, 0): ladder(-8, (4, 4, 3, 2, 1, 0, 0)), (0.02, 4): ladder(-7, (4, 4, 4, 3, 2, 1, 0)),
            (1, 0): ladder(-10, (4, 3, 2, 1, 1, 0, 0)), (1, 4): ladder(-10, (4, 4, 3, 2, 1, 0, 0))}

    def half(m, stops):
        return lambda v: together(v["tau0"] - v["m"] * np.log2(1 + m) + v["e"] * stops, np.log2(0.030 / m) - v["hand"]) if m else v["tau0"] + v["e"] * stops
    tau0 = (TAU0["print"][0] - FOCAL[0], np.hypot(TAU0["print"][1], FOCAL[1]))
    cloud = solve({"tau0": tau0, "e": RATED_STOP, "m": CLOSER, "hand": HANDS}, [(half(*k), r) for k, r in rows.items()], 0.97,
                  {"logb": n(31), "tau0": n(33), "e": n(31), "m": n(27), "hand": n(33)})
    under = lambda m, s: {"stabiliser_mode": "lens" if s else "off", "stabiliser_stops": s, "magnification": m}

    def finish(cloud):
        v, b = cloud.v, np.exp(cloud.v["logb"])
        effects = [("stabiliser=lens", {"stabiliser_stops": 4, "magnification": m}, half(m, 4)(v) - half(m, 0)(v)) for m in (0.02, 1)]
        effects.append(("magnification", {"magnification": 1}, half(1, 0)(v) - half(0, 0)(v)))
        rates = [(under(m, s), half(m, s)(v), b, x) for m, s, x in [(0.02, 0, -6.0), (0.02, 4, -4.0), (1, 0, -8.0), (1, 4, -8.0), (0.3, 4, -6.0)]]
        return numbers(cloud, effects, rates, usual(cloud, stabiliser=v["e"], magnification=v["m"], log2HandSpeed=v["hand"]))
    table = [{"exposure_s": 2.0**x, "frames": f, "keepers": k, "criterion": "print", "focal_eq_mm": 100, **under(*c)} for c, r in rows.items() for x, f, k in r]
    return table, cloud, finish


def subject_speed(n):
    rows = {0: ladder(-9, (4, 4, 3, 2, 1, 0, 0)), 20: ladder(-13, (4, 4, 3, 2, 1, 0)), 100: ladder(-15, (4, 3, 2, 1, 0, 0))}
    m, blur = 0.5, 0.004

    def half(speed):
        motions = [np.log2(blur / (m * speed))] if speed else []
        return lambda v: together(v["tau0"] - v["m"] * np.log2(1 + m), np.log2(blur / m) - v["hand"], *motions)
    cloud = solve({"tau0": TAU0["pixel"], "m": CLOSER, "hand": HANDS}, [(half(s), r) for s, r in rows.items()], 0.97,
                  {"logb": n(61), "tau0": n(51), "m": n(25), "hand": n(51)})
    under = lambda s: {"subject_speed_mm_s": s}

    def finish(cloud):
        v, b = cloud.v, np.exp(cloud.v["logb"])
        effects = [("subjectSpeed", {"subject_speed_mm_s": 100, "magnification": m}, half(100)(v) - half(0)(v))]
        rates = [(under(s), half(s)(v), b, x) for s, x in [(0, -8.0), (20, -11.0), (50, -12.0), (100, -14.0)]]
        return numbers(cloud, effects, rates, usual(cloud, magnification=v["m"], log2HandSpeed=v["hand"]))
    table = [{"exposure_s": 2.0**x, "frames": f, "keepers": k, "criterion": "pixel", "pixel_um": 4, "focal_eq_mm": 50, "stabiliser_mode": "off", "magnification": m, **under(s)}
             for s, r in rows.items() for x, f, k in r]
    return table, cloud, finish


def number_and_labels(n):
    """Labels shift by levels, normal(0, 1) each, less their mean: in two coordinates at right angles to the mean."""
    winds, span = (0, 2, 4, 8), 8
    axes = {"two hands": (1 / np.sqrt(2), 1 / np.sqrt(6)), "one hand": (-1 / np.sqrt(2), 1 / np.sqrt(6)), "strap": (0, -2 / np.sqrt(6))}
    keepers = {("two hands", 0): (3, 3, 2, 1, 0), ("two hands", 4): (3, 2, 2, 1, 0), ("one hand", 2): (3, 2, 1, 0, 0), ("one hand", 8): (2, 1, 0, 0, 0),
               ("strap", 0): (3, 3, 3, 1, 1), ("strap", 8): (3, 2, 1, 1, 0)}
    rows = {c: ladder(-8, k, 3) for c, k in keepers.items()}
    shift = lambda grip: lambda v: axes[grip][0] * v["d1"] + axes[grip][1] * v["d2"]
    half = lambda grip, wind: lambda v: v["tau0"] + v["wind"] * (wind - span / 2) + shift(grip)(v)
    cloud = solve({"tau0": TAU0["print"], "wind": (0, 1.5 / span), "d1": (0, 1), "d2": (0, 1)}, [(half(*c), r) for c, r in rows.items()], 0.97,
                  {"logb": n(31), "tau0": n(29), "wind": n(29), "d1": n(29), "d2": n(29)})
    under = lambda c: {"grip": c[0], "wind": c[1]}

    def finish(cloud):
        v, b = cloud.v, np.exp(cloud.v["logb"])
        effects = [("wind", {}, v["wind"])] + [(f"grip={g}", {}, shift(g)(v) - shift("one hand")(v)) for g in ("strap", "two hands")]
        rates = [(under(c), half(*c)(v), b, x) for c, x in [(("two hands", 0), -6.0), (("one hand", 8), -7.0), (("strap", 4), -5.0)]]
        return numbers(cloud, effects, rates, usual(cloud, wind=v["wind"], **{f"grip={g}": shift(g)(v) for g in axes}))
    table = [{"exposure_s": 2.0**x, "frames": f, "keepers": k, "criterion": "print", "focal_eq_mm": 50, "stabiliser_mode": "off", **under(c)}
             for c, r in rows.items() for x, f, k in r]
    return table, cloud, finish


def product_with_exposure(n):
    rows = {0.4: ladder(-8, (5, 5, 4, 3, 1, 0), 5), 1.0: ladder(-8, (5, 4, 4, 3, 2, 2), 5)}
    half = lambda kg: lambda v: v["tau0"] + v["kg"] * (kg - 0.7)
    steeper = lambda kg: lambda v: v["steep"] * (kg - 0.7)
    cloud = solve({"tau0": TAU0["print"], "kg": (0, 1.5 / 0.6), "steep": (0, 0.3 / 0.6)}, [(half(k), r) for k, r in rows.items()], None,
                  {"logb": n(41), "tau0": n(31), "kg": n(31), "steep": n(21)}, [steeper(k) for k in rows])
    table = [{"exposure_s": 2.0**x, "frames": f, "keepers": k, "criterion": "print", "focal_eq_mm": 50, "stabiliser_mode": "off", "kg": kg} for kg, r in rows.items() for x, f, k in r]

    def finish(cloud):
        v = cloud.v
        b = lambda kg: np.exp(v["logb"] + steeper(kg)(v))
        rates = [({"kg": k}, half(k)(v), b(k), x) for k, x in [(0.4, -6.0), (0.4, -4.0), (1.0, -6.0), (1.0, -4.0), (0.7, -5.0)]]
        out = numbers(cloud, [], rates, usual(cloud, kg=v["kg"], **{"log2Exposure×kg": v["steep"]}))
        for_rate = lambda kg: half(kg)(v) - np.log(0.6 / (v["ceiling"] - 0.6)) / b(kg)
        out["changes"] = [{"from": {"kg": 0.4}, "to": {"kg": 1.0}, "rate": 0.6, **cloud.summary(for_rate(1.0) - for_rate(0.4))}]
        return out
    return table, cloud, finish


def one_curve(make):
    def whole(n):
        table, cloud, finish = make(n)
        return table, {"logEvidence": cloud.log_evidence, **report(cloud, finish)}
    return whole


def shared_ceiling(n):
    sides = {"long": far_stabiliser(n, None, (4, 4, 3, 2, 1, 0, 0), (4, 3, 3, 3, 2, 1, 0)), "short": far_stabiliser(n, None, (3, 4, 3, 3, 1, 1, 0), (4, 3, 4, 2, 3, 1, 1))}
    given = {s: cloud.by_ceiling for s, (_, cloud, _) in sides.items()}
    nodes, prior = ceilings(None)
    joint = np.logaddexp.reduce(sum(given.values()) - np.log(prior))
    curves = []
    for side, (table, cloud, finish) in sides.items():
        other = sum(g for s, g in given.items() if s != side) - np.log(prior)
        factor = np.exp(other - other.max())[np.searchsorted(-nodes, -cloud.v["ceiling"])]
        curves.append({"key": {"setup": side}, **report(cloud.reweighed(factor), finish)})
    return [{"setup": s, **row} for s, (table, _, _) in sides.items() for row in table], {"logEvidence": joint, "curves": curves}


CASES = {
    "far-stabiliser": ({"ceiling": "0.97", "luck": "none"}, one_curve(far_stabiliser)),
    "close-stabiliser": ({"ceiling": "0.97", "luck": "none"}, one_curve(close_stabiliser)),
    "subject-speed": ({"ceiling": "0.97", "luck": "none"}, one_curve(subject_speed)),
    "motion-and-first-frame": ({"ceiling": "0.97", "luck": "normal"}, motion_and_first_frame),
    "number-and-labels": ({"ceiling": "0.97", "luck": "none", "terms": ["wind", "grip"]}, one_curve(number_and_labels)),
    "product-with-exposure": ({"ceiling": "estimated", "luck": "none", "terms": ["kg"], "products": [["exposure", "kg"]]}, one_curve(product_with_exposure)),
    "shared-ceiling": ({"ceiling": "estimated", "luck": "none"}, shared_ceiling),
}


def leaves(node, path=""):
    if isinstance(node, dict):
        if "sd" in node:
            yield path, node
        for k, v in node.items():
            yield from leaves(v, f"{path}/{k}")
    elif isinstance(node, list):
        for i, v in enumerate(node):
            yield from leaves(v, f"{path}/{i}")


def movement(fine, coarse):
    """How far a finer grid moves the numbers: means and quantiles in sds, and sds."""
    out = {"meanInSd": 0, "sdRelative": 0, "quantileInSd": 0, "logEvidence": abs(fine["logEvidence"] - coarse["logEvidence"])}
    for (_, a), (_, b) in zip(leaves(fine), leaves(coarse)):
        out["meanInSd"] = max(out["meanInSd"], abs(a["mean"] - b["mean"]) / a["sd"])
        out["sdRelative"] = max(out["sdRelative"], abs(a["sd"] / b["sd"] - 1))
        out["quantileInSd"] = max([out["quantileInSd"]] + [abs(a[q] - b[q]) / a["sd"] for q in PROBABILITIES])
    return {k: float(f"{v:.1e}") for k, v in out.items()}


def rounded(node):
    if isinstance(node, dict):
        return {k: rounded(v) for k, v in node.items()}
    if isinstance(node, list):
        return [rounded(v) for v in node]
    return float(f"{float(node):.7g}") if isinstance(node, float) else node


def load(path, otherwise):
    try:
        return json.load(open(path))
    except FileNotFoundError:
        return otherwise


def save(path, content):
    json.dump(content, open(path, "w"), indent=1, ensure_ascii=False)
    open(path, "a").write("\n")


def main():
    for name, (options, make) in CASES.items():
        if sys.argv[1:] and name not in sys.argv[1:]:
            continue
        table, coarse = make(lambda k: k)
        _, fine = make(lambda k: int(1.2 * k))
        with open(name + ".csv", "w", newline="\n") as f:
            f.write(",".join(table[0]) + "\n" + "".join(",".join(map(str, row.values())) + "\n" for row in table))
        moved = movement(fine, coarse)
        print(name, moved, flush=True)
        found = {"name": name, "table": name + ".csv", "model": options, **rounded(fine)}
        known = {c["name"]: c for c in load("expected.json", {"cases": []})["cases"]} | {name: found}
        save("expected.json", {"cases": [known[c] for c in CASES if c in known]})
        certificate = load("certificate.json", {})
        certificate["convergence"] = certificate.get("convergence", {}) | {name: moved}
        save("certificate.json", certificate)


if __name__ == "__main__":
    main()
