#!/usr/bin/env python3
"""One planar flight of a rigid body in wind, by an integration of its own.

Writes rigid.json: inputs and results, SI units and radians. It shares no code with
the program and derives everything in the plane of wind and rail: the angle of the
axis from vertical, the centre of pressure of a cone and three or more fins after
Barrowman (1967, NASA NTRS 20010047838), Prandtl-Glauert inside the fin root only,
cross-flow over the body's planform with a coefficient taken as an input, damping,
what the jet carries off, and a thrust that is not aligned. Up to the top; results of
DOP853 at rtol 1e-12, "spread" is the greatest difference to LSODA at 1e-11.

Run, on Debian with python3-scipy, in this folder: /usr/bin/python3 rigid.py
"""

import json
import math
import platform

import numpy
import scipy
from scipy.integrate import solve_ivp

G0, R_AIR, R_EARTH, LAPSE, GAMMA = 9.80665, 287.05287, 6356766.0, 0.0065, 1.4

ROCKET = {
    "diameter": 0.054, "mass": 0.78, "drag": 0.55, "balance": 0.62, "inertia": 0.052,
    "length": 1.05, "nose": 0.18,
    "fins": {"count": 4, "root": 0.12, "tip": 0.06, "span": 0.065, "sweep": 0.055, "thickness": 0.003, "position": 0.92},
    "motor": {"case": 0.09, "propellant": 0.062, "diameter": 0.029, "length": 0.16, "fittings": 0.03,
              "curve": [[0.03, 95.0], [0.3, 88.0], [0.8, 74.0], [1.2, 60.0], [1.35, 0.0]]},
    "rail": {"length": 1.5, "tilt": math.radians(3.0), "heading": math.radians(270.0)},
    "wind": {"speed": 6.0, "height": 10.0, "exponent": 1 / 7, "from": math.radians(270.0)},
    "misalignment": math.radians(0.3),
    "crossflow": 0.9,  # drag coefficient of the body across the flow
}


def air(h):
    """Density, speed of sound and gravity at a height above a site at sea level."""
    geo = R_EARTH * h / (R_EARTH + h)
    t = 288.15 - LAPSE * geo
    p = 101325.0 * (t / 288.15) ** (G0 / (R_AIR * LAPSE))
    return p / (R_AIR * t), math.sqrt(GAMMA * R_AIR * t), G0 * (R_EARTH / (R_EARTH + h)) ** 2


D = ROCKET["diameter"]
AREA = math.pi / 4 * D * D
CURVE = [(0.0, 0.0)] + [tuple(p) for p in ROCKET["motor"]["curve"]]
IMPULSE = [0.0]
for (t0, f0), (t1, f1) in zip(CURVE, CURVE[1:]):
    IMPULSE.append(IMPULSE[-1] + (t1 - t0) * (f0 + f1) / 2)


def push(t, segment):
    """Thrust and propellant left in one segment of the curve; none after the last."""
    m = ROCKET["motor"]
    if segment + 1 >= len(CURVE):
        return 0.0, 0.0
    (t0, f0), (t1, f1) = CURVE[segment], CURVE[segment + 1]
    slope = (f1 - f0) / (t1 - t0)
    f = f0 + slope * (t - t0)
    burnt = IMPULSE[segment] + (t - t0) * (f0 + f) / 2
    return f, m["propellant"] * (1 - burnt / IMPULSE[-1])


def loading(grain):
    """Mass, balance point and pitch inertia about it."""
    m = ROCKET["motor"]
    exit_, middle = ROCKET["length"], ROCKET["length"] - m["length"] / 2
    r, l = m["diameter"] / 2, m["length"]
    lumps = [
        (ROCKET["mass"], ROCKET["balance"], ROCKET["inertia"]),
        (m["case"], middle, m["case"] * (6 * r * r + l * l) / 12),       # a thin tube
        (m["fittings"], middle, 0.0),
        (grain, middle, grain * (3 * r * r + l * l) / 12),               # a solid cylinder
    ]
    mass = sum(a for a, _, _ in lumps)
    at = sum(a * x for a, x, _ in lumps) / mass
    return mass, at, sum(i + a * (x - at) ** 2 for a, x, i in lumps)


def slopes(mach):
    """Sum of C_N_alpha, and its first and second moments about the tip of the nose."""
    f = ROCKET["fins"]
    cr, ct, s, xr, n = f["root"], f["tip"], f["span"], f["sweep"], f["count"]
    r = D / 2
    middle = math.hypot(s, xr + ct / 2 - cr / 2)
    beta = math.sqrt(1 - mach * mach)
    fins = (1 + r / (s + r)) * 4 * n * (s / D) ** 2 / (1 + math.sqrt(1 + (2 * beta * middle / (cr + ct)) ** 2))
    fins_at = f["position"] + xr / 3 * (cr + 2 * ct) / (cr + ct) + (cr + ct - cr * ct / (cr + ct)) / 6
    nose, nose_at = 2.0, 2.0 / 3.0 * ROCKET["nose"]
    return nose + fins, nose * nose_at + fins * fins_at, nose * nose_at ** 2 + fins * fins_at ** 2


PLAN_NOSE, PLAN_TUBE = ROCKET["nose"] * D / 2, (ROCKET["length"] - ROCKET["nose"]) * D
PLAN = PLAN_NOSE + PLAN_TUBE
PLAN_AT = (PLAN_NOSE * 2 / 3 * ROCKET["nose"] + PLAN_TUBE * (ROCKET["nose"] + ROCKET["length"]) / 2) / PLAN
TILT = -ROCKET["rail"]["tilt"]  # from vertical toward the east: the rail leans west


def wind(h):
    w = ROCKET["wind"]
    return w["speed"] * (max(h, 0.01) / w["height"]) ** w["exponent"]  # toward the east


def guided(segment):
    def rates(t, y):
        s, v = y
        rho, _, g = air(s * math.cos(TILT))
        f, grain = push(t, segment)
        mass, _, _ = loading(grain)
        return [v, (f - 0.5 * rho * v * abs(v) * ROCKET["drag"] * AREA) / mass - g * math.cos(TILT)]
    return rates


def free(segment):
    def rates(t, y):
        x, z, vx, vz, theta, momentum = y
        rho, sound, g = air(z)
        f, grain = push(t, segment)
        mass, at, inertia = loading(grain)
        ax, az = math.sin(theta), math.cos(theta)     # forward
        bx, bz = math.cos(theta), -math.sin(theta)    # to where theta grows
        rx, rz = vx - wind(z), vz
        speed = math.hypot(rx, rz)
        along, across = rx * ax + rz * az, rx * bx + rz * bz
        m0, m1, m2 = slopes(speed / sound)
        q = 0.5 * rho * speed * AREA
        cross = 0.5 * rho * PLAN * ROCKET["crossflow"] * abs(across)
        forward = -math.copysign(q * speed * ROCKET["drag"], along) + f * math.cos(ROCKET["misalignment"])
        side = -(q * m0 + cross) * across - f * math.sin(ROCKET["misalignment"])
        omega = momentum / inertia
        arm = ROCKET["length"] - at
        leaving = ROCKET["motor"]["propellant"] * f / IMPULSE[-1]
        moment = (q * (m1 - m0 * at) + cross * (PLAN_AT - at)) * across + f * arm * math.sin(ROCKET["misalignment"])
        moment -= (q * (m2 - 2 * at * m1 + at * at * m0) + leaving * arm * arm) * omega
        return [vx, vz, (forward * ax + side * bx) / mass, (forward * az + side * bz) / mass - g, omega, moment]
    return rates


def fly(method, rtol):
    def event(f):
        f.terminal = True
        return f

    options = dict(method=method, rtol=rtol, dense_output=True, max_step=0.02)
    pieces = []
    # Held until the thrust exceeds the weight along the rail: in the first segment.
    mass, _, _ = loading(ROCKET["motor"]["propellant"])
    low, high = 0.0, CURVE[1][0]
    for _ in range(200):
        mid = (low + high) / 2
        f, grain = push(mid, 0)
        if f < loading(grain)[0] * G0 * math.cos(TILT):
            low = mid
        else:
            high = mid
    t, y, segment, on_rail = low, [0.0, 0.0], 0, True
    out = {"liftOff": t}
    while True:
        end = CURVE[segment + 1][0] if segment + 1 < len(CURVE) else t + 100.0
        if on_rail:
            stop = event(lambda t, y: y[0] - ROCKET["rail"]["length"])
            r = solve_ivp(guided(segment), (t, end), y, events=[stop], atol=1e-13, **options)
        else:
            stop = event(lambda t, y: y[3])
            stop.direction = -1
            r = solve_ivp(free(segment), (t, end), y, events=[stop], atol=1e-13, **options)
        pieces.append((t, r.t[-1], on_rail, r.sol))
        t, y = r.t[-1], list(r.y[:, -1])
        if r.status != 1:
            segment += 1
            if segment + 1 == len(CURVE):
                out["burnout"] = {"time": t, "height": y[1], "speed": math.hypot(y[2], y[3])}
            continue
        if not on_rail:
            out["apogee"] = {"time": t, "height": y[1], "speed": math.hypot(y[2], y[3]), "east": y[0]}
            break
        s, v = y
        out["railExit"] = {"time": t, "height": s * math.cos(TILT), "speed": v}
        y = [s * math.sin(TILT), s * math.cos(TILT), v * math.sin(TILT), v * math.cos(TILT), TILT, 0.0]
        on_rail = False
    samples = []
    for at in [0.3, 0.5, 0.7, 1.0, 1.3, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0]:
        for t0, t1, rail, sol in pieces:
            if t0 <= at <= t1 and not rail:
                x, z, vx, vz, theta, _ = sol(at)
                attack = abs(math.atan2((vx - wind(z)) * math.cos(theta) - vz * math.sin(theta),
                                        (vx - wind(z)) * math.sin(theta) + vz * math.cos(theta)))
                samples.append({"time": at, "east": x, "up": z, "speed": math.hypot(vx, vz), "attack": attack})
                break
    out["samples"] = samples
    return out


def difference(a, b):
    if isinstance(a, dict):
        return max(difference(a[k], b[k]) for k in a)
    if isinstance(a, list):
        return max(difference(x, y) for x, y in zip(a, b))
    return abs(a - b)


best = fly("DOP853", 1e-12)
with open("rigid.json", "w") as f:
    json.dump({
        "made": {"python": platform.python_version(), "numpy": numpy.__version__, "scipy": scipy.__version__},
        "rocket": ROCKET, "planAt": PLAN_AT, "plan": PLAN,
        "results": best, "spread": difference(best, fly("LSODA", 1e-11)),
    }, f, indent=1)
    f.write("\n")
