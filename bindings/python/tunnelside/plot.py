# SPDX-License-Identifier: MIT
"""
Drawings and curves of a side on matplotlib's axes, which must be installed: to lay beside other curves, to annotate, to save.

    >>> import tunnelside as ts
    >>> from tunnelside import plot
    >>> ax = plot.end_wall(ts.load("examples/sites/film30.json")[0])  # doctest: +SKIP
"""
from __future__ import annotations

import re
from typing import Any, Dict, List, Optional, Sequence, Tuple, Union

from ._api import Drawing, Loose, Picture, Side, air_through, draw, loose_blown, plan_side, plan_turns, wind_pressure
from ._site import Site, speaks_metric

__all__ = ["air", "end_wall", "turns", "wind"]

_SVG = "{http://www.w3.org/2000/svg}"
# Of each class of line its width in mm and its dashes, in widths, as ISO 128-2 has them.
_NARROW = 0.25  # mm, of lines that say nothing else
_POINTS = 72 / 25.4  # in a mm


def _matplotlib(part: str) -> Any:
    from importlib import import_module

    try:
        return import_module(f"matplotlib.{part}")
    except ImportError as error:
        raise ImportError("tunnelside.plot draws by matplotlib, which is not installed") from error


def _side_of(of: object) -> Tuple[Side, bool]:
    """The side, and whether its lengths are told in millimetres."""
    if isinstance(of, Site):
        return of.side, speaks_metric(of)
    if isinstance(of, Side):
        return of, False
    raise TypeError(f"of: a Site, a Side or a Drawing, not {type(of).__name__}: a plan does not hold its side")


def end_wall(of: Union[Site, Side, Drawing], ax: Any = None, end: str = "drive_end", turns: Optional[float] = None) -> Any:
    """
    An end wall as it is drawn: its strokes, dimensions and notes, in metres and at equal scale.

    of: a Site or a Side, which is planned; or a Drawing, which is drawn as it is.
    ax: axes of matplotlib's; without them a figure of the drawing's size on paper is made.
    end: drive_end or free_end; turns: turn, of the drive since shut, at which roll and guide are drawn too. Of a Drawing neither is asked.
    Error: as plan_side and draw. ImportError: there is no matplotlib.
    Answers: the axes.
    """
    pyplot = _matplotlib("pyplot")
    if isinstance(of, Drawing):
        drawing = of
    else:
        side, metric = _side_of(of)
        drawing = draw(side, plan_side(side), Picture(end=end, tape="metric" if metric else "inch", turns=turns))
    if ax is None:
        inches = 1 / 0.0254 / drawing.picture.scale
        _, ax = pyplot.subplots(figsize=((drawing.right - drawing.left) * inches + 1, (drawing.top - drawing.bottom) * inches + 1), layout="constrained")
    _Ink(drawing, ax).put()
    ax.set_aspect("equal")
    ax.set_xlim(drawing.left, drawing.right)
    ax.set_ylim(drawing.bottom, drawing.top)
    ax.set_xlabel("to the right as seen, m from the tunnel's centreline")
    ax.set_ylabel("up, m")
    ax.set_title(f"{drawing.picture.view.text.replace('_', ' ')}, {drawing.picture.end.text.replace('_', ' ')}, from outside")
    return ax


class _Ink:
    """What an SVG of a drawing's has, put on axes: the library alone knows what is drawn."""

    def __init__(self, drawing: Drawing, ax: Any) -> None:
        self.drawing: Drawing = drawing
        self.ax: Any = ax
        self.metre: float = drawing.picture.scale / 1000  # of a mm on paper
        self.patches: Any = _matplotlib("patches")
        self.paths: Any = _matplotlib("path")
        self.textpath: Any = _matplotlib("textpath")
        self.fonts: Any = _matplotlib("font_manager")
        self.transforms: Any = _matplotlib("transforms")

    def at(self, x: float, y: float) -> Tuple[float, float]:
        return self.drawing.left + x * self.metre, self.drawing.top - y * self.metre

    def put(self) -> None:
        from xml.etree import ElementTree

        for one in ElementTree.fromstring(self.drawing.svg()).iter():
            shape = str(one.tag)[len(_SVG):]
            if shape in ("line", "circle", "path", "text"):
                getattr(self, shape)(one)

    def style(self, one: Any) -> Dict[str, Any]:
        width = float(one.get("stroke-width", _NARROW))
        dashes = [float(length) / width for length in one.get("stroke-dasharray", "").split()]
        return {"linewidth": width * _POINTS, "edgecolor": "black", "fill": False, "linestyle": (0, dashes) if dashes else "solid"}

    def trace(self, one: Any, corners: List[Tuple[float, float]], codes: Optional[List[int]] = None) -> None:
        self.ax.add_patch(self.patches.PathPatch(self.paths.Path(corners, codes), **self.style(one)))

    def line(self, one: Any) -> None:
        self.trace(one, [self.at(float(one.get("x" + end)), float(one.get("y" + end))) for end in "12"])

    def circle(self, one: Any) -> None:
        self.ax.add_patch(self.patches.Circle(self.at(float(one.get("cx")), float(one.get("cy"))), float(one.get("r")) * self.metre, **self.style(one)))

    def path(self, one: Any) -> None:
        numbers = [float(word) for word in re.findall(r"-?[\d.]+", one.get("d"))]
        if one.get("stroke") == "none":
            self.ax.add_patch(self.patches.Polygon([self.at(*numbers[i:i + 2]) for i in (0, 2, 4)], facecolor="black", linewidth=0))
        else:
            self.arc(one, self.at(*numbers[:2]), self.at(*numbers[-2:]), numbers[2] * self.metre, numbers[5] > 0)

    def arc(self, one: Any, begin: Tuple[float, float], end: Tuple[float, float], radius: float, far: bool) -> None:
        """Counter-clockwise from one place to another, by more than half of its circle where that is so."""
        from math import atan2, degrees, hypot, sqrt

        across, up = end[0] - begin[0], end[1] - begin[1]
        away = sqrt(max(radius * radius / (across * across + up * up) - 0.25, 0)) * (-1 if far else 1)
        x, y = (begin[0] + end[0]) / 2 - away * up, (begin[1] + end[1]) / 2 + away * across
        first, last = (degrees(atan2(place[1] - y, place[0] - x)) for place in (begin, end))
        radius = hypot(begin[0] - x, begin[1] - y)
        self.ax.add_patch(self.patches.Arc((x, y), 2 * radius, 2 * radius, theta1=first, theta2=last, **self.style(one)))

    def text(self, one: Any) -> None:
        """As a shape that is as wide as the drawing says: it keeps off all else at any size."""
        size, width = 4.8 * self.metre, float(one.get("textLength")) * self.metre
        letters = self.textpath.TextPath((0, 0), one.text, size=size, prop=self.fonts.FontProperties(family="monospace"))
        turned = re.match(r"rotate\((\S+) ", one.get("transform", ""))
        box = letters.get_extents()
        place = self.transforms.Affine2D().translate(-(box.x0 + box.x1) / 2, 0).scale(min(width / box.width, 1.2), 1)
        place = place.rotate_deg(-float(turned[1]) if turned else 0).translate(*self.at(float(one.get("x")), float(one.get("y"))))
        self.ax.add_patch(self.patches.PathPatch(letters.transformed(place), facecolor="black", linewidth=0))


def turns(of: Union[Site, Side], axes: Optional[Sequence[Any]] = None) -> Tuple[Any, ...]:
    """
    Opening, torque at the drive and lean of its guide over the turns of the drive since shut, as plan_turns has them.

    of: a Site or a Side, which is planned.
    axes: three axes of matplotlib's; without them a figure with three is made, one above the other.
    Error: as plan_turns. ImportError: there is no matplotlib.
    Answers: the three axes.
    """
    from math import degrees

    pyplot = _matplotlib("pyplot")
    rows = plan_turns(_side_of(of)[0])
    if axes is None:
        axes = pyplot.subplots(3, 1, sharex=True, figsize=(6.7, 7), layout="constrained")[1]
    curves = (("opening, m", [row.opening for row in rows]), ("torque at the drive, N m", [row.torque for row in rows]),
              ("lean of the guide, degrees", [degrees(row.lean) for row in rows]))
    if len(axes) != len(curves):
        raise ValueError(f"axes: {len(curves)} are needed, not {len(axes)}")
    for ax, (label, values) in zip(axes, curves):
        ax.plot([row.turn for row in rows], values, color="black", marker=".")
        ax.set_ylabel(label)
        ax.grid(True, linewidth=0.3)
    axes[-1].set_xlabel("turns of the drive since shut")
    return tuple(axes)


def air(of: Union[Site, Side], ax: Any = None) -> Any:
    """
    Changes of the whole air in an hour over the opening of the side, up to where it is open, and as a broken line what is asked.

    of: a Site or a Side, which is planned and asks for air.
    ax: axes of matplotlib's; without them a figure is made.
    Error: as plan_side and air_through. ImportError: there is no matplotlib.
    Answers: the axes.
    """
    pyplot = _matplotlib("pyplot")
    side = _side_of(of)[0]
    most, steps = plan_side(side).opening, 50
    openings = [most * k / steps for k in range(steps + 1)]
    changes = [3600 * air_through(side.air, side.length, opening).changes for opening in openings]
    if ax is None:
        ax = pyplot.subplots(figsize=(6.7, 4), layout="constrained")[1]
    ax.plot(openings, changes, color="black")
    if side.air.changes_asked is not None:
        ax.axhline(3600 * side.air.changes_asked, color="black", linestyle=(0, (12, 3)), linewidth=0.7)
    ax.set_xlabel("opening, m")
    ax.set_ylabel("changes of the air in an hour")
    ax.grid(True, linewidth=0.3)
    return ax


def wind(of: Union[Site, Side], ax: Any = None) -> Any:
    """
    How far the roll of the side shut, which no rope holds, stands out and rises over the speed of the wind, up to where the curtain flies; as broken
    lines the speed at which it flies, and the speed asked.

    of: a Site or a Side, which is planned and asks for wind by a rule that has a speed.
    ax: axes of matplotlib's; without them a figure is made.
    Error: as plan_side. ValueError: no wind is asked, or by a rule without a speed. ImportError: there is no matplotlib.
    Answers: the axes.
    """
    pyplot = _matplotlib("pyplot")
    side = _side_of(of)[0]
    plan, steps = plan_side(side), 100
    blowing = plan.blowing
    if blowing is None or blowing.flies_speed is None:
        raise ValueError(f"wind.rule: {side.wind.rule.text} has no speed")
    curtain = Loose(hanging=blowing.hanging, roll=plan.shut.diameter, weight=blowing.weight, lean=blowing.lean, seal=max(plan.seal, 0))
    asked = side.wind.replace(height=blowing.height)
    speeds = [blowing.flies_speed * k / steps for k in range(1, steps)]
    stands = [loose_blown(curtain, wind_pressure(asked.replace(speed=speed)).net) for speed in speeds]
    if ax is None:
        ax = pyplot.subplots(figsize=(6.7, 4), layout="constrained")[1]
    ax.plot(speeds, [one.stand_out for one in stands], color="black", label="stands out")
    ax.plot(speeds, [one.raise_ for one in stands], color="black", linestyle=(0, (4, 2)), label="rises")
    for speed, words in ((blowing.flies_speed, "flies"), (side.wind.speed, "asked")):
        ax.axvline(speed, color="black", linestyle=(0, (12, 3)), linewidth=0.7)
        ax.annotate(words, (speed, 1), xycoords=("data", "axes fraction"), rotation=90, ha="right", va="top")
    ax.set_xlabel("speed of the wind, m/s")
    ax.set_ylabel("roll, from where it hangs shut, m")
    ax.legend(loc="upper left")
    ax.grid(True, linewidth=0.3)
    return ax
