# SPDX-License-Identifier: MIT
"""Bow, the curtain's line along it, and the travel of the roll on that line."""

from common import absolute, between, exact, root
from mpmath import acos, atan2, cos, fabs, floor, hypot, inf, mpf, pi, sin, sqrt

TINY = mpf(10) ** -40

# --- the bow: pieces (length, curvature, x, y, heading) from the foot up, positive where they turn inboard ---


class Piece:
    def __init__(self, length, curvature, x, y, heading):
        self.length, self.k, self.x, self.y, self.heading = length, curvature, x, y, heading

    def at(self, u):
        k, a = (self.k if u > 0 else mpf(0)), self.heading
        if k == 0:
            return self.x + u * cos(a), self.y + u * sin(a), a
        return self.x + (sin(a + k * u) - sin(a)) / k, self.y - (cos(a + k * u) - cos(a)) / k, a + k * u

    def end(self):
        return self.at(self.length)

    def centre(self):
        return self.x - sin(self.heading) / self.k, self.y + cos(self.heading) / self.k

    def moved(self, out):
        stretch = 1 + self.k * out
        return Piece(self.length * stretch, self.k / stretch, self.x + out * sin(self.heading), self.y - out * cos(self.heading), self.heading)


class Path(list):
    def length(self):
        return sum(piece.length for piece in self)

    def at(self, arc):
        """Place, heading and curvature."""
        for i, piece in enumerate(self):
            if arc < piece.length or i + 1 == len(self):
                return (*piece.at(arc), piece.k if arc >= 0 else mpf(0))
            arc -= piece.length

    def moved(self, out):
        path = Path()
        for piece in self:
            other = piece.moved(out)
            if path and piece.heading - self[self.index(piece) - 1].end()[2] > TINY:  # an inboard kink: a round about it
                x, y, a = path[-1].end()
                path.append(Piece((piece.heading - a) * out, 1 / out, x, y, a))
            path.append(other)
        return path

    def arcs_at(self, height):
        """Arc lengths, from the foot, at which it is at a height."""
        before, found = mpf(0), []
        for i, piece in enumerate(self):
            if piece.k == 0 or i == 0 and height < piece.y:
                u = (height - piece.y) / sin(piece.heading)
                found += [before + u] if (u >= 0 or i == 0) and (piece.k or u <= piece.length) and not (piece.k and u > 0) else []
            if piece.k:
                c = cos(piece.heading) - piece.k * (height - piece.y)
                if -1 <= c <= 1:
                    found += [before + u for u in sorted(((acos(c) - piece.heading) / piece.k, (2 * pi - acos(c) - piece.heading) / piece.k, (-acos(c) - piece.heading) / piece.k)) if 0 <= u <= piece.length]
            before += piece.length
        return found


def frame(chance):
    """The fields of a bow of some shape, its centreline and its face."""
    kind = chance.choice(("round", "pointed", "flat", "shoulder", "out", "hollow", "straight"))
    d = between(chance, 0.02, 0.08)
    at = {"frame.shape": "leg_and_peak" if kind in ("round", "pointed", "flat", "shoulder") else "three_points", "frame.measured": chance.choice(("outside", "centreline")), "frame.tube.diameter": d, "frame.tube.wall": 0.1 * d}
    half = d / 2 if at["frame.measured"] == "outside" else 0.0
    if at["frame.shape"] == "leg_and_peak":
        a = between(chance, 1, 10)
        h = chance.uniform(0.4, 2.5) if kind != "round" or chance.random() < 0.7 else 0.0
        f = a * {"round": 1.0, "pointed": chance.uniform(1.01, 1.5), "flat": chance.uniform(0.3, 0.95), "shoulder": chance.uniform(0.3, 0.9)}[kind]
        at.update({"frame.width": 2 * a + 2 * half, "frame.leg_height": h, "frame.peak_height": h + f + half})
        if kind == "shoulder":
            at["frame.shoulder_radius"] = chance.uniform(0.15, 0.6)
        x = exact(at)
        e = x["frame.tube.diameter"] if half else mpf(0)
        a, h = (x["frame.width"] - e) / 2, x["frame.leg_height"]
        f = x["frame.peak_height"] - e / 2 - h
        path = Path([Piece(h, mpf(0), a, mpf(0), pi / 2)] if h else [])
        if f >= a:
            if kind == "shoulder":
                return frame(chance)
            R = (f**2 + a**2) / (2 * a)
            path.append(Piece(R * atan2(f, R - a), 1 / R, a, h, pi / 2))
        else:
            R = (a**2 + f**2) / (2 * f)
            if kind == "shoulder":
                rho = x["frame.shoulder_radius"]
                begins = h + f - R + sqrt((R - rho) ** 2 - (a - rho) ** 2)
                if begins < 0 or rho >= a:
                    return frame(chance)
                chi = atan2(begins - (h + f - R), a - rho)
                path = Path([Piece(begins, mpf(0), a, mpf(0), pi / 2), Piece(rho * chi, 1 / rho, a, begins, pi / 2)])
                px, py, heading = path[-1].end()
                path.append(Piece(R * (pi / 2 - chi), 1 / R, px, py, heading))
            else:
                kink = atan2(R - f, a)
                path.append(Piece(R * (pi / 2 - kink), 1 / R, a, h, pi / 2 + kink))
        return at, path, path.moved(x["frame.tube.diameter"] / 2)
    foot, lean, high = between(chance, 2, 6), chance.uniform(-0.3, 0.8), chance.uniform(2.3, 3)
    share = chance.uniform(0.3, 0.7)
    bulge = {"out": 1, "hollow": -1, "straight": 0}[kind] * between(chance, 1e-7, 0.25)
    at.update({"frame.foot_x": foot, "frame.foot_height": chance.choice((0.0, chance.uniform(-0.3, 0.3))), "frame.peak_height": high, "frame.peak_x": foot - lean})
    at["frame.between_height"] = at["frame.foot_height"] + share * (high - at["frame.foot_height"])
    at["frame.between_x"] = foot - share * lean + bulge
    x = exact(at)
    (ax, ay), (bx, by), (cx, cy) = ((x[f"frame.{name}_x"], x[f"frame.{name}_height"]) for name in ("foot", "between", "peak"))
    turn = (bx - ax) * (cy - by) - (by - ay) * (cx - bx)
    half_turn = atan2(turn, (bx - ax) * (cx - bx) + (by - ay) * (cy - by))
    if fabs(half_turn) < mpf("1e-9"):
        path = Path([Piece(hypot(cx - ax, cy - ay), mpf(0), ax, ay, atan2(cy - ay, cx - ax))])
    else:  # the centre is as far from all three
        g = 2 * turn
        sa, sb, sc = ax**2 + ay**2, bx**2 + by**2, cx**2 + cy**2
        mx = (sa * (by - cy) + sb * (cy - ay) + sc * (ay - by)) / g
        my = (sa * (cx - bx) + sb * (ax - cx) + sc * (bx - ax)) / g
        k = (1 if turn > 0 else -1) / hypot(ax - mx, ay - my)
        path = Path([Piece(2 * half_turn / k, k, ax, ay, atan2((ax - mx) * k, -(ay - my) * k))])
    if sin(path[0].heading) <= 0.3 or fabs(half_turn) > 1.4:
        return frame(chance)
    out = x["frame.tube.diameter"] / 2
    if half:
        path = path.moved(-out)
    return at, path, path.moved(out)


def size(path):
    """m, its length, and its foot's distance from where things are measured from."""
    return path.length() + hypot(path[0].x, path[0].y)


def bow_make(chance):
    at, path, face = frame(chance)
    near = absolute(PLACE * size(path))
    return at, {"length": (path.length(), "", near), "face_length": (face.length(), "", near)}


def bow_at(chance):
    at, path, _ = frame(chance)
    at["arc"] = float(path.length() * mpf(chance.choice((-0.05, chance.uniform(0, 1), chance.uniform(0, 0.99999)))))
    x, y, heading, k = path.at(mpf(at["arc"]))
    near = absolute(PLACE * size(path))
    return at, {"point.x": (x, "", near), "point.y": (y, "", near), "point.heading": (heading, "", absolute(HEADING)), "point.curvature": (k, "", absolute(HEADING * (fabs(k) + 1 / path.length()) if k else 0))}


def height_on(chance, path):
    """A height below the path's top, that no bend is near."""
    top = max([piece.end()[1] for piece in path] + [path[0].y])
    return float(path[0].y + (top - path[0].y) * mpf(chance.choice((-0.05, chance.uniform(0.01, 0.99), chance.uniform(0.9, 0.9999)))))


def bow_at_height(chance):
    at, path, _ = frame(chance)
    at["height"] = height_on(chance, path)
    step = 2 * PLACE * size(path)
    arc, lower, higher = (path.arcs_at(mpf(at["height"]) + step * i)[0] for i in (0, -1, 1))
    return at, {"arc": (arc, "", absolute(max(fabs(arc - lower), fabs(higher - arc)) + step))}


def bow_face(chance):
    at, _, face = frame(chance)
    at["height"] = height_on(chance, face)
    step = 2 * PLACE * size(face)
    x, lower, higher = (face.at(face.arcs_at(mpf(at["height"]) + step * i)[0])[0] for i in (0, -1, 1))
    return at, {"x": (x, "", absolute(max(fabs(x - lower), fabs(higher - x)) + step))}


def crossings(path, x, y, angle):
    """Where a half line crosses: distance, arc length, and the sine between them."""
    c, s, before = cos(angle), sin(angle), mpf(0)
    for i, piece in enumerate(path):
        if piece.k:
            cx, cy = piece.centre()
            along, across = (cx - x) * c + (cy - y) * s, (cx - x) * s - (cy - y) * c
            if 1 / piece.k**2 > across**2:
                for side in (-1, 1):
                    t = along + side * sqrt(1 / piece.k**2 - across**2)
                    heading = atan2((x + t * c - cx) * piece.k, -(y + t * s - cy) * piece.k)
                    turned = heading - piece.heading
                    u = (turned - 2 * pi * floor((turned + pi) / (2 * pi))) / piece.k
                    if t > 0 and 0 <= u <= piece.length:
                        yield t, before + u, fabs(sin(heading - angle))
        if not piece.k or i == 0:
            px, py = cos(piece.heading), sin(piece.heading)
            det = c * py - s * px
            if det:
                t, u = ((piece.x - x) * py - (piece.y - y) * px) / det, ((piece.x - x) * s - (piece.y - y) * c) / det
                if t > 0 and (u >= 0 or i == 0) and u <= (0 if piece.k else piece.length):
                    yield t, before + u, fabs(det)
        before += piece.length


def bow_crossing(chance):
    at, path, _ = frame(chance)
    at.update({"x": float(path[0].x) + chance.uniform(0.1, 2), "y": chance.uniform(1, 4), "angle": chance.uniform(3.3, 4.6)})
    found = sorted(crossings(path, mpf(at["x"]), mpf(at["y"]), mpf(at["angle"])))
    if not found or found[0][2] < 0.01:
        return bow_crossing(chance)
    distance, arc, sine = found[0]
    near = absolute(PLACE * (size(path) + distance) / sine)
    return at, {"distance": (distance, "", near), "arc": (arc, "", near)}


PLACE = mpf("1e-15")
HEADING = 4e-15
FUNCTIONS = {
    "tside_bow_make": bow_make,
    "tside_bow_at": bow_at,
    "tside_bow_at_height": bow_at_height,
    "tside_bow_face": bow_face,
    "tside_bow_crossing": bow_crossing,
}
FEW = {}
