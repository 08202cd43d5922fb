# SPDX-License-Identifier: MIT
"""The extender: where it sits, and what a force at its eye puts into it."""

from common import absolute, between, exact
from course import course
from mpmath import atan, cos, fabs, hypot, inf, mpf, pi, sin, sqrt, tan
from parts import GRADES, METALS, square_section, usual_radii
from shape import PLACE, crossings, size

# --- where it sits ---


class Wall:
    """What a tube from an eye meets: the bow's centreline or its face, nearest first, and the member."""

    def __init__(self, x, made):
        self.x, self.path, self.face = x, made.face.centre, made.face
        self.eye_x, self.eye_y, self.drop = x["eye_x"], x["eye_y"], x["eye_y"] - x["extender.member_height"]
        self.looked = {}

    def meets(self, angle, path):
        """Distance along the tube, arc length along the bow, the sine between them; None where it misses."""
        found = sorted(crossings(path, self.eye_x, self.eye_y, -pi / 2 - angle))
        return found[0] if found else None

    def flexibility(self, angle):
        """sB^2 sG within the bounds; else without end."""
        if angle not in self.looked:
            met, long = self.meets(angle, self.path), self.drop / cos(angle)
            x, member = self.x, self.eye_x - self.drop * tan(angle)
            fits = met and long - met[0] >= x["extender.spacing"] and x["extender.end_distance"] + long + x["extender.tail"] <= x.get("extender.stock", inf) and x["extender.member_inner"] <= member <= x["extender.member_outer"]
            self.looked[angle] = met[0] ** 2 * long if fits else inf
        return self.looked[angle]

    def edge(self, fits, fails):
        while fabs(fits - fails) > mpf(10) ** -40:
            middle = (fits + fails) / 2
            fits, fails = (middle, fails) if self.flexibility(middle) < inf else (fits, middle)
        return fits

    def stiffest(self):
        """The best of many angles, and of all next to it; None where none fits. Whether a bound makes it."""
        steepest, flattest, looks = mpf("1e-3"), 75 * pi / 180, 300
        angles = [steepest + (flattest - steepest) * i / looks for i in range(looks + 1)]
        i = min(range(looks + 1), key=lambda i: self.flexibility(angles[i]))
        if self.flexibility(angles[i]) == inf:
            return None, None
        ends = [angles[k] if self.flexibility(angles[k]) < inf else self.edge(angles[i], angles[k]) for k in (max(i - 1, 0), min(i + 1, looks))]
        low, high = ends
        while high - low > mpf(10) ** -16:  # of so flat a valley this is its floor to 30 digits
            third = (high - low) / 3
            low, high = (low, high - third) if self.flexibility(low + third) <= self.flexibility(high - third) else (low + third, high)
        best = (low + high) / 2
        bound = next((end for end in ends if fabs(end - best) < mpf(10) ** -14 and (end not in angles or end in (steepest, flattest))), None)
        return (best, False) if bound is None else (bound, True)


def from_segment(x, y, ax, ay, bx, by):
    share = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2)
    share = min(max(share, mpf(0)), mpf(1))
    return hypot(x - ax - share * (bx - ax), y - ay - share * (by - ay))


def keeps_off_bends(path, arc, by):
    """No bend, bend's end, or pointed top near a place on the bow."""
    bends, along = [], mpf(0)
    for piece in path:
        along += piece.length
        bends.append(along)
    return all(fabs(arc - bend) > by for bend in bends)


def extender_layout(chance):
    at, x, whole, long = course(chance)
    made, hip = whole.made, float(whole.made.A.y)
    at.update({"extender.tube.side": 0.03, "extender.tube.wall": 0.002, "extender.bolt_hole": 0.009, "extender.eye_hole": 0.017, "extender.slant": chance.choice(("best", "angle", "crossing"))})
    at.update({"eye_x": float(whole.open.x) + chance.uniform(0.02, 0.5), "eye_y": hip + chance.uniform(0.15, 0.6), "hip": hip})
    at.update({"extender.member_height": chance.uniform(0.1, 0.8) * hip, "extender.member_inner": float(made.A.x) - chance.uniform(0.2, 2), "extender.member_outer": float(made.A.x) + chance.uniform(-0.2, 0.5)})
    at.update({"extender.end_distance": chance.uniform(0.01, 0.1), "extender.tail": chance.uniform(0, 0.1), "extender.spacing": chance.uniform(0.1, 0.5), "extender.bar_clearance": chance.choice((0.0, chance.uniform(0, 0.05)))})
    if chance.random() < 0.4:
        at["extender.stock"] = chance.uniform(1, 3)
    if at["extender.slant"] == "angle":
        at["extender.angle"] = chance.uniform(0.01, 1.2)
    elif at["extender.slant"] == "crossing":
        at["extender.crossing"] = hip * chance.uniform(0.7, 1.15)
    x = exact(at)
    wall, bound = Wall(x, made), False
    if at["extender.slant"] == "best":
        angle, bound = wall.stiffest()
    elif at["extender.slant"] == "angle":
        angle = x["extender.angle"]
    else:
        arcs = wall.path.arcs_at(x["extender.crossing"])
        px, py, *_ = wall.path.at(arcs[0]) if arcs else (inf, inf)
        angle = atan((wall.eye_x - px) / (wall.eye_y - py)) if arcs and px < wall.eye_x and py < wall.eye_y else None
    if angle is None or not bound and wall.flexibility(angle) == inf:
        return extender_layout(chance)
    met, faced = wall.meets(angle, wall.path), wall.meets(angle, wall.face)
    if not met or not faced or met[2] < 0.02 or at["extender.slant"] == "best" and not keeps_off_bends(wall.path, met[1], 2.5 * x["frame.tube.diameter"] + mpf("0.01")):
        return extender_layout(chance)
    sB, arc, sine = met
    sG, (bow_x, bow_y, *_) = wall.drop / cos(angle), wall.path.at(arc)
    hip_arc, face_at_hip = wall.path.arcs_at(x["hip"])[0], wall.face.at(wall.face.arcs_at(x["hip"])[0])[0]
    clear = -whole.of_spot(lambda spot: spot.r - from_segment(spot.x, spot.y, wall.eye_x, wall.eye_y, bow_x, bow_y)) - x["extender.tube.side"] / 2 - x["extender.bar_clearance"]
    if clear < mpf("1e-6"):
        return extender_layout(chance)
    big = size(wall.path) + long + sB
    of_angle = mpf("4e-16") if at["extender.slant"] == "angle" else LAYOUT * big / wall.drop / sine if at["extender.slant"] == "crossing" else mpf("1e-11") if bound else mpf("1e-7")
    near, level = (LAYOUT * big + of_angle * sB) / sine, LAYOUT * big + of_angle * wall.drop / cos(angle) ** 2
    end = x["extender.end_distance"]
    found = {
        "angle": (angle, of_angle),
        "run": (tan(angle), of_angle / cos(angle) ** 2 + mpf("4e-16") * tan(angle)),
        "bow_distance": (sB, near),
        "member_distance": (sG, level),
        "cut_length": (end + sG + x["extender.tail"], level),
        "eye_from_top": (end, mpf(0)),
        "bow_from_top": (end + sB, near),
        "member_from_top": (end + sG, level),
        "overhang": (faced[0], near + of_angle * faced[0] / faced[2] + LAYOUT * big / faced[2]),
        "eye_above_hip": (wall.eye_y - x["hip"], LAYOUT),
        "eye_outboard": (wall.eye_x - face_at_hip, LAYOUT * big / sin(wall.path.at(hip_arc)[2])),
        "bow_x": (bow_x, near),
        "bow_height": (bow_y, near),
        "bow_along": (arc - hip_arc, near + LAYOUT * big / sin(wall.path.at(hip_arc)[2])),
        "member_x": (wall.eye_x - wall.drop * tan(angle), level),
        "member_from_outer": (x["extender.member_outer"] - wall.eye_x + wall.drop * tan(angle), level),
        "clear": (clear, near + whole.hold),
    }
    answers = {f"layout.{name}": (value, "", absolute(off)) for name, (value, off) in found.items()}
    if at["extender.slant"] == "best" and not bound:
        answers["flexibility"] = sB**2 * sG, "", 1e-13
        answers["layout.binding"] = "nothing", "", ""
    return at, answers

# --- what it bears ---


def metal(chance, name, at):
    """A metal's modulus, and its yield over the safety factor; None where no yield is known."""
    grade = chance.choice(("unknown", "given", *GRADES))
    of = GRADES[grade][0] if grade in GRADES else chance.choice(tuple(METALS))
    at.update({f"{name}.metal": of, f"{name}.grade": grade})
    if grade == "given":
        at[f"{name}.yield"] = between(chance, 1e6, 2e9)
    strength = mpf(at[f"{name}.yield"]) if grade == "given" else GRADES[grade][1] if grade in GRADES else None
    safety = mpf(METALS[of][3])
    return METALS[of][0], safety, strength and strength / safety


def built(chance):
    """An extender on its two bolts, with wind or without."""
    side = between(chance, 0.01, 0.3)
    at = {"extender.tube.side": side, "extender.tube.wall": min(between(chance, 0.01, 0.15) * side, 9.9e-3)}
    E, safety, allowed = metal(chance, "extender.material", at)
    _, eye_safety, eye_allowed = metal(chance, "extender.eye_material", at)
    x = exact(at)
    B, T = x["extender.tube.side"], x["extender.tube.wall"]
    outer, inner = usual_radii(at["extender.tube.wall"])
    h, b = B - 2 * T - 2 * inner, B / 2 - outer
    at.update(
        {
            "extender.bolt_hole": min(float(2 * b) * chance.uniform(0.05, 0.95), 0.1),
            "extender.spacer": chance.choice((0.0, between(chance, 1e-3, 1))),
            "extender.eye_stand_off": chance.choice((0.0, between(chance, 1e-3, 1))),
            "extender.eye_root": between(chance, 1e-3, 0.1),
            "extender.end_distance": between(chance, 1e-3, 1),
            "extender.tail": chance.uniform(0, 2),
            "extender.member_height": 1.0,
            "extender.member_outer": 1.0,
            "layout.angle": chance.uniform(-1.57, 1.57),
            "layout.bow_distance": between(chance, 0.01, 5),
            "weight": chance.choice((0.0, between(chance, 0.1, 1e4))),
            "wind_eye": chance.choice((0.0, between(chance, 0.1, 1e4))),
            "wind_tube": chance.choice((0.0, between(chance, 0.1, 1e3))),
        }
    )
    at["layout.member_distance"] = at["layout.bow_distance"] * (1 + between(chance, 1e-3, 10))
    if chance.random() < 0.5:
        at["extender.bolt_limit"] = between(chance, 1, 1e7)
    if chance.random() < 0.5:
        at["extender.pull_limit"] = between(chance, 1, 1e7)
    x = exact(at)
    tube = square_section(B, T, outer, inner)
    dh, stand_off, root = x["extender.bolt_hole"], x["extender.eye_stand_off"], pi * x["extender.eye_root"] ** 3 / 32
    ef, e = stand_off + B + x["extender.spacer"], B / 2 + stand_off
    a, sB, sG = x["layout.angle"], x["layout.bow_distance"], x["layout.member_distance"]
    V, v, W, end = x["wind_eye"], x["wind_tube"], x["weight"], x["extender.end_distance"]
    length = end + sG + x["extender.tail"]
    in_plane = tube["inertia"] - T * dh**3 / 6  # the holes in the two walls that look along the house, at their middle
    out = tube["inertia"] - 2 * (dh * T**3 / 12 + dh * T * ((B - T) / 2) ** 2)

    def about(below):
        return fabs(V * below + v * length * (end + below - length / 2))

    def bears(F, P, X):
        found = {
            "bending_in": fabs(P) * sB * (B / 2) / in_plane,
            "bending_out": fabs(X) * ef * (B / 2) / out,
            "bending_wind": (V * sB + v * (end + sB) ** 2 / 2) * (B / 2) / out,
            "axial": fabs(X) / (tube["area"] - 2 * dh * T),
            "twist": fabs(P) * e / tube["torsion_modulus"],
            "shear": fabs(P) / (2 * h * T),
            "bow_shear": hypot(P * sG / (sG - sB), X),
            "member_shear": hypot(P * sB / (sG - sB), X),
            "bow_pull": fabs(P) * ef / b + max(-X, mpf(0)) * ef / (sG - sB) + about(sG) / (sG - sB),
            "member_pull": max(X, mpf(0)) * ef / (sG - sB) + about(sB) / (sG - sB),
            "tip": P * sB**2 * sG / (3 * E * tube["inertia"]),
            "eye_bolt": hypot(F, W) * stand_off / root,
        }
        sigma, tau = (sum(found[name] for name in names) for names in (("bending_in", "bending_out", "bending_wind", "axial"), ("twist", "shear")))
        found["combined"] = sigma / 2 + sqrt(sigma**2 / 4 + (tau / mpf("0.6")) ** 2)
        return found

    def near(F):
        """How far each may be off: its share of what it would be with P and X as great as the whole force, and more where a small difference divides."""
        whole = hypot(F, W)
        most, other = bears(F, whole, whole), bears(F, whole, -whole)
        for name in ("bow_pull", "member_pull"):
            most[name] = max(most[name], other[name]) + (V * sG + v * length * (length + end + sG)) / (sG - sB)
            most[name] *= max(sG / (sG - sB), B / (2 * b))
        for name in ("bow_shear", "member_shear"):
            most[name] *= sG / (sG - sB)
        for name in ("shear", "combined"):
            most[name] *= B / h
        return {name: BEARS * value for name, value in most.items()}

    def both(F):
        P, X = F * cos(a) + W * sin(a), F * sin(a) - W * cos(a)
        return P, X, bears(F, P, X), near(F)

    return at, x, both, (safety, allowed), (eye_safety, eye_allowed), root


def extender_bears(chance):
    at, x, both, _, (_, eye_allowed), root = built(chance)
    at["force"] = chance.choice((-1, 1)) * between(chance, 0.1, 1e4)
    F, W = mpf(at["force"]), x["weight"]
    P, X, found, near = both(F)
    answers = {f"load.{name}": (value, "", absolute(near[name])) for name, value in found.items()}
    answers["load.across"] = P, "", absolute(BEARS * hypot(F, W))
    answers["load.along"] = X, "", absolute(BEARS * hypot(F, W))
    if eye_allowed:
        answers["load.stand_off_most"] = eye_allowed * root / hypot(F, W), "", BEARS
    return at, answers


LINES = ("combined", "tip", "bow_shear", "member_shear", "bow_pull", "member_pull")


def extender_strength(chance):
    at, x, both, (safety, allowed), (eye_safety, eye_allowed), _ = built(chance)
    at.update({"outboard": chance.choice((0.0, between(chance, 0.1, 1e4))), "inboard": chance.choice((0.0, between(chance, 0.1, 1e4))), "end": str(chance.randint(0, 1))})
    ways = [both(F)[2:] for F in (mpf(at["outboard"]), -mpf(at["inboard"]))]
    limits = {name: x.get(f"extender.{name}_limit") for name in ("bolt", "pull")}
    limit_of = {"combined": allowed, "bow_shear": limits["bolt"], "member_shear": limits["bolt"], "bow_pull": limits["pull"], "member_pull": limits["pull"], "eye_bolt": eye_allowed}
    names = [*LINES, *(("bow_both", "member_both") if None not in limits.values() else ()), "eye_bolt"]
    answers = {"count": (len(names), "", "")}

    def of(name, found, near):
        if name[-5:] != "_both":
            return fabs(found[name]), near[name]
        shares = [(found[f"{name[:-5]}_{by}"] / limits[bolt], near[f"{name[:-5]}_{by}"] / limits[bolt]) for by, bolt in (("shear", "bolt"), ("pull", "pull"))]
        return hypot(*(share for share, _ in shares)), sum(off for _, off in shares)

    for i, name in enumerate(names):
        (value, off), (other, other_off) = (of(name, *way) for way in ways)
        demand, off = max(value, other), absolute(max(off, other_off))
        answers[f"lines[{i}].demand"] = demand, "", off
        limit = mpf(1) if name[-5:] == "_both" else limit_of.get(name)
        if limit:
            answers[f"lines[{i}].utilisation"] = demand / limit, "", absolute(off / limit + BEARS * demand / limit)
        elif name in ("combined", "eye_bolt"):
            factor = safety if name == "combined" else eye_safety
            answers[f"lines[{i}].yield_needed"] = demand * factor, "", absolute(off * factor + BEARS * demand * factor)
    return at, answers


BEARS = 3e-15
LAYOUT = 4 * PLACE
FUNCTIONS = {"tside_extender_layout": extender_layout, "tside_extender_bears": extender_bears, "tside_extender_strength": extender_strength}
SLOW = {"tside_extender_layout"}
FEW = {"tside_extender_layout": 4, "tside_extender_bears": 4, "tside_extender_strength": 4}
