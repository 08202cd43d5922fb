# SPDX-License-Identifier: MIT
"""Cut plans: what Python adds to the C library, and what any plan must keep to."""
import threading
import unittest

import tunnelside as ts

STOCK = ts.Stock(kerf="3 mm", lengths=[dict(length=6), dict(length="20 ft")])


class Stock(unittest.TestCase):
    def test_every_piece_is_cut(self):
        cuts = [ts.Cut(length="4 ft 2 in", count=7), ts.Cut(length=2.5, count=4), ts.Cut(length="18 in", count=11)]
        answer = ts.stock_plan(STOCK, cuts)
        for at, cut in enumerate(cuts):
            self.assertEqual(sum(stick.count * taken[at] for stick, taken in zip(answer.sticks, answer.taken)), cut.count)
        for stick, taken in zip(answer.sticks, answer.taken):
            used = sum(cut.length * number for cut, number in zip(cuts, taken)) + STOCK.kerf * (sum(taken) - 1)
            self.assertAlmostEqual(stick.used, used, places=9)
            self.assertLessEqual(used, STOCK.lengths[stick.stock].length - STOCK.trim + 1e-9)
        self.assertEqual(answer.plan.sticks, sum(stick.count for stick in answer.sticks))
        self.assertAlmostEqual(answer.plan.stock, sum(stick.count * STOCK.lengths[stick.stock].length for stick in answer.sticks))
        self.assertLessEqual(answer.plan.lower_bound, answer.plan.stock + 1e-9)

    def test_more_sticks_than_there_was_room_for(self):
        cuts = [ts.Cut(length=3.06 + 0.01 * i, count=1) for i in range(80)]
        answer = ts.stock_plan(STOCK, cuts, 0)
        self.assertEqual((answer.plan.sticks, len(answer.sticks)), (80, 80))

    def test_nothing_to_cut_and_what_is_refused(self):
        self.assertEqual(ts.stock_plan(STOCK, []).sticks, ())
        for wrong in ([ts.Cut(length=7, count=1)], [ts.Cut(length=1, count=10 ** 9)], [ts.Cut(length=-1, count=1)]):
            with self.assertRaises(ts.Error):
                ts.stock_plan(STOCK, wrong)
        with self.assertRaises(ts.Error):
            ts.stock_plan(ts.Stock(), [ts.Cut(length=1, count=1)])
        for wrong in ([1], 1, [ts.Roll()]):
            with self.assertRaises(TypeError):
                ts.stock_plan(STOCK, wrong)

    def test_threads(self):
        cuts, answers = [ts.Cut(length=0.7 + 0.13 * i, count=5 + i) for i in range(6)], []
        threads = [threading.Thread(target=lambda: answers.append(ts.stock_plan(STOCK, cuts, 500))) for _ in range(4)]
        for one in threads:
            one.start()
        for one in threads:
            one.join()
        self.assertEqual(len(set(answers)), 1)


if __name__ == "__main__":
    unittest.main()
