#!/bin/sh
# SPDX-License-Identifier: MIT
# The turns program as a shell user meets it: its figures by the closed formulas, worked out here with awk; refusals, formats, exit statuses.
set -u
turns=${TURNS:-examples/tunnelside-turns}
work=$(mktemp -d) || exit 99
trap 'rm -rf "$work"' EXIT
failures=0
checks=0

fail() {
    failures=$((failures + 1))
    echo "check_turns: $*"
}

# run STATUS ARGUMENT...
run() {
    wanted=$1
    shift
    checks=$((checks + 1))
    "$turns" "$@" > "$work/out" 2> "$work/err"
    got=$?
    test $got = "$wanted" || fail "'$*' exits with $got, not $wanted: $(head -n 2 "$work/err")"
    test $got = 0 || test ! -s "$work/out" || fail "'$*' fails, and prints: $(head -n 1 "$work/out")"
}

says() {
    checks=$((checks + 1))
    grep -qF -- "$2" "$work/$1" || fail "no '$2' in $1: $(head -n 4 "$work/$1")"
}

# D = D0 + 2 te n and l = pi n (D0 + te n), each row; the last row ends the drop.
run 0 --core=35mm --thickness=0.2mm --packing=1.25 --wraps=2 --drop=1.5m --format=csv
checks=$((checks + 1))
awk -F, '
function l(n) { return atan2(0, -1) * n * (0.035 + 0.00025 * n) }
function off(a, b) { return (a - b)^2 > 1e-24 }
NR == 1 { next }
{
    if (off($4, 0.035 + 0.0005 * (2 + $1)) || off($5, l(2 + $1)) || off($3, l(2 + $1) - l(2)) || off($2, $3 - before)) { print "row", NR; bad = 1 }
    before = $3
    last = $1
}
END { if (off(before, 1.5) || last < 11 || bad) { print "end", before, last; exit 1 } }' "$work/out" || fail "the table is not that of the closed formulas"

# The inverse gives back the thickness that the table was made with.
checks=$((checks + 1))
over=$(awk -F, '$1 == 10 { print $3 }' "$work/out")
run 0 --core=35mm --wraps=2 --counted=10 --over="${over}m" --thickness=0.2mm --format=csv
awk -F, 'NR == 2 { exit !(($1 - 0.00025)^2 < 1e-24 && $2 < $1 && $1 < $3 && ($4 - 1.25)^2 < 1e-18) } END { if (NR < 2) exit 1 }' "$work/out" || fail "the inverse: $(cat "$work/out")"

run 0 --core=1.4in --drop='4 ft 6 in'
says out 'Shut to open: 11.52 turns.'
says out 'packing factor 1.15'
says out '54 in'
run 0 --core=1.4in --drop='4 ft 6 in' --units=si
says out '1372 mm'
run 0 --core=35mm --drop=0m
says out 'Shut to open: 0.00 turns.'
run 0 --core=35mm --drop=1m --format=json
checks=$((checks + 1))
if command -v python3 > /dev/null; then
    python3 -c 'import json, sys; t = json.load(open(sys.argv[1])); assert abs(t["turns"][-1]["total_m"] - 1) < 1e-12' "$work/out" || fail "no JSON, or wrong"
fi
LC_ALL=de_DE.UTF-8 "$turns" --core=35mm --drop=1m --format=json | cmp -s - "$work/out" || fail "the locale changes the answer"

run 1 --core=35 --drop=1m
says err '--core'
run 1 --core=35mm --drop='1 kg'
says err '--drop'
run 1 --core=0mm --drop=1m
says err '--core'
run 1 --core=35mm --drop=-1m
says err '--drop'
run 1 --core=35mm --drop=2000m
says err '--drop'
run 1 --core=1mm --drop=900m --thickness=0mm
says err '1000 are the most'
run 1 --core=35mm --drop=1m --wraps=-1
says err '--wraps'
run 1 --core=35mm --drop=1m --packing=0
says err '--packing'
run 1 --core=35mm --counted=20 --over=1m
says err '--over: 1 m contradicts --core'
run 1 --core=35mm --counted=nan --over=1m
run 2
run 2 --core=35mm
run 2 --core=35mm --counted=3
run 2 --core=35mm --counted=3 --over=1m --drop=1m
run 2 --core=35mm --drop=1m --units=ells
run 2 --core=35mm --drop=1m --format=prose
run 2 --core=35mm --drop=1m more
run 2 --nonsense
run 0 --version
run 0 --help
checks=$((checks + 1))
test "$(wc -l < "$work/out")" -le 24 || fail "--help takes more than a screen"
if test -c /dev/full; then
    checks=$((checks + 1))
    "$turns" --core=35mm --drop=1m > /dev/full 2> "$work/err" && fail "a full disk is no failure"
    says err 'not written'
fi

echo "$checks checks of tunnelside-turns"
test $failures = 0
