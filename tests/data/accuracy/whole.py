# SPDX-License-Identifier: MIT
"""What is greatest over a whole travel: a guide's lean and sweep, the torque, what a torque lifts, what a fixed guide carries."""

from common import absolute, between, exact
from course import course
from mpmath import atan, cos, fabs, hypot, mpf, pi, sin, sqrt
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

    def foot(spot, moved):
        lean, d, D = hung.leans(spot, moved)
        return hung.x + moved + G * sin(lean) * d / D

    def swings(moved):
        """Kick out, kick in, and walkway."""
        shut, most, least = foot(whole.shut, moved), whole.of_spot(lambda spot: foot(spot, moved)), -whole.of_spot(lambda spot: -foot(spot, moved))
        return most - shut, shut - least, most

    def down(spot):
        lean, d, D = hung.leans(spot)
        return -G * cos(lean) * d / D

    placed = swings(mpf(0))
    misplaced = [max(ways) for ways in zip(placed, *(map(swings, (-error, error)) if error else ()))]
    of_lean, of_length = absolute(HUNG * long * ampler / least), absolute(HUNG * long * ampler)
    of_foot = absolute(HUNG * long * ampler * (1 + G / least))
    found = {
        "lean_shut": (hung.shut, of_lean),
        "lean_open": (hung.leans(whole.open)[0], of_lean),
        "lean_least": (-whole.of_spot(lambda spot: -hung.leans(spot)[0]), of_lean),
        "lean_greatest": (whole.of_spot(lambda spot: hung.leans(spot)[0]), of_lean),
        "length": (G, of_length),
        "cut_length": (hung.cut, of_length),
        "foot_x": (foot(whole.shut, mpf(0)), of_foot),
        "foot_lowest": (hung.y - whole.of_spot(lambda spot: -down(spot)), of_foot),
        "clear": (hung.y - whole.open.y - x["collar.height"] - x["guide.eye_clearance"], of_length),
    }
    for i, name in enumerate(("kick_out", "kick_in", "walkway")):
        found[name], found[f"{name}_error"] = (placed[i], of_foot), (misplaced[i], of_foot)
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
        "lean_greatest": (atan(fabs(m) / least), of_lean),
        "length": (G, of_length),
        "foot_shut": (G * m / hypot(shut, m), of_foot),
        "sweep": (G * fabs(m) * (1 / nearest - 1 / farthest), of_foot),
    }
    return at, {f"skew.{name}": (value, "", near) for name, (value, near) in found.items()}


def eye_best(chance):
    """Where the greatest lean is as far from plumb as the least: the lean falls wherever the eye moves outboard."""
    at, x, whole, long = course(chance)
    at.update({"eye_y": float(whole.made.A.y) + chance.uniform(0.1, 0.6), "collar_offset": chance.choice((0.0, chance.uniform(0, 0.1)))})
    hung = Hung.__new__(Hung)
    hung.x, hung.y, hung.offset, hung.misfit = mpf(0), mpf(at["eye_y"]), mpf(at["collar_offset"]), mpf(0)
    if not hung.y - whole.open.y > hung.offset + mpf("0.02"):
        return eye_best(chance)

    def unbalance(eye):
        return whole.of_spot(lambda spot: hung.leans(spot, eye)[0]) - whole.of_spot(lambda spot: -hung.leans(spot, eye)[0])

    before, eye = whole.shut.x, whole.open.x + hung.offset
    value = unbalance(before)
    for _ in range(60):
        here = unbalance(eye)
        if fabs(eye - before) < mpf("1e-18") or here == value:
            break
        before, eye, value = eye, eye - here * (eye - before) / (here - value), here
    if fabs(here) > mpf("1e-16"):
        return eye_best(chance)
    least = -whole.of_spot(lambda spot: -hung.leans(spot, eye)[1])
    return at, {"eye_x": (eye, "", absolute(HUNG * (long + hung.y) * hypot(least, hung.offset) / least))}


# --- the torque ---


def loaded(chance):
    """A travel, its load, maybe a guide; the torque along it, and how far it and what the drive gives may be off."""
    if chance.random() < 0.5:
        at, x, whole, hung, least, ampler, long = beside(chance)
    else:
        at, x, whole, long = course(chance)
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
    near = LIFT * load.weight(whole.made) * long
    near_drive = LIFT * (load.weight(whole.made) + (hung.weight + hung.carried if hung else 0)) * long * ampler**2 / (1 - rate)
    return at, whole, load, along, near, near_drive, LIFT * long * ampler**2 / least if hung else mpf(0)


def lift_worst(chance):
    at, whole, load, along, near, near_drive, _ = loaded(chance)
    return at, {
        "worst.drive": (whole.greatest(lambda stretch, u: along(stretch, u)[0]["drive"]), "", absolute(near_drive)),
        "least_down.down": (-whole.greatest(lambda stretch, u: -along(stretch, u)[0]["down"]), "", absolute(near)),
    }


def lift_longest(chance):
    at, whole, load, along, near, near_drive, near_rate = loaded(chance)
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
FUNCTIONS = {"tside_hang_make": hang_make, "tside_guide_skew": guide_skew, "tside_eye_best": eye_best, "tside_lift_worst": lift_worst, "tside_lift_longest": lift_longest}
FEW = {"tside_hang_make": 4, "tside_guide_skew": 3}
