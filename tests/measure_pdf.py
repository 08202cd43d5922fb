# SPDX-License-Identifier: MIT
"""Measures sheets back from a PDF: sizes of pages, and the strips of a template against the plan they are of.

measure_pdf.py pages FILE.pdf             prints a line a page: width and height in mm
measure_pdf.py template FILE.pdf PLAN.json
                                          compares strips with the plan's JSON, to 0.1 mm; prints what is wrong, or how many were measured
measure_pdf.py walls FILE.pdf PLAN.json
                                          the same of end walls, a page each: their extender's outline, at a scale of 1:1, 1:2, 1:5 ...

Reads what cairo writes: objects that stand in the file by themselves, content deflated. Operators: ISO 32000-1, 8.5.2, from memory.
"""
import json
import math
import re
import sys
import zlib

CLOSE = 0.1  # mm
POINT = 25.4 / 72


class Page:
    """Paths of a page, in mm from its upper left corner."""

    def __init__(self, width, height, content):
        self.width, self.height = width * POINT, height * POINT
        self.boxes, self.circles, self.lines = [], [], []
        self.read(content)

    def place(self, matrix, x, y):
        a, b, c, d, e, f = matrix
        return ((a * x + c * y + e) * POINT, self.height - (b * x + d * y + f) * POINT)

    def read(self, content):
        matrix, saved, numbers, points, curves = (1, 0, 0, 1, 0, 0), [], [], [], 0
        content = re.sub(r"\((?:\\.|[^()\\])*\)|<[0-9A-Fa-f]*>|\[[^\]]*\]", " ", content)
        for word in content.split():
            if re.fullmatch(r"[-+]?[0-9]*\.?[0-9]+", word):
                numbers.append(float(word))
                continue
            if word == "q":
                saved.append(matrix)
            elif word == "Q":
                matrix = saved.pop()
            elif word == "cm":
                a, b, c, d, e, f = numbers[-6:]
                A, B, C, D, E, F = matrix
                matrix = (a * A + b * C, a * B + b * D, c * A + d * C, c * B + d * D, e * A + f * C + E, e * B + f * D + F)
            elif word == "re":
                x, y, w, h = numbers[-4:]
                points += [self.place(matrix, x, y), self.place(matrix, x + w, y), self.place(matrix, x + w, y + h), self.place(matrix, x, y + h)]
            elif word in ("m", "l"):
                points.append(self.place(matrix, *numbers[-2:]))
            elif word == "c":
                curves += 1
                points.append(self.place(matrix, *numbers[-2:]))
            elif word in ("S", "s", "f", "n", "B"):
                if word in ("S", "s"):
                    self.keep(points, curves)
                points, curves = [], 0
            numbers = []

    def keep(self, points, curves):
        left, right = min(p[0] for p in points), max(p[0] for p in points)
        top, bottom = min(p[1] for p in points), max(p[1] for p in points)
        if curves >= 4:
            self.circles.append(((left + right) / 2, (top + bottom) / 2, right - left))
        elif not curves and len(points) >= 4:
            self.boxes.append((left, top, right, bottom))
        elif len(points) == 2:
            self.lines.append((left, top, right, bottom))


def pages_of(name):
    data = open(name, "rb").read()
    objects = {int(m.group(1)): m.group(2) for m in re.finditer(rb"(?<!\d)(\d+) 0 obj\b(.*?)endobj", data, re.S)}
    tree = next(body for body in objects.values() if re.search(rb"/Type\s*/Pages\b", body))
    for kid in re.findall(rb"(\d+) 0 R", re.search(rb"/Kids\s*\[(.*?)\]", tree, re.S).group(1)):
        page = objects[int(kid)]
        box = [float(word) for word in re.search(rb"/MediaBox\s*\[(.*?)\]", page, re.S).group(1).split()]
        content = objects[int(re.search(rb"/Contents\s+(\d+) 0 R", page).group(1))]
        stream = re.search(rb"stream\r?\n(.*?)endstream", content, re.S).group(1)
        yield Page(box[2], box[3], zlib.decompress(stream).decode("latin-1"))


failed = []


def expect(what, got, want):
    if not abs(got - want) <= CLOSE:
        failed.append(f"{what}: {got:.3f} mm, not {want:.3f}")


def value(structure, path):
    for name in path.split("."):
        structure = structure[name]
    return structure["value"] * 1000


def check_bars(page):
    lengths = [right - left for left, top, right, bottom in page.lines if bottom - top < 0.01]
    for bar in (100, 101.6):
        if not any(abs(length - bar) <= CLOSE for length in lengths):
            failed.append(f"no bar of {bar} mm")


def strips_of(page):
    """Each box with the circles in it, from the sheet's top down."""
    for box in sorted(page.boxes, key=lambda box: box[1]):
        inside = sorted(c for c in page.circles if box[0] < c[0] < box[2] and box[1] < c[1] < box[3])
        if inside:
            yield page, box, inside


def has_line(page, left, right, y):
    return any(abs(l[0] - left) <= CLOSE and abs(l[2] - right) <= CLOSE and abs(l[1] - y) <= CLOSE and abs(l[3] - y) <= CLOSE for l in page.lines)


def check_face(name, strip, side, from_top, diameter, top_at_right):
    page, (left, top, right, bottom), circles = strip
    expect(f"{name}: holes", len(circles), 1)
    x, y, round_hole = circles[0]
    expect(f"{name}: from edge to edge", bottom - top, side)
    expect(f"{name}: middle from the upper edge", y - top, side / 2)
    expect(f"{name}: middle from the lower edge", bottom - y, side / 2)
    expect(f"{name}: hole", round_hole, diameter)
    if not has_line(page, left, right, (top + bottom) / 2):
        failed.append(f"{name}: no middle line")
    ahead = right - x if top_at_right else x - left
    if from_top <= 40:  # the strip ends with the tube
        expect(f"{name}: from the top end", ahead, from_top)
    return ahead


def check_bow(name, strip, tube, diameter):
    page, (left, top, right, bottom), circles = strip
    expect(f"{name}: crosses", len(circles), 2)
    expect(f"{name}: once round", right - left, math.pi * tube)
    expect(f"{name}: half round", circles[1][0] - circles[0][0], math.pi * tube / 2)
    for x, y, round_hole in circles:
        expect(f"{name}: hole", round_hole, diameter)
        expect(f"{name}: on its middle line", y, (top + bottom) / 2)
        if not any(abs(l[0] - x) <= CLOSE and abs(l[2] - x) <= CLOSE and l[1] <= top + CLOSE and l[3] >= bottom - CLOSE for l in page.lines):
            failed.append(f"{name}: no line across at a cross")


def check_template(pdf, plan):
    pages = list(pages_of(pdf))
    strips = [strip for page in pages for strip in strips_of(page)]
    for page in pages:
        check_bars(page)
        for left, top, right, bottom in page.boxes:
            if left < 5 or top < 5 or right > page.width - 5 or bottom > page.height - 5:
                failed.append(f"a box reaches the sheet's edge: {left:.1f} {top:.1f} {right:.1f} {bottom:.1f}")
    count = 0
    for planned in json.load(open(plan))["sides"]:
        for end in ("drive_end", "free_end"):
            asked, answered = planned["asked"][end], planned["plan"][end]
            if asked["hung"] != "extender":
                continue
            bolt = value(asked, "extender.bolt_hole")
            for hole in ("eye", "bow", "member"):
                diameter = value(asked, "extender.eye_hole") if hole == "eye" else bolt
                name = f"{end}, {hole}"
                arms = [check_face(f"{name}, {face}", strips[count + i], value(asked, "extender.tube.side"), value(answered, f"layout.{hole}_from_top"), diameter, i)
                        for i, face in enumerate(("outer", "wall"))]
                expect(f"{name}: the far face mirrors the near one", arms[0], arms[1])
                count += 2
            check_bow(f"{end}, bow", strips[count], value(planned["asked"], "frame.tube.diameter"), bolt)
            count += 1
    if count != len(strips):
        failed.append(f"{len(strips)} strips, not {count}")
    return count


def check_walls(pdf, plan):
    """Two lines are as long as the extender is cut, at one of the scales, and so is the distance between their middles as its side."""
    pages = list(pages_of(pdf))
    ends = [(side["asked"][end], side["plan"][end]) for side in json.load(open(plan))["sides"] for end in ("drive_end", "free_end")]
    if len(pages) != len(ends):
        failed.append(f"{len(pages)} sheets, not {len(ends)}")
    for page, (asked, answered) in zip(pages, ends):
        check_bars(page)
        if asked["hung"] != "extender":
            continue
        cut, side = value(answered, "layout.cut_length"), value(asked, "extender.tube.side")
        for scale in (1, 2, 5, 10, 20, 50, 100):
            edges = [l for l in page.lines if abs(math.hypot(l[2] - l[0], l[3] - l[1]) - cut / scale) <= CLOSE]
            middles = [((l[0] + l[2]) / 2, (l[1] + l[3]) / 2) for l in edges]
            if any(abs(math.dist(a, b) - side / scale) <= CLOSE for a in middles for b in middles):
                break
        else:
            failed.append(f"no extender of {cut:.1f} mm by {side:.1f} mm at any scale")
    return len(ends)


if sys.argv[1] == "pages":
    for page in pages_of(sys.argv[2]):
        print(f"{page.width:.1f} {page.height:.1f}")
else:
    measured = {"template": check_template, "walls": check_walls}[sys.argv[1]](sys.argv[2], sys.argv[3])
    print("\n".join(failed) or f"{measured} measured")
    sys.exit(bool(failed))
