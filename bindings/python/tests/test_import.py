# SPDX-License-Identifier: MIT
"""An import reads names alone, and a class is made when it is first asked for: counted in calls and modules, which a loaded machine does not change."""
import subprocess
import sys
import typing
import unittest
from pathlib import Path

import tunnelside as ts
from sides import __file__ as sides

FOLDERS = [str(Path(ts.__file__).resolve().parent.parent), str(Path(sides).resolve().parent)]


def fresh(code):
    """What a new interpreter, with nothing of this machine's own in it, prints."""
    code = f"import sys\nsys.path[:0] = {FOLDERS!r}\n{code}"
    return subprocess.run([sys.executable, "-I", "-S", "-B", "-c", code], stdout=subprocess.PIPE, check=True, universal_newlines=True, timeout=60).stdout


class Import(unittest.TestCase):
    CALLS = "calls = [0]\ndef count(frame, event, what):\n    calls[0] += event.endswith('call')\n"

    def test_import_reads_names_alone(self):
        said = fresh("before = set(sys.modules)\nimport tunnelside\nprint(*sorted(set(sys.modules) - before))")
        self.assertEqual(said.split(), ["tunnelside", "tunnelside._names", "tunnelside._version"])
        # 700, most of them the interpreter's own; with all classes made at once there were 30 thousand
        self.assertLess(int(fresh(self.CALLS + "sys.setprofile(count)\nimport tunnelside\nsys.setprofile(None)\nprint(calls[0])")), 1000)

    def test_what_is_not_asked_for_is_not_made(self):
        made = "from tunnelside import _api\nprint(*[name for name in (*_api.CHOICES, *_api.STRUCTURES) if name in vars(_api)])"
        self.assertEqual(fresh("import tunnelside as ts\nroll = ts.Roll(core='1.4 in')\n" + made).split(), ["Roll"])
        self.assertEqual(set(fresh("import tunnelside as ts\nts.roll_wraps(ts.Roll(core='1.4 in'), 1)\n" + made).split()), {"Roll"})
        first = set(fresh("import tunnelside as ts\nfrom sides import SIDE\nplan = ts.plan_side(SIDE)\nplan.worst.drive\n" + made).split())
        self.assertLessEqual({"Side", "Plan", "Torque"}, first)
        self.assertFalse({"EndPlan", "Layout", "Binding", "Stock", "FindingCode", "Status"} & first, first)
        modules = fresh("before = set(sys.modules)\nimport tunnelside as ts\nfrom sides import SIDE\nts.plan_side(SIDE)\nprint(*sorted(set(sys.modules) - before))").split()
        self.assertFalse({"inspect", "dataclasses", "difflib", "array", "json", "concurrent.futures", "tunnelside._batch"} & set(modules), modules)

    def test_many_threads_get_one_class(self):
        said = fresh("import threading\nimport tunnelside as ts\nsys.setswitchinterval(1e-6)\nfound = []\nstart = threading.Barrier(8)\n"
                     "def ask():\n    start.wait()\n    found.append((ts.Side, ts.Plan, ts.Hung, type(ts.Side(length=1).frame)))\n"
                     "threads = [threading.Thread(target=ask) for _ in range(8)]\n"
                     "for one in threads: one.start()\nfor one in threads: one.join()\nprint(len(found), len(set(found)))")
        self.assertEqual(said.split(), ["8", "1"])

    def test_words_of_a_choice_before_its_structure(self):
        self.assertEqual(fresh("import tunnelside as ts\nprint(ts.Hung.HIP, ts.Grade.A53_B.text)\nprint(ts.Hung('hip') is ts.End(hung='hip').hung)").split(), ["hip", "A53_B", "True"])


class Names(unittest.TestCase):
    def test_names_and_no_more(self):
        self.assertEqual(dir(ts), sorted(ts.__all__))
        self.assertEqual(len(set(ts.__all__)), len(ts.__all__))
        said = fresh("from tunnelside import *\nimport tunnelside as ts\nprint(all(globals()[name] is getattr(ts, name) for name in ts.__all__))")
        self.assertEqual(said.strip(), "True")

    def test_what_is_not_there(self):
        for owner in (ts, ts._api):
            with self.assertRaisesRegex(AttributeError, "module 'tunnelside.*' has no attribute 'Rol'"):
                owner.Rol

    def test_hints_can_be_evaluated(self):
        """In a new interpreter, in which nobody has asked for the classes that they name."""
        said = fresh("import typing\nimport tunnelside as ts\nprint(typing.get_type_hints(ts.lift_at)['hang'] == typing.Optional[ts.Hang])\n"
                     "print(typing.get_type_hints(ts.plan_turns)['return'] == typing.Tuple[ts.Turn, ...])")
        self.assertEqual(said.split(), ["True", "True"])
        for name in ts.__all__:
            if getattr(getattr(ts, name), "__module__", "") == "tunnelside._api" and not isinstance(getattr(ts, name), type):
                self.assertIn("return", typing.get_type_hints(getattr(ts, name)), name)


if __name__ == "__main__":
    unittest.main()
