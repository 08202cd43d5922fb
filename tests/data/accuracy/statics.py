# SPDX-License-Identifier: MIT
"""What the travel lifts, and how the guide beside it leans."""

from common import GRAVITY, absolute, between, exact
from mpmath import asin, atan2, cos, fabs, hypot, mpf, pi, sin, sqrt
from travel import TRAVEL, somewhere

# --- lift: the gain in potential energy for each radian of the bar ---


def depth_moment(made, n):
    """The integral of the height over the hanging curtain's length."""
    s, slope = made.hanging(n), made.place(n)[2]
    if s <= made.chord:
        return made.A.y * s - s**2 * cos(slope) / 2
    total = mpf(0)
    for begin, length, turn, _, y, slope in made.line:
        u = max(min(length, s - begin), mpf(0))
        if not turn:
            total += u * (y - u * cos(slope) / 2)
        elif length:
            radius = length / turn
            total += u * (y - radius * sin(slope)) + radius**2 * (cos(slope - u / radius) - cos(slope))
    return total


def energy(x, made, n, length, ends):
    sheet = GRAVITY * (x["load.areal_mass"] + x["load.wet"])
    weight = (GRAVITY * (x["load.bar_mass"] + x["load.clip_mass"]) + sheet * made.wound(n)) * length + GRAVITY * ends
    return weight * made.place(n)[1] + sheet * length * depth_moment(made, n)


def loaded(chance):
    at, x, made, big, n, place = somewhere(chance)
    at.update({"load.length": between(chance, 1, 100), "load.bar_mass": between(chance, 0.5, 10), "load.clip_mass": chance.uniform(0, 1), "load.areal_mass": chance.uniform(0, 1), "load.wet": chance.uniform(0, 0.5), "load.end_mass": chance.uniform(0, 30), "load.friction": chance.uniform(0, 0.5)})
    x.update({name: value for name, value in exact(at).items() if name[:5] == "load."})
    at["turns"] = float(made.turns(n))
    if at["turns"] < 0.01:
        return loaded(chance)
    weight = GRAVITY * ((x["load.bar_mass"] + x["load.clip_mass"] + (x["load.areal_mass"] + x["load.wet"]) * (made.wound(n) + made.s0)) * x["load.length"] + x["load.end_mass"])
    return at, x, made, n, weight, big + made.s0 + made.wound(n)


def lift_at(chance):
    """Where the bar has turned by a double, the wraps are off by its last digit: so is the torque, by less than is allowed."""
    at, x, made, n, weight, long = loaded(chance)
    step = mpf(10) ** -14
    if made.place(n - step) is None or made.place(n + step) is None:
        return lift_at(chance)
    turned = 2 * pi * (made.turns(n + step) - made.turns(n - step))
    lift, alone = ((energy(x, made, n + step, *what) - energy(x, made, n - step, *what)) / turned for what in ((x["load.length"], x["load.end_mass"]), (mpf(1), mpf(0))))
    drag = x["load.friction"] * fabs(lift)
    near = absolute(LIFT * weight * long)
    return at, {
        "torque.lift": (lift, "", near),
        "torque.drag": (drag, "", near),
        "torque.up": (lift + drag, "", near),
        "torque.drive": (lift + drag, "", near),
        "torque.down": (lift - drag, "", near),
        "torque.per_metre": (alone + x["load.friction"] * fabs(alone), "", absolute(near / x["load.length"])),
    }


def lift_work(chance):
    at, x, made, n, weight, long = loaded(chance)
    what = x["load.length"], x["load.end_mass"]
    return at, {"work": (energy(x, made, n, *what) - energy(x, made, made.n0, *what), "", absolute(LIFT * weight * long))}


# --- the guide ---


def guide_lean(chance):
    """A guide hung from an eye above everything; what it weighs and how it is cut count for nothing in how it leans."""
    at, x, made, big, n, place = somewhere(chance)
    at.update({"guide.tube.diameter": 0.03, "guide.tube.wall": 0.002, "guide.margin": 0.0, "guide.ground_clearance": 0.0, "guide.chain": 0.0, "guide.eye_clearance": 0.0, "collar.offset": chance.uniform(0, 0.1), "collar.height": 0.0})
    at.update({"eye_x": float(place[0]) + chance.uniform(-0.3, 0.3), "eye_y": float(made.A.y) + chance.uniform(0.2, 0.6), "misfit": 0.0, "turns": float(made.turns(n))})
    ex, ey, o = mpf(at["eye_x"]), mpf(at["eye_y"]), mpf(at["collar.offset"])

    def hung(n):
        ax, ay, _ = made.place(n)
        R = hypot(ax - ex, ay - ey)
        return ax, ay, sqrt(R**2 - o**2), atan2(ax - ex, ey - ay) + asin(o / R)

    _, _, d0, shut = hung(made.n0)
    if at["turns"] < 0.01 or ey - d0 * cos(shut) < 0.05:
        return guide_lean(chance)
    _, _, d, lean = hung(n)
    near = TRAVEL * 4 * (big + made.s0 + made.wound(n) + ey) / made.radius(mpf(0))
    return at, {"lean": (lean, "", absolute(near)), "drive_turns": (mpf(at["turns"]) - (lean - shut) / (2 * pi), "", absolute(near))}


LIFT = mpf("1e-14")
FUNCTIONS = {"tside_lift_at": lift_at, "tside_lift_work": lift_work, "tside_guide_lean": guide_lean}
FEW = {}
