# SPDX-License-Identifier: MIT
"""Files of sides, with the keys of the programs' and the same meaning; columns of what is asked of one side."""
from __future__ import annotations

import json
import os
import shutil
from typing import Any, Callable, Dict, Iterable, Iterator, List, NamedTuple, NoReturn, Optional, Sequence, Tuple, Type, Union

from . import _core
from ._api import Drive, Fittings, Hardware, KeepOut, Picture, Round, Side, Square, Status, draw, mark_place, plan_side, quantity_read, tube_size, tube_wall
from ._structure import CHOICE, COUNT, GROUP, LIST, NUMBER, Choice, Error, Field, Structure, field_at, fields, meant, word_of

#: A file that is longer than this, in bytes, holds no sides.
_LONGEST = 16 << 20
_MOST_SIDES, _MOST_LISTED, _MOST_TOLERANCES = 2, 10000, 1000

# What a side may have beside the fields of the library, and what a job has of its own: all else in it is shared by its sides.
_TEXTS = ("name", "note", "drive_at", "mark")
_BESIDE = (*_TEXTS, "tolerances", "fittings")
# And some of what it holds.
_NAME, _NOTE = "name", "note"
_TEXTS_IN: Dict[Type[Structure], Tuple[str, ...]] = {Drive: (_NAME, _NOTE), KeepOut: (_NAME,)}
_DRIVE, _ENDS, _KEEP_OUTS = "drive", ("drive_end", "free_end"), "keep_outs"
_JOBS_OWN = ("job", "sides", "note")

# The choice of a file's system of bolts and holes: in feet and inches where it gives the hip in them.
_HARDWARE = "hardware"

# Of numbers in these units a file may be silent about the unit.
_UNITLESS = ("1", "turn")


class Site(NamedTuple):
    """One side as a file asks for it."""

    side: Side
    fittings: Fittings = Fittings()  #: what takeoff must know beside it
    name: str = ""
    note: str = ""
    drive_at: str = ""  #: at which end of the house its drive is
    mark: str = ""  #: the letters that begin the marks of its pieces
    tolerances: Dict[str, float] = {}  #: by path, in the field's unit: how far off it may be either way
    job: str = ""  #: of one house: its two sides
    job_note: str = ""
    names: Dict[str, str] = {}  #: of its drive and its keep-outs, by path such as "drive" and "drive_end.keep_outs[0]"
    notes: Dict[str, str] = {}  #: of its drive, so too

    def _repr_svg_(self) -> Optional[str]:
        """For a notebook the drive's end wall: a plan does not hold the side that it is drawn from. Nothing where no plan can be made."""
        try:
            drawing = draw(self.side, plan_side(self.side), Picture(tape="metric" if speaks_metric(self) else "inch"))
        except Error:
            return None
        return drawing.svg(self.name)


def speaks_metric(site: Site) -> bool:
    """Whether its lengths are told in millimetres: as its bolts are, which follow its file."""
    return str(site.fittings.bolt_size.name).startswith("BOLT_M")


def load(path: Union[str, "os.PathLike[str]"]) -> List[Site]:
    """
    Reads a file of sides, as the programs do: a side, a job of one or two sides that share what stands beside them, or a list of sides.

    path: of a JSON file, UTF-8, with the keys that `tunnelside-plan --fields` lists.
    Bounds are not looked at: check and plan_side do, and say of a field that is out of them which it is.
    Error: the first fault, whose sentence begins with the file and the path in it; field: that path. status UNREADABLE: no such file, no JSON, a key that stands
    twice, a value of another kind, a text that cannot be read, a bare number in a file that elsewhere speaks feet and inches, a field that the choices leave
    unused. NOT_FOUND: an unknown key; its nearest is named. OUT_OF_BOUNDS: a required field is missing. CONTRADICTS: a job's sides are one and the same.
    """
    name = os.fspath(path)
    root = _parsed(name)
    if isinstance(root, list):
        if not 1 <= len(root) <= _MOST_LISTED:
            _refuse(name, "", f"a list of {len(root)} sides: wanted 1 to {_MOST_LISTED}")
        sites = [_site(name, f"[{i}]", one, _speaks_feet(one)) for i, one in enumerate(root)]
    elif isinstance(root, dict) and ("sides" in root or "job" in root):
        sites = _job(name, root)
    else:
        sites = [_site(name, "", root, _speaks_feet(root))]
    places = [mark_place(site.mark) if site.mark else 0 for site in sites]
    for at, place in enumerate(places):
        if place and place in places[:at]:
            _refuse(name, "mark", f"{sites[at].mark!r}: another side has it too", Status.CONTRADICTS)
    return sites


def save(path: Union[str, "os.PathLike[str]"], sides: Union[Side, Site, Iterable[Union[Side, Site]]]) -> None:
    """
    Writes a file of sides that load and the programs read: whole, or not at all.

    path: a file that is there is replaced in one step; a device or a pipe is written to as it is.
    sides: a Side or a Site, or several: two of one job become a job, others a list. What is usual, and not required, is left out; what is written stands with
    its unit, to the last bit.
    ValueError: a side has a value that its own choices leave unused, which no file can hold; nothing is written.
    """
    sites = [Site(one) if isinstance(one, Side) else one for one in ([sides] if isinstance(sides, (Side, Site)) else sides)]
    if not sites:
        raise ValueError("sides: none is given")
    objects = [_written_site(site) for site in sites]
    jobs = {(site.job, site.job_note) for site in sites}
    root: Any = objects[0] if len(objects) == 1 else objects
    if jobs != {("", "")}:
        if len(jobs) > 1 or len(sites) > _MOST_SIDES:
            raise ValueError(f"sides: {len(sites)} sides of {len(jobs)} jobs: a file holds one job, of at most {_MOST_SIDES} sides")
        job, note = jobs.pop()
        root = {"job": job, **({"note": note} if note else {}), "sides": objects}
    text = json.dumps(root, indent=2, ensure_ascii=False) + "\n"
    _replace(os.fspath(path), text.encode("utf-8"))


def as_columns(rows: Sequence[Structure]) -> Dict[str, List[Any]]:
    """
    Structures of one kind as columns, such as plan_turns, takeoff or a plan's findings: a data frame takes them as they are.

    rows: none gives no columns. A column is named by the path of its field; choices are their names; an absent option is None.
    """
    kinds = {type(one) for one in rows}
    if len(kinds) > 1 or not all(issubclass(kind, Structure) for kind in kinds):
        raise TypeError(f"rows: structures of one kind, not {', '.join(sorted(kind.__name__ for kind in kinds))}")
    table = [dict(_leaves(one, "")) for one in rows]
    return {name: [row[name] for row in table] for name in (table[0] if table else ())}


def _leaves(structure: Structure, before: str) -> Iterator[Tuple[str, Any]]:
    for word in structure._words:
        value = getattr(structure, word)
        if isinstance(value, Structure):
            yield from _leaves(value, f"{before}{word}.")
        elif isinstance(value, tuple):
            yield before + word, [dict(_leaves(one, "")) for one in value]
        else:
            yield before + word, value.text if isinstance(value, Choice) else value


# --- reading ---


def _refuse(name: str, path: str, why: str, status: Status = Status.UNREADABLE) -> NoReturn:
    raise Error(f"{name}: {path}{': ' if path else ''}{why}", int(status), field=path or None)


def _joined(within: str, key: str) -> str:
    return f"{within}.{key}" if within else key


def _parsed(name: str) -> Any:
    """What JSON stands in the file, with no key twice, no number but finite ones, no half characters."""

    def once(pairs: List[Tuple[str, Any]]) -> Dict[str, Any]:
        found = dict(pairs)
        if len(found) < len(pairs):
            keys = [key for key, _ in pairs]
            raise ValueError(f"the key {next(key for key in keys if keys.count(key) > 1)!r} stands twice in one object")
        return found

    def finite(text: str) -> float:
        value = float(text)
        if value - value != 0:
            raise ValueError(f"{text} is no finite number")
        return value

    def whole(text: str) -> int:
        value = int(text)
        if not -(1 << 63) <= value < 1 << 63:
            raise ValueError(f"{text[:24]} is too large")
        return value

    try:
        with open(name, "rb") as file:
            content = file.read(_LONGEST + 1)
    except OSError as error:
        _refuse(name, "", error.strerror or str(error))
    if len(content) > _LONGEST:
        _refuse(name, "", "longer than 16 MiB: no file of sides")
    try:
        root = json.loads(content.decode("utf-8-sig"), object_pairs_hook=once, parse_float=finite, parse_int=whole, parse_constant=finite)
        for text in _texts_in(root):
            if "\0" in text:
                raise ValueError("a text with a zero character")
            text.encode("utf-8")
    except RecursionError:
        _refuse(name, "", "nested too deeply")
    except ValueError as error:  # what is no JSON or no UTF-8 is one too
        _refuse(name, "", str(error))
    return root


def _texts_in(value: Any) -> Iterator[str]:
    """All texts of what was parsed, its keys too."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        for key, member in value.items():
            yield key
            yield from _texts_in(member)
    elif isinstance(value, list):
        for member in value:
            yield from _texts_in(member)


def _job(name: str, job: Dict[str, Any]) -> List[Site]:
    own = job.get("sides")
    if not isinstance(own, list) or not 1 <= len(own) <= _MOST_SIDES:
        _refuse(name, "sides", "wanted a list of one or two sides")
    shared = {key: value for key, value in job.items() if key not in _JOBS_OWN}
    title, note, feet = _text(name, job, "", "job"), _text(name, job, "", "note"), _speaks_feet(job)
    sites = [_site(name, f"sides[{i}]", _laid(shared, one) if isinstance(one, dict) else one, feet)._replace(job=title, job_note=note) for i, one in enumerate(own)]
    if len(sites) > 1 and len({(site.side.hand, site.drive_at) for site in sites}) == 1:
        _refuse(name, "sides[1].hand", "the same hand as the other side's, with the drive at the same end: it would be the same side; give hand, or drive_at, as it is",
                Status.CONTRADICTS)
    return sites


def _laid(shared: Dict[str, Any], own: Dict[str, Any]) -> Dict[str, Any]:
    """What is shared, less what a side says otherwise."""
    whole = dict(shared)
    for key, value in own.items():
        whole[key] = _laid(whole[key], value) if isinstance(value, dict) and isinstance(whole.get(key), dict) else value
    return whole


def _speaks_feet(value: Any) -> bool:
    """Whether any text of what was parsed is a length in feet or inches."""
    members = value.values() if isinstance(value, dict) else value if isinstance(value, list) else ()
    return _is_in_feet(value) if isinstance(value, str) else any(_speaks_feet(member) for member in members)


def _is_in_feet(words: str) -> bool:
    """Of what reads as a length these stand in such units alone: in, ft, yd, their other words, and the marks, typographic ones too."""
    if not any(letter in "fiy'\"" or "\u2000" <= letter <= "\u2fff" for letter in words):
        return False
    try:
        quantity_read(words, "m")
    except Error:
        return False
    return True


def _hardware(side: Dict[str, Any]) -> Hardware:
    curtain = side.get("curtain")
    hip = curtain.get("hip") if isinstance(curtain, dict) else None
    return Hardware.INCH if isinstance(hip, str) and _is_in_feet(hip) else Hardware.METRIC


def _is_blank(value: Any) -> bool:
    """An empty text, and an object or a list of nothing else: a file to fill in before it is filled in."""
    return all(map(_is_blank, value.values() if isinstance(value, dict) else value)) if isinstance(value, (dict, list)) else isinstance(value, str) and not value


def _text(name: str, owner: Dict[str, Any], within: str, key: str) -> str:
    value = owner.get(key, "")
    if not isinstance(value, str):
        _refuse(name, _joined(within, key), "wanted a text")
    return value


def _rows(kind: Type[Structure], chosen: Structure) -> List[Field]:
    """Of the rows of one name the one that applies as a structure's choices stand, else the first."""
    found: Dict[str, Field] = {}
    for row in fields(kind):
        if row.name not in found or (_core.applies(chosen, row.row) and not _core.applies(chosen, found[row.name].row)):
            found[row.name] = row
    return list(found.values())


def _value(structure: Structure, row: Field) -> Any:
    return getattr(structure, word_of(row.name))


class _Reader(NamedTuple):
    """What reads a side: it knows the file, and how that speaks."""

    name: str
    among_feet: bool
    hardware: Hardware  #: that is usual in it

    def refuse(self, path: str, why: str, status: Status = Status.UNREADABLE) -> NoReturn:
        _refuse(self.name, path, why, status)

    def structure(self, kind: Type[Structure], value: Any, path: str, beside: Sequence[str] = ()) -> Any:
        """A structure. beside: what else its object may have, which is not read here, as its texts are not."""
        beside = (*beside, *_TEXTS_IN.get(kind, ()))
        if not isinstance(value, dict):
            self.refuse(path, "wanted an object")
        all_rows = fields(kind)
        for key in value:
            if key not in beside and not any(key == row.name for row in all_rows):
                self.refuse(_joined(path, key), "no such field" + self.meant(kind, key, beside), Status.NOT_FOUND)
        # Choices first: which fields apply hangs on them.
        choices = {row.name: self.leaf(kind, row, value[row.name], _joined(path, row.name)) for row in all_rows if row.type == CHOICE and not _is_blank(value.get(row.name, ""))}
        if any(row.name == _HARDWARE for row in all_rows):
            choices.setdefault(_HARDWARE, self.hardware)
        chosen = kind(**choices)
        values = {row.name: self.row(kind, row, chosen, value.get(row.name, ""), _joined(path, row.name)) for row in _rows(kind, chosen)}
        return kind(**{**choices, **{key: one for key, one in values.items() if one is not None}})

    def meant(self, kind: Type[Structure], key: str, beside: Sequence[str]) -> str:
        if "fittings" in beside and key in Fittings._words:
            return f"; did you mean 'fittings.{key}'?"
        return meant(kind, key, more=beside)

    def row(self, kind: Type[Structure], row: Field, chosen: Structure, value: Any, path: str) -> Any:
        """What a file gives for a field; None where it gives nothing."""
        if not _core.applies(chosen, row.row):
            if not _is_blank(value):
                self.refuse(path, _unused(kind, row, chosen))
            return None
        if row.type == GROUP and row.structure:
            return self.structure(row.structure, {} if _is_blank(value) else value, path)
        if row.type == LIST and isinstance(value, list) and len(value) > row.capacity:
            self.refuse(path, f"{len(value)} are too many: the most is {row.capacity}")
        if _is_blank(value):
            if row.required:
                self.refuse(path, f"missing: {row.meaning}" + (f" ({row.unit})" if row.unit not in ("", "1") else ""), Status.OUT_OF_BOUNDS)
            return None
        if row.type == LIST and row.structure:
            if not isinstance(value, list):
                self.refuse(path, "wanted a list")
            return [self.structure(row.structure, one, f"{path}[{i}]") for i, one in enumerate(value)]
        return self.leaf(kind, row, value, path)

    def leaf(self, kind: Type[Structure], row: Field, value: Any, path: str) -> Any:
        """A number, a count or a choice."""
        is_number = isinstance(value, (int, float)) and not isinstance(value, bool)
        if row.type == COUNT:
            if not is_number or value != int(value) or abs(value) > 1e9:
                self.refuse(path, f"{_what(value)}; wanted a whole number")
            return int(value)
        if row.type == CHOICE:
            if not isinstance(value, str):
                self.refuse(path, f"{_what(value)}; wanted one of: {', '.join(row.choices)}")
            return int(self.typed(value, path, lambda: _core.typed(value, row.kind, row.row, row.name)))
        if isinstance(value, str):
            return self.typed(value, path, lambda: _measured(kind, row, value))
        if not is_number:
            self.refuse(path, f"{_what(value)}; wanted a number{f' in {row.unit}' if row.unit != '1' else ''}, or a text with its unit")
        if self.among_feet and row.unit not in _UNITLESS and (value != 0 or row.unit == "degC"):
            self.refuse(path, f"{value:.15g} was taken for {value:.15g} {row.unit}, while this file elsewhere speaks feet, inches or pounds: give it as a text with its unit")
        return float(value)

    def typed(self, words: str, path: str, read: Callable[[], float]) -> float:
        """What a text says; a refusal names the file, the path in it, and the text."""
        try:
            return read()
        except Error as error:
            self.refuse(path, f"{words!r}: {_sentence(error)}", error.status)

    def tolerances(self, side: Side, value: Any, path: str) -> Dict[str, float]:
        if _is_blank(value):
            return {}
        if not isinstance(value, dict) or len(value) > _MOST_TOLERANCES:
            self.refuse(path, f"wanted an object of at most {_MOST_TOLERANCES} paths and tolerances, such as {{\"curtain.hip\": \"1/2 in\"}}")
        read = {}
        for where, given in value.items():
            if not _is_blank(given):
                read[where] = self.tolerance(side, where, given, _joined(path, where))
        return read

    def tolerance(self, side: Side, where: str, given: Any, path: str) -> float:
        """Of a number of the side that is in use; it is no trade size, and is read as any quantity of its unit."""
        try:
            row = field_at(Side, where)
        except Error as error:
            self.refuse(path, _sentence(error), error.status)
        why = _not_measured(side, where, row)
        if why:
            self.refuse(path, why)
        number = float(self.leaf(Side, row, given, path))
        if number < 0:
            self.refuse(path, f"{number:g}{f' {row.unit}' if row.unit != '1' else ''}; a tolerance is 0 or above, and is off either way", Status.OUT_OF_BOUNDS)
        return number


def _site(name: str, within: str, value: Any, among_feet: bool) -> Site:
    if not isinstance(value, dict):
        _refuse(name, within, "wanted an object that describes a side")
    reader = _Reader(name, among_feet, _hardware(value))
    texts = {key: _text(name, value, within, key) for key in _TEXTS}
    if texts["mark"]:
        reader.typed(texts["mark"], _joined(within, "mark"), lambda: mark_place(texts["mark"]))
    side = reader.structure(Side, value, within, _BESIDE)
    fittings = value.get("fittings", "")
    made = reader.structure(Fittings, {} if _is_blank(fittings) else fittings, _joined(within, "fittings"))
    tolerances = reader.tolerances(side, value.get("tolerances", ""), _joined(within, "tolerances"))
    return Site(side, made, tolerances=tolerances, names=_texts_of(name, within, value, _NAME), notes=_texts_of(name, within, value, _NOTE), **texts)


def _with_texts(side: Dict[str, Any], key: str) -> Iterator[Tuple[str, Dict[str, Any]]]:
    """What of a file's side may have such a text of its own, each with its path."""
    if key in _TEXTS_IN[Drive] and _DRIVE in side:
        yield _DRIVE, side[_DRIVE]
    for end in _ENDS:
        listed = side[end].get(_KEEP_OUTS, ()) if key in _TEXTS_IN[KeepOut] and side.get(end) else ()
        for i, one in enumerate(listed):
            yield f"{end}.{_KEEP_OUTS}[{i}]", one


def _texts_of(name: str, within: str, side: Dict[str, Any], key: str) -> Dict[str, str]:
    found = {path: _text(name, one, _joined(within, path), key) for path, one in _with_texts(side, key) if isinstance(one, dict)}  # else it is blank
    return {path: text for path, text in found.items() if text}


def _sentence(error: Error) -> str:
    """Of a refusal, without the field, which has another name in a file."""
    text = str(error)
    return text[len(error.field) + 2:] if error.field and text.startswith(f"{error.field}: ") else text


def _what(value: Any) -> str:
    """What a JSON value is, for those that are not wanted."""
    if value is None or isinstance(value, bool):
        return "null" if value is None else "a yes or no"
    return "an object" if isinstance(value, dict) else "a list" if isinstance(value, list) else "a text" if isinstance(value, str) else repr(value)


def _unused(kind: Type[Structure], row: Field, chosen: Structure) -> str:
    choice = next(other for other in fields(kind) if other.name == row.applies_to)
    return f"used only while {choice.name} is {' or '.join(choice.choices[k] for k in row.applies_while if k < len(choice.choices))}; it is {getattr(chosen, choice.name).text}"


def _not_measured(side: Side, where: str, row: Field) -> str:
    """Why a path leads to no number of the side that is in use; nothing where it does."""
    if row.type in (GROUP, LIST):
        return "holds fields of its own: wanted the path of one number, such as \"curtain.hip\""
    if row.type != NUMBER:
        return "is counted or chosen, not measured"
    if "[" in where:
        return "moves nothing that is asked: what lists hold is not measured"
    value: Any = side
    for step in where.split("."):
        used = next((one for one in fields(type(value)) if one.name == step and _core.applies(value, one.row)), None)
        if used is None:
            return "not in use, as the choices of this side stand"
        value = _value(value, used)
    return "the side does not give it" if value is None else ""


# --- trade sizes, which a tube's diameter and wall are read as first ---


def _measured(kind: Type[Structure], row: Field, words: str) -> float:
    if kind in (Round, Square) and row.name == "diameter":
        return _diameter(words)
    if kind in (Round, Square) and row.name == "wall":
        return _wall(words)
    return _core.typed(words, row.kind, row.row, row.name)


def _starts_with_letter(words: str) -> bool:
    first = words.lstrip(" ")[:1]
    return first.isascii() and first.isalpha()


def _diameter(words: str) -> float:
    """"1-3/8 in" names tubes of different size: where more families than that of true tube have the name, it is refused with all of them."""
    try:
        return tube_size(words)
    except Error as trade:
        other = trade.other or ""
        if _starts_with_letter(words) or (trade.status == Status.NOT_FOUND and "," in other and "tube " in other):
            raise
    return quantity_read(words, "m")


def _wall(words: str) -> float:
    """A gauge without its series is refused with the series that have it."""
    try:
        return tube_wall(words)
    except Error as error:
        trade = error
    if not _starts_with_letter(words):
        try:
            return quantity_read(words, "m")
        except Error:
            if words.strip(" 0123456789") and "ga" not in words:
                raise
    raise trade


# --- writing ---


def _written_site(site: Site) -> Dict[str, Any]:
    own: Dict[str, Any] = {key: getattr(site, key) for key in _TEXTS if getattr(site, key)}
    own.update(_written(site.side))
    fittings = _written(site.fittings)
    if fittings:
        own["fittings"] = fittings
    if site.tolerances:
        own["tolerances"] = {path: _with_unit(value, field_at(Side, path).unit) for path, value in site.tolerances.items()}
    _write_texts(own, _NAME, "names", site.names)
    _write_texts(own, _NOTE, "notes", site.notes)
    again = _site(f"{site.name or 'a side'}, written", "", own, False)._replace(job=site.job, job_note=site.job_note)
    site = site._replace(names=again.names, notes=again.notes)  # an empty text is none
    for path, value, kept in _differences("", site, again):
        raise ValueError(f"{path}: {value!r} is left unused by the choices of this side, for which a file holds {kept!r}: give it that, or choose what uses it")
    return own


def _write_texts(own: Dict[str, Any], key: str, what: str, texts: Dict[str, str]) -> None:
    rest = {path: text for path, text in texts.items() if text}
    if _DRIVE in rest:
        own.setdefault(_DRIVE, {})  # a drive that is all usual has a text too
    for path, one in _with_texts(own, key):
        if path in rest:
            one[key] = rest.pop(path)
    for path in rest:
        raise ValueError(f"{what}: {path!r} has none on this side")


def _differences(path: str, one: Any, other: Any) -> Iterator[Tuple[str, Any, Any]]:
    """Where two alike differ, in a field or in the number of a list's elements."""
    if isinstance(one, Structure) and one != other:
        for word in one._words:
            yield from _differences(_joined(path, word), getattr(one, word), getattr(other, word))
    elif isinstance(one, Site):
        for name, mine, theirs in zip(one._fields, one, other):
            yield from _differences("" if name == "side" else name, mine, theirs)
    elif isinstance(one, tuple) and len(one) == len(other):
        for i, (mine, theirs) in enumerate(zip(one, other)):
            yield from _differences(f"{path}[{i}]", mine, theirs)
    elif one != other:
        yield path, one, other


def _written(structure: Structure) -> Dict[str, Any]:
    """What a file in metres says of it: fields that apply, and are required, or not as they usually are with such choices and metric hardware."""
    rows, kind = _rows(type(structure), structure), type(structure)
    choices = {row.name: _value(structure, row) for row in rows if row.type == CHOICE}
    plain, usual = kind(**{key: one for key, one in choices.items() if key == _HARDWARE}), kind(**choices)
    own: Dict[str, Any] = {}
    for row in rows:
        value = _value(structure, row)
        if not _core.applies(structure, row.row) or value is None:
            continue
        if isinstance(value, Structure):
            inside = _written(value)
            if inside:
                own[row.name] = inside
        elif isinstance(value, tuple):
            if value:
                own[row.name] = [_written(one) for one in value]
        elif row.required or value != (Hardware.METRIC if row.name == _HARDWARE else _value(plain if row.type == CHOICE else usual, row)):
            own[row.name] = value.text if isinstance(value, Choice) else _with_unit(value, row.unit) if row.type == NUMBER else value
    return own


def _with_unit(value: float, unit: str) -> Union[float, str]:
    """So that it cannot be taken for another; ratios and turns have none."""
    return value if unit in _UNITLESS else f"{value!r} {unit}"


def _replace(path: str, content: bytes) -> None:
    """Written beside the file and renamed: a reader sees the old file or the whole new one. A device or a pipe is written to as it is."""
    if os.path.exists(path) and not os.path.isfile(path) and not os.path.isdir(path):
        with open(path, "wb") as file:
            file.write(content)
        return
    path = os.path.realpath(path)
    aside = os.path.join(os.path.dirname(path), f".tunnelside-{os.urandom(6).hex()}")
    try:
        with open(aside, "xb") as file:
            if os.path.exists(path):
                shutil.copymode(path, aside)  # before anything is in it: others read no more of it than of the old one
            file.write(content)
        os.replace(aside, path)
    except BaseException:
        if os.path.exists(aside):
            os.unlink(aside)
        raise


__all__ = ["Site", "as_columns", "load", "save"]
