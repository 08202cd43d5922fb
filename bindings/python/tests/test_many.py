# SPDX-License-Identifier: MIT
"""Many sides: every row as plan_side has it, whatever its columns are made of and whoever works on them."""
import array
import math
import os
import shutil
import subprocess
import sys
import threading
import unittest

import tunnelside as ts
from sides import SIDE

try:
    import numpy
    import pandas
except ImportError:
    numpy = pandas = None

needs_numpy = unittest.skipUnless(numpy and pandas, "numpy and pandas are not installed")
OUTPUTS = ["worst.drive", "bar_turns", "drive_end.sweep.cut_length", "free_end.hip_kick_out"]


def doubles(values):
    return array.array("d", values)


def read(structure, path):
    for step in path.split("."):
        structure = getattr(structure, step)
    return structure


def bits(answer):
    return {name: bytes(memoryview(column)) for name, column in answer.items()}


class Rows(unittest.TestCase):
    def test_each_row_is_plan_side(self):
        lengths, hips = [10 + i for i in range(20)], [1.5 + 0.01 * i for i in range(20)]
        got = ts.plan_many({"length": lengths, "curtain.hip": hips, "drive.safety_factor": 2, "hand": "left"}, base=SIDE, outputs=[*OUTPUTS, "findings"])
        self.assertEqual(list(got), [*OUTPUTS, "status", "findings"])
        for row, (length, hip) in enumerate(zip(lengths, hips)):
            plan = ts.plan_side(SIDE.replace(length=length, curtain={"hip": hip}, drive={"safety_factor": 2}, hand="left"))
            self.assertEqual(got["status"][row], 0)
            self.assertEqual(set(ts.findings_in(int(got["findings"][row]))), {finding.code for finding in plan.findings})
            for name in OUTPUTS:
                want = read(plan, name)
                self.assertEqual(got[name][row], want) if want is not None else self.assertTrue(math.isnan(got[name][row]))

    def test_a_bad_row_stops_nothing(self):
        columns = {"length": [20.0, -1.0, 30.0, math.inf, 1e9]}
        got = ts.plan_many(columns, base=SIDE, outputs=["worst.drive", "findings"])
        self.assertEqual(list(got["status"]), [0, 1, 0, 1, 1])
        self.assertEqual([math.isnan(value) for value in got["worst.drive"]], [False, True, False, True, True])
        self.assertEqual(list(got["findings"])[1], 0)
        for workers in (1, 3):
            with self.assertRaisesRegex(ts.Error, "row 1: length: -1 m is not above 0 m") as caught:
                ts.plan_many(columns, base=SIDE, errors="raise", workers=workers)
            self.assertEqual((caught.exception.row, caught.exception.field, caught.exception.value), (1, "length", -1))
        with self.assertRaises(ts.Error) as caught:
            ts.plan_side(ts.row_side(columns, 4, base=SIDE))
        self.assertEqual(caught.exception.field, "length")

    def test_a_columns_field_is_named_whole(self):
        for path in ("bar.splices", "drive_end.guide.foot"):
            with self.assertRaisesRegex(ts.Error, "whole number") as caught:
                ts.plan_many({path: [0.5]}, base=SIDE, errors="raise")
            self.assertEqual((caught.exception.field, caught.exception.row), (path, 0))
        with self.assertRaises(ts.Error) as caught:
            ts.plan_many({"bar.play": ["1 deg", "1 q"]}, base=SIDE)
        self.assertTrue(str(caught.exception).startswith("row 1: bar.play: at character 3"), str(caught.exception))

    def test_what_a_column_may_be(self):
        want = bits(ts.plan_many({"length": doubles([20, 25, 30])}, base=SIDE))
        wide = doubles([20, 0, 25, 0, 30, 0])
        for column in ([20, 25, 30], (20.0, 25, "30 m"), memoryview(wide)[::2], memoryview(doubles([30, 25, 20]))[::-1], array.array("i", [20, 25, 30]),
                       array.array("f", [20, 25, 30]), range(20, 31, 5), ["20 m", "2500 cm", "30 m"]):
            self.assertEqual(bits(ts.plan_many({"length": column}, base=SIDE)), want, column)

    def test_unknown_columns_name_what_was_meant(self):
        for columns, outputs, said in (
            ({"lenght": [1.0]}, [], "lenght: no such field; did you mean 'length'?"), ({"hip": [1.0]}, [], "hip: no such field; did you mean 'curtain.hip'?"),
            ({"curtain.hipp": [1.0]}, [], "curtain.hipp: no such field; did you mean 'curtain.hip'?"),
            ({"drive_end.guid.margin": [1.0]}, [], "drive_end.guid.margin: no such field; did you mean 'drive_end.guide'?"),
            ({"length": [1.0]}, ["worst.driv"], "worst.driv: no such field; did you mean 'worst.drive'?"), ({"length": [1.0]}, ["finding"], "finding: no such field; did you mean 'findings'?"),
        ):
            with self.assertRaises(ts.Error) as caught:
                ts.plan_many(columns, base=SIDE, outputs=outputs)
            self.assertEqual((str(caught.exception), caught.exception.status), (said, ts.Status.NOT_FOUND))
        with self.assertRaisesRegex(TypeError, "Side has no field 'hip'; did you mean 'curtain.hip'?"):
            ts.Side(hip=1)

    def test_what_is_required_and_missing(self):
        with self.assertRaisesRegex(ts.Error, "frame.tube.diameter: 0 m is below 0.001 m: it is required, and 0 says that it is missing"):
            ts.plan_many({"length": [20.0]}, base=ts.Side(), errors="raise")

    def test_only_what_is_asked_for_is_computed(self):
        """A member above the bow stops extender, findings and the question whether there is a plan; turns and torque ask for neither."""
        end = {"extender": {"member_height": 20}}
        wrong = SIDE.replace(drive_end=end, free_end=end)
        with self.assertRaises(ts.Error):
            ts.plan_side(wrong)
        for outputs, status in ((["bar_turns"], 0), (["worst.drive", "curtain_length"], 0), (["drive_end.layout.cut_length"], 2), (["bar_turns", "findings"], 2), ([], 2), (ts.FIGURES, 2)):
            got = ts.plan_many({"length": [20.0]}, base=wrong, outputs=outputs)
            self.assertEqual((got["status"][0], "findings" in got), (status, "findings" in outputs), outputs)
        self.assertEqual(ts.plan_many({"length": [20.0]}, base=wrong, outputs=["bar_turns"])["bar_turns"][0], ts.plan_many({"length": [20.0]}, base=SIDE)["bar_turns"][0])

    def test_texts_choices_and_blanks(self):
        got = ts.plan_many({"hand": ["left", None, "right"], "limits.lag": [None, 1e-9, None], "length": ["60 ft", None, 20.0]}, base=SIDE, outputs=["findings", "curtain_length"])
        self.assertEqual(got["curtain_length"][0], ts.plan_side(SIDE.replace(length="60 ft")).curtain_length)
        self.assertEqual(got["curtain_length"][1], ts.plan_side(SIDE).curtain_length)
        self.assertEqual([ts.FindingCode.LAG in ts.findings_in(word) for word in got["findings"]], [False, True, False])
        for hand in (ts.Hand.LEFT, 1, 1.0):
            self.assertEqual(ts.plan_many({"hand": [hand]}, base=SIDE)["status"][0], 0)
        self.assertEqual(ts.plan_many({"hand": [1.5]}, base=SIDE)["status"][0], ts.Status.OUT_OF_BOUNDS)
        self.assertEqual(bits(ts.plan_many({"hand": ["Left", "RIGHT"], "curtain.thickness": ["6 mil", "200 \u00b5m"]}, base=SIDE)),
                         bits(ts.plan_many({"hand": ["left", "right"], "curtain.thickness": ["0.006 in", "0.2 mm"]}, base=SIDE)))
        with self.assertRaisesRegex(ts.Error, r"row 1: hand: no such choice \(right, left\)"):
            ts.plan_many({"hand": ["left", "up"]}, base=SIDE)
        with self.assertRaisesRegex(ts.Error, "row 0: curtain.hip: at character 5: mil is read of film's thickness alone"):
            ts.plan_many({"curtain.hip": ["60 mil"]}, base=SIDE)
        with self.assertRaises(ts.Error) as caught:
            ts.plan_many({"length": ["60 ft", "2 kg"]}, base=SIDE)
        self.assertEqual((caught.exception.row, caught.exception.field), (1, "length"))

    def test_what_is_missing_is_as_the_base_has_it(self):
        """However it is said: a row, and a column, is then the base's; of a choice, a count, a number that may be absent."""
        base = SIDE.replace(hand="left", drive={"stall_torque": None})
        want = ts.plan_many({"length": [20.0, SIDE.length, 30.0]}, base=base)
        for column in ([20.0, None, 30.0], [20.0, math.nan, 30.0], ["20 m", None, "30 m"], ["20 m", math.nan, 30], doubles([20, math.nan, 30]),
                       memoryview(doubles([20, 0, math.nan, 0, 30, 0]))[::2], array.array("f", [20, math.nan, 30])):
            for others in ({}, {"hand": [None, math.nan, "left"], "drive.stall_torque": [None, math.nan, None], "bar.splices": math.nan, "limits.lag": None}):
                columns = {"length": column, **others}
                self.assertEqual(bits(ts.plan_many(columns, base=base)), bits(want), column)
                for row, length in enumerate((20, SIDE.length, 30)):
                    self.assertEqual(ts.row_side(columns, row, base=base), base.replace(length=length))
        for nothing in (None, math.nan):
            with self.assertRaisesRegex(TypeError, "taken_up, row 1: a number.*, and not missing"):
                ts.roll_wraps_many(ts.Roll(core=0.05), [1.0, nothing])
        with self.assertRaises(ts.Error) as caught:
            ts.roll_wraps_many(ts.Roll(core=0.05), doubles([1.0, math.nan]))
        self.assertEqual(caught.exception.row, 1)

    def test_out_that_is_also_something_else(self):
        """An answer would be written over what is still to be read."""
        both = doubles([20.0, 25.0, 30.0, 35.0])
        view, kept = memoryview(both), both[:]
        pairs = {"length": view[:2], "curtain.hip": 1.6}
        for out in ({"bar_turns": both[:2] and view[:2]}, {"bar_turns": view[1:3]}, {"bar_turns": view[::2]}, {"bar_turns": view[1::-1]},
                    {"bar_turns": view[2:], "opening": view[2:]}, {"bar_turns": view[2:], "opening": view[3:1:-1]}, {"findings": view[:2].cast("B").cast("Q")},
                    {"status": view.cast("B").cast("i")[:2]}):
            with self.assertRaisesRegex(ValueError, "out: .*memory in common"):
                ts.plan_many(pairs, base=SIDE, outputs=["bar_turns"], out=out)
            self.assertEqual(both, kept)
        apart = doubles([20.0, 0.0, 25.0, 0.0])  # every other row is the answer's
        ts.plan_many({"length": memoryview(apart)[::2]}, base=SIDE, outputs=[], out={"bar_turns": memoryview(apart)[1::2]})
        self.assertEqual(apart[3], ts.plan_side(SIDE.replace(length=25)).bar_turns)
        for workers in (1, 3):  # a later row of another worker's
            long = doubles([20.0] * 2000)
            with self.assertRaises(ValueError):
                ts.plan_many({"length": memoryview(long)[:1000]}, base=SIDE, out={"bar_turns": memoryview(long)[999:1999]}, workers=workers)
        roll = doubles([1.0, 2.0, 3.0])
        with self.assertRaisesRegex(ValueError, "out: .*memory in common"):
            ts.roll_wraps_many(ts.Roll(core=0.05), memoryview(roll)[:2], out=memoryview(roll)[1:])
        with self.assertRaisesRegex(ValueError, "out: .*memory in common"):
            ts.roll_wraps_many(ts.Roll(core=0.05), roll, out=memoryview(roll)[::-1])
        self.assertEqual(roll, doubles([1.0, 2.0, 3.0]))

    def test_empty_and_plain(self):
        got = ts.plan_many({"length": []}, base=SIDE)
        self.assertEqual({len(column) for column in got.values()}, {0})
        self.assertEqual(len(ts.plan_many({"length": 20}, base=SIDE)["status"]), 1)
        self.assertEqual(list(ts.plan_many({"length": [20, 30]}, base=SIDE, outputs=[])), ["status"])
        self.assertEqual(list(ts.plan_many({"length": [20, 30]}, base=SIDE)), [*(name for name in ts.FIGURES if name != "findings"), "status", "findings"])

    def test_out_is_reused(self):
        out = {"worst.drive": doubles([7.0] * 3), "bar_turns": memoryview(doubles([7.0] * 6))[::2], "status": array.array("i", [9] * 3), "findings": array.array("Q", [9] * 3)}
        got = ts.plan_many({"length": [20.0, -1.0, 30.0]}, base=SIDE, outputs=["worst.drive"], out=out)
        for name in out:
            self.assertIs(got[name], out[name])
        self.assertEqual(list(out["status"]), [0, 1, 0])
        self.assertTrue(math.isnan(out["worst.drive"][1]))  # not the batch before
        self.assertEqual(out["bar_turns"][2], ts.plan_side(SIDE.replace(length=30)).bar_turns)

    def test_what_is_refused(self):
        fine = {"length": [20.0, 30.0]}
        for kind, columns, others in (
            (ts.Error, {"colour": [1.0]}, {}), (ts.Error, fine, dict(outputs=["colour"])), (ValueError, {**fine, "curtain.hip": [1.5]}, {}),
            (ts.Error, {"frame": [1.0]}, {}), (ts.Error, fine, dict(outputs=["worst"])), (TypeError, {"length": memoryview(b"ab").cast("c")}, {}),
            (TypeError, {"length": [object()]}, {}), (ValueError, fine, dict(out={"bar_turns": doubles([1])})), (TypeError, fine, dict(out={"bar_turns": array.array("f", [1, 2])})),
            ((BufferError, TypeError), fine, dict(out={"bar_turns": memoryview(doubles([1, 2])).toreadonly()})), (TypeError, fine, dict(out={"status": doubles([1, 2])})),
            (ValueError, fine, dict(errors="ignore")), (ValueError, fine, dict(workers=0)), (TypeError, fine, dict(base=ts.Cut())), (ts.Error, {"length": ["x"]}, {}),
            (TypeError, {"length": memoryview(bytes(16)).cast("d", [1, 2])}, {}), (ValueError, {"hand": "up"}, {}), (TypeError, [("length", [1.0])], {}), (TypeError, 3, {}),
        ):
            with self.subTest(columns=columns, others=others):
                with self.assertRaises(kind):
                    ts.plan_many(columns, **{"base": SIDE, **others})
        with self.assertRaises(TypeError):
            ts.plan_many(fine)

    def test_more_columns_than_fit(self):
        with self.assertRaises((ValueError, ts.Error)):
            ts.plan_many({"length": [1.0]}, base=SIDE, outputs=[f"lines[{i}].demand" for i in range(24)] * 1 + [f"findings[{i}].value" for i in range(32)] + [
                f"{end}.{path}" for end in ("drive_end", "free_end") for path in [f"sweep.x{i}" for i in range(200)]])


class Workers(unittest.TestCase):
    def test_the_same_bits(self):
        lengths = doubles([5 + 0.02 * i if i % 97 else -1 for i in range(2000)])
        want = bits(ts.plan_many({"length": lengths}, base=SIDE))
        for workers in (2, 3, 8):
            self.assertEqual(bits(ts.plan_many({"length": lengths}, base=SIDE, workers=workers)), want)

    def test_others_run_meanwhile(self):
        """The interpreter's lock is let go: another thread goes on while one call plans its rows."""
        lengths, counted, stop = doubles([20.0] * 4000), [0], threading.Event()

        def count():
            while not stop.is_set():
                counted[0] += 1

        other = threading.Thread(target=count)
        other.start()
        try:
            interval = sys.getswitchinterval()
            sys.setswitchinterval(0.5)  # who holds the lock would keep it
            before = counted[0]
            ts.plan_many({"length": lengths}, base=SIDE, outputs=["bar_turns"])
            during = counted[0] - before
        finally:
            stop.set()
            other.join()
            sys.setswitchinterval(interval)
        self.assertGreater(during, 100)

    def test_threads_of_the_caller(self):
        columns, wrong = {"length": doubles(range(10, 60))}, []
        want = bits(ts.plan_many(columns, base=SIDE))

        def work():
            for _ in range(5):
                if bits(ts.plan_many(columns, base=SIDE)) != want or ts.plan_side(SIDE) != plan:
                    wrong.append(1)

        plan = ts.plan_side(SIDE)
        threads = [threading.Thread(target=work) for _ in range(4)]
        for one in threads:
            one.start()
        for one in threads:
            one.join()
        self.assertEqual(wrong, [])

    def test_without_numpy(self):
        code = "import sys, tunnelside as ts; ts.Roll(core=1); assert not {'numpy', 'pandas', 'inspect', 'typing_extensions'} & set(sys.modules) - before, sys.modules"
        subprocess.run([sys.executable, "-c", "import sys; before = set(sys.modules); " + code], check=True)


class Signals(unittest.TestCase):
    """What takes long lets a signal through: within 0.2 s, as its sender waits."""

    CALLS = {
        "plan_many": "ts.plan_many({'length': array('d', [20.0]) * 2_000_000}, base=SIDE, outputs=['bar_turns'])",
        "plan_many, two workers": "ts.plan_many({'length': array('d', [20.0]) * 2_000_000}, base=SIDE, outputs=['bar_turns'], workers=2)",
        "stock_plan": "ts.stock_plan(ts.Stock(kerf=0.003, lengths=[dict(length=6.1), dict(length=7.32), dict(length=6.4)]), "
                      "[ts.Cut(length=0.4 + 0.0237 * i, count=11 + i % 7) for i in range(100)], 10**9)",
    }

    # a thousand million rows that are one and the same
    LONG = "numpy.broadcast_to(1.0, 10**9), out=numpy.lib.stride_tricks.as_strided(numpy.zeros(1), (10**9,), (0,))"

    def test_interrupted(self):
        calls = {**self.CALLS, "roll_wraps_many": f"import numpy; ts.roll_wraps_many(ts.Roll(core=0.05), {self.LONG})"} if numpy else self.CALLS
        for name, call in calls.items():
            with self.subTest(name):
                code = ("import signal, sys, time\nfrom array import array\nimport tunnelside as ts\nfrom sides import SIDE\n"
                        "def stop(*_):\n    stop.at = time.monotonic()\n    raise KeyboardInterrupt\n"
                        "signal.signal(signal.SIGALRM, stop)\nsignal.setitimer(signal.ITIMER_REAL, 0.7)\nwanted = time.monotonic() + 0.7\n"
                        f"try:\n    {call}\nexcept KeyboardInterrupt:\n    print(time.monotonic() - wanted)\n")
                said = subprocess.run([sys.executable, "-c", code], stdout=subprocess.PIPE, check=True, universal_newlines=True, cwd=os.path.dirname(os.path.abspath(__file__)), timeout=120).stdout
                self.assertTrue(said, "was over before the signal came")
                self.assertLess(float(said), 0.2)


class Interpreters(unittest.TestCase):
    """Two interpreters in one process have each their own classes, errors and usual values."""

    CODE = """
import tunnelside as ts
from sides import SIDE

def all_is_well():
    assert type(ts.bow_make(SIDE.frame)) is ts.Bow and ts.Roll(core=1).replace(core=2) == ts.Roll(core=2)
    assert ts.plan_side(SIDE).drive_end.layout.binding in list(ts.Binding)
    try:
        ts.roll_wraps(ts.Roll(core=-1), 1)
    except ts.Error as error:
        assert type(error) is ts.Error and error.status is ts.Status.OUT_OF_BOUNDS
    else:
        raise AssertionError("not refused")
    try:
        ts.Roll(cor=1)
    except TypeError as error:
        assert "did you mean 'core'" in str(error)

all_is_well()
"""
    RUN = """
try:
    import _interpreters as interpreters
except ImportError:
    import _xxsubinterpreters as interpreters
for turn in range(3):
    for apart in (False, True):  # with the lock of the first, and with their own
        if apart and ts._core.__file__.endswith(".abi3.so"):
            continue  # the stable interface has no word for it yet
        other = interpreters.create("isolated" if apart else "legacy") if hasattr(interpreters, "new_config") else interpreters.create(isolated=apart)
        said = interpreters.run_string(other, CODE)
        assert said is None, said
        all_is_well()
        interpreters.destroy(other)
        all_is_well()
print("well")
"""

    @unittest.skipUnless(sys.platform.startswith("linux") and shutil.which("nm"), "asks nm")
    def test_nothing_but_its_entry_is_exported(self):
        """What is exported, another library of the process with the same names could answer."""
        listing = subprocess.run(["nm", "-D", "--defined-only", ts._core.__file__], stdout=subprocess.PIPE, check=True, universal_newlines=True).stdout
        self.assertEqual([line.split()[-1] for line in listing.splitlines()], ["PyInit__core"])

    def test_a_second_interpreter(self):
        code = self.CODE + f"import sys\nCODE = 'import sys; sys.path[:] = %r' % (sys.path,) + chr(10) + {self.CODE!r}\n" + self.RUN
        done = subprocess.run([sys.executable, "-c", code], stdout=subprocess.PIPE, stderr=subprocess.PIPE, universal_newlines=True, cwd=os.path.dirname(os.path.abspath(__file__)))
        if "No module named '_xxsubinterpreters'" in done.stderr or "unexpected keyword argument 'isolated'" in done.stderr:
            self.skipTest("this interpreter makes no others")
        self.assertEqual((done.returncode, done.stdout), (0, "well\n"), done.stderr)


@needs_numpy
class Numpy(unittest.TestCase):
    def test_arrays_of_any_kind(self):
        lengths = numpy.arange(20.0, 60.0)
        want = ts.plan_many({"length": lengths}, base=SIDE)
        self.assertIsInstance(want["bar_turns"], numpy.ndarray)
        grid = numpy.zeros((len(lengths), 3))
        grid[:, 1] = lengths
        for column in (lengths.astype("f4"), lengths.astype(int), lengths.astype("u2"), grid[:, 1], lengths[::-1].copy()[::-1], lengths.astype(">f8"), list(lengths), pandas.Series(lengths)):
            got = ts.plan_many({"length": column}, base=SIDE)
            for name in want:
                numpy.testing.assert_array_equal(got[name], want[name])
        for wrong in (grid, lengths.astype(complex), numpy.array(["a"] * 40), lengths.astype("M8[s]")):
            with self.assertRaises((TypeError, ValueError)):
                ts.plan_many({"length": wrong}, base=SIDE)

    def test_out(self):
        out = {"bar_turns": numpy.zeros((4, 2))[:, 1], "status": numpy.zeros(4, "i4"), "findings": numpy.zeros(4, "u8")}
        got = ts.plan_many({"length": numpy.array([20.0, 30, -1, 40])}, base=SIDE, outputs=[], out=out)
        self.assertIs(got["bar_turns"], out["bar_turns"])
        self.assertTrue(math.isnan(out["bar_turns"][2]) and out["bar_turns"][3] > 5)
        locked = numpy.zeros(4)
        locked.flags.writeable = False
        for wrong in (locked, numpy.zeros(4, "f4"), numpy.zeros(3), numpy.zeros((4, 1)), numpy.zeros(4, ">f8")):
            with self.assertRaises((TypeError, ValueError, BufferError)):
                ts.plan_many({"length": numpy.full(4, 20.0)}, base=SIDE, out={"bar_turns": wrong})

    def test_very_long(self):
        """A million rows, though all but a few are refused at once, so that it is soon over."""
        lengths = numpy.full(1_000_000, -1.0)
        lengths[::100_000] = 20
        got = ts.plan_many({"length": lengths, "curtain.hip": 1.6}, base=SIDE, outputs=["bar_turns"], workers=2)
        self.assertEqual(int((got["status"] == 0).sum()), 10)
        self.assertEqual(int(numpy.isfinite(got["bar_turns"]).sum()), 10)
        self.assertGreater(got["bar_turns"][900_000], 5)

    def test_frames(self):
        frame = pandas.DataFrame({"length": [20, 30, -1], "hand": ["left", "right", "left"], "curtain.hip": ["5 ft", "1.6 m", 1.5]}, index=["a", "b", "c"])
        got = ts.plan_many(frame, base=SIDE, outputs=["findings", "bar_turns"])
        self.assertIsInstance(got, pandas.DataFrame)
        self.assertEqual((list(got.index), list(got.columns), list(got["status"])), (["a", "b", "c"], ["bar_turns", "status", "findings"], [0, 0, 1]))
        self.assertEqual(ts.row_side(frame, 0, base=SIDE), SIDE.replace(length=20, hand="left", curtain={"hip": "5 ft"}))
        frame["hand"] = frame["hand"].astype("category")
        self.assertTrue(got.equals(ts.plan_many(frame, base=SIDE, outputs=["findings", "bar_turns"])))
        self.assertEqual(got["findings"]["a"], tuple(dict.fromkeys(finding.code.text for finding in ts.plan_side(ts.row_side(frame, 0, base=SIDE)).findings)))
        self.assertEqual(got["findings"]["c"], ())
        words = numpy.zeros(3, "u8")
        self.assertIs(ts.plan_many({"length": [20, 30, -1]}, base=SIDE, outputs=[], out={"findings": words})["findings"], words)
        sparse = pandas.DataFrame({"length": pandas.array([20, None], dtype="Int64"), "hand": pandas.array(["left", None], dtype="string")})
        self.assertEqual(list(ts.plan_many(sparse, base=SIDE, outputs=["curtain_length"])["curtain_length"]),
                         [ts.plan_side(SIDE.replace(length=20)).curtain_length, ts.plan_side(SIDE).curtain_length])
        self.assertEqual(ts.row_side(sparse, 1, base=SIDE), SIDE)
        self.assertEqual(ts.plan_many(frame.iloc[:0], base=SIDE).shape[0], 0)

    def test_what_is_missing(self):
        want = ts.plan_many({"length": [20.0, SIDE.length, 30.0]}, base=SIDE)
        columns = [numpy.array([20, math.nan, 30]), numpy.array([20, math.nan, 30], "f4"), numpy.array([20, None, 30], object), numpy.array([20, math.nan, 30])[::-1][::-1],
                   numpy.ma.masked_array([20.0, 7, 30], [0, 1, 0]), numpy.ma.masked_array([20, 7, 30], [0, 1, 0]), numpy.ma.masked_array(["20 m", "7 m", "30 m"], [0, 1, 0]),
                   [20.0, numpy.ma.masked, 30], [20.0, numpy.float32("nan"), 30], [20, pandas.NA, 30], [20, pandas.NaT, 30],
                   *(pandas.Series([20, None, 30], dtype=kind) for kind in ("float64", "object", "Int64", "Float64")), pandas.Series(["20 m", None, "30 m"], dtype="string"),
                   pandas.Series(["20 m", None, "30 m"], dtype="category"), pandas.Series([20.0, None, 30.0], index=["units", "unit", "mask"])]
        for column in columns:
            got = ts.plan_many({"length": column}, base=SIDE)
            for name in want:
                numpy.testing.assert_array_equal(got[name], want[name], repr(column))
            for row, length in enumerate((20, SIDE.length, 30)):
                self.assertEqual(ts.row_side({"length": column}, row, base=SIDE), SIDE.replace(length=length))
        for nothing in (pandas.NA, numpy.ma.masked, numpy.float64("nan")):
            self.assertEqual(ts.plan_many({"length": nothing}, base=SIDE)["bar_turns"][0], ts.plan_side(SIDE).bar_turns)

    def test_masks_and_units_are_never_left_aside(self):
        class Feet(numpy.ndarray):
            units = "ft"

        feet = numpy.array([20.0, 30.0]).view(Feet)
        fine = {"length": [20.0, 30.0]}
        with self.assertRaisesRegex(TypeError, "length: .* in m, .*whose units are ft"):
            ts.plan_many({"length": feet}, base=SIDE)
        with self.assertRaisesRegex(TypeError, "units of its own"):
            ts.plan_many({"length": feet[0:1].reshape(())}, base=SIDE)
        with self.assertRaisesRegex(TypeError, "whose units are ft"):
            ts.roll_wraps_many(ts.Roll(core=0.05), feet)
        with self.assertRaisesRegex(TypeError, "taken_up, row 1: .*not missing"):
            ts.roll_wraps_many(ts.Roll(core=0.05), numpy.ma.masked_array([1.0, 2.0], [0, 1]))
        for out in (numpy.ma.masked_array([1.0, 2.0], [0, 1]), feet):
            with self.assertRaisesRegex(TypeError, "out: "):
                ts.plan_many(fine, base=SIDE, outputs=[], out={"bar_turns": out})
            with self.assertRaisesRegex(TypeError, "out: "):
                ts.roll_wraps_many(ts.Roll(core=0.05), [1.0, 2.0], out=out)

    def test_nothing_is_written_in_vain(self):
        """A series may hand out a copy, as some types and some pandas do: then it is refused."""
        want = list(ts.plan_many({"length": [20.0, 30.0]}, base=SIDE)["bar_turns"])
        for kind in ("float64", "Float64"):
            out = pandas.Series([1.0, 2.0], dtype=kind)
            try:
                ts.plan_many({"length": [20.0, 30.0]}, base=SIDE, outputs=[], out={"bar_turns": out})
            except (TypeError, ValueError, BufferError):
                self.assertEqual(list(out), [1.0, 2.0])
            else:
                self.assertEqual(list(out), want)

    @staticmethod
    def tables():
        """A table of each library that is there, with a number, a choice and a text, each with a gap."""
        columns = {"length": [20.0, None, 30.0], "hand": ["left", None, "right"], "curtain.hip": ["5 ft", "1.6 m", None], "bar.splices": [4, None, 5]}
        yield pandas.DataFrame(columns)
        try:
            import polars
        except ImportError:
            polars = None
        if polars:
            yield polars.DataFrame(columns)
            yield polars.DataFrame(columns, schema_overrides={"hand": polars.Categorical})
        try:
            import pyarrow
        except ImportError:
            pyarrow = None
        if pyarrow:
            yield pyarrow.table(columns)
            yield pyarrow.table({**columns, "hand": pyarrow.array(columns["hand"]).dictionary_encode()})
            yield pyarrow.RecordBatch.from_pydict(columns)
            yield pyarrow.table({**columns, "length": pyarrow.chunked_array([[20.0], [None, 30.0]])})
            if hasattr(pandas, "ArrowDtype"):
                yield pyarrow.table(columns).to_pandas(types_mapper=pandas.ArrowDtype)

    def test_tables_of_other_libraries(self):
        sides = [SIDE.replace(length=20, hand="left", curtain={"hip": "5 ft"}, bar={"splices": 4}), SIDE.replace(curtain={"hip": "1.6 m"}), SIDE.replace(length=30, hand="right", bar={"splices": 5})]
        for table in self.tables():
            with self.subTest(type(table)):
                got = ts.plan_many(table, base=SIDE, outputs=["bar_turns", "curtain_length", "findings"])
                self.assertIs(type(got), type(table))
                self.assertEqual([float(value) for value in numpy.asarray(got["bar_turns"])], [ts.plan_side(side).bar_turns for side in sides])
                found = got["findings"].to_pylist() if hasattr(got["findings"], "to_pylist") else list(got["findings"])
                self.assertEqual([list(names) for names in found], [list(dict.fromkeys(finding.code.text for finding in ts.plan_side(side).findings)) for side in sides])
                for row, side in enumerate(sides):
                    self.assertEqual(ts.row_side(table, row, base=SIDE), side)


if __name__ == "__main__":
    unittest.main()
