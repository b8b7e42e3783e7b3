"""Maxima to fifty digits: Newton's method on differences of a log-likelihood, at more than twice the digits."""
import json
import mpmath as mp

mp.mp.dps = 130
STEP = mp.mpf(10) ** -30

LINKS = {
    "logit": lambda e: 1 / (1 + mp.exp(-e)),
    "probit": lambda e: mp.erfc(-e / mp.sqrt(2)) / 2,
    "cloglog": lambda e: -mp.expm1(-mp.exp(e)),
}


def log_likelihood(rates, keepers, frames):
    return sum((k * mp.log(p) if k else 0) + ((n - k) * mp.log(1 - p) if k < n else 0) for p, k, n in zip(rates, keepers, frames))


def derivatives(f, t):
    def at(*moves):
        u = list(t)
        for j, h in moves:
            u[j] += h
        return f(u)

    size, h, here = len(t), STEP, f(t)
    gradient = mp.matrix([(at((j, h)) - at((j, -h))) / (2 * h) for j in range(size)])
    hessian = mp.matrix(size)
    for i in range(size):
        hessian[i, i] = (at((i, h)) - 2 * here + at((i, -h))) / h**2
        for j in range(i):
            hessian[i, j] = hessian[j, i] = (at((i, h), (j, h)) - at((i, h), (j, -h)) - at((i, -h), (j, h)) + at((i, -h), (j, -h))) / (4 * h**2)
    return gradient, hessian


def maximum(f, start):
    t = [mp.mpf(s) for s in start]
    for _ in range(60):
        gradient, hessian = derivatives(f, t)
        step = mp.lu_solve(-hessian, gradient)
        length = mp.mpf(1)
        while f([a + length * b for a, b in zip(t, step)]) < f(t) - STEP:
            length /= 2
        t = [a + length * b for a, b in zip(t, step)]
        # The differences of f leave an error of about the square of their step, 1e-60.
        if mp.norm(step) < mp.mpf(10) ** -52:
            break
    return t, derivatives(f, t)[1]


def errors(information):
    inverse = information**-1
    return [mp.sqrt(inverse[j, j]) for j in range(information.rows)]


def text(numbers, names):
    return {name: mp.nstr(x, 50) for name, x in zip(names, numbers)}


def write(file, case):
    with open(file, "w") as out:
        json.dump(case, out, indent=1)
        out.write("\n")
