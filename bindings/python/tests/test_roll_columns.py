# SPDX-License-Identifier: MIT
"""The roll's functions over columns: to the bit what the functions of one value answer, and refused as they refuse."""
import array
import math
import unittest

import tunnelside as ts

try:
    import numpy
except ImportError:
    numpy = None

ROLL = ts.Roll(core="1.4 in", thickness="0.15 mm")
PAIRS = ((ts.roll_wraps_many, ts.roll_wraps, 10000), (ts.roll_taken_up_many, ts.roll_taken_up, 1000), (ts.roll_diameter_many, ts.roll_diameter, 1000))


def doubles(values):
    return array.array("d", values)


class RollColumns(unittest.TestCase):
    def test_each_is_the_function_of_one(self):
        for roll in (ROLL, ts.Roll(core=0.05, thickness=0.0), ts.Roll(core=0.06, thickness=0.012, packing=0.8)):
            for many, one, greatest in PAIRS:
                given = doubles([0.0, -0.0, 5e-324, 1e-9, *(greatest * k / 997 for k in range(1, 998)), greatest])
                self.assertEqual(list(many(roll, given)), [one(roll, value) for value in given])

    def test_whatever_the_column_is(self):
        values = [0.1 * k for k in range(50)]
        for many, one, _ in PAIRS:
            want = doubles(one(ROLL, value) for value in values)
            self.assertEqual(doubles(many(ROLL, values)), want)
            self.assertEqual(doubles(many(ROLL, memoryview(doubles(values + values))[::2][:25])), doubles(one(ROLL, v) for v in (values + values)[::2][:25]))
            self.assertEqual(doubles(many(ROLL, memoryview(doubles(values))[::-1])), want[::-1])
            self.assertEqual(len(many(ROLL, [])), 0)
            spread = doubles([7.0] * 100)
            self.assertEqual(many(ROLL, doubles(values), out=memoryview(spread)[::2]).tolist(), want.tolist())
            self.assertEqual((spread[::2], set(spread[1::2])), (want, {7.0}))
            place = doubles(values)
            self.assertIs(many(ROLL, place, out=place), place)
            self.assertEqual(place, want)
        self.assertEqual(list(ts.roll_wraps_many(ROLL, ["4 ft", "1.2192 m", 1.2192])), [ts.roll_wraps(ROLL, "4 ft")] * 3)

    @unittest.skipUnless(numpy, "numpy is not installed")
    def test_numpy(self):
        given = numpy.linspace(0, 1.6, 1001)
        got = ts.roll_wraps_many(ROLL, given)
        te = ROLL.packing * ROLL.thickness
        want = 2 * given / math.pi / (ROLL.core + numpy.sqrt(ROLL.core**2 + 4 * te * given / math.pi))
        self.assertTrue(isinstance(got, numpy.ndarray) and numpy.allclose(got, want, rtol=1e-15, atol=0))
        self.assertTrue(numpy.allclose(ts.roll_taken_up_many(ROLL, got), given, rtol=1e-14, atol=1e-15))
        self.assertEqual(ts.roll_wraps_many(ROLL, numpy.arange(3)).tolist(), [ts.roll_wraps(ROLL, k) for k in range(3)])
        both = numpy.zeros((100, 2))
        both[:, 0] = numpy.arange(100) / 100
        ts.roll_wraps_many(ROLL, both[:, 0], out=both[:, 1])
        self.assertEqual(both[7, 1], ts.roll_wraps(ROLL, 0.07))

    def test_refused(self):
        for many, one, greatest in PAIRS:
            for wrong in (-1e-300, -1.0, math.nextafter(greatest, math.inf) if hasattr(math, "nextafter") else greatest * (1 + 1e-15), math.inf, -math.inf, math.nan):
                for step in (1, 2):
                    given = doubles([1.0] * 40)
                    given[33 // step * step] = wrong
                    out = doubles([7.0] * 40)
                    with self.assertRaises(ts.Error) as several:
                        many(ROLL, memoryview(given)[::step], out=memoryview(out)[::step])
                    with self.assertRaises(ts.Error) as single:
                        one(ROLL, wrong)
                    self.assertEqual((several.exception.row, several.exception.field, several.exception.status), (33 // step, single.exception.field, single.exception.status))
                    self.assertIn(str(single.exception), str(several.exception))
                    self.assertEqual(set(out), {7.0})
            with self.assertRaises(ts.Error) as refused:
                many(ts.Roll(core=0), [1.0])
            self.assertEqual((refused.exception.field, refused.exception.row), ("roll.core", None))
            with self.assertRaises(ts.Error):
                many(ts.Roll(core=0), [])
            for wrong in ([None], ["4 lb"], [[1.0]], 1.0):
                with self.assertRaises((TypeError, ValueError), msg=wrong):
                    many(ROLL, wrong)
            for out in (doubles([0.0, 0.0]), array.array("f", [0.0]), b"12345678", memoryview(doubles([0.0])).toreadonly()):
                with self.assertRaises((TypeError, ValueError, BufferError), msg=out):
                    many(ROLL, [1.0], out=out)
            with self.assertRaises(TypeError):
                many(ts.Round(diameter=0.03, wall=0.002), [1.0])


if __name__ == "__main__":
    unittest.main()
