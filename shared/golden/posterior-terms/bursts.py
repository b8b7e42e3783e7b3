"""Frames in bursts with luck: the first frame of each burst stands out, and subjects move by name."""
import numpy as np
from grids import LOG_B, PROBABILITIES, logistic

TAU0 = (np.log2(1 / 50) + 0.3, 2)
MOTION = {"slight": (-0.7, 0.7), "brisk": (-2, 1)}
FIRST, SESSION, BURST = (-0.2, 0.4), 0.35, 0.25
CEILING = 0.97
# By motion and log2 seconds: whether the first frame was a keeper, and keepers of the two that followed.
SHOT = {"still": {-8: (1, 2), -7: (1, 2), -6: (0, 2), -5: (1, 1), -4: (0, 1), -3: (0, 0), -2: (0, 0)},
        "slight": {-8: (1, 2), -7: (1, 2), -6: (1, 1), -5: (0, 1), -4: (0, 0)},
        "brisk": {-10: (1, 2), -9: (1, 2), -8: (0, 1), -7: (1, 1), -6: (0, 0), -5: (0, 0)}}


def grid(law, count, reach=5.0):
    x = np.linspace(law[0] - reach * law[1], law[0] + reach * law[1], count)
    return x, np.exp(-0.5 * ((x - law[0]) / law[1]) ** 2) / (law[1] * np.sqrt(2 * np.pi)) * (x[1] - x[0])


def half_normal(scale, count):
    y, w = np.polynomial.legendre.leggauss(count)
    s = 5 * scale * (y + 1) / 2
    return s, 5 * scale * w / 2 * np.sqrt(2 / np.pi) / scale * np.exp(-0.5 * (s / scale) ** 2)


def burst_likelihoods(u, b, first, sd):
    """By (keeper of the first, keepers of two): the mean over a burst's luck at distances u = half point less exposure."""
    z = np.linspace(-6, 6, 49)
    w = np.exp(-0.5 * z**2)
    w /= w.sum()
    at = u[:, None] + sd * z[None, :]
    later, first = CEILING * logistic(b * at)[0], CEILING * logistic(b * (at + first))[0]
    head, tail = {1: first, 0: 1 - first}, {2: later**2, 1: later * (1 - later), 0: (1 - later) ** 2}   # which of two is known
    return {(h, t): (head[h] * tail[t]) @ w for h in head for t in tail}


def motion_and_first_frame(n):
    """T = tau0 plus the one day's luck is what the frames see."""
    lb, lb_mass = grid(LOG_B, n(21))
    first, first_mass = grid(FIRST, n(21))
    burst, burst_mass = half_normal(BURST, n(10))
    session, session_mass = half_normal(SESSION, n(14))
    t = np.arange(-10.0, 1.0, 0.05)
    shifts = {m: grid(law, n(41)) for m, law in MOTION.items()}
    u = np.arange(-30.0, 30.0, 0.01)

    # prior density of T given each session sd; posterior of tau0 given T and that sd is normal
    spread = np.sqrt(TAU0[1] ** 2 + session**2)
    t_prior = np.exp(-0.5 * ((t[:, None] - TAU0[0]) / spread) ** 2) / (spread * np.sqrt(2 * np.pi)) * 0.05
    by_t = t_prior @ session_mass

    post = np.zeros((len(lb), len(first), len(burst), len(t)))
    motion = {m: np.zeros((len(t), len(x))) for m, (x, _) in shifts.items()}      # joint with T
    for i, b in enumerate(np.exp(lb)):
        for j, f in enumerate(first):
            for k, s in enumerate(burst):
                table = burst_likelihoods(u, b, f, s)
                like = lambda m, half: np.exp(sum(np.interp(half - x, u, np.log(np.maximum(table[p], 1e-300))) for x, p in SHOT[m].items()))
                still = like("still", t)
                parts = {m: like(m, t[:, None] + x[None, :]) * mass for m, (x, mass) in shifts.items()}
                sums = {m: p.sum(1) for m, p in parts.items()}
                weight = lb_mass[i] * first_mass[j] * burst_mass[k]
                post[i, j, k] = weight * still * sums["slight"] * sums["brisk"]
                motion["slight"] += (weight * still * sums["brisk"] * by_t)[:, None] * parts["slight"]
                motion["brisk"] += (weight * still * sums["slight"] * by_t)[:, None] * parts["brisk"]
    evidence = (post * by_t).sum()
    post /= evidence
    on_t = post.sum((0, 1, 2))                      # times the prior of T: its posterior
    joint = on_t[:, None] * t_prior * session_mass  # T, session sd
    shrink = TAU0[1] ** 2 / (TAU0[1] ** 2 + session**2)
    middle, sd = TAU0[0] + shrink * (t[:, None] - TAU0[0]), session * np.sqrt(shrink)

    from scipy.special import ndtr
    from scipy.optimize import brentq

    def mixture(weights, means, sds):
        w, m, s = (np.ravel(a) for a in np.broadcast_arrays(weights, means, sds))
        keep = w > 1e-10
        w, m, s = w[keep] / w[keep].sum(), m[keep], s[keep]
        mean = (w * m).sum()
        cdf = lambda q: (w * ndtr((q - m) / s)).sum()
        low, high = (m - 8 * s).min(), (m + 8 * s).max()
        return {"mean": mean, "sd": np.sqrt((w * (s**2 + (m - mean) ** 2)).sum()), **{k: brentq(lambda q: cdf(q) - p, low, high) for k, p in PROBABILITIES.items()}}

    def lattice(x, mass):
        from scipy.interpolate import CubicSpline
        mass = mass / mass.sum()
        mean = (mass * x).sum()
        cdf = CubicSpline(x, mass / (x[1] - x[0])).antiderivative()
        fine = np.linspace(x[0], x[-1], 20001)
        return {"mean": mean, "sd": np.sqrt((mass * (x - mean) ** 2).sum()), **{k: float(np.interp(p, cdf(fine) / cdf(x[-1]), fine)) for k, p in PROBABILITIES.items()}}

    def nodes(x, mass):
        """A sd at Gauss-Legendre nodes: its density is a polynomial through them."""
        from scipy.interpolate import BarycentricInterpolator
        y, w = np.polynomial.legendre.leggauss(len(x))
        mass = mass / mass.sum()
        mean = (mass * x).sum()
        fine = np.linspace(-1, 1, 20001)
        below = np.cumsum(BarycentricInterpolator(y, mass / w)(fine))
        value = x[0] + (fine - y[0]) / (y[-1] - y[0]) * (x[-1] - x[0])
        return {"mean": mean, "sd": np.sqrt((mass * (x - mean) ** 2).sum()), **{k: float(np.interp(p, below / below[-1], value)) for k, p in PROBABILITIES.items()}}

    weighted = post * by_t
    effects = {m: lattice(x, motion[m].sum(0)) for m, (x, _) in shifts.items()}
    out = {"logEvidence": float(np.log(evidence)), "parameters": {
        "tau0": mixture(joint, middle, sd),
        "log2b": lattice(lb / np.log(2), weighted.sum((1, 2, 3))),
        **{f"subjectMotion={m}": e for m, e in effects.items()},
        "firstFrame": lattice(first, weighted.sum((0, 2, 3))),
        "sessionLuck": nodes(session, joint.sum(0)),
        "burstLuck": nodes(burst, weighted.sum((0, 1, 3)))}}
    out["effects"] = [{"term": f"subjectMotion={m}", "at": {}, **e} for m, e in sorted(effects.items())] + [{"term": "firstFrame", "at": {}, **out["parameters"]["firstFrame"]}]

    # One later frame on another day: means over all luck. Of a still subject.
    z = np.linspace(-6, 6, 49)
    w = np.exp(-0.5 * z**2) / np.exp(-0.5 * z**2).sum()
    out["rates"] = []
    for place, x in ((2, -6.0), (2, -4.0), (1, -6.0)):
        mean = 0.0
        for i, b in enumerate(np.exp(lb)):
            for k, s in enumerate(burst):
                by_first = (post[i, :, k, :, None] * t_prior * session_mass)     # first, T, session sd
                for j, f in enumerate(first if place == 1 else [0.0]):
                    mass = by_first[j] if place == 1 else by_first.sum(0)
                    day_sd = np.sqrt(sd**2 + session**2 + s**2)                  # day and burst luck add to what is not known of tau0
                    at = middle[:, :, None] + day_sd[None, :, None] * z + f - x
                    mean += (mass * (CEILING * logistic(b * at)[0] @ w)).sum()
        out["rates"].append({"under": {"subject_motion": "still", "burst_position": place}, "log2Seconds": x, "mean": mean})

    table = []
    for m, bursts in SHOT.items():
        for x, (head, tail) in bursts.items():
            for place, keeper in ((1, head), (2, int(tail >= 1)), (3, int(tail == 2))):
                table.append({"exposure_s": 2.0**x, "frames": 1, "keepers": keeper, "criterion": "print", "focal_eq_mm": 50, "stabiliser_mode": "off", "subject_motion": m,
                              "session": "one", "burst": f"{m} {x}", "burst_position": place})
    return table, out
