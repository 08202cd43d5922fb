#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Makes tests/data/accuracy.csv: points over each function's domain, by chance from a seed, and what is exact there.

    python3 tests/data/accuracy.py > tests/data/accuracy.csv

Each formula is written again here from the function's comment, in mpmath at 50 digits, of the doubles that the call gets;
each row's tolerance is the accuracy that the comment states.
"""

import csv
import random
import sys

from mpmath import mp, mpf, pi, power, sqrt

mp.dps = 50
POINTS = 12


def between(chance, low, high):
    """Evenly over the orders of magnitude: a bound of a domain is as likely as its middle."""
    return float(low * (high / low) ** chance.random())


def roll(chance):
    return {
        "roll.core": between(chance, 1e-3, 1),
        "roll.thickness": chance.choice((0.0, between(chance, 1e-6, 0.2))),
        "roll.packing": between(chance, 0.1, 5),
    }


def te(at):
    return at["roll.packing"] * at["roll.thickness"]


def taken_up(chance):
    at = dict(roll(chance), wraps=between(chance, 1e-3, 1000))
    x = exact(at)
    return at, {"length": (pi * x["wraps"] * (x["roll.core"] + te(x) * x["wraps"]), "m", 1e-15)}


def wraps(chance):
    at = dict(roll(chance), taken_up=between(chance, 1e-3, 10000))
    x = exact(at)
    q = x["taken_up"] / pi
    # the root of te n^2 + D0 n = q that is not below 0
    n = q / x["roll.core"] if te(x) == 0 else (sqrt(x["roll.core"] ** 2 + 4 * te(x) * q) - x["roll.core"]) / (2 * te(x))
    return at, {"wraps": (n, "turn", 1e-15)}


def diameter(chance):
    at = dict(roll(chance), wraps=between(chance, 1e-3, 1000))
    x = exact(at)
    return at, {"diameter": (x["roll.core"] + 2 * te(x) * x["wraps"], "m", 5e-16)}


def thickness(chance):
    core, before, turns = between(chance, 1e-3, 1), chance.choice((0.0, between(chance, 0.1, 1000))), between(chance, 0.1, 1000)
    least = float(pi * core * turns)
    at = {"core": core, "wraps_before": before, "turns": turns, "taken_up": min(least * between(chance, 1.001, 10), 10000.0)}
    x = exact(at)
    under = x["turns"] * (2 * x["wraps_before"] + x["turns"])
    answer = (x["taken_up"] / pi - x["turns"] * x["core"]) / under
    return (at, {"thickness": (answer, "m", float(5e-16 * (x["taken_up"] / pi / under / answer)))}) if answer > 0 else thickness(chance)


def cable(chance):
    at = {
        "cable.wire": "awg",
        "cable.strands": chance.choice(("stranded", "solid", "flexible")),
        "cable.gauge": chance.randint(-3, 40),
        "cable.length": between(chance, 0.01, 10000),
        "cable.temperature": chance.uniform(-60, 200),
    }
    x = exact(at)
    breadth = mpf("0.127e-3") * power(92, mpf(36 - at["cable.gauge"]) / 39)
    per_metre = mpf("1e-6") / 58 / (pi * breadth**2 / 4) * (1 if at["cable.strands"] == "solid" else mpf("1.02"))
    return at, {"resistance": (2 * x["cable.length"] * per_metre * (1 + mpf("0.00393") * (x["cable.temperature"] - 20)), "ohm", 2e-15)}


def crank(chance):
    at = {
        "crank.fitted": "crank",
        "crank.rule": "given",
        "crank.effort_limit": between(chance, 1, 500),
        "crank.ratio": between(chance, 0.1, 100),
        "crank.efficiency": between(chance, 0.1, 1),
        "crank.arm": between(chance, 0.05, 1),
        "crank.rate": between(chance, 0.5, 10),
        "torque": between(chance, 0.1, 1000),
        "drive_turns": between(chance, 0.1, 1000),
    }
    x = exact(at)
    effort = x["torque"] / (x["crank.ratio"] * x["crank.efficiency"] * x["crank.arm"])
    turns = x["drive_turns"] * x["crank.ratio"]
    return at, {
        "cranking.effort": (effort, "N", 1e-15),
        "cranking.utilisation": (effort / x["crank.effort_limit"], "", 1e-15),
        "cranking.turns": (turns, "turn", 1e-15),
        "cranking.time": (2 * pi * turns / x["crank.rate"], "s", 1e-15),
    }


def twist(chance):
    at = {
        "per_metre": between(chance, 1e-3, 1e4),
        "length": between(chance, 0.1, 500),
        "shear_modulus": between(chance, 1e9, 1e11),
        "torsion": between(chance, 1e-12, 1e-2),
    }
    x = exact(at)
    return at, {"twist": (x["per_metre"] * x["length"] ** 2 / (2 * x["shear_modulus"] * x["torsion"]), "rad", 1e-15)}


def round_tube(chance):
    """A wall as thin as its bounds allow: what is printed as D^4 - d^4 would cancel."""
    across = between(chance, 1e-3, 1)
    at = {"tube.diameter": across, "tube.wall": between(chance, 1e-5, min(0.1, 0.49 * across)), "density": between(chance, 1000, 10000)}
    x = exact(at)
    D, d = x["tube.diameter"], x["tube.diameter"] - 2 * x["tube.wall"]
    area, inertia = pi / 4 * (D**2 - d**2), pi / 64 * (D**4 - d**4)
    answers = {
        "area": (area, "m2"),
        "inertia": (inertia, "m4"),
        "section_modulus": (2 * inertia / D, "m3"),
        "plastic_modulus": ((D**3 - d**3) / 6, "m3"),
        "gyration": (sqrt(inertia / area), "m"),
        "torsion": (2 * inertia, "m4"),
        "torsion_modulus": (4 * inertia / D, "m3"),
        "mass": (x["density"] * area, "kg/m"),
    }
    return at, {f"section.{name}": (value, unit, 2e-15) for name, (value, unit) in answers.items()}


FUNCTIONS = {
    "tside_round_section": round_tube,
    "tside_bar_twist": twist,
    "tside_roll_taken_up": taken_up,
    "tside_roll_wraps": wraps,
    "tside_roll_diameter": diameter,
    "tside_roll_thickness": thickness,
    "tside_cable_resistance": cable,
    "tside_crank_effort": crank,
}


def exact(at):
    """The doubles themselves."""
    return {name: mpf(value) for name, value in at.items() if not isinstance(value, str)}


def main():
    write = csv.writer(sys.stdout, lineterminator="\n").writerow
    write(("function", "arguments", "result", "value", "unit", "tolerance", "source"))
    for function, point in FUNCTIONS.items():
        chance = random.Random(function)
        for _ in range(POINTS):
            at, answers = point(chance)
            for result, (value, unit, accuracy) in answers.items():
                arguments = ";".join(f"{name}={value!r}" if not isinstance(value, str) else f"{name}={value}" for name, value in at.items())
                write((function, arguments, result, mp.nstr(value, 25), unit, f"rel {accuracy:.3g}", "mpmath, 50 digits, by tests/data/accuracy.py"))


if __name__ == "__main__":
    main()
