# SPDX-License-Identifier: MIT
"""The rows of tests/data, which C runs too: tests/rows.h describes them."""
import csv
import math
import re
import typing
import unittest

import tunnelside as ts
from tree import tree

DATA = tree("tests/data") / "tests" / "data"
UNITS = "m m2 m3 m4 kg kg/m kg/m2 kg/m3 N N_m N/m Pa rad rad/s s m/s V A W J K ohm turn 1".split()


def number(text, unit, si=None):
    """A number of a row in SI units; its unit says of which, where no field does."""
    if not unit:
        return float(text)
    for candidate in [si] if si else [one.replace("_", " ") for one in UNITS]:
        try:
            return ts.quantity_read(f"{text} {unit}", candidate)
        except ts.Error:
            pass
    raise AssertionError(f"cannot read {text!r} {unit!r}")


def value(text):
    """A value among the arguments: a plain number, else the text as it stands."""
    try:
        plain = float(text)
    except ValueError:
        return text
    return int(text) if re.fullmatch(r"-?\d+", text) else plain


def lay(values, path, given):
    """Puts a value where the path leads into nested dictionaries and lists."""
    steps = re.findall(r"\w+", path)
    for step, following in zip(steps[:-1], steps[1:]):
        if step.isdigit():
            values = values[int(step)]
        elif following.isdigit():
            values = values.setdefault(step, [])
            while len(values) <= int(following):
                values.append({})
        else:
            values = values.setdefault(step, {})
    last = steps[-1]
    if isinstance(given, int) and isinstance(values.get(last), list):
        given = [*values[last], *({} for _ in range(given - len(values[last])))]
    values[last] = given


def arguments(function, text):
    hints = typing.get_type_hints(function, {**vars(typing), **vars(ts)})
    hints.pop("return")
    values = {}
    for pair in filter(None, text.split(";")):
        path, _, given = pair.partition("=")
        head, _, rest = path.partition(".")
        if rest:
            lay(values.setdefault(head, {}), rest, value(given))
        else:
            values[head] = given if hints[head] is str else value(given)
    for name, hint in hints.items():
        if isinstance(hint, type) and issubclass(hint, ts.Structure):
            values[name] = hint(**values.get(name, {}))
    return values


def answers(function, result):
    """The results of a call by their names."""
    names = re.search(r"Answers: (.*)\.", function.__doc__)[1].split(", ")
    return dict(zip(names, result if len(names) > 1 else [result]))


def follow(found, path):
    unit = None
    for step in path.split("."):
        if isinstance(found, dict):
            found = found[step]
        else:
            unit = next(field.unit for field in ts.fields(type(found)) if field.name == step)
            found = getattr(found, step + "_" if step in ("yield", "raise") else step)
    return found, unit


def differs(got, want, tolerance):
    return not abs(got - want) <= tolerance


def run(row):
    """What is wrong with a row, or nothing."""
    function = getattr(ts, row["function"][len("tside_"):])
    failure = outcome = None
    try:
        outcome = answers(function, function(**arguments(function, row["arguments"])))
    except ts.Error as error:
        failure = error
    result = row["result"]
    if result == "status":
        got = "ok" if failure is None else ts.status_text(failure.status) + (f": {failure.field}" if failure.field else "")
        return None if got == row["value"] else f"got {got}"
    if result.startswith("fault."):
        if failure is None:
            return "did not fail"
        got = getattr(failure, result[len("fault."):])
        if result in ("fault.other", "fault.index"):
            want = row["value"] if result == "fault.other" else int(row["value"])
            absent = "" if result == "fault.other" else -1
            return None if (absent if got is None else got) == want else f"got {got!r}"
        unit = failure.unit
    else:
        if failure is not None:
            return f"failed: {failure}"
        got, unit = follow(outcome, result)
        if isinstance(got, ts.Choice):
            return None if got.text == row["value"] else f"got {got.text}"
        if row["value"] == "none" or got is None or isinstance(got, tuple):
            got = "none" if got is None else str(len(got)) if isinstance(got, tuple) else repr(got)
            return None if got == row["value"] else f"got {got}"
        if isinstance(got, int):
            return None if got == int(row["value"]) else f"got {got}"
    want = number(row["value"], row["unit"], unit)
    tolerance = row["tolerance"]
    near = float(tolerance[4:]) * abs(want) if tolerance.startswith("rel ") else number(tolerance, row["unit"], unit)
    return f"got {got!r}, not {want!r} to {near!r}" if differs(0.0 if got is None else got, want, near) else None


class Rows(unittest.TestCase):
    def test_all(self):
        wrong, count = [], 0
        for path in sorted(DATA.glob("*.csv")):
            with open(path, encoding="utf-8", newline="") as file:
                for line, row in enumerate(csv.DictReader(file), 2):
                    if not hasattr(ts, row["function"][len("tside_"):]):
                        wrong.append(f"{path.name}:{line}: Python has no {row['function']}")
                        continue
                    count += 1
                    why = run(row)
                    if why:
                        wrong.append(f"{path.name}:{line}: {row['function']}: {row['result']}: {why}")
        self.assertEqual(wrong, [], "\n".join(wrong[:20]))
        self.assertGreater(count, 400)

    def test_the_test_can_fail(self):
        row = dict(function="tside_round_section", arguments="tube.diameter=1.315 in;tube.wall=0.133 in;density=7850", result="section.area", value="0.4939", unit="in2",
                   tolerance="0.00005")
        self.assertIsNone(run(row))
        for change in (dict(value="0.4941"), dict(value="nan", unit="", tolerance="1"), dict(result="status", value="contradicts: tube.wall"), dict(result="fault.bound", value="1")):
            self.assertIsNotNone(run({**row, **change}), change)
        self.assertTrue(differs(math.nan, 1, 1))


if __name__ == "__main__":
    unittest.main()
