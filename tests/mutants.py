#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Would the C tests notice? make mutants changes lib/ in one place at a time, seeded, and runs the tests that reach it.

A change that compiles to the same code is none. One that no test notices is alive, and is printed; tests/mutants.tsv names the
living that mean the same (file, the line as it stands, the change, why), and these count as none. As many are taken of each floor
as of every other, and of the tables of fields, so that a small floor is judged too. It fails where less than 95 % of all, or
90 % of a part, are noticed. MUTANTS (how many), SEED, JOBS and PARTS (which) change what is tried; AGAIN=yes tries only those that
the run before left alive. Everything is made in mutants/.
"""
import concurrent.futures
import hashlib
import json
import os
import pathlib
import random
import re
import resource
import shlex
import shutil
import subprocess
import sys
import time

SOURCE = pathlib.Path(os.environ["top_srcdir"]).resolve()
WORK = pathlib.Path("mutants").resolve()
KEPT = SOURCE / "tests/mutants.tsv"
SEED = os.environ.get("SEED", "1")
WANTED = int(os.environ.get("MUTANTS", "420"))
PARTS = os.environ.get("PARTS", "").split()
AGAIN = bool(os.environ.get("AGAIN"))
ALIVE = WORK / "alive"
JOBS = int(os.environ.get("JOBS", os.cpu_count()))
ALL, PART = 0.95, 0.90

CC = shlex.split(os.environ["CC"])
FLAGS = shlex.split(os.environ["MUTANT_CFLAGS"]) + ["-g0"]
LIBRARY_FLAGS = FLAGS + shlex.split(os.environ["LIBRARY_CFLAGS"])
TEST_FLAGS = FLAGS + shlex.split(os.environ["TEST_CFLAGS"])
LIBS = shlex.split(os.environ["TEST_LIBS"])
LIBRARY = [name for name in os.environ["LIBRARY_SOURCES"].split() if name.endswith(".c")]
TESTS = [name for name in os.environ["TEST_SOURCES"].split() if name.endswith(".c")]
FLOOR_OF = {pathlib.Path(name).stem.removeprefix("test_"): name.split("/")[1] for name in TESTS}

# --- what can be changed ---

TOKEN = re.compile(r"[A-Za-z_]\w*|\.?\d(?:[eEpP][+-]|[\w.])*|->|\+\+|--|<<=|>>=|[-+*/%&|^<>=!]=|&&|\|\||<<|>>|\S")
IGNORED = re.compile(r"/\*.*?\*/|//[^\n]*|\"(?:\\.|[^\"\\\n])*\"|'(?:\\.|[^'\\\n])*'", re.S)
TABLE = re.compile(r"/\* clang-format off \*/.*?/\* clang-format on \*/", re.S)
SWAPPED = {
    "bound": {"<": "<=", "<=": "<", ">": ">=", ">=": ">"},
    "relation": {"<": ">=", "<=": ">", ">": "<=", ">=": "<", "==": "!=", "!=": "=="},
    "arithmetic": {"+": "-", "-": "+", "*": "/", "/": "*", "+=": "-=", "-=": "+=", "*=": "/=", "/=": "*=", "++": "--", "--": "++"},
    "logic": {"&&": "||", "||": "&&"},
}
NOT_AN_OPERAND = {"return", "case", "sizeof", "else"}
STATEMENT = re.compile(r"^[ \t]+(?!return\b|break\b|continue\b|goto\b|case\b|else\b|const\b|static\b|struct\b|enum\b|typedef\b|double\b|int\b|char\b|size_t\b|void\b"
                       r"|unsigned\b|long\b|tside_\w+ +\**\w+ *[=;,\[])(\S[^;{}\n]*(?:=|\+\+|--|\))[^;{}\n]*|\S[^;{}\n]*(?:\+\+|--));$", re.M)
CONDITION = re.compile(r"\b(?:if|while) \(")


def mask(text):
    """The text with comments, strings and directives blanked, so that places stay."""
    blank = IGNORED.sub(lambda found: re.sub(r"[^\n]", " ", found[0]), text)
    return re.sub(r"^[ \t]*#(?:\\\n|[^\n])*", lambda found: found[0] if re.match(r"\s*#\s*define", found[0]) else re.sub(r"[^\n]", " ", found[0]), blank, flags=re.M)


def another_number(token):
    """A near number: a tolerance a thousandfold, else one more, or a hundredth more."""
    digits = re.match(r"(?:0[xX])?[\d.]+(?:[eE][-+]?\d+)?", token)[0]
    if token[:2].lower() == "0x":
        return None
    if re.fullmatch(r"\d+", digits):
        return f"{int(digits) + 1}{token[len(digits):]}"
    value = float(digits)
    return repr(value * 1000 if abs(value) < 1e-5 else value * 1.01 if value else 1.0)


def closing(text, start):
    """The place of the parenthesis that closes the one at start."""
    depth = 0
    for place in range(start, len(text)):
        depth += {"(": 1, ")": -1}.get(text[place], 0)
        if depth == 0:
            return place
    return None


def changes_of(name):
    """Every change that could be made of a file: (part, operator, start, end, new text)."""
    text = (SOURCE / name).read_text()
    masked = mask(text)
    tables = [found.span() for found in TABLE.finditer(text)]
    floor = name.split("/")[1]

    def made(operator, start, end, new):
        inside = any(first <= start < last for first, last in tables)
        return ("tables" if inside else floor, operator, start, end, new)

    before = None
    for found in TOKEN.finditer(masked):
        token = found[0]
        for operator, swapped in SWAPPED.items():
            binary = before and (re.match(r"[\w)\]]", before[-1]) and before not in NOT_AN_OPERAND)
            if token in swapped and (binary or token in ("++", "--")):
                yield made(operator, *found.span(), swapped[token])
        if token == "-" and not (before and re.match(r"[\w)\]]", before[-1]) and before not in NOT_AN_OPERAND):
            yield made("sign", *found.span(), " ")
        if token == "!":
            yield made("not", *found.span(), " ")
        if token[0].isdigit() or (token[0] == "." and len(token) > 1):
            new = another_number(token)
            if new:
                yield made("number", *found.span(), new)
        before = token
    for found in STATEMENT.finditer(masked):
        if found[1].count("(") == found[1].count(")"):
            yield made("left out", found.start(1), found.end(1), "")
    for found in CONDITION.finditer(masked):
        last = closing(masked, found.end() - 1)
        if last:
            yield made("condition", found.end(), last, f"!({text[found.end():last]})")


class Mutant:
    def __init__(self, name, part, operator, start, end, new):
        self.name, self.part, self.operator, self.start, self.end, self.new = name, part, operator, start, end, new
        self.text = (SOURCE / name).read_text()
        self.line = self.text.count("\n", 0, start) + 1
        self.old = self.text[start:end]
        self.state = None

    def changed(self):
        return self.text[:self.start] + self.new + self.text[self.end:]

    def key(self):
        """Where it is, whatever lines come or go: the line's text, the place in it, the change."""
        first = self.text.rfind("\n", 0, self.start) + 1
        last = self.text.find("\n", self.end)
        line = self.text[first:last].strip()
        column = self.start - first - (len(self.text[first:last]) - len(self.text[first:last].lstrip()))
        return self.name, " ".join(line.split()), f"{column}: {' '.join(self.old.split())} -> {' '.join(self.new.split())}"

    def row(self):
        return "\t".join(self.key())

    def __str__(self):
        name, line, change = self.key()
        return f"{name}:{self.line}: {change}\t{line}"


# --- compiling and running ---

def compiled(source, made, flags, floor=None):
    command = CC + flags + (["-iquote", str(floor)] if floor else []) + ["-c", "-o", str(made), str(source)]
    return subprocess.run(command, stderr=subprocess.PIPE, text=True, cwd=SOURCE)


def object_name(name):
    return name.replace("/", "_")[:-2] + ".o"


def build(folder, library_flags):
    """Objects of everything, in mutants/FOLDER."""
    folder = WORK / folder
    folder.mkdir(parents=True, exist_ok=True)
    wanted = [(name, library_flags) for name in LIBRARY] + [(name, TEST_FLAGS) for name in TESTS]

    def one(job):
        name, flags = job
        made = compiled(name, folder / object_name(name), flags)
        if made.returncode:
            sys.exit(f"{name}: {made.stderr}")

    with concurrent.futures.ThreadPoolExecutor(JOBS) as pool:
        list(pool.map(one, wanted))
    library = folder / "library.a"
    library.unlink(missing_ok=True)
    subprocess.run(["ar", "rcs", library] + [folder / object_name(name) for name in LIBRARY], check=True)
    return folder


def linked(folder, made, first=(), more=()):
    subprocess.run(CC + list(more) + ["-o", str(made)] + [str(folder / object_name(name)) for name in TESTS] + [str(each) for each in first]
                   + [str(folder / "library.a")] + LIBS, check=True, cwd=SOURCE)


def run(program, suite, seconds, **variables):
    """Whether the suite passes; one that hangs does not: it is ended by the processor's time, which other work does not use up."""
    def limits():
        resource.setrlimit(resource.RLIMIT_AS, (4 << 30, 4 << 30))
        resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
        resource.setrlimit(resource.RLIMIT_CPU, (seconds, seconds))

    environment = dict(os.environ, CK_FORK="no", CK_RUN_SUITE=suite, **variables)
    return subprocess.run([program], env=environment, cwd=WORK, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
                          preexec_fn=limits).returncode == 0


def reached_by(folder, program, suites):
    """For each suite the lines of the library that it runs, and its seconds, counted by gcc."""
    reached = {}

    def one(suite):
        counted = WORK / "reached" / suite
        shutil.rmtree(counted, ignore_errors=True)
        counted.mkdir(parents=True)
        began = time.monotonic()
        if not run(program, suite, 3600, GCOV_PREFIX=str(counted)):
            sys.exit(f"suite {suite} fails without any change")
        seconds = time.monotonic() - began
        lines = {}
        for counts in counted.rglob("*.gcda"):
            notes = folder / (counts.stem + ".gcno")
            shutil.copy(notes, counts.parent)
            told = subprocess.run(["gcov", "--json-format", "--stdout", counts.name], cwd=counts.parent, capture_output=True, text=True, check=True).stdout
            for file in json.loads(told)["files"]:
                lines.setdefault(file["file"], []).extend(line["line_number"] for line in file["lines"] if line["count"])
        return suite, {"seconds": seconds, "lines": lines}

    with concurrent.futures.ThreadPoolExecutor(JOBS) as pool:
        for suite, known in pool.map(one, suites):
            reached[suite] = known
    shutil.rmtree(WORK / "reached")
    return reached


def known_reached(suites):
    """What each suite reaches, counted anew where the tests are newer."""
    known = WORK / "reached.json"
    if not known.exists() or known.stat().st_mtime < pathlib.Path("tests/check_tunnelside").stat().st_mtime:
        counting = build("counting", LIBRARY_FLAGS + ["--coverage"])
        linked(counting, counting / "tests", more=["--coverage"])
        known.write_text(json.dumps(reached_by(counting, counting / "tests", suites)))
    return json.loads(known.read_text())


def suites_for(mutant, reached):
    """The suites that run the changed line, those that can tell: its floor's first (of tables the lowest, which reads them all), the quickest of these.

    A table or a macro is no line that is run.
    """
    run_in = mutant.part != "tables" and not mutant.text[mutant.text.rfind("\n", 0, mutant.start) + 1:].startswith("#")
    floor = "base" if mutant.part == "tables" else mutant.name.split("/")[1]
    ordered = sorted(reached, key=lambda suite: (FLOOR_OF[suite] != floor, reached[suite]["seconds"]))
    # A condition may go on over lines, of which gcc counts one.
    near = range(mutant.line - 3, mutant.line + 4)
    found = [suite for suite in ordered if not run_in or not set(near).isdisjoint(reached[suite]["lines"].get(mutant.name, ()))]
    return found or ordered


def judge(mutant, folder, reached, kept):
    """Says what became of a mutant: none (does not compile), same, equal, noticed, alive."""
    place = WORK / "changed" / hashlib.sha1(str(mutant).encode()).hexdigest()[:12]
    place.mkdir(parents=True, exist_ok=True)
    try:
        source = place / pathlib.Path(mutant.name).name
        source.write_text(mutant.changed())
        made = place / "changed.o"
        floor = (SOURCE / mutant.name).parent
        if compiled(source, made, LIBRARY_FLAGS + ["-w"], floor).returncode:
            return "none"
        if made.read_bytes() == (folder / object_name(mutant.name)).read_bytes():
            return "same"
        program = place / "tests"
        linked(folder, program, [made])
        for suite in suites_for(mutant, reached):
            if not run(program, suite, 3 + int(10 * reached[suite]["seconds"])):
                return "noticed"
        return "equal" if mutant.key() in kept else "alive"
    finally:
        shutil.rmtree(place)


def kept_equal():
    lines = [line.split("\t") for line in KEPT.read_text().splitlines() if line and not line.startswith("#")] if KEPT.exists() else []
    return {tuple(line[:3]): line[3] for line in lines}


def stale(kept):
    """Those of the kept that are no change of lib/ any more: their lines were written anew."""
    possible = {Mutant(name, *change).key() for name in {row[0] for row in kept} if name in LIBRARY for change in changes_of(name)}
    return sorted(set(kept) - possible)


def table(title, mutants, by):
    print(f"{title:<12} {'noticed':>8} {'alive':>6} {'equal':>6}   share")
    worst = 1
    for name in sorted({by(each) for each in mutants}):
        states = [each.state for each in mutants if by(each) == name]
        noticed, alive = states.count("noticed"), states.count("alive")
        share = noticed / (noticed + alive) if noticed + alive else 1
        worst = min(worst, share)
        print(f"{name:<12} {noticed:8} {alive:6} {states.count('equal'):6}   {100 * share:5.1f} %")
    print()
    return worst


def try_some(queue, wanted, judge_one):
    """So many of a queue, those that are a change; who is left alive is told at once, and written down."""
    judged = []
    with concurrent.futures.ThreadPoolExecutor(JOBS) as pool:
        while len(judged) < wanted:
            batch = [mutant for _, mutant in zip(range(wanted - len(judged)), queue)]
            if not batch:
                break
            for mutant, state in zip(batch, pool.map(judge_one, batch)):
                mutant.state = state
                if state not in ("none", "same"):
                    judged.append(mutant)
                if state == "alive":
                    print(f"alive: {mutant}", flush=True)
                    with ALIVE.open("a") as alive:
                        alive.write(mutant.row() + "\n")
    return judged


def main():
    WORK.mkdir(exist_ok=True)
    suites = re.findall(r"SUITE\((\w+)\)", pathlib.Path("tests/suites.h").read_text())
    folder = build("plain", LIBRARY_FLAGS)
    reached = known_reached(suites)

    parts = {}
    for name in LIBRARY:
        for change in changes_of(name):
            parts.setdefault(change[0], []).append((name, change))
    of_each = -(-WANTED // len(parts))
    kept = kept_equal()
    gone = stale(kept)
    if gone:
        sys.exit("\n".join([f"{KEPT.name} names changes of lines that are gone:"] + ["\t".join(row) for row in gone]))
    before = set(ALIVE.read_text().splitlines()) if AGAIN else None
    ALIVE.write_text("")
    tried = []
    for part in PARTS or sorted(parts):
        began = time.monotonic()
        candidates = sorted(parts[part])
        random.Random(f"{SEED} {part}").shuffle(candidates)
        queue = (Mutant(name, *change) for name, change in candidates)
        if AGAIN:
            queue = (mutant for mutant in queue if mutant.row() in before)
        judged = try_some(queue, of_each, lambda each: judge(each, folder, reached, kept))
        print(f"{part}: {len(candidates)} places, {len(judged)} tried, {time.monotonic() - began:.0f} s", flush=True)
        tried += judged
    if not tried:
        sys.exit("nothing was tried")
    print()
    table("operator", tried, lambda each: each.operator)
    worst = table("part", tried, lambda each: each.part)
    noticed, alive = (sum(each.state == state for each in tried) for state in ("noticed", "alive"))
    share = noticed / (noticed + alive)
    print(f"of {len(tried)} changes (seed {SEED}) {noticed} are noticed, {alive} not, {len(tried) - noticed - alive} mean the same: {100 * share:.1f} %")
    return 0 if share >= ALL and worst >= PART else 1


if __name__ == "__main__":
    sys.exit(main())
