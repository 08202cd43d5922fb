# SPDX-License-Identifier: MIT
"""A whole travel, from shut to open: its smooth stretches, and what is greatest along them."""

from common import between, exact, least_in, root
from mpmath import cos, fabs, mpf, pi, sin
from travel import Spot, travel

STEP = mpf(10) ** -18  # of what changes along a stretch, for its slopes
HOLD = mpf("1e-12")  # of the wraps
PLACES = 16  # looked at along a stretch


class Stretch:
    """Of wraps, or at a corner of the line of the curtain's slope, where the bar turns with no take-up."""

    def __init__(self, made, begin, end, corner=None):
        self.made, self.begin, self.end, self.corner, self.known = made, begin, end, corner, {}

    def at(self, u):
        if u not in self.known:
            self.known[u] = self.at_anew(u)
        return self.known[u]

    def at_anew(self, u):
        made = self.made
        if self.corner is None:
            return made.spot(u)
        n, px, py = self.corner
        r = made.radius(n)
        return Spot(px + r * cos(u), py + r * sin(u), u, n, r, made.hanging(n), n - made.n0 + (u - made.slope0) / (2 * pi), True)

    def about(self, u):
        """A place and its neighbours either way, all within the stretch."""
        u = min(max(u, self.begin + STEP), self.end - STEP)
        return self.at(u - STEP), self.at(u), self.at(u + STEP)

    def places(self):
        """Evenly and ever closer to the upper end."""
        long = self.end - self.begin
        return sorted({self.end - long * (mpf(PLACES - i) / PLACES) ** power for i in range(PLACES + 1) for power in (1, 3)})


class Course:
    """The stretches of a travel up to a gap below the rail; none where it ends too near to where it begins."""

    def __init__(self, made, x):
        self.made, self.stretches = made, []
        top = made.A.y - x["stops.gap"]

        def above(s):
            n = made.wraps(s)
            place = made.hangs(s, made.radius(n))
            return place and place[1] + made.radius(n) - top

        low, high = made.s0 / 200, made.s0
        ends = above(low), above(high)
        if None in ends or not ends[1] < 0 < ends[0]:
            return
        try:
            s_open = root(above, low, high)
            self.lay(made, s_open)
            self.shut, self.open = self.stretches[0].at(self.stretches[0].begin), self.stretches[-1].at(self.stretches[-1].end)
        except TypeError:  # where it bears is not found
            self.stretches = []
            return
        # how far from its place a change of what holds a free chord may be found, and what is greatest there
        self.hold = HOLD * 2 * pi * self.open.r * self.open.n if made.chord > self.open.hanging else mpf(0)

    def lay(self, made, s_open):
        begin, pieces = made.n0, [piece for piece in made.line if piece[1] > 0]
        for i in range(len(pieces) - 1, 0, -1):
            s = pieces[i][0]
            if not s_open < s < made.s0:
                continue
            n, (px, py, lower) = made.wraps(s), made.line.at(s)
            above = pieces[i - 1]
            upper = above[5] - (above[2] if above[2] else 0)
            self.stretches.append(Stretch(made, begin, n))
            if fabs(upper - lower) > mpf("1e-30"):
                self.stretches.append(Stretch(made, lower, upper, (n, px, py)))
            begin = n
        self.stretches.append(Stretch(made, begin, made.wraps(s_open)))
        self.spots()

    def greatest(self, value):
        """Of a value of a stretch and a place on it; as a supremum, where stretches meet both sides count."""
        found, tops = None, []
        for stretch in self.stretches:
            places = stretch.places()
            values = [value(stretch, u) for u in places]
            for i, here in enumerate(values):
                low, high = max(i - 1, 0), min(i + 1, len(values) - 1)
                if here >= values[low] and here >= values[high]:
                    tops.append((here, 2 * here - min(values[low], values[high]), stretch, places[low], places[high]))
            best = max(values)
            found = best if found is None else max(found, best)
        for here, might, stretch, low, high in sorted(tops, key=lambda top: -top[0])[:3]:
            if might + (might - here) >= found:
                found = max(found, climb(lambda u: value(stretch, u), low, high))
        return found

    def spots(self):
        return [stretch.at(u) for stretch in self.stretches for u in stretch.places()]

    def looked_at(self, value):
        """Of a spot's value, the greatest of the places looked at."""
        return max(map(value, self.spots()))

    def of_spot(self, value):
        return self.greatest(lambda stretch, u: value(stretch.at(u)))


def climb(value, low, high):
    """The golden section, until no more of it would show."""
    best = max(value(low), value(high))
    return max(best, -least_in(lambda u: -value(u), low, high, mpf(10) ** -19 * (1 + fabs(high)))[2])


def course(chance):
    """The call's arguments, as mpmath's numbers too, the travel's stretches, and the length of which its places are a share."""
    at, x, made, big = travel(chance)
    at["stops.gap"] = between(chance, 0.01, 0.3)
    x["stops.gap"] = exact(at)["stops.gap"]
    whole = Course(made, x)
    if not whole.stretches:
        return course(chance)
    return at, x, whole, big + made.s0 + made.wound(whole.open.n)
