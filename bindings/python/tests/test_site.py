# SPDX-License-Identifier: MIT
"""Files of sides: read as the programs read them, and written so that they read back to the last bit."""
import json
import os
import random
import re
import stat
import subprocess
import tempfile
import unittest
from pathlib import Path

import tunnelside as ts
from sides import SIDE
from tree import tree

SITES = Path(os.environ.get("EXAMPLES") or tree("examples/sites/film30.json", "examples/sites") / "examples") / "sites"
PROGRAM = Path(os.environ.get("BUILD", ".")) / "examples" / "tunnelside-plan"
FILM = json.loads((SITES / "film30.json").read_text(encoding="utf-8"))


class Files(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = Path(folder.name)

    def file(self, content, name="site.json"):
        path = self.folder / name
        path.write_bytes(content if isinstance(content, bytes) else json.dumps(content).encode())
        return path

    def changed(self, path, value):
        """The demo site with another value, or without one."""
        whole = json.loads(json.dumps(FILM))
        *groups, last = path.split("/")
        inside = whole
        for group in groups:
            inside = inside.setdefault(group, {})
        if value is None:
            del inside[last]
        else:
            inside[last] = value
        return whole

    def refused(self, content, said, status="UNREADABLE"):
        path = self.file(content)
        with self.assertRaises(ts.Error) as caught:
            ts.load(path)
        text = str(caught.exception)
        self.assertTrue(text.startswith(f"{path}: "), text)
        self.assertIn(said, text)
        self.assertEqual(caught.exception.status, ts.Status[status], text)
        return caught.exception


class Load(Files):
    def test_demo_sites_are_planned_as_the_program_plans_them(self):
        if not PROGRAM.exists():
            self.skipTest("the program is not built")
        files = sorted(SITES.glob("*.json"))
        self.assertGreater(len(files), 8)
        for path in files:
            said = subprocess.run([str(PROGRAM), "--format=json", str(path)], stdout=subprocess.PIPE, check=False).stdout
            sides = json.loads(said)["sides"]
            sites = ts.load(path)
            self.assertEqual(len(sites), len(sides))
            for site, told in zip(sites, sides):
                with self.subTest(path.name, name=site.name):
                    self.assertEqual((site.name, site.note, site.drive_at, site.job), tuple(told[key] for key in ("name", "note", "drive_at", "job")))
                    self.assertGreater(self.compare(site.side, told["asked"]), 60)
                    plan = ts.plan_side(site.side)
                    self.assertGreater(self.compare(plan, told["plan"]), 150)
                    turns = ts.plan_turns(site.side)
                    self.assertEqual(len(turns), len(told["turns"]))
                    for turn, row in zip(turns, told["turns"]):
                        self.assertGreater(self.compare(turn, row), 5)
                    self.assertEqual([finding.code.text for finding in plan.findings], [finding["code"] for finding in told["plan"]["findings"]])

    def compare(self, structure, told):
        """All that a program tells of a structure, bit for bit; returns how many values that were."""
        count = 0
        for row in ts.fields(type(structure)):
            if row.name not in told or row.name.endswith("_given"):
                continue
            value, other = getattr(structure, row.name + "_" if row.name in ("yield", "from", "raise") else row.name), told[row.name]
            if isinstance(value, ts.Structure):
                count += self.compare(value, other)
            elif isinstance(value, tuple):
                self.assertEqual(len(value), len(other), row.name)
                count += sum(self.compare(one, one_told) for one, one_told in zip(value, other))
            elif value is not None:
                other = other["value"] if isinstance(other, dict) else other
                self.assertEqual(value.text if isinstance(value, ts.Choice) else value, other, row.name)
                count += 1
        return count

    def test_jobs_lists_and_what_is_shared(self):
        east, west = ts.load(SITES / "two_sides_job.json")
        self.assertEqual((east.name, west.name, east.job), ("East side", "West side", west.job))
        self.assertEqual(west.side, east.side.replace(hand="left", curtain={"sill": "22 in"}))
        both = ts.load(self.file([FILM, self.changed("length", "20 m")]))
        self.assertEqual(both[1].side, both[0].side.replace(length=20))
        self.assertEqual(ts.load(self.file(b"\xef\xbb\xbf" + json.dumps(FILM).encode()))[0], both[0])
        told = ts.load(self.file({**FILM, "mark": "C", "fittings": {}, "tolerances": {"curtain.hip": "1/2 in", "length": ""}}))[0]
        self.assertEqual((told.mark, told.fittings, told.tolerances), ("C", ts.Fittings(), {"curtain.hip": 0.0127}))
        self.assertEqual(ts.load(self.file(self.changed("cable", {})))[0].side.cable, ts.Cable())

    def test_what_is_refused(self):
        for path, value, said, *status in (
            ("curtain/hipp", 1, "curtain.hipp: no such field; did you mean 'hip'?", "NOT_FOUND"), ("hip", "1 m", "hip: no such field; did you mean 'curtain.hip'?", "NOT_FOUND"),
            ("nmae", "x", "nmae: no such field; did you mean 'name'?", "NOT_FOUND"), ("curtain/hip", 1.4, "curtain.hip: 1.4 was taken for 1.4 m, while this file elsewhere speaks feet"),
            ("curtain/hip", True, "curtain.hip: a yes or no; wanted a number in m"), ("curtain/hip", [1], "curtain.hip: a list; wanted a number in m"),
            ("curtain/hip", "4 fot", "curtain.hip: '4 fot': "), ("curtain", [], "curtain.hip: missing: ", "OUT_OF_BOUNDS"), ("curtain", "x", "curtain: wanted an object"),
            ("length", None, "length: missing: ", "OUT_OF_BOUNDS"), ("hand", "up", "hand: 'up': ", "NOT_FOUND"), ("hand", 1, "hand: 1; wanted one of: "),
            ("bar/splices", 1.5, "bar.splices: 1.5; wanted a whole number"), ("bar/splices", "4", "bar.splices: a text; wanted a whole number"), ("name", 3, "name: wanted a text"),
            ("drive/crank", 3, "no such field", "NOT_FOUND"), ("bars", [1], "bars[0]: wanted an object"), ("bars", {"a": 1}, "bars: wanted a list"), ("bars", [{}] * 99, "bars: 99 are too many"),
            ("frame/tube", {"diameter": "1-3/8 in", "wall": "bwg 14"}, "frame.tube.diameter: '1-3/8 in': ", "NOT_FOUND"),
            ("frame/tube", {"diameter": "fence 1-7/8 in", "wall": "14 ga"}, "frame.tube.wall: '14 ga': ", "NOT_FOUND"),
            ("mark", "1", "mark: '1': "), ("tolerances", {"curtain.hipp": 1}, "tolerances.curtain.hipp: no such field; did you mean 'curtain.hip'?", "NOT_FOUND"),
            ("tolerances", {"curtain": 1}, "tolerances.curtain: holds fields of its own"), ("tolerances", {"bar.splices": 1}, "tolerances.bar.splices: is counted or chosen"),
            ("tolerances", {"length": "-1 ft"}, "tolerances.length: -0.3048 m; a tolerance is 0 or above", "OUT_OF_BOUNDS"), ("tolerances", 3, "tolerances: wanted an object"),
            ("fittings", 3, "fittings: wanted an object"),
        ):
            with self.subTest(path, value=value):
                fault = self.refused(self.changed(path, value), said, *status)
                self.assertTrue(fault.field)

    def test_what_choices_leave_unused(self):
        self.refused(self.changed("bar/material", {"grade": "A53_B", "yield": "50 ksi"}), "bar.material.yield: used only while grade is given; it is A53_B")
        self.refused(self.changed("tolerances", {"drive_end.eye_outboard": 0}), "tolerances.drive_end.eye_outboard: not in use")

    def test_files_that_are_none(self):
        for content, said in ((b"", "Expecting value"), (b"[]", "a list of 0 sides"), (b"3", "wanted an object that describes a side"), (b'{"length": 1, "length": 2}', "'length' stands twice"),
                              (b'{"length": NaN}', "NaN is no finite number"), (b'{"length": 1e999}', "1e999 is no finite number"), (b'{"length": 99999999999999999999}', "too large"),
                              (b'{"name": "\xff"}', "decode"), (b'{"name": "\\u0000"}', "zero character"), (b'{"name": "\\ud800"}', "surrogates"), (b"[" * 100000, "nested too deeply"),
                              (b" " * (16 << 20) + b"{}", "longer than 16 MiB"), (b'{"sides": []}', "sides: wanted a list of one or two sides"), (b'{"job": "x"}', "sides: wanted")):
            with self.subTest(content[:40]):
                self.refused(content, said)
        with self.assertRaisesRegex(ts.Error, "nowhere.json: No such file"):
            ts.load(self.folder / "nowhere.json")
        job = {**FILM, "sides": [{"name": "a"}, {"name": "b"}]}
        self.refused(job, "sides[1].hand: the same hand as the other side's", "CONTRADICTS")
        self.refused([{**FILM, "mark": "B"}, {**FILM, "mark": "b"}], "another side has it too", "CONTRADICTS")

    def test_programs_and_python_refuse_the_same(self):
        """Of changes drawn by lot to a demo site, each is refused by both or by neither."""
        if not PROGRAM.exists():
            self.skipTest("the program is not built")
        draw = random.Random(20)
        values = ["", [], {}, 0, 1, 2.5, -1, True, None, "1 m", "1 ft", "x", "hip", "A53_B", "given", "50 ksi", "1 kg", "bwg 14", "fence 1-3/8 in", [1], {"x": 1}]
        paths = [(*before, key) for before, key in self.keys(FILM, ())]
        wrong = []
        for _ in range(int(os.environ.get("MISTAKES", 60))):
            whole = json.loads(json.dumps(FILM))
            *groups, last = draw.choice(paths)
            inside = whole
            for group in groups:
                inside = inside[group]
            inside[draw.choice([last, last, last + "s"])] = draw.choice(values)
            path = self.file(whole)
            program = subprocess.run([str(PROGRAM), "--format=json", str(path)], stdout=subprocess.PIPE, stderr=subprocess.PIPE, check=False)
            try:
                ts.plan_side(ts.load(path)[0].side)
                good = True
            except ts.Error as error:
                good = str(error)
            if (good is True) != (program.returncode == 0):
                wrong.append((groups, last, inside, good, program.stderr.decode()))
        self.assertEqual(wrong, [])

    def keys(self, value, before):
        for key, member in value.items():
            yield before, key
            if isinstance(member, dict):
                yield from self.keys(member, (*before, key))


class Save(Files):
    def test_what_is_saved_reads_back_to_the_last_bit(self):
        for path in sorted(SITES.glob("*.json")):
            sites = ts.load(path)
            ts.save(self.folder / "again.json", sites)
            self.assertEqual(ts.load(self.folder / "again.json"), sites, path.name)
        draw = random.Random(1)
        for _ in range(50):
            side = SIDE.replace(length=draw.uniform(5, 90), curtain={"hip": draw.uniform(1.4, 1.7), "thickness": draw.uniform(1e-4, 9e-4), "areal_mass": draw.random()},
                                drive={"rated_torque": draw.uniform(1, 99), "stall_torque": None, "mass": draw.random() * 9}, bar={"splices": 3})
            ts.save(self.folder / "one.json", side)
            self.assertEqual(ts.load(self.folder / "one.json"), [ts.Site(side)])

    def test_programs_read_what_is_saved(self):
        if not PROGRAM.exists():
            self.skipTest("the program is not built")
        sites = ts.load(SITES / "two_sides_job.json")
        ts.save(self.folder / "job.json", [site._replace(note="5 ft", tolerances={"curtain.hip": 0.01}) for site in sites])
        told = json.loads(subprocess.run([str(PROGRAM), "--format=json", str(self.folder / "job.json")], stdout=subprocess.PIPE, check=True).stdout)["sides"]
        self.assertEqual([side["plan"]["worst"]["drive"]["value"] for side in told], [ts.plan_side(site.side).worst.drive for site in sites])

    def test_several(self):
        path = self.folder / "several.json"
        for sides, count in ((SIDE, 1), ([SIDE, ts.Site(SIDE.replace(hand="left"), name="west")], 2), ([SIDE] * 3, 3)):
            ts.save(path, sides)
            self.assertEqual(len(ts.load(path)), count)
        one = ts.Site(SIDE, ts.Fittings(), "n", "o", "p", "B", {"length": 0.05}, "house", "its note")
        ts.save(path, one)
        self.assertEqual(ts.load(path), [one])
        for wrong, said in (([], "none is given"), ([one, one._replace(job="other")], "2 jobs"), ([one] * 3, "3 sides of 1 jobs")):
            with self.assertRaisesRegex(ValueError, said):
                ts.save(path, wrong)
        self.assertEqual(ts.load(path), [one])

    def test_keep_outs_keep_their_names(self):
        path = self.folder / "named.json"
        rectangles = [dict(inner=0.1, outer=0.2, top=1), dict(inner=0.3, outer=0.4, top=1)]
        side = SIDE.replace(free_end={"keep_outs": rectangles}, drive_end={"keep_outs": rectangles[:1]})
        one = ts.Site(side, names={"free_end.keep_outs[1]": "door jamb"})
        ts.save(path, one)
        self.assertEqual(ts.load(path), [one])
        self.assertEqual([keep_out.get("name") for keep_out in json.loads(path.read_text())["free_end"]["keep_outs"]], [None, "door jamb"])
        ts.save(path, one._replace(names={"free_end.keep_outs[1]": ""}))
        self.assertEqual(ts.load(path), [ts.Site(side)])
        for nowhere in ("free_end.keep_outs[2]", "drive_end.keep_outs[1]", "door"):
            with self.assertRaisesRegex(ValueError, re.escape(f"names: '{nowhere}' has none on this side")):
                ts.save(path, one._replace(names={nowhere: "x"}))
        self.assertEqual(ts.load(path), [ts.Site(side)])

    def test_a_drive_keeps_its_name_and_note(self):
        path = self.folder / "driven.json"
        for drive in json.loads((SITES.parent / "drives.json").read_text(encoding="utf-8"))["drives"]:
            [one] = ts.load(self.file(self.changed("drive", {**drive, "note": "invented"})))
            self.assertEqual((one.names, one.notes), ({"drive": drive["name"]}, {"drive": "invented"}))
            ts.save(path, one)
            self.assertEqual(ts.load(path), [one])
        usual = ts.Site(SIDE.replace(drive=ts.Drive()), notes={"drive": "not chosen yet"})
        ts.save(path, usual)
        self.assertEqual(ts.load(path), [usual])
        with self.assertRaisesRegex(ValueError, re.escape("notes: 'drive_end.keep_outs[0]' has none on this side")):
            ts.save(path, usual._replace(notes={"drive_end.keep_outs[0]": "x"}))
        self.refused(self.changed("drive/note", 3), "drive.note: wanted a text")
        self.refused(self.changed("drive/nmae", "x"), "drive.nmae: no such field; did you mean 'name'?", "NOT_FOUND")

    def test_an_empty_keep_out_is_none(self):
        empty = [{"name": "", "inner": ""}, {}]
        self.assertEqual(ts.load(self.file(self.changed("drive_end/keep_outs", empty))), ts.load(self.file(FILM)))
        self.refused(self.changed("drive_end/keep_outs", [{"name": "jamb"}, {}]), "drive_end.keep_outs[0].outer: missing: ", "OUT_OF_BOUNDS")

    def test_names_of_keep_outs_that_are_refused(self):
        rectangle = {"outer": "1 ft", "top": "1 ft"}
        self.refused(self.changed("drive_end/keep_outs", [rectangle, {**rectangle, "name": 3}]), "drive_end.keep_outs[1].name: wanted a text")
        self.refused(self.changed("drive_end/keep_outs", [{"left": "1 ft", "right": "2 ft", "top": "1 ft"}]),
                     "drive_end.keep_outs[0].left: no such field; it has inner, outer, bottom, top, name", "NOT_FOUND")
        self.refused(self.changed("drive_end/keep_outs", [{**rectangle, "nmae": "x"}]), "drive_end.keep_outs[0].nmae: no such field; did you mean 'name'?", "NOT_FOUND")
        self.refused(self.changed("drive_end/name", "x"), "drive_end.name: no such field", "NOT_FOUND")

    def test_whole_or_not_at_all(self):
        path = self.folder / "site.json"
        ts.save(path, SIDE)
        path.chmod(0o640)
        before = path.read_bytes()
        unused = SIDE.replace(bar={"material": {"grade": "given", "yield_": 3e8}}).replace(bar={"material": {"grade": "A53_B"}})
        with self.assertRaisesRegex(ValueError, "bar.material.yield.*left unused by the choices of this side"):
            ts.save(path, [SIDE, unused])
        self.assertEqual((path.read_bytes(), os.listdir(self.folder)), (before, ["site.json"]))
        ts.save(path, SIDE.replace(length=20))
        self.assertEqual(stat.S_IMODE(path.stat().st_mode), 0o640)
        link = self.folder / "link.json"
        link.symlink_to("site.json")
        ts.save(link, SIDE)
        self.assertTrue(link.is_symlink() and path.read_bytes() == before)
        with self.assertRaises(OSError):
            ts.save(self.folder / "none" / "site.json", SIDE)
        with self.assertRaises(OSError):
            ts.save(self.folder, SIDE)
        self.assertEqual(sorted(os.listdir(self.folder)), ["link.json", "site.json"])

    def test_pipes_are_written_to_as_they_are(self):
        if not hasattr(os, "mkfifo"):
            self.skipTest("there are no pipes with a name")
        pipe = self.folder / "pipe"
        os.mkfifo(pipe)
        reader = os.open(pipe, os.O_RDONLY | os.O_NONBLOCK)
        self.addCleanup(os.close, reader)
        ts.save(pipe, SIDE)
        self.assertTrue(stat.S_ISFIFO(pipe.stat().st_mode))
        self.assertEqual(ts.load(self.file(os.read(reader, 1 << 16))), [ts.Site(SIDE)])
        self.assertEqual(sorted(os.listdir(self.folder)), ["pipe", "site.json"])
        if os.path.exists("/dev/fd"):  # where a pipe without a name has one
            nameless, written = os.pipe()
            ts.save(f"/dev/fd/{written}", SIDE)
            os.close(written)
            with open(nameless, "rb") as file:
                self.assertEqual(ts.load(self.file(file.read())), [ts.Site(SIDE)])


class Places(unittest.TestCase):
    def test_taped_from_the_bows_face(self):
        """The film house's bow stands plumb, its face 15 ft from the centreline: one place, told either way."""
        side = ts.load(SITES / "film30.json")[0].side
        taped = side.replace(**{end: {"level_from": "bow_face", "extender": {"member_inner": "11 ft", "member_outer": "3 in"}} for end in ("drive_end", "free_end")})
        for end in ("drive_end", "free_end"):
            layout, same = (getattr(ts.plan_side(one), end).layout for one in (side, taped))
            for place in ("cut_length", "bow_height", "member_x", "member_from_outer", "angle"):
                self.assertAlmostEqual(getattr(layout, place), getattr(same, place), delta=1e-12)


class Columns(unittest.TestCase):
    def test_turns_takeoff_and_findings(self):
        site = ts.load(SITES / "film30.json")[0]
        plan, turns = ts.plan_side(site.side), ts.plan_turns(site.side)
        table = ts.as_columns(turns)
        self.assertEqual(table["torque"], [turn.torque for turn in turns])
        self.assertEqual(set(table), {row.name for row in ts.fields(ts.Turn)})
        items = ts.takeoff(site.side, plan, site.fittings)
        self.assertEqual(ts.as_columns(items)["code"], [item.code.text for item in items])
        self.assertEqual(ts.as_columns(plan.findings)["code"], [finding.code.text for finding in plan.findings])
        whole = ts.as_columns([plan, plan])
        self.assertEqual(whole["worst.drive"], [plan.worst.drive] * 2)
        self.assertEqual([one["code"] for one in whole["findings"][1]], [finding.code.text for finding in plan.findings])
        self.assertEqual(ts.as_columns([]), {})
        for wrong in ([1], [plan, turns[0]]):
            with self.assertRaisesRegex(TypeError, "rows: structures of one kind"):
                ts.as_columns(wrong)

    def test_frames_take_them(self):
        try:
            import pandas
        except ImportError:
            self.skipTest("pandas is missing")
        turns = ts.plan_turns(SIDE)
        frame = pandas.DataFrame(ts.as_columns(turns))
        self.assertEqual((len(frame), frame["opening"].dtype), (len(turns), float))


if __name__ == "__main__":
    unittest.main()
