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
HEADERS = "\n".join(path.read_text(encoding="utf-8") for path in [*(TOP / "include" / "tunnelside").glob("*.h"), TOP / "include/tunnelside/version.h.in"]
                    if path.name != "version.h")
sys.path.insert(0, str(TOP / "bindings" / "python"))
from generate import BY_HAND, NOT_STRUCTURES  # noqa: E402

MEND = {
    "manual": "its comment in the header makes its page: `make man/man3.stamp`; see man/headers2man",
    "exports": "it has TSIDE_API and a declaration in its topic's header, or is static or tside_i_*",
    "Python": "`make` asks bindings/python/generate.py for it; a function of an unusual shape is written by hand and named in BY_HAND there",
}


def functions_in_headers():
    return set(re.findall(r"^TSIDE_API [^;]*?\b(tside_\w+)\(", HEADERS, re.M))


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
        topics = {f"tside_{path.stem}" for path in (TOP / "include" / "tunnelside").glob("*.h")}  # these have pages too
        manual = {path.name[:-2] for path in (BUILD / "man/man3").glob("tside_*.3")} - (topics - headers)
        self.same("manual", manual, headers)
        for shared in (BUILD / "lib/.libs").glob("libtunnelside.so"):
            listing = subprocess.run([*shlex.split(os.environ.get("NM") or "nm"), "-D", "-g", "--defined-only", str(shared)], stdout=subprocess.PIPE, check=True, universal_newlines=True).stdout
            self.same("exports", {line.split()[2].split("@")[0] for line in listing.splitlines() if line.split()[1] != "A"}, headers)
        python = {name for name in headers if callable(getattr(ts, python_name(name), None)) and python_name(name) in ts.__all__}
        self.same("Python", python, headers)

    def test_functions_of_python_alone(self):
        own = {"plan_many", "stock_plan",
               "roll_wraps_many", "roll_taken_up_many", "roll_diameter_many", "row_side", "findings_in", "fields", "usual", "usual_by_choice", "check", "field_find", "field_applies", "trades", "fault_text"}
        here = {name for name in ts.__all__ if inspect.isfunction(getattr(ts, name))}
        self.assertEqual({name for name in here if "tside_" + name not in functions_in_headers()} - own, set())

    def test_structures(self):
        names = re.findall(r"^typedef struct (tside_\w+) \{(.*?)^\}", HEADERS, re.M | re.S)
        self.assertGreater(len(names), 30)
        for name, body in names:
            if name in NOT_STRUCTURES:
                self.assertIn(NOT_STRUCTURES[name], ts.__all__)
                continue
            python = "".join(part.capitalize() for part in name[len("tside_"):].split("_"))
            self.assertIn(python, ts.__all__, f"only the header has {name}. To mend: {MEND['Python']}")
            body = re.sub(r"/\*.*?\*/", "", body, flags=re.S)
            members = {word for line in body.split(";") for word in re.findall(r"[ ,](\w+)(?:\[\w+\])?(?=,|$)", line.strip())}
            counts = set(re.findall(r"int (\w+);\s*\w+ \w+\[", body))
            words = {word.rstrip("_") for word in getattr(ts, python)._words}
            flags = {member for member in members if member.endswith("_given")}
            self.assertEqual(words, members - counts - flags, name)

    def test_enumerations(self):
        found = re.findall(r"^typedef enum (tside_\w+) \{(.*?)\}", HEADERS, re.M | re.S)
        self.assertGreater(len(found), 15)
        for name, body in found:
            members = re.findall(r"\b(TSIDE_\w+)\b", re.sub(r"/\*.*?\*/", "", body, flags=re.S))
            members = [member for at, member in enumerate(members) if not (at == len(members) - 1 and re.search("_(COUNT|CODES)$", member))]
            python = getattr(ts, "".join(part.capitalize() for part in name[len("tside_"):].split("_")))
            self.assertEqual([int(member) for member in python], list(range(len(members))))
            for ours, theirs in zip(python, members):
                self.assertTrue(theirs.endswith(ours.name.rstrip("_")) or ours.name.endswith(theirs[len("TSIDE_"):]), (ours, theirs))

    def test_constants(self):
        for name, value in re.findall(r"\b(TSIDE_\w+) = (\d+)", re.sub(r"typedef enum.*?\}", "", HEADERS, flags=re.S)):
            self.assertEqual(getattr(ts, name[len("TSIDE_"):]), int(value))

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
        for declaration, said in (
            ("tside_status tside_roll_x(const tside_roll *roll, double colour, tside_fault *fault);", "no unit for 'colour'.*UNITS"),
            ("tside_status tside_roll_x(const tside_roll *roll, void *work, tside_fault *fault);", r"'void \*work'; write it by hand and name it in BY_HAND"),
            ("tside_status tside_roll_x(const tside_roll *roll, tside_turn *turns, tside_fault *fault);", "seems to be an array of unknown length.*PER_ELEMENT"),
            ("const tside_turn *tside_roll_x(int turn);", "does not know what to do with its result"),
            ("typedef struct tside_roll_x {\n    const char *name;\n} tside_roll_x;", "name it in NOT_STRUCTURES"),
        ):
            with self.subTest(declaration), tempfile.TemporaryDirectory() as folder:
                include = Path(folder) / "include"
                shutil.copytree(str(TOP / "include"), str(include))
                header = include / "tunnelside" / "roll.h"
                os.chmod(str(header.parent), 0o755)
                os.chmod(str(header), 0o644)
                api = "" if declaration.startswith("typedef") else "/* What is planted. */\nTSIDE_API "
                text = header.read_text(encoding="utf-8")
                at = text.rindex("#ifdef __cplusplus")
                header.write_text(text[:at] + api + declaration + "\n\n" + text[at:], encoding="utf-8")
                done = subprocess.run([sys.executable, str(TOP / "bindings/python/generate.py"), str(include), "1", folder], stderr=subprocess.PIPE, universal_newlines=True)
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
