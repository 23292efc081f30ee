#!/usr/bin/env python3
"""Planar flights of a rigid body in wind, by an integration of its own.

Writes rigid.json: inputs and results of one flight on a motor and one on water, SI
units and radians. It shares no code with the program and derives everything in the
plane of wind and rail: the angle of the axis from vertical, the centre of pressure of a
cone and three or more fins after Barrowman (1967, NASA NTRS 20010047838), Prandtl-Glauert
inside the fin root only, cross-flow over the body's planform with a coefficient taken as
an input, damping, what the jet carries off, and a thrust that is not aligned. Up to the
top; results of DOP853 at rtol 1e-12, "spread" is the greatest difference to LSODA at 1e-11.

The jet's moment is the momentum theorem's: d(I w)/dt = M - flow (x_exit - x_cg)^2 w, so the
state holds I w and the inertia is that of the moment. On water the liquid is a slug on the
nozzle and the gas is spread over the chamber; the liquid has inertia, its pressure the
column's and the passage's; the gas that flows after it is choked at first. The chamber's
buoyancy acts at the balance point from release on. "attack" under "greatest" is the
greatest angle of attack after the rail, while the airspeed is not below that of the
rail's end.

Run, on Debian with python3-scipy, in this folder: /usr/bin/python3 rigid.py
"""

import json
import math
import platform

import numpy
import scipy
from scipy.integrate import solve_ivp
from scipy.optimize import minimize_scalar

G0, R_AIR, R_EARTH, LAPSE, GAMMA = 9.80665, 287.05287, 6356766.0, 0.0065, 1.4


def air(h):
    """Pressure, density, speed of sound and gravity at a height above a site at sea level."""
    geo = R_EARTH * h / (R_EARTH + h)
    t = 288.15 - LAPSE * geo
    p = 101325.0 * (t / 288.15) ** (G0 / (R_AIR * LAPSE))
    return p, p / (R_AIR * t), math.sqrt(GAMMA * R_AIR * t), G0 * (R_EARTH / (R_EARTH + h)) ** 2


class Motor:
    """Thrust linear between the points of a curve; propellant burns with the impulse."""

    volume = 0.0
    extra = []

    def __init__(self, rocket):
        self.m, self.exit = rocket["motor"], rocket["length"]
        self.curve = [(0.0, 0.0)] + [tuple(p) for p in self.m["curve"]]
        self.impulse = [0.0]
        for (t0, f0), (t1, f1) in zip(self.curve, self.curve[1:]):
            self.impulse.append(self.impulse[-1] + (t1 - t0) * (f0 + f1) / 2)
        self.segment = 0

    def over(self):
        return self.segment + 1 >= len(self.curve)

    def thrust(self, t):
        """Thrust and propellant left in the present segment of the curve."""
        (t0, f0), (t1, f1) = self.curve[self.segment], self.curve[self.segment + 1]
        slope = (f1 - f0) / (t1 - t0)
        f = f0 + slope * (t - t0)
        burnt = self.impulse[self.segment] + (t - t0) * (f0 + f) / 2
        return f, self.m["propellant"] * (1 - burnt / self.impulse[-1])

    def lumps(self, t, e):
        """What the drive adds to the body: mass, place, pitch inertia about its own place."""
        m = self.m
        middle, r, l = self.exit - m["length"] / 2, m["diameter"] / 2, m["length"]
        grain = 0.0 if self.over() else self.thrust(t)[1]
        return [
            (m["case"], middle, m["case"] * (6 * r * r + l * l) / 12),  # a thin tube
            (m["fittings"], middle, 0.0),
            (grain, middle, grain * (3 * r * r + l * l) / 12),          # a solid cylinder
        ]

    def push(self, t, e, p_air, mass, drag):
        """Thrust, mass flow, rates of the drive's own states."""
        if self.over():
            return 0.0, 0.0, []
        f = self.thrust(t)[0]
        return f, self.m["propellant"] * f / self.impulse[-1], []

    def step(self):
        return 0.02

    def ends(self):
        return math.inf if self.over() else self.curve[self.segment + 1][0]

    def event(self):
        return None

    def next(self, e, p_air):
        self.segment += 1
        return ("burnout" if self.over() else None), e


class Water:
    """Liquid pushed out by gas, then the gas; states are jet speed, liquid volume, gas mass."""

    def __init__(self, rocket):
        w = self.w = rocket["water"]
        self.exit, self.volume = rocket["length"], w["volume"]
        self.bore, self.throat = (math.pi / 4 * w[k] ** 2 for k in ("bore", "throat"))
        self.beta = self.throat / self.bore
        self.passage = 0.8 * w["throat"]
        self.loss = 1 / w["discharge"] ** 2 - self.beta ** 2
        p, rho, _, _ = air(0.0)
        self.liquid = w["fill"] * self.volume
        self.gas = self.volume - self.liquid
        self.p0, self.t0 = p + w["pressure"], p / (rho * R_AIR)
        self.mass0 = self.p0 * self.gas / (R_AIR * self.t0)
        self.phase = "liquid"
        self.extra = [0.0, self.liquid, self.mass0]

    def state(self, e):
        """Pressure and temperature of the gas aboard."""
        n = self.w["exponent"]
        if self.phase == "liquid":
            share = self.gas / (self.volume - e[1])
        else:
            share = self.gas / self.volume * e[2] / self.mass0
        return self.p0 * share ** n, self.t0 * share ** (n - 1)

    def lumps(self, t, e):
        r = self.w["bore"] / 2
        liquid = self.w["density"] * e[1]
        h, long = e[1] / self.bore, self.volume / self.bore
        return [
            (self.w["fittings"], self.exit, 0.0),
            (liquid, self.exit - h / 2, liquid * (3 * r * r + h * h) / 12),
            (e[2], self.exit - long / 2, e[2] * (3 * r * r + long * long) / 12),
        ]

    def push(self, t, e, p_air, mass, drag):
        q, liquid, gas = e
        p, temperature = self.state(e)
        if self.phase == "liquid":
            rho, h = self.w["density"], liquid / self.bore
            # Bernoulli in the frame of the rocket, whose specific force (F - D)/M has the
            # jet's own acceleration in it: both are linear in it.
            column = rho * self.throat * h
            still = rho * self.throat * (1 - self.beta) * q * q
            rate = ((p - p_air) / rho + h * (still - drag) / mass - self.loss * q * q / 2) / (
                h * self.beta + self.passage - column * h / mass)
            return still + column * rate, rho * self.throat * q, [rate, -self.throat * q, 0.0]
        if self.phase == "over":
            return 0.0, 0.0, [0.0, 0.0, 0.0]
        k, cd = GAMMA, self.w["discharge"]
        if self.phase == "choked":
            flow = self.throat * p * math.sqrt(k / (R_AIR * temperature)) * (2 / (k + 1)) ** ((k + 1) / (2 * (k - 1)))
            f = flow * math.sqrt(2 * k * R_AIR * temperature / (k + 1)) + (self.critical() * p - p_air) * self.throat
        else:
            ratio = min(p_air / p, 1.0)
            v = math.sqrt(2 * k / (k - 1) * R_AIR * temperature * (1 - ratio ** ((k - 1) / k)))
            flow = self.throat * v * p / (R_AIR * temperature) * ratio ** (1 / k)
            f = flow * v
        return cd * f, cd * flow, [0.0, 0.0, -cd * flow]

    def critical(self):
        return (2 / (GAMMA + 1)) ** (GAMMA / (GAMMA - 1))

    def step(self):
        return 0.02 if self.phase == "over" else 0.002  # the jet is stiff

    def ends(self):
        return math.inf

    def event(self):
        """What ends the present phase as it falls through nothing, of the drive's states and the air's pressure."""
        return {
            "liquid": lambda e, p_air: e[1],
            "choked": lambda e, p_air: self.critical() * self.state(e)[0] - p_air,
            "subsonic": lambda e, p_air: self.state(e)[0] - 1.0005 * p_air,
        }.get(self.phase)

    def next(self, e, p_air):
        if self.phase == "liquid":
            self.phase = "choked"
            return "liquidOut", [0.0, 0.0, e[2]]
        self.phase = {"choked": "subsonic", "subsonic": "over"}[self.phase]
        return ("burnout" if self.phase == "over" else None), e


class Body:
    """What flies, whatever drives it."""

    def __init__(self, rocket):
        self.r = rocket
        d, l, nose = rocket["diameter"], rocket["length"], rocket["nose"]
        self.area = math.pi / 4 * d * d
        self.cone, tube = nose * d / 2, (l - nose) * d
        self.plan = self.cone + tube
        self.plan_at = (self.cone * 2 / 3 * nose + tube * (nose + l) / 2) / self.plan
        self.tilt = -rocket["rail"]["tilt"]  # from vertical toward the east: the rail leans west
        self.drive = Motor(rocket) if "motor" in rocket else Water(rocket)

    def loading(self, t, e):
        """Mass, balance point and pitch inertia about it."""
        lumps = [(self.r["mass"], self.r["balance"], self.r["inertia"])] + self.drive.lumps(t, e)
        mass = sum(m for m, _, _ in lumps)
        at = sum(m * x for m, x, _ in lumps) / mass
        return mass, at, sum(i + m * (x - at) ** 2 for m, x, i in lumps)

    def slopes(self, mach):
        """Sum of C_N_alpha, and its first and second moments about the tip of the nose."""
        f, d = self.r["fins"], self.r["diameter"]
        cr, ct, s, xr, n = f["root"], f["tip"], f["span"], f["sweep"], f["count"]
        r = d / 2
        middle = math.hypot(s, xr + ct / 2 - cr / 2)
        beta = math.sqrt(1 - mach * mach)
        fins = (1 + r / (s + r)) * 4 * n * (s / d) ** 2 / (1 + math.sqrt(1 + (2 * beta * middle / (cr + ct)) ** 2))
        fins_at = f["position"] + xr / 3 * (cr + 2 * ct) / (cr + ct) + (cr + ct - cr * ct / (cr + ct)) / 6
        nose, nose_at = 2.0, 2.0 / 3.0 * self.r["nose"]
        return nose + fins, nose * nose_at + fins * fins_at, nose * nose_at ** 2 + fins * fins_at ** 2

    def wind(self, h):
        w = self.r["wind"]
        return w["speed"] * (max(h, 0.01) / w["height"]) ** w["exponent"]  # toward the east

    def guided(self, t, y):
        s, v, e = y[0], y[1], y[2:]
        p, rho, _, g = air(s * math.cos(self.tilt))
        mass, _, _ = self.loading(t, e)
        drag = 0.5 * rho * v * abs(v) * self.r["drag"] * self.area
        f, _, rates = self.drive.push(t, e, p, mass, drag)
        buoyancy = rho * self.drive.volume * g
        return [v, (f - drag + buoyancy * math.cos(self.tilt)) / mass - g * math.cos(self.tilt)] + rates

    def attack(self, x, z, vx, vz, theta):
        rx = vx - self.wind(z)
        return abs(math.atan2(rx * math.cos(theta) - vz * math.sin(theta), rx * math.sin(theta) + vz * math.cos(theta)))

    def free(self, t, y):
        x, z, vx, vz, theta, momentum = y[:6]
        e = y[6:]
        r = self.r
        p, rho, sound, g = air(z)
        mass, at, inertia = self.loading(t, e)
        ax, az = math.sin(theta), math.cos(theta)     # forward
        bx, bz = math.cos(theta), -math.sin(theta)    # to where theta grows
        rx, rz = vx - self.wind(z), vz
        speed = math.hypot(rx, rz)
        along, across = rx * ax + rz * az, rx * bx + rz * bz
        m0, m1, m2 = self.slopes(speed / sound)
        q = 0.5 * rho * speed * self.area
        cross = 0.5 * rho * self.plan * r["crossflow"] * abs(across)
        drag = math.copysign(q * speed * r["drag"], along)
        f, leaving, rates = self.drive.push(t, e, p, mass, drag)
        lean, offset = r["misalignment"], r["offset"]
        forward = f * math.cos(lean) - drag
        side = -(q * m0 + cross) * across - f * math.sin(lean)
        omega = momentum / inertia
        arm = self.drive.exit - at
        moment = (q * (m1 - m0 * at) + cross * (self.plan_at - at)) * across
        moment += f * (arm * math.sin(lean) + offset * math.cos(lean))
        moment -= (q * (m2 - 2 * at * m1 + at * at * m0) + leaving * arm * arm) * omega
        lift = rho * self.drive.volume * g / mass
        return [vx, vz, (forward * ax + side * bx) / mass, (forward * az + side * bz) / mass - g + lift, omega, moment] + rates


def release(body):
    """When the thrust comes to exceed the weight along the rail."""
    drive, pull = body.drive, G0 * math.cos(body.tilt)
    if isinstance(drive, Water):
        f, _, _ = drive.push(0.0, drive.extra, air(0.0)[0], body.loading(0.0, drive.extra)[0], 0.0)
        assert f > body.loading(0.0, drive.extra)[0] * pull
        return 0.0
    low, high = 0.0, drive.ends()
    for _ in range(200):
        mid = (low + high) / 2
        low, high = (mid, high) if drive.thrust(mid)[0] < body.loading(mid, [])[0] * pull else (low, mid)
    return low


def fly(rocket, times, method, rtol):
    def event(f, direction=0):
        f.terminal, f.direction = True, direction
        return f

    options = dict(method=method, rtol=rtol, atol=1e-13, dense_output=True)
    body = Body(rocket)
    drive = body.drive
    t = release(body)
    y, pieces, on_rail = [0.0, 0.0] + drive.extra, [], True
    out = {"liftOff": t}
    while "apogee" not in out:
        if on_rail:
            height, own = (lambda y: y[0] * math.cos(body.tilt)), 2
            stops = [event(lambda t, y: y[0] - rocket["rail"]["length"], 1)]
        else:
            height, own = (lambda y: y[1]), 6
            stops = [event(lambda t, y: y[3], -1)]
        change = drive.event()
        if change:
            stops.append(event(lambda t, y: change(y[own:], air(height(y))[0]), -1))
        s = solve_ivp(body.guided if on_rail else body.free, (t, min(drive.ends(), t + 100.0)), y, events=stops,
                      max_step=drive.step(), **options)
        pieces.append((t, s.t[-1], on_rail, s.sol))
        t, y = float(s.t[-1]), [float(v) for v in s.y[:, -1]]
        if s.status == 1 and len(s.t_events[0]):
            if not on_rail:
                out["apogee"] = {"time": t, "height": y[1], "speed": math.hypot(y[2], y[3]), "east": y[0]}
                break
            along, v = y[:2]
            out["railExit"] = {"time": t, "height": along * math.cos(body.tilt), "speed": v}
            sin, cos = math.sin(body.tilt), math.cos(body.tilt)
            y = [along * sin, along * cos, v * sin, v * cos, body.tilt, 0.0] + y[2:]
            on_rail = False
            continue
        assert not on_rail or isinstance(drive, Motor)
        name, extra = drive.next(y[own:], air(height(y))[0])
        if name:
            out[name] = {"time": t, "height": y[1], "speed": math.hypot(y[2], y[3])}
        y = y[:own] + list(extra)
    out["samples"] = []
    for at in times:
        sol = next(sol for t0, t1, rail, sol in pieces if t0 <= at <= t1 and not rail)
        x, z, vx, vz, theta = sol(at)[:5]
        out["samples"].append({"time": at, "east": x, "up": z, "speed": math.hypot(vx, vz), "attack": body.attack(x, z, vx, vz, theta)})
    out["greatest"] = greatest(body, [p for p in pieces if not p[2]])
    return out


def greatest(body, pieces):
    """The greatest angle of attack while the airspeed is not below that of the rail's end."""
    def airspeed(y):
        return math.hypot(y[2] - body.wind(y[1]), y[3])
    first = pieces[0][3](pieces[0][0])
    best = {"time": pieces[0][0], "attack": body.attack(*first[:5])}
    for t0, t1, _, sol in pieces:
        grid = numpy.linspace(t0, t1, 2001)
        for a, b in zip(grid, grid[2:]):
            if body.attack(*sol((a + b) / 2)[:5]) <= 0.9 * best["attack"]:
                continue
            fine = minimize_scalar(lambda t: -body.attack(*sol(t)[:5]), bounds=(a, b), method="bounded", options={"xatol": 1e-10})
            if -fine.fun > best["attack"] and airspeed(sol(fine.x)) >= airspeed(first):
                best = {"time": float(fine.x), "attack": float(-fine.fun)}
    return best


def difference(a, b):
    if isinstance(a, dict):
        return max(difference(a[k], b[k]) for k in a)
    if isinstance(a, list):
        return max(difference(x, y) for x, y in zip(a, b))
    return abs(a - b)


WEST = math.radians(270.0)

FLIGHTS = {
    "motor": ({
        "diameter": 0.054, "mass": 0.78, "drag": 0.55, "balance": 0.62, "inertia": 0.052,
        "length": 1.05, "nose": 0.18,
        "fins": {"count": 4, "root": 0.12, "tip": 0.06, "span": 0.065, "sweep": 0.055, "thickness": 0.003, "position": 0.92},
        "motor": {"case": 0.09, "propellant": 0.062, "diameter": 0.029, "length": 0.16, "fittings": 0.03,
                  "curve": [[0.03, 95.0], [0.3, 88.0], [0.8, 74.0], [1.2, 60.0], [1.35, 0.0]]},
        "rail": {"length": 1.5, "tilt": math.radians(3.0), "heading": WEST},
        "wind": {"speed": 6.0, "height": 10.0, "exponent": 1 / 7, "from": WEST},
        "misalignment": math.radians(0.3), "offset": 0.0,
        "crossflow": 0.9,  # drag coefficient of the body across the flow
    }, [0.3, 0.5, 0.7, 1.0, 1.3, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0]),
    "water": ({
        "diameter": 0.088, "mass": 0.46, "drag": 0.45, "balance": 0.50, "inertia": 0.045,
        "length": 1.10, "nose": 0.22,
        "fins": {"count": 3, "root": 0.16, "tip": 0.09, "span": 0.11, "sweep": 0.07, "thickness": 0.003, "position": 0.92},
        "water": {"volume": 0.0045, "bore": 0.084, "throat": 0.013, "discharge": 0.97, "fill": 0.32, "pressure": 900e3,
                  "exponent": 1.3, "density": 998.2, "fittings": 0.09},
        "rail": {"length": 1.2, "tilt": math.radians(2.0), "heading": WEST},
        "wind": {"speed": 1.5, "height": 10.0, "exponent": 1 / 7, "from": WEST},
        "misalignment": math.radians(1.5), "offset": 0.002,
        "crossflow": 0.9,
    }, [0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.5, 0.7, 1.0, 2.0, 3.0, 4.0]),
}


def main():
    flights = {}
    for key, (rocket, times) in FLIGHTS.items():
        best = fly(rocket, times, "DOP853", 1e-12)
        body = Body(rocket)
        flights[key] = {"rocket": rocket, "plan": body.plan, "planAt": body.plan_at,
                        "results": best, "spread": difference(best, fly(rocket, times, "LSODA", 1e-11))}
    made = {"python": platform.python_version(), "numpy": numpy.__version__, "scipy": scipy.__version__}
    with open("rigid.json", "w") as f:
        json.dump({"made": made, "flights": flights}, f, indent=1)
        f.write("\n")


if __name__ == "__main__":
    main()
