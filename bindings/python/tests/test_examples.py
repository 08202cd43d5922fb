# SPDX-License-Identifier: MIT
"""The examples as their users run them: a table in, a table out, and what is said on the way."""
import csv
import importlib.util
import io
import os
import re
import shutil
import signal
import socket
import subprocess
import sys
import tempfile
import time
import unittest
import warnings
from contextlib import redirect_stderr
from pathlib import Path
from unittest import mock

import tunnelside
from tree import tree

EXAMPLES = Path(os.environ.get("EXAMPLES") or tree("examples/batch_estimate.py", "examples/batch") / "examples")
ESTIMATE, ON_DASK, SIDES = EXAMPLES / "batch_estimate.py", EXAMPLES / "batch_on_dask.py", EXAMPLES / "batch" / "invented_sides.csv"

# One small side that can be planned, as a table.
HEADER = "name,length,frame.width,frame.leg_height,frame.peak_height,frame.tube.diameter,frame.tube.wall,curtain.hip,curtain.sill,bar.tube.diameter,bar.tube.wall," \
    "drive.rated_torque,ends.hung,stops.gap,ends.guide.tube.diameter,ends.guide.tube.wall"
ROW = "one,30 m,8 m,1.7 m,4 m,48.3 mm,2.6 mm,1.6 m,0.4 m,33.7 mm,2.6 mm,40 N m,hip,160 mm,33.7 mm,2.6 mm"

# What is wrong with the table's bad rows, by line of the file: status, and what its sentence must name.
BAD = {
    18: ("unreadable", "curtain.hip: '5 fot 3 in'"), 39: ("out_of_bounds", "length: not given"), 60: ("contradicts", "frame.peak_height: 1.2 m contradicts frame.leg_height"),
    85: ("unreadable", "curtain.sill: '12'"), 106: ("contradicts", "bar.tube.wall"), 128: ("out_of_reach", "drive_end.extender.bar_clearance"),
    131: ("unreadable", "drive.kind: 'moter' is not one of motor, hand"), 153: ("out_of_reach", "drive_end.rise"),
    178: ("unreadable", "40 cells and the header 39, beyond it: 'second note, in a cell too many'"),
}


def load():
    spec = importlib.util.spec_from_file_location("batch_estimate", ESTIMATE)
    module = importlib.util.module_from_spec(spec)
    sys.modules["batch_estimate"] = module
    spec.loader.exec_module(module)
    return module


BATCH = load()


def lacks(*modules):
    return [name for name in modules if importlib.util.find_spec(name) is None]


def rows_of(text):
    return list(csv.reader(io.StringIO(text, newline="")))


class Example(unittest.TestCase):
    def setUp(self):
        self.folder = Path(tempfile.mkdtemp())
        self.addCleanup(shutil.rmtree, self.folder)

    def run_example(self, *arguments, stdin=None, program=ESTIMATE, **more):
        return subprocess.run([sys.executable, str(program), *map(str, arguments)], input=stdin, capture_output=True, timeout=60, **more)

    def call(self, *arguments):
        """The same in this process, which is quicker."""
        out, said = io.TextIOWrapper(io.BytesIO(), write_through=True), io.TextIOWrapper(io.BytesIO(), encoding="utf-8", errors="surrogateescape", write_through=True)
        with mock.patch.object(sys, "argv", ["batch_estimate.py", *map(str, arguments)]), mock.patch.object(sys, "stdout", out), mock.patch.object(sys, "stderr", said):
            try:
                status = BATCH.command()
            except SystemExit as stop:  # argparse
                status = stop.code
        return subprocess.CompletedProcess(arguments, status, out.buffer.getvalue(), said.buffer.getvalue())

    def table(self, *lines, name="sides.csv", end="\n", encoding="utf-8"):
        path = self.folder / name
        path.write_bytes(end.join([*lines, ""]).encode(encoding))
        return path

    def refused(self, done, *words):
        self.assertEqual(done.returncode, 1, done.stderr)
        self.assertEqual(done.stdout, b"")
        for word in words:
            self.assertIn(word, done.stderr.decode())
        self.assertNotIn(b"Traceback", done.stderr)


class TestEstimates(Example):
    def test_invented_table(self):
        done = self.run_example(SIDES)
        self.assertEqual(done.returncode, 1)
        given, made = rows_of(SIDES.read_text(encoding="utf-8")), rows_of(done.stdout.decode())
        self.assertEqual((len(given), len(made)), (201, 201))
        width = len(given[0])
        status, fault = width, width + 1
        said = done.stderr.decode()
        for line, (row, cells) in enumerate(zip(made, given), 1):
            self.assertEqual(row[:width], cells[:width])
            if line == 1:
                continue
            if line in BAD:
                self.assertEqual(row[status], BAD[line][0])
                self.assertIn(BAD[line][1], row[fault])
                self.assertEqual(set(row[fault + 1 :]), {""})
                self.assertIn(f"invented_sides.csv:{line}: {row[status]}: {row[fault]}\n", said)
            else:
                self.assertEqual((row[status], row[fault]), ("ok", ""))
                self.assertGreater(float(row[made[0].index("drive_turns [turn]")]), 1)
        self.assertEqual(len(re.findall(r"invented_sides\.csv:\d+: ", said)), len(BAD))
        self.assertIn("9 rows refused", said)
        self.assertIn("carried along, no field of a side: id, place, note", said)
        self.assertIn("invented", given[1][0])

    def test_row_is_the_plan(self):
        """A row of the table, read by hand, is what the library says of that side."""
        done = self.call(SIDES, "--figures", "worst.drive, drive_end.sweep.cut_length [in], drive_end.layout.binding, longest_side, drive_end.layout.angle [deg]")
        given, made = rows_of(SIDES.read_text(encoding="utf-8")), rows_of(done.stdout.decode())
        first = made[1][len(given[0]) :]
        self.assertEqual(made[1][0], "invented-001")
        side = self.first_side()
        plan = tunnelside.plan_side(side)
        self.assertEqual(first[0], "ok")
        self.assertEqual(float(first[3]), plan.worst.drive)
        self.assertEqual(float(first[4]), plan.drive_end.sweep.cut_length / 0.0254)
        self.assertEqual(first[5], plan.drive_end.layout.binding.text)
        self.assertEqual(float(first[6]), plan.longest_side)
        self.assertAlmostEqual(float(first[7]), plan.drive_end.layout.angle * 57.29577951308232, 12)

    def first_side(self):
        """invented-001, keyed in from the table."""
        ts, end = tunnelside, {}
        for name in ("drive_end", "free_end"):
            end[name] = ts.End(
                rise="406 mm", guide=ts.Guide(tube=ts.Round(diameter="42.4 mm", wall="2.6 mm")),
                extender=ts.Extender(tube=ts.Square(side="50 mm", wall="3 mm"), member_height="1189 mm", member_outer="4198 mm", stock="3 m"))
        return ts.Side(
            length="36 m", hand="right", frame=ts.Frame(width="850 cm", leg_height="1572 mm", peak_height="3581 mm", tube=ts.Round(diameter="60.3 mm", wall="3.2 mm")),
            curtain=ts.Curtain(hip="154.6 cm", sill="396 mm", standoff="4 cm", thickness="0.15 mm", areal_mass="138 g/m2"), stops=ts.Stops(seal="11 cm"),
            bar=ts.Bar(tube=ts.Round(diameter="33.7 mm", wall="2.6 mm"), material=ts.Material(grade="S235"), splices=6),
            drive=ts.Drive(kind="motor", rated_torque="60 N m", stall_torque="144 N m"), **end)

    def test_workers_and_chunks_change_nothing(self):
        alone = self.call(SIDES).stdout
        self.assertEqual(self.call(SIDES, "--workers", 3).stdout, alone)
        for size in (1, 7, 199):
            with mock.patch.object(BATCH, "ROWS_AT_ONCE", size), open(SIDES, **BATCH.READ) as source:
                target = io.StringIO(newline="")
                asked = BATCH.split_figures(BATCH.FIGURES)
                refused = BATCH.run(source, target, asked, "sides", lambda *job: BATCH.here(*job, workers=1), say=lambda text: None)
            self.assertEqual((refused, target.getvalue().encode()), (len(BAD), alone))

    def test_ways_to_write_a_table(self):
        plain = self.call(self.table(HEADER, ROW), "--figures", "worst.drive")
        self.assertEqual(plain.returncode, 0, plain.stderr)
        answer = rows_of(plain.stdout.decode())[1][16:]
        self.assertEqual(answer[0], "ok")
        none = self.call(self.table(HEADER, ROW), "--figures", "")
        self.assertEqual((none.returncode, rows_of(none.stdout.decode())[1][16:]), (0, answer[:3]))
        in_units = self.table(HEADER.replace("curtain.hip", "curtain.hip [mm]").replace("length", "length[m]"), ROW.replace("1.6 m", "1600").replace("30 m", "30"))
        quoted = self.table(HEADER, *[f'"{ROW}"'.replace(",", '","')], "", name="quoted.csv", end="\r\n", encoding="utf-8-sig")
        both_ends = HEADER.replace("ends.guide.tube.wall", "drive_end.guide.tube.wall,free_end.guide.tube.wall")
        apart = self.table(both_ends, ROW + ",2.6 mm", name="apart.csv")
        for path, width in ((in_units, 16), (quoted, 16), (apart, 17)):
            done = self.call(path, "--figures", "worst.drive")
            self.assertEqual(done.returncode, 0, done.stderr)
            self.assertEqual(rows_of(done.stdout.decode())[1][width:], answer)
        piped = self.run_example("-", "--figures", "worst.drive", stdin=(HEADER + "\n" + ROW).encode())
        self.assertEqual(piped.stdout, plain.stdout)

    def test_what_is_carried_along_is_kept_to_the_byte(self):
        note = b'caf\xe9, "two\nlines" \xf0\x9f'
        path = self.folder / "notes.csv"
        path.write_bytes(HEADER.encode() + b'\n"' + note.replace(b'"', b'""') + b'"' + ROW[3:].encode() + b"\nlast" + ROW[3:].replace("1.6 m", "1.6 f\u00fcss").encode() + b"\n")
        done = self.call(path)
        self.assertEqual(done.returncode, 1)
        self.assertTrue(done.stdout.split(b"\n", 1)[1].startswith(b'"' + note.replace(b'"', b'""') + b'",30 m,8 m'))
        self.assertIn("notes.csv:4: unreadable: curtain.hip: ", done.stderr.decode("utf-8", "replace"))

    def test_what_is_carried_along_is_no_formula(self):
        cells = ["=1+1", "+SUM(A1)", "-cmd", "@x", "-1.5", "- ", "-", "plain=1"]
        done = self.call(self.table(HEADER, *(cell + ROW[ROW.index(","):] for cell in cells)))
        self.assertEqual([row[0] for row in rows_of(done.stdout.decode())[1:]], ["'=1+1", "'+SUM(A1)", "'-cmd", "'@x", "-1.5", "'- ", "-", "plain=1"])

    def test_rows_that_are_short_or_empty(self):
        done = self.call(self.table(HEADER, "short,30 m", "", ROW, "," * 15))
        self.assertEqual(done.returncode, 1)
        made = rows_of(done.stdout.decode())
        self.assertEqual([row[16] for row in made], ["status", "unreadable", "ok", "out_of_bounds"])
        self.assertEqual(made[1][:3], ["short", "30 m", ""])
        self.assertIn("sides.csv:2: unreadable: the row has 2 cells and the header 16", done.stderr.decode())

    def test_tables_that_cannot_be_used(self):
        for header, words in (
            (HEADER.replace("curtain.hip", "curtain.hipp"), ["column 'curtain.hipp': a side has no such field", "near it are", "curtain.hip"]),
            (HEADER.replace("curtain.hip", "lenght [m]"), ["column 'lenght [m]': a side has no such field"]),
            (HEADER.replace("curtain.hip", "curtain.hip [kg]"), ["column 'curtain.hip [kg]'", "mm, cm, m"]),
            (HEADER.replace("curtain.hip", "length"), ["two columns fill length"]),
            (HEADER.replace("name", "status"), ["a column would stand twice in the estimates: status"]),
            ('"' + HEADER, ["sides.csv:", "unexpected end of data"]),
            ("name,customer", ["no column is named after a field of a side"]),
        ):
            self.refused(self.call(self.table(header, ROW)), "batch_estimate: ", *words)
        empty = self.folder / "empty.csv"
        empty.write_bytes(b"")
        self.refused(self.call(empty), "the table is empty")
        self.refused(self.call(self.table(HEADER, ROW, '"never closed')), "sides.csv:3: ")
        self.refused(self.call(self.folder / "none.csv"), "none.csv")
        self.refused(self.call(self.table(HEADER, ROW), "--figures", "worst.drve"), "figure 'worst.drve'", "worst.drive")
        self.refused(self.call(self.table(HEADER, ROW), "--figures", "worst.drive [m]"), "figure 'worst.drive [m]'")

    def test_output_is_whole_or_not_there(self):
        good, bad = self.table(HEADER, ROW), self.table(HEADER, ROW, '"never closed', name="bad.csv")
        out = self.folder / "out.csv"
        self.assertEqual(self.call(good, "-o", out).returncode, 0)
        before = out.read_bytes()
        self.assertEqual(before, self.call(good).stdout)
        self.refused(self.call(bad, "-o", out), "bad.csv")
        self.assertEqual(out.read_bytes(), before)
        self.refused(self.call(good, "-o", self.folder / "none" / "out.csv"), "none")
        self.assertEqual(sorted(path.name for path in self.folder.iterdir()), ["bad.csv", "out.csv", "sides.csv"])

    def test_standard_output_that_fails(self):
        """Full, closed, or with nobody to read it: said in a line, whatever Python's own buffers do."""
        for buffered in ({}, {"PYTHONUNBUFFERED": "1"}):
            environment = {name: value for name, value in os.environ.items() if name != "PYTHONUNBUFFERED"} | buffered
            for how in ("> /dev/full", ">&-", "| { sleep 0.2; exec <&-; }"):
                for arguments in (str(self.table(HEADER, ROW)), "--fields", "--help"):
                    if how == "> /dev/full" and not os.path.exists("/dev/full") or how.startswith("|") and arguments != str(self.folder / "sides.csv"):
                        continue
                    before = "sleep 0.6; " if how.startswith("|") else ""  # until the reader has gone
                    script = f'{{ {before}"$0" "$1" {arguments}; echo $? >&2; }} {how}'
                    done = subprocess.run(["sh", "-c", script, sys.executable, str(ESTIMATE)], stderr=subprocess.PIPE, env=environment, timeout=60)
                    *said, status = done.stderr.decode().splitlines()
                    self.assertEqual((said[-1].split(": cannot")[0], status), ("batch_estimate: standard output", "1"), (how, arguments, buffered, done.stderr))
                    self.assertNotIn("Traceback", done.stderr.decode())

    def test_closed_standard_error_is_no_output(self):
        table = self.table(HEADER, ROW, ROW.replace("30 m", "30 fathoms"))
        want = self.call(table).stdout
        done = subprocess.run(["sh", "-c", '"$0" "$1" "$2" 2>&-', sys.executable, str(ESTIMATE), str(table)], stdout=subprocess.PIPE, timeout=60)
        self.assertEqual((done.returncode, done.stdout), (1, want))

    def test_links_names_and_devices(self):
        table = self.table(HEADER, ROW)
        want = self.call(table).stdout
        (self.folder / "dangling.csv").symlink_to("target.csv")
        long = "n" * 251 + ".csv"
        for name in ("dangling.csv", long, "/dev/null"):
            done = self.call(table, "-o", self.folder / name)
            self.assertEqual(done.returncode, 0, done.stderr)
        self.assertTrue((self.folder / "dangling.csv").is_symlink())
        self.assertEqual((self.folder / "target.csv").read_bytes(), want)
        self.assertEqual((self.folder / long).read_bytes(), want)
        self.assertFalse(os.path.isfile("/dev/null"))
        self.assertEqual(self.run_example(table, "-o", "/dev/stdout").stdout, want)  # a link to a pipe that has no name
        os.link(table, self.folder / "other.csv")
        self.assertEqual(self.call(table, "-o", self.folder / "other.csv").returncode, 2)
        self.assertEqual(len(list(self.folder.iterdir())), 5)

    def test_without_an_installed_package(self):
        """From the tree it takes the package that make has gathered there; without one it says in a sentence what to do."""
        program = self.folder / "examples" / "batch_estimate.py"
        program.parent.mkdir()
        shutil.copyfile(ESTIMATE, program)
        table = self.table(HEADER, ROW)

        def run():
            return subprocess.run([sys.executable, "-I", "-S", "-B", str(program), str(table)], capture_output=True, timeout=60)

        done = run()
        self.assertEqual((done.returncode, done.stdout, done.stderr.count(b"\n")), (1, b"", 1))
        self.assertIn("has no package tunnelside: install it with pip install ./bindings/python, or build it with ", done.stderr.decode())
        (self.folder / "bindings" / "python").mkdir(parents=True)
        (self.folder / "bindings" / "python" / "stage").symlink_to(Path(tunnelside.__file__).resolve().parent.parent)
        done = run()
        self.assertEqual((done.returncode, done.stdout), (0, self.call(table).stdout), done.stderr)

    def waiting(self, number, action):
        """The program while it waits for rows, and has begun to write aside; started with this action for the signal."""
        # However the tests were started: a shell without job control starts what runs behind with some signals ignored. What is handled here is at its default there.
        before = signal.signal(number, action)
        try:
            process = subprocess.Popen([sys.executable, str(ESTIMATE), "-", "-o", str(self.folder / "out.csv")], stdin=subprocess.PIPE, stderr=subprocess.DEVNULL)
        finally:
            signal.signal(number, before)
        process.stdin.write(f"{HEADER}\n{ROW}\n".encode())
        process.stdin.flush()
        end = time.monotonic() + 30
        while not any(self.folder.iterdir()) and time.monotonic() < end:
            time.sleep(0.0005)  # as soon as it is there
        self.assertTrue(any(self.folder.iterdir()))
        return process

    def test_signals_leave_nothing(self):
        for number in (signal.SIGTERM, signal.SIGHUP, signal.SIGINT):
            process = self.waiting(number, lambda *_: None)
            process.send_signal(number)
            process.communicate()
            self.assertEqual(process.returncode, -number)
            self.assertEqual(list(self.folder.iterdir()), [])

    def test_signals_that_are_ignored_stay_so(self):
        for number in (signal.SIGTERM, signal.SIGHUP, signal.SIGINT):
            process = self.waiting(number, signal.SIG_IGN)
            process.send_signal(number)
            process.communicate()
            self.assertEqual(process.returncode, 0)
            self.assertEqual(len(rows_of((self.folder / "out.csv").read_text(encoding="utf-8"))), 2)
            (self.folder / "out.csv").unlink()

    def test_terminals_are_not_steered(self):
        table = self.table(HEADER, ROW.replace("30 m", "30 f"), name="a\u202eb\x1b[31m\x9b.csv")
        said = self.call(table).stderr.decode()
        self.assertIn("a\\u202eb\\x1b[31m\\x9b.csv:2: ", said)
        self.assertTrue(all(c == "\n" or c.isprintable() for c in said))

    def test_usage(self):
        for arguments in ((), ("--workers", "0", SIDES), ("--workers", "two", SIDES), ("--nonsense",), (SIDES, "-o", SIDES), (SIDES, "-o", "same", "--plot", "same")):
            done = self.call(*arguments)
            self.assertEqual((done.returncode, done.stdout), (2, b""))
        self.assertEqual(len(rows_of(SIDES.read_text(encoding="utf-8"))), 201)
        self.assertIn(b"ends.rise", self.call("--help").stdout)
        listed = self.call("--fields").stdout.decode()
        self.assertRegex(listed, r"\n  curtain\.hip +m +height")
        self.assertRegex(listed, r"\n  drive\.kind +motor\|hand ")
        self.assertRegex(listed, r"\n  drive_end\.layout\.binding +nothing\|")

    def test_long_tables_bound_what_the_plots_keep(self):
        sample = BATCH.Sample()
        for row in range(3 * BATCH.ROWS_PLOTTED):
            sample.add(row)
        self.assertLessEqual(len(sample.rows), BATCH.ROWS_PLOTTED)
        self.assertEqual(sample.rows, list(range(0, 3 * BATCH.ROWS_PLOTTED, sample.step)))


@unittest.skipIf(lacks("tqdm"), "tqdm is missing")
class TestProgress(Example):
    def test_bar_only_on_a_terminal_and_only_when_long(self):

        class Terminal(io.StringIO):
            def isatty(self):
                return True

        shown = {}
        for delay in (0, 60):
            with redirect_stderr(Terminal()) as terminal, mock.patch.object(BATCH, "BAR_DELAY", delay), mock.patch.object(BATCH, "ROWS_AT_ONCE", 50):
                with mock.patch.object(sys, "argv", ["batch_estimate.py", str(SIDES), "-o", str(self.folder / "out.csv")]):
                    self.assertEqual(BATCH.main(), 1)
            shown[delay] = terminal.getvalue()
        self.assertIn("100%", shown[0])
        self.assertNotIn("%|", shown[60])
        for text in shown.values():
            self.assertIn("invented_sides.csv:18: unreadable", text)
        self.assertNotIn(b"%|", self.call(SIDES).stderr)


@unittest.skipIf(lacks("matplotlib"), "matplotlib is missing")
class TestPlots(Example):
    def draw(self, table, page):
        """In this process: matplotlib is slow to load."""
        arguments = ["batch_estimate.py", str(table), "-o", str(self.folder / "out.csv"), "--plot", str(page)]
        with redirect_stderr(io.StringIO()), mock.patch.object(sys, "argv", arguments), warnings.catch_warnings():
            warnings.simplefilter("ignore")  # matplotlib's own
            return BATCH.main()

    def test_page(self):
        for table, name, begins in ((self.table(HEADER, ROW), "page.png", b"\x89PNG\r\n\x1a\n"), (SIDES, "page.svg", b"<?xml")):
            self.assertEqual(self.draw(table, self.folder / name), 1 if table == SIDES else 0)
            self.assertTrue((self.folder / name).read_bytes().startswith(begins))
        page = (self.folder / "page.svg").read_text(encoding="utf-8")
        for words in ("Torque against length, by bar", "Kick of the guide's foot against the eye's height", "Which sides each drive can lift", "not a certificate", "42.4 x 2.60 mm"):
            self.assertIn(words, page.replace("&apos;", "'").replace("&#x27;", "'"))

    def test_page_with_air(self):
        """Only where sides ask for it."""
        header, row = HEADER + ",air.sides,air.wind,air.floor_area,air.volume", ROW + ",alike,2 mph,200 m2,600 m3"
        for name, columns in (("with.svg", (header, row)), ("without.svg", (HEADER, ROW))):
            self.assertEqual(self.draw(self.table(*columns), self.folder / name), 0)
            self.assertEqual("Changes of air over opening" in (self.folder / name).read_text(encoding="utf-8"), name == "with.svg")

    def test_page_with_wind(self):
        """Only where sides ask for it; by a rule without a speed there is no speed to draw."""
        for name, header, cells in (("with.svg", ",wind.rule,wind.coefficient,wind.speed", ",plain,1.28,30 mph"), ("without.svg", "", ""),
                                    ("still.svg", ",wind.rule,wind.coefficient,wind.velocity_pressure", ",given,1.28,100 Pa")):
            self.assertEqual(self.draw(self.table(HEADER + header, ROW + cells), self.folder / name), 0)
            drawn = (self.folder / name).read_text(encoding="utf-8")
            self.assertEqual("Speed at which it flies" in drawn, name != "without.svg")
            self.assertEqual("the middle side, its bar" in drawn, name == "with.svg")

    def test_page_that_cannot_be(self):
        for row, name, words in ((ROW.replace("30 m", "30 fathoms"), "page.png", "no row of the table can be planned"), (ROW, "page.xyz", "--plot: Format 'xyz'")):
            with self.assertRaisesRegex(Exception, words):
                self.draw(self.table(HEADER, row), self.folder / name)
            self.assertEqual([path.name for path in self.folder.iterdir()], ["sides.csv"])


@unittest.skipIf(lacks("dask", "distributed"), "dask or distributed is missing")
class TestOnDask(Example):
    def start(self, *arguments):
        with open(self.folder / f"log{time.monotonic_ns()}", "wb") as log:
            process = subprocess.Popen([sys.executable, "-m", "distributed.cli." + arguments[0], *arguments[1:]], stdout=log, stderr=log, cwd=self.folder)
        self.addCleanup(process.wait, 10)
        self.addCleanup(process.send_signal, signal.SIGTERM)
        return process

    def test_two_workers_give_the_same_bits(self):
        with socket.socket() as probe:
            probe.bind(("127.0.0.1", 0))
            port = probe.getsockname()[1]
        address = f"tcp://127.0.0.1:{port}"
        self.start("dask_scheduler", "--host", "127.0.0.1", "--port", str(port), "--no-dashboard", "--no-show")
        for _ in range(2):
            self.start("dask_worker", address, "--nthreads", "1", "--no-nanny", "--no-dashboard", "--memory-limit", "0")
        out, program = self.folder / "out.csv", self.folder / "small_chunks.py"
        # no scheduler at first; then both workers get work: the table in seven partitions
        program.write_text(PARTITIONS.format(examples=str(EXAMPLES)), encoding="utf-8")
        done = self.run_example(address, SIDES, "-o", out, program=program)
        self.assertEqual(done.returncode, 1, done.stderr.decode())
        self.assertEqual(done.stdout.split(), [b"refused", b"True", b"False", b"2"])
        self.assertEqual(out.read_bytes(), self.call(SIDES).stdout)
        self.assertIn(b"invented_sides.csv:18: unreadable", done.stderr)


# As batch_on_dask.py, with a scheduler that is not there, and then in small partitions; says which workers got any.
PARTITIONS = """
import os, sys
sys.path.insert(0, {examples!r})
import batch_estimate, batch_on_dask
from distributed import Client

address, out = sys.argv[1], sys.argv[4]
patient = batch_on_dask.Client
batch_on_dask.Client = lambda address, timeout: patient("tcp://127.0.0.1:1", timeout=0.2)
try:
    batch_on_dask.main()
except OSError:
    print("refused", not os.path.exists(out), any(name.startswith(".") for name in os.listdir(os.path.dirname(out))))
batch_on_dask.Client = patient
batch_estimate.ROWS_AT_ONCE = 30
with Client(address, timeout=10) as client:
    client.wait_for_workers(2, 20)
    status = batch_on_dask.main()
    print(len([worker for worker, tasks in client.run(lambda dask_worker: dask_worker.state.executed_count).items() if tasks]))
sys.exit(status)
"""


if __name__ == "__main__":
    unittest.main()
