# SPDX-License-Identifier: MIT
"""Sums of many lengths, against whole fractions of the very same doubles: take-off and cut plans, as near as their comments state."""

import random
import unittest
from fractions import Fraction as exact

import tunnelside as ts
from sides import SIDE

PI = exact(314159265358979323846264338327950288419716939937510, 10**50)


def total(numbers):
    return sum(map(exact, numbers), exact(0))


class Sums(unittest.TestCase):
    def near(self, got, want, within, what):
        self.assertLessEqual(abs(exact(got) - want), exact(within), f"{what}: {got!r}, not {float(want)!r}")

    def order(self, chance, lengths):
        stock = ts.Stock(kerf=chance.choice((0.0, chance.uniform(0, 0.01))), trim=chance.choice((0.0, chance.uniform(0, 0.1))), lengths=[dict(length=chance.uniform(2, 12)) for _ in range(chance.randint(1, 3))])
        most = max(one.length for one in stock.lengths) - stock.trim
        return stock, [ts.Cut(length=chance.uniform(0.01, most), count=chance.randint(1, 30)) for _ in range(lengths)]

    def used(self, stock, cuts, taken):
        return total(exact(cut.length) * number for cut, number in zip(cuts, taken)) + exact(stock.kerf) * max(sum(taken) - 1, 0)

    def left(self, stock, length, used):
        rest = exact(length) - exact(stock.trim) - used - exact(stock.kerf)
        return rest if rest >= exact(1e-9) else exact(0)

    def test_a_stick_filled(self):
        chance = random.Random(4)
        for _ in range(300):
            stock, cuts = self.order(chance, chance.choice((1, 3, 10)))
            length = chance.choice((chance.uniform(0.5, 12), chance.uniform(12, 300)))
            given, stick = ts.stock_fill(stock, length, cuts)
            used = self.used(stock, cuts, [one.count for one in given])
            self.near(stick.used, used, 1e-15 * length, "used")
            self.near(stick.offcut, self.left(stock, length, used) if stick.pieces else exact(length), 1e-15 * length, "offcut")

    def test_a_cut_plan(self):
        chance = random.Random(5)
        for lengths in [1, 2, 3, 5, 8, 13] * 4 + [60, 400]:
            stock, cuts = self.order(chance, lengths)
            answer = ts.stock_plan(stock, cuts, 100)
            bought = [exact(stock.lengths[stick.stock].length) for stick in answer.sticks]
            used = [self.used(stock, cuts, taken) for taken in answer.taken]
            left = [self.left(stock, *each) for each in zip(bought, used)]
            for stick, length, each, rest in zip(answer.sticks, bought, used, left):
                self.near(stick.used, each, 1e-15 * length, "used")
                self.near(stick.offcut, rest, 1e-15 * length, "offcut")
            sums = {name: total(stick.count * one for stick, one in zip(answer.sticks, each)) for name, each in (("stock", bought), ("offcut", left))}
            sums["cut"] = total(cut.count * exact(cut.length) for cut in cuts)
            sums["lost"] = sums["stock"] - sums["cut"] - sums["offcut"]
            for name, want in sums.items():
                self.near(getattr(answer.plan, name), want, (1e-15 if name == "stock" else 1e-14) * sums["stock"], name)

    def lengths(self, side, plan, fittings):
        """By code and where: what one piece, or all of it, is as long as."""
        core, thick = exact(side.bar.tube.diameter) + exact(side.bar.core_over), exact(side.curtain.packing) * exact(side.curtain.thickness)
        wraps = exact(side.stops.wraps_shut)
        above = exact(fittings.rail_allowance) + exact(plan.shut.hanging) + exact(fittings.hem)
        flap, flaps, stock = above + exact(plan.shut.diameter) / 2, fittings.end_flaps, exact(fittings.channel_stock)
        known = {
            ("curtain", "side"): [exact(plan.curtain_length)],
            ("flap", "side"): [flap],
            ("bar", "side"): [exact(plan.bar_length) + side.bar.splices * exact(side.bar.swage)],
            ("wire", "side"): [exact(side.length) + flaps * flap],
            ("channel", "side"): [stock, *(length % stock for length in (exact(side.length), flap))],
            ("cord", "drive_end"): [exact(fittings.cord) + exact(3, 2) * exact(plan.opening)],
        }
        for end, of in (("drive_end", side.drive_end), ("free_end", side.free_end)):
            made = getattr(plan, end)
            known["guide", end] = [exact(made.sweep.cut_length)]
            known["chain", end] = [exact(of.guide.chain)]
            known["extender", end] = [exact(made.layout.cut_length)]
            known["eye", end] = [exact(of.extender.eye_stand_off) + exact(of.extender.tube.side)]
        return known, above + PI * wraps * (core + thick * wraps)

    def test_a_take_off(self):
        chance = random.Random(6)
        for _ in range(100):
            side = ts.Side(**{**SIDE.asdict(), "length": chance.uniform(5, 100)})
            plan = ts.plan_side(side)
            fittings = ts.Fittings(rail_allowance=chance.uniform(0, 0.3), hem=chance.uniform(0, 0.3), channel_stock=chance.uniform(1.8, 4), cord=chance.uniform(1, 50))
            known, width = self.lengths(side, plan, fittings)
            near, heard = 1e-15 * side.length, set()
            for item in ts.takeoff(side, plan, fittings):
                wanted = known.get((item.code.text, item.at.text))
                if wanted is None:
                    continue
                heard.add((item.code.text, item.at.text))
                self.assertLessEqual(min(abs(exact(item.length) - want) for want in wanted), exact(near), f"{item.code.text}: {item.length!r}, not {[float(want) for want in wanted]}")
                if item.code.text == "curtain":
                    self.near(item.width, width, 1e-15, "width")
                    self.near(item.mass, exact(side.curtain.areal_mass) * width * wanted[0], 2e-15 * item.mass, "mass")
                if item.code.text in ("bar", "guide", "extender"):
                    self.near(item.mass, exact(self.by_metre(side, item)) * wanted[0], 1e-15 * item.mass, "mass")
            self.assertEqual(heard, set(known))

    def by_metre(self, side, item):
        density = ts.material_values(item.material).density
        tube = ts.Round(diameter=item.size, wall=item.wall) if item.code.text != "extender" else getattr(side, item.at.text).extender.tube
        return (ts.square_section if item.code.text == "extender" else ts.round_section)(tube, density).mass


if __name__ == "__main__":
    unittest.main()
