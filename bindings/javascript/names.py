# SPDX-License-Identifier: MIT
"""Makes JavaScript's names from the records of the public headers.

    names.py RECORDS VERSION OUT

RECORDS: what include/headers2records writes; VERSION: the library's; OUT: receives
    structures.h      C's tables of structures that JavaScript reads in the module's memory
    interface.js      functions with their arguments, enumerations, constants
    tunnelside.d.ts   TypeScript's declarations, with the headers' comments
    package.json

A new function of the usual shapes needs nothing here; one of another shape is written by hand in module.js, and BY_HAND has its declaration.
"""
import json
import re
import sys
from pathlib import Path

sys.dont_write_bytecode = True
sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "python"))
from generate import NOTICE, NOT_STRUCTURES, Headers, Structure, argument_text, base_of, class_name, tables  # noqa: E402
from records import Records  # noqa: E402

# Functions of another shape, and how each is declared where JavaScript has it.
BY_HAND = {
    "tside_fields": "fields(name: string): readonly Field[];",
    "tside_usual": "usual(name: string): Readonly<Record<string, unknown>>;",
    "tside_usual_by_choice": None,
    "tside_usual_in": "usualIn(name: string, hardware: Hardware): Readonly<Record<string, unknown>>;",
    "tside_check": "check(name: string, structure: object): void;",
    "tside_field_find": None,
    "tside_field_applies": "fieldApplies(name: string, path: string, structure: object): boolean;",
    "tside_field_read": "fieldRead(name: string, path: string, text: string): number | string;",
    "tside_trades": "trades(ofWalls?: boolean): readonly Trade[];",
    "tside_fault_text": None, "tside_version": "readonly version: string;",
    "tside_plan_sides": "planSides(base: SideGiven, columns: Readonly<Record<string, Column>>, outputs?: readonly string[]): PlannedSides;",
    "tside_stock_plan": "stockPlan(stock: StockGiven, cuts: readonly CutGiven[], nodeLimit?: number): "
                        "{ readonly plan: CutPlan; readonly sticks: readonly Stick[]; readonly taken: readonly (readonly number[])[] };",
    "tside_stock_work": None,
}

# Structures whose places in memory module.js must know by itself.
LAYOUTS = ("tside_field", "tside_fault", "tside_trade", "tside_place", "tside_input", "tside_output")


def camel(c_name):
    first, *rest = c_name[len("tside_"):].split("_")
    return first + "".join(part.capitalize() for part in rest)


def layouts(headers):
    lines = ["static const unsigned layouts[] = {"]
    for name in LAYOUTS:
        members = headers.records.of("member", owner=name)
        lines.append(f"    sizeof({name}), " + ", ".join(f"offsetof({name}, {one.name})" for one in members) + ",")
    return lines + ["};"]


# --- what JavaScript reads ---


def argument(headers, one):
    """As module.js reads it: name, direction, what it is, form, C's type, unit, what goes with it."""
    return [one.name, one.direction, headers.what(one.type), one.form, base_of(one.type), one.unit, one.partners.split()]


def function(headers, one):
    arguments = [argument(headers, other) for other in headers.records.of("argument", owner=one.name)]
    return [one.name, camel(one.name), headers.what(one.returns) if "*" not in one.returns else one.returns, one.returns, arguments]


def interface(headers, structures, functions, version):
    return {
        "version": version,
        "layouts": {name: [one.name for one in headers.records.of("member", owner=name)] for name in LAYOUTS},
        "enums": {enum: [word.lower() for word in headers.name_words(enum)] for enum in headers.enums},
        "constants": {name[len("TSIDE_"):]: int(value) for name, value in headers.constants.items()},
        "makers": {name: camel(maker) for name, maker in headers.makers.items()},
        "functions": [function(headers, one) for one in functions],
    }


# --- what TypeScript reads ---


def comment(lines, before=""):
    text = [line.replace("*/", "* /") for line in "\n".join(lines).strip().split("\n")]
    return [before + "/**", *(f"{before} * {line}".rstrip() for line in text), before + " */"]


def speak(text):
    """C's names in JavaScript's words."""
    text = re.sub(r"\btside_[a-z0-9_]+", lambda match: camel(match[0]), text)
    return re.sub(r"\bTSIDE_([A-Z0-9_]+)", lambda match: match[1].lower(), text).replace("NULL", "null")


def answered(headers, c_type):
    what = headers.what(c_type)
    return class_name(base_of(c_type)) if what in ("structure", "choice") else {"number": "number", "whole": "number", "text": "string"}[what]


def asked(headers, c_type):
    what = headers.what(c_type)
    return {"structure": f"{class_name(base_of(c_type))}Given", "number": "Quantity", "choice": f"{class_name(base_of(c_type))} | number"}.get(what) or answered(headers, c_type)


def declare_structure(headers, structure):
    made = structure.c.name in headers.makers
    lines = comment([speak(structure.c.text or headers.about[structure.c.topic])]) + [f"export interface {structure.name} {{"]
    for one in structure.shown:
        hint = answered(headers, one.type)
        hint = f"readonly {hint}[]" if one.dimension else f"{hint} | null" if one.given else hint
        lines += ([f"  /** {speak(one.text)} */"] if one.text else []) + [f"  readonly {one.name}: {hint};"]
    lines.append("}")
    if made:
        return lines + [f"/** Made by {camel(headers.makers[structure.c.name])}(), and never by hand. */", f"export type {structure.name}Given = {structure.name};"]
    lines += [f"/** What is given of it: all else is usual. */", f"export interface {structure.name}Given {{"]
    for one in structure.shown:
        hint = asked(headers, one.type)
        hint = f"readonly {'(' + hint + ')' if '|' in hint else hint}[]" if one.dimension else f"{hint} | null" if one.given else hint
        lines.append(f"  readonly {one.name}?: {hint};")
    return lines + ["}"]


def declare_function(headers, one):
    arguments = headers.records.of("argument", owner=one.name)
    shown = [other for other in arguments if other.form != "beside"]
    given, answers = [], []
    for other in shown:
        if other.direction == "in":
            hint = asked(headers, other.type)
            given.append(f"{other.name}: " + (f"readonly {hint}[]" if other.form == "list" else f"{hint} | null" if other.form == "optional" else hint))
        elif other.direction == "out":
            hint = "string" if other.form == "text" else answered(headers, other.type)
            answers.append(("text" if other.form == "text" else other.name, f"readonly {hint}[]" if other.form in ("room", "each", "fixed") else hint))
    if one.returns not in ("tside_status", "void", "size_t"):
        answers.append(("result", "string" if "char" in one.returns else answered(headers, one.returns)))
    result = "void" if not answers else answers[0][1] if len(answers) == 1 else "{ " + "; ".join(f"readonly {name}: {hint}" for name, hint in answers) + " }"
    text = [speak(one.text.replace("\n", "\n\n")), ""] + [f"@param {other.name} {speak(argument_text(other))}" for other in shown if other.direction == "in" and other.text]
    statuses = headers.records.of("status", owner=one.name)
    text += [f"@throws {other.name[len('TSIDE_'):].lower()}: {speak(other.text)}" for other in statuses if other.name != "TSIDE_TOO_SMALL" or not any(a.form in ("room", "text") for a in shown)]
    return comment(text, "  ") + [f"  {camel(one.name)}({', '.join(given)}): {result};"]


def declarations(headers, structures, functions, by_hand):
    lines = ["// SPDX-License-Identifier: MIT", f"// {NOTICE.replace('generate.py', 'names.py')}", ""]
    for enum in headers.enums:
        text = headers.enums[enum].text
        lines += (comment([speak(text)]) if text else []) + [f"export type {class_name(enum)} = {' | '.join(json.dumps(word.lower()) for word in headers.name_words(enum))};"]
    lines += [line for one in structures for line in declare_structure(headers, one)]
    lines += Path(__file__).with_name("module.d.ts").read_text(encoding="utf-8").splitlines()
    lines += ["export interface Tunnelside extends Files {"]
    lines += [f"  {text}" for text in by_hand.values() if text]
    lines += [f"  /** A whole {one.name}: what is given, all else usual. */\n  {one.name}(given?: {one.name}Given): {one.name};" for one in structures if one.has_table() and one.c.name not in headers.makers]
    lines += [f"  readonly {name[len('TSIDE_'):]}: {value};" for name, value in headers.constants.items()]
    return lines + [line for one in functions for line in declare_function(headers, one)] + ["}"]


def main(records, version, out):
    headers = Headers(Records(records))
    functions = [one for one in headers.functions if one.name not in BY_HAND]
    structures = [Structure(headers, one) for one in headers.structs.values() if one.name not in NOT_STRUCTURES]
    package = json.loads(Path(__file__).with_name("package.json.in").read_text(encoding="utf-8").replace("@VERSION@", version))
    text = json.dumps(interface(headers, structures, functions, version), separators=(",", ":"), ensure_ascii=False)
    files = {
        "structures.h": [f"/* {NOTICE.replace('generate.py', 'names.py')} */", *tables(headers, structures), *layouts(headers)],
        "interface.js": [f"// {NOTICE.replace('generate.py', 'names.py')}", f"const INTERFACE = {text};"],
        "tunnelside.d.ts": declarations(headers, structures, functions, BY_HAND),
        "package.json": [json.dumps(package, indent=2)],
    }
    for name, lines in files.items():
        (Path(out) / name).write_text("\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main(*sys.argv[1:])
