"""What is left of a stabiliser that takes four stops off rotation when translation of the hands blurs too. Run from this folder: python3 make.py > expected.csv

R = f (1 + m) w t, T = m v t; stops left = log2(hypot(R, T) / hypot(R / 2^S, T)). f = 100 mm, w = 0.03 rad/s, t = 1/125 s, S = 4.
"""
import csv
from math import hypot, log2

f, w, t, s = 100, 0.03, 1 / 125, 4
print("magnification,hand_mm_s,rotation_um,printed_rotation_um,translation_um,stops,printed")
for row in csv.DictReader(open("inputs.csv")):
    m = float(row["magnification"])
    for v in ("2.2", "5", "8"):
        r, x = f * (1 + m) * w * t * 1000, m * float(v) * t * 1000
        left = log2(hypot(r, x) / hypot(r / 2**s, x))
        print(f'{m!r},{v},{r!r},{row["rotation_um"]},{x!r},{left!r},{row["at_" + v]}')
