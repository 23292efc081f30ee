#!/usr/bin/env python3
"""Least squares and smoothing by SciPy, for the program's own to be held against.

Writes squares.json. "decay" and "gauss" are residuals of made-up data (the formula with a
fixed pattern of errors), by scipy.optimize.least_squares (method lm, tolerances 1e-15);
"robust" the same with loss='huber' and f_scale 1.345; "smooth" scipy.signal.savgol_filter of
second order with mode 'interp', value and first derivative.

Run, on Debian with python3-scipy, in this folder: /usr/bin/python3 squares.py
"""

import json
import platform

import numpy as np
import scipy
from scipy.optimize import least_squares
from scipy.signal import savgol_filter

n = 60
t = np.arange(n) * 0.05
pattern = np.array([((i * 37) % 23 - 11) / 11 for i in range(n)])


def decay(x):
    return x[0] * np.exp(-x[1] * t) + x[2]


def gauss(x):
    return x[0] * np.exp(-(((t - x[1]) / x[2]) ** 2)) + x[3] * t


out = {"made": {"python": platform.python_version(), "numpy": np.__version__, "scipy": scipy.__version__},
       "t": t.tolist(), "fits": []}
for name, f, true, start, sd in [
    ("decay", decay, [5.0, 1.3, 0.7], [1.0, 0.2, 0.0], 0.05),
    ("gauss", gauss, [3.0, 1.4, 0.5, 0.2], [1.0, 1.0, 1.0, 0.0], 0.08),
]:
    y = f(np.array(true)) + sd * pattern
    fit = least_squares(lambda x: (f(x) - y) / sd, start, method="lm", xtol=1e-15, ftol=1e-15, gtol=1e-15)
    spiked = y.copy()
    spiked[[7, 21, 40]] += [40 * sd, -25 * sd, 15 * sd]
    robust = least_squares(lambda x: (f(x) - spiked) / sd, start, loss="huber", f_scale=1.345, xtol=1e-15, ftol=1e-15, gtol=1e-15,
                           max_nfev=5000)
    inverse = np.linalg.inv(fit.jac.T @ fit.jac)
    out["fits"].append({"name": name, "start": start, "sd": sd, "y": y.tolist(), "x": fit.x.tolist(),
                        "sum": float(2 * fit.cost), "inverse": inverse.tolist(), "spiked": spiked.tolist(),
                        "robust": robust.x.tolist()})
y = gauss([3.0, 1.4, 0.5, 0.2]) + 0.08 * pattern
out["smooth"] = [{"width": w, "y": y.tolist(), "value": savgol_filter(y, w, 2, mode="interp").tolist(),
                  "slope": savgol_filter(y, w, 2, deriv=1, delta=0.05, mode="interp").tolist()} for w in (3, 7, 15)]
with open("squares.json", "w") as f:
    json.dump(out, f, indent=1)
    f.write("\n")
