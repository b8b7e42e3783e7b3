"""Exact times behind the marks of cameras. Run from this folder: python3 make.py > expected.csv

inputs.csv names each mark with its place in its series: stops slower than 1/8192 s, which is marked 1/8000.
"""
import csv
from fractions import Fraction
from mpmath import mp, mpf, log

mp.dps = 40
print("series,mark,seconds,exact_seconds,marked_over_exact_stops")
for row in csv.DictReader(open("inputs.csv")):
    marked = Fraction(row["mark"])
    marked = mpf(marked.numerator) / marked.denominator
    exact = mpf(2) ** (mpf(Fraction(row["stops"]).numerator) / Fraction(row["stops"]).denominator - 13)
    print(f'{row["series"]},{row["mark"]},{float(marked)!r},{float(exact)!r},{float(log(marked / exact, 2)):.4f}')
