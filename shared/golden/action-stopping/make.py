"""The blur that the handbook's table permits with a 50 mm lens. Run from this folder: python3 make.py > expected.csv

c = m v t with m = f / (u - f), the table's distance taken as u; 1 mph = 447.04 mm/s and 1 ft = 304.8 mm exactly.
"""
import csv
from fractions import Fraction

f = 50
print("speed_mm_s,distance_m,magnification,across,implied_blur_um")
for row in csv.DictReader(open("table.csv")):
    v = int(row["speed_mph"]) * Fraction("447.04")
    u = int(row["distance_ft"]) * Fraction("304.8")
    m = f / (u - f)
    blur = m * v * Fraction(row["across"]) * 1000
    print(f'{float(v)!r},{float(u / 1000)!r},{float(m)!r},{row["across"]},{float(blur)!r}')
