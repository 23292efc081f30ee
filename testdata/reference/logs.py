#!/usr/bin/env python3
"""Made-up recorders' logs of the rocket in ../wagtail.toml, by SciPy's integration.

The flights are those of reference.py, by equations and an integrator of their own. What flew is
not what the file says: drag_factor 1.14, exponent 1.25, canopy coefficient 0.66; discharge is
the file's. Three recorders of different shape each wrote one flight, the second at 8 bar:

  one.csv    commas, standard-atmosphere heights in feet zeroed on the pad, 20 Hz
  two.txt    semicolons, decimal commas, Latin-1, a preamble; pressure in hPa over milliseconds, 25 Hz
  three.tsv  tabs, UTF-16; time, acceleration along the axis in g and height in m, 50 Hz

Noise is drawn with a fixed seed. Writes them into ../logs and logs.json with what flew.

Run, on Debian with python3-scipy, in this folder: /usr/bin/python3 logs.py
"""

import copy
import json
import math

import numpy as np
from reference import BREEZE, P_SEA, SITE, WATER, Air, canopy, degrees, fly, rule, sample

TRUE = {"body.drag_factor": 1.14, "water.discharge": 0.97, "water.exponent": 1.25, "canopy.main.coefficient": 0.66}
PRESSURES = [900e3, 800e3, 900e3]


def rocket(pressure):
    main = canopy("main", 0.90, rule("apogee", 1.0), rule("ejection"))
    main["coefficient"] = TRUE["canopy.main.coefficient"]
    return copy.deepcopy({
        "name": "Grey Wagtail", "power": "water",
        "body": {"diameter": 0.0704, "mass": 0.52, "drag": [{"mach": 0.0, "drag": 0.48}], "dragFactor": TRUE["body.drag_factor"]},
        "water": {**WATER, "exponent": TRUE["water.exponent"], "pressure": pressure},
        "canopies": [main], "site": SITE, "rail": {"length": 1.5, "tilt": degrees(4), "heading": degrees(60)}, "wind": BREEZE,
    })


def course(pressure, rate, before, after, release):
    """Times by the recorder's clock with height, air pressure and felt acceleration."""
    r = rocket(pressure)
    done, pieces = fly(r, "DOP853", 1e-10)
    end = pieces[-1][1]
    air = Air(SITE)
    rows = []
    for i in range(int((release + end + after) * rate) + 1):
        t = i / rate
        if t < release - before:
            continue
        since = t - release
        up, felt = 0.0, 9.80665 * math.cos(degrees(4))
        if 0 <= since <= end:
            s = sample(pieces, since)
            up, felt = max(s["up"], 0.0), (s["thrust"] - s["drag"]) / s["mass"]
            if since > done["canopies"][0]["time"]:
                felt = s["drag"] / s["mass"]
        rows.append((t, up, air.at(up)[0], felt))
    return rows


def standard(p):
    return 288.15 / 0.0065 * (1 - (p / P_SEA) ** (287.05287 * 0.0065 / 9.80665))


def main():
    rng = np.random.default_rng(12)
    rows = course(PRESSURES[0], 20, 12, 6, 12.37)
    zero = standard(rows[0][2])
    with open("../logs/one.csv", "w") as f:
        f.write("Time (s),Height by pressure (ft),Supply (V)\n")
        for t, _, p, _ in rows:
            h = (standard(p + 3.5 * rng.standard_normal()) - zero) / 0.3048
            f.write(f"{t:.2f},{round(h):d},3.9\n")

    rows = course(PRESSURES[1], 25, 30, 10, 31.2)
    with open("../logs/two.txt", "w", encoding="latin-1") as f:
        f.write("Höhenschreiber 2, Wiese\nDatum;17.05.2026\n\nZeit time;Luftdruck pressure [hPa];Temp [°C]\nms;hPa;°C\n")
        for t, _, p, _ in rows:
            f.write(f"{1000 * t:.0f};{(p + 4 * rng.standard_normal()) / 100:.2f};18,5\n".replace(".", ","))

    rows = course(PRESSURES[2], 50, 8, 4, 8.113)
    drift = 0.0
    with open("../logs/three.tsv", "w", encoding="utf-16") as f:
        f.write("t [s]\taxial acceleration [g]\theight [m]\n")
        for t, up, _, felt in rows:
            drift = 0.9 * drift + math.sqrt(1 - 0.81) * 0.3 * rng.standard_normal()
            f.write(f"{t:.3f}\t{felt / 9.80665 + 0.05 * rng.standard_normal():.2f}\t{up + drift:.2f}\n")

    with open("logs.json", "w") as f:
        flights = [fly(rocket(p), "DOP853", 1e-10)[0] for p in PRESSURES]
        json.dump({"true": TRUE, "pressure": PRESSURES, "apogee": [x["apogee"]["height"] for x in flights]}, f, indent=1)
        f.write("\n")


if __name__ == "__main__":
    main()
