"""Thin-lens magnification from sensor-to-subject distance. Run from this folder: python3 make.py > expected.csv

The smaller root m of D = f (2 + m + 1/m), found by bisection on D itself, so not by the closed form under test;
lens_distance_m is u = f (1 + 1/m), from which m = f / (u - f) again. The doubles of inputs.csv are taken exactly.
"""
import csv
from mpmath import mp, mpf

mp.dps = 60
print("focal_mm,distance_m,printed,magnification,lens_distance_m")
for row in csv.DictReader(open("inputs.csv")):
    f, d = mpf(row["focal_mm"]), mpf(row["distance_m"]) * 1000
    low, high = mpf(10) ** -30, mpf(1)  # D falls as m grows to 1
    for _ in range(400):
        middle = (low * high) ** mpf("0.5")
        low, high = (middle, high) if f * (2 + middle + 1 / middle) > d else (low, middle)
    m = high
    print(f'{row["focal_mm"]},{row["distance_m"]},{row["printed"]},{float(m)!r},{float(f * (1 + 1 / m) / 1000)!r}')
