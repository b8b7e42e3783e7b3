"""Reported numbers of a brute-force posterior: parameters, rates, chances of keepers and exposures on another day."""
import numpy as np
from scipy.interpolate import CubicSpline
from scipy.optimize import brentq
from brute_force import legendre, logistic, normal_nodes, power

PROBABILITIES = {"q025": 0.025, "q50": 0.5, "q975": 0.975}


def lookup(t, table, at):
    """Six-point Lagrange interpolation of table[..., t] at one point per leading index; constant outside."""
    h = t[1] - t[0]
    pos = (np.clip(at, t[0], t[-1]) - t[0]) / h
    left = np.clip(np.floor(pos).astype(int) - 2, 0, len(t) - 6)
    f = pos - left
    out = 0.0
    for a in range(6):
        weight = np.ones_like(f)
        for b in range(6):
            if b != a:
                weight = weight * (f - b) / (a - b)
        out = out + weight * np.take_along_axis(table, (left + a)[..., None], -1)[..., 0]
    return out


def rising_root(f, start):
    """Root of a rising function: bracket from the start outwards, then Brent."""
    a, fa, step = start, f(start), 0.002
    while True:
        b = a + (step if fa < 0 else -step)
        fb = f(b)
        if fa * fb <= 0:
            return brentq(f, min(a, b), max(a, b), xtol=1e-7, rtol=1e-9)
        if abs(b) > 700:
            raise ValueError(f"no root: {fb} at {b}")
        a, fa = b, fb
        step *= 4 if step < 0.5 else 1.5


class Answers:
    """before: the report at a coarser resolution, from which the searches for quantiles start."""

    def __init__(self, post, before=None):
        self.p, self.before = post, before
        self.z, self.w = normal_nodes(post.res.luck_step)
        # offset of the day's half point from the exposure at which the day's rate is a given share of (ceiling - floor):
        # offset as a function of logit(share), one spline for each (steepness, burst sd)
        self.inverse = []
        for b in post.beta.value:
            row = []
            for s in post.sb.value:
                if s == 0:
                    row.append(lambda logit, b=b: logit / b)
                    continue
                d = np.linspace(-1, 1, 3001) * (60 / b + 8 * s)
                up, down = (self.w @ q for q in logistic(b * (d[None, :] + s * self.z[:, None])))
                with np.errstate(divide="ignore"):
                    logit = np.log(up) - np.log(down)
                keep = np.abs(logit) < 650
                row.append(CubicSpline(logit[keep], d[keep]))
            self.inverse.append(row)

    # --- parameters
    def summary(self, axis, density, transform, slope):
        mass = axis.w * density
        value = transform(axis.y)
        mean = (mass * value).sum() / mass.sum()
        sd = np.sqrt((mass * (value - mean) ** 2).sum() / mass.sum())
        cdf = axis.cdf(density)
        find = lambda p: float(transform(brentq(lambda y: cdf(y) - p, axis.lo, axis.hi, xtol=1e-13)))
        q = {k: find(p if slope > 0 else 1 - p) for k, p in PROBABILITIES.items()}
        return {"mean": mean, "sd": sd, **q}

    def tail(self, name):
        """Distribution function of a parameter, for checks."""
        p = self.p
        if name == "tau0":
            return lambda v: float(lookup(p.t, p.tau_cdf[None], np.array([v]))[0]) / p.tau_cdf[-1]
        axis, density = p.marginals()[{"log2b": "beta", "ceiling": "c", "floor": "g", "sessionLuck": "ss", "burstLuck": "sb"}[name]]
        cdf = axis.cdf(density)
        back = {"log2b": lambda v: v * np.log(2), "ceiling": lambda v: (1 - v) ** 0.2}.get(name, lambda v: v)
        return (lambda v: 1 - cdf(back(v))) if name == "ceiling" else (lambda v: cdf(back(v)))

    def parameters(self):
        p = self.p
        h = p.t[1] - p.t[0]
        mass = p.tau_density * h
        mean = (mass * p.t).sum() / mass.sum()
        cdf = self.tail("tau0")
        out = {"tau0": {"mean": mean, "sd": np.sqrt((mass * (p.t - mean) ** 2).sum() / mass.sum()),
                        **{k: brentq(lambda v: cdf(v) - q, p.t[0], p.t[-1], xtol=1e-12) for k, q in PROBABILITIES.items()}}}
        m = p.marginals()
        out["log2b"] = self.summary(*m["beta"], lambda y: y / np.log(2), 1)
        if not p.c.fixed:
            out["ceiling"] = self.summary(*m["c"], lambda y: 1 - y**5, -1)
        if not p.g.fixed:
            out["floor"] = self.summary(*m["g"], lambda y: y, 1)
        if not p.ss.fixed:
            out["sessionLuck"] = self.summary(*m["ss"], lambda y: y, 1)
            out["burstLuck"] = self.summary(*m["sb"], lambda y: y, 1)
        return out

    # --- another day
    def below(self, rate, x, miss=None):
        """P(rate at x on another day <= rate) = P(exposure for that rate <= x); exposures out of reach count as -infinity.
        miss is 1 - rate, given when it would cancel."""
        miss = 1 - rate if miss is None else miss
        p, fine = self.p, self.p.res.fine
        # floor nodes below the rate (a floor above the rate keeps it exceeded at every exposure)
        y, yw = legendre.leggauss(fine)
        if p.g.fixed:
            g, gw, rate_minus_g, Pg = p.g.value, np.ones(1), rate - p.g.value, None
            if rate_minus_g[0] <= 0:
                return 0.0
        else:
            hi = min(rate, p.g.hi)
            reach = 30.0
            v = reach * (y + 1) / 2
            if hi < rate:   # the rate lies above every floor: no corner to resolve
                g = p.g.lo + (hi - p.g.lo) * (y + 1) / 2
                gw, rate_minus_g = yw * (hi - p.g.lo) / 2, rate - g
            else:
                share = np.exp(-v)
                g, gw = rate * (1 - share), yw * reach / 2 * rate * share
                rate_minus_g = rate * share
                g = np.maximum(g, p.g.lo)
            Pg = p.g.interpolate(g)
        total = 0.0
        if p.c.fixed:
            cw, Pc, c_minus_rate = np.ones(1), None, miss - p.c.y
            if c_minus_rate[0] <= 0:
                return 1.0
        else:
            # ceilings at or below the rate: out of reach, counted whole
            edge = min(max(miss ** 0.2, p.c.lo), p.c.hi)
            if edge < p.c.hi:
                axis_y = edge + (p.c.hi - edge) * (y + 1) / 2
                dens = np.einsum("ijkl,i,j->kl", p.node, p.beta.w, p.sb.w)
                inner = p.c.interpolate(axis_y) @ dens
                inner = inner @ p.g.w if Pg is None else (inner @ Pg.T) @ gw
                total += (inner * yw * (p.c.hi - edge) / 2).sum()
            if edge <= p.c.lo:
                return total
            if miss ** 0.2 > p.c.hi:   # no corner within the range
                cy = p.c.lo + (edge - p.c.lo) * (y + 1) / 2
                cw = yw * (edge - p.c.lo) / 2
                c_minus_rate = miss - cy**5
            else:                            # crowd the nodes towards ceiling = rate, logarithmically
                reach = 30.0
                v = reach * ((y + 1) / 2) ** 2
                share = np.exp(-v)
                cw = yw * reach * (y + 1) / 2 * share * (edge - p.c.lo)
                cy = edge - (edge - p.c.lo) * share
                gap = (edge - p.c.lo) * share / edge
                c_minus_rate = miss * -np.expm1(5 * np.log1p(-np.minimum(gap, 1 - 1e-16)))
            Pc = p.c.interpolate(cy)
        logit = np.log(rate_minus_g)[None, :] - np.log(c_minus_rate)[:, None]
        for i in range(len(p.beta.y)):
            table = p.day[i]                                   # burst sd, ceiling, floor, exposure
            if Pc is not None:
                table = np.matmul(Pc, table.reshape(*table.shape[:2], -1)).reshape(table.shape[0], len(Pc), *table.shape[2:])
            if Pg is not None:
                table = np.matmul(Pg, table)
            at = x + np.stack([inverse(logit) for inverse in self.inverse[i]])
            total += p.beta.w[i] * np.einsum("jch,j,c,h->", lookup(p.t, table, at), p.sb.w, cw, gw)
        return float(total)

    @staticmethod
    def rate_and_miss(eta, x):
        rate, miss = logistic(np.array(eta))
        return rate, x, miss

    def rate_quantile(self, x, q, start):
        f = lambda eta: self.below(*(float(a) for a in self.rate_and_miss(eta, x))) - q
        return float(logistic(np.array(rising_root(f, start)))[0])

    def exposure_quantile(self, rate, q, start):
        if self.below(rate, -1e6) >= q:
            return None      # -infinity: out of reach on more than a share q of the posterior
        return rising_root(lambda x: self.below(rate, x) - q, start)

    def chances(self, x):
        """Means over the posterior, the day's luck and the bursts' luck: one frame, 1 of 3, 2 of 6, 2 of 6 in two bursts of 3."""
        p = self.p
        h = np.full(len(p.t), p.t[1] - p.t[0])
        out = np.zeros(4)
        c, g = p.c.value[None, :, None, None], p.g.value[None, None, :, None]
        for i, b in enumerate(p.beta.value):
            for j, s in enumerate(p.sb.value):
                z, w = (self.z, self.w) if s > 0 else (np.zeros(1), np.ones(1))
                up, down = (a[:, None, None, :] for a in logistic(b * (p.t[None, :] + s * z[:, None] - x)))
                yes, no = g + (c - g) * up, (1 - c) + (c - g) * down
                mean = lambda a: np.tensordot(w, a, 1)
                none3, one3 = mean(power(no, 3)), mean(3 * yes * power(no, 2))
                at = [mean(yes), 1 - none3, 1 - mean(power(no, 6) + 6 * yes * power(no, 5)), 1 - none3**2 - 2 * none3 * one3]
                vol = p.beta.w[i] * p.sb.w[j] * p.c.w[:, None, None] * p.g.w[None, :, None] * h
                mass = p.day_density[i, j] * vol
                out += [(mass * a).sum() for a in at]
        return out

    def report(self):
        case = self.p.case
        rates, start = [], lambda kind, n, k, other: self.before[kind][n].get(k, other) if self.before else other
        logit = lambda r: float(np.log(r) - np.log1p(-r))
        for n, x in enumerate(case["at"]):
            mean, one, two, split = self.chances(x)
            rates.append({"log2Seconds": x, "mean": mean, **{k: self.rate_quantile(x, q, logit(start("rates", n, k, 0.5))) for k, q in PROBABILITIES.items()},
                          "atLeast1of3": one, "atLeast2of6": two, "atLeast2of6InBurstsOf3": split})
        exposures = []
        for n, rate in enumerate(case["rates"]):
            found = {k: self.exposure_quantile(rate, q, start("exposures", n, k, self.p.t.mean())) for k, q in PROBABILITIES.items()}
            exposures.append({"rate": rate, **{k: v for k, v in found.items() if v is not None},
                              "outOfReach": self.below(rate, -1e6)})
        return {"logEvidence": self.p.log_evidence, "parameters": self.parameters(), "rates": rates, "exposures": exposures}
