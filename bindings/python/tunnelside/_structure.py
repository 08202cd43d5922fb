# SPDX-License-Identifier: MIT
"""What all structures, enumerations and errors have in common. Names, units, bounds and usual values come from the library's field tables."""
from __future__ import annotations

import enum
import keyword
import sys
from threading import RLock
from typing import TYPE_CHECKING, Any, Callable, ClassVar, Dict, List, NamedTuple, NoReturn, Optional, Sequence, Tuple, Type, TypeVar, Union

from . import _core

if TYPE_CHECKING:
    from ._api import Relation, Status

#: A number in the SI unit of what it stands for, or a text with its unit: 1.6, "1.6 m", "5 ft 3 1/2 in".
Quantity = Union[float, str]

S = TypeVar("S", bound="Structure")

NUMBER, COUNT, CHOICE, GROUP, LIST = range(5)


class Choice(enum.IntEnum):
    """One of a few. A text does as well, wherever one is asked for: the field's word for it, or the member's name."""

    @property
    def text(self) -> str:
        """The word for it in files, on paper, and in structures as they print."""
        return _texts(type(self)).get(int(self), self.name.lower())

    def __str__(self) -> str:
        return self.text

    @classmethod
    def _missing_(cls, value: object) -> Choice:
        if isinstance(value, str):
            for member in cls:
                if value in (member.text, member.name, member.name.lower()):
                    return member
            raise ValueError(f"{value!r} is no {cls.__name__}; it has {', '.join(member.text for member in cls)}")
        return super()._missing_(value)  # type: ignore[no-any-return]


# The words that the field tables have for the members of an enumeration, once they have been asked for.
_TEXTS: Dict[str, Dict[int, str]] = {}


def _texts(choice: Type[Choice]) -> Dict[int, str]:
    """From the first field that is such a choice."""
    from . import _api

    name = choice.__name__
    if name not in _TEXTS:
        field = next(((c_name, field) for c_name, _, _, types in _api.STRUCTURES.values() for field, of in types.items() if of == name), None)
        rows = _core.fields(_KINDS[field[0]]) if field else []
        _TEXTS[name] = next((dict(enumerate(row[15])) for row in rows if field and row[0] == field[1]), {})
    return _TEXTS[name]


def word_of(name: str) -> str:
    """A field's name in Python: some of C's are its own words."""
    return name + "_" if keyword.iskeyword(name) else name


class Field(NamedTuple):
    """A row of a structure's table: what the field is, and what it may be."""

    name: str
    type: int
    unit: str
    meaning: str
    low: float
    high: float
    low_open: bool
    high_open: bool
    required: bool
    optional: bool
    usual: float
    usual_low: float
    usual_high: float
    basis: str
    tolerance: float
    choices: Tuple[str, ...]
    structure: Optional[Type[Structure]]
    capacity: int
    applies_to: Optional[str]
    applies_while: Tuple[int, ...]
    offset: int
    kind: int
    row: int
    film: bool

    def __str__(self) -> str:
        return f"{self.name}: {self.described()}"

    def described(self) -> str:
        """Unit, meaning, bounds and usual value in one line."""
        return self._described(self.structure.__name__ if self.structure else "")

    def _described(self, structure: str) -> str:
        parts = [f"{self.unit}, {self.meaning}" if self.type == NUMBER and self.unit else self.meaning]
        if self.type in (NUMBER, COUNT) and self.low > float("-inf"):
            parts.append(f"{'above' if self.low_open else 'from'} {self.low:g} {'to below' if self.high_open else 'to'} {self.high:g}")
        if self.choices:
            parts.append(f"one of {', '.join(self.choices)}; usually {self.choices[int(self.usual)]}")
        if self.required:
            parts.append("required")
        elif self.optional:
            parts.append("may be absent: None")
        elif self.type in (NUMBER, COUNT) and self.low > float("-inf"):
            parts.append(f"usually {self.usual:g}" + (f" ({self.basis})" if self.basis else ""))
        if structure and self.type == LIST:
            parts.append(f"at most {self.capacity} of {structure}")
        elif structure:
            parts.append(structure)
        return "; ".join(parts)


_KINDS = _core.kinds()


# --- classes, made when they are first asked for: there are some eighty, and few programs ask for all ---

_MAKING = RLock()

# What a notebook shows otherwise than as text: these have methods in _drawing.py, and generate.py their hints.
_SHOWN = ("Drawing", "Plan")


def made(name: str) -> Any:
    """The class of a structure or an enumeration, from its row in the tables that generate.py made."""
    from . import _api

    with _MAKING:
        there = vars(_api)
        if name not in there:
            if name in _api.CHOICES:
                there[name] = _choice(name, *_api.CHOICES[name])
            elif name in _api.STRUCTURES:
                there[name] = _structure(name, *_api.STRUCTURES[name])
            else:
                raise AttributeError(f"module {_api.__name__!r} has no attribute {name!r}")
        return there[name]


def _choice(name: str, doc: str, words: str) -> Any:
    make: Any = Choice
    choice = make(name, [(word, number) for number, word in enumerate(words.split())], module=f"{__package__}._api")
    choice.__doc__ = doc.strip()
    return choice


def _structure(name: str, c_name: str, doc: str, maker: Optional[str], types: Dict[str, str]) -> Any:
    own: Dict[str, Any] = {"__slots__": (), "__module__": f"{__package__}._api", "__doc__": doc.strip(), "_c_name": c_name, "_maker": maker, "_types": types}
    if name in _SHOWN:
        from ._drawing import METHODS

        own.update((method.__name__, method) for method in METHODS[name])
    return type(name, (Structure,), own)


def class_of(kind: int) -> Type[Structure]:
    """The class of a kind of structure; C asks for it too."""
    structure: Type[Structure] = made(_name_of(kind))
    return structure


def _name_of(kind: int) -> str:
    from . import _api

    if not _NAMES:
        _NAMES.update({_KINDS[c_name]: name for name, (c_name, *_) in _api.STRUCTURES.items()})
    return _NAMES.get(kind, "")


_NAMES: Dict[int, str] = {}


def members_of(choice: str) -> Tuple[Choice, ...]:
    """All of an enumeration, for C, which reads one when first asked for such a choice."""
    return tuple(made(choice))


# --- structures ---


class _Usual:
    def __repr__(self) -> str:
        return "usual"


_USUAL = _Usual()


class _Signature:
    """The signature of a structure's class, with its usual values; made when asked for, for the sake of a quick import."""

    def __get__(self, instance: object, owner: Type[Structure]) -> Any:
        import inspect

        if owner is Structure:
            raise AttributeError("__signature__")
        if owner._maker:
            return inspect.Signature()
        usual = owner()
        parameters: List[inspect.Parameter] = []
        for row in fields(owner):
            word = word_of(row.name)
            if word in owner._words and word not in [one.name for one in parameters]:
                default = inspect.Parameter.empty if row.required else getattr(usual, word) if row.type in (NUMBER, COUNT, CHOICE) else _USUAL
                default = default.text if isinstance(default, Choice) else default
                annotation = made(owner._types[row.name]) if row.name in owner._types else {NUMBER: Quantity, COUNT: int}[row.type]
                parameters.append(inspect.Parameter(word, inspect.Parameter.KEYWORD_ONLY, default=default, annotation=annotation))
        return inspect.Signature(parameters)


if TYPE_CHECKING:
    _Base = object
else:
    _Base = _core.base()


class Structure(_Base):
    """
    Values that belong together. All are given by name; what is not given has its usual value, and a structure never changes: replace() makes
    another. Numbers are in SI units, and may be given as texts with other units; an absent option is None. What functions take as another
    made it, such as a Bow of bow_make, is made by nothing else.
    """

    __slots__ = ()
    _c_name: ClassVar[str] = ""
    _types: ClassVar[Dict[str, str]] = {}  # the classes of its fields, by name
    _kind: ClassVar[int] = -1
    _words: ClassVar[Tuple[str, ...]] = ()
    _maker: ClassVar[Optional[str]] = None  # the function that makes it, where nobody does by hand
    __signature__: ClassVar[Any] = _Signature()

    def __init_subclass__(cls) -> None:
        if "_c_name" not in vars(cls):
            raise TypeError(f"{cls.__name__}: a structure is as the library has it, and is not derived from")
        cls._kind = _KINDS[cls._c_name]
        words: Dict[str, int] = {}
        lines = []
        for index, row in enumerate(_core.fields(cls._kind)):
            name, kind_of_row = row[0], row[1]
            if name.endswith("_given"):
                continue
            word = word_of(name)
            if word in words:
                continue
            words[word] = words[name] = index
            about = _field(row, None)._described(_name_of(row[16]))
            lines.append(f"{word}: {about}")
            setattr(cls, word, _core.describe(cls, cls._kind, index, word, about, cls._types[name] if kind_of_row == CHOICE else None))
        cls._words = tuple(word for word in words if not keyword.iskeyword(word))
        cls.__doc__ = f"{cls.__doc__}\n\n" + "\n".join(lines)
        _core.settle(cls._kind, cls, words)

    def asdict(self) -> Dict[str, Any]:
        """All values by name; structures within become dictionaries, lists stay lists."""
        return {word: _plain(getattr(self, word)) for word in self._words}

    def _values(self) -> Tuple[Any, ...]:
        return tuple([getattr(self, word) for word in self._words])

    def __eq__(self, other: object) -> bool:
        if type(other) is not type(self):
            return NotImplemented
        assert isinstance(other, Structure)
        return self._values() == other._values()

    def __hash__(self) -> int:
        return hash((self._kind, self._values()))

    def __reduce__(self) -> Tuple[Callable[..., Any], Tuple[Any, ...]]:
        return _made, (type(self), dict(zip(self._words, self._values())))

    def __repr__(self) -> str:
        rows = fields(type(self))
        shown = {word: getattr(self, word) for word in self._words}
        if not self._maker and not any(row.low == float("-inf") for row in rows):  # asked: only what is not usual, or not usual with such choices
            plain = type(self)()
            choices = {row.name: shown[row.name] for row in rows if row.type == CHOICE and shown[row.name] != getattr(plain, row.name)}
            usual = type(self)(**choices)
            shown = {word: value for word, value in shown.items() if word in choices or value != getattr(usual, word)}
        parts = [f"{word}={_shown(value)}" for word, value in shown.items()]
        text = f"{type(self).__name__}({', '.join(parts)})"
        return f"<{text}>" if self._maker else text


def _plain(value: Any) -> Any:
    if isinstance(value, Structure):
        return value.asdict()
    if isinstance(value, tuple):
        return [_plain(one) for one in value]
    return value


def _shown(value: Any) -> str:
    if isinstance(value, Choice):
        return repr(value.text)
    if isinstance(value, tuple):
        return f"[{', '.join(map(_shown, value))}]"
    return repr(value)


def _made(cls: Type[S], values: Dict[str, Any]) -> S:
    made: S = _core.remade(cls, values)
    return made


def _field(row: Tuple[Any, ...], structure: Optional[Type[Structure]]) -> Field:
    *own, _, capacity, applies_to, mask, offset, kind, index, film = row
    return Field._make((*own, structure, capacity, applies_to, tuple(bit for bit in range(32) if mask >> bit & 1) if applies_to else (), offset, kind, index, film))


def fields(structure: Type[Structure]) -> Tuple[Field, ...]:
    """The table of a structure: every field with its unit, meaning, bounds and usual value, in the order in which they are checked."""
    kind = structure._kind
    if kind not in _TABLES:
        _TABLES[kind] = tuple([_field(row, class_of(row[16]) if row[16] >= 0 else None) for row in _core.fields(kind)])
    return _TABLES[kind]


# Those that have been asked for: they never change.
_TABLES: Dict[int, Tuple[Field, ...]] = {}


class Error(ValueError):
    """
    A refusal: what stands in the way, as plain data. str() gives the sentence.

    status: what to do, a Status; relation: how the value stands to its bound, a Relation.
    field: path of the field at fault, or None; other: the field it contradicts, or what would do, or None.
    value, bound: what was refused and the bound it broke, in unit; None where nothing is compared; where no value fits there is no bound.
    remedy: the least value of the other field, in unit, that would do as well, or None.
    gap: how much is missing (negative) or left; index: which element, point or character, or None.
    row: of a batch, else None.
    reason: a clause that says why, or None.
    answers: what the function answers although nothing is within reach (drive_smallest: what became of each drive), else None.
    """

    answers: Any = None

    def __init__(self, text: str, status: int, relation: int = 0, field: Optional[str] = None, other: Optional[str] = None, unit: Optional[str] = None,
                 reason: Optional[str] = None, index: int = -1, row: int = -1, value: float = 0.0, bound: float = 0.0, gap: float = 0.0, related: int = 0,
                 finite: int = 1, remedy_given: int = 0, remedy: float = 0.0) -> None:
        super().__init__(text if row < 0 else f"row {row}: {text}")
        self._all = (text, status, relation, field, other, unit, reason, index, row, value, bound, gap, related, finite, remedy_given, remedy)
        self.status: Status = made("Status")(status)
        self.relation: Relation = made("Relation")(relation)
        self.field: Optional[str] = field
        self.other: Optional[str] = other
        self.unit: Optional[str] = unit
        self.reason: Optional[str] = reason
        self.index: Optional[int] = index if index >= 0 else None
        self.row: Optional[int] = row if row >= 0 else None
        self.value: Optional[float] = value if related and finite else None
        self.bound: Optional[float] = bound if related and finite and self.relation.name != "NONE_FITS" else None
        self.gap: float = gap
        self.remedy: Optional[float] = remedy if remedy_given else None

    def at(self, field: str, row: int) -> Error:
        """The same refusal of a field in a row of a batch."""
        text, status, relation, named, other, unit, reason, index, _, value, bound, gap, related, finite, remedy_given, remedy = self._all
        text = text if named else f"{field}: {text}"
        return type(self)(text, status, relation, field, other, unit, reason, index, row, value, bound, gap, related, finite, remedy_given, remedy)

    def told(self, more: str) -> Error:
        """The same refusal, its sentence with more at its end."""
        return type(self)(self._all[0] + more, *self._all[1:])

    def within(self, group: str, index: int) -> Error:
        """The same refusal, its field named from outside a structure, or an element of a list (index not below 0), that holds it."""
        text, status, relation, field, other, unit, reason, at, row, value, bound, gap, related, finite, remedy_given, remedy = self._all
        path = group if index < 0 else f"{group}[{index}]"
        return type(self)(f"{path}.{text}", status, relation, f"{path}.{field}", other, unit, reason, at, row, value, bound, gap, related, finite, remedy_given, remedy)

    def __reduce__(self) -> Tuple[Type[Error], Tuple[Any, ...]]:
        return type(self), self._all


def unknown(kind: int, name: str) -> NoReturn:
    """For C: a keyword that is no field."""
    structure = class_of(kind)
    raise TypeError(f"{structure.__name__} has no field '{name}'{meant(structure, name)}")


def meant(structure: Type[Structure], name: str, before: str = "", more: Sequence[str] = ()) -> str:
    """What a name that is no field of a structure, nor one of more, may have meant: a field of this name further in, or the nearest one here."""
    import difflib

    words = [*structure._words, *more]
    inside = _inside(structure, name)
    near: List[str] = [inside] if inside else difflib.get_close_matches(name, words, 1, 0.5)
    return f"; did you mean '{before}{near[0]}'?" if near else f"; it has {', '.join(words)}"


def _inside(structure: Type[Structure], name: str) -> str:
    for row in fields(structure):
        if row.structure:
            index = "[0]" if row.type == LIST else ""
            deeper = name if name in row.structure._words else _inside(row.structure, name)
            if deeper:
                return f"{row.name}{index}.{deeper}"
    return ""


def field_at(structure: Type[Structure], path: str) -> Field:
    """The field to which a path leads from a structure that the library has a table of; its offset is from there."""
    try:
        found = _core.field_at(structure._kind, path)
    except Error as error:
        raise error.told(_strayed(structure, path)) from None
    if found is None:
        raise LookupError(path)
    kind, row, offset = found
    return fields(class_of(kind))[row]._replace(offset=offset)


def _strayed(structure: Type[Structure], path: str) -> str:
    """What the first name of a path that no table has may have meant; nothing where each is in its table."""
    before = ""
    for step in path.split("."):
        name, _, index = step.partition("[")
        row = next((row for row in fields(structure) if row.name == name), None)
        if row is None:
            return meant(structure, name, before)
        if row.structure is None:
            return ""
        before += step + "."
        structure = row.structure
    return ""


_core.settle(-1, Error, sys.modules[__name__])
