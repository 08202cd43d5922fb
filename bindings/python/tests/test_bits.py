# SPDX-License-Identifier: MIT
"""Every public function, called from Python and from C on the same arguments, answers with the same bits; a function without a call fails."""
import ctypes
import keyword
import os
import struct
import sys
import unittest
from pathlib import Path

import tunnelside as ts

if "BUILD" not in os.environ:
    raise unittest.SkipTest("calls the library of a build, which is not there")
TOP, BUILD = Path(os.environ["top_srcdir"]), Path(os.environ["BUILD"])
sys.path.insert(0, str(TOP / "bindings" / "python"))
from generate import BY_HAND, class_name  # noqa: E402
from records import Records  # noqa: E402

RECORDS = Records(os.environ["RECORDS"])
LIBRARY = next((BUILD / "lib" / ".libs").glob("libtunnelside.so"), None)
if not LIBRARY:
    raise unittest.SkipTest("calls the shared library, which is not built")
C = ctypes.CDLL(str(LIBRARY))
ENUMS = {one.name for one in RECORDS.of("enum")}
CONSTANTS = {one.name: int(one.value) for one in RECORDS.of("constant")}
PLAIN = {"double": ctypes.c_double, "int": ctypes.c_int, "unsigned": ctypes.c_uint, "size_t": ctypes.c_size_t, "char": ctypes.c_char, "ptrdiff_t": ctypes.c_ssize_t}
MEMBERS = {one.name: RECORDS.of("member", owner=one.name) for one in RECORDS.of("struct")}


# --- C's structures, as the records of the headers have them ---


def base_of(c_type):
    return c_type.replace("const", "").replace("*", "").strip()


def c_class(name, made={}):
    if name in ENUMS:
        return ctypes.c_int
    if name in PLAIN:
        return PLAIN[name]
    if name not in made:
        fields = []
        for one in MEMBERS[name]:
            kind = ctypes.c_char_p if "*" in one.type and "char" in one.type else ctypes.c_void_p if "*" in one.type else c_class(base_of(one.type))
            fields.append((one.name, kind * (CONSTANTS.get(one.dimension) or int(one.dimension)) if one.dimension else kind))
        made[name] = type(name, (ctypes.Structure,), {"_fields_": fields})
    return made[name]


def shown(python, name):
    """What Python has of a member, whose name may be a word of Python's; None where it does not show it."""
    return getattr(python, f"{name}_" if keyword.iskeyword(name) else name, None)


def fill(there, given):
    """C's structure from Python's: what Python has as None is not given."""
    names = {name for name, _ in there._fields_}
    for name, kind in there._fields_:
        value = shown(given, name)
        if value is None:
            continue
        if f"{name}_given" in names:
            setattr(there, f"{name}_given", 1)
        if issubclass(kind, ctypes.Structure):
            fill(getattr(there, name), value)
        elif issubclass(kind, ctypes.Array):
            setattr(there, next(count for count in (f"{name}_count", f"{name[:-1]}_count") if count in names), len(value))
            for at, one in enumerate(value):
                fill(getattr(there, name)[at], one)
        else:
            setattr(there, name, value)
    return there


def of_c(c_name, given):
    return fill(c_class(c_name)(), given)


def bits(value):
    return struct.pack("d", value) if isinstance(value, float) else value


def compare(case, python, there, where):
    """Every number that Python shows of an answer; returns how many there are."""
    if isinstance(there, bytes) or isinstance(python, str):
        case.assertEqual(python, there.decode(), where)
        return 1
    if isinstance(there, ctypes.Structure):
        found = 0
        for name, _ in there._fields_:
            value = shown(python, name)
            if value is not None:
                found += compare(case, value, getattr(there, name), f"{where}.{name}")
        return found
    if isinstance(there, (ctypes.Array, list)):
        return sum(compare(case, one, there[at], f"{where}[{at}]") for at, one in enumerate(python))
    case.assertEqual(bits(float(python) if isinstance(there, float) else int(python)), bits(there), where)
    return 1


# --- what the functions are asked: the same in both, and what one makes another takes ---

SITE = ts.load(TOP / "examples" / "sites" / "film30.json")[0]
SIDE = SITE.side
EYE = SIDE.curtain.hip + SIDE.drive_end.rise
ROLL = ts.Roll(core=0.036, thickness=0.00015, packing=1.15)
GIVEN = {
    "tside_side": SIDE, "tside_frame": SIDE.frame, "tside_curtain": SIDE.curtain, "tside_roll": ROLL, "tside_stops": SIDE.stops, "tside_drive": SIDE.drive, "tside_cable": SIDE.cable,
    "tside_crank": ts.Crank(fitted="crank", ratio=10.0), "tside_guide": SIDE.drive_end.guide, "tside_footing": ts.Footing(), "tside_extender": SIDE.drive_end.extender, "tside_collar": SIDE.collar,
    "tside_bar": SIDE.bar, "tside_round": SIDE.bar.tube, "tside_square": SIDE.drive_end.extender.tube, "tside_material": SIDE.bar.material, "tside_fittings": ts.Fittings(),
    "tside_load": ts.Load(length=30.0, bar_mass=1.6, areal_mass=0.14), "tside_picture": ts.Picture(),
    "tside_bolt": ts.Bolt(size="M10", grip=0.05, force=900.0), "tside_bolt_part": ts.BoltPart(wall=0.003, material=ts.Material(grade="S235")),
    "tside_along": ts.Along(bow=SIDE.frame.tube.diameter, tube=SIDE.drive_end.extender.tube.side, past=SIDE.curtain.past, half_length=SIDE.drive.half_length, clearance=SIDE.drive.clearance),
    "tside_wind": ts.Wind(rule="plain", coefficient=1.28, speed=20.0), "tside_span": ts.Span(chord=1.2, load=200.0, by="stretch", stiffness=2e4),
    "tside_rope": ts.Rope(upper_x=4.61, lower_x=4.61, upper_y=1.52, pitch=2.0, line=ts.Give(by="stretch", stiffness=2e4), rope_limit=700.0),
    "tside_loose": ts.Loose(hanging=1.1, roll=0.04, weight=12.0), "tside_air": ts.Air(sides="one", warmth="sun", sun=900.0, transmission=0.8, evaporation=0.5, floor_area=240.0, cover_area=500.0, cover_loss=6.0, volume=700.0),
    "tside_bay": ts.Bay(pressure=200.0, pitch=2.0, hanging=1.1, roll=0.04, weight=12.0, film_stiffness=2e4, screw_spacing=0.3, tube=SIDE.bar.tube, material=ts.Material(grade="S235")),
}
NUMBERS = {
    "metres": 1.6, "density": 7850.0, "arc": 0.4, "height": 1.2, "x": 0.0, "y": 1.5, "angle": 0.1, "distance": 0.7, "wraps": 3.5, "taken_up": 0.4, "core": 0.036, "wraps_before": 1.0, "turns": 2.5,
    "underside": 0.7, "running": 14.0, "voltage": 24.0, "current": 3.0, "drop": 2.0, "torque": 12.0, "drive_turns": 8.0, "eye_x": 4.8, "eye_y": EYE, "misfit": 0.01, "collar_offset": 0.1,
    "hip": SIDE.curtain.hip, "available": 20.0, "per_metre": 0.4, "length": 30.0, "shear_modulus": 8e10, "torsion": 1e-8, "ground": 0.0, "net": 200.0, "pressure": 150.0, "force": 40.0, "weight": 60.0,
    "wind_eye": 1.0, "wind_tube": 2.0, "outboard": 40.0, "inboard": 5.0, "opening": 0.9, "curtain": 30.0, "beyond_drive": 0.1, "beyond_free": 0.15,
    "code": 0, "status": 1, "part": 16, "place": 3, "number": 2,
}
TEXTS = {"unit": "m", "text": "5 ft 3 1/2 in", "letters": "AB", "title": "a <title>"}
CHOICES = {"style": ts.Style.FEET_AND_INCHES, "loading": ts.Loading(0), "end": ts.WhichEnd.DRIVE_END, "tape": ts.Tape(0), "code": ts.ItemCode.EXTENDER, "at": ts.ItemAt.DRIVE_END}
ROOM = 1 << 16  # bytes, or elements

STOCK, CUTS = ts.Stock(lengths=(ts.StockLength(length=6.0),)), [ts.Cut(length=2.5, count=4), ts.Cut(length=0.9, count=3)]
KINDS = {one.name: int(one.value) for one in RECORDS.of("name", owner="tside_kind")}
class Pair:
    """An argument as Python takes it, and as C does."""

    def __init__(self, python, there):
        self.python, self.there = python, there


class Bits(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.arguments = {}
        for one in RECORDS.of("argument"):
            cls.arguments.setdefault(one.owner, []).append(one)
        cls.functions = {one.name: one for one in RECORDS.of("function")}
        cls.pairs = {name: Pair(given, of_c(name, given)) for name, given in GIVEN.items()}
        cls.heard = set()

    def pair(self, one, more):
        """What is given for an argument."""
        name = base_of(one.type)
        if one.name in more:
            given = more[one.name]
            return given if isinstance(given, Pair) else Pair(given, of_c(name, given) if name in MEMBERS else given)
        if name in self.pairs:
            return self.pairs[name]
        value = CHOICES[one.name] if name in ENUMS else TEXTS[one.name] if name == "char" else NUMBERS[one.name]
        return Pair(value, int(value) if name in ENUMS else value.encode() if isinstance(value, str) else value)

    def call(self, name, **more):
        """Calls a function twice; answers with pairs of what it answers, by name."""
        record, python, there, outs, kinds = self.functions[name], [], {}, [], []
        for one in self.arguments[name]:
            base = base_of(one.type)
            if one.direction == "fault":
                there[one.name] = c_class("tside_fault")()
            elif one.name in there:
                pass
            elif one.direction == "in" and one.form == "list":
                list_given = more[one.name]
                python.append(list_given)
                there[one.name] = (c_class(base) * len(list_given))(*[of_c(base, each) for each in list_given])
                there[one.partners] = len(list_given)
            elif one.direction == "in":
                pair = self.pair(one, more)
                python.append(pair.python)
                there[one.name] = pair.there
            elif one.form == "text":
                there[one.name] = ctypes.create_string_buffer(ROOM)
                size, *needed = one.partners.split()
                there[size] = ROOM
                there.update({each: ctypes.c_size_t() for each in needed})
                outs.append((one.name, lambda buffer=there[one.name]: buffer.value))
            elif one.form in ("room", "each"):
                partners = one.partners.split()
                rows = (c_class(base) * ROOM)()
                there[one.name] = rows
                if one.form == "room":
                    there.update({partners[0]: ROOM, partners[1]: ctypes.c_int()})
                    count = lambda at=there[partners[1]]: at.value
                else:
                    count = lambda length=len(more[partners[0]]): length
                outs.append((one.name, lambda rows=rows, count=count: [rows[i] for i in range(count())]))
            else:
                there[one.name] = c_class(base)()
                outs.append((one.name, lambda at=there[one.name]: at if isinstance(at, ctypes.Structure) else at.value))
        function = getattr(C, name)
        returns = base_of(record.returns)
        function.restype = ctypes.c_char_p if "char" in record.returns else c_class(returns) if returns in MEMBERS or returns in PLAIN else ctypes.c_int
        given = [there[one.name] for one in self.arguments[name]]
        passed = [ctypes.byref(at) if isinstance(at, (ctypes.Structure, ctypes._SimpleCData)) else ctypes.c_double(at) if isinstance(at, float) else at for at in given]
        result = function(*passed)
        answers = {label: read() for label, read in outs}
        if record.returns == "tside_status":
            self.assertEqual(result, 0, f"{name}: {there['fault'].field.decode() if 'fault' in there else ''}")
        elif not (returns == "size_t"):
            answers["result"] = result
        got = getattr(ts, name[len("tside_"):])(*python)
        gots = [got] if len(answers) == 1 else list(got)
        self.assertEqual(len(gots), len(answers), name)
        for one, (label, answer) in zip(gots, answers.items()):
            self.assertGreater(compare(self, one, answer, f"{name}.{label}"), 0, name)
        self.heard.add(name)
        return {label: Pair(one, answer) for one, (label, answer) in zip(gots, answers.items())}

    def make(self, name, label, **more):
        self.pairs[f"tside_{label}"] = self.call(name, **more)[label]
        return self.pairs[f"tside_{label}"]

    def test_every_function(self):
        for one in ("bow", "line", "travel"):
            self.make(f"tside_{one}_make", one)
        self.make("tside_hang_make", "hang")
        self.make("tside_fixed_make", "fixed")
        self.make("tside_extender_layout", "layout")
        plan = self.make("tside_plan_side", "plan")
        drawing = self.make("tside_draw", "drawing")
        self.pairs["tside_finding"] = Pair(plan.python.findings[0], plan.there.findings[0])
        self.pairs["tside_dimension"] = Pair(drawing.python.dimensions[0], drawing.there.dimensions[0])
        self.pairs["tside_note"] = Pair(drawing.python.notes[0], drawing.there.notes[0])
        own = {
            "tside_tube_size": {"text": Pair("fence 1-3/8 in", b"fence 1-3/8 in")}, "tside_tube_wall": {"text": Pair("bwg 14", b"bwg 14")},
            "tside_bar_smallest": {"side": SIDE.replace(bars=(SIDE.bar, SIDE.bar))}, "tside_drive_smallest": {"drives": [SIDE.drive, SIDE.drive]},
            "tside_bar_sticks": {"bar": SIDE.bar.replace(joints="stock", stock=7.3)}, "tside_loose_blown": {"pressure": 5.0},
            "tside_stock_fill": {"stock": STOCK, "length": 6.0, "cuts": CUTS},
        }
        for name in set(self.functions) - self.heard - set(BY_HAND) - {"tside_version"}:
            with self.subTest(name):
                self.call(name, **own.get(name, {}))
        self.version_and_faults()
        self.tables()
        self.usual_values()
        self.many_sides()
        self.cut_plan()
        self.assertEqual(set(self.functions) - self.heard, set())

    # --- what Python has in another form ---

    def ask(self, name, *given, restype=ctypes.c_int):
        function = getattr(C, name)
        function.restype = restype
        self.heard.add(name)
        return function(*[ctypes.byref(one) if isinstance(one, (ctypes.Structure, ctypes.c_int, ctypes.c_double)) else one for one in given])

    def version_and_faults(self):
        self.assertEqual(ts.version(), self.ask("tside_version", restype=ctypes.c_char_p).decode())
        bad, fault, text = SIDE.replace(length=-1.0), c_class("tside_fault")(), ctypes.create_string_buffer(ROOM)
        self.assertNotEqual(self.ask("tside_check", KINDS["TSIDE_KIND_SIDE"], of_c("tside_side", bad), fault), 0)
        self.ask("tside_fault_text", fault, text, ctypes.c_size_t(ROOM), restype=ctypes.c_size_t)
        with self.assertRaises(ts.Error) as caught:
            ts.check(bad)
        self.assertEqual([str(caught.exception), ts.fault_text(caught.exception)], [text.value.decode()] * 2)
        self.assertEqual([bits(caught.exception.value), bits(caught.exception.bound)], [bits(fault.value), bits(fault.bound)])

    def row(self, pointer):
        return ctypes.cast(pointer, ctypes.POINTER(c_class("tside_field"))).contents

    def same_row(self, python, there):
        self.assertEqual((python.name, python.meaning, python.unit), (there.name.decode(), there.meaning.decode(), there.unit.decode()))
        self.assertEqual([bits(float(one)) for one in (python.low, python.high)], [bits(there.low), bits(there.high)], python.name)

    def place(self, kind, path):
        place = c_class("tside_place")()
        self.assertEqual(self.ask("tside_field_find", KINDS[kind], path.encode(), place, c_class("tside_fault")()), 0)
        return place

    def tables(self):
        count, field = ctypes.c_int(), c_class("tside_field")
        rows = ctypes.cast(self.ask("tside_fields", KINDS["TSIDE_KIND_CURTAIN"], count, restype=ctypes.c_void_p), ctypes.POINTER(field))
        self.assertEqual(len(ts.fields(ts.Curtain)), count.value)
        for at, one in enumerate(ts.fields(ts.Curtain)):
            self.same_row(one, rows[at])
        hip, there = ts.field_find(ts.Side, "curtain.hip"), self.place("TSIDE_KIND_SIDE", "curtain.hip")
        self.same_row(hip, self.row(there.field))
        read = ctypes.c_double()
        self.assertEqual(self.ask("tside_field_read", ctypes.c_void_p(there.field), b"5 ft 3 1/2 in", read, c_class("tside_fault")()), 0)
        self.assertEqual(bits(ts.field_read(hip, "5 ft 3 1/2 in")), bits(read.value))
        for path, frame in (("foot_x", ts.Frame()), ("foot_x", ts.Frame(shape="three_points"))):
            row = self.place("TSIDE_KIND_FRAME", path).field
            applies = self.ask("tside_field_applies", ctypes.c_void_p(row), of_c("tside_frame", frame))
            self.assertEqual(ts.field_applies(ts.field_find(ts.Frame, path), frame), bool(applies))
        for of_walls in (False, True):
            trades = ctypes.cast(self.ask("tside_trades", int(of_walls), count, restype=ctypes.c_void_p), ctypes.POINTER(c_class("tside_trade")))
            self.assertEqual([(one.family, one.name, bits(one.value)) for one in ts.trades(of_walls)], [(trades[i].family.decode(), trades[i].name.decode(), bits(trades[i].value)) for i in range(count.value)])

    def usual_values(self):
        for hardware in ts.Hardware:
            there = c_class("tside_extender")()
            self.ask("tside_usual", KINDS["TSIDE_KIND_EXTENDER"], there, restype=None)
            if hardware == ts.Hardware.INCH:
                self.assertGreater(compare(self, ts.usual(ts.Extender), there, "usual"), 20)
            self.ask("tside_usual_in", KINDS["TSIDE_KIND_EXTENDER"], int(hardware), there, restype=None)
            self.assertGreater(compare(self, ts.usual(ts.Extender, hardware), there, "usual_in"), 20)
        hand = ts.Drive(kind="hand")
        there = of_c("tside_drive", hand)
        self.ask("tside_usual_by_choice", KINDS["TSIDE_KIND_DRIVE"], there, restype=None)
        self.assertGreater(compare(self, ts.usual_by_choice(hand), there, "usual_by_choice"), 10)

    def many_sides(self):
        hips, rows = [1.4, 1.45, 1.5, 9.0], 4
        put, got, statuses = (ctypes.c_double * rows)(*hips), (ctypes.c_double * rows)(*[float("nan")] * rows), (ctypes.c_int * rows)()
        findings, fault = (ctypes.c_ulonglong * rows)(), c_class("tside_fault")()
        column_in = c_class("tside_input")(self.place("TSIDE_KIND_SIDE", "curtain.hip"), ctypes.addressof(put), 8)
        column_out = c_class("tside_output")(self.place("TSIDE_KIND_PLAN", "worst.drive"), ctypes.addressof(got), 8)
        self.ask("tside_plan_sides", of_c("tside_side", SIDE), rows, column_in, 1, column_out, 1, statuses, findings, fault)
        many = ts.plan_many({"curtain.hip": hips}, base=SIDE, outputs=["worst.drive", "findings"])
        self.assertEqual([int(one) for one in many["status"]], list(statuses))
        self.assertEqual([int(one) for one in many["findings"]], list(findings))
        self.assertEqual([bits(float(one)) for one in many["worst.drive"]][:3], [bits(one) for one in got][:3])
        self.assertEqual([statuses[0], bool(statuses[3])], [0, True])

    def cut_plan(self):
        stock, cuts, count = of_c("tside_stock", STOCK), (c_class("tside_cut") * len(CUTS))(*[of_c("tside_cut", one) for one in CUTS]), ctypes.c_int()
        size = self.ask("tside_stock_work", len(CUTS), restype=ctypes.c_size_t)
        sticks, taken, plan, fault = (c_class("tside_stick") * 16)(), (ctypes.c_int * 64)(), c_class("tside_cut_plan")(), c_class("tside_fault")()
        work = ctypes.create_string_buffer(size)
        self.assertEqual(self.ask("tside_stock_plan", stock, cuts, len(CUTS), 1000, work, ctypes.c_size_t(size), sticks, taken, 16, count, plan, fault), 0)
        made = ts.stock_plan(STOCK, CUTS, 1000)
        self.assertEqual(len(made.sticks), count.value)
        self.assertGreater(compare(self, made.plan, plan, "cut_plan"), 5)
        self.assertGreater(compare(self, made.sticks, sticks, "sticks"), 5)


if __name__ == "__main__":
    unittest.main()
