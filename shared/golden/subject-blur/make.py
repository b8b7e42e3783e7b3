"""The slowest exposure that blurs a subject moving across by no more than is permitted. Run from this folder: python3 make.py > expected.csv

t = c / (m v) with m = f / (u - f) where m is not given, the distance taken from the lens.
"""
import csv
from fractions import Fraction

print("speed_mm_s,magnification,permitted_um,printed,seconds")
for row in csv.DictReader(open("inputs.csv")):
    if row["magnification"]:
        m = Fraction(row["magnification"])
    else:
        f = Fraction(row["focal_mm"])
        m = f / (Fraction(row["distance_m"]) * 1000 - f)
    t = Fraction(row["permitted_um"]) / 1000 / (m * Fraction(row["speed_mm_s"]))
    print(f'{row["speed_mm_s"]},{float(m)!r},{row["permitted_um"]},{row["printed"]},{float(t)!r}')
