# SPDX-License-Identifier: MIT
"""How a motor runs a travel on its cable, by quadrature."""

from common import absolute, between, exact
from course import STEP
from mpmath import mp, mpf, pi, sqrt
from travel import TRAVEL
from whole import loaded


def gauss_legendre(count):
    """Nodes and weights on [0, 1]."""
    found = []
    for i in range(count):
        x = mp.cos(pi * (i + mpf("0.75")) / (count + mpf("0.5")))
        for _ in range(8):
            slope = count * (x * mp.legendre(count, x) - mp.legendre(count - 1, x)) / (x * x - 1)
            x -= mp.legendre(count, x) / slope
        slope = count * (x * mp.legendre(count, x) - mp.legendre(count - 1, x)) / (x * x - 1)
        found.append(((1 + x) / 2, 1 / ((1 - x * x) * slope**2)))
    return found


NODES = gauss_legendre(10)


def sums(stretch, values, panels):
    """Integrals over a stretch, in panels ever shorter towards the upper end."""
    edges, total = [stretch.end - (stretch.end - stretch.begin) * (mpf(panels - i) / panels) ** 3 for i in range(panels + 1)], None
    for low, high in zip(edges, edges[1:]):
        for x, weight in NODES:
            found = [weight * (high - low) * value for value in values(stretch, low + (high - low) * x)]
            total = found if total is None else [a + b for a, b in zip(total, found)]
    return total


def drive_run(chance):
    lifted = loaded(chance)
    at, whole = lifted.at, lifted.whole
    most = whole.greatest(lambda stretch, u: lifted.along(stretch, u)[0]["drive"])
    if not most > mpf("0.1"):
        return drive_run(chance)
    at.update({"drive.kind": "motor", "drive.stall_torque": float(most) * between(chance, 1.5, 20), "drive.no_load_speed": between(chance, 0.1, 10)})
    known = chance.random() < 0.7
    if known:
        at.update({"drive.rated_voltage": chance.uniform(12, 24), "drive.supply_voltage": chance.uniform(20, 28), "drive.no_load_current": between(chance, 0.1, 3), "drive.stall_current": between(chance, 20, 100)})
        at.update({"cable.wire": "awg", "cable.strands": "solid", "cable.gauge": chance.randint(-3, 12), "cable.length": chance.uniform(0, 30), "cable.follow": chance.uniform(0, 2), "cable.temperature": chance.uniform(-20, 60)})
        greatest = at["drive.rated_voltage"] * (at["drive.no_load_current"] ** 0.5 + at["drive.stall_current"] ** 0.5) ** 2
        at["drive.no_load_speed"] = greatest / at["drive.stall_torque"] * chance.uniform(0.05, 0.95)  # no more power than it takes
    x = exact(at)
    opening = max(whole.open.y - whole.open.r - x["curtain.sill"], mpf(0))
    length = x["cable.length"] + x["cable.follow"] * opening if known else mpf(0)
    breadth = mpf("0.127e-3") * mp.power(92, mpf(36 - at["cable.gauge"]) / 39) if known else mpf(1)
    R = 2 * length * mpf("1e-6") / 58 / (pi * breadth**2 / 4) * (1 + mpf("0.00393") * (x["cable.temperature"] - 20)) if known else mpf(0)
    Vs, Vr = (x["drive.supply_voltage"], x["drive.rated_voltage"]) if known else (mpf(1), mpf(1))
    idle, stall = (x["drive.no_load_current"], x["drive.stall_current"]) if known else (mpf(0), mpf(0))
    w0, Ts = x["drive.no_load_speed"], x["drive.stall_torque"]

    def current(T):
        return idle + (stall - idle) * T / Ts

    def speed(T):
        return w0 * (Vs - R * current(T)) / Vr - w0 / Ts * T

    gives = Ts * (Vs - R * idle) / (Vr + R * (stall - idle))
    if most > gives * mpf("0.95"):
        return drive_run(chance)

    def angle(spot):
        return 2 * pi * spot.turns - (lifted.hung.leans(spot)[0] if lifted.hung else 0)

    def rates(stretch, u):
        """Of time, of torque squared over time, of energy."""
        before, _, after = stretch.about(u)
        T = max(lifted.along(stretch, u)[0]["drive"], mpf(0))
        seconds = (angle(after) - angle(before)) / (2 * STEP) / speed(T)
        return seconds, seconds * T**2, seconds * Vs * current(T)

    rough, fine = ([sum(each) for each in zip(*(sums(stretch, rates, panels) for stretch in whole.stretches))] for panels in (6, 9))
    if any(abs(a - b) > mpf("1e-10") * b for a, b in zip(rough, fine) if b):  # where it bends within a stretch
        return drive_run(chance)
    time, square, energy = fine
    turned = angle(whole.open) - angle(whole.shut)
    near = lifted.near_drive / Ts + mpf("1e-14")
    near_length = mpf("1e-14") * length + (x["cable.follow"] * TRAVEL * lifted.long if known else 0)
    beside = mpf("1e-14") + (near_length / length if length else 0)  # of what the cable enters
    answers = {
        "time_up": (time, RUN),
        "time_down": (turned / speed(mpf(0)), absolute((beside * turned + 2 * pi * TRAVEL * 4 * lifted.long / whole.made.radius(mpf(0))) / speed(mpf(0)))),
        "torque_rms": (sqrt(square / time), RUN),
        "stall_torque": (gives, float(beside)),
    }
    if known:
        start = Vs / (R + Vr / stall)
        answers.update(
            {
                "energy": (energy, RUN),
                "current_peak": (current(most), absolute(near * stall)),
                "current_start": (start, float(beside)),
                "drop_peak": (R * current(most), absolute((near + beside) * stall * R)),
                "drop_start": (R * start, float(2 * beside)),
                "resistance": (R, float(beside)),
                "cable_length": (length, absolute(near_length)),
            }
        )
    return at, {f"run.{name}": (value, "", off) for name, (value, off) in answers.items()}


RUN = 1e-8
FUNCTIONS = {"tside_drive_run": drive_run}
SLOW = FUNCTIONS
FEW = {"tside_drive_run": 4}
