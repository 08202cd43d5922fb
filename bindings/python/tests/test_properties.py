# SPDX-License-Identifier: MIT
"""What must hold whatever the numbers: Hypothesis looks for those that break it."""
import array
import math
import unittest

import tunnelside as ts
from sides import SIDE

try:
    from hypothesis import given, settings
    from hypothesis import strategies as st
except ImportError:
    raise unittest.SkipTest("hypothesis is not installed")

settings.register_profile("quick", max_examples=60, deadline=None, database=None, derandomize=True)
settings.load_profile("quick")

rolls = st.builds(lambda core, thickness, packing: ts.Roll(core=core, thickness=thickness, packing=packing), st.floats(0.01, 0.3), st.floats(0, 0.02), st.floats(0.5, 1.5))
wraps = st.floats(0.001, 100)
lengths = st.floats(5, 60)
hips = st.floats(1.2, 1.74)


def near(got, want, relative=1e-12):
    return abs(got - want) <= relative * max(abs(want), 1e-300)


class Rolls(unittest.TestCase):
    @given(rolls, wraps)
    def test_inverse(self, roll, n):
        self.assertTrue(near(ts.roll_wraps(roll, ts.roll_taken_up(roll, n)), n))

    @given(rolls, wraps, wraps)
    def test_monotone(self, roll, one, other):
        low, high = sorted((one, other))
        self.assertLessEqual(ts.roll_taken_up(roll, low), ts.roll_taken_up(roll, high))
        self.assertLessEqual(ts.roll_diameter(roll, low), ts.roll_diameter(roll, high))

    @given(rolls, wraps, st.floats(0.2, 3))
    def test_scaling(self, roll, n, by):
        larger = roll.replace(core=roll.core * by, thickness=roll.thickness * by)
        self.assertTrue(near(ts.roll_taken_up(larger, n), by * ts.roll_taken_up(roll, n)))

    @given(rolls, st.floats(0, 5), st.floats(2, 30))
    def test_thickness_is_found_again(self, roll, before, turns):
        taken = ts.roll_taken_up(roll, before + turns) - ts.roll_taken_up(roll, before)
        found = ts.roll_thickness(roll.core, before, turns, taken * (1 + 1e-12))
        self.assertAlmostEqual(found, roll.thickness * roll.packing, delta=1e-9 * (1 + roll.core))

    @given(rolls)
    def test_text_and_number(self, roll):
        self.assertEqual(ts.Roll(core=f"{roll.core!r} m").core, roll.core)

    @given(st.floats(-1000, 1000), st.sampled_from([2, 4, 8, 16, 32, 64]))
    def test_length_reads_back(self, metres, part):
        self.assertLessEqual(abs(ts.quantity_read(ts.length_write(metres, ts.Style.FEET_AND_INCHES, part), "m") - metres), 0.0254 / part / 2 + 1e-12)


class Structures(unittest.TestCase):
    @given(st.floats(allow_nan=False, allow_infinity=False), st.booleans(), st.integers(0, 1), st.integers(-2**31, 2**31 - 1))
    def test_what_goes_in_comes_out(self, number, there, hand, count):
        side = ts.Side(length=number, hand=hand, bar={"splices": count, "screw_limit": number if there else None})
        self.assertEqual((side.length, side.hand, side.bar.splices, side.bar.screw_limit), (number, hand, count, number if there else None))
        self.assertEqual(eval(repr(side), dict(vars(ts))), side)

    @given(st.text(max_size=12))
    def test_any_text_is_read_or_refused(self, text):
        try:
            self.assertTrue(math.isfinite(ts.quantity_read(text, "m")))
        except ValueError:
            pass

    @given(st.dictionaries(st.text(max_size=8), st.none() | st.floats() | st.text(max_size=4) | st.lists(st.integers(), max_size=2), max_size=3))
    def test_any_keywords_are_taken_or_refused(self, values):
        try:
            ts.Side(**values)
        except (TypeError, ValueError, OverflowError):
            pass


class Sides(unittest.TestCase):
    @given(lengths, lengths)
    def test_longer_is_heavier(self, one, other):
        low, high = sorted((one, other))
        self.assertLessEqual(ts.plan_side(SIDE.replace(length=low)).worst.drive, ts.plan_side(SIDE.replace(length=high)).worst.drive)

    @given(lengths, st.floats(1.0, 2.0))
    def test_torque_scales_with_mass(self, length, by):
        """Without the drive and the guide's push all torque is weight: twice the mass, twice the torque."""
        travel = ts.travel_make(ts.line_make(ts.bow_make(SIDE.frame), SIDE.curtain), SIDE.curtain, ts.Roll(core=0.04), SIDE.stops)
        load = ts.Load(length=length, bar_mass=2.0, clip_mass=0.1, areal_mass=0.2, wet=0.05, end_mass=3.0, friction=0.15)
        heavy = load.replace(**{name: by * getattr(load, name) for name in ("bar_mass", "clip_mass", "areal_mass", "wet", "end_mass")})
        self.assertTrue(near(ts.lift_worst(travel, heavy, None)[0].up, by * ts.lift_worst(travel, load, None)[0].up, 1e-9))

    @given(st.lists(st.tuples(lengths, hips), min_size=1, max_size=12), st.randoms(use_true_random=False))
    def test_order_of_rows_does_not_matter(self, rows, random):
        order = list(range(len(rows)))
        random.shuffle(order)

        def plan(rows):
            got = ts.plan_many({"length": [length for length, _ in rows], "curtain.hip": [hip for _, hip in rows]}, base=SIDE, outputs=["worst.drive", "bar_turns", "findings"])
            return list(zip(got["status"], map(repr, got["worst.drive"]), map(repr, got["bar_turns"]), got["findings"]))

        straight, shuffled = plan(rows), plan([rows[at] for at in order])
        self.assertEqual([straight[at] for at in order], shuffled)

    @given(st.lists(lengths, min_size=1, max_size=12), hips)
    def test_one_number_serves_all_rows(self, rows, hip):
        one = ts.plan_many({"length": rows, "curtain.hip": hip}, base=SIDE)
        each = ts.plan_many({"length": rows, "curtain.hip": [hip] * len(rows)}, base=SIDE)
        base = ts.plan_many({"length": rows}, base=SIDE.replace(curtain={"hip": hip}))
        for name in one:
            self.assertEqual(bytes(one[name]), bytes(each[name]))
            self.assertEqual(bytes(one[name]), bytes(base[name]))

    @given(st.lists(lengths, min_size=1, max_size=20), st.sampled_from([-3, -1, 1, 2, 5]))
    def test_any_stride(self, rows, stride):
        wide = array.array("d", [math.nan] * (len(rows) * abs(stride)))
        view = memoryview(wide)[::stride]
        for at, value in enumerate(rows):
            view[at] = value
        self.assertEqual(bytes(ts.plan_many({"length": view}, base=SIDE)["worst.drive"]), bytes(ts.plan_many({"length": rows}, base=SIDE)["worst.drive"]))


if __name__ == "__main__":
    unittest.main()
