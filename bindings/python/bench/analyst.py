# SPDX-License-Identifier: MIT
"""What a careful analyst would write with NumPy and SciPy, without the library: a full plan of sides whose wall stands plumb.

It shares no code with the library and is written from the mechanics: the benchmark takes its time, and the tests its answers, to 1e-9.

Everything is vectorised over sides (rows of a column) and along the travel (samples in a row). Only what SciPy solves for one number at a time,
the extender's angle, runs in a loop over the sides. Covered: leg-and-peak bows without shoulder or baseboard, a leg that reaches the hip, no
ropes, extenders at both ends, a motor with a known stall torque, steel. As careful work must, extremes along the travel are sought and not
assumed to lie at an end.

    figures = plan(side)

side: {field of a side: number or column}, SI, every field that is used. figures: {field of the plan: column}.
"""

import math

import numpy as np
from scipy import optimize

GRAVITY = 9.80665
KSI = 4448.2216152605 / 0.0254**2
STEEL_E, STEEL_G, STEEL_DENSITY = 29000 * KSI, 11200 * KSI, 7850.0
YIELD_FACTOR = 1.67  # AISC 360, chapters F and H3
FLATTEST = math.radians(75)
STEEPEST = 1e-3

# Where a quantity is sampled along a stretch: evenly, and next to both ends, so that a greatest value at an end is told from one just inside it.
SAMPLES = np.concatenate(([0, 1e-6], np.linspace(0, 1, 33)[1:-1], [1 - 1e-6, 1]))


def greatest(quantity, low, high):
    """The greatest value, row by row, of a quantity over [low, high], and where: sampled, then sampled closer about the best as long as one lies inside."""
    for _ in range(8):
        where = low + (high - low) * SAMPLES
        values = quantity(where)
        best = np.argmax(values, axis=1)[:, None]
        if np.all((best == 0) | (best == SAMPLES.size - 1)):
            break
        low, high = np.take_along_axis(where, np.maximum(best - 1, 0), 1), np.take_along_axis(where, np.minimum(best + 1, SAMPLES.size - 1), 1)
    return np.take_along_axis(values, best, 1), np.take_along_axis(where, best, 1)


# --- sections ---


class RoundTube:
    def __init__(self, outer, wall):
        inner = outer - 2 * wall
        self.area = np.pi / 4 * (outer**2 - inner**2)
        self.inertia = np.pi / 64 * (outer**4 - inner**4)
        self.modulus = 2 * self.inertia / outer
        self.torsion = 2 * self.inertia
        self.torsion_modulus = 2 * self.torsion / outer
        self.mass = STEEL_DENSITY * self.area


def corner(wall):
    """EN 10219-2, annex B: the radius outside; inside it is less by the wall."""
    return np.where(wall <= 6e-3, 2.0, np.where(wall <= 10e-3, 2.5, 3.0)) * wall


def square_inertia(side, wall):
    """EN 10219-2, annex B: the square, less its rounded corners, outside and inside."""
    radius = corner(wall)
    share, centre, own = 1 - np.pi / 4, (10 - 3 * np.pi) / (12 - 3 * np.pi), 1 / 3 - np.pi / 16 - 1 / (3 * (12 - 3 * np.pi))

    def rounded(b, r):
        return b**4 / 12 - 4 * (own * r**4 + share * r**2 * (b / 2 - centre * r) ** 2)

    return rounded(side, radius) - rounded(side - 2 * wall, radius - wall)


def square_area(side, wall):
    radius, share = corner(wall), 4 - np.pi
    return side**2 - share * radius**2 - ((side - 2 * wall) ** 2 - share * (radius - wall) ** 2)


def square_torsion_modulus(side, wall):
    """EN 10219-2, annex B: by the line amid the wall, h long around the area Ah."""
    radius = corner(wall) - wall / 2
    h = 4 * (side - wall) - 2 * (4 - np.pi) * radius
    Ah = (side - wall) ** 2 - (4 - np.pi) * radius**2
    K = 2 * Ah * wall / h
    return (wall**3 * h / 3 + 2 * K * Ah) / (wall + K / wall)


# --- the bow: a plumb leg at x = a up to h, then an arc to the peak; a tube's outer face beside it ---


class Bow:
    """One bow, in plain numbers: SciPy's scalar searches ask it thousands of times."""

    def __init__(self, a, h, rise, tube):
        self.a, self.h, self.half = a, h, tube / 2
        if rise >= a:  # tangent to the leg: half circle or pointed
            self.radius = (rise**2 + a**2) / (2 * a)
            self.x, self.y = a - self.radius, h
        else:  # a flat arch, which meets the leg in a kink
            self.radius = (rise**2 + a**2) / (2 * rise)
            self.x, self.y = 0.0, h + rise - self.radius
        self.kink = math.atan2(h - self.y, a - self.x)  # the arc's normal where it begins
        self.bends = [h] if h > 0 else []  # along the centreline, where it bends otherwise: the leg's top, a pointed peak
        if rise > a:
            self.bends.append(h + self.radius * (math.atan2(h + rise - self.y, -self.x) - self.kink))

    def crossings(self, x, y, angle, out):
        """Distances at which a half line down and inboard meets the bow, moved outboard by out."""
        dx, dy = -math.sin(angle), -math.cos(angle)
        t = (x - self.a - out) / -dx
        if t > 0 and y + t * dy <= self.h:
            yield t
        # arc, and the round about the kink, each over its own range of normals
        for cx, cy, r, low, high in ((self.x, self.y, self.radius + out, self.kink, math.pi / 2), (self.a, self.h, out, 0.0, self.kink)):
            px, py = x - cx, y - cy
            along, square = px * dx + py * dy, px * px + py * py - r * r
            root = along * along - square
            if r > 0 and root >= 0:
                for t in (-along - math.sqrt(root), -along + math.sqrt(root)):
                    if t > 0 and low <= math.atan2(py + t * dy, px + t * dx) <= high:
                        yield t

    def cross(self, x, y, angle, out=0.0):
        return min(self.crossings(x, y, angle, out), default=math.inf)

    def along(self, x, y):
        """Along the centreline from the foot."""
        return y if y <= self.h else self.h + self.radius * (math.atan2(y - self.y, x - self.x) - self.kink)

    def hole(self, x, y, angle):
        """Where along the centreline an extender from an eye has its hole."""
        t = self.cross(x, y, angle)
        return self.along(x - t * math.sin(angle), y - t * math.cos(angle))


BINDS_NOTHING, BINDS_BOW, BINDS_MEMBER, BINDS_SPACING, BINDS_STOCK, BINDS_ENDS, BINDS_ANGLE, BINDS_KINK = range(8)


def best_angle(bow, x, y, drop, spacing, longest, inner, outer):
    """The angle from plumb of an extender with the stiffest tip, sB^2 sG smallest, within its bounds; and which bound rules."""

    def apart(angle):
        return drop / math.cos(angle) - bow.cross(x, y, angle)

    def flexibility(angle):
        return bow.cross(x, y, angle) ** 2 * drop / math.cos(angle)

    looks = np.linspace(STEEPEST, FLATTEST, 25)
    widest = max(looks, key=apart)
    steepest = STEEPEST
    if apart(STEEPEST) < spacing:
        steepest = optimize.brentq(lambda angle: max(apart(angle), -1e9) - spacing, STEEPEST, widest, xtol=1e-15)
    steep_ends, flat_ends = math.atan2(x - outer, drop), math.atan2(x - inner, drop)
    flat_stock = math.acos(drop / longest)
    low, high = max(steepest, steep_ends), min(FLATTEST, flat_stock, flat_ends)

    def stiffest(low, high):
        looks = np.linspace(low, high, 25)
        values = [flexibility(angle) for angle in looks]
        best = int(np.argmin(values))
        bracket = (looks[max(best - 1, 0)], looks[min(best + 1, 24)])
        valley = optimize.minimize_scalar(flexibility, bounds=bracket, method="bounded", options={"xatol": 1e-10})
        return low if values[0] <= valley.fun else high if values[-1] <= valley.fun else valley.x

    choice = stiffest(low, high)
    off = off_bends(bow, x, y, low, high)
    if not any(steep - 1e-12 <= choice <= flat + 1e-12 for steep, flat in off) and off:
        chosen = stiffest(*off[0])
        for between in off[1:]:  # the lowest, unless a higher one is twice as stiff
            higher = stiffest(*between)
            chosen = higher if 2 * flexibility(higher) < flexibility(chosen) else chosen
        return chosen, BINDS_KINK
    if choice == low:
        return choice, (BINDS_BOW if low == STEEPEST else BINDS_SPACING) if low == steepest else BINDS_ENDS
    if choice == high:
        return choice, BINDS_STOCK if high == flat_stock else BINDS_ENDS if high == flat_ends else BINDS_ANGLE
    return choice, BINDS_NOTHING


def off_bends(bow, x, y, low, high):
    """Of the angles between two those whose hole keeps two diameters off each of the bow's bends: (steepest, flattest), stretch by stretch."""
    keep, stretches, first = 4 * bow.half, [], -math.inf
    lowest, highest = bow.hole(x, y, low), bow.hole(x, y, high)

    def angle(along):
        return low if along <= lowest else high if along >= highest else optimize.brentq(lambda at: bow.hole(x, y, at) - along, low, high, xtol=1e-15)

    for bend in [*bow.bends, math.inf]:
        if first <= bend - keep and first <= highest and bend - keep >= lowest:
            stretches.append((angle(first), angle(bend - keep)))
        first = bend + keep
    return stretches


# --- the travel: the curtain hangs plumb from its fixing, and the roll outboard of it ---


class Travel:
    """One travel a row. n counts the wraps on the bar."""

    def __init__(self, field, core_factor=1.0, thickness_factor=1.0, packing_added=0.0):
        self.x = field("frame.width") / 2 + field("curtain.standoff")
        self.hip = field("curtain.hip")
        self.core = (field("bar.tube.diameter") + field("bar.core_over")) * core_factor
        self.te = field("curtain.thickness") * thickness_factor * np.maximum(field("curtain.packing") + packing_added, 0)
        self.n0 = field("stops.wraps_shut")
        self.s0 = self.hip - (field("curtain.sill") - field("stops.seal")) - self.radius(self.n0)
        self.rail = self.hip - field("curtain.rail_depth")
        self.end = self.wraps_below(self.rail - field("stops.gap"))

    def radius(self, n):
        return self.core / 2 + self.te * n

    def wound(self, n):
        return np.pi * n * (self.core + self.te * n)

    def hanging(self, n):
        return self.s0 + self.wound(self.n0) - self.wound(n)

    def wraps_below(self, top):
        """Wraps at which the roll's top reaches a height: hip - s(n) + r(n) = top, a quadratic in n."""
        a, b = np.pi * self.te, np.pi * self.core + self.te
        c = self.hip - top + self.core / 2 - self.s0 - self.wound(self.n0)
        return -2 * c / (b + np.sqrt(b * b - 4 * a * c))

    def axis(self, n):
        return self.x + self.radius(n), self.hip - self.hanging(n)

    def greatest(self, quantity):
        return greatest(quantity, self.n0, self.end)


class Guide:
    """A guide hung on an eye: leans, and how fast it leans per radian of the bar."""

    def __init__(self, travel, x, y, offset):
        self.travel, self.x, self.y, self.offset = travel, x, y, offset

    def lean(self, n):
        x, y = self.travel.axis(n)
        return np.arctan2(x - self.x, self.y - y) + np.arcsin(self.offset / np.hypot(x - self.x, y - self.y))

    def reach(self, n):
        x, y = self.travel.axis(n)
        return np.sqrt((x - self.x) ** 2 + (y - self.y) ** 2 - self.offset**2)

    def extremes(self):
        return -self.travel.greatest(lambda n: -self.lean(n))[0], self.travel.greatest(self.lean)[0]

    def at(self, n):
        """Lean, reach and phi' = (vx cos phi + vy sin phi)/d, with the axis rising by r and moving outboard by te/2pi for each radian."""
        lean, reach = self.lean(n), self.reach(n)
        return lean, reach, (self.travel.te / (2 * np.pi) * np.cos(lean) + self.travel.radius(n) * np.sin(lean)) / reach

    def hang(self, pipe, chain, margin, carried, carried_offset):
        """Cuts the pipe to the collar when shut and a margin, and weighs it and what rides on it."""
        self.length = self.reach(self.travel.n0) + margin
        self.chain = chain
        self.cut = self.length - chain
        self.weight = GRAVITY * pipe.mass * self.cut
        self.couple = GRAVITY * carried * carried_offset

    def moment(self, lean):
        return self.weight * (self.chain + self.length) / 2 * np.sin(lean) + self.couple


def best_eye(travel, y, offset):
    """Where greatest and least lean are equal and opposite."""
    shape = y.shape

    def lean_sum(x):
        least, most = Guide(travel, np.reshape(x, shape), y, offset).extremes()
        return np.reshape(least + most, np.shape(x))

    middle = travel.axis((travel.n0 + travel.end) / 2)[0] + offset
    start = np.broadcast_to(middle, shape).ravel()
    if start.size == 1:
        return np.reshape(optimize.newton(lambda x: float(lean_sum(x)), start[0], x1=start[0] + 1e-4, tol=1e-14), shape)
    return np.reshape(optimize.newton(lean_sum, start, x1=start + 1e-4, tol=1e-14), shape)


# --- the plan ---


def plan(side):
    rows = max([np.size(value) for value in side.values() if not isinstance(value, str)])

    def field(path):
        return np.broadcast_to(np.asarray(side[path], dtype=float).reshape(-1, 1), (rows, 1))

    out = {}
    travel = Travel(field)
    shut, end = travel.n0, travel.end
    bar = RoundTube(field("bar.tube.diameter"), field("bar.tube.wall"))
    sheet = GRAVITY * (field("curtain.areal_mass") + field("curtain.wet"))
    length = field("length") + 2 * field("curtain.past")
    friction = 1 + field("friction")
    eyes, run_on = {}, {}  # both ends in line along the house: the bar runs on to where the eyes are
    for name, along in (("drive_end", "drive.along"), ("free_end", "collar.along")):
        tube = f"{name}.extender."
        eyes[name] = field("frame.tube.diameter") / 2 + field(tube + "spacer") + field(tube + "tube.side") + field(tube + "eye_stand_off")
        run_on[name] = eyes[name] - field("curtain.past") - field(along)
    past = run_on["drive_end"] + run_on["free_end"] + field("collar.half_length") + field("collar.clearance")
    ends = GRAVITY * (field("drive.mass") + field("collar.mass") + bar.mass * past)

    def per_metre(n):
        return (GRAVITY * (bar.mass + field("bar.clip_mass")) + sheet * travel.wound(n)) * travel.radius(n)

    def lift(n):
        return per_metre(n) * length + ends * travel.radius(n)

    # where the bar is
    out["curtain_length"] = length
    out["bar_length"] = length + past
    out["fixing_x"] = travel.x
    for name, n in (("shut", shut), ("open", end)):
        x, y = travel.axis(n)
        r = travel.radius(n)
        out[f"{name}.wraps"] = n
        out[f"{name}.turns"] = n - shut
        out[f"{name}.taken_up"] = travel.wound(n) - travel.wound(shut)
        out[f"{name}.diameter"] = 2 * r
        out[f"{name}.hanging"] = travel.hanging(n)
        out[f"{name}.x"], out[f"{name}.y"] = x, y
        out[f"{name}.underside"] = y - r
        out[f"{name}.opening"] = np.maximum(0, y - r - field("curtain.sill"))
        out[f"{name}.slope"] = 0 * r
    out["bar_turns"] = end - shut
    out["highest"] = travel.rail - 2 * travel.radius(travel.wraps_below(travel.rail))
    out["opening"] = out["open.opening"]
    out["seal"] = field("curtain.sill") - out["shut.underside"]

    # the two guides
    guides = {}
    for name, offset, carried, carried_offset, height in (
        ("drive_end", "drive.collar_offset", "drive.mass", "drive.mass_offset", "drive.height"),
        ("free_end", "collar.offset", "collar.mass", "collar.mass_offset", "collar.height"),
    ):
        o = field(offset)
        y = travel.hip + field(f"{name}.rise")
        pipe = RoundTube(field(f"{name}.guide.tube.diameter"), field(f"{name}.guide.tube.wall"))
        hanging = pipe, field(f"{name}.guide.chain"), field(f"{name}.guide.margin"), field(carried), field(carried_offset)
        guide = guides[name] = Guide(travel, best_eye(travel, y, o), y, o)
        guide.hang(*hanging)
        guide.pipe = pipe
        guide.hip = Guide(travel, travel.x, travel.hip, o)
        guide.hip.hang(*hanging)
        needed = field(height) + field(f"{name}.guide.eye_clearance")
        top = travel.axis(end)[1]
        guide.spare = y - top - needed
        with np.errstate(invalid="ignore"):
            guide.hip_clears = (travel.hip - top >= needed) & (travel.hip - top > o) & (guide.chain < guide.hip.reach(end))
        sweep(out, f"{name}.", guide, field(f"{name}.guide.placing_error"))

    drive, free = guides["drive_end"], guides["free_end"]

    def turns(travel, guide):
        return travel.end - travel.n0 - (guide.lean(travel.end) - guide.lean(travel.n0)) / (2 * np.pi)

    out["drive_turns"] = turns(travel, drive)
    for name, sign in (("drive_turns_least", 1), ("drive_turns_most", -1)):
        other = Travel(field, 1 + sign * field("stops.core_spread"), 1 + sign * field("stops.thickness_spread"), sign * field("stops.packing_spread"))
        out[name] = turns(other, Guide(other, drive.x, drive.y, drive.offset))

    # torque
    def given(n, guide):
        lean, _, rate = guide.at(n)
        return (lift(n) * friction + guide.moment(lean) * rate) / (1 - rate)

    worst, worst_at = travel.greatest(lambda n: given(n, drive))
    least_down = travel.greatest(lambda n: -lift(n) * (2 - friction))[1]
    for name, n in (("worst", worst_at), ("least_down", least_down)):
        out[f"{name}.turns"] = n - shut
        out[f"{name}.lift"] = lift(n)
        out[f"{name}.drag"] = lift(n) * (friction - 1)
        out[f"{name}.up"] = lift(n) * friction
        out[f"{name}.drive"] = given(n, drive) if name == "worst" else lift(n) * friction
        out[f"{name}.down"] = lift(n) * (2 - friction)
        out[f"{name}.per_metre"] = per_metre(n) * friction
    out["worst_underside"] = travel.axis(worst_at)[1] - travel.radius(worst_at)
    factor, rated = field("drive.safety_factor"), field("drive.rated_torque")
    out["design_torque"] = worst * factor
    out["drive_utilisation"] = worst * factor / rated
    stall = out["stall_torque"] = field("drive.stall_torque")

    def shortness(n):
        lean, _, rate = drive.at(n)
        return -(rated / factor * (1 - rate) - drive.moment(lean) * rate - ends * travel.radius(n) * friction) / (per_metre(n) * friction)

    out["longest_side"] = np.maximum(-travel.greatest(shortness)[0] - 2 * field("curtain.past"), 0)

    def energy(n):
        depth = travel.hanging(n)
        weight = GRAVITY * (bar.mass + field("bar.clip_mass")) + sheet * travel.wound(n)
        lean = drive.lean(n)
        curtain = -(weight * length + ends) * depth - sheet * length * depth**2 / 2
        return curtain - drive.weight * (drive.chain + drive.length) / 2 * np.cos(lean) + drive.couple * lean

    out["work"] = energy(end) - energy(shut)

    # twist and lags
    def twist(n):
        return per_metre(n) * friction * length**2 / (2 * STEEL_G * bar.torsion)

    play = field("bar.splices") * field("bar.play")
    out["twist"] = twist(worst_at)
    out["lag_elastic"] = travel.radius(worst_at) * twist(worst_at)
    out["lag_play"] = travel.radius(worst_at) * play
    out["lag_unequal"] = out["open.taken_up"] * field("diameter_difference")
    out["lag_level"] = field("out_of_level")
    out["opening_far"] = out["opening"] - travel.radius(end) * (twist(end) + play) - out["lag_unequal"] - out["lag_level"]

    # forces at the eyes
    for name, guide, torque in (("drive_end", drive, lambda n: given(n, drive)), ("free_end", free, lambda n: 0 * n)):

        def push(n, stalled=None):
            lean, reach, _ = guide.at(n)
            return ((torque(n) if stalled is None else stalled) + guide.moment(lean)) / reach

        out[f"{name}.eye_x"], out[f"{name}.eye_y"] = guide.x, guide.y
        out[f"{name}.side_force"], where = travel.greatest(push)
        out[f"{name}.side_force_turns"] = where - shut
        most = stall if guide is drive else 0 * stall
        guide.stalled = travel.greatest(lambda n: push(n, most))[0]
        guide.jammed = np.maximum(travel.greatest(lambda n: -push(n, -most))[0], 0)
        out[f"{name}.side_force_jam"] = guide.jammed
        out[f"{name}.stand.eye"], out[f"{name}.stand.run_on"] = eyes[name], run_on[name]
        if guide is drive:
            far, weight = eyes[name] - field("curtain.past"), GRAVITY * field("drive.mass")

            def bent(n, stalled=None):
                F, lean = push(n, stalled), guide.lean(n)
                return np.hypot(F * np.cos(lean) * far, weight * run_on["drive_end"] + F * np.sin(lean) * far)

            guide.bar = [travel.greatest(lambda n, torque=torque: bent(n, torque))[0] for torque in (None, stall, -stall)]
        out[f"{name}.side_force_stall"] = guide.stalled
        out[f"{name}.uplift"] = np.maximum(travel.greatest(lambda n: push(n) * np.sin(guide.lean(n)) - guide.weight)[0], 0)
        lean, reach, force = guide.lean(end), guide.reach(end), push(end)
        eta = np.arctan2(force * np.cos(lean), guide.weight - force * np.sin(lean))
        out[f"{name}.chain_swing"] = guide.chain * np.sin(eta - lean) * (guide.length - reach) / reach if guide is drive else 0 * lean
        with np.errstate(invalid="ignore"):  # a bar that would rise past the guide's eye on the hip
            least, most = guide.hip.extremes()
        out[f"{name}.hip_kick_out"] = np.where(guide.hip_clears, guide.hip.length * (np.sin(most) - np.sin(guide.hip.lean(shut))), np.nan)
        out[f"{name}.hip_lean_greatest"] = np.where(guide.hip_clears, np.maximum(most, -least), np.nan)
    with np.errstate(invalid="ignore"):
        out["drive_end.hip_torque"] = np.where(drive.hip_clears, travel.greatest(lambda n: given(n, drive.hip))[0], np.nan)

    for name in guides:
        thing = "drive." if name == "drive_end" else "collar."
        tube = f"{name}.extender."
        outer = field("frame.tube.diameter") / 2 + field(tube + "spacer") + field(tube + "tube.side")
        beside = field("curtain.past") + run_on[name] - field(thing + "half_length") - outer < field(tube + "bar_clearance") - 1e-9
        layout(out, f"{name}.", field, guides[name], travel, np.where(beside, field(thing + "height"), 0))

    # strength
    lines = []

    def stress(demand, grade, share=1.0):
        limit = share * side[grade] / YIELD_FACTOR
        lines.append((demand, limit, demand / limit))

    def force(demand, limit):
        lines.append((demand, limit, demand / limit))

    arm = field("bar.screws") * field("bar.tube.diameter") / 2
    stress(worst / bar.torsion_modulus, "bar.material.yield", 0.6)
    stress(stall / bar.torsion_modulus, "bar.material.yield", 0.6)
    stress(drive.bar[0] / bar.modulus, "bar.material.yield")
    stress(np.maximum(drive.bar[1], drive.bar[2]) / bar.modulus, "bar.material.yield")
    force(stall / arm, field("bar.screw_limit"))
    force(per_metre(worst_at) * friction * np.maximum(length - field("bar.splice_near"), 0) / arm, field("bar.screw_limit"))
    force(stall / arm, field("bar.screw_limit"))
    for name, guide in guides.items():
        tube, e = f"{name}.extender.", out[f"{name}.layout.angle"]
        sB, sG = out[f"{name}.layout.bow_distance"], out[f"{name}.layout.member_distance"]
        B, T, hole = field(tube + "tube.side"), field(tube + "tube.wall"), field(tube + "bolt_hole")
        inertia, W, apart = square_inertia(B, T), guide.weight, sG - sB
        inward, outward = inertia - T * hole**3 / 6, inertia - 2 * hole * T * (((B - T) / 2) ** 2 + T**2 / 12)
        off, flat = field(tube + "eye_stand_off"), B / 2 - corner(T)
        arm = off + B + field(tube + "spacer")

        def bears(F):
            """Combined stress, tip, shear on bow and member bolt, their pull, both at once, eye bolt."""
            P, X = F * np.cos(e) + W * np.sin(e), F * np.sin(e) - W * np.cos(e)
            sigma = abs(P) * sB * B / 2 / inward + abs(X) * arm * B / 2 / outward + abs(X) / (square_area(B, T) - 2 * hole * T)
            tau = abs(P) * (B / 2 + off) / square_torsion_modulus(B, T) + abs(P) / (2 * (B - 2 * T - 2 * (corner(T) - T)) * T)
            shear, pull = (np.hypot(P * sG / apart, X), np.hypot(P * sB / apart, X)), (abs(P) * arm / flat + np.maximum(-X, 0) * arm / apart, np.maximum(X, 0) * arm / apart)
            both = [np.hypot(s / field(tube + "bolt_limit"), p / field(tube + "pull_limit")) for s, p in zip(shear, pull)]
            return (sigma / 2 + np.sqrt(sigma**2 / 4 + (tau / 0.6) ** 2), abs(P) * sB**2 * sG / (3 * STEEL_E * inertia),
                    *shear, *pull, *both, np.hypot(F, W) * off / (np.pi * field(tube + "eye_root") ** 3 / 32))

        combined, tip, bow, member, bow_pull, member_pull, *both, eye = np.maximum(bears(np.maximum(guide.stalled, 0)), bears(-guide.jammed))
        most = stall if guide is drive else 0 * stall
        least_lean, most_lean = out[f"{name}.sweep.lean_least"], out[f"{name}.sweep.lean_greatest"]
        stress(np.maximum(most + guide.moment(most_lean), most - guide.moment(least_lean)) / guide.pipe.modulus, f"{name}.guide.material.yield")
        stress(combined, tube + "material.yield")
        lines.append((tip, None, None))
        for demand, limit in ((bow, "bolt_limit"), (member, "bolt_limit"), (bow_pull, "pull_limit"), (member_pull, "pull_limit")):
            force(demand, field(tube + limit))
        for demand in both:
            force(demand, 1.0 + 0 * demand)
        stress(eye, tube + "eye_material.yield")
        bow = RoundTube(field("frame.tube.diameter"), field("frame.tube.wall"))
        lines.append((1 - field("frame.tube.wall") * hole**3 / 6 / bow.inertia, None, None))
    for i, (demand, limit, used) in enumerate(lines):
        out[f"lines[{i}].demand"] = demand
        if limit is not None:
            out[f"lines[{i}].limit"], out[f"lines[{i}].utilisation"] = limit, used

    return {path: np.broadcast_to(value, (rows, 1)).ravel() for path, value in out.items()}


def sweep(out, name, guide, error):
    """What the guide's foot does; with the eye misplaced either way each figure at its own worse."""
    name += "sweep."
    shut, G = guide.lean(guide.travel.n0), guide.length
    least, most = guide.extremes()
    foot = guide.x + G * np.sin(shut)
    reaches = [(guide.x + G * np.sin(most) - foot, foot - guide.x - G * np.sin(least), guide.x + G * np.sin(most))]
    for x in (guide.x - error, guide.x + error):
        other = Guide(guide.travel, x, guide.y, guide.offset)
        low, high = other.extremes()
        there = x + G * np.sin(other.lean(guide.travel.n0))
        reaches.append((x + G * np.sin(high) - there, there - x - G * np.sin(low), x + G * np.sin(high)))
    out[name + "lean_shut"], out[name + "lean_open"] = shut, guide.lean(guide.travel.end)
    out[name + "lean_least"], out[name + "lean_greatest"] = least, most
    out[name + "length"], out[name + "cut_length"] = G, guide.cut
    out[name + "foot_x"] = foot
    out[name + "foot_lowest"] = guide.y - G * np.where(least > 0, np.cos(least), np.where(most < 0, np.cos(most), 1.0))
    out[name + "clear"] = guide.spare
    for i, figure in enumerate(("kick_out", "kick_in", "walkway")):
        out[name + figure] = reaches[0][i]
        out[name + figure + "_error"] = np.maximum.reduce([reach[i] for reach in reaches])


def layout(out, end, field, guide, travel, height):
    """Where the extender sits, and how it is cut and drilled. height: of what passes beside it."""
    name, tube = end + "layout.", end + "extender."
    drop = guide.y - field(tube + "member_height")
    above, tail, outer = field(tube + "end_distance"), field(tube + "tail"), field(tube + "member_outer")
    rows = len(drop)
    a, h = (field("frame.width") - field("frame.tube.diameter")) / 2, field("frame.leg_height")
    rise = field("frame.peak_height") - field("frame.tube.diameter") / 2 - h
    columns = [column.ravel().tolist() for column in np.broadcast_arrays(
        a, h, rise, field("frame.tube.diameter"), guide.x, guide.y, drop, field(tube + "spacing"), field(tube + "stock") - above - tail,
        field(tube + "member_inner"), outer)]
    solved = np.empty((rows, 6))
    for row, (a, h, rise, diameter, x, y, fall, *bounds) in enumerate(zip(*columns)):
        bow = Bow(a, h, rise, diameter)
        angle, binding = best_angle(bow, x, y, fall, *bounds)
        solved[row] = angle, binding, bow.cross(x, y, angle), bow.cross(x, y, angle, bow.half), bow.hole(x, y, angle), bow.a
    angle, binding, sB, overhang, along, a = (solved[:, [i]] for i in range(6))
    sG = drop / np.cos(angle)
    bow_x, bow_y = guide.x - sB * np.sin(angle), guide.y - sB * np.cos(angle)
    dx, dy = bow_x - guide.x, bow_y - guide.y

    def nearness(n):
        """The roll's radius less the distance from its axis to the tube's centreline between eye and bow."""
        px, py = travel.axis(n)
        px, py = px - guide.x, py - guide.y
        u = np.clip((px * dx + py * dy) / sB**2, 0, 1)
        return np.maximum(travel.radius(n), height) - np.hypot(px - u * dx, py - u * dy)

    needed = field(tube + "tube.side") / 2 + field(tube + "bar_clearance")
    out.update({
        name + "angle": angle,
        name + "binding": binding,
        name + "run": np.tan(angle),
        name + "eye_x": guide.x,
        name + "eye_y": guide.y,
        name + "bow_distance": sB,
        name + "member_distance": sG,
        name + "cut_length": above + sG + tail,
        name + "eye_from_top": above,
        name + "bow_from_top": above + sB,
        name + "member_from_top": above + sG,
        name + "overhang": overhang,
        name + "eye_above_hip": guide.y - travel.hip,
        name + "eye_outboard": guide.x - field("frame.width") / 2,
        name + "bow_x": bow_x,
        name + "bow_height": bow_y,
        name + "bow_along": along - travel.hip,
        name + "member_x": guide.x - drop * np.tan(angle),
        name + "member_from_outer": outer - guide.x + drop * np.tan(angle),
        name + "clear": -travel.greatest(nearness)[0] - needed,
    })
