"""A drug test with a natural response rate: probit of log10 dose above an estimated floor. /usr/bin/python3 make.py, with python3-mpmath."""
import sys

sys.path.insert(0, "..")
from newton import LINKS, errors, log_likelihood, maximum, mp, text, write

DOSES = ["0", "1.1", "1.3", "2.0", "2.2", "2.8", "3.7", "3.9", "4.4", "4.8", "5.9", "6.8"]
RESPONSES = [3, 4, 4, 3, 5, 4, 5, 9, 8, 11, 12, 13]
FRAMES = [15] * len(DOSES)
NAMES = ["(Intercept)", "log10dose", "floor"]

with open("table.csv", "w") as out:
    out.write("dose,frames,keepers\n")
    out.writelines(f"{d},15,{k}\n" for d, k in zip(DOSES, RESPONSES))
# As the tests see them: nearest doubles, and their logarithms.
doses = [mp.mpf(float(d)) for d in DOSES]


def f(t):
    above = [LINKS["probit"](t[0] + t[1] * mp.log(d, 10)) if d else mp.mpf(0) for d in doses]
    return log_likelihood([t[2] + (1 - t[2]) * p for p in above], RESPONSES, FRAMES)


t, hessian = maximum(f, (-4.1, 6.2, 0.24))
write("expected.json", {"coef": text(t, NAMES), "se": text(errors(-hessian), NAMES), "loglik": mp.nstr(f(t), 50)})
