# SPDX-License-Identifier: MIT
"""Drawings on paper: nothing meets a text, at any scale; what is written is well formed; what a notebook and matplotlib show of them."""
import importlib.util
import math
import random
import subprocess
import sys
import unittest
import xml.etree.ElementTree as ElementTree
from pathlib import Path

import tunnelside as ts
from page import SVG, Page
from sides import END, SIDE
from tree import tree

SITES = sorted((tree("examples/sites") / "examples" / "sites").glob("*.json"))
SCALES = (1, 2, 5, 10, 20, 50)
MATPLOTLIB = importlib.util.find_spec("matplotlib") is not None


def any_side(seed):
    """An invented side by chance, or None where the library refuses it."""
    dice = random.Random(seed)
    shape = dice.randrange(3)
    frame = SIDE.frame.replace(**[{"leg_height": dice.uniform(1.5, 2), "peak_height": 4}, {"leg_height": 0, "peak_height": SIDE.frame.width / 2},
                                  {"leg_height": 1.3, "peak_height": 3.2}][shape])
    if dice.random() < 0.4:
        frame = frame.replace(board="outside", board_top=dice.uniform(0.1, 0.4), board_stand=dice.uniform(0, 0.06))

    def end():
        outs = [ts.KeepOut(inner=x, outer=x + dice.uniform(0.1, 1), bottom=y, top=y + dice.uniform(0.2, 1))
                for x, y in ((dice.uniform(2.5, 5.5), dice.uniform(0, 2)) for _ in range(dice.randrange(9)))]
        extender = END.extender.replace(slant=dice.choice(["best", "angle"]), angle=dice.uniform(0.5, 0.9), member_outer=4.6 if shape == 0 else 4.4,
                                        member_height=dice.uniform(0.7, 1.0), tube={"side": dice.choice([0.04, 0.0508, 0.06])})
        return END.replace(hung=dice.choice(["extender", "extender", "hip"]), extender=extender, keep_outs=outs,
                           guide=END.guide.replace(foot=dice.choice(["hangs", "hangs", "fixed"])))

    side = SIDE.replace(frame=frame, hand=dice.choice(["left", "right"]), curtain=SIDE.curtain.replace(hip=dice.uniform(1.4, 1.9), sill=dice.uniform(0.25, 0.35)),
                        stops=SIDE.stops.replace(gap=dice.uniform(0.1, 0.35)), drive_end=end(), free_end=end())
    try:
        return side, ts.plan_side(side)
    except ts.Error:
        return None


class OnPaper(unittest.TestCase):
    def check_page(self, drawing):
        """Everything told has a place, within the paper and off all else."""
        page = Page(drawing.svg("site"))
        self.assertEqual(list(page.faults()), [])
        words = [ts.dimension_text(one, drawing.picture.tape) for one in drawing.dimensions] + [ts.note_text(one) for one in drawing.notes]
        self.assertEqual([text.words for text in page.texts], words)
        for one, text in zip((*drawing.dimensions, *drawing.notes), page.texts):
            self.assertAlmostEqual(text.width, one.text_width * 1000 / drawing.picture.scale, delta=1e-3)
            self.assertEqual(round(text.width / 3, 3), len(text.words))
        self.assertAlmostEqual(page.width, (drawing.right - drawing.left) * 1000 / drawing.picture.scale, delta=1e-3)
        self.assertAlmostEqual(page.height, (drawing.top - drawing.bottom) * 1000 / drawing.picture.scale, delta=1e-3)

    def views(self, side):
        for view in ts.View:
            for end in ts.WhichEnd:
                yield view, end

    def test_no_text_meets_anything_on_any_demo_site(self):
        checked = 0
        for path in SITES:
            for site in ts.load(path):
                plan = ts.plan_side(site.side)
                for view, end in self.views(site.side):
                    for tape in ts.Tape:
                        for scale in SCALES:
                            with self.subTest(site=path.name, view=view.text, end=end.text, tape=tape.text, scale=scale):
                                try:
                                    drawing = ts.draw(site.side, plan, ts.Picture(view=view, end=end, tape=tape, scale=scale))
                                except ts.Error as error:
                                    self.assertEqual((error.status.name, error.field), ("NOT_MODELLED", "picture.view"))
                                    continue
                                self.check_page(drawing)
                                checked += 1
        self.assertGreater(checked, 500)

    def test_no_text_meets_anything_on_sides_by_chance(self):
        drawn = [(seed, *made) for seed in range(100) for made in [any_side(seed)] if made]
        self.assertGreater(len(drawn), 30)
        for seed, side, plan in drawn:
            dice = random.Random(seed)
            for scale in (5, 10, 20):
                turns = dice.uniform(0, plan.drive_turns) if dice.random() < 0.3 else None
                picture = ts.Picture(end=dice.choice(list(ts.WhichEnd)), tape=dice.choice(list(ts.Tape)), scale=scale, turns=turns)
                with self.subTest(seed=seed, picture=picture):
                    self.check_page(ts.draw(side, plan, picture))

    def test_names_are_left_out_only_where_they_have_no_room(self):
        """As many at 1:20 as in a drawing so large that all find room."""
        for path in SITES:
            for site in ts.load(path):
                plan = ts.plan_side(site.side)
                for end in ts.WhichEnd:
                    notes = [{one.part for one in ts.draw(site.side, plan, ts.Picture(end=end, scale=scale)).notes} for scale in (2, 20)]
                    self.assertEqual(*notes, f"{path.name} {end}")

    def test_what_the_checker_would_find(self):
        """A text moved onto a line, onto another text and off the paper is found."""
        plan = ts.plan_side(SIDE)
        svg = ts.draw(SIDE, plan, ts.Picture()).svg()
        page = Page(svg)
        line, first, second = page.lines[0], page.texts[0], page.texts[-1]
        for x, y, said in ((*line[0], "meets a line"), (second.x, second.y, f"meets '{second.words}'"), (-50, 0, "leaves the paper")):
            moved = page.texts[0]._replace(x=x, y=y, ux=1, uy=0)
            again = Page(svg)
            again.texts[0] = moved
            self.assertTrue(any(said in fault for fault in again.faults()), said)
        again.texts[0] = first._replace(ux=-1, uy=0)
        self.assertTrue(any("upside down" in fault for fault in again.faults()))


class Written(unittest.TestCase):
    def test_a_title_stays_text(self):
        drawing = ts.draw(SIDE, ts.plan_side(SIDE), ts.Picture())
        for title, shown in (("<b>&amp;</b> \"'", "<b>&amp;</b> \"'"), ("]]></title><script>x()</script>", "]]></title><script>x()</script>"), ("a\x01\x1b\x7fb", "a   b"),
                             ("Häuser € \U0001f331", "Häuser € \U0001f331"), ("x<" * 5000, "x<" * 5000), ("", None)):
            root = ElementTree.fromstring(drawing.svg(title).encode())
            self.assertEqual(root.findtext(SVG + "title") or None, shown)
            self.assertEqual({one.tag for one in root.iter()}, {SVG + tag for tag in ("svg", "title", "desc", "g", "line", "path", "circle", "text")})
            self.assertEqual(drawing.svg(title), ts.drawing_svg(drawing, title))

    def test_texts_of_any_length_have_room(self):
        drawing = ts.draw(SIDE, ts.plan_side(SIDE), ts.Picture(scale=1))
        for length in (0, 1, 255, 256, 257, 1 << 20):
            title = "a" * length
            self.assertEqual(ElementTree.fromstring(drawing.svg(title)).findtext(SVG + "title"), title)
        with self.assertRaises(ts.Error):
            ts.length_write(1e7, ts.Style.MILLIMETRES, 0)
        self.assertEqual(ts.length_write(1.5, ts.Style.MILLIMETRES, 0), "1500 mm")
        with self.assertRaises(ValueError):
            drawing.svg("zero\0")
        with self.assertRaises(UnicodeEncodeError):
            drawing.svg("\ud800")


class Notebook(unittest.TestCase):
    def test_a_drawing_and_a_site_show_themselves(self):
        plan = ts.plan_side(SIDE)
        drawing = ts.draw(SIDE, plan, ts.Picture(end="free_end"))
        self.assertEqual(drawing._repr_svg_(), drawing.svg("end wall, free end"))
        self.assertGreater(len(drawing.strokes), 20)
        self.assertGreater(len(drawing.dimensions), 5)
        self.assertGreater(len(drawing.notes), 3)
        self.assertEqual(ts.Site(SIDE, name="<A>")._repr_svg_(), ts.draw(SIDE, plan, ts.Picture()).svg("<A>"))
        self.assertIsNone(ts.Site(SIDE.replace(length=0))._repr_svg_())
        metric = next(site for path in SITES for site in ts.load(path) if "metric" in path.name)
        self.assertIn(" mm</text>", metric._repr_svg_())
        self.assertNotIn(" in</text>", metric._repr_svg_())

    def test_a_plan_tells_its_main_figures_and_findings(self):
        for length in (SIDE.length, 200):
            plan = ts.plan_side(SIDE.replace(length=length))
            html = plan._repr_html_()
            root = ElementTree.fromstring(f"<div>{html}</div>")
            items = ["".join(one.itertext()) for one in root.iter("li")]
            self.assertEqual(len(items), len(plan.findings))
            for item, finding in zip(items, plan.findings):
                self.assertTrue(item.endswith(ts.finding_text(finding)), item)
                self.assertEqual(item.startswith("stops the work: "), bool(ts.finding_stops(finding.code)))
            cells = [one.text.split()[0] for one in root.iter("td")]
            for cell, value in zip(cells, (plan.drive_turns, plan.opening, plan.curtain_length, plan.bar_length, plan.design_torque)):
                self.assertAlmostEqual(float(cell), value, delta=abs(value) * 5e-4)
            self.assertEqual(len(cells), 5)


class Plots(unittest.TestCase):
    @unittest.skipUnless(MATPLOTLIB, "matplotlib is not installed")
    def test_an_end_wall_is_the_drawing_at_equal_scale(self):
        import matplotlib

        matplotlib.use("Agg")
        from matplotlib import pyplot
        from matplotlib.patches import Arc, Circle
        from tunnelside import plot

        drawing = ts.draw(SIDE, ts.plan_side(SIDE), ts.Picture(end="free_end", turns=3))
        ax = plot.end_wall(SIDE, end="free_end", turns=3)
        self.assertEqual(ax.get_aspect(), 1)
        self.assertEqual((*ax.get_xlim(), *ax.get_ylim()), (drawing.left, drawing.right, drawing.bottom, drawing.top))
        root = ElementTree.fromstring(drawing.svg())
        self.assertEqual(len(ax.patches), sum(one.tag[len(SVG):] in ("line", "circle", "path", "text") for one in root.iter()))
        circles = [one for one in ax.patches if type(one) is Circle]
        whole = [one for one in drawing.strokes if one.arc and one.sweep > 6.28]
        for patch, stroke in zip(circles, whole):
            self.assertAlmostEqual(patch.center[0], stroke.x, delta=1e-3 * 20e-3)
            self.assertAlmostEqual(patch.center[1], stroke.y, delta=1e-3 * 20e-3)
        self.assertEqual(len(circles), len(whole))
        own, other = pyplot.subplots(1, 2)
        self.assertIs(plot.end_wall(drawing, other[1]), other[1])
        self.assertEqual(len(other[1].patches), len(ax.patches))
        leaning = ts.load(next(path for path in SITES if path.name == "half_circle.json"))[0]
        self.assertGreater(len([one for one in plot.end_wall(leaning).patches if type(one) is Arc]), 3)
        with self.assertRaisesRegex(TypeError, "a plan does not hold its side"):
            plot.end_wall(ts.plan_side(SIDE))
        pyplot.close("all")

    @unittest.skipUnless(MATPLOTLIB, "matplotlib is not installed")
    def test_curves_over_turns_are_the_turn_table(self):
        import matplotlib

        matplotlib.use("Agg")
        from matplotlib import pyplot
        from tunnelside import plot

        rows = ts.plan_turns(SIDE)
        axes = plot.turns(ts.Site(SIDE))
        for ax, values in zip(axes, ([row.opening for row in rows], [row.torque for row in rows], [row.lean * 180 / 3.141592653589793 for row in rows])):
            for got, row, value in zip(ax.lines[0].get_xydata(), rows, values):
                self.assertEqual(got[0], row.turn)
                self.assertAlmostEqual(got[1], value, delta=1e-12)
        with self.assertRaisesRegex(ValueError, "3 are needed, not 2"):
            plot.turns(SIDE, axes[:2])
        pyplot.close("all")

    @unittest.skipUnless(MATPLOTLIB, "matplotlib is not installed")
    def test_changes_of_air_over_the_opening(self):
        import matplotlib

        matplotlib.use("Agg")
        from matplotlib import pyplot
        from tunnelside import plot

        # By hand: half of a wind of 1 m/s through alike openings, of 500 m3.
        side = SIDE.replace(air={"sides": "alike", "wind": 1, "floor_area": 200, "volume": 500, "changes_asked": "30 /h"})
        lines = plot.air(side).lines
        for opening, changes in lines[0].get_xydata():
            self.assertAlmostEqual(changes, 0.5 * side.length * opening / 500 * 3600, delta=1e-6)
        self.assertAlmostEqual(lines[0].get_xdata()[-1], ts.plan_side(side).opening, delta=1e-12)
        self.assertAlmostEqual(lines[1].get_ydata()[0], 30, delta=1e-9)
        with self.assertRaisesRegex(ts.Error, "air.sides"):
            plot.air(SIDE)
        pyplot.close("all")

    @unittest.skipUnless(MATPLOTLIB, "matplotlib is not installed")
    def test_the_roll_over_the_speed_of_the_wind(self):
        import matplotlib

        matplotlib.use("Agg")
        from matplotlib import pyplot
        from tunnelside import plot

        # By hand, plumb, by the plain rule: p = 1.25 V^2/2 x 1.28; the film is an arc of radius R from the bar's b to the rail's t.
        side = SIDE.replace(wind={"rule": "plain", "coefficient": 1.28, "speed": 20})
        plan = ts.plan_side(side)
        out, rise, *marks = plot.wind(side).lines
        self.assertEqual([line.get_xdata()[0] for line in marks], [plan.blowing.flies_speed, 20])
        last = 0.0
        for (speed, stands), (same, rises) in zip(out.get_xydata(), rise.get_xydata()):
            self.assertEqual(speed, same)
            pressure = 1.28 * 1.25 * speed**2 / 2
            pull = math.hypot(plan.blowing.weight, pressure * plan.shut.diameter)
            b = math.atan(pressure * plan.shut.diameter / plan.blowing.weight)
            t = b + plan.blowing.hanging * pressure / pull
            self.assertAlmostEqual(stands, pull / pressure * (math.cos(b) - math.cos(t)), delta=1e-6)
            self.assertAlmostEqual(rises, plan.blowing.hanging - pull / pressure * (math.sin(t) - math.sin(b)), delta=1e-6)
            self.assertGreater(stands, last)
            last = stands
        for none in (SIDE, SIDE.replace(wind={"rule": "given", "coefficient": 1.28, "velocity_pressure": 100})):
            with self.assertRaisesRegex(ValueError, "wind.rule: .* has no speed"):
                plot.wind(none)
        pyplot.close("all")

    def test_without_matplotlib_it_says_so(self):
        code = ("import sys\nsys.modules['matplotlib'] = None\nsys.path[:0] = [%r, %r]\nfrom sides import SIDE\nfrom tunnelside import plot\n"
                "for ask in (plot.air, plot.end_wall, plot.turns):\n    try:\n        ask(SIDE)\n    except ImportError as error:\n        print(error)\n"
                % (str(Path(ts.__file__).parent.parent), str(Path(__file__).parent)))
        said = subprocess.run([sys.executable, "-c", code], stdout=subprocess.PIPE, check=True, universal_newlines=True).stdout
        self.assertEqual(said, "tunnelside.plot draws by matplotlib, which is not installed\n" * 3)


if __name__ == "__main__":
    unittest.main()
