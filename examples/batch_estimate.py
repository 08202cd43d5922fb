#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""From a table of sides to a table of estimates: CSV in, CSV out.

Columns of SIDES are named after the fields of a side, "length", "frame.width", "drive.rated_torque"; "ends.rise" stands for both ends of
the side, drive_end.rise and free_end.rise. A cell holds a quantity with its unit, "5 ft 3 1/2 in", "1.6 m", "38 mm"; where the header
names a unit, "curtain.hip [in]", a bare number will do. An empty cell takes the usual value. Other columns, a customer or a note, are
carried along; before a text there that a spreadsheet would take for a formula stands an apostrophe.

ESTIMATES has all that SIDES has, and behind it "status", "fault", "findings" and the figures. A row that cannot be planned is reported on
stderr with its line and field, keeps its place, and stops no other.
"""

import argparse
import collections
import contextlib
import csv
import difflib
import functools
import itertools
import os
import re
import shutil
import signal
import stat
import sys
import tempfile
from array import array

try:
    import tunnelside as ts
    import tunnelside._core  # noqa: F401  # which another Python's build has not
except ImportError:
    # not installed: in the source tree it stands where make has gathered it
    sys.modules.pop("tunnelside", None)
    sys.path.append(os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "bindings", "python", "stage"))
    try:
        import tunnelside as ts
        import tunnelside._core  # noqa: F401
    except ImportError:
        if __name__ != "__main__":
            raise
        sys.exit(f"batch_estimate.py: this Python ({sys.executable}) has no package tunnelside: install it with pip install ./bindings/python, or build it with ./configure PYTHON={sys.executable} && make")

EPILOG = """\
exit status: 0 all rows planned, 1 some refused or a file at fault, 2 wrong usage.
For choosing parts, not a certificate: local codes, makers' ratings and licensed practice come first.
"""
FIGURES = (
    "drive_turns, drive_turns_least, drive_turns_most, opening, opening_far, seal, worst.drive, design_torque, drive_utilisation, longest_side, twist [deg], "
    "lag_elastic, bar_length, drive_end.sweep.cut_length, drive_end.sweep.kick_out_error, drive_end.side_force, drive_end.layout.cut_length, "
    "drive_end.layout.bow_from_top, drive_end.layout.member_from_top, free_end.sweep.cut_length, free_end.layout.cut_length"
)
ENDS = ("drive_end", "free_end")
ROWS_AT_ONCE = 10000  # bounds the memory; enough to keep threads busy
ROWS_PLOTTED = 2000
BAR_DELAY = 1  # s, before the work counts as long
# whatever bytes a note holds come out as they went in
WRITTEN = {"encoding": "utf-8", "errors": "surrogateescape", "newline": ""}
READ = {**WRITTEN, "encoding": "utf-8-sig"}
BARE_NUMBER = re.compile(r"\s*-?[\d.][\d./ e+-]*\s*")


class Unusable(Exception):
    """The table as a whole cannot be used."""


class Stopped(BaseException):
    """A signal that ends the program, once what it made aside is put away."""


def shown(text):
    """The text as a terminal may have it: what would steer it is spelt out."""
    return "".join(c if c.isprintable() else c.encode("unicode_escape").decode() for c in text)


def say(line):
    print(shown(line), file=sys.stderr)


# --- reading sides ---


def fields_of(structure, lists, prefix=""):
    """All fields of a structure, and of those within, by path; lists: those of its lists' elements too."""
    known = {}
    for field in ts.fields(structure):
        path = prefix + field.name
        if field.type == ts.Type.GROUP:
            known.update(fields_of(field.structure, lists, f"{path}."))
        elif field.type != ts.Type.LIST:
            known[path] = field
        elif lists:
            for i in range(field.capacity):
                known.update(fields_of(field.structure, lists, f"{path}[{i}]."))
    return known


def base_of(values):
    """The side that a row's choices make, with the usual values that follow from them."""
    side = {}
    for path, value in values.items():
        if isinstance(value, int):
            *groups, name = path.split(".")
            functools.reduce(lambda group, key: group.setdefault(key, {}), groups, side)[name] = value
    return ts.Side(**side)


def split_unit(header):
    """("curtain.hip", "in") from "curtain.hip [in]"."""
    match = re.fullmatch(r"\s*(.*?)\s*\[(.*)\]\s*", header)
    return match.groups() if match else (header.strip(), None)


class Column:
    """One column of SIDES: the fields that it fills, and how its cells are read."""

    def __init__(self, header, known):
        path, self.unit = split_unit(header)
        self.paths = [path] if path in known else [p for p in (path.replace("ends.", f"{end}.", 1) for end in ENDS) if p in known]
        self.name = path
        if self.paths:
            self.field = known[self.paths[0]]
            self.read = functools.lru_cache(maxsize=4096)(self.read_cell)
            if self.unit is not None:
                try:
                    self.read_text(f"1 {self.unit}")
                except ts.Error as error:
                    raise Unusable(f"column {header!r}: {error}") from None
        else:
            near = difflib.get_close_matches(path, [*known, *(p.replace("drive_end.", "ends.", 1) for p in known)], 3, 0.8)
            if near or self.unit is not None:
                raise Unusable(f"column {header!r}: a side has no such field" + (f"; near it are {', '.join(near)}" if near else ""))

    def read_text(self, text):
        return ts.quantity_read(text, self.field.unit) if self.field.type == ts.Type.COUNT else ts.field_read(self.field, text.strip() if self.field.choices else text)

    def read_cell(self, cell):
        """The cell's value in SI; for a choice its number, which alone is an int."""
        text = f"{cell.strip()} {self.unit}" if self.unit and BARE_NUMBER.fullmatch(cell) else cell
        try:
            value = self.read_text(text)
        except UnicodeEncodeError:
            raise ValueError(f"{self.name}: {cell!r} has a byte that is no character") from None
        except ts.Error as error:
            if self.field.type == ts.Type.CHOICE:
                raise ValueError(f"{self.name}: {cell!r} is not one of {', '.join(self.field.choices)}") from None
            raise ValueError(f"{self.name}: {text!r} {str(error).replace(self.field.name + ': ', '', 1)}") from None
        if self.field.type == ts.Type.CHOICE:
            return int(value)
        if self.field.type == ts.Type.COUNT and value != int(value):
            raise ValueError(f"{self.name}: {text!r} is not a whole number")
        return value


def no_formula(cell):
    """A text as a spreadsheet shows it, and does not work it out."""
    return "'" + cell if cell[:1] in ("=", "+", "-", "@") and len(cell) > 1 and not BARE_NUMBER.fullmatch(cell) else cell


class Table:
    """The header of SIDES, and what its rows mean."""

    def __init__(self, header):
        known = fields_of(ts.Side, lists=False)
        self.header = header
        self.columns = [Column(name, known) for name in header]
        filled = [path for column in self.columns for path in column.paths]
        twice = [path for path, count in collections.Counter(filled).items() if count > 1]
        if twice:
            raise Unusable(f"two columns fill {', '.join(twice)}")
        if not filled:
            raise Unusable("no column is named after a field of a side: see --fields")
        self.carried = [column.name for column in self.columns if not column.paths]

    def values(self, cells):
        """{path: value in SI} of a row; ValueError names the field that cannot be read."""
        if len(cells) != len(self.header):
            beyond = f", beyond it: {', '.join(map(repr, cells[len(self.header):]))}" if len(cells) > len(self.header) else ""
            raise ValueError(f"the row has {len(cells)} cells and the header {len(self.header)}{beyond}")
        values = {}
        for column, cell in zip(self.columns, cells):
            if column.paths and cell.strip():
                value = column.read(cell)
                values.update((path, value) for path in column.paths)
        return values


class Figure:
    """One figure of the plan: its path, and the unit in which it is written."""

    def __init__(self, text, known):
        self.path, self.unit = split_unit(text)
        if self.path not in known:
            near = difflib.get_close_matches(self.path, known, 3, 0.6)
            raise Unusable(f"figure {text!r}: a plan has no such figure" + (f"; near it are {', '.join(near)}" if near else ""))
        field = known[self.path]
        self.unit = self.unit or field.unit
        self.choices = field.choices if field.type == ts.Type.CHOICE else None
        try:
            self.factor = 1.0 if self.unit == field.unit else ts.quantity_read(f"1 {self.unit}", field.unit)
        except ts.Error as error:
            raise Unusable(f"figure {text!r}: {error}") from None
        self.header = self.path if self.unit in ("", "1") else f"{self.path} [{self.unit}]"

    def text(self, value):
        if value != value:
            return ""  # a side that does not have it
        return self.choices[int(value)] if self.choices else repr(value / self.factor)


def split_figures(text):
    return tuple(figure.strip() for figure in text.split(",") if figure.strip())


# --- planning ---


def plan_rows(rows, paths, workers=1):
    """Plans rows of {path: value}: a (status, findings, figures) each, in their order; a figure that a side does not have is NaN.

    Rows that fill the same fields and make the same choices go to the library together, as columns.
    """
    answers = [None] * len(rows)
    groups = collections.defaultdict(list)
    for i, values in enumerate(rows):
        groups[tuple((path, value if isinstance(value, int) else None) for path, value in values.items())].append(i)
    for key, members in groups.items():
        base = base_of(rows[members[0]])
        columns = {path: array("d", [rows[i][path] for i in members]) for path, choice in key if choice is None}
        columns.setdefault("length", array("d", bytes(8 * len(members))))  # so that it says how many rows there are, and that it is missing
        planned = ts.plan_many(columns, base=base, outputs=[*paths, "findings"], workers=workers)
        figures = zip(*(planned[path].tolist() for path in paths)) if paths else itertools.repeat(())
        for i, *answer in zip(members, planned["status"].tolist(), planned["findings"].tolist(), figures):
            answers[i] = answer
    return answers


def why_refused(values):
    """The fault of one row, planned alone; a field that nobody gave is said to be missing."""
    try:
        ts.plan_side(ts.row_side(values, 0, base=base_of(values)))
    except ts.Error as fault:
        missing = fault.status == ts.Status.OUT_OF_BOUNDS and fault.value == 0 and fault.field not in values
        return f"{fault.field}: not given, and has no usual value" if missing else str(fault)
    return ""


@functools.lru_cache(maxsize=1)
def prepare(header, asked):
    known = fields_of(ts.Plan, lists=True)
    return Table(header), [Figure(text, known) for text in asked]


def estimate(header, asked, rows, workers=1):
    """What stands behind each row of cells: status, fault, findings, and the figures as text."""
    table, figures = prepare(header, asked)
    answers, read = [None] * len(rows), {}
    blank = [""] * (1 + len(figures))
    for i, cells in enumerate(rows):
        try:
            read[i] = table.values(cells)
        except ValueError as fault:
            answers[i] = ["unreadable", str(fault), *blank]
    planned = plan_rows(list(read.values()), [figure.path for figure in figures], workers)
    for (i, values), (status, findings, results) in zip(read.items(), planned):
        if status:
            answers[i] = [ts.Status(status).name.lower(), why_refused(values), *blank]
        else:
            answers[i] = ["ok", "", ";".join(map(str, ts.findings_in(findings))), *(figure.text(value) for figure, value in zip(figures, results))]
    return answers


# --- the page of plots ---


class Sample:
    """Readable rows for the plots: all of a short table, evenly thinned out of a long one."""

    def __init__(self):
        self.rows, self.step, self.seen = [], 1, 0

    def add(self, values):
        if self.seen % self.step == 0:
            self.rows.append(values)
        self.seen += 1
        if len(self.rows) > ROWS_PLOTTED:
            self.rows, self.step = self.rows[::2], 2 * self.step


def figures_of(rows, *paths, workers=1):
    """The figures of rows as one list for each path; NaN where a row was refused too."""
    return list(zip(*(results for _, _, results in plan_rows(rows, paths, workers))))


def draw_air(ax, rows):
    """Changes of the air over the opening: of each side open as far as it goes, and of the middle one on its way."""
    full = sorted(zip(*figures_of(rows, "opening", "airing.changes"), range(len(rows))))
    ax.scatter([opening for opening, _, _ in full], [3600 * changes for _, changes, _ in full], s=9, color="0.6", label="the sides, open")
    most, _, middle = full[len(full) // 2]
    side = ts.row_side(rows[middle], 0, base=base_of(rows[middle]))
    openings = [most * k / 40 for k in range(41)]
    ax.plot(openings, [3600 * ts.air_through(side.air, side.length, metres).changes for metres in openings], label="the middle side, on its way")
    ax.set(title="Changes of air over opening", xlabel="opening, m", ylabel="changes of the air in an hour")
    ax.legend(fontsize=7)


def draw_wind(ax, rows):
    """Speed at which the curtain flies over what a metre of it weighs: of each side, and of the middle one with thinner and thicker bars."""
    weight, flies, wall = "blowing.weight", "blowing.flies_speed", "bar.tube.wall"
    known = sorted((*figures, k) for k, figures in enumerate(zip(*figures_of(rows, weight, flies))) if figures[1] == figures[1])
    ax.scatter([heavy for heavy, _, _ in known], [speed for _, speed, _ in known], s=9, color="0.6", label="the sides, shut, no rope holding them")
    for _, _, middle in known[len(known) // 2:][:1]:
        walls = [{**rows[middle], wall: rows[middle][wall] * (0.5 + k / 20)} for k in range(21)]
        ax.plot(*figures_of(walls, weight, flies), label="the middle side, its bar's wall from half to one and a half")
    ax.set(title="Speed at which it flies over weight", xlabel="bar, clips and wraps, and half the hanging film, N/m", ylabel="speed by its rule, m/s")
    ax.legend(fontsize=7)


def draw_page(sample, path, form, workers):
    import matplotlib

    matplotlib.use("Agg")
    import matplotlib.pyplot as plt

    torque, length, rise, kick = "design_torque", "length", "drive_end.eye_y", "drive_end.sweep.kick_out_error"
    planned = [(row, *figures) for row, *figures in zip(sample.rows, *figures_of(sample.rows, torque, rise, kick, workers=workers)) if figures[0] == figures[0]]
    if not planned:
        raise Unusable("--plot: no row of the table can be planned")
    # the side in the middle stands for the others in the lines
    rows = [row for row, *_ in planned]
    typical = sorted(planned, key=lambda each: each[1])[len(planned) // 2][0]
    aired = [row for row in rows if row.get("air.sides")]
    blown = [row for row in rows if row.get("wind.rule")]
    more = [(draw, mine) for draw, mine in ((draw_air, aired), (draw_wind, blown)) if mine]
    page, (by_bar, by_eye, by_drive, *panels) = plt.subplots(3 + len(more), 1, figsize=(8.27, 11.69))

    def bar_of(row):
        return row["bar.tube.diameter"], row["bar.tube.wall"]

    longest = max(row[length] for row in rows)
    lengths = [longest * 1.15 * (k + 1) / 40 for k in range(40)]
    for k, (bar, count) in enumerate(collections.Counter(map(bar_of, rows)).most_common(6)):
        mine = [(row[length], value) for row, value, _, _ in planned if bar_of(row) == bar]
        line = {**typical, "bar.tube.diameter": bar[0], "bar.tube.wall": bar[1]}
        by_bar.plot(lengths, *figures_of([{**line, length: metres} for metres in lengths], torque), color=f"C{k}", linewidth=1)
        by_bar.scatter(*zip(*mine), s=9, color=f"C{k}", label=f"{1000 * bar[0]:.1f} x {1000 * bar[1]:.2f} mm ({count} sides)")
    by_bar.set(title="Torque against length, by bar", xlabel="length of the side, m", ylabel="design torque, N m")
    by_bar.set_ylim(0, 1.05 * max(value for _, value, _, _ in planned))
    by_bar.legend(title="dots: the sides; lines: the middle one with each bar", fontsize=7, title_fontsize=7)

    above = [(eye - row["curtain.hip"], out) for row, _, eye, out in planned]
    by_eye.scatter(*zip(*[(1000 * eye, 1000 * out) for eye, out in above]), s=9, color="0.6", label="the sides, eye misplaced")
    rises = [0.01 * k for k in range(4, 61)]
    swept = [{**typical, **{f"{end}.hung": int(ts.Hung.EXTENDER) for end in ENDS}, **{f"{end}.rise": metres for end in ENDS}} for metres in rises]
    for label, column in zip(("eye misplaced", "eye in its place"), figures_of(swept, kick, "drive_end.sweep.kick_out")):
        by_eye.plot([1000 * metres for metres in rises], [1000 * out for out in column], label=f"the middle side, {label}")
    by_eye.set(title="Kick of the guide's foot against the eye's height")
    by_eye.set(xlabel="eye above the curtain's fixing, mm (0: hung on the hip)", ylabel="kick out, mm (log scale)")
    by_eye.set_yscale("log")
    by_eye.legend(fontsize=7)

    def drive_of(row):
        return row.get("drive.kind", 0), row["drive.rated_torque"]

    rated = [row for row in rows if row.get("drive.rated_torque")]
    drives, labels = {drive_of(row): {name: value for name, value in row.items() if name.startswith("drive.")} for row in rated}, []
    most = collections.Counter(map(drive_of, rated)).most_common(10)
    for height, (kind, torque_of_it) in enumerate(sorted(drive for drive, _ in most)):
        others = [{**{name: value for name, value in row.items() if not name.startswith("drive.")}, **drives[kind, torque_of_it]} for row in rows]
        used = figures_of(others, "drive_utilisation", workers=workers)[0]
        lifted = sum(value <= 1 for value in used)
        for color, side, chosen in (("C0", 1, lambda value: value <= 1), ("C1", -1, lambda value: not value <= 1)):
            dots = [(row[length], height + side * (0.05 + 0.03 * (k % 11))) for k, (row, value) in enumerate(zip(rows, used)) if chosen(value)]
            by_drive.scatter(*(zip(*dots) if dots else ([], [])), s=6, color=color)
        labels.append(f"{ts.DriveKind(kind)}, {torque_of_it:.3g} N m\nlifts {lifted} of {len(rows)}")
    which = "each drive" if len(drives) == len(most) else f"the {len(most)} most common of {len(drives)} drives"
    by_drive.set(title=f"Which sides {which} can lift with its safety factor (above its line: it can)", xlabel="length of the side, m")
    by_drive.set_yticks(range(len(labels)), labels, fontsize=7)
    by_drive.grid(axis="y", linewidth=0.4)
    for ax, (draw, mine) in zip(panels, more):
        draw(ax, mine)
    thinned = f"{len(sample.rows)} of {sample.seen} rows drawn. " if sample.step > 1 else ""
    page.text(0.5, 0.008, f"{thinned}For choosing parts, not a certificate: local codes, makers' ratings and licensed practice come first.", ha="center", fontsize=7)
    page.tight_layout(rect=(0, 0.02, 1, 1))
    try:
        page.savefig(path, format=form)
    except ValueError as error:  # a kind of file that there is not
        raise Unusable(f"--plot: {error}") from None
    plt.close(page)


# --- files ---


def is_same_file(one, other):
    return os.path.realpath(one) == os.path.realpath(other) or (os.path.exists(one) and os.path.exists(other) and os.path.samefile(one, other))


@contextlib.contextmanager
def whole_file(path):
    """A path beside the one wanted, which takes its place at the end, or never; a device or a pipe is written to as it is."""
    if os.path.exists(path) and not os.path.isfile(path) and not os.path.isdir(path):
        yield path
        return
    path = os.path.realpath(path)  # through links, whether what they name is there or not
    aside = os.path.join(os.path.dirname(path), f".tunnelside-{os.urandom(6).hex()}")  # named before it is there: a signal may come with it
    try:
        os.close(os.open(aside, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o600))
        yield aside
        mask = os.umask(0)
        os.umask(mask)
        os.chmod(aside, stat.S_IMODE(os.stat(path).st_mode) if os.path.exists(path) else 0o666 & ~mask)
        os.replace(aside, path)
    except BaseException:
        with contextlib.suppress(FileNotFoundError):
            os.unlink(aside)
        raise


@contextlib.contextmanager
def standard_output():
    """Standard output, which takes everything, or it is said that it does not."""
    if sys.stdout is None:
        raise Unusable("standard output: cannot be written: it is closed")
    try:
        yield sys.stdout
        sys.stdout.flush()
    except OSError as error:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())  # for what it still holds when Python ends
        raise Unusable(f"standard output: cannot be written: {error.strerror}") from None


class Parser(argparse.ArgumentParser):
    """One whose help is as complete as the rest of the output."""

    def print_help(self, file=None):
        with standard_output() as out:
            out.write(self.format_help())


class Progress:
    """How far the file is read, on a terminal, once the work turns out to be long."""

    def __init__(self, stream):
        self.stream, self.bar = stream, None
        if sys.stderr.isatty() and stream.seekable():
            with contextlib.suppress(ImportError):
                from tqdm import tqdm

                size = os.fstat(stream.fileno()).st_size
                self.bar = tqdm(total=size, unit="B", unit_scale=True, delay=BAR_DELAY, file=sys.stderr)

    def show(self):
        if self.bar is not None:
            self.bar.update(self.stream.buffer.tell() - self.bar.n)

    def write(self, line):
        if self.bar is not None:
            self.bar.clear()
        say(line)

    def close(self):
        if self.bar is not None:
            self.bar.close()


def chunks_of(reader, size, name):
    """Rows with their lines, some at a time; empty lines hold nothing."""
    numbered = ((reader.line_num, cells) for cells in reader if cells)
    try:
        while chunk := list(itertools.islice(numbered, size)):
            yield chunk
    except csv.Error as error:
        raise Unusable(f"{name}:{reader.line_num}: {error}") from None


def here(chunks, header, asked, workers):
    """Estimates chunk after chunk on this machine."""
    for chunk in chunks:
        yield chunk, estimate(header, asked, [cells for _, cells in chunk], workers)


def run(source, target, asked, name, estimates, sample=None, say=say, show=lambda: None):
    """Estimates a whole table chunk by chunk; returns how many rows were refused. estimates: as here(), without workers."""
    reader, writer = csv.reader(source, strict=True), csv.writer(target, lineterminator="\n")
    header = next(chunks_of(reader, 1, name), [(0, ())])[0][1]
    if not header:
        raise Unusable(f"{name}: the table is empty: its first line must name the columns")
    header = tuple(header)
    table, figures = prepare(header, asked)
    answered = ["status", "fault", "findings", *(figure.header for figure in figures)]
    twice = set(header).intersection(answered)
    if twice:
        raise Unusable(f"{name}: a column would stand twice in the estimates: {', '.join(sorted(twice))}")
    if table.carried:
        say(f"{name}: carried along, no field of a side: {', '.join(table.carried)}")
    writer.writerow([*header, *answered])
    refused = 0
    for chunk, answers in estimates(chunks_of(reader, ROWS_AT_ONCE, name), header, asked):
        for (line, cells), answer in zip(chunk, answers):
            kept = [cell if column.paths else no_formula(cell) for column, cell in zip(table.columns, cells)]
            writer.writerow([*kept, *[""] * (len(header) - len(cells)), *answer])
            if answer[0] != "ok":
                refused += 1
                say(f"{name}:{line}: {answer[0]}: {answer[1]}")
            elif sample is not None:
                sample.add(table.values(cells))
        show()
    return refused


def print_fields(out):
    for title, known in (("Columns of SIDES", fields_of(ts.Side, lists=False)), ("Figures", fields_of(ts.Plan, lists=True))):
        print(f"{title}:", file=out)
        for path, field in known.items():
            print(f"  {path:<38} {'|'.join(field.choices) or field.unit:<20} {field.meaning}", file=out)


def main():
    parser = Parser(description=__doc__, epilog=EPILOG, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("sides", metavar="SIDES", nargs="?", help="CSV of sides; - is standard input")
    parser.add_argument("-o", "--output", metavar="ESTIMATES", help="CSV of estimates, written whole or not at all; else standard output")
    parser.add_argument("--figures", default=FIGURES, help="which figures of the plan, parted by commas, each with a unit in brackets if it is not to be SI: "
                        "'drive_turns, worst.drive [lbf ft]'")
    parser.add_argument("--workers", type=int, default=1, help="threads that plan (usual: 1); the answers are the same whatever their number")
    parser.add_argument("--plot", metavar="PAGE", help="also draw a page of plots (.png, .pdf or .svg; needs matplotlib)")
    parser.add_argument("--fields", action="store_true", help="list the columns and figures there are, with their units")
    options = parser.parse_args()
    if options.fields:
        with standard_output() as out:
            print_fields(out)
        return 0
    if options.sides is None:
        parser.error("which SIDES?")
    if options.workers < 1:
        parser.error(f"--workers: {options.workers} is below 1")
    files = [path for path in (options.sides, options.output, options.plot) if path not in (None, "-")]
    if any(is_same_file(one, other) for one, other in itertools.combinations(files, 2)):
        parser.error("SIDES, ESTIMATES and PAGE must be different files")
    name = "standard input" if options.sides == "-" else options.sides
    asked = split_figures(options.figures)
    estimates = functools.partial(here, workers=options.workers)
    sample = Sample() if options.plot else None
    with contextlib.ExitStack() as stack:
        source = stack.enter_context(open(0 if options.sides == "-" else options.sides, **READ))
        page = stack.enter_context(whole_file(options.plot)) if options.plot else None
        made = stack.enter_context(whole_file(options.output)) if options.output else None
        target = stack.enter_context(open(made, "w", **WRITTEN) if made else tempfile.TemporaryFile("w+", **WRITTEN))
        progress = Progress(source)
        stack.callback(progress.close)
        refused = run(source, target, asked, name, estimates, sample, progress.write, progress.show)
        target.flush()
        if page:
            draw_page(sample, page, os.path.splitext(options.plot)[1][1:] or "png", options.workers)
        if not made:
            target.buffer.seek(0)
            with standard_output() as out:
                shutil.copyfileobj(target.buffer, out.buffer)
    if refused:
        say(f"{name}: {refused} rows refused")
    return 1 if refused else 0


def command():
    """main(), with what stops it said in a line."""
    try:
        return main()
    except (Unusable, OSError, ImportError) as error:
        say(f"batch_estimate: {error}")
    return 1


def stop(number, _):
    raise Stopped(number)


def as_program(command):
    """Runs a command to the end of Python; a signal ends it as it would, but leaves nothing half-made."""
    if sys.stderr is None:
        sys.stderr = open(os.devnull, "w")  # or print() would say it on standard output
    for number in (signal.SIGTERM, getattr(signal, "SIGHUP", signal.SIGTERM)):
        if signal.getsignal(number) == signal.SIG_DFL:
            signal.signal(number, stop)
    try:
        sys.exit(command())
    except KeyboardInterrupt:
        number = signal.SIGINT
    except Stopped as stopped:
        number = stopped.args[0]
    signal.signal(number, signal.SIG_DFL)
    os.kill(os.getpid(), number)


if __name__ == "__main__":
    as_program(command)
