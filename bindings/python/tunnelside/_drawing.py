# SPDX-License-Identifier: MIT
"""What a drawing and a plan show of themselves in a notebook."""
from __future__ import annotations

from typing import TYPE_CHECKING, Any, Callable, Dict, List, Tuple

from . import _core

if TYPE_CHECKING:
    from ._api import Drawing, Plan


def svg(self: Drawing, title: str = "") -> str:
    """
    As SVG 1.1 text, its size that of the drawing on paper.

    title: any text, such as whose side it is.
    """
    return _core.drawing_svg(self, title)


def _repr_svg_(self: Drawing) -> str:
    return svg(self, f"{self.picture.view.text.replace('_', ' ')}, {self.picture.end.text.replace('_', ' ')}")


# Of a plan, what a notebook shows: what it is, field, unit.
_FIGURES: Tuple[Tuple[str, str, str], ...] = (
    ("turns of the drive, shut to open", "drive_turns", ""),
    ("opening", "opening", "m"),
    ("curtain's length", "curtain_length", "m"),
    ("bar's length", "bar_length", "m"),
    ("the drive must be rated for at least", "design_torque", "N m"),
)


def _repr_html_(self: Plan) -> str:
    from html import escape

    figures = "".join(f'<tr><th scope="row" style="text-align:left">{escape(what)}</th><td>{f"{getattr(self, field):.4g} {unit}".strip()}</td></tr>'
                      for what, field, unit in _FIGURES)
    found = "".join(f"<li>{'<strong>stops the work:</strong> ' if _core.finding_stops(int(one.code)) else ''}{escape(_core.finding_text(one))}</li>" for one in self.findings)
    return (f"<table>{figures}</table>" + (f"<p>Findings:</p><ul>{found}</ul>" if found else "<p>No findings.</p>")
            + "<p>For choosing parts and setting out, not a certificate: local codes, makers' ratings and licensed practice come first.</p>")


#: What a class has beside its fields.
METHODS: Dict[str, List[Callable[..., Any]]] = {"Drawing": [svg, _repr_svg_], "Plan": [_repr_html_]}
