# SPDX-License-Identifier: MIT
"""
Plans roll-up side walls of high tunnels: where every part sits, what each is cut to, turns, torque, strength.

The names are those of the C library without its prefix. Structures are given by keyword, in SI units or as text with a unit, and never change;
functions take them and answer with numbers and other structures; what is refused raises Error, which names the field, its value and the bound.

    >>> import tunnelside as ts
    >>> roll = ts.Roll(core="1.4 in", thickness="0.15 mm")
    >>> round(ts.roll_wraps(roll, "4 ft"), 3)
    10.39

plan_side plans one side, plan_many thousands, from columns or a data frame.

The results are for choosing parts and for setting out; they are not a certificate. Local codes, makers' ratings and licensed practice come first.
"""
from . import _api
from ._api import *  # noqa: F401,F403
from ._structure import Choice as Choice, Error as Error, Field as Field, Quantity as Quantity, Structure as Structure, fields as fields, settle
from ._version import __version__ as __version__

settle(_api.Status, _api.Relation)

from ._batch import FIGURES as FIGURES, plan_many as plan_many, row_side as row_side  # noqa: E402
from ._roll import roll_diameter_many, roll_taken_up_many, roll_wraps_many  # noqa: E402
from ._tables import Trade as Trade, check as check, fault_text as fault_text, field_applies as field_applies, field_find as field_find, field_read as field_read  # noqa: E402
from ._tables import StockPlan as StockPlan, stock_plan as stock_plan  # noqa: E402
from ._tables import findings_in as findings_in, trades as trades, usual as usual, usual_by_choice as usual_by_choice  # noqa: E402

_BY_HAND = {
    "fault": ["Error", "fault_text"],
    "field": ["Structure", "Choice", "Field", "Quantity", "fields", "usual", "usual_by_choice", "check", "field_find", "field_applies"],
    "length": ["field_read"],
    "tube": ["Trade", "trades"],
    "roll": ["roll_wraps_many", "roll_taken_up_many", "roll_diameter_many"],
    "plan": ["FIGURES", "plan_many", "row_side", "findings_in"],
    "stock": ["StockPlan", "stock_plan"],
}

__all__ = [*_api.CONSTANTS, *(name for names in _BY_HAND.values() for name in names), *(name for _, names in _api.TOPICS.values() for name in names), "__version__"]


def _contents() -> str:
    """The topics, as the manual has them, for help()."""
    return "\n".join(f"{topic}: {about}\n    {', '.join(names + _BY_HAND.get(topic, []))}" for topic, (about, names) in _api.TOPICS.items())


__doc__ = f"{__doc__}\nTopics\n\n{_contents()}\n"
