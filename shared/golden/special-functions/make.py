"""High-precision values of the special functions, by mpmath. Run from this folder: python3 make.py

Arguments are doubles, taken exactly; values are computed with 60 digits or more and rounded once, to a double.
"""
import csv
from math import comb
from mpmath import mp, mpf, log, exp, log1p, expm1, erfc, sqrt, pi, loggamma, fsum, matrix, eigsy

mp.dps = 60
rows = []


def add(function, arguments, value):
    arguments = [float(a) for a in arguments]
    rows.append([function] + [repr(a) for a in arguments] + [""] * (4 - len(arguments)) + [repr(float(value))])


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


each("loggamma", loggamma, [1e-6, 0.05, 0.5, 0.999, 1, 1.0001, 1.5, 2, 3.7, 9.9, 10, 10.1, 55.5, 1e3, 1e6, 1e9])
shapes = [(0.05, 0.05), (0.05, 3), (0.05, 1e6), (0.5, 0.5), (1, 1), (1.2, 38.8), (1, 49), (7, 9.5), (12, 3), (150, 900.5), (1e4, 0.3), (1e6, 0.05), (1e6, 1e6), (1e6, 30), (3e5, 7e5)]
each("logbeta", lambda a, b: loggamma(a) + loggamma(b) - loggamma(a + b), *zip(*shapes))
each("logbinomial", lambda n, k: loggamma(n + 1) - loggamma(k + 1) - loggamma(n - k + 1), [1, 10, 10, 1000, 1000, 10**6, 10**6], [1, 0, 3, 1, 500, 3, 400000])


def beta_lower(a, b, x):
    """I_x(a, b) and its complement by the continued fraction, of the side where it converges fast. It converges from the far side too,
    if slowly and with loss: in the middle both are computed and must add up to 1."""

    def side(a, b, x):
        value, c, d, m = mpf(1), mpf(1), mpf(0), 0
        while True:
            factor = mpf(1)
            for top in (-(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1)), (m + 1) * (b - m - 1) * x / ((a + 2 * m + 1) * (a + 2 * m + 2))):
                c, d = 1 + top / c, 1 / (1 + top * d)
                factor *= c * d
            value *= factor
            m += 1
            if abs(factor - 1) < mpf(10) ** -50:
                break
        return exp(a * log(x) + b * log1p(-x) - log(a) + loggamma(a + b) - loggamma(a) - loggamma(b)) / value

    below = x * (a + b + 2) <= a + 1
    near = side(a, b, x) if below else side(b, a, 1 - x)
    if near > mpf("0.25") and min(x, 1 - x) > mpf(10) ** -6:
        far = side(b, a, 1 - x) if below else side(a, b, x)
        assert abs(near + far - 1) < mpf(10) ** -25, (a, b, x, near + far)
    return (near, 1 - near) if below else (1 - near, near)


def both_tails(a, b, x):
    lower, upper = beta_lower(mpf(a), mpf(b), mpf(x))
    add("betalower", [a, b, x], lower)
    add("betaupper", [a, b, x], upper)


for a, b in shapes:
    mean, sd = a / (a + b), (a * b / (a + b) ** 2 / (a + b + 1)) ** 0.5
    for z in [-7, -4, -1.5, -0.1, 0.4, 2, 5]:
        x = mean + z * sd
        if 0 < x < 1:
            both_tails(a, b, x)
    for x in [1e-200, 1e-9, 0.001, 0.3, 0.999]:
        if a < 50 and b < 50:
            both_tails(a, b, x)


def binomial_mass(k, n, p):
    k, n = int(k), int(n)
    return mpf(comb(n, k)) * p**k * (1 - p) ** (n - k)


def binomial_tail(k, n, p, upper):
    """Sum of exact masses from k up, or below k down, until nothing is added."""
    k, n = int(k), int(n)
    j, last, step = (k, n, 1) if upper else (k - 1, 0, -1)
    term = total = binomial_mass(j, n, p)
    while j != last:
        ratio = (n - j) * p / ((j + 1) * (1 - p)) if upper else j * (1 - p) / ((n - j + 1) * p)
        term, j = term * ratio, j + step
        total += term
        if term < total * mpf(10) ** -50 and ratio < 1:
            break
    return total


counts = [(0, 10, 0.3), (1, 10, 1e-9), (3, 10, 0.3), (10, 10, 0.9), (9, 10, 1 - 1e-9), (40, 1000, 0.05), (1, 1000, 0.05), (200, 1000, 0.05), (1, 10**6, 1e-6), (10**5, 10**6, 0.1), (98000, 10**6, 0.1),
          (103000, 10**6, 0.1), (500100, 10**6, 0.5), (10**6, 10**6, 0.999999), (999990, 10**6, 0.99999)]
each("binomiallogmass", lambda k, n, p: log(binomial_mass(k, n, p)), *zip(*counts))
tails = [c for c in counts if c[0] > 0]
each("binomialatleast", lambda k, n, p: binomial_tail(k, n, p, True), *zip(*tails))
each("binomialfewer", lambda k, n, p: binomial_tail(k, n, p, False), *zip(*tails))


def mixed_log_mass(k, n, a, b):
    lb = lambda x, y: loggamma(x) + loggamma(y) - loggamma(x + y)
    return -log(n + 1) - lb(k + 1, n - k + 1) + lb(k + a, n - k + b) - lb(a, b)


mixed = [(0, 14, 1.8, 7.2), (3, 14, 1.8, 7.2), (14, 14, 1.8, 7.2), (1, 33, 0.05, 1e4), (0, 1000, 0.05, 0.95), (500, 1000, 0.05, 1e4), (7, 20, 3e7, 7e7), (7, 20, 3e11, 7e11), (3, 10**6, 0.2, 1.3), (10**5, 10**6, 2e5, 1.8e6), (303000, 10**6, 300000000.7, 700000000.9)]
for k, n, a, b in mixed:
    add("betabinomiallogmass", [k, n, a, b], mixed_log_mass(mpf(k), mpf(n), mpf(a), mpf(b)))
for k, n, a, b in [(1, 14, 1.8, 7.2), (5, 14, 1.8, 7.2), (12, 14, 1.8, 7.2), (3, 33, 0.05, 1e4), (500, 1000, 0.05, 1e4), (20, 1000, 300, 700), (3, 2000, 0.2, 1.3)]:
    masses = [exp(mixed_log_mass(mpf(j), mpf(n), mpf(a), mpf(b))) for j in range(n + 1)]
    add("betabinomialatleast", [k, n, a, b], fsum(masses[k:]))
    add("betabinomialfewer", [k, n, a, b], fsum(masses[:k]))


def rule(name, count, coefficient):
    """Nodes and weights from the eigenvectors of the Jacobi matrix (Golub and Welsch)."""
    jacobi = matrix(count)
    for j in range(1, count):
        jacobi[j - 1, j] = jacobi[j, j - 1] = coefficient(mpf(j))
    nodes, vectors = eigsy(jacobi)
    for i in range(count):
        add(name + "node", [count, i], 0 if 2 * i + 1 == count else nodes[i])
        add(name + "weight", [count, i], vectors[0, i] ** 2)


for count in [1, 2, 5, 20, 51]:
    rule("hermite", count, sqrt)
    rule("legendre", count, lambda j: j / sqrt(4 * j * j - 1))

with open("values.csv", "w", newline="") as f:
    w = csv.writer(f, lineterminator="\n")
    w.writerow(["function", "a", "b", "c", "d", "value"])
    w.writerows(rows)
