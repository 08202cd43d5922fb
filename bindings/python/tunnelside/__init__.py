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
from ._names import CONSTANTS, TOPICS
from ._version import __version__ as __version__

TYPE_CHECKING = False  # for tools; an import reads none of what is named here until it is asked for
if TYPE_CHECKING:
    from typing import Any, List

    from ._api import *  # noqa: F401,F403
    from ._batch import FIGURES as FIGURES, plan_many as plan_many, row_side as row_side
    from ._roll import roll_diameter_many as roll_diameter_many, roll_taken_up_many as roll_taken_up_many, roll_wraps_many as roll_wraps_many
    from ._site import Site as Site, as_columns as as_columns, load as load, save as save
    from ._structure import Choice as Choice, Error as Error, Field as Field, Quantity as Quantity, Structure as Structure, fields as fields
    from ._tables import StockPlan as StockPlan, Trade as Trade, check as check, fault_text as fault_text, field_applies as field_applies, field_find as field_find
    from ._tables import field_read as field_read, findings_in as findings_in, stock_plan as stock_plan, trades as trades, usual as usual, usual_by_choice as usual_by_choice

# What is written by hand: topic, module, names. All else is in _api.
_BY_HAND = (
    ("fault", "_structure", ["Error"]),
    ("fault", "_tables", ["fault_text"]),
    ("field", "_structure", ["Structure", "Choice", "Field", "Quantity", "fields"]),
    ("field", "_tables", ["usual", "usual_by_choice", "check", "field_find", "field_applies"]),
    ("length", "_tables", ["field_read"]),
    ("tube", "_tables", ["Trade", "trades"]),
    ("roll", "_roll", ["roll_wraps_many", "roll_taken_up_many", "roll_diameter_many"]),
    ("plan", "_batch", ["FIGURES", "plan_many", "row_side"]),
    ("plan", "_tables", ["findings_in"]),
    ("stock", "_tables", ["StockPlan", "stock_plan"]),
    ("plan", "_site", ["Site", "load", "save", "as_columns"]),
)
_CONTENTS = {topic: [*names, *(name for at, _, own in _BY_HAND for name in own if at == topic)] for topic, (_, names) in TOPICS.items()}
_MODULES = {name: "_api" for names in (CONSTANTS, *_CONTENTS.values()) for name in names}
_MODULES.update({name: module for _, module, names in _BY_HAND for name in names})

__all__ = [*_MODULES, "__version__"]
__doc__ = f"{__doc__}\nTopics\n\n" + "\n".join(f"{topic}: {about}\n    {', '.join(_CONTENTS[topic])}" for topic, (about, _) in TOPICS.items()) + "\n"


def __getattr__(name: str) -> "Any":
    from importlib import import_module

    if name not in _MODULES:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    module = import_module(f".{_MODULES[name]}", __name__)
    value = getattr(module, name)
    # Whoever evaluates a function's hints finds the classes that they name.
    for hint in getattr(value, "__annotations__", {}).values() if module.__name__.endswith("._api") else ():
        for word in str(hint).replace("[", " ").replace("]", " ").replace(",", " ").split():
            if word in _MODULES:
                getattr(module, word)
    return globals().setdefault(name, value)


def __dir__() -> "List[str]":
    return sorted(__all__)
