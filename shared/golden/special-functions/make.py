"""High-precision values of the special functions, by mpmath. Run from this folder: python3 make.py

Arguments are doubles, taken exactly; values are computed with 60 digits or more and rounded once, to a double.
"""
import csv
from mpmath import mp, mpf, log, exp, log1p, expm1, erfc, erfinv, sqrt, pi, findroot

mp.dps = 60
rows = []


def add(function, arguments, value):
    arguments = [float(a) for a in arguments]
    rows.append([function] + [repr(a) for a in arguments] + [""] * (3 - len(arguments)) + [repr(float(value))])


def each(function, formula, *lists):
    for arguments in zip(*lists):
        add(function, arguments, formula(*[mpf(float(a)) for a in arguments]))


small = [1e-300, 1.23e-20, 1e-17, 1.23e-15, 1e-10, 3e-5, 0.01, 0.1, 0.3, 0.5, 0.7]
signed = [-x for x in small] + small
each("log1p", log1p, signed + [-0.999999, 1, 2.5, 40, 1e10, 1e300])
each("expm1", expm1, signed + [-1, -5, -38, -45, -700, 1, 5, 30, 41, 700])
etas = [-800, -700, -100, -40, -37, -20, -3.3, -1, -0.2, -1e-9, 0, 1e-9, 0.2, 1, 3.3, 20, 37, 40, 100, 700, 800]
each("softplus", lambda x: log1p(exp(x)) if x < 0 else x + log1p(exp(-x)), [x for x in etas if x > -740])
each("loglogistic", lambda x: -log1p(exp(-x)) if x > 0 else x - log1p(exp(x)), [x for x in etas if x < 740])
each("logistic", lambda x: 1 / (1 + exp(-x)), [x for x in etas if x > -740])
each("logit", lambda p: log(p) - log1p(-p), [1e-300, 1e-17, 1e-5, 0.1, 0.2499, 0.25, 0.3, 0.4999999, 0.5000001, 0.51, 0.75, 0.76, 0.999, 1 - 1e-12])


def cdf(x):
    return erfc(-x / sqrt(mpf(2))) / 2


def normal_quantile(p):
    start = mpf(float(-sqrt(-2 * log(min(p, 1 - p))))) if min(p, 1 - p) < 0.3 else (p - mpf("0.5")) * 2.5
    if p > 0.7:
        start = -start
    # Newton on log Phi of the nearer tail, so that the far tails converge.
    upper = p > 0.5
    q, x = (1 - p, -start) if upper else (p, start)
    for _ in range(200):
        step = (log(cdf(x)) - log(q)) * cdf(x) / (exp(-x * x / 2) / sqrt(2 * pi))
        x -= step
        if abs(step) < mpf(10) ** -50 * max(1, abs(x)):
            break
    else:
        raise ArithmeticError(p)
    return -x if upper else x


xs = [-37.4, -30.1, -20.3, -10.7, -6.1, -3.3, -1.9, -1.5, -1.4142, -1.1, -0.7, -0.3, -1e-5, 0, 1e-5, 0.3, 0.7, 1.1, 1.9, 3.3, 6.1, 8]
each("normalcdf", cdf, xs)
each("normaldensity", lambda x: exp(-x * x / 2) / sqrt(2 * pi), xs)
each("normalquantile", normal_quantile,
     [1e-300, 1e-200, 1e-100, 1e-50, 1e-20, 1e-12, 1e-9, 1e-6, 1e-3, 0.025, 0.07, 0.074, 0.076, 0.1, 0.2, 0.4, 0.4999, 0.5001, 0.6, 0.8, 0.9, 0.93, 0.975, 0.999, 1 - 1e-9, 1 - 1e-12])

with open("values.csv", "w", newline="") as f:
    w = csv.writer(f, lineterminator="\n")
    w.writerow(["function", "a", "b", "c", "value"])
    w.writerows(rows)
