# SPDX-License-Identifier: MIT
"""What is greatest over a whole travel: a guide's lean and sweep, the torque, what a torque lifts, what a fixed guide carries."""

from collections import namedtuple

from common import absolute, between, exact
from course import course
from mpmath import atan, cos, fabs, hypot, mpf, pi, sin
from statics import LIFT, Hung, Load, torque_of
from travel import TRAVEL


def beside(chance):
    """A travel with a guide; how far a length, an angle of the guide, and a length of it may be off."""
    at, x, whole, long = course(chance)
    hung = Hung(chance, at, whole.open, whole.shut, whole.made.A.y)
    if not hung.clears or not hung.y - whole.open.y > hung.offset:
        return beside(chance)
    least = -whole.of_spot(lambda spot: -hung.leans(spot)[1])
    ampler = hypot(least, hung.offset) / least
    if least < mpf("0.02") or hung.chain > hypot(least, hung.misfit):
        return beside(chance)
    return at, x, whole, hung, least, ampler, long + hung.y


# --- the guide ---


def hang_make(chance):
    at, x, whole, hung, least, ampler, long = beside(chance)
    at.update({"collar.height": float(hung.y - whole.open.y) * chance.uniform(0, 0.5), "guide.placing_error": chance.choice((0.0, chance.uniform(0, 0.1)))})
    at["guide.eye_clearance"] = float(hung.y - whole.open.y) * chance.uniform(0, 0.49)
    x = exact(at)
    error, G = x["guide.placing_error"], hung.length

    def down(spot):
        lean, d, D = hung.leans(spot)
        return -G * cos(lean) * d / D

    placed = swings(whole, hung, mpf(0))
    misplaced = [max(ways) for ways in zip(placed, *(swings(whole, hung, moved) for moved in ((-error, error) if error else ())))]
    of_lean, of_length = absolute(HUNG * long * ampler / least), absolute(HUNG * long * ampler)
    of_foot = absolute(HUNG * long * ampler * (1 + G / least))
    most_lean, most_foot = (absolute(near + whole.hold * ampler * more) for near, more in ((of_lean, 1 / least), (of_foot, 1 + G / least)))
    found = {
        "lean_shut": (hung.shut, of_lean),
        "lean_open": (hung.leans(whole.open)[0], of_lean),
        "lean_least": (-whole.of_spot(lambda spot: -hung.leans(spot)[0]), most_lean),
        "lean_greatest": (whole.of_spot(lambda spot: hung.leans(spot)[0]), most_lean),
        "length": (G, of_length),
        "cut_length": (hung.cut, of_length),
        "foot_x": (placed[2] - placed[0], of_foot),
        "foot_lowest": (hung.y - whole.of_spot(lambda spot: -down(spot)), most_foot),
        "clear": (hung.y - whole.open.y - x["collar.height"] - x["guide.eye_clearance"], of_length),
    }
    for i, name in enumerate(("kick_out", "kick_in", "walkway")):
        found[name], found[f"{name}_error"] = (placed[i], most_foot), (misplaced[i], most_foot)
    answers = {f"sweep.{name}": (value, "", near) for name, (value, near) in found.items()}
    answers["hang.length"] = answers["sweep.length"]
    answers["hang.weight"] = hung.weight, "", absolute(hung.weight * (of_length / hung.cut + mpf("4e-15")))
    return at, answers


def guide_skew(chance):
    at, _, whole, hung, least, ampler, long = beside(chance)
    m, G = hung.misfit, hung.length
    shut, opened, nearest = hung.reach_shut, hung.leans(whole.open)[1], hypot(least, m)
    farthest = hypot(whole.of_spot(lambda spot: hung.leans(spot)[1]), m)
    of_length, of_lean = absolute(HUNG * long * ampler), absolute(HUNG * long * ampler / least if m else 0)
    of_foot = absolute(HUNG * long * ampler * (1 + G / least) if m else 0)
    found = {
        "reach_shut": (hypot(shut, m), of_length),
        "reach_open": (hypot(opened, m), of_length),
        "lean_shut": (atan(m / shut), of_lean),
        "lean_open": (atan(m / opened), of_lean),
        "lean_greatest": (atan(fabs(m) / least), absolute(of_lean + whole.hold * ampler / least if m else 0)),
        "length": (G, of_length),
        "foot_shut": (G * m / hypot(shut, m), of_foot),
        "sweep": (G * fabs(m) * (1 / nearest - 1 / farthest), absolute(of_foot + whole.hold * ampler * G / least if m else 0)),
    }
    return at, {f"skew.{name}": (value, "", near) for name, (value, near) in found.items()}


class Eye(Hung):
    """An eye at a height, for a collar; its guide is told by its leans alone."""

    def __init__(self, y, offset):
        self.x, self.y, self.offset, self.misfit = mpf(0), y, offset, mpf(0)

    def balance(self, whole):
        """Moves it to where the greatest lean is as far from plumb as the least, which is lower wherever it stands farther outboard; None where that is not found."""

        def unbalance(x):
            return whole.of_spot(lambda spot: self.leans(spot, x)[0]) - whole.of_spot(lambda spot: -self.leans(spot, x)[0])

        before, x = whole.shut.x, whole.open.x + self.offset
        value = unbalance(before)
        for _ in range(60):
            here = unbalance(x)
            if fabs(x - before) < mpf("1e-18") or here == value:
                break
            before, x, value = x, x - here * (x - before) / (here - value), here
        self.x = x if fabs(here) < mpf("1e-16") else None
        return self.x


def swings(whole, hung, moved):
    """How far the foot kicks out and in, and the walkway, with the eye moved outboard."""

    def foot(spot):
        lean, d, D = hung.leans(spot, moved)
        return hung.x + moved + hung.length * sin(lean) * d / D

    shut, most, least = foot(whole.shut), whole.of_spot(foot), -whole.of_spot(lambda spot: -foot(spot))
    return most - shut, shut - least, most


def eye_best(chance):
    at, _, whole, long = course(chance)
    at.update({"eye_y": float(whole.made.A.y) + chance.uniform(0.1, 0.6), "collar_offset": chance.choice((0.0, chance.uniform(0, 0.1)))})
    eye = Eye(mpf(at["eye_y"]), mpf(at["collar_offset"]))
    if not eye.y - whole.open.y > eye.offset + mpf("0.02") or eye.balance(whole) is None:
        return eye_best(chance)
    least = -whole.of_spot(lambda spot: -eye.leans(spot)[1])
    return at, {"eye_x": (eye.x, "", absolute((HUNG * (long + eye.y) + whole.hold) * hypot(least, eye.offset) / least))}


def eye_least(chance):
    """Of a side whose limit of kick out is what that is of some rise: it falls as the eye rises; or without a limit, where the eye just clears."""
    made_of, x, whole, _ = course(chance)
    if whole.made.chord > whole.open.hanging:  # where the roll bears on what is not the line each place takes long to find
        return eye_least(chance)
    end = chance.randint(0, 1)
    name, collar = ("drive_end", "side.drive.collar_offset") if end == 0 else ("free_end", "side.collar.offset")
    at = {f"side.{path}": value for path, value in made_of.items() if path[:4] != "roll"}
    at.update({"side.bar.tube.diameter": made_of["roll.core"], "side.bar.tube.wall": 0.1 * made_of["roll.core"], "side.bar.core_over": 0.0, "side.curtain.thickness": made_of["roll.thickness"], "side.curtain.packing": made_of["roll.packing"], "side.length": 20.0})
    for each in ("drive_end", "free_end"):
        at.update({f"side.{each}.guide.{path}": value for path, value in {"tube.diameter": 0.03, "tube.wall": 0.002, "margin": 0.05, "ground_clearance": 0.0, "chain": 0.0, "eye_clearance": 0.01, "placing_error": chance.choice((0.0, chance.uniform(0, 0.05)))}.items()})
        at.update({f"side.{each}.extender.{path}": value for path, value in {"tube.side": 0.05, "tube.wall": 0.003, "member_height": 1.0, "member_outer": 10.0}.items()})
    height = collar.replace("collar_offset", "height").replace("offset", "height")
    at.update({collar: chance.choice((0.0, chance.uniform(0, 0.1))), height: chance.uniform(0, 0.1), "end": str(end)})
    x = exact(at)
    clears = whole.open.y + max(x[collar], x[height] + x[f"side.{name}.guide.eye_clearance"]) - whole.made.A.y
    rise = max(clears, mpf(0)) + mpf(chance.uniform(0.05, 0.5))
    eye = Eye(whole.made.A.y + rise, x[collar])
    if eye.balance(whole) is None:
        return eye_least(chance)
    eye.length = eye.leans(whole.shut)[1] + x[f"side.{name}.guide.margin"]
    if eye.y - eye.length < mpf("0.02"):
        return eye_least(chance)
    error = x[f"side.{name}.guide.placing_error"]
    kick = max(swings(whole, eye, moved)[0] for moved in {mpf(0), -error, error})
    if chance.random() < 0.8 and kick > mpf("1e-3"):
        at["side.limits.kick_out"] = float(kick)
    else:
        rise = max(clears, mpf(0))
    return at, {"rise": (rise, "", absolute(LEAST))}


# --- the torque ---


Lifted = namedtuple("Lifted", "at whole load hung long along near near_drive near_rate")


def loaded(chance):
    """A travel, its load, maybe a guide; the torque along it, and how far it and what the drive gives may be off."""
    if chance.random() < 0.5:
        at, _, whole, hung, least, ampler, long = beside(chance)
    else:
        at, _, whole, long = course(chance)
        hung, least, ampler = None, mpf(1), mpf(1)
        at.update({"eye_x": 0.0, "eye_y": 0.0, "misfit": 0.0})
    load = Load(chance, at)

    def along(stretch, u):
        """Torques, those at the bar's ends alone, the guide's rate, its moment."""
        before, spot, after = stretch.about(u)
        lift, metre, ends, ropes = load.torques(whole.made, before, after, spot.r)
        torque = torque_of(load, lift, metre, ropes)
        if not hung:
            return torque, ends, mpf(0), mpf(0)
        rate = (hung.leans(after)[0] - hung.leans(before)[0]) / (2 * pi * (after.turns - before.turns))
        moment = hung.moment(*hung.leans(spot))
        torque["drive"] = (torque["up"] + moment * rate) / (1 - rate)
        return torque, ends, rate, moment

    rate = whole.greatest(lambda stretch, u: along(stretch, u)[2]) if hung else mpf(0)
    if rate > mpf("0.9"):
        return loaded(chance)
    along_it = LIFT * long + whole.hold
    near = along_it * load.weight(whole.made)
    near_drive = along_it * (load.weight(whole.made) + (hung.weight + hung.carried if hung else 0)) * ampler**2 / (1 - rate)
    return Lifted(at, whole, load, hung, long, along, near, near_drive, LIFT * long * ampler**2 / least if hung else mpf(0))


def lift_worst(chance):
    at, whole, _, _, _, along, near, near_drive, _ = loaded(chance)
    return at, {
        "worst.drive": (whole.greatest(lambda stretch, u: along(stretch, u)[0]["drive"]), "", absolute(near_drive)),
        "least_down.down": (-whole.greatest(lambda stretch, u: -along(stretch, u)[0]["down"]), "", absolute(near)),
    }


def lift_longest(chance):
    at, whole, load, _, _, along, near, near_drive, near_rate = loaded(chance)
    at["available"] = between(chance, 1, 1000)
    T = mpf(at["available"])

    def longest(stretch, u):
        torque, ends, rate, moment = along(stretch, u)
        return (T * (1 - rate) - moment * rate - ends - load.friction * fabs(ends)) / torque["per_metre"]

    length = -whole.greatest(lambda stretch, u: -longest(stretch, u))
    least = -whole.greatest(lambda stretch, u: -along(stretch, u)[0]["per_metre"])
    if not 0 < length < 10000 or least < mpf("1e-3"):
        return lift_longest(chance)
    return at, {"length": (length, "", absolute((near_drive + T * near_rate + length * near / load.length) / least))}


HUNG = TRAVEL
LEAST = 1e-7
FUNCTIONS = {"tside_hang_make": hang_make, "tside_guide_skew": guide_skew, "tside_eye_best": eye_best, "tside_eye_least": eye_least, "tside_lift_worst": lift_worst, "tside_lift_longest": lift_longest}
SLOW = FUNCTIONS
FEW = {"tside_hang_make": 4, "tside_guide_skew": 3}
