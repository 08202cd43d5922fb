# SPDX-License-Identifier: MIT
"""Many sides: columns in, columns out."""
from __future__ import annotations

import array
import sys
from typing import TYPE_CHECKING, Any, Callable, Dict, FrozenSet, Iterable, Iterator, List, Literal, Mapping, Optional, Sequence, Tuple, TypeVar, Union, overload

from . import _core
from ._api import Plan, Side
from ._structure import CHOICE, COUNT, Error, Field, field_at, fields

if TYPE_CHECKING:
    from typing import Protocol

    class Column(Protocol):
        """A column of an answer: an array, or what was given in out."""

        def __len__(self) -> int: ...

        def __getitem__(self, at: Any) -> Any: ...

        def __iter__(self) -> Iterator[Any]: ...

    class _Table(Protocol):
        """A table of pandas, polars or arrow."""

        @property
        def columns(self) -> Any: ...

T = TypeVar("T", bound="_Table")

#: The figures that plan_many answers with where none are named.
FIGURES = (
    "curtain_length", "bar_length", "bar_turns", "drive_turns", "opening", "opening_far", "seal", "worst.drive", "design_torque", "drive_utilisation", "work",
    "longest_side", "twist", "lag_elastic", "drive_end.sweep.cut_length", "drive_end.sweep.kick_out", "drive_end.side_force", "drive_end.layout.cut_length", "findings",
)

#: Rows that a worker takes at a time.
_CHUNK = 512


@overload
def plan_many(columns: Mapping[str, Any], *, base: Side, outputs: Sequence[str] = FIGURES, out: Optional[Mapping[str, Any]] = None, errors: Literal["keep", "raise"] = "keep",
              workers: int = 1) -> Dict[str, Column]: ...


@overload
def plan_many(columns: T, *, base: Side, outputs: Sequence[str] = FIGURES, out: Optional[Mapping[str, Any]] = None, errors: Literal["keep", "raise"] = "keep",
              workers: int = 1) -> T: ...


def plan_many(columns: Union[Mapping[str, Any], _Table], *, base: Side, outputs: Sequence[str] = FIGURES, out: Optional[Mapping[str, Any]] = None,
              errors: Literal["keep", "raise"] = "keep", workers: int = 1) -> Any:
    """
    Plans many sides: columns laid over a base side, row by row.

    columns: a mapping from paths of a side's fields, such as "length" or "drive_end.guide.margin", to columns; or a table of pandas, polars or arrow
        with such columns. A column is a buffer of doubles of any stride (array, memoryview, numpy), a sequence of numbers or of texts with units ("96 ft"),
        names of a choice, or one value for all rows. All columns are of one length. What is missing leaves that row as the base has it, however it is
        said: None, NaN, NA, a null, a masked element. An array with units of its own is refused: its numbers in SI units are asked for.
    base: the side that the columns are laid over.
    outputs: paths of a plan's fields, such as "worst.drive", and "findings"; FIGURES if not named. Only what they need is computed, and only that can make
        a row bad: turns alone ask for no guide that fits. Findings need everything, and so does an empty list, which asks whether there is a plan.
    out: a mapping from outputs to writable columns of doubles, reused from call to call; those not in it are made.
        It may hold "status" (ints) too; "findings" are unsigned 64-bit. Nothing in it may have memory in common with another column, or be masked.
    errors: "keep" notes a status for each row, and "raise" raises the Error of the first bad row once all are planned; its row says which.
    workers: threads; the answers are the same bits, whatever their number.

    Answers with a dictionary of columns in the order of outputs, and "status", and "findings" where they are asked for, last; with a table of its kind, where
    one was given. A column is what was given in out, else a numpy array where numpy is in use, else an array. status: a Status per row. findings: a word per
    row, see findings_in; in a table their names, as many as there are. A bad row does not stop the others: its figures are not a number, as is a figure that a row does not have.
    """
    if errors not in ("keep", "raise"):
        raise ValueError(f"errors: {errors!r} is neither 'keep' nor 'raise'")
    if workers < 1:
        raise ValueError(f"workers: {workers} is below 1")
    if not isinstance(base, Side):
        raise TypeError(f"base: a Side, not {type(base)}")
    given, length, alike = _opened(columns)
    inputs, rows, blanks = _read(given, length)
    out = out or {}
    asked = dict.fromkeys([*outputs, *out])
    wanted = [name for name in asked if name not in ("status", "findings")]
    for name in wanted:
        field_at(Plan, name)
    answer = {name: _column(out.get(name), rows, "d") for name in wanted}
    answer["status"] = _column(out.get("status"), rows, "i")
    if "findings" in asked:
        answer["findings"] = _column(out.get("findings"), rows, "Q")
    taken = tuple((name, answer[name]) for name in wanted)
    work = [(start, stop, tuple(pair for pair in inputs if pair[0] not in absent)) for first, last, absent in _runs(blanks, rows)
            for start, stop in _chunks(first, last, workers)]

    def run(piece: Tuple[int, int, Tuple[Tuple[str, Any], ...]]) -> Optional[Exception]:
        start, stop, columns_here = piece
        return _core.plan_rows(base, start, stop, columns_here, taken, answer["status"], answer.get("findings"))

    for error in _each(run, work or [(0, 0, inputs)], workers):
        if error is not None and errors == "raise":
            raise error
    if alike is not dict and "findings" in answer and "findings" not in out:
        answer["findings"] = _named(answer["findings"])
    return alike(answer)


def _named(words: Any) -> List[Tuple[str, ...]]:
    """The findings of each row by their names: few words stand for all rows."""
    from ._tables import findings_in

    words = words.tolist()
    names = {word: tuple(code.text for code in findings_in(word)) for word in set(words)}
    return [names[word] for word in words]


def row_side(columns: Union[Mapping[str, Any], _Table], row: int, *, base: Side) -> Side:
    """The side that plan_many plans for a row: plan_side of it says what is the matter with a bad one."""
    side = base
    for name, column in _opened(columns)[0].items():
        value = column.iloc[row] if hasattr(column, "iloc") else column[row] if _is_column(column) else column
        value = value.as_py() if hasattr(value, "as_py") else value  # arrow's
        if not _is_missing(value):
            side = _laid(side, name, value)
    return side


def _laid(structure: Any, path: str, value: Any) -> Any:
    """The same structure with another value where the path leads."""
    head, _, rest = path.partition(".")
    name, _, index = head.partition("[")
    if index:
        elements = list(getattr(structure, name))
        at = int(index[:-1])
        elements[at] = _laid(elements[at], rest, value)
        return structure.replace(**{name: elements})
    if rest:
        return structure.replace(**{name: _laid(getattr(structure, name), rest, value)})
    row = next((field for field in fields(type(structure)) if field.name == name), None)
    if row and row.type in (CHOICE, COUNT) and not isinstance(value, str):
        value = int(value)
    return structure.replace(**{name: value})


# --- columns ---


def _opened(columns: Any) -> Tuple[Dict[str, Any], Optional[int], Callable[[Dict[str, Any]], Any]]:
    """The columns by name, how many rows a table has, and what makes one of its kind."""
    kind = type(columns)
    if hasattr(columns, "column_names") and hasattr(kind, "from_pydict"):  # arrow's
        return {str(name): columns.column(name) for name in columns.column_names}, columns.num_rows, kind.from_pydict
    if hasattr(columns, "columns") and hasattr(columns, "iloc"):  # pandas'
        return {str(name): columns[name] for name in columns.columns}, len(columns), lambda answer: kind(answer, index=columns.index)
    if hasattr(columns, "columns") and hasattr(columns, "get_column"):  # polars'
        return {str(name): columns.get_column(name) for name in columns.columns}, len(columns), kind
    if hasattr(columns, "keys"):
        return {str(name): columns[name] for name in columns.keys()}, None, dict
    raise TypeError(f"columns: a mapping from paths to columns, or a table of pandas, polars or arrow that is in memory, not {kind}")


def _is_column(value: Any) -> bool:
    return not isinstance(value, (str, bytes, int, float)) and (hasattr(value, "__len__") or hasattr(value, "__iter__") or hasattr(value, "__array__")) and not (
        hasattr(value, "ndim") and value.ndim == 0)


def _read(given: Mapping[str, Any], rows: Optional[int]) -> Tuple[Tuple[Tuple[str, Any], ...], int, List[Tuple[str, List[int]]]]:
    """The columns as C takes them, how many rows there are, and where values are absent."""
    inputs: List[Tuple[str, Any]] = []
    blanks: List[Tuple[str, List[int]]] = []
    first = ""
    for path, column in given.items():
        path = path.replace("yield_", "yield")
        row = field_at(Side, path)
        if not _is_column(column):
            if not _is_missing(column):
                inputs.append((path, _value(column, row, path)))
            continue
        numbers, absent = _numbers(column, row, path)
        length = memoryview(numbers).shape[0]  # type: ignore[index]
        if rows is None:
            rows, first = length, path
        if length != rows:
            raise ValueError(f"{path}: {length} rows, and {first or 'the data frame'} has {rows}")
        inputs.append((path, numbers))
        absent = absent or _nans(numbers)
        if absent:
            blanks.append((path, absent))
    if rows is None:
        rows = 1  # plain numbers alone are one side
    return tuple(inputs), rows, blanks


def _is_missing(value: Any) -> bool:
    """Nothing, in any of the ways to say so: None, NaN, NA, a masked element."""
    if value is None or value is getattr(sys.modules.get("pandas"), "NA", None) or value is getattr(sys.modules.get("numpy.ma"), "masked", None):
        return True
    return not isinstance(value, str) and bool(value != value)


def _nans(numbers: Any) -> List[int]:
    """Where a column of doubles has no number."""
    if "numpy" in sys.modules:
        numpy = sys.modules["numpy"]
        found: List[int] = numpy.flatnonzero(numpy.isnan(numpy.asarray(numbers))).tolist()
        return found
    return [at for at, value in enumerate(numbers) if value != value]


def _units(column: Any) -> Any:
    """The units that a column, or its type, has of its own, or None. A series' attributes are its rows."""
    owners = [getattr(column, "dtype", None)] if hasattr(column, "iloc") else [column, getattr(column, "dtype", None)]
    return next((getattr(owner, name) for owner in owners for name in ("units", "unit") if getattr(owner, name, None) is not None), None)


def _value(value: Any, row: Field, path: str) -> float:
    if isinstance(value, str) and row.type != COUNT:
        return _core.typed(value, row.kind, row.row, path)
    return _core.number(value, row.unit, path)


def _numbers(column: Any, row: Field, path: str) -> Tuple[Any, List[int]]:
    """A column of doubles, and the rows where there is none."""
    if _units(column) is not None:
        raise TypeError(f"{path}: a column of plain numbers, in {row.unit or '1'}, or of texts with units, not of {type(column)}, whose units are {_units(column)}")
    if _is_masked(column):
        column = column.tolist()  # None where it is masked
    if hasattr(column, "__array__") and not isinstance(column, memoryview):
        numpy = sys.modules["numpy"] if "numpy" in sys.modules else __import__("numpy")
        values = numpy.asarray(column)
        if values.ndim != 1:
            raise TypeError(f"{path}: a column of one dimension, not of {values.ndim}")
        if values.dtype.kind in "fiub":
            return values.astype(float, copy=False), []
        if values.dtype.kind not in "OUT":
            raise TypeError(f"{path}: a column of numbers or texts, not of {values.dtype}")
        column = values.tolist()
    else:
        view = _view(column)
        if view is not None:
            if view.ndim != 1:
                raise TypeError(f"{path}: a column of one dimension, not of {view.ndim}")
            if view.format in ("d", "@d", "=d"):
                return view, []
            if view.format.lstrip("@=<>") not in tuple("fbBhHiIlLqQ?"):
                raise TypeError(f"{path}: a column of numbers, not of format {view.format!r}")
            return array.array("d", view.tolist()), []
    numbers = array.array("d")
    absent: List[int] = []
    for at, value in enumerate(column):
        try:
            if _is_missing(value):
                absent.append(at)
                value = 0.0
            numbers.append(_value(value, row, path))
        except Error as error:
            raise error.at(path, at) from None
        except (TypeError, ValueError) as error:
            raise type(error)(f"{path}, row {at}: {error}") from None
    return numbers, absent


def _is_masked(column: Any) -> bool:
    masked = getattr(sys.modules.get("numpy.ma"), "MaskedArray", None)
    return masked is not None and isinstance(column, masked)


def _view(column: Any) -> Optional[memoryview]:
    try:
        return memoryview(column)
    except TypeError:
        return None


def _column(given: Any, rows: int, code: str) -> Any:
    """A column to write to: the one given, or a new one."""
    if given is not None:
        if _is_masked(given) or _units(given) is not None:
            raise TypeError(f"out: a plain column, not {type(given)}, whose mask or units would be left as they are")
        column = given
        if hasattr(given, "to_numpy"):
            column = given.to_numpy()
            if not sys.modules["numpy"].may_share_memory(column, given.to_numpy()):
                raise TypeError(f"out: {type(given)} hands out copies of its numbers alone, which would be written in vain")
        if memoryview(column).shape != (rows,):
            raise ValueError(f"out: a column of shape {memoryview(column).shape}, not ({rows},)")
        return column
    if "numpy" in sys.modules and hasattr(sys.modules["numpy"], "empty"):
        return sys.modules["numpy"].empty(rows, {"d": "f8", "i": "i4", "Q": "u8"}[code])
    return array.array(code, bytes(array.array(code).itemsize * rows))


# --- rows ---


def _runs(blanks: List[Tuple[str, List[int]]], rows: int) -> Iterable[Tuple[int, int, FrozenSet[str]]]:
    """Stretches of rows in which the same columns are absent."""
    if not blanks:
        if rows:
            yield 0, rows, frozenset()
        return
    absent: Dict[int, List[str]] = {}
    for path, where in blanks:
        for row in where:
            absent.setdefault(row, []).append(path)
    first, names = 0, frozenset(absent.get(0, []))
    for row in range(1, rows + 1):
        here = frozenset(absent.get(row, [])) if row < rows else None
        if here != names:
            yield first, row, names
            first, names = row, here or frozenset()


def _chunks(first: int, last: int, workers: int) -> Iterable[Tuple[int, int]]:
    step = _CHUNK if workers > 1 else 1 << 24
    return ((start, min(start + step, last)) for start in range(first, last, step))


def _each(run: Any, work: List[Any], workers: int) -> Iterable[Optional[Exception]]:
    if workers == 1 or len(work) == 1:
        return [run(piece) for piece in work]
    from concurrent.futures import ThreadPoolExecutor

    stopped = False

    def run_unless_stopped(piece: Any) -> Optional[Exception]:
        return None if stopped else run(piece)

    with ThreadPoolExecutor(min(workers, len(work))) as pool:
        try:
            return list(pool.map(run_unless_stopped, work))
        except BaseException:
            stopped = True  # also where a signal came while work was handed out: what waits in line ends at once
            raise


__all__ = ["FIGURES", "plan_many", "row_side"]
