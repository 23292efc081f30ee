#!/usr/bin/env python3
"""Reference flights by an integration that shares no code with the program.

It integrates each flight with SciPy's solve_ivp and writes reference.json: for
each flight all inputs and what came out, in SI units and radians. The program's
tests fly the same inputs and compare. Nothing here is needed to build or run the
program.

Run, on Debian with python3-scipy, in this folder:

    /usr/bin/python3 reference.py    # writes reference.json, in some seconds

Method. The results are those of DOP853 at a relative tolerance of 1e-12. Each
flight is integrated twice more, by DOP853 at 1e-10 and by the implicit LSODA at
1e-11; "spread" holds, in the shape of the results, the greatest difference of
the two from the first: an estimate of the error that is large rather than small.

A flight is cut into stretches on which the right-hand side is smooth. A stretch
ends at an event found on the solver's interpolant (tube end, rail end, liquid
out, choked to subsonic, gas out, a knot of the drag table, a height at which the wind has a kink, a canopy full,
apogee, a height fallen through, ground) or at a time known beforehand (a point
of the thrust curve, a timed canopy).

Equations. Air and gravity are those of the U.S. Standard Atmosphere 1976, the gas
after the liquid flows by NACA Report 1135. Derived: the liquid's flow (Bernoulli
from the free surface to the exit with the column's inertia, the momentum theorem
for the thrust), the launch tube as a piston, the motion of a point mass, a canopy's
area that grows with the way through the air (the filling distance behind Knacke's filling time, NWC TP 6575).

Taken where these leave room: buoyancy is that of the whole chamber volume at the
air's density at that height, upward, from release to landing (some gas stays
aboard); thrustToWeight is thrust over m g without
buoyancy, just before the event; drag in the jet's equation is that of body and
canopies; "max" counts up to the first canopy and leaves out "surge", the time
up to the first moment that the jet no longer gathers speed; jetSpeed is null
where no liquid flows; a site temperature or pressure of 0 takes the ISA's.

Keys of an input are those of the program's Rocket type, whatever the case of
their letters; triggers are "launch", "burnout", "apogee", "falling", "ejection".
"""

import json
import math
import platform
import sys

import numpy
import scipy
from scipy.integrate import solve_ivp
from scipy.optimize import minimize_scalar

# U.S. Standard Atmosphere 1976 / ISO 2533.
G0 = 9.80665
R_AIR = 287.05287
R_EARTH = 6356766.0
LAPSE = 0.0065  # of the lowest layer, up to 11 km: no flight here reaches higher
T_SEA, P_SEA = 288.15, 101325.0
GAMMA = 1.4

# The state.
E, N, U, VE, VN, VU, Q, VW, MG, J, X = range(11)  # X and on: fill distance of each canopy
SCALE = [1, 1, 1, 1, 1, 1, 1, 1e-4, 1e-3, 1]  # of the absolute tolerances


def geopotential(z):
    return R_EARTH * z / (R_EARTH + z)


def gravity(z):
    return G0 * (R_EARTH / (R_EARTH + z)) ** 2


class Air:
    """The air above a site: temperature and pressure there, ISA lapse above."""

    def __init__(self, site):
        self.elevation = site["elevation"]
        self.base = geopotential(self.elevation)
        self.t = site["temperature"] or T_SEA - LAPSE * self.base
        self.p = site["pressure"] or P_SEA * (1 - LAPSE * self.base / T_SEA) ** (G0 / (R_AIR * LAPSE))

    def at(self, height):
        """Pressure, density and sound speed at a height above the site."""
        h = geopotential(self.elevation + height)
        t = self.t - LAPSE * (h - self.base)
        p = self.p * (t / self.t) ** (G0 / (R_AIR * LAPSE))
        return p, p / (R_AIR * t), math.sqrt(GAMMA * R_AIR * t)

    def gravity(self, height):
        return gravity(self.elevation + height)


class Flight:
    """One flight: its constants, the mode of the moment, and the equations."""

    def __init__(self, rocket):
        self.r = rocket
        self.air = Air(rocket["site"])
        body, rail, wind = rocket["body"], rocket["rail"], rocket["wind"]
        self.area = math.pi / 4 * body["diameter"] ** 2
        tilt, heading = rail["tilt"], rail["heading"]
        self.axis = (math.sin(tilt) * math.sin(heading), math.sin(tilt) * math.cos(heading), math.cos(tilt))
        self.rail = rail["length"]
        self.toward = (-math.sin(wind["from"]), -math.cos(wind["from"]))
        self.dry = body["mass"]
        self.canopies = []
        for c in rocket["canopies"]:
            d0 = c["diameter"]
            self.canopies.append({
                "in": c, "full_area": c["coefficient"] * math.pi / 4 * d0**2, "path": c["fillConstant"] * d0,
                "rule": c[rocket["power"]], "state": "packed", "due": None,
            })
        self.guide = "held"
        self.knot = sum(p["mach"] <= 0 for p in body["drag"])  # the drag table's interval
        self.water = rocket["power"] == "water"
        if self.water:
            self.prepare_water(rocket["water"])
        else:
            self.prepare_motor(rocket["motor"])

    def prepare_water(self, w):
        self.dry += w["fittings"]
        self.V = w["volume"]
        self.Ab, self.An = math.pi / 4 * w["bore"] ** 2, math.pi / 4 * w["throat"] ** 2
        self.beta = self.An / self.Ab
        self.ln = 0.8 * w["throat"]
        self.Cd, self.rho, self.n = w["discharge"], w["density"], w["exponent"]
        self.Rg, self.gam = w["gasConstant"], w["gasGamma"]
        self.c = (2 / (self.gam + 1)) ** (self.gam / (self.gam - 1))
        self.steady = w["flow"] == "steady"
        self.Vw0 = w["fill"] * self.V
        t0 = w["temperature"] or self.air.t
        p0 = w["pressure"] + self.air.p
        tube = w["tube"]
        if tube:
            self.At = math.pi / 4 * tube["outer"] ** 2
            self.Lt = tube["length"]
            inside = math.pi / 4 * tube["inner"] ** 2 * self.Lt + tube["deadVolume"]
            assert self.Vw0 / (self.Ab - self.At) < self.Lt
            self.tube_gas = self.V - self.Vw0 - self.At * self.Lt + inside  # at release
            end = self.V - self.Vw0 + inside
            self.mg0 = p0 * self.tube_gas / (self.Rg * t0) * (self.V - self.Vw0) / end
            self.p_start = p0
            self.p_ref = p0 * (self.tube_gas / end) ** self.n
            t_ref = t0 * (self.tube_gas / end) ** (self.n - 1)
            self.drive = "tube"
        else:
            self.p_ref, t_ref = p0, t0
            self.mg0 = p0 * (self.V - self.Vw0) / (self.Rg * t0)
            self.drive = "liquid"
        # Reference state of the expansion in the chamber: p_ref at a gas volume of V − V_w0.
        self.p1 = self.p_ref * (1 - self.Vw0 / self.V) ** self.n
        self.t1 = t_ref * (1 - self.Vw0 / self.V) ** (self.n - 1)
        self.buoyant = self.V

    def prepare_motor(self, m):
        self.dry += m["fittings"] + m["case"]
        points = [(p["time"], p["thrust"]) for p in m["curve"]]
        self.curve = points if points[0][0] == 0 else [(0.0, 0.0)] + points
        self.total = sum((b[0] - a[0]) * (a[1] + b[1]) / 2 for a, b in zip(self.curve, self.curve[1:]))
        self.mp = m["propellant"]
        self.piece = 0
        self.drive = "motor"
        self.buoyant = 0.0

    def start(self):
        y = [0.0] * (X + len(self.canopies))
        if self.water:
            y[VW], y[MG] = self.Vw0, self.mg0
        return y

    # What the state means.

    def mass(self, y):
        if self.water:
            return self.dry + self.rho * y[VW] + y[MG]
        return self.dry + self.mp * (1 - y[J] / self.total)

    def travel(self, y):
        return y[E] * self.axis[0] + y[N] * self.axis[1] + y[U] * self.axis[2]

    def along(self, y):
        return y[VE] * self.axis[0] + y[VN] * self.axis[1] + y[VU] * self.axis[2]

    def chamber(self, y):
        """Absolute pressure of the gas aboard and its temperature in the gas phase."""
        if self.drive == "tube":
            return self.p_start * (self.tube_gas / (self.tube_gas + self.At * self.travel(y))) ** self.n
        if self.drive == "liquid":
            return self.p_ref * ((self.V - self.Vw0) / (self.V - y[VW])) ** self.n
        return self.p1 * (y[MG] / self.mg0) ** self.n

    def airspeed(self, y):
        """Velocity relative to the air; on the guide there is no wind."""
        if self.guide != "free":
            return y[VE], y[VN], y[VU], abs(self.along(y))
        w = self.r["wind"]
        if w.get("layers"):
            we, wn = self.layered(y[U])
        else:
            speed = w["speed"] * (y[U] / w["height"]) ** w["exponent"] if y[U] > 0 and w["speed"] > 0 else 0.0
            we, wn = speed * self.toward[0], speed * self.toward[1]
        gust = self.r.get("gust")
        if gust:  # MIL-F-8785C's one minus cosine, the height in the place of the way (form from memory)
            x = min(max((y[U] - gust["height"]) / gust["length"], 0.0), 1.0)
            speed = gust["speed"] * (1 - math.cos(math.pi * x)) / 2
            we -= speed * math.sin(gust["from"])
            wn -= speed * math.cos(gust["from"])
        e, n, u = y[VE] - we, y[VN] - wn, y[VU]
        return e, n, u, math.sqrt(e * e + n * n + u * u)

    def layered(self, height):
        """Wind to the east and north: linear between layers, above the last constant, below the first a power law."""
        w = self.r["wind"]
        heights = [layer["height"] for layer in w["layers"]]
        parts = [[-layer["speed"] * f(layer["from"]) for layer in w["layers"]] for f in (math.sin, math.cos)]
        e, n = (float(numpy.interp(height, heights, part)) for part in parts)
        if height < heights[0]:
            share = (max(height, 0.0) / heights[0]) ** w["exponent"]
            e, n = share * e, share * n
        return e, n

    def wind_knots(self):
        """Heights at which the wind has a kink."""
        gust = self.r.get("gust")
        knots = [layer["height"] for layer in self.r["wind"].get("layers", [])]
        return sorted(knots + ([gust["height"], gust["height"] + gust["length"]] if gust else []))

    def drag_coefficient(self, mach):
        table = self.r["body"]["drag"]
        i = self.knot  # below knot i, that is between i−1 and i
        if i == 0 or len(table) == 1:
            cd = table[0]["drag"]
        elif i == len(table):
            cd = table[-1]["drag"]
        else:
            a, b = table[i - 1], table[i]
            cd = a["drag"] + (b["drag"] - a["drag"]) * (mach - a["mach"]) / (b["mach"] - a["mach"])
        return cd * self.r["body"]["dragFactor"]

    def canopy_area(self, k, y):
        c = self.canopies[k]
        if c["state"] == "packed":
            return 0.0
        if c["state"] == "full":
            return c["full_area"]
        return c["full_area"] * y[X + k] / c["path"]

    def everything(self, t, y):
        """Derivatives, and the quantities that make them."""
        p_air, rho_air, a_air = self.air.at(y[U])
        g = self.air.gravity(y[U])
        re, rn, ru, vr = self.airspeed(y)
        area = self.drag_coefficient(vr / a_air) * self.area
        for k in range(len(self.canopies)):
            area += self.canopy_area(k, y)
        q_dyn = rho_air * vr * vr / 2
        D = q_dyn * area
        M = self.mass(y)
        dq = dvw = dmg = 0.0
        F = 0.0
        jet = y[Q]
        p = self.chamber(y) if self.water else math.nan
        if self.drive == "tube":
            F = (p - p_air) * self.At
        elif self.drive == "liquid":
            F, jet, dq, dvw = self.liquid(y, p - p_air, D, M, g)
        elif self.drive in ("choked", "subsonic"):
            F, dmg = self.gas(y, p, p_air)
        elif self.drive == "motor":
            (ta, fa), (tb, fb) = self.curve[self.piece], self.curve[self.piece + 1]
            F = fa + (fb - fa) * (t - ta) / (tb - ta)
        weight = M * g - rho_air * self.buoyant * g
        if self.guide == "held":
            ae = an = au = 0.0
        elif self.guide == "rail":
            a = (F - D - weight * self.axis[2]) / M
            ae, an, au = a * self.axis[0], a * self.axis[1], a * self.axis[2]
        else:
            push = (F - D) / (M * vr) if vr > 0 else 0.0
            ae, an, au = push * re, push * rn, push * ru - weight / M
        dy = [y[VE], y[VN], y[VU], ae, an, au, dq, dvw, dmg, F]
        dy += [vr if c["state"] == "filling" else 0.0 for c in self.canopies]
        return dy, dict(thrust=F, drag=D, mass=M, chamber=p, air=p_air, airspeed=vr, mach=vr / a_air, dynamic=q_dyn,
                        jet=jet, weight=weight, dq=dq, acceleration=math.sqrt(ae * ae + an * an + au * au))

    def liquid(self, y, dp, D, M, g):
        h = y[VW] / self.Ab
        rAn = self.rho * self.An
        loss = 1 / self.Cd**2 - self.beta**2
        if self.guide == "held":  # f = g cos(tilt), and neither D nor what follows from moving
            head, back, D = g * self.axis[2] * h, 0.0, 0.0
        else:
            head, back = 0.0, rAn * h / M
        if self.steady:
            q2 = (dp / self.rho + head - h * D / M) / (loss / 2 - back * (1 - self.beta))
            assert q2 > 0
            return rAn * (1 - self.beta) * q2, math.sqrt(q2), 0.0, -self.An * math.sqrt(q2)
        q = y[Q]
        dq = (dp / self.rho + head - h * D / M + (back * (1 - self.beta) - loss / 2) * q * q) / (
            h * self.beta + self.ln - back * h)
        return rAn * ((1 - self.beta) * q * q + h * dq), q, dq, -self.An * q

    def gas(self, y, p, p_air):
        gam, R = self.gam, self.Rg
        T = self.t1 * (y[MG] / self.mg0) ** (self.n - 1)
        if self.drive == "choked":
            flow = self.An * p * math.sqrt(gam / (R * T)) * (2 / (gam + 1)) ** ((gam + 1) / (2 * (gam - 1)))
            F = flow * math.sqrt(2 * gam * R * T / (gam + 1)) + (self.c * p - p_air) * self.An
        else:
            ratio = min(p_air / p, 1.0)
            v = math.sqrt(2 * gam / (gam - 1) * R * T * (1 - ratio ** ((gam - 1) / gam)))
            flow = self.An * v * p / (R * T) * ratio ** (1 / gam)
            F = flow * v
        return self.Cd * F, -self.Cd * flow

    def begin_gas(self, y):
        p, p_air = self.chamber({**dict(enumerate(y)), VW: 0.0}), self.air.at(y[U])[0]
        self.drive = "choked" if p_air / p <= self.c else "subsonic"


def events_of(f, done):
    """The crossings to watch for now: name, function of (t, y), direction."""
    out = []
    if f.guide == "held":
        def lift(t, y):
            _, x = f.everything(t, y)
            return x["thrust"] - x["weight"] * f.axis[2]
        out.append(("lift", lift, 1))
    if f.guide == "rail":
        out.append(("rail", lambda t, y: f.travel(y) - f.rail, 1))
    if f.guide == "free":
        out.append(("ground", lambda t, y: y[U], -1))
        if "apogee" not in done:
            out.append(("apogee", lambda t, y: y[VU], -1))
    if f.drive == "tube":
        out.append(("tube", lambda t, y: f.travel(y) - f.Lt, 1))
    if f.drive == "liquid":
        out.append(("liquid", lambda t, y: y[VW], -1))
    if f.drive == "choked":
        out.append(("subsonic", lambda t, y: f.air.at(y[U])[0] / f.chamber(y) - f.c, 1))
    if f.drive == "subsonic":
        out.append(("gas", lambda t, y: f.chamber(y) / f.air.at(y[U])[0] - 1.0005, -1))

    def mach(t, y):
        return f.airspeed(y)[3] / f.air.at(y[U])[2]
    table = f.r["body"]["drag"]
    if len(table) > 1:
        if f.knot < len(table):
            out.append(("mach up", lambda t, y: mach(t, y) - table[f.knot]["mach"], 1))
        if f.knot > 0 and table[f.knot - 1]["mach"] > 0:
            out.append(("mach down", lambda t, y: mach(t, y) - table[f.knot - 1]["mach"], -1))
    if f.guide == "free":
        knots = f.wind_knots()
        if f.layer < len(knots):
            out.append(("wind up", lambda t, y: y[U] - knots[f.layer], 1))
        if f.layer > 0:
            out.append(("wind down", lambda t, y: y[U] - knots[f.layer - 1], -1))
    for k, c in enumerate(f.canopies):
        if c["state"] == "filling":
            out.append(("full %d" % k, lambda t, y, k=k, c=c: y[X + k] - c["path"], 1))
        if c["state"] == "packed" and c["rule"]["trigger"] == "falling" and "apogee" in done:
            out.append(("open %d" % k, lambda t, y, c=c: y[U] - c["rule"]["value"], -1))
    return out


def fly(rocket, method, rtol):
    """Integrates one flight. Returns its results and a function of time for samples."""
    f = Flight(rocket)
    y, t = f.start(), 0.0
    atol = [rtol * s for s in SCALE] + [rtol] * len(f.canopies)
    done, pieces = {}, []

    def note(name):
        _, x = f.everything(t, y)
        done[name] = {"time": t, "height": y[U], "speed": math.sqrt(y[VE]**2 + y[VN]**2 + y[VU]**2),
                      "thrustToWeight": x["thrust"] / (x["mass"] * f.air.gravity(y[U]))}

    def burnt():
        note("burnout")
        f.drive = "none"
        for c in f.canopies:
            if c["rule"]["trigger"] == "ejection":
                c["due"] = t + rocket["motor"]["delay"]
            if c["rule"]["trigger"] == "burnout":
                c["due"] = t + c["rule"]["value"]

    def release(k):
        c = f.canopies[k]
        c.update(state="filling" if c["path"] > 0 else "full", due=None)
        _, x = f.everything(t, y)
        c["out"] = {"time": t, "height": y[U], "airspeed": x["airspeed"]}
        if c["state"] == "full":
            c["out"].update(fullTime=t, load=x["dynamic"] * c["full_area"], loadTime=t,
                            greatestDynamicPressure=x["dynamic"])

    for c in f.canopies:
        if c["rule"]["trigger"] == "launch":
            c["due"] = c["rule"]["value"]
    _, x = f.everything(0.0, y)
    if x["thrust"] > x["weight"] * f.axis[2]:
        f.guide = "rail"
        note("liftOff")
    while "ground" not in done:
        watch = events_of(f, done)
        functions = []
        for _, function, direction in watch:
            def event(t, y, function=function):
                return function(t, y)
            event.terminal, event.direction = True, direction
            functions.append(event)
        known = [(c["due"], "open %d" % k) for k, c in enumerate(f.canopies) if c["due"] is not None]
        if f.drive == "motor":
            known.append((f.curve[f.piece + 1][0], "point"))
        until, what = min(known, default=(t + 1000.0, "limit"))
        s = solve_ivp(lambda t, y: f.everything(t, y)[0], (t, until), y, method=method, rtol=rtol, atol=atol,
                      max_step=0.2 if f.drive == "none" else 0.005, events=functions, dense_output=True)
        assert s.status >= 0, s.message
        frozen = Flight.__new__(Flight)
        frozen.__dict__.update(f.__dict__)
        frozen.canopies = [dict(c) for c in f.canopies]
        pieces.append((t, s.t[-1], s.sol, frozen))
        t, y = float(s.t[-1]), [float(v) for v in s.y[:, -1]]
        if s.status == 1:
            what = next(w[0] for w, hit in zip(watch, s.t_events) if len(hit))
        name, _, which = what.partition(" ")
        if name == "lift":
            f.guide = "rail"
            note("liftOff")
        elif name == "rail":
            note("railExit")
            f.guide = "free"
            f.layer = sum(h <= y[U] for h in f.wind_knots())
        elif name == "tube":
            note("tubeExit")
            f.drive = "liquid"
        elif name == "liquid":
            note("liquidOut")
            y[VW] = 0.0
            f.begin_gas(y)
            y[Q] = 0.0
        elif name == "subsonic":
            f.drive = "subsonic"
            note("subsonic")
        elif name == "gas":
            burnt()
        elif name == "point":
            if f.piece + 2 == len(f.curve):
                burnt()
            else:
                f.piece += 1
        elif name == "mach":
            f.knot += 1 if which == "up" else -1
        elif name == "wind":
            f.layer += 1 if which == "up" else -1
        elif name == "apogee":
            note("apogee")
            for c in f.canopies:
                if c["rule"]["trigger"] == "apogee":
                    c["due"] = t + c["rule"]["value"]
        elif name == "open":
            release(int(which))
        elif name == "full":
            f.canopies[int(which)].update(state="full")
            f.canopies[int(which)]["out"]["fullTime"] = t
        elif name == "ground":
            note("ground")
        else:
            raise RuntimeError("the flight does not end")
    return results(f, pieces, done, t, y), pieces


def greatest(pieces, quantity, first=0.0, last=math.inf):
    """The greatest value of a quantity between two times, and when."""
    best, when = -math.inf, 0.0
    for a, b, sol, f in pieces:
        a, b = max(a, first), min(b, last)
        if b <= a:
            continue

        def at(t, sol=sol, f=f):
            return f.everything(t, sol(t))[1][quantity]
        grid = a + (b - a) * numpy.linspace(0, 1, 401) ** 2
        values = [at(t) for t in grid]
        i = int(numpy.argmax(values))
        value, t = values[i], grid[i]
        low, high = grid[max(i - 1, 0)], grid[min(i + 1, len(grid) - 1)]
        fine = minimize_scalar(lambda t: -at(t), bounds=(low, high), method="bounded", options={"xatol": 1e-9})
        if -fine.fun > value:
            value, t = -fine.fun, fine.x
        if value > best:
            best, when = float(value), float(t)
    return {"value": best, "time": when}


def canopy_load(pieces, k):
    """The greatest drag of one canopy while it fills, and the greatest dynamic pressure then."""
    filling = [p for p in pieces if p[3].canopies[k]["state"] == "filling"]
    if not filling:
        return {}
    best = (0.0, 0.0)
    for a, b, sol, f in filling:
        def load(t, sol=sol, f=f):
            y = sol(t)
            return f.everything(t, y)[1]["dynamic"] * f.canopy_area(k, y)
        grid = numpy.linspace(a, b, 401)
        i = int(numpy.argmax([load(t) for t in grid]))
        fine = minimize_scalar(lambda t: -load(t), bounds=(grid[max(i - 1, 0)], grid[min(i + 1, 400)]),
                               method="bounded", options={"xatol": 1e-10})
        best = max(best, (load(grid[i]), grid[i]), (-fine.fun, fine.x))
    q = greatest(filling, "dynamic")["value"]
    return {"load": float(best[0]), "loadTime": float(best[1]), "greatestDynamicPressure": q}


def results(f, pieces, done, t, y):
    first_canopy = min([c["out"]["time"] for c in f.canopies if "out" in c], default=t)
    surge_end = 0.0
    surge = None
    if f.water and not f.steady:
        # The surge of the jet's start: up to the first moment that dq/dt is no longer positive.
        a, b, sol, g = next(p for p in pieces if p[3].drive == "liquid")
        low, high = a, None
        for s in a + (b - a) * numpy.linspace(0, 1, 20001):
            if g.everything(s, sol(s))[1]["dq"] <= 0:
                high = s
                break
            low = s
        while high is not None and high - low > 1e-13:
            mid = (low + high) / 2
            low, high = (mid, high) if g.everything(mid, sol(mid))[1]["dq"] > 0 else (low, mid)
        surge_end = b if high is None else high
        surge = {"from": a, "until": surge_end, "thrust": greatest(pieces, "thrust", a, surge_end)["value"],
                 "acceleration": greatest(pieces, "acceleration", a, surge_end)["value"]}
        before = [p for p in pieces if p[1] <= a]
    else:
        before = []

    def peak(quantity):
        both = [greatest(pieces, quantity, surge_end, first_canopy)]
        if before:
            both.append(greatest(before, quantity))
        return max(both, key=lambda x: x["value"])
    out = {}
    for name in ("liftOff", "tubeExit", "railExit", "liquidOut", "subsonic", "burnout", "apogee"):
        out[name] = done.get(name)
    out["canopies"] = []
    for k, c in enumerate(f.canopies):
        out["canopies"].append({"name": c["in"]["name"], **c["out"], **canopy_load(pieces, k)})
    out["landing"] = {"time": t, "speed": done["ground"]["speed"], "vertical": -y[VU], "east": y[E], "north": y[N]}
    out["max"] = {"speed": ground_speed(pieces, first_canopy), "mach": peak("mach"), "thrust": peak("thrust"),
                  "acceleration": peak("acceleration"), "dynamicPressure": peak("dynamic")}
    out["surge"] = surge
    out["impulse"] = y[J]
    return out


def ground_speed(pieces, last):
    best = {"value": 0.0, "time": 0.0}
    for a, b, sol, _ in pieces:
        b = min(b, last)
        if b <= a:
            continue

        def speed(t, sol=sol):
            return float(numpy.linalg.norm(sol(t)[VE:VU + 1]))
        grid = numpy.linspace(a, b, 201)
        i = int(numpy.argmax([speed(t) for t in grid]))
        fine = minimize_scalar(lambda t: -speed(t), bounds=(grid[max(i - 1, 0)], grid[min(i + 1, 200)]),
                               method="bounded", options={"xatol": 1e-9})
        for t in (grid[i], fine.x):
            if speed(t) > best["value"]:
                best = {"value": speed(t), "time": float(t)}
    return best


def sample(pieces, t):
    a, b, sol, f = next(p for p in pieces if p[0] <= t <= p[1])
    y = [float(v) for v in sol(t)]
    _, x = f.everything(t, y)
    out = {"time": t, "east": y[E], "north": y[N], "up": y[U], "vEast": y[VE], "vNorth": y[VN], "vUp": y[VU]}
    if f.water:
        out.update(liquidVolume=y[VW], gasMass=y[MG], chamber=x["chamber"])
        out["jetSpeed"] = x["jet"] if f.drive == "liquid" else None
    out.update(mass=x["mass"], thrust=x["thrust"], drag=x["drag"], impulse=y[J])
    return out


def spread(reference, *others):
    """Greatest absolute differences, in the shape of the reference."""
    if isinstance(reference, dict):
        return {k: spread(v, *(o[k] for o in others)) for k, v in reference.items()
                if isinstance(v, (dict, list, float))}
    if isinstance(reference, list):
        return [spread(v, *(o[i] for o in others)) for i, v in enumerate(reference)]
    return max(abs(reference - o) for o in others)


# The flights. All invented.

def degrees(d):
    return math.radians(d)


SITE = {"elevation": 320.0, "temperature": 291.15, "pressure": 97500.0}
CALM = {"speed": 0.0, "height": 10.0, "exponent": 1 / 7, "from": 0.0}
BREEZE = {"speed": 4.0, "height": 10.0, "exponent": 1 / 7, "from": degrees(250)}


def canopy(name, diameter, water, motor, fill=8.0):
    return {"name": name, "diameter": diameter, "coefficient": 0.75, "fillConstant": fill, "shock": 1.7,
            "water": water, "motor": motor}


def rule(trigger, value=0.0):
    return {"trigger": trigger, "value": value}


WATER = {"volume": 0.0042, "bore": 0.068, "throat": 0.013, "discharge": 0.97, "fill": 0.30, "pressure": 900e3,
         "exponent": 1.4, "gas": "air", "gasConstant": R_AIR, "gasGamma": GAMMA, "temperature": 291.15,
         "density": 998.2, "flow": "unsteady", "fittings": 0.11, "tube": None}

FLIGHTS = [
    ("water", "unsteady flow, tilted rail, wind, canopy after apogee", {
        "name": "Grey Wagtail", "power": "water",
        "body": {"diameter": 0.0704, "mass": 0.52, "drag": [{"mach": 0.0, "drag": 0.48}], "dragFactor": 1.0},
        "water": WATER,
        "canopies": [canopy("main", 0.90, rule("apogee", 1.0), rule("ejection"))],
        "site": SITE, "rail": {"length": 1.5, "tilt": degrees(4), "heading": degrees(60)}, "wind": BREEZE,
    }, [0.001, 0.01, 0.05, 0.12, 0.22, 0.30, 0.36, 1.0, 2.5, 4.5, 7.0, 12.0, 20.0]),
    ("tube", "the same with a launch tube, expansion exponent 1.25 and drag against Mach", {
        "name": "Grey Wagtail on a tube", "power": "water",
        "body": {"diameter": 0.0704, "mass": 0.52, "dragFactor": 1.0,
                 "drag": [{"mach": m, "drag": d} for m, d in
                          ((0.02, 0.56), (0.1, 0.50), (0.2, 0.47), (0.8, 0.55), (1.1, 0.90))]},
        "water": {**WATER, "exponent": 1.25,
                  "tube": {"length": 0.50, "outer": 0.0128, "inner": 0.009, "deadVolume": 0.0001}},
        "canopies": [canopy("main", 0.90, rule("apogee", 1.0), rule("ejection"))],
        "site": SITE, "rail": {"length": 1.5, "tilt": degrees(4), "heading": degrees(60)}, "wind": BREEZE,
    }, [0.02, 0.08, 0.155, 0.17, 0.25, 0.35, 0.42, 1.0, 2.5, 4.5, 7.0, 12.0, 20.0]),
    ("motor", "solid motor, wind, drogue by ejection, main falling through a height", {
        "name": "Long Fell", "power": "motor",
        "body": {"diameter": 0.066, "mass": 1.35, "drag": [{"mach": 0.0, "drag": 0.52}], "dragFactor": 1.05},
        "motor": {"case": 0.190, "propellant": 0.118, "delay": 6.0, "fittings": 0.05,
                  "curve": [{"time": t, "thrust": f} for t, f in
                            ((0.03, 140.0), (0.08, 172.0), (0.20, 165.0), (0.45, 158.0), (0.80, 147.0), (1.10, 131.0),
                             (1.35, 112.0), (1.50, 60.0), (1.58, 18.0), (1.65, 0.0))]},
        "canopies": [canopy("drogue", 0.35, rule("apogee"), rule("ejection"), 6.0),
                     canopy("main", 1.20, rule("falling", 150.0), rule("falling", 150.0))],
        "site": SITE, "rail": {"length": 1.8, "tilt": degrees(5), "heading": degrees(300)},
        "wind": {"speed": 5.0, "height": 10.0, "exponent": 0.2, "from": degrees(340)},
    }, [0.01, 0.05, 0.15, 0.4, 0.9, 1.4, 1.6, 3.0, 6.0, 10.0, 20.0, 45.0]),
    ("steady", "the first flight with steady flow, calm and upright", {
        "name": "Grey Wagtail, steady", "power": "water",
        "body": {"diameter": 0.0704, "mass": 0.52, "drag": [{"mach": 0.0, "drag": 0.48}], "dragFactor": 1.0},
        "water": {**WATER, "flow": "steady"},
        "canopies": [canopy("main", 0.90, rule("apogee", 1.0), rule("ejection"))],
        "site": SITE, "rail": {"length": 1.5, "tilt": 0.0, "heading": 0.0}, "wind": CALM,
    }, [0.001, 0.01, 0.05, 0.12, 0.22, 0.30, 0.36, 1.0, 2.5, 4.5, 7.0, 12.0, 20.0]),
    ("small throat", "a narrow throat and a long push, calm and upright, canopy open at once", {
        "name": "Slow Mist", "power": "water",
        "body": {"diameter": 0.092, "mass": 0.16, "drag": [{"mach": 0.0, "drag": 0.42}], "dragFactor": 1.0},
        "water": {**WATER, "volume": 0.002, "bore": 0.088, "throat": 0.005, "discharge": 0.98, "fill": 0.25,
                  "pressure": 800e3, "fittings": 0.02, "temperature": 285.15},
        "canopies": [canopy("main", 0.60, rule("apogee", 1.0), rule("ejection"), 0.0)],
        "site": {"elevation": 0.0, "temperature": 0.0, "pressure": 0.0},
        "rail": {"length": 1.0, "tilt": 0.0, "heading": 0.0}, "wind": CALM,
    }, [0.0003, 0.002, 0.02, 0.2, 0.5, 0.7, 1.1, 1.5, 3.0, 5.0, 8.0, 15.0]),
    ("layers", "solid motor through a wind in layers and a gust that rises as one minus cosine", {
        "name": "Long Fell in layers", "power": "motor",
        "body": {"diameter": 0.066, "mass": 1.35, "drag": [{"mach": 0.0, "drag": 0.52}], "dragFactor": 1.05},
        "motor": {"case": 0.190, "propellant": 0.118, "delay": 6.0, "fittings": 0.05,
                  "curve": [{"time": t, "thrust": f} for t, f in
                            ((0.03, 140.0), (0.08, 172.0), (0.45, 158.0), (1.10, 131.0), (1.50, 60.0), (1.65, 0.0))]},
        "canopies": [canopy("drogue", 0.35, rule("apogee"), rule("ejection"), 6.0),
                     canopy("main", 1.20, rule("falling", 150.0), rule("falling", 150.0))],
        "site": SITE, "rail": {"length": 1.8, "tilt": degrees(5), "heading": degrees(300)},
        "wind": {"speed": 0.0, "height": 10.0, "exponent": 0.2, "from": 0.0, "factor": 1.0,
                 "layers": [{"height": h, "speed": s, "from": degrees(d)} for h, s, d in
                            ((12.0, 4.0, 340.0), (60.0, 6.5, 5.0), (140.0, 5.0, 60.0), (260.0, 11.0, 110.0))]},
        "gust": {"speed": 5.0, "from": degrees(200), "height": 90.0, "length": 110.0},
    }, [0.01, 0.05, 0.15, 0.4, 0.9, 1.4, 1.6, 3.0, 6.0, 10.0, 20.0, 45.0]),
]


def rounded(x, digits=15):
    if isinstance(x, dict):
        return {k: rounded(v, digits) for k, v in x.items()}
    if isinstance(x, (list, tuple)):
        return [rounded(v, digits) for v in x]
    return float("%.*g" % (digits, x)) if isinstance(x, float) else x


def main():
    flights = []
    for key, about, rocket, times in FLIGHTS:
        runs = [fly(rocket, *way) for way in (("DOP853", 1e-12), ("DOP853", 1e-10), ("LSODA", 1e-11))]
        whole = [{"results": r, "samples": [sample(p, t) for t in times]} for r, p in runs]
        flights.append({"key": key, "about": about, "rocket": rocket, **whole[0],
                        "spread": rounded(spread(*whole), 2)})
        print(key, json.dumps(rounded(whole[0]["results"], 9), indent=1), file=sys.stderr)
    made = {"python": platform.python_version(), "numpy": numpy.__version__, "scipy": scipy.__version__,
            "method": "DOP853, rtol 1e-12", "compared": ["DOP853, rtol 1e-10", "LSODA, rtol 1e-11"]}
    with open("reference.json", "w") as out:
        json.dump(rounded({"made": made, "flights": flights}), out, indent=1)
        out.write("\n")


if __name__ == "__main__":
    main()
