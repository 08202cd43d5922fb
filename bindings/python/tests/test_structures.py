# SPDX-License-Identifier: MIT
"""Structures, enumerations, errors: what Python adds to the C library."""
import copy
import gc
import inspect
import math
import pickle
import sys
import tracemalloc
import unittest

import tunnelside as ts
from sides import SIDE

MADE = [ts.Bow, ts.Line, ts.Travel, ts.Hang, ts.Fixed, ts.Plan, ts.Drawing]  # by a function of the library alone
STRUCTURES = [one for one in (getattr(ts, name) for name in ts.__all__) if isinstance(one, type) and issubclass(one, ts.Structure) and one is not ts.Structure and one not in MADE]


class Structures(unittest.TestCase):
    def test_every_structure_has_its_usual_values(self):
        self.assertGreater(len(STRUCTURES), 30)
        for one in STRUCTURES:
            with self.subTest(one.__name__):
                usual = one()
                seen = set()
                for field in ts.fields(one):
                    if field.name in seen or field.name.endswith("_given"):
                        continue
                    seen.add(field.name)
                    got = getattr(usual, field.name + "_" if field.name in ("yield", "from", "raise") else field.name)
                    if field.optional:
                        self.assertIsNone(got)
                    elif field.type in (0, 1) and field.low > float("-inf"):
                        self.assertIn(got, [row.usual for row in ts.fields(one) if row.name == field.name])
                    elif field.type == 2:
                        self.assertEqual(got.text, field.choices[int(field.usual)])
                    elif field.type == 4:
                        self.assertEqual(got, ())

    def test_repr_pickle_copy_and_hash_keep_all(self):
        plan = ts.plan_side(SIDE)
        bow = ts.bow_make(SIDE.frame)
        for one in (SIDE, plan, plan.drive_end.layout, bow, ts.line_make(bow, SIDE.curtain), ts.Material(grade="given", yield_="350 MPa"), ts.Drive(kind="hand")):
            with self.subTest(type(one).__name__):
                written = [one] if type(one) in MADE else [eval(repr(one), dict(vars(ts), inf=float("inf")))]
                for again in (*written, pickle.loads(pickle.dumps(one)), copy.copy(one), copy.deepcopy(one), one.replace()):
                    self.assertEqual(again, one)
                    self.assertEqual(hash(again), hash(one))
                    self.assertEqual(repr(again), repr(one))
        self.assertNotEqual(SIDE, SIDE.replace(length=30))
        self.assertNotEqual(ts.Round(), ts.KeepOut())
        self.assertEqual(len({SIDE, SIDE.replace(length=30), SIDE.replace()}), 2)

    def test_what_was_made_works_after_pickling(self):
        bow = ts.bow_make(SIDE.frame)
        self.assertEqual(ts.bow_at(pickle.loads(pickle.dumps(bow)), 1.0), ts.bow_at(bow, 1.0))

    def test_what_a_function_makes_is_not_made_by_hand(self):
        """The library follows its counts and indices unchecked: one made up would lead it anywhere."""
        bow = ts.bow_make(SIDE.frame)
        line = ts.line_make(bow, SIDE.curtain)
        travel = ts.travel_make(line, SIDE.curtain, ts.Roll(core=0.04), SIDE.stops)
        hang, _ = ts.hang_make(travel, SIDE.drive_end.guide, ts.Collar(), 5.2, 2.2, 0.0)
        fixed = ts.fixed_make(travel, SIDE.drive_end.guide, ts.Footing(), ts.Collar(), 0.0, 2.2, 0.0)
        plan = ts.plan_side(SIDE)
        made = (bow, line, travel, hang, fixed, plan, ts.draw(SIDE, plan, ts.Picture()))
        self.assertEqual([type(one) for one in made], [one for one in (getattr(ts, name) for name in ts.__all__) if isinstance(one, type) and issubclass(one, ts.Structure) and one._maker])
        self.assertEqual([type(one) for one in made], MADE)
        for one, maker in zip(made, "bow_make line_make travel_make hang_make fixed_make plan_side draw".split()):
            with self.subTest(type(one).__name__):
                name = type(one).__name__
                values = one.asdict()
                for act in (lambda: type(one)(), lambda: type(one)(**values), lambda: one.replace(**values), lambda: type(one).__new__(type(one)),
                            lambda: ts.Structure.__base__.__new__(type(one))):
                    with self.assertRaisesRegex(TypeError, f"{name}'> is made by {maker}\\(\\), and never by hand"):
                        act()
                self.assertTrue(repr(one).startswith(f"<{name}("))
        for act in (lambda: object.__new__(ts.Bow), lambda: ts.Structure(), lambda: ts.Structure.__base__()):
            with self.assertRaises((TypeError, AttributeError)):
                act()

    def test_a_text_cut_within_a_character(self):
        """C cuts a path by bytes: a field of 63 bytes and then half a character."""
        for length in range(50, 70):
            for act in (lambda: ts.field_find(ts.Side, "x" * length + "\u00e9\u20ac\U0001f33f" * 9), lambda: ts.plan_many({"x" * length + "\u20ac" * 9: [1.0]}, base=SIDE),
                        lambda: ts.Roll(core="1 " + "x" * length + "\u20ac" * 40), lambda: ts.tube_size("x" * length + "\u20ac" * 40)):
                with self.assertRaises(ts.Error) as caught:
                    act()
                str(caught.exception), caught.exception.field, pickle.dumps(caught.exception)

    def test_units_of_its_own_are_not_lost(self):
        class Feet:
            units = "ft"

            def __float__(self):
                return 5.0

        class Metres(float):
            unit = "m"

        for wrong in (Feet(), Metres(5)):
            with self.assertRaisesRegex(TypeError, "core: .*units of its own"):
                ts.Roll(core=wrong)
            with self.assertRaisesRegex(TypeError, "taken_up: .*units of its own"):
                ts.roll_wraps(ts.Roll(core=0.05), wrong)

    def test_nothing_changes(self):
        roll = ts.Roll(core=0.05)
        with self.assertRaises(AttributeError):
            roll.core = 1
        with self.assertRaises(AttributeError):
            roll.cor = 1
        with self.assertRaises(AttributeError):
            del roll.core
        more = roll.replace(core="2 in")
        self.assertEqual((roll.core, more.core, more.packing), (0.05, 0.0508, roll.packing))

    def test_a_mistyped_field_names_the_nearest(self):
        with self.assertRaisesRegex(TypeError, r"Roll has no field 'thicknes'; did you mean 'thickness'\?"):
            ts.Roll(thicknes=1)
        with self.assertRaisesRegex(TypeError, r"Guide has no field 'marign'; did you mean 'margin'\?"):
            SIDE.replace(drive_end={"guide": {"marign": 1}})
        with self.assertRaisesRegex(TypeError, "it has core, thickness, packing"):
            ts.Roll(zzz="green")

    def test_quantities_are_numbers_or_texts(self):
        self.assertEqual(ts.Roll(core="1 3/8 in").core, 0.034925)
        self.assertEqual(ts.roll_taken_up(ts.Roll(core="2 in"), "2 turns"), ts.roll_taken_up(ts.Roll(core=0.0508), 2))
        self.assertEqual(ts.Extender(angle="45 deg").angle, ts.quantity_read("45 deg", "rad"))
        for typed, plain in (("30 ft-lb", "30 lbf ft"), ("30 lb-ft", "30 lbf ft"), ("30 ft-lbs", "30 lbf ft")):
            self.assertEqual(ts.quantity_read(typed, "N m"), ts.quantity_read(plain, "N m"))
        for typed in ("5' - 2\"", "5\u2032 2\u2033", "5\u2018 2\u201c", "5\u2019-2\u201d", "62 inches"):
            self.assertEqual(ts.Curtain(hip=typed, sill="0.3 m").hip, 1.5748)
        self.assertEqual(ts.quantity_read("15 lbs", "N"), ts.quantity_read("15 lbf", "N"))
        self.assertEqual(ts.Roll(core="2 in", thickness="6 mil").thickness, ts.quantity_read("0.006 in", "m"))
        self.assertEqual(ts.Side(hand="Left").hand, ts.Hand.LEFT)
        for text in ("200 um", "200 \u00b5m", "200 \u03bcm"):
            self.assertEqual(ts.Curtain(thickness=text, sill="0.3 m").thickness, 200e-6)
        with self.assertRaises(ts.Error) as caught:
            ts.Curtain(hip="5\u2032 2\u2033 x")
        self.assertEqual((caught.exception.index, caught.exception.field), (6, "hip"))  # of the text, in Python's characters
        with self.assertRaisesRegex(ts.Error, "hip: .* mil is read of film's thickness alone"):
            ts.Curtain(hip="60 mil")

    def test_what_is_typed_for_a_field(self):
        film, hand = ts.field_find(ts.Side, "curtain.thickness"), ts.field_find(ts.Side, "hand")
        self.assertTrue(film.film)
        self.assertEqual(ts.field_read(film, "6 mil"), ts.quantity_read("0.006 in", "m"))
        self.assertEqual(ts.field_read(hand, "Left"), ts.Hand.LEFT)
        self.assertEqual([row.name for row in ts.fields(ts.Curtain) if row.film], ["thickness"])
        for field, text in ((hand, "up"), (ts.field_find(ts.Side, "curtain"), "1"), (ts.field_find(ts.Side, "bar.splices"), "1")):
            with self.assertRaises(ts.Error) as caught:
                ts.field_read(field, text)
            self.assertEqual(caught.exception.status, ts.Status.NOT_FOUND)
        with self.assertRaises(TypeError):
            ts.field_read(film, 6)  # type: ignore[arg-type]
        for wrong in ("2 lb", "2", "two", "2 in\0", ""):
            with self.assertRaises(ValueError, msg=wrong):
                ts.Roll(core=wrong)
        with self.assertRaises(ts.Error) as caught:
            ts.Roll(core="2 kg")
        self.assertEqual((caught.exception.status, caught.exception.field, caught.exception.index), (ts.Status.UNREADABLE, "core", 2))
        for wrong in ([], None, b"2 in", 1j):
            with self.assertRaisesRegex(TypeError, "core: a number, or a text with its unit"):
                ts.Roll(core=wrong)

    def test_choices_are_members_numbers_or_texts(self):
        for given in ("hip", ts.Hung.HIP, 1):
            self.assertIs(ts.End(hung=given).hung, ts.Hung.HIP)
        self.assertEqual((str(ts.Hung.HIP), ts.Hung("hip"), ts.Hung("HIP"), ts.Grade("6061_T6")), ("hip", ts.Hung.HIP, ts.Hung.HIP, ts.Grade.GRADE_6061_T6))
        with self.assertRaisesRegex(ts.Error, "extender, hip"):
            ts.End(hung="door")
        with self.assertRaisesRegex(ts.Error, "hung: 7 is not one of the choices 0 to 1"):
            ts.End(hung=7)
        with self.assertRaisesRegex(ValueError, "'door' is no Hung"):
            ts.Hung("door")
        with self.assertRaises(TypeError):
            ts.End(hung=1.5)

    def test_absent_is_none(self):
        self.assertIsNone(ts.Drive().stall_torque)
        self.assertEqual(ts.Drive(stall_torque=150).stall_torque, 150)
        self.assertIsNone(ts.Drive(stall_torque=150).replace(stall_torque=None).stall_torque)
        on_hip = SIDE.replace(free_end=SIDE.free_end.replace(hung="hip", guide={"chain": 0.05}))
        self.assertIsNone(ts.plan_side(on_hip).free_end.layout)
        self.assertIsInstance(ts.plan_side(on_hip).drive_end.layout, ts.Layout)

    def test_usual_values_follow_choices_that_are_given(self):
        self.assertNotEqual(ts.Drive(kind="hand").mass, ts.Drive(kind="motor").mass)
        self.assertEqual(ts.Drive(mass=3, kind="hand").mass, 3)
        self.assertEqual(ts.Side(drive={"kind": "hand"}).drive, ts.Drive(kind="hand"))
        self.assertEqual(ts.usual_by_choice(ts.Drive().replace(kind="hand")), ts.Drive(kind="hand"))

    def test_lists_and_groups(self):
        end = ts.End(keep_outs=[ts.KeepOut(inner=1, outer=2, bottom=0, top=1), dict(inner=3, outer=4, bottom=0, top=1)])
        self.assertEqual([one.inner for one in end.keep_outs], [1, 3])
        self.assertEqual(end.asdict()["keep_outs"][1], dict(inner=3, outer=4, bottom=0, top=1))
        self.assertEqual(ts.End(**end.asdict()), end)
        with self.assertRaisesRegex(ts.Error, "keep_outs: 9 is above 8"):
            ts.End(keep_outs=[{}] * 9)
        for wrong in (dict(guide=ts.Roll()), dict(guide=1), dict(keep_outs=[1]), dict(keep_outs=1)):
            with self.assertRaises(TypeError):
                ts.End(**wrong)
        self.assertEqual(SIDE.replace(curtain={"hip": 1.6}).curtain, SIDE.curtain.replace(hip=1.6))

    def test_another_structure_is_refused(self):
        for wrong in (ts.Curtain(), None, 3, "roll", object()):
            with self.assertRaisesRegex(TypeError, "roll: a structure of tside_roll"):
                ts.roll_wraps(wrong, 1)
        with self.assertRaises(TypeError):
            ts.Roll(0.05)
        with self.assertRaisesRegex(TypeError, "not derived from"):
            type("Mine", (ts.Roll,), {})
        self.assertIs(type(ts.Roll()), ts.Roll)
        with self.assertRaises(TypeError):
            type("Mine", (ts.Structure.__base__,), {"_kind": 10 ** 6})()

    def test_numbers_that_may_be_none(self):
        bow = ts.bow_make(SIDE.frame)
        line = ts.line_make(bow, SIDE.curtain)
        travel = ts.travel_make(line, SIDE.curtain, ts.Roll(core=0.04), SIDE.stops)
        load = ts.Load(length=29, bar_mass=2)
        self.assertEqual(ts.lift_at(travel, load, None, 1).drive, ts.lift_at(travel, load, None, 1).up)
        with self.assertRaises(TypeError):
            ts.guide_lean(travel, None, 1)
        with self.assertRaises(TypeError):
            ts.lift_at(travel, None, None, 1)

    def test_every_field_says_what_it_is(self):
        for one in STRUCTURES + MADE:
            for field in ts.fields(one):
                if not field.name.endswith("_given"):
                    attribute = inspect.getattr_static(one, field.name + "_" if field.name in ("yield", "from", "raise") else field.name)
                    self.assertTrue(attribute.__doc__, (one, field.name))
                    if field.type == 0 and field.unit:
                        self.assertTrue(attribute.__doc__.startswith(field.unit + ", ") or one.__name__ == "Friction", (one, field.name, attribute.__doc__))
            self.assertEqual(len(inspect.signature(one).parameters) > 0, one not in MADE)

    def test_lists_of_any_length(self):
        turns = ts.plan_turns(SIDE)
        self.assertGreater(len(turns), 5)
        thin = SIDE.replace(bar={"tube": {"diameter": 0.02, "wall": 0.002}, "core_over": 0}, curtain={"thickness": 1e-5, "hip": 1.74, "sill": 0.3}, stops={"wraps_shut": 0})
        thin = thin.replace(frame={"leg_height": 5.75, "peak_height": 7.7}, curtain={"hip": 5.7}, drive_end={"extender": {"member_height": 5}}, free_end={"extender": {"member_height": 5}})
        many = ts.plan_turns(thin)
        self.assertGreater(len(many), 64)
        self.assertEqual([round(one.turn) for one in many[:-1]], list(range(len(many) - 1)))


    def test_lists_that_are_asked_and_lists_that_answer(self):
        side = SIDE.replace(drive={"kind": "motor"})
        drives = [side.drive.replace(rated_torque=torque) for torque in (1, 500, 60, *range(70, 110))]
        index, choices = ts.drive_smallest(side, drives)
        self.assertEqual((index, len(choices)), (2, len(drives)))
        self.assertIsInstance(choices[0], ts.DriveChoice)
        self.assertEqual(len({repr(one) for one in choices[:3]}), 3)
        with self.assertRaises(ts.Error) as caught:
            ts.drive_smallest(side, drives[:1])
        self.assertEqual((caught.exception.status, len(caught.exception.answers[1])), (ts.Status.OUT_OF_REACH, 1))
        self.assertEqual(caught.exception.answers[1][0].fit, ts.DriveFit.FAILS)
        with self.assertRaises(ts.Error) as caught:
            ts.drive_smallest(side, [])
        self.assertIsNone(caught.exception.answers)
        for wrong in ([ts.Roll()], 3, [None]):
            with self.assertRaises(TypeError):
                ts.drive_smallest(side, wrong)

    def test_what_is_not_known_is_none(self):
        side = SIDE.replace(drive={"rated_torque": None}, drive_end={"extender": {"stock": None}})
        plan, known = ts.plan_side(side), ts.plan_side(SIDE)
        self.assertEqual((plan.drive_utilisation, plan.longest_side), (None, None))
        self.assertEqual(plan.design_torque, known.design_torque)
        self.assertGreater(known.longest_side, 0)
        many = ts.plan_many({"length": [20.0, 30.0]}, base=side, outputs=["longest_side", "design_torque"])
        self.assertTrue(all(math.isnan(value) for value in many["longest_side"]))
        self.assertGreater(min(many["design_torque"]), 0)


class Errors(unittest.TestCase):
    def test_what_an_error_tells(self):
        with self.assertRaises(ts.Error) as caught:
            ts.roll_wraps(ts.Roll(core=-0.02), 1)
        error = caught.exception
        self.assertIsInstance(error, ValueError)
        self.assertEqual(str(error), ts.fault_text(error))
        self.assertTrue(str(error).startswith("roll.core: -0.02 m is"))
        self.assertEqual((error.status, error.field, error.other, error.value, error.unit, error.row, error.index), (ts.Status.OUT_OF_BOUNDS, "roll.core", None, -0.02, "m", None, None))
        self.assertIsInstance(error.relation, ts.Relation)
        self.assertGreaterEqual(error.bound, 0)
        again = pickle.loads(pickle.dumps(error))
        self.assertEqual((str(again), again.field, again.bound), (str(error), error.field, error.bound))

    def test_a_refusal_names_its_field_whole(self):
        keep_out = {"inner": 1, "outer": 2, "top": 2}
        for values, field in (({"bar": {"joints": "glued"}}, "bar.joints"), ({"bar": {"joints": 7}}, "bar.joints"), ({"bar": {"play": "2 kg"}}, "bar.play"),
                              ({"bars": [{}, {"screws": 1, "joints": 7}]}, "bars[1].joints"), ({"drive_end": {"guide": {"foot": 9}}}, "drive_end.guide.foot"),
                              ({"drive_end": {"keep_outs": [keep_out] * 99}}, "drive_end.keep_outs"),
                              ({"free_end": {"keep_outs": [keep_out, {"inner": "3 q"}]}}, "free_end.keep_outs[1].inner")):
            for make in (ts.Side, SIDE.replace):
                with self.assertRaises(ts.Error) as caught:
                    make(**values)
                self.assertEqual(caught.exception.field, field)
                self.assertTrue(str(caught.exception).startswith(field + ": "), str(caught.exception))
                again = pickle.loads(pickle.dumps(caught.exception))
                self.assertEqual((str(again), again.field, again.status), (str(caught.exception), field, caught.exception.status))

    def test_where_no_value_fits_there_is_no_bound(self):
        with self.assertRaisesRegex(ts.Error, "no value of it fits") as caught:
            ts.plan_side(SIDE.replace(bar={"tube": {"diameter": 0.9}}))
        self.assertEqual((caught.exception.relation, caught.exception.bound), (ts.Relation.NONE_FITS, None))
        self.assertGreater(caught.exception.value, 0)

    def test_not_finite_has_no_value(self):
        with self.assertRaisesRegex(ts.Error, "not a finite number") as caught:
            ts.roll_wraps(ts.Roll(core=0.02), float("nan"))
        self.assertEqual((caught.exception.value, caught.exception.bound, caught.exception.relation), (None, None, ts.Relation.NOT_FINITE))

    def test_gap_and_contradiction(self):
        with self.assertRaises(ts.Error) as caught:
            ts.plan_side(SIDE.replace(drive_end={"guide": {"margin": 5}}))
        error = caught.exception
        self.assertEqual(error.status, ts.Status.CONTRADICTS)
        self.assertEqual(error.field, "drive_end.guide.margin")
        self.assertLess(error.gap, 0)
        self.assertIsNone(error.remedy)

    def test_remedy(self):
        with self.assertRaises(ts.Error) as caught:
            ts.plan_side(SIDE.replace(curtain={"past": 0.3}))
        error = caught.exception
        self.assertEqual((error.field, error.other), ("curtain.past", "drive_end.extender.eye_stand_off"))
        extender = SIDE.drive_end.extender
        self.assertAlmostEqual(error.remedy, extender.eye_stand_off + 0.3 - error.bound, 12)
        self.assertEqual(pickle.loads(pickle.dumps(error)).remedy, error.remedy)
        end = {"extender": {"eye_stand_off": error.remedy}}
        ts.plan_side(SIDE.replace(curtain={"past": 0.3}, drive_end=end, free_end=end))

    def test_check(self):
        self.assertIsNone(ts.check(SIDE))
        with self.assertRaisesRegex(ts.Error, "length: 0 m is not above 0 m"):
            ts.check(ts.Side())
        with self.assertRaises(TypeError):
            ts.check(ts.bow_make(SIDE.frame))

    def test_fields(self):
        margin = ts.field_find(ts.Side, "drive_end.guide.margin")
        self.assertEqual((margin.name, margin.unit), ("margin", "m"))
        with self.assertRaises(ts.Error):
            ts.field_find(ts.Side, "drive_end.guide.colour")
        placed = {field.name: field for field in ts.fields(ts.End)}
        self.assertFalse(ts.field_applies(placed["eye_outboard"], ts.End()))
        self.assertTrue(ts.field_applies(placed["eye_outboard"], ts.End(placed="given")))
        self.assertIs(placed["guide"].structure, ts.Guide)

    def test_trades(self):
        for of_walls, read in ((False, ts.tube_size), (True, ts.tube_wall)):
            sizes = ts.trades(of_walls)
            self.assertGreater(len(sizes), 10)
            for one in sizes:
                self.assertEqual(read(f"{one.family} {one.name}"), one.value)


class Memory(unittest.TestCase):
    """Nothing grows, whether calls succeed or fail."""

    @unittest.skipUnless(hasattr(sys, "gettotalrefcount") or sys.implementation.name == "cpython", "counts CPython's blocks")
    def test_no_growth(self):
        def fails(act):
            try:
                act()
            except (ValueError, TypeError):
                return
            raise AssertionError("did not fail")

        def round_():
            side = SIDE.replace(length=30, bars=[SIDE.bar, dict(splices=2, tube=dict(diameter=0.04, wall=0.002))], drive={"stall_torque": None})
            plan = ts.plan_side(side)
            plan.drive_end.layout.binding, plan.lines, plan.findings, repr(plan), hash(side), side.asdict()
            ts.plan_turns(side)
            ts.quantity_read("5 ft", "m"), ts.length_write(1.6, "INCHES", 16), ts.trades(), ts.finding_text(plan.findings[0])
            ts.extender_strength(side.drive_end.extender, plan.drive_end.layout, 100, 50, 10, 0, 0, "DRIVE_END")
            ts.plan_many({"length": [20.0, -1.0, None], "hand": ["left", "right", "left"]}, base=side, workers=2)
            fails(lambda: ts.plan_side(side.replace(length=-1)))
            fails(lambda: ts.plan_turns(side.replace(length=-1)))
            fails(lambda: ts.roll_wraps(side, 1))
            fails(lambda: ts.drive_smallest(side, [side.drive.replace(rated_torque=1)] * 3))
            fails(lambda: ts.drive_smallest(side, []))
            ts.drive_smallest(side, [side.drive] * 3)
            fails(lambda: side.replace(lenght=1))
            fails(lambda: side.replace(hand="up"))
            fails(lambda: side.replace(bars=[1]))
            fails(lambda: ts.plan_many({"length": [20.0, -1.0]}, base=side, errors="raise"))
            fails(lambda: ts.plan_many({"length": [20.0], "colour": 1}, base=side))
            fails(lambda: ts.plan_many({"length": [20.0]}, base=side, out={"opening": b"12345678"}))

        for _ in range(20):
            round_()
        gc.collect()  # empties the interpreter's lists of free tuples, which hold thousands
        before = sys.getallocatedblocks()
        for _ in range(100):
            round_()
        gc.collect()
        self.assertLess(sys.getallocatedblocks() - before, 60)
        tracemalloc.start()
        try:
            round_()
            before = tracemalloc.get_traced_memory()[0]
            for _ in range(20):
                round_()
            gc.collect()
            self.assertLess(tracemalloc.get_traced_memory()[0] - before, 20000)  # a side alone has 5000 bytes
        finally:
            tracemalloc.stop()


if __name__ == "__main__":
    unittest.main()
