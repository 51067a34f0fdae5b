"""Cup constants typed from their sources, and the cups a test goes through."""

from specgen.computing.coats._cups import CUPS

# Number, K, c, shortest time: ν = K (t - c). T. C. Patton, Paint Flow and Pigment Dispersion, second edition, 1979,
# page 82; 80 s is the longest time of every one.
ZAHN = {1: (1.1, 29, 35), 2: (3.5, 14, 20), 3: (11.7, 7.5, 20), 4: (14.8, 5, 20), 5: (23, 0, 20)}
# The same table, 20 to 80 s.
SHELL = {
    "1": (0.226, 13),
    "2": (0.576, 5),
    "2_5": (0.925, 3),
    "3": (1.51, 2),
    "3_5": (2.17, 1.5),
    "4": (3.45, 1),
    "5": (6.5, 1),
    "6": (16.2, 0.5),
}
# ASTM D1200-94(2005), 11.2: times; formulas equations as J. Stringer programmed them, 2024, from ASTM D1200.
FORD = {1: (0.49, 35, 55), 2: (1.44, 18, 40), 3: (2.31, 6.58, 20), 4: (3.85, 4.49, 20), 5: (12.1, 2, 20)}
# ISO 2431 equations as J. Stringer programmed them, 2024: ν = a t - b / t, 30 to 100 s.
ISO = {3: (0.443, 200), 4: (1.37, 200), 5: (3.28, 220), 6: (6.90, 570)}
MARKS = sorted(CUPS)
