# SPDX-License-Identifier: MIT
"""Header, exports, manual and Python have the same names."""
import ast
import inspect
import os
import pydoc
import re
import shlex
import shutil
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

import tunnelside as ts

if "BUILD" not in os.environ:
    raise unittest.SkipTest("compares headers, manual and exports of a build, which is not there")
TOP, BUILD = Path(os.environ["top_srcdir"]), Path(os.environ["BUILD"])
sys.path.insert(0, str(TOP / "bindings" / "python"))
from generate import BY_HAND, NOT_STRUCTURES, class_name  # noqa: E402
from records import Records  # noqa: E402

RECORDS = Records(os.environ["RECORDS"])

MEND = {
    "manual": "its comment in the header makes its page: `make man/man3.stamp`; see man/records2man",
    "exports": "it has TSIDE_API and a declaration in its topic's header, or is static or tside_i_*",
    "Python": "`make` asks bindings/python/generate.py for it; a function of an unusual shape is written by hand and named in BY_HAND there",
}


def functions_in_headers():
    return {one.name for one in RECORDS.of("function")}


def python_name(c_name):
    return BY_HAND.get(c_name, c_name[len("tside_"):])


class Names(unittest.TestCase):
    def same(self, where, these, headers):
        for name in sorted(these ^ headers):
            side = "the header has" if name in headers else f"the {where} has"
            self.fail(f"only {side} {name}. To mend: {MEND[where]}")

    def test_functions(self):
        headers = functions_in_headers()
        self.assertGreater(len(headers), 50)
        topics = {f"tside_{one.topic}" for one in RECORDS.of("about")}  # these have pages too
        manual = {path.name[:-2] for path in (BUILD / "man/man3").glob("tside_*.3")} - (topics - headers)
        self.same("manual", manual, headers)
        for shared in (BUILD / "lib/.libs").glob("libtunnelside.so"):
            listing = subprocess.run([*shlex.split(os.environ.get("NM") or "nm"), "-D", "-g", "--defined-only", str(shared)], stdout=subprocess.PIPE, check=True, universal_newlines=True).stdout
            self.same("exports", {line.split()[2].split("@")[0] for line in listing.splitlines() if line.split()[1] != "A"}, headers)
        python = {name for name in headers if callable(getattr(ts, python_name(name), None)) and python_name(name) in ts.__all__}
        self.same("Python", python, headers)

    def test_functions_of_python_alone(self):
        own = {"plan_many", "stock_plan",
               "roll_wraps_many", "roll_taken_up_many", "roll_diameter_many", "row_side", "load", "save", "as_columns", "findings_in", "fields", "usual", "usual_by_choice", "check", "field_find", "field_applies", "trades", "fault_text"}
        here = {name for name in ts.__all__ if inspect.isfunction(getattr(ts, name))}
        self.assertEqual({name for name in here if "tside_" + name not in functions_in_headers()} - own, set())

    def test_structures(self):
        structs = [one.name for one in RECORDS.of("struct")]
        self.assertGreater(len(structs), 30)
        for name in structs:
            if name in NOT_STRUCTURES:
                self.assertIn(NOT_STRUCTURES[name], ts.__all__)
                continue
            python = class_name(name)
            self.assertIn(python, ts.__all__, f"only the header has {name}. To mend: {MEND['Python']}")
            members = RECORDS.of("member", owner=name)
            counts = {before.name for before, array in zip(members, members[1:]) if array.dimension}
            flags = {one.name for one in members if one.name.endswith("_given")}
            words = {word.rstrip("_") for word in getattr(ts, python)._words}
            self.assertEqual(words, {one.name for one in members} - counts - flags, name)

    def test_enumerations(self):
        enums = [one.name for one in RECORDS.of("enum")]
        self.assertGreater(len(enums), 15)
        for name in enums:
            members = [one.name for one in RECORDS.of("name", owner=name)]
            if re.search("_(COUNT|CODES)$", members[-1]):
                members.pop()
            python = getattr(ts, class_name(name))
            self.assertEqual([int(member) for member in python], list(range(len(members))))
            for ours, theirs in zip(python, members):
                self.assertTrue(theirs.endswith(ours.name.rstrip("_")) or ours.name.endswith(theirs[len("TSIDE_"):]), (ours, theirs))

    def test_constants(self):
        constants = RECORDS.of("constant")
        self.assertGreater(len(constants), 10)
        for one in constants:
            self.assertEqual(getattr(ts, one.name[len("TSIDE_"):]), int(one.value))

    def test_one_version(self):
        declared = re.search(r"AC_INIT\(\[libtunnelside\], \[(.*?)\]", (TOP / "configure.ac").read_text(encoding="utf-8"))[1]
        self.assertEqual((ts.__version__, ts.version()), (declared, declared))


    def test_known_to_tools(self):
        """What lists installed packages finds it, with its version, as make installs it and as pip does."""
        from importlib import metadata

        self.assertEqual(metadata.version("tunnelside"), ts.__version__)
        said = metadata.metadata("tunnelside")
        self.assertEqual((said["Name"], said["License-Expression"] or said["License"], said["Requires-Python"]), ("tunnelside", "MIT", ">=3.8"))


class Generator(unittest.TestCase):
    """What generate.py cannot wrap it refuses, and says what to do: it never guesses."""

    def test_what_it_refuses(self):
        status = "function\troll\ttside_roll_x\ttside_status\tWhat is planted.\n"
        argument = "argument\ttside_roll_x\t{}\t{}\t{}\tone\t\t\t\twords\n"
        for planted, said in (
            (status + argument.format("work", "void *", "out"), r"'void \* work'; write it by hand and name it in BY_HAND"),
            (status + argument.format("turns", "tside_turn *", "out"), "seems to be an array of unknown length"),
            ("function\troll\ttside_roll_x\tconst tside_turn *\tWhat is planted.\n", "does not know what to do with its result"),
            ("struct\troll\ttside_roll_x\t\nmember\ttside_roll_x\tname\tconst char *\t\t\t\t\n", "name it in NOT_STRUCTURES"),
        ):
            with self.subTest(planted), tempfile.TemporaryDirectory() as folder:
                records = Path(folder) / "records"
                records.write_text(Path(os.environ["RECORDS"]).read_text(encoding="utf-8") + planted, encoding="utf-8")
                done = subprocess.run([sys.executable, str(TOP / "bindings/python/generate.py"), str(records), "1", folder], stderr=subprocess.PIPE, universal_newlines=True)
                self.assertNotEqual(done.returncode, 0)
                self.assertRegex(done.stderr, said)


class Help(unittest.TestCase):
    def test_every_function_explains_itself(self):
        for name in ts.__all__:
            one = getattr(ts, name)
            if inspect.isfunction(one):
                with self.subTest(name):
                    self.assertGreater(len(one.__doc__), 30)
                    self.assertNotRegex(one.__doc__, r"\btside_|\bTSIDE_|\bNULL\b|receives buffer")
                    signature = inspect.signature(one)
                    self.assertIsNot(signature.return_annotation, inspect.Signature.empty)
                    self.assertTrue(all(one.annotation is not inspect.Parameter.empty for one in signature.parameters.values()))

    def test_help_of_the_package(self):
        text = pydoc.render_doc(ts, renderer=pydoc.plaintext)
        for words in ("Plans roll-up side walls", "roll_wraps(roll: 'Roll', taken_up: 'Quantity') -> 'float'", "class Side(", "usually", "not a certificate"):
            self.assertIn(words, text)
        self.assertIn("thickness: m, ", ts.Roll.__doc__)
        self.assertEqual(str(inspect.signature(ts.roll_wraps)), "(roll: 'Roll', taken_up: 'Quantity') -> 'float'")
        self.assertEqual(list(inspect.signature(ts.Roll).parameters), ["core", "thickness", "packing"])


class Hints(unittest.TestCase):
    """mypy is content with the package, and finds what is wrong with its use."""

    def test_attributes_have_their_types(self):
        """What has none is guessed by each type checker in its own way, and counts as unknown with all that uses it."""
        bare = []
        for path in sorted(Path(ts.__file__).parent.glob("*.py")):
            for owner in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
                if not isinstance(owner, ast.ClassDef) or any(getattr(base, "id", getattr(base, "attr", "")) in ("Choice", "IntEnum") for base in owner.bases):
                    continue
                within = [node for part in owner.body for node in ast.walk(part) if isinstance(part, ast.FunctionDef)]
                names = [(target.attr, node) for node in within if isinstance(node, ast.Assign) for whole in node.targets for target in getattr(whole, "elts", [whole])
                         if isinstance(target, ast.Attribute) and getattr(target.value, "id", "") == "self"]
                names += [(target.id, node) for node in owner.body if isinstance(node, ast.Assign) for target in node.targets if isinstance(target, ast.Name)]
                bare += [f"{path.name}:{node.lineno}: {owner.name}.{name}" for name, node in names if not name.startswith("_") or name == "__signature__"]
        self.assertEqual(bare, [])

    @unittest.skipUnless(shutil.which(sys.executable) and subprocess.run([sys.executable, "-c", "import mypy"], stderr=subprocess.DEVNULL).returncode == 0, "mypy is not installed")
    def test_planted_errors(self):
        stage = Path(ts.__file__).parent
        planted = [
            "ts.roll_wraps(1, 2)", "ts.roll_wraps(ts.Roll(core=1), [])", "ts.Roll(cor=1)", "ts.Roll(core=[1])", "ts.Roll(core=1).core = 2", "ts.Roll(core=1).cor",
            "ts.plan_side(ts.Side()).findings[0].code.nothing", "ts.roll_wraps(ts.Roll(core=1), 1).upper()", "ts.Side(hand=1.5)", "ts.Side(frame=ts.Roll())",
            "ts.Roll(core=1).replace(cor=2)", "ts.Hung.DOOR", "ts.plan_many({}, base=1)", "ts.line_at(ts.Line(), 1)[3]", "ts.Drive().stall_torque + 1", "ts.Error('x').fld", "ts.plan_many({}, base=ts.Side(), errors='ignore')",
        ]
        good = ["ts.roll_wraps(ts.Roll(core='1 in'), 2).is_integer()", "ts.Side(hand='left', frame={'width': '30 ft'}).frame.width.is_integer()", "ts.Drive(stall_torque=None)",
                "[finding.code.text for finding in ts.plan_side(ts.Side()).findings]", "ts.plan_many({'length': [1.0]}, base=ts.Side(), workers=2)"]
        source = "\n".join(["import tunnelside as ts", *planted, *good])
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder) / "planted.py"
            path.write_text(source + "\n", encoding="utf-8")
            said = subprocess.run([sys.executable, "-m", "mypy", "--strict", "--cache-dir", os.path.join(folder, "cache"), str(stage), str(path)], cwd=folder, stdout=subprocess.PIPE,
                                  universal_newlines=True, env=dict(os.environ, MYPYPATH=str(stage.parent))).stdout
        lines = {int(line) for line in re.findall(r"planted\.py:(\d+): error", said)}
        self.assertEqual(lines, set(range(2, 2 + len(planted))), said)
        self.assertNotRegex(said, r"tunnelside/\w+\.pyi?:\d+: error")


if __name__ == "__main__":
    unittest.main()
