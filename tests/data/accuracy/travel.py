# SPDX-License-Identifier: MIT
"""The curtain's line, and the travel of the roll on it."""

from collections import namedtuple

from common import absolute, between, exact, root
from mpmath import atan2, cos, fabs, hypot, inf, mpf, pi, sin, sqrt
from shape import frame, size

TINY = mpf(10) ** -35

# --- the line: the hull of fixing, face below it and the baseboard's corner ---


class Round:
    """What the hull wraps: an arc, or a point as one of no radius, over slopes from plumb."""

    def __init__(self, x, y, radius=mpf(0), low=-inf, high=inf):
        self.x, self.y, self.radius, self.low, self.high = x, y, radius, low, high

    def at(self, slope):
        return self.x + self.radius * cos(slope), self.y + self.radius * sin(slope)


def left_at(one, other):
    """The slope of the tangent that leaves one for another below it; None where there is none."""
    dx, dy = one.x - other.x, one.y - other.y
    more = other.radius - one.radius
    square = dx**2 + dy**2 - more**2
    if hypot(dx, dy) < TINY or square < -TINY:
        return None
    slope = atan2(dy, dx) - atan2(sqrt(square) if square > TINY else mpf(0), more)  # a point at an arc's end lies on it
    slope += 2 * pi if slope < -pi else 0
    return slope if max(one.low, other.low) - TINY <= slope <= other.high + TINY else None


class Line(list):
    """Straight pieces and arcs: (from, length, turn, x, y, slope), the last without end; .plain tells what lies under it."""

    def at(self, s):
        """Place and slope."""
        begin, length, turn, x, y, slope = next(piece for piece in reversed(self) if piece[0] <= s and (piece[1] > 0 or piece is self[-1]))
        u = s - begin
        if not turn:
            return x + u * sin(slope), y - u * cos(slope), slope
        radius = length / turn
        return x + radius * (cos(slope - u / radius) - cos(slope)), y + radius * (sin(slope - u / radius) - sin(slope)), slope - u / radius


def corner_of(at, face, x):
    """The baseboard's; None without one."""
    if at["frame.board"] == "none":
        return None
    return face.at(face.arcs_at(x["frame.board_top"])[0])[0] + x["frame.board_stand"], x["frame.board_top"]


def line_of(at, face, x):
    """None where the hip is above the face."""
    found = face.arcs_at(x["curtain.hip"])
    if not found:
        return None
    hip = found[0]
    px, _, *_ = face.at(hip)
    A = Round(px + x["curtain.standoff"], x["curtain.hip"])
    lean, before, rounds = face[0].heading - pi / 2, mpf(0), [Round(face[0].x, face[0].y)]
    for i, piece in enumerate(face):
        long = min(piece.length, hip - before)
        if long > 0:
            if piece.k > 0:
                cx, cy = piece.centre()
                rounds.append(Round(cx, cy, 1 / piece.k, piece.heading - pi / 2, piece.heading - pi / 2 + piece.k * long))
        before += piece.length
    if corner_of(at, face, x):
        rounds.append(Round(*corner_of(at, face, x)))
    last, here, slope, line, s = max(lean, mpf(0)), A, pi / 2, Line(), mpf(0)
    while True:
        nexts = [(left, other) for other in rounds if other is not here for left in [left_at(here, other)] if left is not None and last + TINY < left <= slope + TINY]
        best, other = max(nexts, key=lambda one: one[0]) if nexts else (last, None)
        best = min(best, slope)
        if here is not A and slope - best > TINY:
            line.append((s, here.radius * (slope - best), slope - best, *here.at(slope), slope))
            s += here.radius * (slope - best)
        x0, y0 = here.at(best)
        if other is None:
            line.append((s, inf, mpf(0), x0, y0, best))
            return A, line
        x1, y1 = other.at(best)
        length = (x1 - x0) * sin(best) - (y1 - y0) * cos(best)
        if length > TINY or here is A:
            line.append((s, max(length, mpf(0)), mpf(0), x0, y0, best))
            s += max(length, mpf(0))
        rounds.remove(other)
        if here.radius and not other.radius:  # a corner between two parts of one arc: its lower part may follow
            rounds.append(Round(here.x, here.y, here.radius, here.low, best))
        here, slope = other, best


def wall(chance):
    """A frame, maybe with a baseboard, and its curtain."""
    at, path, face = frame(chance)
    face.centre = path
    top = min(face.at(face.length())[1], mpf("2.2"))
    at["curtain.hip"] = float(top) * chance.uniform(0.6, 0.95)
    at["curtain.sill"] = chance.uniform(0.2, 0.4) * at["curtain.hip"]
    at["curtain.standoff"] = chance.choice((0.0, between(chance, 0.005, 0.06)))
    at["frame.board"] = chance.choice(("none", "outside"))
    if at["frame.board"] == "outside":
        at["frame.board_top"], at["frame.board_stand"] = chance.uniform(0.05, 0.5) * at["curtain.hip"], chance.uniform(0, 0.05)
    x = exact(at)
    found = line_of(at, face, x)
    if found is None:
        return wall(chance)
    bend = max([1 / fabs(piece.k) for piece in face if piece.k] + [mpf(0)])
    return at, x, face, *found, size(path) + bend


def line_at(chance):
    at, x, _, _, line, big = wall(chance)
    at["distance"] = float(x["curtain.hip"]) * chance.uniform(0, 1.2)
    s = mpf(at["distance"])
    if any(fabs(s - piece[0]) < mpf("1e-9") for piece in line):
        return line_at(chance)
    px, py, slope = line.at(s)
    return at, {"x": (px, "", absolute(PLACE * big)), "y": (py, "", absolute(PLACE * big)), "normal": (slope, "", absolute(PLACE * big))}


# --- the travel ---


def distance_to(piece, first, x, y):
    """From a place outboard of it to a piece of the face; the first goes on straight below the foot."""
    ends = [(piece.x, piece.y), piece.end()[:2]]
    near = [hypot(x - px, y - py) for px, py in ends]
    c, s = cos(piece.heading), sin(piece.heading)
    u = (x - piece.x) * c + (y - piece.y) * s
    if not piece.k and (0 <= u or first) and u <= piece.length or first and u < 0:
        near.append((x - piece.x) * s - (y - piece.y) * c)
    if piece.k:
        cx, cy = piece.centre()
        sign = 1 if piece.k > 0 else -1
        slope = atan2(sign * (y - cy), sign * (x - cx))
        low, high = sorted((piece.heading - pi / 2, piece.heading - pi / 2 + piece.k * piece.length))
        if low <= slope <= high:
            near.append(sign * (hypot(x - cx, y - cy) - 1 / fabs(piece.k)))
    return min(near)


Spot = namedtuple("Spot", "x y slope n r hanging turns cornered")  # cornered: the bar turns about a corner of the line


class Travel:
    def __init__(self, at, x, face, A, line):
        self.at, self.x, self.face, self.A, self.line = at, x, face, A, line
        self.known = {}
        self.corner = corner_of(at, face, x)
        self.te = x["curtain.packing"] * x["curtain.thickness"]
        self.core, self.n0 = x["roll.core"], x["stops.wraps_shut"]
        self.chord = line[1][0] if len(line) > 1 else inf if line[0][5] else mpf(0)
        r0, shut = self.radius(self.n0), x["curtain.sill"] - x["stops.seal"]

        def above(s):
            place = self.hangs(s, r0)
            return place and place[1] - r0 - shut

        low, high = x["curtain.hip"] / 10, 3 * x["curtain.hip"]
        if self.chord < inf and (above(self.chord + TINY) or 0) > 0:
            low = self.chord + TINY
        elif self.chord < inf:
            high = self.chord
        self.s0 = None
        ends = above(low), above(high)
        if None not in ends and ends[0] > 0 > ends[1]:
            try:
                self.s0 = root(above, low, high)
            except TypeError:  # where it bears is not found
                return
            self.slope0 = self.hangs(self.s0, r0)[2]
            if fabs(above(self.s0)) > mpf("1e-30"):  # at a corner of the line
                self.s0 = None

    def radius(self, n):
        return self.core / 2 + self.te * n

    def wound(self, n):
        return pi * n * (self.core + self.te * n)

    def hanging(self, n):
        return self.s0 + self.wound(self.n0) - self.wound(n)

    def wraps(self, s):
        q = (self.s0 + self.wound(self.n0) - s) / pi
        return q / self.core if not self.te else (sqrt(self.core**2 + 4 * self.te * q) - self.core) / (2 * self.te)

    def room(self, s, r, slope):
        """Between the roll at a chord's end and whatever it may bear on."""
        px, py = self.hung(s, r, slope)
        near = [distance_to(piece, i == 0, px, py) for i, piece in enumerate(self.face)]
        if self.corner:
            bx, top = self.corner
            near.append(hypot(px - bx, py - top) if py > top else px - bx)
        return min(near) - r

    def hung(self, s, r, slope):
        return self.A.x + s * sin(slope) + r * cos(slope), self.A.y - s * cos(slope) + r * sin(slope)

    def hangs(self, s, r):
        """The axis of a roll, and the slope of the curtain; None where it is not found."""
        if (s, r) in self.known:
            return self.known[s, r]
        self.known[s, r] = found = self.hangs_anew(s, r)
        return found

    def hangs_anew(self, s, r):
        if s > self.chord:
            x, y, slope = self.line.at(s)
            return x + r * cos(slope), y + r * sin(slope), slope
        steep, steps = self.line[0][5], 24
        for i in range(steps):
            above, below = steep * (steps - i) / steps, steep * (steps - i - 1) / steps
            if self.room(s, r, below) < 0:
                least = self.room(s, r, above)
                if least <= 0:  # where the chord begins, to the last digit
                    return (*self.hung(s, r, above), above) if least > -TINY else None
                slope = root(lambda slope: self.room(s, r, slope), below, above)
                return (*self.hung(s, r, slope), slope)
        return (*self.hung(s, r, mpf(0)), mpf(0))

    def place(self, n):
        return self.hangs(self.hanging(n), self.radius(n))

    def turns(self, n):
        return n - self.n0 + (self.place(n)[2] - self.slope0) / (2 * pi)

    def spot(self, n):
        x, y, slope = self.place(n)
        return Spot(x, y, slope, n, self.radius(n), self.hanging(n), self.turns(n), False)


def travel(chance):
    at, x, face, A, line, big = wall(chance)
    at.update({"roll.core": between(chance, 0.02, 0.08), "roll.thickness": chance.choice((0.0, between(chance, 1e-4, 8e-3))), "roll.packing": between(chance, 0.5, 2), "stops.wraps_shut": chance.choice((0.0, chance.uniform(0.5, 2))), "stops.seal": chance.uniform(0.02, 0.15) * at["curtain.sill"], "stops.gap": 0.01, "curtain.rail_depth": 0.0})
    x = exact(at)
    x["curtain.thickness"], x["curtain.packing"] = x["roll.thickness"], x["roll.packing"]
    made = Travel(at, x, face, A, line)
    if made.s0 is None:
        return travel(chance)
    if made.corner and made.corner[0] > A.x + x["roll.core"] / 4:  # an edge over which the roll may tip
        return travel(chance)
    return at, x, made, big


def somewhere(chance):
    """A travel, and wraps between shut and open where nothing begins or ends."""
    at, x, made, big = travel(chance)
    s = made.s0 * mpf(chance.uniform(0.15, 0.999))
    n = made.wraps(s)
    if any(fabs(s - piece[0]) < mpf("1e-6") for piece in made.line):
        return somewhere(chance)
    place = made.place(n)
    if place is None or place[1] + made.radius(n) > made.A.y - x["stops.gap"] - mpf("1e-6"):
        return somewhere(chance)
    return at, x, made, big, n, place


def position(at, x, made, big, n, extra):
    """All of a place; how far each may be off: the curtain's length is told to a share of all there is."""
    px, py, slope = made.place(n)
    r = made.radius(n)
    near = absolute(TRAVEL * (big + made.s0 + made.wound(n)) + extra)
    turn = absolute(near / (2 * pi * r))
    underside = py - r
    return {
        "position.x": (px, "", near),
        "position.y": (py, "", near),
        "position.underside": (underside, "", near),
        "position.opening": (max(underside - x["curtain.sill"], mpf(0)), "", near),
        "position.hanging": (made.hanging(n), "", near),
        "position.taken_up": (made.wound(n) - made.wound(made.n0), "", near),
        "position.diameter": (2 * r, "", absolute(near * (1 + 2 * made.te / (2 * pi * r)))),
        "position.wraps": (n, "", turn),
        "position.turns": (made.turns(n), "", turn),
        "position.slope": (slope, "", absolute(near / r)),
    }


def travel_at(chance):
    at, x, made, big, n, _ = somewhere(chance)
    at["turns"] = float(made.turns(n))
    step = mpf("1e-13") * (1 + n)
    low, high = max(n - step, made.n0), n + step
    beyond = lambda wraps: made.turns(wraps) - mpf(at["turns"])
    if at["turns"] < 0.01 or made.place(low) is None or made.place(high) is None or not beyond(low) < 0 < beyond(high):
        return travel_at(chance)
    return at, position(at, x, made, big, root(beyond, low, high), 0)


def travel_to_height(chance):
    at, x, made, big, n, place = somewhere(chance)
    at["underside"] = float(place[1] - made.radius(n))
    step = mpf("1e-12") * (1 + n)
    low, high = max(n - step, made.n0), n + step

    def beyond(wraps):
        return made.place(wraps)[1] - made.radius(wraps) - mpf(at["underside"])

    if made.place(low) is None or made.place(high) is None or not beyond(low) < 0 < beyond(high):
        return travel_to_height(chance)
    return at, position(at, x, made, big, root(beyond, low, high), 0)


PLACE = mpf("1e-15")
TRAVEL = mpf("1e-15")
FUNCTIONS = {"tside_line_at": line_at, "tside_travel_at": travel_at, "tside_travel_to_height": travel_to_height}
FEW = {}
