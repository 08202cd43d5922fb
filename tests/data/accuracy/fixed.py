# SPDX-License-Identifier: MIT
"""A guide fixed at its foot: how far its line misses the bar, and what it carries."""

from common import GRAVITY, absolute, between, exact, least_in, root
from course import course
from mpmath import atan2, cos, fabs, hypot, mpf, pi, sin, tan
from statics import LIFT, Load, torque_of


class Line:
    """A guide's line by its lean, and its top where that is given."""

    def __init__(self, whole, at, x):
        self.whole, self.x, self.y, self.ground, self.offset = whole, x["eye_x"], x["eye_y"], x["ground"], x["collar.offset"]

    def strip(self, lean, of):
        """Least and greatest of the axis along the line's normal."""
        along = lambda spot: spot.x * cos(lean) + spot.y * sin(lean)
        return -of(lambda spot: -along(spot)), of(along)

    def width(self, lean, of):
        least, greatest = self.strip(lean, of)
        return greatest - least

    def misfits(self, lean, of):
        least, greatest = self.strip(lean, of)
        line = self.x * cos(lean) + self.y * sin(lean) - self.offset
        return line - greatest, line - least

    def narrowest(self):
        """First of the places looked at, then about there of all; least is an end of the lean's range, or a valley."""
        low, high, _ = least_in(lambda lean: self.width(lean, self.whole.looked_at), -pi / 4, pi / 4, mpf("1e-4"))
        reach = mpf("2e-3")
        return sum(least_in(lambda lean: self.width(lean, self.whole.of_spot), max(low - reach, -pi / 4), min(high + reach, pi / 4), mpf("1e-17"))[:2]) / 2

    def from_top(self):
        return root(lambda lean: sum(self.misfits(lean, self.whole.of_spot)), -mpf(1), mpf(1))


def stood(chance):
    """A guide on its foot, and how far a length of it may be off."""
    at, x, whole, long = course(chance)
    at.update({"guide.tube.diameter": 0.03, "guide.tube.wall": 0.002, "guide.foot": "fixed", "guide.eye_clearance": 0.0, "guide.placing_error": chance.choice((0.0, chance.uniform(0, 0.1)))})
    at.update({"footing.fixed_by": chance.choice(("best", "top", "both")), "footing.depth": chance.uniform(0, 1)})
    at.update({"collar.offset": chance.choice((0.0, chance.uniform(0, 0.1))), "collar.height": 0.0, "collar.mass": chance.uniform(0, 20), "collar.mass_offset": chance.uniform(0, 0.1)})
    at.update({"eye_x": float(whole.open.x) + chance.uniform(-0.2, 0.3), "eye_y": float(whole.made.A.y) + chance.uniform(0.12, 0.6), "ground": float(whole.shut.y) - chance.uniform(0.05, 0.5)})
    if at["footing.fixed_by"] == "both":
        at["footing.foot_x"] = float(whole.shut.x) + chance.uniform(-0.2, 0.3)
    x = exact(at)
    line = Line(whole, at, x)
    if not line.y - whole.open.y > line.offset:
        return stood(chance)
    if at["footing.fixed_by"] == "best":
        lean = line.narrowest()
        line.x = (sum(line.strip(lean, whole.of_spot)) / 2 + line.offset - line.y * sin(lean)) / cos(lean)
    elif at["footing.fixed_by"] == "top":
        if not sum(line.misfits(-mpf(1), whole.of_spot)) < 0 < sum(line.misfits(mpf(1), whole.of_spot)):
            return stood(chance)
        lean = line.from_top()
    else:
        lean = atan2(x["footing.foot_x"] - line.x, line.y - line.ground)
    return at, x, whole, line, lean, long + line.y - line.ground


def fixed_make(chance):
    at, x, whole, line, lean, long = stood(chance)
    high = line.y - line.ground
    foot, error = line.x + high * tan(lean), x["guide.placing_error"]
    misfits = line.misfits(lean, whole.of_spot)
    moved = [max(fabs(one) for one in line.misfits(atan2(foot + by - line.x, high), whole.of_spot)) for by in (-error, error)] if error else misfits
    near = FIXED * long + whole.hold
    of_lean = near / hypot(whole.open.x - whole.shut.x, whole.open.y - whole.shut.y) if at["footing.fixed_by"] == "best" else near / fabs(line.y - whole.open.y)
    of_length = near + of_lean * high * (1 + tan(lean) ** 2)
    found = {
        "lean": (lean, of_lean),
        "top_x": (line.x, of_length),
        "foot_x": (foot, of_length),
        "length": (high / cos(lean), of_length),
        "cut_length": (high / cos(lean) + x["footing.depth"], of_length),
        "misfit_least": (misfits[0], near),
        "misfit_greatest": (misfits[1], near),
        "misfit": (max(-misfits[0], misfits[1]), near),
        "misfit_error": (max(map(fabs, moved)), of_length),
        "clear": (line.y - whole.open.y, near),
    }
    return at, {f"fixed.{name}": (value, "", absolute(off)) for name, (value, off) in found.items()}


def fixed_force(chance):
    at, x, whole, line, lean, long = stood(chance)
    load = Load(chance, at)
    by_load, own = chance.random() < 0.6, GRAVITY * x["collar.mass"] * x["collar.mass_offset"]
    at["torque"] = 0.0 if by_load else between(chance, 0.1, 1000)
    length = (line.y - line.ground) / cos(lean)

    def couple(stretch, u):
        if not by_load:
            return mpf(at["torque"]) + own
        before, spot, after = stretch.about(u)
        lift, metre, _, ropes = load.torques(whole.made, before, after, spot.r)
        return fabs(torque_of(load, lift, metre, ropes)["up"] + own)

    def moment(stretch, u):
        spot = stretch.at(u)
        h = (spot.x - line.x) * sin(lean) - (spot.y - line.y) * cos(lean)
        return couple(stretch, u) * max(h, length - h) / length

    most = whole.greatest(couple)
    near = (LIFT * long + whole.hold) * (load.weight(whole.made) + GRAVITY * x["collar.mass"]) if by_load else mpf("1e-15") * most
    answers = {"couple": (most, near), "reaction": (most / length, near / length), "moment": (whole.greatest(moment), near + most * whole.hold / length)}
    return at, {f"forces.{name}": (value, "", absolute(off)) for name, (value, off) in answers.items()}


FIXED = mpf("1e-14")
FUNCTIONS = {"tside_fixed_make": fixed_make, "tside_fixed_force": fixed_force}
SLOW = FUNCTIONS
FEW = {"tside_fixed_make": 3}
