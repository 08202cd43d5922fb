# SPDX-License-Identifier: MIT
"""A drawing as it stands on paper, read back from its SVG, and what meets what there: by geometry of its own, which knows nothing of how places were found."""
import math
import re
import xml.etree.ElementTree as ElementTree
from typing import NamedTuple

SVG = "{http://www.w3.org/2000/svg}"
LETTERS_UP, LETTERS_DOWN = 3.7, 1.1  # mm above and below a text's foot, of a monospaced face whose capitals are 3.5 mm high
ROUNDED = 2e-3  # mm, by which two places may stray from each other


class Text(NamedTuple):
    """Of a text: words, middle of its foot, which way it runs and goes up, and its width."""

    words: str
    x: float
    y: float
    ux: float
    uy: float
    width: float

    def within(self, x, y):
        """A place as seen from the text: along from its middle, and up from its foot."""
        return (x - self.x) * self.ux + (y - self.y) * self.uy, (x - self.x) * self.uy - (y - self.y) * self.ux

    def corners(self):
        up_x, up_y = self.uy, -self.ux
        return [(self.x + along * self.ux + up * up_x, self.y + along * self.uy + up * up_y)
                for along, up in ((-self.width / 2, -LETTERS_DOWN), (self.width / 2, -LETTERS_DOWN), (self.width / 2, LETTERS_UP), (-self.width / 2, LETTERS_UP))]

    def meets(self, line):
        """Whether a straight line enters its box: clipped by each of its four sides."""
        (a, b), (c, d) = (self.within(*end) for end in line)
        first, last = 0.0, 1.0
        for at, to, low, high in ((a, c, -self.width / 2, self.width / 2), (b, d, -LETTERS_DOWN, LETTERS_UP)):
            for start, step in ((at - high + ROUNDED, to - at), (low + ROUNDED - at, at - to)):
                if step == 0:
                    if start >= 0:
                        return False
                elif step > 0:
                    last = min(last, -start / step)
                else:
                    first = max(first, -start / step)
        return first < last

    def touches(self, other):
        """Whether two boxes have a place in common: an edge of one enters the other, or its middle is in it."""
        corners, there = self.corners(), other.corners()
        along, up = self.within(sum(x for x, _ in there) / 4, sum(y for _, y in there) / 4)
        return (abs(along) < self.width / 2 and -LETTERS_DOWN < up < LETTERS_UP) or any(self.meets((a, b)) for a, b in zip(there, there[1:] + there[:1])) \
            or any(other.meets((a, b)) for a, b in zip(corners, corners[1:] + corners[:1]))


class Page:
    """What is on paper, in mm, down from its upper left: texts, straight lines, arcs (as fine chords), circles and arrowheads."""

    def __init__(self, svg):
        root = ElementTree.fromstring(svg)
        assert root.tag == SVG + "svg"
        self.root = root
        self.title = root.findtext(SVG + "title")
        left, top, self.width, self.height = map(float, root.get("viewBox").split())
        assert (left, top) == (0, 0)
        assert (root.get("width"), root.get("height")) == tuple(f"{one}mm" for one in root.get("viewBox").split()[2:])
        self.texts = [self.text(one) for one in root.iter(SVG + "text")]
        self.lines = [tuple((float(one.get("x" + at)), float(one.get("y" + at))) for at in "12") for one in root.iter(SVG + "line")]
        self.curves = [curve(one) for one in root.iter() if one.tag in (SVG + "path", SVG + "circle")]

    @staticmethod
    def text(one):
        angle, turned = 0.0, one.get("transform")
        x, y = float(one.get("x")), float(one.get("y"))
        if turned:
            angle, at_x, at_y = map(float, re.fullmatch(r"rotate\((\S+) (\S+) (\S+)\)", turned).groups())
            assert (at_x, at_y) == (x, y)
        assert one.get("lengthAdjust") == "spacingAndGlyphs"
        return Text(one.text, x, y, math.cos(math.radians(angle)), math.sin(math.radians(angle)), float(one.get("textLength")))

    def faults(self):
        """What a reader could not tell apart."""
        inked = self.lines + [(a, b) for one in self.curves for a, b in zip(one, one[1:])]
        boxes = [(min(a, c), max(a, c), min(b, d), max(b, d)) for (a, b), (c, d) in inked]
        for at, text in enumerate(self.texts):
            xs, ys = zip(*text.corners())
            left, right, top, bottom = min(xs), max(xs), min(ys), max(ys)
            if left < -ROUNDED or top < -ROUNDED or right > self.width + ROUNDED or bottom > self.height + ROUNDED:
                yield f"'{text.words}' leaves the paper"
            if text.ux < -1e-3 or (text.ux < 1e-3 and text.uy > 0):
                yield f"'{text.words}' is upside down"
            for other in self.texts[at + 1:]:
                if text.touches(other):
                    yield f"'{text.words}' meets '{other.words}'"
            for line, (x, x_end, y, y_end) in zip(inked, boxes):
                if x <= right and x_end >= left and y <= bottom and y_end >= top and text.meets(line):
                    yield f"'{text.words}' meets a line at {line}"
                    break


def curve(one):
    """Chords of a circle or arc that stray from it by no more than 1e-3 mm; an arrowhead's edges."""
    if one.tag == SVG + "circle":
        x, y, radius = (float(one.get(name)) for name in ("cx", "cy", "r"))
        return arc(x, y, radius, 0, 2 * math.pi)
    words = re.findall(r"[MALz]|-?[\d.]+", one.get("d"))
    if "A" not in words:
        assert one.get("stroke") == "none" and words[-1] == "z"
        numbers = [float(word) for word in words if word not in "MLz"]
        corners = list(zip(numbers[::2], numbers[1::2]))
        return corners + corners[:1]
    x, y, radius, again, turned, far, clockwise, x_end, y_end = (float(word) for word in words if word not in "MA")
    assert radius == again and turned == 0 and clockwise == 0
    # Its centre is square to the chord's middle, on the right as it goes round backward, on the left where that is more than half (SVG 1.1, appendix F.6.5).
    half = math.hypot(x_end - x, y_end - y) / 2
    away = math.sqrt(max(radius * radius - half * half, 0)) / (2 * half) * (-1 if far else 1)
    centre_x, centre_y = (x + x_end) / 2 + away * (y_end - y), (y + y_end) / 2 - away * (x_end - x)
    begin, end = math.atan2(y - centre_y, x - centre_x), math.atan2(y_end - centre_y, x_end - centre_x)
    return arc(centre_x, centre_y, radius, begin, -((begin - end) % (2 * math.pi)))


def arc(x, y, radius, begin, sweep):
    chords = max(1, min(4000, math.ceil(abs(sweep) / math.sqrt(8 * 1e-3 / max(radius, 1e-3)))))
    return [(x + radius * math.cos(begin + sweep * i / chords), y + radius * math.sin(begin + sweep * i / chords)) for i in range(chords + 1)]
