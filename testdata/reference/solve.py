#!/usr/bin/env python3
"""Roots and lowest places of published test functions, by SciPy.

Writes solve.json. Roots: functions and intervals after Alefeld, Potra and Shi, Algorithm
748, ACM Transactions on Mathematical Software 21 (1995) 327, written down from memory, by
brentq as closely as it goes; "looks" is how many values brentq takes at xtol = 1e-6 of
the interval, its two ends left out. Lowest places: the sum of poles of Brent, Algorithms
for Minimization without Derivatives (1973), between each two, by minimize_scalar's bounded
method; "looks" is how many values it takes at xatol = 1e-6.

Run, on Debian with python3-scipy, in this folder: /usr/bin/python3 solve.py
"""

import json
import platform
from math import exp, pi, sin

import numpy
import scipy
from scipy.optimize import brentq, minimize_scalar

FUNCTIONS = {
    "sine less half": (lambda n, x: sin(x) - x / 2, [(0, pi / 2, pi)]),
    "poles": (lambda n, x: -2 * sum((2 * i - 5) ** 2 / (x - i * i) ** 3 for i in range(1, 21)),
              [(n, n * n + 1e-9, (n + 1) ** 2 - 1e-9) for n in (1, 2, 5, 9)]),
    "exponential": (lambda n, x: -20 * n * x * exp(-n * x), [(1, -9, 31), (2, -9, 31)]),
    "power": (lambda n, x: x**n - 0.2, [(n, 0, 5) for n in (4, 6, 8, 10, 12)]),
    "power of one": (lambda n, x: x**n - 1, [(n, -0.95, 4.05) for n in (8, 10, 12, 14)]),
    "sine": (lambda n, x: sin(x) - 0.5, [(0, 0, 1.5)]),
    "two exponentials": (lambda n, x: 2 * x * exp(-n) - 2 * exp(-n * x) + 1, [(n, 0, 1) for n in (1, 3, 5, 20)]),
    "squares": (lambda n, x: (1 + (1 - n) ** 2) * x - (1 - n * x) ** 2, [(n, 0, 1) for n in (2, 5, 10, 20)]),
    "square and power": (lambda n, x: x * x - (1 - x) ** n, [(n, 0, 1) for n in (2, 5, 10, 20)]),
    "fourths": (lambda n, x: (1 + (1 - n) ** 4) * x - (1 - n * x) ** 4, [(n, 0, 1) for n in (2, 4, 8, 20)]),
    "exponential and power": (lambda n, x: exp(-n * x) * (x - 1) + x**n, [(n, 0, 1) for n in (1, 5, 10, 20)]),
    "hyperbola": (lambda n, x: (n * x - 1) / ((n - 1) * x), [(n, 0.01, 1) for n in (2, 5, 20)]),
    "roots": (lambda n, x: x ** (1 / n) - n ** (1 / n), [(n, 1, 100) for n in (2, 3, 6, 33)]),
    "flat": (lambda n, x: n / 20 * (x / 1.5 + sin(x) - 1) if x >= 0 else -n / 20, [(n, -1e4, pi / 2) for n in (1, 40)]),
    "steep": (lambda n, x: exp(1) - 1.859 if x > 2e-3 / (1 + n) else exp((n + 1) * x / 2 * 1e3) - 1.859 if x >= 0 else -0.859,
              [(n, -1e4, 1e-4) for n in (20, 40)]),
}


def poles(x):
    return sum(((2 * i - 5) / (x - i * i)) ** 2 for i in range(1, 21))


roots = []
for name, (f, cases) in FUNCTIONS.items():
    for n, a, b in cases:
        looks = []

        def told(x):
            looks.append(x)
            return f(n, x)

        brentq(told, a, b, xtol=1e-6 * (b - a), rtol=1e-15)
        roots.append({"name": name, "n": n, "a": a, "b": b, "looks": len(looks) - 2,
                      "root": brentq(lambda x: f(n, x), a, b, xtol=1e-16, rtol=1e-15, maxiter=1000)})

lowest = []
for i in range(1, 20):
    a, b = i * i + 1e-9, (i + 1) ** 2 - 1e-9
    close = minimize_scalar(poles, bounds=(a, b), method="bounded", options={"xatol": 1e-10})
    rough = minimize_scalar(poles, bounds=(a, b), method="bounded", options={"xatol": 1e-6})
    lowest.append({"a": a, "b": b, "x": close.x, "y": close.fun, "looks": rough.nfev})

with open("solve.json", "w") as out:
    json.dump({
        "made": {"python": platform.python_version(), "numpy": numpy.__version__, "scipy": scipy.__version__},
        "roots": roots, "lowest": lowest,
    }, out, indent=1)
    out.write("\n")
