"""Posteriors on product grids: every combination of equally spaced values, weighed by prior times likelihood."""
import numpy as np
from scipy.interpolate import BarycentricInterpolator, CubicSpline
from scipy.stats import beta

PROBABILITIES = {"q021": 0.021, "q025": 0.025, "q029": 0.029, "q50": 0.5, "q971": 0.971, "q975": 0.975, "q979": 0.979}
NEGLIGIBLE = 16.0      # grid points this far below the top, on the log scale, are left out
LOSS = beta(1.2, 38.8)  # one minus the ceiling
LOG_B = (np.log(1.6), 0.35)


def logistic(eta):
    """mu and 1 - mu."""
    e = np.exp(-np.abs(eta))
    small, large = e / (1 + e), 1 / (1 + e)
    return np.where(eta > 0, large, small), np.where(eta > 0, small, large)


def log_likelihood(t, b, ceiling, rows):
    """Of frames at log2 exposures under half points t and steepness b, both arrays: Bernoulli scale."""
    out = 0.0
    for x, frames, keepers in rows:
        mu, rest = logistic(b * (t - x))
        out = out + keepers * np.log(np.maximum(ceiling * mu, 1e-300)) + (frames - keepers) * np.log(np.maximum(1 - ceiling + ceiling * rest, 1e-300))
    return out


def ceilings(value):
    """Nodes and prior masses: one value, or Gauss-Legendre in the fifth root of the loss, in which its density has no corner."""
    if value is not None:
        return np.array([value]), np.ones(1)
    y, w = np.polynomial.legendre.leggauss(24)
    y, w = 0.83 * (y + 1) / 2, 0.83 * w / 2
    return 1 - y**5, w * LOSS.pdf(y**5) * 5 * y**4


class Cloud:
    """The grid points that matter: their weights, and by name what they stand for; steps of the grid by name."""

    def __init__(self, weights, values, steps, log_evidence=None, by_ceiling=None):
        self.w, self.v, self.steps, self.log_evidence, self.by_ceiling = weights / weights.sum(), values, steps, log_evidence, by_ceiling

    def reweighed(self, factor):
        return Cloud(self.w * factor, self.v, self.steps)

    def spread(self):
        """Points at random places of their cells instead of the middles, for quantiles: a cell a fifth of a sd wide adds 0.3 % to the variance."""
        times = max(1, 2_000_000 // len(self.w))
        chance = np.random.default_rng(1)
        values = {n: np.tile(x, times) for n, x in self.v.items()}
        for n, step in self.steps.items():
            values[n] = values[n] + step * (chance.random(len(values[n])) - 0.5)
        nodes, _ = ceilings(None)
        if set(values["ceiling"]) <= set(nodes):
            _, w = np.polynomial.legendre.leggauss(len(nodes))
            edges = np.append(0, np.cumsum(w)) * 0.83 / 2
            where = np.searchsorted(-nodes, -values["ceiling"])
            values["ceiling"] = 1 - (edges[where] + 0.83 / 2 * w[where] * chance.random(len(where))) ** 5
        return Cloud(np.tile(self.w, times), values, {})

    def summary(self, value):
        """'smooth' where the value is one coordinate of the grid, whose density is a smooth curve through its nodes."""
        mean = (self.w * value).sum()
        out = {"mean": mean, "sd": np.sqrt((self.w * (value - mean) ** 2).sum())}
        few = len(np.unique(np.round(value[:: max(1, len(value) // 10_000)], 9))) < 400
        nodes, where = np.unique(np.round(value, 9), return_inverse=True) if few else ([], None)
        if self.steps and 3 < len(nodes) < 400 and np.ptp(np.diff(nodes)) < 1e-6:
            mass = np.bincount(where, self.w)
            cdf = CubicSpline(nodes, mass / (nodes[1] - nodes[0])).antiderivative()
            at = np.linspace(nodes[0], nodes[-1], 20001)
            below, out["smooth"] = cdf(at) / cdf(at[-1]), True
        else:
            order = np.argsort(value)
            below, at = np.cumsum(self.w[order]), value[order]
        return out | {k: float(np.interp(p, below, at)) for k, p in PROBABILITIES.items()}

    def ceiling(self):
        """Summary of an estimated ceiling from the weights of its nodes."""
        nodes, prior = ceilings(None)
        y, w = np.polynomial.legendre.leggauss(24)
        mass = np.array([self.w[self.v["ceiling"] == c].sum() for c in nodes])
        density = BarycentricInterpolator(y, mass / w)
        fine = np.linspace(-1, 1, 20001)
        below = np.cumsum(density(fine))
        value = 1 - (0.83 * (fine + 1) / 2) ** 5
        mean = (mass * nodes).sum() / mass.sum()
        sd = np.sqrt((mass * (nodes - mean) ** 2).sum() / mass.sum())
        return {"mean": mean, "sd": sd, **{k: float(np.interp(1 - p, below / below[-1], value)) for k, p in PROBABILITIES.items()}}


def solve(priors, settings, ceiling, counts, steeper=None):
    """priors: name to (mean, sd) of normals, tau0 among them. settings: list of (half point of the named values, rows).
    steeper, by setting: growth of log b. counts: grid points of log b and of each prior."""
    names = ["logb", *priors]
    law = {"logb": LOG_B, **priors}
    ranges = {n: (law[n][0] - 5.5 * law[n][1], law[n][0] + 5.5 * law[n][1]) for n in names}
    for power in (0.1, 0.3, 0.6, 1.0, 1.0, 1.0):   # find where the posterior is, softened at first
        grid = {n: np.linspace(*ranges[n], 17 if len(names) > 4 else 33) for n in names}
        cloud = weigh(law, grid, settings, [0.97] if ceiling is None else [ceiling], [1.0], steeper, power)
        for n in names:
            step = grid[n][1] - grid[n][0]
            low, high = cloud.v[n].min(), cloud.v[n].max()
            ranges[n] = (max(low - 1.5 * step, law[n][0] - 6.5 * law[n][1]), min(high + 1.5 * step, law[n][0] + 6.5 * law[n][1]))
    grid = {n: np.linspace(*ranges[n], counts[n]) for n in names}
    return weigh(law, grid, settings, *ceilings(ceiling), steeper, 1.0)


def weigh(law, grid, settings, ceiling, ceiling_mass, steeper, power):
    """Softening leaves the prior as it is."""
    inner = [n for n in grid if n != "logb"]
    steps = {n: grid[n][1] - grid[n][0] for n in grid}
    normal = lambda x, n: -0.5 * ((x - law[n][0]) / law[n][1]) ** 2 - np.log(law[n][1] * np.sqrt(2 * np.pi))
    mesh = dict(zip(inner, np.meshgrid(*(grid[n] for n in inner), indexing="ij", sparse=True)))
    log_prior = sum(normal(mesh[n], n) for n in inner) + np.log(np.prod(list(steps.values())))
    half_points = [t(mesh) for t, _ in settings]
    spans = [np.linspace(t.min() - 0.01, t.max() + 0.01, 8001) for t in half_points]
    kept, tops, total = [], -np.inf, []
    for c, mass in zip(ceiling, ceiling_mass):
        at_ceiling = []
        for lb in grid["logb"]:
            log = log_prior + normal(lb, "logb") + np.log(mass)
            for j, (_, rows) in enumerate(settings):
                if steeper is None:   # one curve over the half point, looked up
                    log = log + power * np.interp(half_points[j], spans[j], log_likelihood(spans[j], np.exp(lb), c, rows))
                else:
                    log = log + power * log_likelihood(half_points[j], np.exp(lb + steeper[j](mesh)), c, rows)
            top = log.max()
            tops = max(tops, top)
            at_ceiling.append(top + np.log(np.exp(log - top).sum()))
            keep = log > tops - NEGLIGIBLE
            if keep.any():
                values = {n: np.broadcast_to(mesh[n], log.shape)[keep] for n in inner}
                kept.append((log[keep], values | {"logb": np.full(keep.sum(), lb), "ceiling": np.full(keep.sum(), c)}))
        total.append(np.logaddexp.reduce(at_ceiling))
    log = np.concatenate([k for k, _ in kept])
    values = {n: np.concatenate([v[n] for _, v in kept]) for n in kept[0][1]}
    keep = log > tops - NEGLIGIBLE
    return Cloud(np.exp(log[keep] - tops), {n: v[keep] for n, v in values.items()}, steps, np.logaddexp.reduce(total), np.array(total))
