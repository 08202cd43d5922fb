# SPDX-License-Identifier: MIT
"""Functions of the library that take any structure, and trade sizes."""
from __future__ import annotations

from typing import NamedTuple, Sequence, Tuple, Type, TypeVar, Union

from . import _core
from ._api import STOCK_NODES, Cut, CutPlan, Finding, FindingCode, Hardware, Stick, Stock, finding_text, status_text
from ._structure import Error, Field, Structure, field_at, fields

S = TypeVar("S", bound=Structure)


def usual(structure: Type[S], hardware: Union[Hardware, str] = Hardware.INCH) -> S:
    """
    A structure with its usual values: the same as calling its class without any, but for the hardware that it and all within it have. Required numbers are
    0, which is out of their bounds.
    """
    made: S = _core.usual_in(structure(), Hardware(hardware))  # type: ignore[arg-type]  # a word too
    return made


def usual_by_choice(structure: S) -> S:
    """The same structure with those usual values that depend on its choices: a hand drive's usual mass is not a gearmotor's."""
    made: S = _core.usual_by_choice(structure)
    return made


def check(structure: Structure) -> None:
    """
    Checks a structure against its table: finite, in bounds, choices that exist, counts that fit.

    Structures within are checked too, fields that a choice leaves unused are not.
    Error OUT_OF_BOUNDS: the first field, in order, that breaks its bounds. Error NOT_FOUND: a structure without a table.
    """
    _core.check(structure)


def field_find(structure: Type[Structure], path: str) -> Field:
    """
    Follows a path such as "drive_end.guide.margin" or "keep_outs[2].inner" from a structure's table; offset is from the start of the outermost structure.

    Error NOT_FOUND: no such name, or an index not below the list's capacity.
    """
    return field_at(structure, path)


def field_applies(field: Field, structure: Structure) -> bool:
    """Whether the field applies to this structure as its choices stand."""
    return _core.applies(structure, fields(type(structure)).index(field))


def field_read(field: Field, text: str) -> float:
    """
    Reads what is typed for a field: a number as quantity_read does in the field's unit, film's thickness in mil (1/1000 in) too; a choice by its name, in
    capitals or not, as its number.

    Error UNREADABLE: as of quantity_read. Error NOT_FOUND: no such choice (other: those that exist), or the field is a count, a group or a list.
    """
    if not isinstance(text, str):
        raise TypeError(f"text: a text, not {type(text)!r}")
    return _core.typed(text, field.kind, field.row, field.name)


class Trade(NamedTuple):
    """One true size of one trade name; "family name", with a blank between, is a text that tube_size or tube_wall reads."""

    family: str
    name: str
    value: float  #: m


def trades(of_walls: bool = False) -> Tuple[Trade, ...]:
    """Every trade size known to tube_size, or tube_wall; but for "tube", whose names are numbers. A family's names stand together."""
    return tuple(Trade(*one) for one in _core.trades(of_walls))


def fault_text(error: Error) -> str:
    """The sentence of an error, such as "roll.core: -0.02 m is not above 0 m": the same as str(error)."""
    return str(error)


class StockPlan(NamedTuple):
    """How to cut pieces from sticks."""

    plan: CutPlan
    sticks: Tuple[Stick, ...]  #: alike ones together, longest pieces first
    taken: Tuple[Tuple[int, ...], ...]  #: for each of these, how many pieces of each cut one such stick gives


def stock_plan(stock: Stock, cuts: Sequence[Cut], node_limit: int = STOCK_NODES) -> StockPlan:
    """
    Plans how to cut pieces from sticks: the least total length of stock, and of plans that take as much the one with the fewest sticks.

    stock: at least one length, kerf and trim; cuts: lengths and how many of each, in any order.
    node_limit: how long the search may go on: 0 takes the first good plan. It always answers with a plan and a bound that is proven.
    Error OUT_OF_BOUNDS: a field (index: which cut), no stock length, node_limit, or too many pieces.
    Error CONTRADICTS: a stock length not above the trim; a cut longer than the longest stock less trim (index: which cut; value: its length; bound: what fits).
    Other threads of the interpreter go on while it searches.
    """
    return StockPlan(*_core.stock_plan(stock, cuts, node_limit))


def findings_in(word: int) -> Tuple[FindingCode, ...]:
    """The findings of a row of plan_many: bit k of the word is set where code k was found."""
    word = int(word)
    return tuple(code for code in FindingCode if word >> code & 1)


__all__ = ["StockPlan", "stock_plan", "Finding", "Trade", "check", "fault_text", "field_applies", "field_find", "field_read", "findings_in", "finding_text", "status_text", "trades", "usual", "usual_by_choice"]
