"""Posterior of one keeper curve by brute force: every integral is a dense sum, nothing is fitted or sampled.

Written from the description of the model in README.md alone, without looking at the library.
The axes of every tensor are (log steepness, burst sd, ceiling, floor, half point or exposure).
"""
import os
os.environ.setdefault("OMP_NUM_THREADS", "1")
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
import numpy as np
from numpy.polynomial import legendre
from scipy.interpolate import CubicSpline
from scipy.optimize import brentq
from scipy.stats import norm, beta as beta_law

SESSION_SCALE, BURST_SCALE = 0.35, 0.25
LOSS_PRIOR, FLOOR_PRIOR = beta_law(1.2, 38.8), beta_law(1, 49)


class Axis:
    """Gauss-Legendre nodes on [lo, hi], or one fixed value (weight 1, density 1)."""

    def __init__(self, lo, hi, count, prior, value):
        self.lo, self.hi, self.fixed = lo, hi, count == 0
        x, w = (np.zeros(1), np.ones(1)) if self.fixed else legendre.leggauss(count)
        self.y = np.full(1, lo) if self.fixed else lo + (hi - lo) * (x + 1) / 2
        self.unit, self.unit_w = x, w
        self.w = w if self.fixed else w * (hi - lo) / 2
        self.prior = np.ones(1) if self.fixed else prior(self.y)
        self.value = value(self.y)

    def interpolate(self, y):
        """Matrix that evaluates at y the polynomial through values at the nodes (Legendre series)."""
        if self.fixed:
            return np.ones((len(y), 1))
        n = len(self.y)
        to = legendre.legvander(self.unit, n - 1).T * self.unit_w * (np.arange(n)[:, None] + 0.5)
        return legendre.legvander(2 * (np.asarray(y) - self.lo) / (self.hi - self.lo) - 1, n - 1) @ to

    def cdf(self, density):
        n = len(self.y)
        a = (legendre.legvander(self.unit, n - 1) * (self.unit_w * density)[:, None]).sum(0) * (np.arange(n) + 0.5)
        up = legendre.legint(a, lbnd=-1)
        total = legendre.legval(1.0, up)
        return lambda y: legendre.legval(2 * (y - self.lo) / (self.hi - self.lo) - 1, up) / total


def logistic(eta):
    """(p, 1 - p) without cancellation."""
    e = np.exp(-np.abs(eta))
    big, small = 1 / (1 + e), e / (1 + e)
    return np.where(eta >= 0, big, small), np.where(eta >= 0, small, big)


def normal_nodes(step, reach=6.2):
    """Trapezoid rule for the standard normal law."""
    k = int(np.ceil(reach / step))
    z = np.arange(-k, k + 1) * step
    w = np.exp(-z * z / 2)
    return z, w / w.sum()


def safe_log(p):
    return np.log(np.maximum(p, 1e-300))


def power(base, n):
    out, sq = None, base
    while n:
        if n & 1:
            out = sq if out is None else out * sq
        n >>= 1
        sq = sq * sq if n else sq
    return 1.0 if out is None else out


def groups(rows):
    """(own, bursts): cells whose frames have a fresh grip each, and the cells of each labelled burst, with multiplicity."""
    own, bursts = {}, {}
    for x, frames, keepers, burst in rows:
        if burst:
            cells = bursts.setdefault(burst, {})
            n, k = cells.get(x, (0, 0))
            cells[x] = (n + frames, k + keepers)
        else:
            n, k = own.get(x, (0, 0))
            own[x] = (n + frames, k + keepers)
    kinds = {}
    for cells in bursts.values():
        key = tuple(sorted(cells.items()))
        kinds[key] = kinds.get(key, 0) + 1
    return own, kinds


def log_likelihood(rows, theta, axes, step):
    """Log-likelihood of one session at day-level half points theta; burst lucks integrated by direct sums."""
    beta, sb, ceiling, floor = axes
    own, kinds = groups(rows)
    c, g = ceiling.value[:, None, None], floor.value[None, :, None]
    out = np.zeros((len(beta.y), len(sb.y), len(ceiling.y), len(floor.y), len(theta)))
    for i, b in enumerate(beta.value):
        for j, s in enumerate(sb.value):
            z, w = normal_nodes(step) if s > 0 else (np.zeros(1), np.ones(1))
            at = lambda x: logistic(b * (theta[None, :] + s * z[:, None] - x))
            total = out[i, j]
            for x, (n, k) in own.items():
                up, down = (w @ part for part in at(x))
                total += k * safe_log(g + (c - g) * up) + (n - k) * safe_log((1 - c) + (c - g) * down)
            for cells, times in kinds.items():
                product = 1.0
                for x, (n, k) in cells:
                    up, down = at(x)
                    c4, g4 = c[None], g[None]
                    up, down = up[:, None, None, :], down[:, None, None, :]
                    product = product * power(g4 + (c4 - g4) * up, k) * power((1 - c4) + (c4 - g4) * down, n - k)
                total += times * safe_log(np.tensordot(w, product, 1))
    return out


def spline_rows(grid, points, integral):
    """points x grid matrix: (integral of) the cubic spline through values on the grid; 0 outside for values, constant for integrals."""
    s = CubicSpline(grid, np.eye(len(grid)))
    flat = points.ravel()
    inside = np.clip(flat, grid[0], grid[-1])
    m = (s.antiderivative() if integral else s)(inside)
    if not integral:
        m[(flat < grid[0]) | (flat > grid[-1])] = 0
    return m


def smooth(grid, centre, scale, z, w, integral):
    """Matrix of sum_z w f(centre - scale z), f the spline (or its integral) on the grid."""
    if scale == 0:
        return spline_rows(grid, centre, integral)
    out = np.empty((len(centre), len(grid)))
    for a in range(0, len(centre), 32):
        block = centre[a:a + 32, None] - scale * z[None, :]
        out[a:a + 32] = np.einsum("z,pzg->pg", w, spline_rows(grid, block, integral).reshape(*block.shape, -1))
    return out


class Resolution:
    def __init__(self, theta, beta, sb, c, g, ss, t, luck_step, day_step, fine):
        self.__dict__.update(locals())

    def with_changes(self, changes):
        return Resolution(**{**{k: v for k, v in self.__dict__.items() if k != "self"}, **changes})

    def finer(self, f):
        up = lambda n: int(np.ceil(n * f))
        return Resolution(up(self.theta), up(self.beta), up(self.sb), up(self.c), up(self.g), up(self.ss), up(self.t),
                          self.luck_step / f, self.day_step / f, up(self.fine))


SEARCH = Resolution(120, 18, 14, 20, 14, 8, 120, 0.5, 0.25, 40)
USUAL = Resolution(170, 36, 16, 24, 20, 20, 260, 0.3, 0.1, 80)


class Posterior:
    """All tensors of one curve at one resolution, on given ranges. extra multiplies the (ceiling, floor) prior, for shared ones."""

    def __init__(self, case, res, ranges, extra=None):
        self.case, self.res, self.r = case, res, ranges
        o, luck = case["options"], case["options"]["luck"] == "normal"
        med, log_sd = o["steepnessPrior"]["median"], o["steepnessPrior"]["logSd"]
        half = lambda scale: lambda y: 2 * norm.pdf(y, 0, scale)
        self.beta = Axis(*ranges["beta"], res.beta, lambda y: norm.pdf(y, np.log(med), log_sd), np.exp)
        self.sb = Axis(*ranges["sb"], res.sb, half(BURST_SCALE), lambda y: y) if luck else Axis(0, 0, 0, None, lambda y: y)
        self.ss = Axis(*ranges["ss"], res.ss, half(SESSION_SCALE), lambda y: y) if luck else Axis(0, 0, 0, None, lambda y: y)
        if o["ceiling"] == "estimated":  # loss = y^5 makes the beta prior a polynomial near 0
            self.c = Axis(*ranges["c"], res.c, lambda y: LOSS_PRIOR.pdf(y**5) * 5 * y**4, lambda y: 1 - y**5)
        else:
            fixed = 1.0 if o["ceiling"] == "one" else float(o["ceiling"])
            self.c = Axis(1 - fixed, 0, 0, None, lambda y: np.full(1, fixed))
        if o["floor"] == "estimated":
            self.g = Axis(*ranges["g"], res.g, FLOOR_PRIOR.pdf, lambda y: y)
        else:
            self.g = Axis(float(o["floor"]), 0, 0, None, lambda y: y)
        self.axes = (self.beta, self.sb, self.c, self.g)
        self.t = np.linspace(*ranges["t"], res.t)
        self.integrate(extra)

    def integrate(self, extra):
        case, res = self.case, self.res
        m, v = case["options"]["tauPrior"]["mean"], case["options"]["tauPrior"]["sd"] ** 2
        z, w = normal_nodes(res.day_step)
        ss, t = self.ss, self.t
        sessions = case["sessions"]
        theta = np.linspace(*self.r["theta"], res.theta)
        logs = [log_likelihood(rows, theta, self.axes, res.luck_step) for rows in sessions]
        tops = [l.max() for l in logs]
        like = [np.exp(l - top) for l, top in zip(logs, tops)]
        shape = like[0].shape[:4]
        like = [l.reshape(-1, len(theta)) for l in like]
        self.theta, nodes = theta, like[0].shape[0]
        weight_ss, tested_day = ss.w * ss.prior, None
        self.ss_density = np.zeros((nodes, len(ss.y)))
        day, day_density, tau, tau_density = (np.zeros((nodes, len(t))) for _ in range(4))
        if len(sessions) == 1 and not case.get("sessionByGrid"):
            # the half point of the day, theta, first; then tau given theta and the session sd is normal in closed form
            h = np.full(len(theta), theta[1] - theta[0]); h[[0, -1]] /= 2
            M = [np.zeros((len(theta), len(t))) for _ in range(4)]
            day_prior = np.zeros(len(theta))
            for q, s in enumerate(ss.y):
                V = v + s * s
                prior, k = norm.pdf(theta, m, np.sqrt(V)), v / V
                within = v * s * s / V
                day_prior += weight_ss[q] * prior
                self.ss_density[:, q] = like[0] @ (prior * h)
                for a, var in ((0, within + s * s), (2, within)):
                    centre, scale = (t - m) / k + m, np.sqrt(var) / k
                    M[a] += weight_ss[q] * prior[:, None] * smooth(theta, centre, scale, z, w, True).T
                    M[a + 1] += weight_ss[q] * prior[:, None] * smooth(theta, centre, scale, z, w, False).T / k
            day, day_density, tau, tau_density = (like[0] @ a for a in M)
            tested_day = like[0] * day_prior
        else:
            # each session's luck by a direct sum around tau
            grid = np.linspace(*self.r["tau"], res.theta)
            h = np.full(len(grid), grid[1] - grid[0]); h[[0, -1]] /= 2
            to_tau = [spline_rows(grid, t, flag).T for flag in (True, False)]
            for q, s in enumerate(ss.y):
                inner = smooth(theta, grid, s, z, w, False).T
                joint = np.broadcast_to(norm.pdf(grid, m, np.sqrt(v)), (nodes, len(grid)))
                for l in like:
                    joint = joint * np.maximum(l @ inner, 0)
                self.ss_density[:, q] = joint @ h
                day += weight_ss[q] * (joint @ smooth(grid, t, s, z, w, True).T)
                day_density += weight_ss[q] * (joint @ smooth(grid, t, s, z, w, False).T)
                tau += weight_ss[q] * (joint @ to_tau[0])
                tau_density += weight_ss[q] * (joint @ to_tau[1])
        pb, ps, pc, pg = (a.prior for a in self.axes)
        prior = np.einsum("i,j,k,l->ijkl", pb, ps, pc, pg)
        if extra is not None:
            prior = prior * extra
        vol = np.einsum("i,j,k,l->ijkl", *(a.w for a in self.axes))
        node = (self.ss_density @ weight_ss).reshape(shape) * prior     # density on the nodes
        total = (node * vol).sum()
        self.log_evidence = sum(tops) + np.log(total)
        self.node, self.vol = node / total, vol
        self.z_c = np.einsum("ijkl,i,j->kl", node / np.where(prior > 0, prior, 1) * np.einsum("i,j->ij", pb, ps)[:, :, None, None],
                             self.beta.w, self.sb.w), sum(tops)      # evidence given ceiling and floor
        scale = (prior / total)[..., None]
        self.day = day.reshape(*shape, -1) * scale
        self.day_density = day_density.reshape(*shape, -1) * scale
        flat = (vol * prior / total).reshape(-1)
        self.tau_cdf, self.tau_density = flat @ tau, flat @ tau_density
        self.theta_density = flat @ tested_day if tested_day is not None else None
        self.ss_marginal = flat @ self.ss_density * ss.prior

    def marginals(self):
        n = self.node
        return {
            "beta": (self.beta, np.einsum("ijkl,j,k,l->i", n, self.sb.w, self.c.w, self.g.w)),
            "sb": (self.sb, np.einsum("ijkl,i,k,l->j", n, self.beta.w, self.c.w, self.g.w)),
            "c": (self.c, np.einsum("ijkl,i,j,l->k", n, self.beta.w, self.sb.w, self.g.w)),
            "g": (self.g, np.einsum("ijkl,i,j,k->l", n, self.beta.w, self.sb.w, self.c.w)),
            "ss": (self.ss, self.ss_marginal),
        }
