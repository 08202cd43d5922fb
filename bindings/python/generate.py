# SPDX-License-Identifier: MIT
"""Makes the Python names from the public headers.

    generate.py INCLUDE VERSION OUT

INCLUDE: the folder that holds tunnelside.h; VERSION: the library's; OUT: receives
    functions.i              what SWIG wraps: each function, its arguments named, with their units; fields of structures without a table
    tunnelside/_api.py       enumerations, structures and functions, with hints and the headers' comments
    tunnelside/_core.pyi     the hints of the extension module
    tunnelside/_version.py

A new function of the usual shape needs nothing here. Where its comment does not begin an argument with its unit, that goes to UNITS;
a function of another shape is written by hand: its line in BY_HAND says where it is.
"""
import keyword
import re
import sys
import textwrap
from pathlib import Path

# Units of arguments whose comments do not begin with one.
UNITS = {"eye_x": "m", "eye_y": "m", "height": "m", "metres": "m", "turns": "turn", "wraps": "turn", "wraps_before": "turn", "x": "m", "y": "m"}

# Arguments that may be None.
NULLABLE = {
    ("tside_lift_at", "hang"), ("tside_lift_worst", "hang"), ("tside_lift_work", "hang"), ("tside_lift_longest", "hang"), ("tside_side_force", "load"),
    ("tside_drive_run", "hang"), ("tside_fixed_force", "load"),
}

# Arrays among the results with one element for each element of a list that is asked; they are written although nothing is within reach.
PER_ELEMENT = {("tside_drive_smallest", "choices"): "drives"}

# Functions of another shape, and the Python name that stands for each; lower-level names are in core.i.
BY_HAND = {
    "tside_fields": "fields", "tside_usual": "usual", "tside_usual_by_choice": "usual_by_choice", "tside_check": "check", "tside_field_find": "field_find",
    "tside_field_applies": "field_applies", "tside_trades": "trades", "tside_fault_text": "fault_text", "tside_plan_sides": "plan_many",
    "tside_stock_plan": "stock_plan", "tside_stock_work": "stock_plan",
}

# Structures that Python has in another form: an exception, tuples, columns.
NOT_STRUCTURES = {"tside_fault": "Error", "tside_field": "Field", "tside_place": "Field", "tside_trade": "Trade", "tside_input": "plan_many", "tside_output": "plan_many"}

SI = ("kg/m3 kg/m2 kg/m kg N m N/m N m4 m3 m2 m/s m rad/s rad s Pa J V A W K ohm turn 1/m 1").replace("N m ", "N_m ").split()
SI = sorted((unit.replace("_", " ") for unit in SI), key=len, reverse=True)


class Problem(Exception):
    """The headers hold something that has no Python name."""


def python_word(name):
    return name + "_" if keyword.iskeyword(name) else name


def class_name(c_name):
    return "".join(part.capitalize() for part in c_name[len("tside_"):].split("_"))


def function_name(c_name):
    return python_word(c_name[len("tside_"):])


def clean(comment):
    return re.sub(r"\n[ \t]*\*?[ \t]?", "\n", "\n" + comment).strip()


def unit_of(text):
    """The unit that a comment begins with, and the rest of it."""
    for unit in SI:
        if re.match(re.escape(unit) + r"([,;.:) ]|$)", text):
            return unit, text[len(unit):].lstrip(",; ")
    return None, text


class Member:
    def __init__(self, c_type, name, dimension, comment):
        self.c_type, self.name, self.dimension, self.comment = c_type, name, dimension, comment
        self.word = python_word(name)


class Argument:
    def __init__(self, text):
        match = re.match(r"(const )?((?:unsigned |long )*\w+) ?(\**)(\w+)(\[\w*\])?$", text)
        if not match:
            raise Problem(f"cannot read the argument {text!r}")
        self.const, self.c_type, self.stars, self.name = bool(match[1]), match[2], len(match[3]) + bool(match[5]), match[4]
        self.word = python_word(self.name)
        self.text = text


class Function:
    def __init__(self, topic, declaration, comment):
        match = re.match(r"TSIDE_API (.*?[ *])(tside_\w+)\((.*)\);$", declaration)
        if not match:
            raise Problem(f"cannot read the declaration {declaration!r}")
        self.topic, self.returns, self.name, self.comment = topic, match[1].strip(), match[2], comment
        self.arguments = [] if match[3] == "void" else [Argument(one.strip()) for one in match[3].split(",")]
        self.declaration = declaration[len("TSIDE_API "):]


class Headers:
    """What the public headers declare, in their order."""

    def __init__(self, include):
        self.enums, self.structs, self.functions, self.constants, self.about, self.kinds = {}, {}, [], {}, {}, {}
        self.topics = re.findall(r"#include <tunnelside/(\w+)\.h>", (include / "tunnelside.h").read_text(encoding="utf-8"))
        for topic in self.topics:
            path = include / "tunnelside" / f"{topic}.h"
            if not path.exists():
                path = path.with_suffix(".h.in")
            self.read(topic, path.read_text(encoding="utf-8"))

    def read(self, topic, text):
        self.about[topic] = " ".join(clean(re.search(r"/\* SPDX.*?\*/\s*/\*(.*?)\*/", text, re.S)[1]).split())
        text = re.sub(r"^#.*\n", "", text, flags=re.M)
        pattern = re.compile(
            r"(?:/\*(?P<comment>(?:[^*]|\*(?!/))*)\*/\n)?"
            r"(?:typedef enum tside_\w+ \{(?P<enum>.*?)\} (?P<enum_name>tside_\w+);"
            r"|typedef struct tside_\w+ \{(?P<struct>.*?)\} (?P<struct_name>tside_\w+);"
            r"|enum \{(?P<constants>.*?)\};"
            r"|(?P<function>TSIDE_API [^;]*;))", re.S)
        comment_above = ""
        for match in pattern.finditer(text):
            comment = clean(match["comment"] or "")
            if match["enum_name"]:
                self.enums[match["enum_name"]] = (topic, comment, self.enumerators(match["enum"]))
            elif match["struct_name"]:
                self.structs[match["struct_name"]] = (topic, comment, self.members(match["struct"]))
            elif match["constants"]:
                for name, value in re.findall(r"(TSIDE_\w+) = (\d+)", match["constants"]):
                    self.constants[name] = int(value)
            else:
                comment_above = comment or comment_above
                self.functions.append(Function(topic, " ".join(match["function"].split()), comment_above))
        if topic == "field":
            names = [name for name, _ in self.enums["tside_kind"][2]]
            self.kinds = {"tside_" + name[len("TSIDE_KIND_"):].lower(): name for name in names}

    @staticmethod
    def enumerators(body):
        found = re.findall(r"(TSIDE_\w+)(?: = \d+)?\s*,?[ \t]*(?:/\*(.*?)\*/)?", re.sub(r"^\s*/\*.*?\*/\s*$", "", body, flags=re.S | re.M))
        if re.search(r"_(COUNT|CODES)$", found[-1][0]):
            found.pop()  # how many there are
        return [(name, clean(comment)) for name, comment in found]

    @staticmethod
    def members(body):
        members = []
        for c_type, declarators, comment in re.findall(r"^\s*((?:const )?\w+) ([^;/]+);[ \t]*(?:/\*(.*?)\*/)?", body, re.S | re.M):
            for one in declarators.split(","):
                match = re.match(r"\s*((?:\*|const )*)(\w+)(?:\[(\w+)\])?\s*$", one)
                members.append(Member(c_type + match[1], match[2], match[3], clean(comment)))
        return members

    # --- Python's words for C's ---

    def member_names(self, enum):
        names = [name for name, _ in self.enums[enum][2]]
        words = [name[len("TSIDE_"):] for name in names]
        head = words[0].split("_")[0] + "_"
        if len(words) > 1 and all(word.startswith(head) and not word[len(head):len(head) + 1].isdigit() for word in words):
            words = [word[len(head):] for word in words]
        return [f"{class_name(enum).upper()}_{word}" if word[0].isdigit() else python_word(word) for word in words]

    def speak(self, text):
        """A comment in Python's words."""
        def one(match):
            word = match[0]
            for enum, (_, _, members) in self.enums.items():
                for (name, _), python in zip(members, self.member_names(enum)):
                    if name == word:
                        return f"{class_name(enum)}.{python}" if enum != "tside_status" else python
            if word in self.constants:
                return word[len("TSIDE_"):]
            if word in self.structs or word in self.enums:
                return NOT_STRUCTURES.get(word) or class_name(word)
            if word in BY_HAND:
                return BY_HAND[word]
            if word == "TSIDE_VERSION":
                return "__version__"
            return function_name(word) if word.startswith("tside_") else word
        text = re.sub(r"\b(tside_[a-z0-9_]+|TSIDE_[A-Z0-9_]+)\b", one, text)
        return re.sub(r"\bNULL\b", "None", text)


# --- functions: what is asked, what is answered ---

class Shape:
    """How a function's C arguments become Python's arguments and results."""

    def __init__(self, headers, function):
        self.headers, self.function = headers, function
        self.asked, self.answered, self.typemaps, self.again, self.after = [], [], [], "", ""
        arguments = list(function.arguments)
        while arguments:
            self.take(arguments)
        self.result()
        structures = [argument.name for argument in function.arguments if argument.const and self.structure(argument.c_type)]
        if structures and re.search(r"\bNULL\b", function.comment) and not any((function.name, name) in NULLABLE for name in structures):
            raise Problem(f"{function.name}: its comment speaks of NULL: name the argument that may be None in NULLABLE")

    def problem(self, argument):
        raise Problem(f"{self.function.name}: does not know what to do with the argument '{argument.text}'; write it by hand and name it in BY_HAND")

    def comment_of(self, name):
        match = re.search(rf"(?:^|[;.\n]| and )\s*(?:\w+, |\w+ and )*{name}(?:, \w+| and \w+)*: ([^\n]*)", self.function.comment)
        return match[1] if match else ""

    def unit(self, argument):
        unit = unit_of(self.comment_of(argument.name))[0] or UNITS.get(argument.name)
        if not unit:
            raise Problem(f"{self.function.name}: no unit for '{argument.name}': begin its item in the comment with one, or add it to UNITS")
        return unit

    def structure(self, c_type):
        return c_type in self.headers.structs and c_type not in NOT_STRUCTURES

    def take(self, arguments):
        one, rest = arguments.pop(0), arguments
        names = [argument.name for argument in rest[:2]]
        if one.c_type == "tside_fault":
            pass
        elif one.c_type == "char" and one.const:
            self.asked.append((one.word, "str", None))
        elif one.c_type == "char" and names[:1] == ["size"]:
            pair = "(char *buffer, size_t size, size_t *needed)" if names[1:] == ["needed"] else "(char *buffer, size_t size)"
            del rest[:2 if names[1:] == ["needed"] else 1]
            if one.name != "buffer":
                self.problem(one)
            self.typemaps.append(f"// {pair}: in core.i")
            self.answered.append(("text", "str", None))
        elif one.const and one.stars == 1 and rest and rest[0].c_type == "int" and rest[0].name.endswith("count") and not rest[0].stars:
            count = rest.pop(0)
            if self.structure(one.c_type):
                self.typemaps.append(f"LIST_IN({one.c_type}, {one.name}, {count.name})")
                self.asked.append((one.word, f"Sequence[{class_name(one.c_type)}]", None))
            elif one.c_type == "double":
                self.typemaps.append(f"NUMBERS_IN({one.name}, {count.name}, \"{self.unit(one)}\")")
                self.asked.append((one.word, "Sequence[Quantity]", None))
            else:
                self.problem(one)
        elif not one.const and one.stars == 1 and len(rest) > 1 and rest[0].name.endswith("capacity") and rest[1].name.endswith("count") and rest[1].stars == 1:
            capacity, count = rest.pop(0), rest.pop(0)
            if not self.structure(one.c_type):
                self.problem(one)
            self.typemaps.append(f"LIST_OUT({one.c_type}, {one.name}, {capacity.name}, {count.name})")
            at = self.function.arguments.index(one) + 1
            self.again = f"%exception {self.function.name} {{ do {{ $action }} while (again(result, (void **)&arg{at}, sizeof *arg{at}, &arg{at + 1}, arg{at + 2})); }}"
            self.answered.append((one.word, f"Tuple[{class_name(one.c_type)}, ...]", "list"))
        elif self.structure(one.c_type) and one.stars == 1 and one.const:
            nullable = (self.function.name, one.name) in NULLABLE
            self.typemaps.append(f"STRUCTURE_IN{'_OR_NONE' if nullable else ''}({one.c_type}, {one.name})")
            self.asked.append((one.word, f"Optional[{class_name(one.c_type)}]" if nullable else class_name(one.c_type), None))
        elif self.structure(one.c_type) and one.stars == 1:
            fixed = re.match(r"receives (TSIDE_\w+) ", self.comment_of(one.name))
            if fixed and fixed[1] in self.headers.constants:
                self.typemaps.append(f"LIST_FIXED({one.c_type}, {one.name}, {fixed[1]})")
                self.answered.append((one.word, f"Tuple[{class_name(one.c_type)}, ...]", "list"))
            elif (self.function.name, one.name) in PER_ELEMENT:
                names = [argument.name for argument in self.function.arguments]
                count = names.index(PER_ELEMENT[self.function.name, one.name]) + 1
                self.typemaps.append("FAULT_WITH_ANSWERS")
                self.after = "FAULT"
                self.typemaps.append(f"LIST_EACH({one.c_type}, {one.name}, arg{count + 1})")
                self.answered.append((one.word, f"Tuple[{class_name(one.c_type)}, ...]", "list"))
            elif one.name.endswith("s") and one.c_type.endswith(one.name[:-1]):
                raise Problem(f"{self.function.name}: '{one.text}' seems to be an array of unknown length: name it in PER_ELEMENT, or begin its item with "
                              f"'receives TSIDE_NUMBER ', or let capacity and count follow it")
            else:
                self.answered.append((one.word, class_name(one.c_type), "structure"))
        elif one.c_type in self.headers.enums and not one.stars:
            self.asked.append((one.word, class_name(one.c_type), "choice"))
        elif one.c_type in self.headers.enums and one.stars == 1 and not one.const:
            self.answered.append((one.word, class_name(one.c_type), "choice"))
        elif one.c_type == "double" and not one.stars:
            self.typemaps.append(f"NUMBER_IN({one.name}, \"{self.unit(one)}\")")
            self.asked.append((one.word, "Quantity", None))
        elif one.c_type == "double" and one.stars == 1 and not one.const:
            self.answered.append((one.word, "float", None))
        elif one.c_type == "int" and not one.stars:
            self.asked.append((one.word, "int", None))
        elif one.c_type == "int" and one.stars == 1 and not one.const:
            self.answered.append((one.word, "int", None))
        else:
            self.problem(one)

    def result(self):
        returns = self.function.returns
        if returns in ("tside_status", "size_t"):
            if returns == "size_t" and not self.answered:
                self.answered.append(("size", "int", None))
        elif returns == "const char *":
            self.answered.append(("text", "str", None))
        elif self.structure(returns):
            self.answered.append((returns[len("tside_"):], class_name(returns), "structure"))
        elif returns in ("int", "double"):
            self.answered.append(("result", {"int": "int", "double": "float"}[returns], None))
        else:
            raise Problem(f"{self.function.name}: does not know what to do with its result; write it by hand and name it in BY_HAND")

    def hint(self):
        hints = [hint for _, hint, _ in self.answered]
        return "None" if not hints else hints[0] if len(hints) == 1 else f"Tuple[{', '.join(hints)}]"

    def raw_hint(self):
        hints = ["int" if how == "choice" else hint for _, hint, how in self.answered]
        return "None" if not hints else hints[0] if len(hints) == 1 else f"Tuple[{', '.join(hints)}]"

    def wrapped(self, name, hint, how):
        return f"{hint}({name})" if how == "choice" else name

    def python(self):
        name = function_name(self.function.name)
        call = ", ".join(f"{hint}({word})" if how == "choice" else word for word, hint, how in self.asked)
        call = f"_core.{name}({call})"
        names = [("result_" if one[0] in [asked[0] for asked in self.asked] else "") + one[0] for one in self.answered]
        if not self.answered:
            body = [call]
        elif len(self.answered) == 1:
            _, hint, how = self.answered[0]
            body = ["return " + self.wrapped(call, hint, how)]
        elif any(how == "choice" for _, _, how in self.answered):
            body = [f"{', '.join(names)} = {call}", "return " + ", ".join(self.wrapped(n, hint, how) for n, (_, hint, how) in zip(names, self.answered))]
        else:
            body = ["return " + call]
        signature = ", ".join(f"{word}: {hint}" for word, hint, _ in self.asked)
        return [f"def {name}({signature}) -> {self.hint()}:", *indent(docstring(self.doc())), *indent(body)]

    def doc(self):
        # Room for lists and texts is Python's business. A line that ends with a sentence ends a paragraph.
        text = re.sub(r"TSIDE_TOO_SMALL: [^.]*\.", "", self.function.comment)
        text = re.sub(r"\.[ \t]*\n+\s*(?=[A-Z(])", ".\f", text)
        text = re.sub(r"\s*\n\s*", " ", text).replace("\f", "\n")
        statuses = "|".join(name for name, _ in self.headers.enums["tside_status"][2])
        text = re.sub(rf"(?<=[.;:]) ({statuses})(?=:| as )", r"\n\1", text)
        known = "|".join(argument.name for argument in self.function.arguments)
        if known:
            text = re.sub(rf"(?<=[.;]) ((?:{known})(?:(?:, | and )(?:{known}))*: )", r"\n\1", text)
        text = re.sub(r"(?<=[.;]) (Sources?: |Returns )", r"\n\1", text)
        lines = [line for line in text.split("\n") if not re.match(r"(\w+, )*(fault|size|needed|capacity|count): ", line) and not line.startswith("Returns the length")]
        lines = [re.sub(rf"^({statuses})", r"Error \1", line) for line in lines]
        lines[1:1] = [""] if len(lines) > 1 else []
        if self.answered:
            lines.append("Answers: " + ", ".join(name for name, _, _ in self.answered) + ".")
        return self.headers.speak("\n".join(line.strip().rstrip(";") for line in lines))


def indent(lines):
    return ["    " + line if line else "" for line in lines]


def docstring(text):
    lines = []
    for paragraph in text.strip().replace("\\", "\\\\").replace('"""', "'''").split("\n"):
        lines += textwrap.wrap(paragraph, 100, subsequent_indent="    " if lines else "", break_long_words=False, break_on_hyphens=False) or [""]
    if lines[-1].endswith('"'):
        lines[-1] += " "
    return ['"""' + lines[0] + '"""'] if len(lines) == 1 else ['"""' + lines[0], *lines[1:], '"""']


# --- structures and enumerations ---

def shown_members(headers, c_name):
    """The members that Python shows: not the counts and flags beside others."""
    members = headers.structs[c_name][2]
    counts = {members[at - 1].name for at, member in enumerate(members) if member.dimension}
    return [member for member in members if member.name not in counts and not (member.c_type == "int" and member.name.endswith("_given"))]


def given(headers, c_name, member):
    """Whether the member may be absent, by a flag beside it (a few share their neighbour's: the table knows them)."""
    return any(other.name == member.name + "_given" for other in headers.structs[c_name][2])


def hint_of(headers, c_name, member, asked):
    if member.dimension:
        return f"{'Sequence' if asked else 'Tuple'}[{class_name(member.c_type)}{'' if asked else ', ...'}]"
    if member.c_type in headers.structs:
        hint = f"Union[{class_name(member.c_type)}, Dict[str, Any]]" if asked else class_name(member.c_type)
    elif member.c_type in headers.enums:
        hint = f"Union[{class_name(member.c_type)}, str]" if asked else class_name(member.c_type)
    else:
        hint = {"double": "Quantity" if asked else "float", "int": "int"}[member.c_type]
    optional = given(headers, c_name, member) or (member.c_type == "double" and shares_flag(headers, c_name, member))
    return f"Optional[{hint}]" if optional else hint


def shares_flag(headers, c_name, member):
    """hip_lean_greatest is there when hip_kick_out is: a number whose comment speaks of the same case, right after it."""
    names = [one.name for one in headers.structs[c_name][2]]
    return (c_name, member.name) == ("tside_end_plan", "hip_lean_greatest") and "hip_kick_out_given" in names


def structure_source(headers, c_name):
    topic, comment, _ = headers.structs[c_name]
    members = shown_members(headers, c_name)
    name = class_name(c_name)
    keywords = ", ".join(f"{member.word}: {hint_of(headers, c_name, member, True)} = ..." for member in members)
    types = ", ".join(f'"{member.name}": {class_name(member.c_type)}' for member in members if member.c_type in headers.structs or member.c_type in headers.enums)
    stub = [f"def __init__(self, *, {keywords}) -> None: ...", f"def replace(self, *, {keywords}) -> {name}: ...".replace(f"-> {name}:", f'-> "{name}":')]
    for member in members:
        stub += ["@property", f"def {member.word}(self) -> {hint_of(headers, c_name, member, False)}: ..."]
    text = headers.speak(comment) if comment else headers.about[topic]
    return [f"class {name}(Structure):", *indent(docstring(text)), "    __slots__ = ()", f'    _c_name = "{c_name}"', f"    _types = {{{types}}}", "    if TYPE_CHECKING:",
            *indent(indent(stub)), ""]


def enumeration_source(headers, c_name):
    topic, comment, members = headers.enums[c_name]
    lines = [headers.speak(comment) or f"{class_name(c_name)}: see {topic}."]
    names = headers.member_names(c_name)
    lines += [f"{name}: {headers.speak(about)}" for name, (_, about) in zip(names, members) if about]
    body = [f"{name} = {value}" for value, name in enumerate(names)]
    lines[1:1] = [""] if len(lines) > 1 else []
    return [f"class {class_name(c_name)}(Choice):", *indent(docstring("\n".join(lines))), *indent(body), ""]


def extra_kind(c_name):
    return "KIND_" + c_name[len("tside_"):].upper()


def extra_table(headers, c_name):
    """C source of the field table of a structure that the library has none for."""
    rows, members = [], headers.structs[c_name][2]
    flags = {member.name for member in members}
    for at, member in enumerate(members):
        if member not in shown_members(headers, c_name):
            continue
        unit, meaning = unit_of(member.comment)
        meaning = meaning or member.name.replace("_", " ")
        row = f'.name = "{member.name}", .unit = "{unit or "1"}", .meaning = "{meaning}", .offset = offsetof({c_name}, {member.name}), .basis = ""'
        if member.dimension:
            row += (f", .type = TSIDE_LIST, .kind = (tside_kind){kind_of(headers, member.c_type)}, .stride = sizeof({member.c_type}), .capacity = {member.dimension}"
                    f", .count_offset = offsetof({c_name}, {members[at - 1].name})")
        elif member.c_type in headers.structs:
            row += f", .type = TSIDE_GROUP, .kind = (tside_kind){kind_of(headers, member.c_type)}"
        elif member.c_type in headers.enums:
            row += f", .type = TSIDE_CHOICE, .choices = {member.c_type[len('tside_'):]}_names, .choice_count = {len(headers.enums[member.c_type][2])}"
        else:
            row += f", .type = {'TSIDE_NUMBER' if member.c_type == 'double' else 'TSIDE_COUNT'}, .low = -HUGE_VAL, .high = HUGE_VAL"
        if member.name + "_given" in flags:
            row += f", .optional = 1, .given_offset = offsetof({c_name}, {member.name}_given)"
        rows.append(f"    {{{row}}},")
    return [f"static const tside_field {c_name[len('tside_'):]}_fields[] = {{", *rows, "};"]


def kind_of(headers, c_name):
    return headers.kinds.get(c_name) or extra_kind(c_name)


def structures(headers):
    for c_name, (_, _, members) in headers.structs.items():
        if c_name not in NOT_STRUCTURES and any("*" in member.c_type or member.c_type not in {"double", "int", *headers.structs, *headers.enums} for member in members):
            raise Problem(f"{c_name}: holds what Python's structures cannot; name it in NOT_STRUCTURES, with what stands for it")
    return [c_name for c_name in headers.structs if c_name not in NOT_STRUCTURES]


# --- the files ---

NOTICE = "made by generate.py from the public headers; do not edit"


def interface(headers, shapes):
    all_structures = structures(headers)
    extra = [c_name for c_name in all_structures if c_name not in headers.kinds]
    used = {member.c_type for c_name in extra for member in headers.structs[c_name][2] if member.c_type in headers.enums}
    lines = [f"/* {NOTICE} */", "%{", "enum {", *(f"    {extra_kind(c_name)}{' = TSIDE_KIND_COUNT' if at == 0 else ''}," for at, c_name in enumerate(extra)), "    KINDS", "};"]
    for enum in sorted(used):
        names = ", ".join(f'"{name.lower()}"' for name in headers.member_names(enum))
        lines.append(f"static const char *const {enum[len('tside_'):]}_names[] = {{{names}}};")
    for c_name in extra:
        lines += extra_table(headers, c_name)
    lines += ["static const c_structure structures[KINDS] = {"]
    for c_name in all_structures:
        table = f", {c_name[6:]}_fields, (int)(sizeof {c_name[6:]}_fields / sizeof *{c_name[6:]}_fields)" if c_name in extra else ", NULL, 0"
        lines.append(f'    [{kind_of(headers, c_name)}] = {{"{c_name}", sizeof({c_name}){table}}},')
    lines += ["};", "%}", *(f"STRUCTURE({c_name}, {kind_of(headers, c_name)})" for c_name in all_structures)]
    lines += [f"CHOICE({enum})" for enum in headers.enums if enum != "tside_status"]
    for shape in shapes:
        lines += ["", *shape.typemaps]
        if shape.again:
            lines.append(shape.again)
        lines.append(shape.function.declaration)
        if shape.again:
            lines.append(f"%exception {shape.function.name};")
        if shape.after:
            lines.append(shape.after)
    return lines


def package(headers, shapes):
    lines = ["# SPDX-License-Identifier: MIT", f"# {NOTICE}", '"""Enumerations, structures and functions: the words of the C library without its prefix."""',
             "from __future__ import annotations", "", "from typing import TYPE_CHECKING, Any, Dict, Optional, Sequence, Tuple, Union", "", "from . import _core",
             "from ._structure import Choice, Quantity, Structure", ""]
    lines += [f"{name[len('TSIDE_'):]} = {value}" for name, value in headers.constants.items()] + [""]
    names = [name[len("TSIDE_"):] for name in headers.constants]
    topics = {topic: [] for topic in headers.topics}
    for c_name, (topic, _, _) in headers.enums.items():
        lines += ["", *enumeration_source(headers, c_name)]
        topics[topic].append(class_name(c_name))
    done = structures(headers)
    for c_name in done:
        lines += ["", *structure_source(headers, c_name)]
        topics[headers.structs[c_name][0]].append(class_name(c_name))
    for shape in shapes:
        lines += ["", *shape.python(), ""]
        topics[shape.function.topic].append(function_name(shape.function.name))
    lines += ["", "# What each topic is about, and its names."]
    lines += ["TOPICS = {", *(f"    {topic!r}: ({headers.speak(headers.about[topic])!r}, {names_!r})," for topic, names_ in topics.items()), "}"]
    lines += [f"CONSTANTS = {names!r}"]
    return lines


def hints(shapes):
    classes = sorted(set(re.findall(r"\b[A-Z]\w+", " ".join(hint for shape in shapes for _, hint, _ in shape.asked) + " " + " ".join(hint for shape in shapes for _, hint, how in shape.answered if how != "choice"))) - {"Tuple", "Optional", "Sequence", "Quantity"})
    lines = ["# SPDX-License-Identifier: MIT", f"# {NOTICE}", "from typing import Any, Dict, List, Optional, Sequence, Tuple", "",
             f"from ._api import {', '.join(classes)}", "from ._structure import Quantity, Structure", ""]
    lines += (Path(__file__).parent / "core_hints.pyi").read_text(encoding="utf-8").splitlines()
    for shape in shapes:
        raw = ", ".join(f"{word}: {hint}" for word, hint, _ in shape.asked)
        lines.append(f"def {function_name(shape.function.name)}({raw}) -> {shape.raw_hint()}: ...")
    return lines


def main(include, version, out):
    headers = Headers(Path(include))
    missing = [name for name in BY_HAND if name not in {function.name for function in headers.functions}]
    if missing:
        raise Problem(f"BY_HAND names what no header declares: {', '.join(missing)}")
    shapes = [Shape(headers, function) for function in headers.functions if function.name not in BY_HAND]
    out = Path(out)
    (out / "tunnelside").mkdir(parents=True, exist_ok=True)
    for name, lines in (("functions.i", interface(headers, shapes)), ("tunnelside/_api.py", package(headers, shapes)), ("tunnelside/_core.pyi", hints(shapes)),
                        ("tunnelside/_version.py", ["# SPDX-License-Identifier: MIT", f"# {NOTICE}", f'__version__ = "{version}"'])):
        (out / name).write_text("\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    try:
        main(*sys.argv[1:])
    except Problem as problem:
        sys.exit(f"generate.py: {problem}")
