"""Bliss's table with three links, and a separated table penalised, to fifty digits. /usr/bin/python3 make.py, with python3-mpmath."""
import csv
import sys

sys.path.insert(0, "..")
from newton import LINKS, errors, log_likelihood, maximum, mp, text, write

NAMES = ["(Intercept)", "x"]


def table(path, x):
    rows = list(csv.DictReader(open(path)))
    return [x(r) for r in rows], [int(r["keepers"]) for r in rows], [int(r["frames"]) for r in rows]


case = {}
x, k, n = table("../bliss/table.csv", lambda r: mp.log(mp.mpf(float(r["exposure_s"])), 2))
for link, F in LINKS.items():
    f = lambda t: log_likelihood([F(t[0] + t[1] * a) for a in x], k, n)
    t, hessian = maximum(f, {"logit": (-60, 34), "probit": (-35, 20), "cloglog": (-39, 22)}[link])
    case[link] = {"coef": text(t, NAMES), "se": text(errors(-hessian), NAMES), "loglik": mp.nstr(f(t), 50)}

x, k, n = table("../separated/complete.csv", lambda r: mp.log(mp.mpf(float(r["exposure_s"])), 2))


def information(t):
    m = mp.matrix(2)
    for a, frames in zip(x, n):
        p = LINKS["logit"](t[0] + t[1] * a)
        w = frames * p * (1 - p)
        m[0, 0] += w
        m[0, 1] += w * a
        m[1, 0] += w * a
        m[1, 1] += w * a * a
    return m


f = lambda t: log_likelihood([LINKS["logit"](t[0] + t[1] * a) for a in x], k, n) + mp.log(mp.det(information(t))) / 2
t, _ = maximum(f, (2, -4))
case["separated-penalised"] = {"coef": text(t, NAMES), "se": text(errors(information(t)), NAMES), "penalised-loglik": mp.nstr(f(t), 50)}
write("expected.json", case)
