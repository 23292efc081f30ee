#!/usr/bin/env python3
"""Saturated gas over water, expanding: an integration that shares no code with the program.

Writes moist.json: local exponents and those of the same work, for gases at a pressure and a
temperature that expand to a ratio of volumes. Derived from the entropy of what is in the chamber, per
mole of dry gas over R: of the gas (heat capacity c_v), of its vapour (heat capacity at constant
pressure 4, as of a rigid bent molecule), and of what condenses, L/(R T) a mole; the liquid's own heat
capacity is left out. L, and the vapour pressure at 25 degrees, are the program's, from memory, unverified:

    (c_v + 4 w) d ln T + d ln V + d(w L/(R T)) = 0,   w = p_s(T)/p_dry,   p_dry V/T constant

integrated over V by DOP853 at rtol 1e-12 with the partial derivatives of w L/(R T), the work by the
adaptive quadrature of the interpolant, the exponent by brentq.

Run, on Debian with python3-scipy, in this folder: /usr/bin/python3 moist.py
"""

import json
import platform
from math import exp, log

import numpy
import scipy
from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq

R, L = 8.314462618, 44020.0


def saturation(t):
    return 3166.4 * exp(L / R * (1 / 298.15 - 1 / t))


def case(gamma, pressure, temperature, ratio):
    cv = 1 / (gamma - 1)
    per = (pressure - saturation(temperature)) / temperature  # p_dry V / T, V counted from 1

    def dry(t, v):
        return per * t / v

    def rate(v, y):
        t = y[0]
        w = saturation(t) / dry(t, v)
        held = w * L / (R * t)
        # held = p_s(T) V L/(per R T^2): its partial derivatives
        by_t = held * (L / (R * t * t) - 2 / t)
        by_v = held / v
        return [-(1 / v + by_v) / ((cv + 4 * w) / t + by_t)]

    def whole(t, v):
        return dry(t, v) + saturation(t)

    slope = rate(1.0, [temperature])[0]
    h = 1e-6
    local = -(log(whole(temperature + slope * h, 1 + h)) - log(whole(temperature - slope * h, 1 - h))) / (log(1 + h) - log(1 - h))
    found = {"gamma": gamma, "pressure": pressure, "temperature": temperature, "ratio": ratio, "local": local}
    if ratio > 1:
        path = solve_ivp(rate, (1, ratio), [temperature], method="DOP853", rtol=1e-12, atol=1e-9, dense_output=True)
        work, _ = quad(lambda v: whole(path.sol(v)[0], v), 1, ratio, epsabs=0, epsrel=1e-11, limit=500)
        found["work"] = work
        found["exponent"] = brentq(lambda n: pressure / (n - 1) * (1 - ratio ** (1 - n)) - work, 1 + 1e-9, 2, xtol=1e-13)
    return found


cases = []
for temperature in (278.15, 293.15, 303.15):
    for pressure in (301325.0, 501325.0, 801325.0, 1101325.0, 3101325.0):
        for ratio in (1.0, 1.02, 1 / 0.7, 2.5, 20.0):
            cases.append(case(1.4, pressure, temperature, ratio))
cases.append(case(5 / 3, 801325.0, 293.15, 1.5))
cases.append(case(1.289, 801325.0, 293.15, 1.5))

with open("moist.json", "w") as out:
    json.dump({"made": {"scipy": scipy.__version__, "numpy": numpy.__version__, "python": platform.python_version()},
               "cases": cases}, out, indent=1)
    out.write("\n")
