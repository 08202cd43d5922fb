# SPDX-License-Identifier: MIT
"""Makes the Python names from the records of the public headers.

    generate.py RECORDS VERSION OUT

RECORDS: what include/headers2records writes; VERSION: the library's; OUT: receives
    functions.i              what SWIG wraps: each function, its arguments named, with their units; fields of structures
                             without a table
    tunnelside/_names.py     the topics and their names: all that an import reads
    tunnelside/_api.py       enumerations, structures and functions, with the headers' comments; classes as tables, from which
                             each is made when first asked for
    tunnelside/_api.pyi      their hints
    tunnelside/_core.pyi     the hints of the extension module
    tunnelside/_version.py

A new function of the usual shapes needs nothing here: its comment says what its arguments are. Another shape of argument is
a line of SHAPES with a typemap in core.i; a function that fits none is written by hand, and its line in BY_HAND says where
it is.
"""
import keyword
import re
import sys
import textwrap
from collections import namedtuple
from pathlib import Path

from records import Records

# Functions of another shape, and the Python name that stands for each; lower-level names are in core.i.
BY_HAND = {
    "tside_fields": "fields", "tside_usual": "usual", "tside_usual_by_choice": "usual_by_choice", "tside_usual_in": "usual",
    "tside_check": "check", "tside_field_find": "field_find", "tside_field_applies": "field_applies", "tside_field_read": "field_read", "tside_trades": "trades",
    "tside_fault_text": "fault_text", "tside_plan_sides": "plan_many", "tside_stock_plan": "stock_plan",
    "tside_stock_work": "stock_plan",
}

# What structures have beside their fields, written by hand in _drawing.py.
METHODS = {
    "Drawing": ["def svg(self, title: str = ...) -> str: ...", "def _repr_svg_(self) -> str: ..."],
    "Plan": ["def _repr_html_(self) -> str: ..."],
}

# Structures that Python has in another form: an exception, tuples, columns.
NOT_STRUCTURES = {
    "tside_fault": "Error", "tside_field": "Field", "tside_place": "Field", "tside_trade": "Trade",
    "tside_input": "plan_many", "tside_output": "plan_many",
}

# An argument by direction, by what it is, and by its form: its typemap in core.i, its hint, and what stands before and after
# the function in functions.i. In them {name} and {type} are its own, {python} its class, {at} its place, {partners} the
# arguments that it takes with it, {first} and {second} their places, {needed} how long a text is, and {count} the place of the
# count of the list to which it has one each.
Shape = namedtuple("Shape", "typemap hint before after")
SHAPES = {
    ("in", "text", "one"): Shape("", "str", "", ""),
    ("in", "number", "one"): Shape('NUMBER_IN({name}, "{unit}")', "Quantity", "", ""),
    ("in", "whole", "one"): Shape("", "int", "", ""),
    ("in", "choice", "one"): Shape("", "{python}", "", ""),
    ("in", "structure", "one"): Shape("STRUCTURE_IN({type}, {name})", "{python}", "", ""),
    ("in", "structure", "optional"): Shape("STRUCTURE_IN_OR_NONE({type}, {name})", "Optional[{python}]", "", ""),
    ("in", "structure", "list"): Shape("LIST_IN({type}, {name}, {partners})", "Sequence[{python}]", "", ""),
    ("in", "number", "list"): Shape('NUMBERS_IN({name}, {partners}, "{unit}")', "Sequence[Quantity]", "", ""),
    ("out", "text", "text"): Shape(
        "", "str", "%exception {function} {{ do {{ $action }} while (more_room(&{at}, &{first}, {needed})); }}", "%exception {function};"),
    ("out", "number", "one"): Shape("", "float", "", ""),
    ("out", "whole", "one"): Shape("", "int", "", ""),
    ("out", "choice", "one"): Shape("", "{python}", "", ""),
    ("out", "structure", "one"): Shape("", "{python}", "", ""),
    ("out", "structure", "optional"): Shape("", "{python}", "", ""),
    ("out", "structure", "fixed"): Shape("LIST_FIXED({type}, {name}, {partners})", "Tuple[{python}, ...]", "", ""),
    ("out", "structure", "room"): Shape(
        "LIST_OUT({type}, {name}, {partners})", "Tuple[{python}, ...]",
        "%exception {function} {{ do {{ $action }} while (again(result, (void **)&{at}, sizeof *{at}, &{first}, {second})); }}",
        "%exception {function};"),
    ("out", "structure", "each"): Shape("LIST_EACH({type}, {name}, {count})", "Tuple[{python}, ...]", "FAULT_WITH_ANSWERS", "FAULT"),
}

# What a function's own result is called, and its hint; a size is that of a text, where one is written.
RETURNS = {"tside_status": None, "void": None, "size_t": None, "const char *": ("text", "str"), "int": ("result", "int"),
           "double": ("result", "float")}


class Problem(Exception):
    """The headers hold something that has no Python name."""


# --- Python's words for C's ---

def python_word(name):
    return name + "_" if keyword.iskeyword(name) else name


def class_name(c_name):
    return "".join(part.capitalize() for part in c_name[len("tside_"):].split("_"))


def function_name(c_name):
    return python_word(c_name[len("tside_"):])


def argument_text(one):
    """What is said of it: in Python every answer is given, also one that C may leave out."""
    return re.sub("^optional, (.*); NULL leaves it out", r"\1", one.text) if one.direction == "out" else one.text


def base_of(c_type):
    """tside_roll of "const tside_roll *"."""
    return re.sub(r"const | ?\*", "", c_type)


class Headers:
    """What the public headers declare, in their order, and how Python says it."""

    def __init__(self, records):
        self.records = records
        self.about = {one.topic: one.text for one in records.of("about")}
        self.enums = {one.name: one for one in records.of("enum")}
        self.structs = {one.name: one for one in records.of("struct")}
        self.functions = records.of("function")
        makers = [(base_of(one.type), re.match(r"(?:optional, )?made by (tside_\w+)", one.text)) for one in records.of("argument")]
        self.makers = {c_type: made[1] for c_type, made in makers if made}
        self.constants = {one.name: one.value for one in records.of("constant")}
        self.kinds = {"tside_" + one.name[len("TSIDE_KIND_"):].lower(): one.name for one in self.names("tside_kind")}
        self.words = {**{name: name[len("TSIDE_"):] for name in self.constants}, "TSIDE_VERSION": "__version__", "NULL": "None"}
        for enum in self.enums:
            for one, word in zip(self.names(enum), self.name_words(enum)):
                self.words[one.name] = word if enum == "tside_status" else f"{class_name(enum)}.{word}"
        self.words.update({name: NOT_STRUCTURES.get(name) or class_name(name) for name in [*self.structs, *self.enums]})
        self.words.update({one.name: BY_HAND.get(one.name) or function_name(one.name) for one in self.functions})

    def names(self, enum):
        """An enumeration's names, without a last one that says how many there are."""
        names = self.records.of("name", owner=enum)
        return names[:-1] if re.search(r"_(COUNT|CODES)$", names[-1].name) else names

    def name_words(self, enum):
        words = [one.name[len("TSIDE_"):] for one in self.names(enum)]
        head = words[0].split("_")[0] + "_"
        if len(words) > 1 and all(word.startswith(head) and not word[len(head):len(head) + 1].isdigit() for word in words):
            words = [word[len(head):] for word in words]
        return [f"{class_name(enum).upper()}_{word}" if word[0].isdigit() else python_word(word) for word in words]

    def speak(self, text):
        """A comment in Python's words."""
        return re.sub(r"\b(tside_[a-z0-9_]+|TSIDE_[A-Z0-9_]+|NULL)\b", lambda match: self.words.get(match[0], match[0]), text)

    def what(self, c_type):
        """What a type is in SHAPES."""
        base = base_of(c_type)
        if base in self.structs and base not in NOT_STRUCTURES:
            return "structure"
        return "choice" if base in self.enums else {"double": "number", "int": "whole", "char": "text"}.get(base, base)


# --- functions: what is asked, what is answered ---

class Function:
    """A C function, its arguments sorted into Python's arguments and results."""

    def __init__(self, headers, function):
        self.headers, self.c = headers, function
        self.arguments = headers.records.of("argument", owner=function.name)
        self.shown = [one for one in self.arguments if one.form != "beside"]
        self.shapes = {one.name: self.shape(one) for one in self.shown}
        self.asked = [(python_word(one.name), *self.hints(one)) for one in self.shown if one.direction == "in"]
        self.answered = [(one.name if one.form != "text" else "text", *self.hints(one)) for one in self.shown if one.direction == "out"]
        self.answered += self.result()

    def result(self):
        returns = self.c.returns
        if self.headers.what(returns) == "structure" and "*" not in returns:
            return [(returns[len("tside_"):], class_name(returns), class_name(returns))]
        if returns not in RETURNS:
            raise Problem(f"{self.c.name}: does not know what to do with its result; write it by hand and name it in BY_HAND")
        return [(name, hint, hint) for name, hint in filter(None, [RETURNS[returns]])]

    def shape(self, one):
        what = self.headers.what(one.type)
        shape = SHAPES.get((one.direction, what, one.form))
        if not shape:
            raise Problem(f"{self.c.name}: does not know what to do with the argument '{one.type} {one.name}'; "
                          "write it by hand and name it in BY_HAND")
        if one.form == "one" and what == "structure" and one.name.endswith("s") and base_of(one.type).endswith(one.name[:-1]):
            raise Problem(f"{self.c.name}: '{one.type} {one.name}' seems to be an array of unknown length: let its comment say "
                          "'receives one for each of LIST' or 'receives TSIDE_NUMBER ', or let capacity and count follow it")
        return shape

    def hints(self, one):
        """Of the package's function, and of the extension module's, where a choice is a number among the results."""
        hint = self.shapes[one.name].hint.format(python=class_name(base_of(one.type)))
        return hint, "int" if one.direction == "out" and base_of(one.type) in self.headers.enums else hint

    def place(self, name):
        return "arg" + str([one.name for one in self.arguments].index(name) + 1)

    def filled(self, template, one):
        partners = one.partners.split() + ["", ""]
        in_place = [self.place(partner) if one.form in ("room", "text") and partner else "" for partner in partners[:2]]
        lists = {other.name: other.partners for other in self.arguments if other.form == "list"}
        return template.format(name=one.name, type=base_of(one.type), unit=one.unit, partners=", ".join(one.partners.split()),
                               function=self.c.name, at=self.place(one.name), first=in_place[0], second=in_place[1],
                               needed=f"*{in_place[1]}" if in_place[1] else "result",
                               count=self.place(lists[one.partners]) if one.form == "each" else "")

    def interface(self):
        """Its lines in functions.i."""
        prototype = ", ".join(f"{one.type}{'' if one.type.endswith('*') else ' '}{one.name}" for one in self.arguments) or "void"
        returns = self.c.returns + ("" if self.c.returns.endswith("*") else " ")
        typemaps, before, after = ([self.filled(getattr(self.shapes[one.name], part), one) for one in self.shown]
                                   for part in ("typemap", "before", "after"))
        return ["", *filter(None, [*typemaps, *before, f"{returns}{self.c.name}({prototype});", *after])]

    def answer_hint(self, which):
        hints = [one[which] for one in self.answered]
        return "None" if not hints else hints[0] if len(hints) == 1 else f"Tuple[{', '.join(hints)}]"

    def core_hint(self):
        signature = ", ".join(f"{word}: {hint}" for word, hint, _ in self.asked)
        return f"def {function_name(self.c.name)}({signature}) -> {self.answer_hint(2)}: ..."

    def signature(self):
        asked = ", ".join(f"{word}: {hint}" for word, hint, _ in self.asked)
        return f"def {function_name(self.c.name)}({asked}) -> {self.answer_hint(1)}:"

    def python(self):
        """As it runs: where it makes a choice of a number, its class is asked for by name, since it may not have been made."""
        choices = {class_name(enum) for enum in self.headers.enums}
        call = ", ".join(f'made("{hint}")({word})' if hint in choices else word for word, hint, _ in self.asked)
        call = f"_core.{function_name(self.c.name)}({call})"
        if any(hint != raw for _, hint, raw in self.answered):
            asked = {word for word, _, _ in self.asked}
            names = ["result_" * (word in asked) + word for word, _, _ in self.answered]
            wrapped = [f'made("{hint}")({word})' if hint != raw else word for word, (_, hint, raw) in zip(names, self.answered)]
            body = [f"{', '.join(names)} = {call}", "return " + ", ".join(wrapped)]
        else:
            body = ["return " * bool(self.answered) + call]
        return ["", self.signature(), *indent(docstring(self.doc())), *indent(body), ""]

    def doc(self):
        """The comment, but for the room that lists and texts need in C, and for what is the text's length."""
        own = self.headers.records.of("argument", "status", "returns", "limits", "accuracy", "source", owner=self.c.name)
        written = any(one.form in ("room", "text") for one in self.shown)
        lines = [self.c.text.replace("\n", "\n\n"), ""]
        for one in own:
            kind = type(one).__name__
            if kind == "argument" and one.form not in ("beside", "text"):
                lines.append(f"{one.name}: {argument_text(one)}")
            elif kind == "status" and not (written and one.name == "TSIDE_TOO_SMALL"):
                lines.append(f"Error {one.name}: {one.text}")
            elif kind == "returns" and self.c.returns != "size_t":
                lines.append(f"Returns {one.text}")
            elif kind in ("limits", "accuracy", "source"):
                lines.append(f"{kind.capitalize()}: {one.text}")
        if self.answered:
            lines.append("Answers: " + ", ".join(name for name, _, _ in self.answered) + ".")
        return self.headers.speak("\n".join(lines))


def indent(lines):
    return ["    " + line if line else "" for line in lines]


def docstring(text):
    """Paragraphs, and items, whose lines hang under their label."""
    lines = []
    for paragraph in text.strip().replace("\\", "\\\\").replace('"""', "'''").split("\n"):
        hanging = "    " if lines and re.match(r"[\w ]+: ", paragraph) else ""
        lines += textwrap.wrap(paragraph, 100, subsequent_indent=hanging, break_long_words=False, break_on_hyphens=False) or [""]
    if lines[-1].endswith('"'):
        lines[-1] += " "
    return ['"""' + lines[0] + '"""'] if len(lines) == 1 else ['"""' + lines[0], *lines[1:], '"""']


# --- structures and enumerations ---

class Structure:
    """A C structure, its members sorted into those that Python shows and the counts and flags beside them."""

    def __init__(self, headers, struct):
        self.headers, self.c, self.name = headers, struct, class_name(struct.name)
        self.members = headers.records.of("member", owner=struct.name)
        self.counts = {one.name: self.members[at - 1].name for at, one in enumerate(self.members) if one.dimension}
        self.shown = [one for one in self.members
                      if one.name not in self.counts.values() and not (one.type == "int" and one.name.endswith("_given"))]
        if any("*" in one.type or headers.what(one.type) not in ("structure", "choice", "number", "whole") for one in self.members):
            raise Problem(f"{struct.name}: holds what Python's structures cannot; name it in NOT_STRUCTURES, with what stands for it")

    def hint(self, one, asked):
        what, python = self.headers.what(one.type), class_name(one.type)
        if one.dimension:
            return f"Sequence[{python}]" if asked else f"Tuple[{python}, ...]"
        hint = {"structure": (python, f"Union[{python}, Dict[str, Any]]"), "choice": (python, f"Union[{python}, str]"),
                "number": ("float", "Quantity"), "whole": ("int", "int")}[what][asked]
        return f"Optional[{hint}]" if one.given else hint

    def doc(self):
        return docstring(self.headers.speak(self.c.text or self.headers.about[self.c.topic]))

    def row(self):
        """What its class is made from: name in C, comment, who makes it, classes of its fields."""
        makers = self.headers.makers
        maker = function_name(makers[self.c.name]) if self.c.name in makers else None
        types = {one.name: class_name(one.type) for one in self.shown if self.headers.what(one.type) in ("structure", "choice")}
        return table_row(self.name, f'"{self.c.name}"', self.doc(), repr(maker), repr(types))

    def hints(self):
        keywords = ", ".join(f"{python_word(one.name)}: {self.hint(one, True)} = ..." for one in self.shown)
        stub = [f"def __init__(self, *, {keywords}) -> None: ...", f'def replace(self, *, {keywords}) -> "{self.name}": ...']
        for one in self.shown:
            stub += ["@property", f"def {python_word(one.name)}(self) -> {self.hint(one, False)}: ..."]
        stub += METHODS.get(self.name, [])
        return ["", f"class {self.name}(Structure):", *indent(self.doc()), *indent(stub), ""]

    # Where the library has no field table for it, functions.i has one.

    def kind(self):
        return self.headers.kinds.get(self.c.name) or "KIND_" + self.c.name[len("tside_"):].upper()

    def has_table(self):
        return self.c.name in self.headers.kinds

    def type_in_table(self, one):
        what, kind = self.headers.what(one.type), "KIND_" + one.type[len("tside_"):].upper()
        nested = f"(tside_kind){self.headers.kinds.get(one.type) or kind}"
        if one.dimension:
            return (f".type = TSIDE_LIST, .kind = {nested}, .stride = sizeof({one.type}), .capacity = {one.dimension}"
                    f", .count_offset = offsetof({self.c.name}, {self.counts[one.name]})")
        if what == "structure":
            return f".type = TSIDE_GROUP, .kind = {nested}"
        if what == "choice":
            return f".type = TSIDE_CHOICE, .choices = {one.type[len('tside_'):]}_names, .choice_count = {len(self.headers.names(one.type))}"
        return f".type = {'TSIDE_NUMBER' if what == 'number' else 'TSIDE_COUNT'}, .low = -HUGE_VAL, .high = HUGE_VAL"

    def table(self):
        rows = []
        for one in self.shown:
            meaning = one.text[len(one.unit):].lstrip(",;: ") or one.name.replace("_", " ")
            row = (f'.name = "{one.name}", .unit = "{one.unit or "1"}", .meaning = "{meaning}", .offset = offsetof({self.c.name}, {one.name})'
                   f', .basis = "", {self.type_in_table(one)}')
            if one.given:
                row += f", .optional = 1, .given_offset = offsetof({self.c.name}, {one.given})"
            rows.append(f"    {{{row}}},")
        return [f"static const tside_field {self.c.name[len('tside_'):]}_fields[] = {{", *rows, "};"]


class Enumeration:
    """A C enumeration, whose values count from 0."""

    def __init__(self, headers, enum):
        self.headers, self.c, self.name = headers, enum, class_name(enum.name)
        self.words, self.names = headers.name_words(enum.name), headers.names(enum.name)
        if [int(one.value) for one in self.names] != list(range(len(self.names))):
            raise Problem(f"{enum.name}: its values do not count from 0")

    def doc(self):
        lines = [self.c.text or f"{self.name}: see {self.c.topic}.", ""]
        lines += [f"{word}: {one.text}" for word, one in zip(self.words, self.names) if one.text]
        return docstring(self.headers.speak("\n".join(lines)))

    def row(self):
        return table_row(self.name, self.doc(), repr(" ".join(self.words)))

    def hints(self):
        return ["", f"class {self.name}(Choice):", *indent(self.doc()), *indent(f"{word} = {one.value}" for word, one in zip(self.words, self.names)), ""]


def table_row(name, *parts):
    """Of a dictionary, each part a line or several."""
    lines = [line for part in parts for line in ([part + ","] if isinstance(part, str) else [*part[:-1], part[-1] + ","])]
    return [f'    "{name}": (', *lines, "    ),"]


# --- the files ---

NOTICE = "made by generate.py from the public headers; do not edit"
LICENCE = "# SPDX-License-Identifier: MIT"


def tables(headers, structures):
    """In C, what a binding reads of structures: each one's size and, where the library has no field table for it, one made here."""
    extra = [one for one in structures if not one.has_table()]
    choices = sorted({member.type for one in extra for member in one.members if headers.what(member.type) == "choice"})
    lines = ["enum {"]
    lines += [f"    {one.kind()}{' = TSIDE_KIND_COUNT' if one is extra[0] else ''}," for one in extra] + ["    KINDS", "};"]
    for enum in choices:
        names = ", ".join(f'"{word.lower()}"' for word in headers.name_words(enum))
        lines.append(f"static const char *const {enum[len('tside_'):]}_names[] = {{{names}}};")
    for one in extra:
        lines += one.table()
    lines += ["static const c_structure structures[KINDS] = {"]
    for one in structures:
        rows = one.c.name[len("tside_"):] + "_fields"
        table = "NULL, 0" if one.has_table() else f"{rows}, (int)(sizeof {rows} / sizeof *{rows})"
        lines.append(f'    [{one.kind()}] = {{"{one.c.name}", sizeof({one.c.name}), {table}}},')
    return lines + ["};"]


def interface(headers, structures, functions):
    lines = [f"/* {NOTICE} */", "%{", *tables(headers, structures), "%}"]
    lines += [f"STRUCTURE({one.c.name}, {one.kind()})" for one in structures]
    lines += [f"CHOICE({enum})" for enum in headers.enums if enum != "tside_status"]
    return lines + [line for one in functions for line in one.interface()]


def names(headers, enums, structures, functions):
    topics = {topic: [] for topic in headers.about}
    for one in [*enums, *structures]:
        topics[one.c.topic].append(one.name)
    for one in functions:
        topics[one.c.topic].append(function_name(one.c.name))
    lines = [LICENCE, f"# {NOTICE}", '"""What each topic is about, and its names."""', "TOPICS = {"]
    lines += [*(f"    {topic!r}: ({headers.speak(headers.about[topic])!r}, {names!r})," for topic, names in topics.items()), "}"]
    return lines + [f"CONSTANTS = {[headers.words[name] for name in headers.constants]!r}"]


ABOUT_PACKAGE = '"""Enumerations, structures and functions: the words of the C library without its prefix."""'


def package(headers, enums, structures, functions):
    lines = [LICENCE, f"# {NOTICE}", ABOUT_PACKAGE, "from __future__ import annotations", "", "from typing import Optional, Sequence, Tuple", "",
             "from . import _core", "from ._structure import Quantity, made", ""]
    lines += [f"{headers.words[name]} = {value}" for name, value in headers.constants.items()]
    lines += ["", "# Of each its comment, and its names, which count from 0.", "CHOICES = {", *(line for one in enums for line in one.row()), "}"]
    lines += ["", "# Of each its name in C, its comment, the function that makes it where nobody does by hand, and the classes of its fields."]
    lines += ["STRUCTURES = {", *(line for one in structures for line in one.row()), "}", ""]
    lines += ["", "def __getattr__(name):", "    return made(name)", ""]
    return lines + [line for one in functions for line in one.python()]


def package_hints(headers, enums, structures, functions):
    lines = [LICENCE, f"# {NOTICE}", ABOUT_PACKAGE, "from typing import Any, Dict, Optional, Sequence, Tuple, Union", "",
             "from ._structure import Choice, Quantity, Structure", "", "CHOICES: Dict[str, Tuple[str, str]]",
             "STRUCTURES: Dict[str, Tuple[str, str, Optional[str], Dict[str, str]]]"]
    lines += [f"{headers.words[name]}: int" for name in headers.constants]
    lines += [line for one in [*enums, *structures] for line in one.hints()]
    return lines + [f"{one.signature()} ..." for one in functions]


def core_hints(functions):
    lines = [one.core_hint() for one in functions]
    classes = sorted(set(re.findall(r"\b[A-Z]\w+", " ".join(lines))) - {"None", "Optional", "Quantity", "Sequence", "Tuple"})
    return [LICENCE, f"# {NOTICE}", "from typing import Any, Dict, List, Optional, Sequence, Tuple", "",
            f"from ._api import {', '.join(classes)}", "from ._structure import Quantity, Structure", "",
            *(Path(__file__).parent / "core_hints.pyi").read_text(encoding="utf-8").splitlines(), *lines]


def main(records, version, out):
    headers = Headers(Records(records))
    missing = [name for name in BY_HAND if name not in {function.name for function in headers.functions}]
    if missing:
        raise Problem(f"BY_HAND names what no header declares: {', '.join(missing)}")
    functions = [Function(headers, function) for function in headers.functions if function.name not in BY_HAND]
    structures = [Structure(headers, struct) for struct in headers.structs.values() if struct.name not in NOT_STRUCTURES]
    enums = [Enumeration(headers, enum) for enum in headers.enums.values()]
    files = {
        "functions.i": interface(headers, structures, functions),
        "tunnelside/_names.py": names(headers, enums, structures, functions),
        "tunnelside/_api.py": package(headers, enums, structures, functions),
        "tunnelside/_api.pyi": package_hints(headers, enums, structures, functions),
        "tunnelside/_core.pyi": core_hints(functions),
        "tunnelside/_version.py": [LICENCE, f"# {NOTICE}", f'__version__ = "{version}"'],
    }
    (Path(out) / "tunnelside").mkdir(parents=True, exist_ok=True)
    for name, lines in files.items():
        (Path(out) / name).write_text("\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    try:
        main(*sys.argv[1:])
    except Problem as problem:
        sys.exit(f"generate.py: {problem}")
