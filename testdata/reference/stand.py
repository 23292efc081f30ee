#!/usr/bin/env python3
"""Made-up logs of a thrust stand, by SciPy's integration of equations of its own.

stand.csv: the chamber of ../wagtail.toml held nozzle down, flown with discharge 0.955 and exponent
1.22: liquid by Bernoulli with the column's inertia and the head on the pad, then gas by NACA Report
1135. R and gamma of air: ISO 2533; the density of water at 20 degrees: handbooks, from memory. The cell reads thrust and the weight of what has left, in kilograms of force, tared anywhere
and drifting; 500 Hz, with the chamber's gauge pressure. burn.csv: the curve of ../h-trainer.csv on a
stand lying down, whose cell counts the other way round, in newtons, 400 Hz.

Run, on Debian with python3-scipy, in this folder: /usr/bin/python3 stand.py
"""

import math

import numpy as np
from scipy.integrate import solve_ivp

PA, T0, R, GAMMA, G = 97500.0, 291.15, 287.05287, 1.4, 9.80565
V, BORE, THROAT, FILL, P0, RHO = 0.0042, 0.068, 0.013, 0.30, 900e3 + PA, 998.2
CD, N = 0.955, 1.22
AB, AN = math.pi / 4 * BORE**2, math.pi / 4 * THROAT**2
BETA, PASSAGE, TILT = AN / AB, 0.8 * THROAT, math.cos(math.radians(4))
VG0 = V * (1 - FILL)


def pressure(vw):
    return P0 * (VG0 / (V - vw)) ** N


def liquid(t, y):
    vw, q = y
    h = max(vw, 0) / AB
    dq = ((pressure(vw) - PA) / RHO + G * TILT * h - (1 / CD**2 - BETA**2) * q * abs(q) / 2) / (h * BETA + PASSAGE)
    return [-AN * q, dq]


def out(t, y):
    return y[0]


out.terminal = True
first = solve_ivp(liquid, (0, 5), [V * FILL, 0.0], method="DOP853", rtol=1e-10, atol=1e-13, events=out, dense_output=True)
END = first.t[-1]
P1, T1 = pressure(0), T0 * (VG0 / V) ** (N - 1)
M1 = P1 * V / (R * T1)
CRIT = (2 / (GAMMA + 1)) ** (GAMMA / (GAMMA - 1))


def gas(m):
    p, t = P1 * (m / M1) ** N, T1 * (m / M1) ** (N - 1)
    if PA <= CRIT * p:
        rate = AN * p * math.sqrt(GAMMA / (R * t)) * (2 / (GAMMA + 1)) ** ((GAMMA + 1) / (2 * (GAMMA - 1)))
        force = rate * math.sqrt(2 * GAMMA * R * t / (GAMMA + 1)) + (CRIT * p - PA) * AN
    elif p > PA:
        v = math.sqrt(2 * GAMMA / (GAMMA - 1) * R * t * (1 - (PA / p) ** ((GAMMA - 1) / GAMMA)))
        rate = AN * v * p / (R * t) * (PA / p) ** (1 / GAMMA)
        force = rate * v
    else:
        return p, 0.0, 0.0
    return p, CD * rate, CD * force


def empty(t, y):
    return gas(y[0])[0] - 1.0005 * PA


empty.terminal = True
second = solve_ivp(lambda t, y: [-gas(y[0])[1]], (END, 5), [M1], method="LSODA", rtol=1e-9, atol=1e-13, events=empty, dense_output=True)
LAST = second.t[-1]


def at(t):
    """Thrust, mass that has left, gauge pressure."""
    if t < 0:
        return 0.0, 0.0, P0 - PA
    if t < END:
        vw, q = first.sol(t)
        dq = liquid(t, (vw, q))[1]
        return RHO * AN * ((1 - BETA) * q * q + vw / AB * dq), RHO * (V * FILL - vw), pressure(vw) - PA
    m = second.sol(min(t, LAST))[0]
    p, _, force = gas(m)
    return (force if t < LAST else 0.0), RHO * V * FILL + M1 - m, max(p - PA, 0)


def main():
    rng = np.random.default_rng(7)
    with open("../logs/stand.csv", "w") as f:
        f.write("# nozzle down, 9 bar\ntime_ms,load_kg,chamber_bar\n")
        for i in range(int(500 * 4)):
            t = i / 500 - 1.4006
            force, left, p = at(t)
            reading = force + left * G + 18 + 0.3 * min(max(t / LAST, 0), 1) + 0.25 * rng.standard_normal()
            f.write(f"{2 * i},{reading / 9.80665:.3f},{p / 1e5 + 0.004 * rng.standard_normal():.3f}\n")
    rows = [line for line in open("../h-trainer.csv") if line[0] in "0123456789"]
    curve = np.array([[float(x) for x in line.split(",")] for line in rows])
    with open("../logs/burn.csv", "w") as f:
        f.write("t;Load [N]\n")
        for i in range(400 * 5):
            t = i / 400 - 1.21
            force = np.interp(t, [0, *curve[:, 0]], [0, *curve[:, 1]], left=0, right=0)
            f.write(f"{i / 400:.4f};{-force - 3.1 + 0.4 * rng.standard_normal():.2f}\n")


if __name__ == "__main__":
    main()
