# SPDX-License-Identifier: MIT
"""Ropes over the roll, at a place of the travel and where they are longest and press hardest."""

from common import absolute, between, exact
from course import course
from mpmath import acos, arg, fabs, hypot, mpc, mpf, pi, sin, sqrt
from travel import TRAVEL, somewhere
from wind import rope, strung


class Over:
    """Ropes from hooks above the fixing to hooks below the bar when shut."""

    def __init__(self, chance, at, made, long):
        at.update(rope(chance))
        at.update({"rope.upper_x": float(made.A.x) + chance.uniform(-0.1, 0.2), "rope.upper_y": float(made.A.y) + chance.uniform(0.02, 0.4), "rope.lower_x": float(made.spot(made.n0).x) + chance.uniform(-0.2, 0.3), "rope.lower_y": chance.uniform(-0.5, 0.05)})
        if at["rope.line.by"] == "sag":
            at["rope.line.sag"] = between(chance, 1e-4, 0.1)
        at["length"] = between(chance, 1, 100)
        x = exact(at)
        self.upper, self.lower = mpc(x["rope.upper_x"], x["rope.upper_y"]), mpc(x["rope.lower_x"], x["rope.lower_y"])
        _, self.a, self.h, _, self.leg, _, slack = strung(at, x, x["length"])
        self.unstretched, self.legs = self.leg * (1 + slack), 2 if at["rope.run"] == "zigzag" else 1
        self.stiffness = x.get("rope.line.stiffness", mpf(0)) if at["rope.line.by"] == "stretch" else mpf(0)
        self.near = TRAVEL * (long + hypot(*map(abs, (self.upper, self.lower))))

    def holds(self, spot):
        """Whether both hooks are outside of the roll, and the axis between them."""
        axis = mpc(spot.x, spot.y) - self.upper
        along = (axis * (self.lower - self.upper).conjugate()).real / self.h
        return 0 < along < self.h and min(abs(axis), abs(axis - self.lower + self.upper)) > spot.r + mpf("0.01")

    def path(self, spot):
        """The shortest way outboard of the roll: two tangents and an arc; and the arc's angle, below 0 where the roll stays behind the straight one."""
        axis = mpc(spot.x, spot.y)
        to_upper, to_lower = self.upper - axis, self.lower - axis
        between_hooks = arg(to_upper / to_lower) % (2 * pi)
        wrap = between_hooks - acos(spot.r / abs(to_upper)) - acos(spot.r / abs(to_lower))
        tangents = [sqrt(abs(hook) ** 2 - spot.r**2) for hook in (to_upper, to_lower)]
        return (sum(tangents) + spot.r * wrap if wrap > 0 else self.h), wrap, sum(1 / tangent for tangent in tangents)

    def over(self, spot):
        path, wrap, turned = self.path(spot)
        leg = hypot(path, self.a / 2) if self.legs == 2 else path
        stretch = leg / self.unstretched - 1
        tension = self.stiffness * max(stretch, mpf(0))
        near, near_wrap = self.near, self.near * (turned + 1 / spot.r)
        near_tension = self.stiffness * (near / self.unstretched + mpf("4e-16"))
        presses = self.legs / self.a * 2 * path / leg
        return {
            "path": (path, near),
            "wrap": (max(wrap, mpf(0)), near_wrap),
            "slack": (leg / self.leg - 1, near / self.leg + mpf("4e-16")),
            "tension": (tension, near_tension),
            "pressure": (presses * tension * sin(max(wrap, mpf(0)) / 2), presses * (near_tension + tension * near_wrap)),
        }, fabs(stretch)


def rope_over_at(chance):
    at, _, made, big, n, _ = somewhere(chance)
    at["turns"] = float(made.turns(n))
    ropes, spot = Over(chance, at, made, big + made.s0 + made.wound(n)), made.spot(n)
    if at["turns"] < 0.01 or not ropes.holds(spot) or fabs(ropes.path(spot)[1]) < mpf("1e-6"):
        return rope_over_at(chance)
    found, stretch = ropes.over(spot)
    answers = {f"over.{name}": (value, "", absolute(near)) for name, (value, near) in found.items()}
    if stretch > mpf("1e-6"):
        answers["over.stopped"] = int(not ropes.stiffness and ropes.unstretched < ropes.leg * (1 + found["slack"][0])), "", ""
    return at, answers


def rope_over_worst(chance):
    at, _, whole, long = course(chance)
    ropes = Over(chance, at, whole.made, long)
    if not all(map(ropes.holds, whole.spots())):
        return rope_over_worst(chance)
    longest, hardest = (whole.of_spot(lambda spot: ropes.over(spot)[0][name][0]) for name in ("path", "pressure"))
    if hardest == 0 and chance.random() < 0.8:
        return rope_over_worst(chance)
    leg = hypot(longest, ropes.a / 2) if ropes.legs == 2 else longest
    near = [(1 + whole.hold / ropes.near) * max(ropes.over(spot)[0][name][1] for spot in whole.spots()) for name in ("path", "slack", "pressure")]
    answers = {"longest.path": (longest, near[0]), "longest.slack": (leg / ropes.leg - 1, near[1]), "hardest.pressure": (hardest, near[2])}
    return at, {name: (value, "", absolute(off)) for name, (value, off) in answers.items()}


FUNCTIONS = {"tside_rope_over_at": rope_over_at, "tside_rope_over_worst": rope_over_worst}
SLOW = {"tside_rope_over_worst"}
FEW = {"tside_rope_over_at": 4}
