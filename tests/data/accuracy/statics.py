# SPDX-License-Identifier: MIT
"""What the travel lifts at a place, and how the guide beside it leans and pushes there."""

from common import GRAVITY, absolute, between, exact
from mpmath import asin, atan2, cos, fabs, hypot, mpf, pi, sin, sqrt
from parts import METALS, round_section
from travel import TRAVEL, somewhere

STEP = mpf(10) ** -14

# --- lift: the gain in potential energy for each radian of the bar ---


def depth_moment(made, spot):
    """The integral of the height over the hanging curtain's length."""
    s = spot.hanging
    if s <= made.chord and not spot.cornered:
        return made.A.y * s - s**2 * cos(spot.slope) / 2
    total = mpf(0)
    for begin, length, turn, _, y, slope in made.line:
        u = max(min(length, s - begin), mpf(0))
        if not turn:
            total += u * (y - u * cos(slope) / 2)
        elif length:
            radius = length / turn
            total += u * (y - radius * sin(slope)) + radius**2 * (cos(slope - u / radius) - cos(slope))
    return total


class Load:
    def __init__(self, chance, at):
        """Ropes that press drag; what lifts does not ask for them."""
        ropes = chance.random() < 0.3
        at.update({"load.length": between(chance, 1, 100), "load.bar_mass": between(chance, 0.5, 10), "load.clip_mass": chance.uniform(0, 1), "load.areal_mass": chance.uniform(0, 1), "load.wet": chance.uniform(0, 0.5), "load.end_mass": chance.uniform(0, 30), "load.friction": chance.uniform(0, 0.5)})
        at.update({"load.rope_pressure": between(chance, 0.1, 100), "load.rope_friction": chance.uniform(0, 1)} if ropes else {})
        x = exact(at)
        self.length, self.friction, self.ends = x["load.length"], x["load.friction"], GRAVITY * x["load.end_mass"]
        self.bar, self.sheet = GRAVITY * (x["load.bar_mass"] + x["load.clip_mass"]), GRAVITY * (x["load.areal_mass"] + x["load.wet"])
        self.ropes = 2 * x["load.rope_pressure"] * x["load.rope_friction"] if ropes else mpf(0)

    def weight(self, made):
        return (self.bar + self.sheet * (made.wound(made.n0) + made.s0)) * self.length + self.ends

    def energy(self, made, spot, length, ends):
        return ((self.bar + self.sheet * made.wound(spot.n)) * length + ends) * spot.y + self.sheet * length * depth_moment(made, spot)

    def torques(self, made, before, after, r):
        """Between two places: what lifts all, a metre of bar alone, and what stands at its ends; and what ropes drag by the metre."""
        turned = 2 * pi * (after.turns - before.turns)
        gains = ((self.energy(made, after, *what) - self.energy(made, before, *what)) / turned for what in ((self.length, self.ends), (mpf(1), mpf(0)), (mpf(0), self.ends)))
        return (*gains, self.ropes * r)


def torque_of(load, lift, metre, ropes):
    """Without a guide."""
    drag = load.friction * fabs(lift) + ropes * load.length
    return {"lift": lift, "drag": drag, "up": lift + drag, "drive": lift + drag, "down": lift - drag, "per_metre": metre + load.friction * fabs(metre) + ropes}


# --- the guide ---


class Hung:
    """A guide on an eye above everything: from a place of the axis its lean, eye to collar in the cross-section, and along itself."""

    def __init__(self, chance, at, high, shut, height):
        """high, shut: of the axis, as high as it comes and when shut; height: of the fixing."""
        at.update({"guide.tube.diameter": between(chance, 0.01, 0.1), "guide.margin": chance.uniform(0, 0.1), "guide.ground_clearance": 0.0, "guide.chain": chance.choice((0.0, chance.uniform(0, 0.1))), "guide.eye_clearance": 0.0})
        at["guide.tube.wall"] = at["guide.tube.diameter"] * chance.uniform(0.05, 0.2)
        at.update({"collar.offset": chance.choice((0.0, chance.uniform(0, 0.1))), "collar.height": 0.0, "collar.mass": chance.uniform(0, 20), "collar.mass_offset": chance.uniform(0, 0.1)})
        at.update({"eye_x": float(high.x) + chance.uniform(-0.3, 0.3), "eye_y": float(height) + chance.uniform(0.2, 0.6), "misfit": chance.choice((0.0, chance.uniform(-0.2, 0.2)))})
        x = exact(at)
        self.x, self.y, self.offset, self.misfit = x["eye_x"], x["eye_y"], x["collar.offset"], x["misfit"]
        self.chain = x["guide.chain"]
        self.shut, self.reach_shut, along_shut = self.leans(shut)
        self.length = along_shut + x["guide.margin"]
        self.cut = self.length - self.chain
        section = round_section(x["guide.tube.diameter"], x["guide.tube.wall"])
        self.weight = GRAVITY * METALS["steel"][2] * section["area"] * self.cut
        self.carried, self.carried_offset = GRAVITY * x["collar.mass"], x["collar.mass_offset"]
        self.clears = self.y - self.length > mpf("0.02") and self.leans(high)[2] > self.chain

    def leans(self, spot, moved=0):
        """moved: of the eye, outboard."""
        out, down = spot.x - self.x - moved, self.y - spot.y
        R = hypot(out, down)
        d = sqrt(R**2 - self.offset**2)
        return atan2(out, down) + asin(self.offset / R), d, hypot(d, self.misfit)

    def moment(self, lean, d, D):
        return self.weight * (self.chain + self.length) / 2 * sin(lean) * d / D + self.carried * self.carried_offset

    def energy(self, lean, d, D):
        return -self.weight * (self.chain + self.length) / 2 * cos(lean) * d / D + self.carried * self.carried_offset * lean


def at_place(chance, loaded=True):
    """A place of a travel that turns are to be found for, with what hangs there; how far a length may be off."""
    at, _, made, big, n, _ = somewhere(chance)
    load = Load(chance, at) if loaded else None
    at["turns"] = float(made.turns(n))
    at.update({"eye_x": 0.0, "eye_y": 0.0, "misfit": 0.0})
    hung = Hung(chance, at, made.spot(n), made.spot(made.n0), made.A.y) if chance.random() < 0.6 or not loaded else None
    if at["turns"] < 0.01 or hung and not hung.clears or made.place(n - STEP) is None or made.place(n + STEP) is None:
        return at_place(chance, loaded)
    return at, made, n, load, hung, big + made.s0 + made.wound(n) + (hung.y if hung else 0)


def turning(hung, before, after):
    """By how much the guide leans more for each radian of the bar."""
    return (hung.leans(after)[0] - hung.leans(before)[0]) / (2 * pi * (after.turns - before.turns))


def lift_and_push(chance):
    """Where the bar has turned by a double, the wraps are off by its last digit: so is the torque, by less than is allowed."""
    at, made, n, load, hung, long = at_place(chance)
    before, spot, after = made.spot(n - STEP), made.spot(n), made.spot(n + STEP)
    lift, metre, _, ropes = load.torques(made, before, after, spot.r)
    torque = torque_of(load, lift, metre, ropes)
    near = LIFT * load.weight(made) * long
    if hung:
        lean, d, D = hung.leans(spot)
        rate, moment = turning(hung, before, after), hung.moment(lean, d, D)
        if rate > mpf("0.9"):
            return lift_and_push(chance)
        torque["drive"] = (torque["up"] + moment * rate) / (1 - rate)
        near_drive = LIFT * (load.weight(made) + hung.weight + hung.carried) * long * (hypot(d, hung.offset) / d) ** 2 / (1 - rate)
        push = (torque["drive"] + moment) / d
        return at, load, torque, near, near_drive, (push, max(push * sin(lean) - hung.weight, mpf(0)), 10 * near_drive / d)
    return at, load, torque, near, near, None


def lift_at(chance):
    at, load, torque, near, near_drive, _ = lift_and_push(chance)
    allowed = {name: near for name in torque} | {"drive": near_drive, "per_metre": near / load.length}
    return at, {f"torque.{name}": (value, "", absolute(allowed[name])) for name, value in torque.items()}


def side_force(chance):
    at, _, _, _, _, pushed = lift_and_push(chance)
    if not pushed:
        return side_force(chance)
    force, uplift, near = pushed
    return at, {"force": (force, "", absolute(near)), "uplift": (uplift, "", absolute(near))}


def lift_work(chance):
    at, made, n, load, hung, long = at_place(chance)
    what, weight = (load.length, load.ends), load.weight(made)
    spots = made.spot(n), made.spot(made.n0)
    work = load.energy(made, spots[0], *what) - load.energy(made, spots[1], *what)
    if hung:
        now, shut = map(hung.leans, spots)
        work += hung.energy(*now) - hung.energy(*shut)
        weight = (weight + hung.weight + hung.carried) * (hypot(now[1], hung.offset) / now[1])
    return at, {"work": (work, "", absolute(LIFT * weight * long))}


def guide_lean(chance):
    at, made, n, _, hung, long = at_place(chance, loaded=False)
    lean = hung.leans(made.spot(n))[0]
    near = absolute(TRAVEL * 4 * long / made.radius(mpf(0)))
    return at, {"lean": (lean, "", near), "drive_turns": (mpf(at["turns"]) - (lean - hung.shut) / (2 * pi), "", near)}


LIFT = mpf("1e-16")
FUNCTIONS = {"tside_lift_at": lift_at, "tside_lift_work": lift_work, "tside_guide_lean": guide_lean, "tside_side_force": side_force}
FEW = {}
