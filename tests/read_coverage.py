# SPDX-License-Identifier: MIT
"""What gcov counted in coverage/: lines and branches a file, and which lines were never reached, or not left in every way.

read_coverage.py FOLDER PART LINES BRANCHES: of the objects in that folder, or in its folders, what is in that part of the tree, lib or examples; fails below these shares, in percent.

A branch is a way out of a condition that gcc makes a jump of: each part of an && or || has two of its own, and so have a ?: and a loop's end; a switch has one a case.
A function of a header has copies in several objects, which are counted together. Nothing is left out by hand.
"""

import collections
import glob
import json
import subprocess
import sys


def counted(folder, part):
    """By file: how often each line ran, and each branch of each line."""
    lines = collections.defaultdict(collections.Counter)
    branches = collections.defaultdict(collections.Counter)
    for counts in sorted(glob.glob(folder + "/**/*.gcno", recursive=True)):
        text = subprocess.run(["gcov", "--json-format", "--stdout", "--branch-probabilities", counts], capture_output=True, check=True).stdout
        for document in map(json.loads, text.splitlines()):
            for file in document["files"]:
                before, is_of_part, rest = file["file"].rpartition(part + "/")
                if not is_of_part or before.startswith("/usr/"):
                    continue
                name = part + "/" + rest
                for line in file["lines"]:
                    lines[name][line["line_number"]] += line["count"]
                    for i, branch in enumerate(line["branches"]):
                        branches[name][line["line_number"], i] += branch["count"]
    return lines, branches


def shown(what, numbers):
    return f"; {what} {' '.join(map(str, sorted(numbers)))}" if numbers else ""


def main(folder, part, least_lines, least_branches):
    lines, branches = counted(folder, part)
    short = not lines
    for name in sorted(lines):
        never = {line for line, count in lines[name].items() if not count}
        left = {line for (line, _), count in branches[name].items() if not count} - never
        print(f"{name}: {len(lines[name]) - len(never)} of {len(lines[name])} lines{shown('never', never)}{shown('not in every way', left)}")
    for what, counts, least in ("lines", lines, least_lines), ("branches", branches, least_branches):
        all_counts = [count for of_file in counts.values() for count in of_file.values()]
        reached = sum(count > 0 for count in all_counts)
        print(f"{what}: {reached} of {len(all_counts)}, {100 * reached / max(len(all_counts), 1):.2f} %; at least {least} %")
        short = short or 100 * reached < least * len(all_counts)
    return int(short)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], sys.argv[2], float(sys.argv[3]), float(sys.argv[4])))
