# SPDX-License-Identifier: MIT
"""How fast the bindings are: medians of one run, and what was asked of them. Fails only where an answer is wrong.

    make bench-python

Each figure is the median of several rounds, in which the two sides of a comparison take turns, so that what else the machine does meets both.
$BENCH_ROWS is the C program that plans the same rows.
"""
import os
import struct
import subprocess
import sys
import tempfile
import time
from array import array
from pathlib import Path
from statistics import median

import tunnelside as ts

ROWS, ROUNDS = 10_000, 9
INPUTS = {  # spread over the rows; all can be planned
    "length": (12.0, 46.0), "curtain.hip": (1.55, 1.72), "bar.tube.wall": (0.0018, 0.0034), "drive.rated_torque": (30.0, 90.0), "drive_end.rise": (0.2, 0.45),
}
FIGURES = (
    "worst.drive design_torque drive_turns open.underside opening_far longest_side twist lag_elastic drive_end.sweep.kick_out_error drive_end.side_force "
    "drive_end.layout.cut_length free_end.sweep.cut_length"
).split()
KSI = 4448.2216152605 / 0.0254**2

wrong = []


def must(right, what):
    if not right:
        wrong.append(what)
        print(f"bench: WRONG: {what}", file=sys.stderr)


def clock(call, repeat=1):
    start = time.perf_counter()
    for _ in range(repeat):
        call()
    return (time.perf_counter() - start) / repeat


def in_turn(*calls, rounds=ROUNDS):
    """The medians of calls that give seconds, taken in turn, after a round that warms up."""
    times = [[call() for call in calls] for _ in range(rounds + 1)][1:]
    return [median(each) for each in zip(*times)]


def say(what, took, asked="", scale=1e6, unit="us"):
    print(f"{what:<58} {took * scale:10.2f} {unit:<3} {asked}")


def ratio(what, value, asked):
    print(f"{what:<58} {value:10.2f} {'x':<3} {asked}")


# --- the side: the same as tests/bench_side.h ---


def end():
    return ts.End(
        guide=ts.Guide(tube=ts.Round(diameter=0.0334, wall=0.00165), material=ts.Material(grade="A53_B")),
        extender=ts.Extender(tube=ts.Square(side=0.0508, wall=0.003), material=ts.Material(grade="A500_B_shaped"), slant="angle", angle=0.7, member_height=1.0,
                             member_outer=4.6, stock=6.0),
    )


def bench_side():
    return ts.Side(
        length=29.26,
        frame=ts.Frame(tube=ts.Round(diameter=0.0483, wall=0.0025), width=9.144, leg_height=1.75, peak_height=3.7),
        curtain=ts.Curtain(hip=1.7, sill=0.3),
        bar=ts.Bar(tube=ts.Round(diameter=0.0334, wall=0.0025), material=ts.Material(grade="A53_B"), splices=4),
        drive=ts.Drive(rated_torque=60.0, stall_torque=150.0),
        drive_end=end(),
        free_end=end(),
    )


def spread(low, high, rows, step):
    """Values that jump about within bounds, the same on every machine."""
    return array("d", (low + (high - low) * ((step * row) % rows) / rows for row in range(rows)))


def many(rows):
    return {path: spread(low, high, rows, 2 * k + 3) for k, (path, (low, high)) in enumerate(INPUTS.items())}


# --- what is measured ---


def in_c(folder, columns):
    """The C program on these rows: seconds of a round's loop, and of one call; and the figures' file."""
    inputs, outputs = folder / "inputs", folder / "outputs"
    inputs.write_bytes(b"".join(struct.pack(f"{len(columns)}d", *row) for row in zip(*columns.values())))

    def run():
        answer = subprocess.run([os.environ.get("BENCH_ROWS", "tests/bench_rows"), inputs, outputs, "3"], check=True, capture_output=True, text=True)
        return [float(seconds) for seconds in answer.stdout.split()]

    return run, outputs


def against_c(folder):
    side, columns = bench_side(), many(ROWS)
    out = {path: array("d", bytes(8 * ROWS)) for path in FIGURES}
    run, outputs = in_c(folder, columns)

    def in_python(workers=1):
        return median(clock(lambda: ts.plan_many(columns, base=side, outputs=FIGURES, out=out, workers=workers)) for _ in range(3))

    c, one = in_turn(lambda: run()[0], in_python)
    planned = array("d", outputs.read_bytes())
    must(all(planned[k :: len(FIGURES)] == out[path] for k, path in enumerate(FIGURES)), "plan_many does not give the bits of the C loop")
    say(f"C loop over {ROWS} rows, for each row", c / ROWS)
    say("plan_many with out=, for each row", one / ROWS)
    ratio("  against the C loop", one / c, "at most 1.15 asked")
    kept = {path: array("d", column) for path, column in out.items()}
    alone, two = in_turn(in_python, lambda: in_python(2))
    must(out == kept, "two workers do not give the bits of one")
    say("plan_many with two workers, for each row", two / ROWS)
    ratio("  faster than one", alone / two, f"at least 1.8 asked, on two idle cores (load meanwhile {os.getloadavg()[0]:.1f})")


def yields(values):
    """The analyst's own numbers for the grades of the side."""
    for path in ("bar.material", "drive_end.guide.material", "free_end.guide.material"):
        values[f"{path}.yield"] = 35 * KSI
    for which in ("drive_end", "free_end"):
        values[f"{which}.extender.material.yield"] = 46 * KSI
        values[f"{which}.extender.eye_material.yield"] = 36 * KSI


def analyst_side(spacing):
    """The side of the benchmark with its angles left to be found, strengths and limits given."""
    def searching(which):
        return which.replace(extender=which.extender.replace(slant="best", spacing=spacing, bolt_limit=4000.0, pull_limit=6000.0, eye_material=ts.Material(grade="given", yield_=36 * KSI)))

    side = bench_side()
    return side.replace(stops=side.stops.replace(gap=0.3), bar=side.bar.replace(screw_limit=2500.0), drive_end=searching(side.drive_end), free_end=searching(side.free_end))


def values_of(side):
    """A side as {field: number}."""
    values = {}

    def walk(prefix, structure):
        for field in ts.fields(type(structure)):
            value = getattr(structure, field.name.replace("yield", "yield_"))
            if field.type == ts.Type.GROUP:
                walk(f"{prefix}{field.name}.", value)
            elif field.type != ts.Type.LIST and value is not None:
                values[prefix + field.name] = float(value)

    walk("", side)
    return values


def far_apart(mine, theirs):
    """The greatest difference of two columns, relative where they are above 1; what neither has is no difference, and what one has is an endless one."""
    return max(0.0 if a != a and b != b else abs(a - b) / max(1.0, abs(b)) if a == a and b == b else float("inf") for a, b in zip(mine, theirs))


def agreement(rows, spacing):
    """Sides with best angles planned by the analyst and by the library: side, columns, values, and how far each figure is apart.

    spacing: m, of the bolts at least. Where it decides the angle, or another bound does, the angle is known to all digits; in the bottom of a
    valley, to half of them.
    """
    import analyst

    side, columns = analyst_side(spacing), many(rows)
    values = values_of(side)
    yields(values)
    values.update((path, list(column)) for path, column in columns.items())
    figures = analyst.plan(values)
    planned = ts.plan_many(columns, base=side, outputs=list(figures))
    return side, columns, values, {path: far_apart(figures[path].tolist(), planned[path].tolist()) for path in figures}


def against_analyst():
    try:
        import analyst
    except ImportError as error:
        print(f"against the analyst's script: not measured: {error}")
        return
    rows = 200
    side, columns, values, apart = agreement(rows, spacing=1.4)
    worst = max(apart.values())
    must(worst <= 1e-9, f"plan and analyst differ by {worst:.1e}")
    out = {path: array("d", bytes(8 * rows)) for path in apart}
    alone = {**values, **{path: float(getattr_path(side, path)) for path in columns}}
    by_hand, plan, batch, at_once = in_turn(
        lambda: clock(lambda: analyst.plan(alone), 3), lambda: clock(lambda: ts.plan_side(side), 300), lambda: clock(lambda: analyst.plan(values)) / rows,
        lambda: clock(lambda: ts.plan_many(columns, base=side, outputs=list(apart), out=out), 3) / rows,
    )
    print(f"{len(apart)} figures of a plan with both best angles sought, by NumPy and SciPy: apart by {worst:.0e} (at most 1e-09 asked)")
    say("  the analyst's script, one side at a time", by_hand)
    say("  plan_side", plan)
    ratio("    faster", by_hand / plan, "at least 10 asked")
    say(f"  the analyst's script, {rows} sides at once, for each", batch)
    say(f"  plan_many, {rows} sides, {len(apart)} figures, for each", at_once)
    ratio("    faster", batch / at_once, "at least 10 asked")


def getattr_path(structure, path):
    for name in path.split("."):
        structure = getattr(structure, name)
    return structure


def at_the_prompt(folder):
    side = bench_side()
    run, _ = in_c(folder, {path: column[:1] for path, column in many(2).items()})

    def asked_of(plan):
        return plan.worst.drive, plan.drive_turns, plan.drive_end.sweep.cut_length

    c, whole, changed = in_turn(
        lambda: run()[1], lambda: clock(lambda: asked_of(ts.plan_side(bench_side())), 500), lambda: clock(lambda: asked_of(ts.plan_side(side.replace(length=30.0))), 500)
    )
    say("one full plan at the prompt: built, called, read", whole)
    say("  less the C call", whole - c, "at most 10 asked")
    say("  less the C call, one value of a side replaced", changed - c)


def roll_columns():
    try:
        import numpy as np
    except ImportError as error:
        print(f"roll columns: not measured: {error}")
        return
    roll = ts.Roll(core=0.0354)
    D0, te = roll.core, roll.packing * roll.thickness
    for rows in (1000, 10_000, 100_000):
        taken_up = np.linspace(0, 1.6, rows)
        out, repeat = np.empty(rows), 200_000 // rows

        def expression():
            return 2 * taken_up / np.pi / (D0 + np.sqrt(D0**2 + 4 * te * taken_up / np.pi))

        ts.roll_wraps_many(roll, taken_up, out)
        must(np.allclose(out, expression(), rtol=1e-15, atol=0), "roll_wraps_many differs from NumPy's expression")
        numpys, ours = in_turn(lambda: clock(expression, repeat), lambda: clock(lambda: ts.roll_wraps_many(roll, taken_up, out), repeat))
        say(f"roll_wraps by NumPy's expression, {rows} rows, for each", numpys / rows, "", 1e9, "ns")
        say(f"  roll_wraps_many with out=, {numpys / ours:.2f} times as fast", ours / rows, "no slower asked", 1e9, "ns")


def importing():
    def start(code):
        return lambda: clock(lambda: subprocess.run([sys.executable, "-c", code], check=True))

    plain, with_it = in_turn(start("pass"), start("import tunnelside, sys; assert 'numpy' not in sys.modules"), rounds=15)
    say("import, without numpy", with_it - plain, "below 20 asked", 1e3, "ms")


def main():
    if not hasattr(os, "getloadavg"):
        os.getloadavg = lambda: (float("nan"),) * 3
    print(f"tunnelside {ts.__version__}, Python {sys.version.split()[0]}, {os.cpu_count()} cores, load {os.getloadavg()[0]:.1f}; medians of {ROUNDS} rounds")
    with tempfile.TemporaryDirectory() as folder:
        against_c(Path(folder))
        at_the_prompt(Path(folder))
    importing()
    roll_columns()
    against_analyst()
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
