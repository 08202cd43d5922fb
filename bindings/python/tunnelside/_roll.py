# SPDX-License-Identifier: MIT
"""The roll's functions over columns."""
from __future__ import annotations

from typing import Any

from . import _core
from ._api import Position, Roll
from ._batch import _column, _numbers
from ._structure import fields

_WRAPS, _TAKEN_UP, _DIAMETER = range(3)
_FIELDS = {field.name: field for field in fields(Position) if field.name in ("wraps", "taken_up")}


def _many(which: int, roll: Roll, name: str, column: Any, out: Any) -> Any:
    numbers, absent = _numbers(column, _FIELDS[name], name)
    if absent:
        raise TypeError(f"{name}, row {absent[0]}: a number, or a text with its unit, and not missing: there is no other to take")
    answer = _column(out, memoryview(numbers).shape[0], "d")  # type: ignore[index]
    _core.roll_rows(which, roll, numbers, answer)
    return answer


def roll_wraps_many(roll: Roll, taken_up: Any, out: Any = None) -> Any:
    """
    roll_wraps over a column: wraps for each length taken up.

    taken_up: m, a column as plan_many takes it; out: a writable column of doubles for the answer, else one is made.
    Error as roll_wraps, with the row; nothing is then written.
    """
    return _many(_WRAPS, roll, "taken_up", taken_up, out)


def roll_taken_up_many(roll: Roll, wraps: Any, out: Any = None) -> Any:
    """roll_taken_up over a column: m for each number of wraps. Otherwise as roll_wraps_many."""
    return _many(_TAKEN_UP, roll, "wraps", wraps, out)


def roll_diameter_many(roll: Roll, wraps: Any, out: Any = None) -> Any:
    """roll_diameter over a column: m for each number of wraps. Otherwise as roll_wraps_many."""
    return _many(_DIAMETER, roll, "wraps", wraps, out)


__all__ = ["roll_diameter_many", "roll_taken_up_many", "roll_wraps_many"]
