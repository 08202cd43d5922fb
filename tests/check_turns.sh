#!/bin/sh
# SPDX-License-Identifier: MIT
# The program tunnelside-turns: its figures against closed formulas and a true spiral worked out here by awk, the inverse there and back,
# refusals that name option, value and bound, formats that agree, and output that is complete or absent.
program=${TSIDE_TURNS:-${TURNS:-examples/tunnelside-turns}}
. "${srcdir:-${top_srcdir:-.}}/tests/program.sh"
AWK=${AWK:-awk}

# One of out and err is empty.
after_run() {
    if test "$wanted" = 0; then
        test ! -s err || wrong "$called $*: complains: $(head -3 err)"
    else
        test ! -s out || wrong "$called $*: fails, and prints: $(head -3 out)"
    fi
}

# check NAME AWK-PROGRAM [-v VARIABLE=VALUE]...: the program, run over out, must find nothing to print. It may use pi, inch, and off(got, want):
# 1 unless they agree to a millionth of a millionth, with as much of a metre beneath.
check() {
    checks=$((checks + 1))
    name=$1
    script=$2
    shift 2
    "$AWK" -F, "$@" '
    BEGIN { pi = atan2(0, -1); inch = 0.0254 }
    function abs(x) { return x < 0 ? -x : x }
    function off(got, want) { return got == "" || !(abs(got - want) <= 1e-12 * (1 + abs(want))) }
    '"$script" out > found 2>&1 || echo "awk failed" >> found
    test ! -s found || wrong "$name: $(head -5 found)"
}

# --- the command line ---

run 0 --core=1.4in --drop='4 ft 6 in' --thickness=0.006in
cp out plain
for typed in "--core=1.4inches --drop=4’-6” --thickness=6mil" "--core=1.4″ --drop=4′6″ --thickness=152.4µm"; do
    # shellcheck disable=SC2086
    run 0 $typed
    cmp -s out plain || wrong "$typed: another table"
done
run 1 --core=1400mil --drop=1m
says "--core: \"1400mil\": at character 6: mil is read of film's thickness alone"

# a refusal speaks the units of the text
run 1 --core=1.4in --drop='4000 ft'
says '--drop: "4000 ft": 1219.2 m is above 1000 m [4000 ft 0 in; at most 3280 ft 10 1/16 in]'
run 1 --core='50 in' --drop=1m
says '--core: "50 in": 1.27 m is above 1 m [4 ft 2 in; at most 3 ft 3 5/16 in]'
run 1 --core=1.4in --counted=10 --over='10 in'
says 'the least that fits is 1.11715 m [10 in; at least 3 ft 8 in]'
run 1 --units=si --core=1.4in --counted=10 --over='10 in'
! grep -qF '[' err || wrong "inches where millimetres are asked for"

run 0 --help
test "$(wc -l < out)" -le 24 || wrong "--help does not fit a screen"
test -z "$("$AWK" 'length > 80' out)" || wrong "--help is wider than a screen"
for option in core drop thickness packing wraps counted over units format help version; do
    prints "--$option"
done
run 0 --version
prints "tunnelside-turns "
run 2
says "--core is needed"
run 2 --drop=1m
says "--core is needed"
run 2 --core=35mm
says "--drop is needed, or --counted and --over"
run 2 --core=35mm --counted=3
says "--counted and --over go together"
run 2 --core=35mm --over=1m
says "--counted and --over go together"
run 2 --core=35mm --counted=3 --over=1m --drop=1m
says "--drop does not go with"
run 2 --core=35mm --counted=3 --over=1m --packing=1
says "--packing does not go with"
run 2 --core=35mm --drop=1m --units=ells
says "us or si, not ells"
run 2 --core=35mm --drop=1m --format=prose
says "text, json or csv, not prose"
run 2 --core=35mm --drop=1m more
says "more"
run 2 --core
run 2 --nonsense

# --- the table: each row by the closed formulas; derivation: a curtain te thick, wound n times on D0, conserves its area ---

# table CORE THICKNESS PACKING WRAPS DROP, in mm, but for packing and wraps.
table() {
    run 0 --core="$1mm" --thickness="$2mm" --packing="$3" --wraps="$4" --drop="$5mm" --format=csv
    check "table $*" '
    function area(d) { return pi / 4 * (d * d - core * core) }
    function wound(n) { return te > 0 ? area(core + 2 * te * n) / te : pi * core * n }
    function wraps(l) { return te > 0 ? (sqrt(core * core + 4 * te * l / pi) - core) / (2 * te) : l / (pi * core) }
    BEGIN {
        core = c / 1000; te = t / 1000 * k; drop = d / 1000
        turns = wraps(wound(w) + drop) - w
        rows = int(turns) + (turns > int(turns)) + 1
    }
    NR == 1 {
        if ($0 != "turn,taken_up_m,total_m,diameter_m,on_bar_m,core_m,thickness_m,packing,wraps_shut,drop_m,assumed") print "head", $0
        next
    }
    {
        n = NR == rows + 1 ? turns : NR - 2
        if (off($1 / 1000, n / 1000)) print "row", NR, "is of turn", $1, "not", n
        if (off($5, wound(w + n))) print "row", NR, "on the bar", $5, "not", wound(w + n)
        if (off($3, wound(w + n) - wound(w))) print "row", NR, "in all", $3
        if (off($2, $3 - before)) print "row", NR, "taken up", $2
        if (off($4, core + 2 * te * (w + n))) print "row", NR, "roll", $4
        if (NR > 3 && NR < rows + 1 && off($2 - last, 2 * pi * te)) print "row", NR, "takes up", $2 - last, "more than the last"
        if (off($6, core) || off($7, t / 1000) || off($8, k) || off($9, w) || off($10, drop) || $11 != "" || NF != 11) print "row", NR, "was asked otherwise"
        before = $3; last = $2
    }
    END { if (NR != rows + 1 || before != drop) print NR - 1, "rows, not", rows, "that end with", before }' -v c="$1" -v t="$2" -v k="$3" -v w="$4" -v d="$5"
}
table 35 0.2 1.25 2 1500
table 35.56 0.15 1.15 1 1371.6
table 42 8 0.8 0.75 2000
table 33.4 0 1.15 1 1000
table 60 0.15 1.15 0 100
table 35 0.15 1.15 1 0.001
table 25 5 5 49.5 300000

# A whole number of turns has no part turn after it: 4 of a bare bar with no thickness.
run 0 --core=1m --thickness=0mm --wraps=0 --drop=12.566370614359172954m --format=csv
check "whole turns" 'END { if (NR != 6 || off($1, 4)) print NR - 1, "rows, the last", $1 }'

# A true spiral, r = D0/2 + te a/(2 pi), is longer than what conserves its area, by less than (te/(pi D0))^2 of it. Derivation: its length is
# the integral of sqrt(r^2 + (te/(2 pi))^2) over the angle a, here by the rule of Simpson.
run 0 --core=42mm --thickness=8mm --packing=0.8 --wraps=0 --drop=2m --format=csv
check "spiral" '
function speed(a, r) { r = core / 2 + te * a / (2 * pi); return sqrt(r * r + (te / (2 * pi))^2) }
NR < 3 { next }
{
    core = 0.042; te = 0.0064; steps = 2000; h = 2 * pi * $1 / steps; sum = speed(0) - speed(2 * pi * $1)
    for (i = 0; i < steps; i += 2) sum += 4 * speed((i + 1) * h) + 2 * speed((i + 2) * h)
    excess = sum * h / 3 / $5 - 1
    if (!(excess > 0 && excess < (te / (pi * core))^2)) print "turn", $1, "differs from the spiral by", excess
}'

# --- the table for people says the same, in its units ---

# people UNITS METRES DECIMALS ARGUMENT...
people() {
    units=$1 metres=$2 decimals=$3
    shift 3
    run 0 "$@" --format=csv
    cp out figures
    run 0 "$@" --units="$units"
    test -z "$("$AWK" 'length > 80' out)" || wrong "$units: lines wider than 80 columns"
    sed 's/  */,/g; s/^,//' out > cells
    "$AWK" -F, -v unit="$metres" -v places="$decimals" '
    BEGIN { format = "%.2f,%." places "f,%." places "f,%." places + 1 "f,%." places "f\n" }
    NR > 1 { printf format, $1, $2 / unit, $3 / unit, $4 / unit, $5 / unit }' figures > wanted
    checks=$((checks + 1))
    grep '^[0-9.]*,[0-9.]*,[0-9.]*,[0-9.]*,[0-9.]*$' cells | cmp -s - wanted || wrong "$units: the table does not say what csv says"
    turns=$("$AWK" -F, 'END { printf "%.2f", $1 }' figures)
    checks=$((checks + 1))
    grep -q "SHUT TO OPEN  *$turns turns of the bar" out || wrong "$units: not $turns turns from shut to open"
}
people us 0.0254 2 --core=1.4in --drop='4 ft 6 in'
prints "4 ft 6 in"
prints "1.4 in"
people si 0.001 1 --core=1.4in --drop='4 ft 6 in'
prints "1372 mm"
prints "35.56 mm"
people us 0.0254 2 --core=42mm --thickness=8mm --packing=0.8 --wraps=2 --drop=2m

# Without --units, as the core is given, whatever else is.
for core in '1.4 in' '1.4"' "0.11'" '.11 ft' '0.04 yd'; do
    run 0 --core="$core" --drop=1m
    grep -q ' in  *in  *in  *in$' out || wrong "a core of $core gives no inches"
done
for core in 35mm '3.5 cm' 0.035m 0.000035km; do
    run 0 --core="$core" --drop=40in
    grep -q ' mm  *mm  *mm  *mm$' out || wrong "a core of $core gives no millimetres"
done

# --- what is assumed is named; what is given is not ---

run 0 --core=35mm --drop=1m
prints "ASSUMED, NOT MEASURED"
prints "common practice, no published source"
prints "0.15 mm    thickness of the bare curtain"
prints "1.15       packing factor"
prints "1          wraps of curtain"
for option in thickness packing wraps; do
    prints "(--$option)"
done
prints "CAUTIONS"
run 0 --core=35mm --drop=1m --packing=120% --wraps='1 1/2'
prints "(--thickness)"
hides "(--packing)"
hides "(--wraps)"
run 0 --core=35mm --drop=1m --thickness=0.2mm --packing=1 --wraps=1
hides "ASSUMED"
run 0 --core=35mm --drop=1m --wraps=1 --format=csv
check "assumed in csv" 'NR > 1 && ($7 != 0.00015 || $8 != 1.15 || $9 != 1 || $11 != "thickness packing") { print }'
run 0 --core=35mm --drop=1m --format=csv
check "all assumed in csv" 'NR > 1 && ($9 != 1 || $11 != "thickness packing wraps") { print }'
run 0 --core=35mm --counted=5 --over=0.6m
prints "(--wraps)"
hides "(--thickness)"
hides "(--packing)"
run 0 --core=35mm --counted=5 --over=0.6m --wraps=0
hides "ASSUMED"

# --- the inverse ---

# inverse CORE WRAPS TURNS OVER THICKNESS, in mm but for wraps and turns: what conserves the area between the two rolls, by bisection.
inverse() {
    run 0 --core="$1mm" --wraps="$2" --counted="$3" --over="$4mm" --thickness="$5mm" --format=csv
    check "inverse $*" '
    function taken(te, turns) { return pi * (core * turns + te * ((w + turns)^2 - w * w)) }
    function thickness(turns, over, low, high, i) {
        low = 0; high = 1
        for (i = 0; i < 100; i++) if (taken((low + high) / 2, turns) < over) low = (low + high) / 2; else high = (low + high) / 2
        return low
    }
    BEGIN { core = c / 1000 }
    NR == 1 {
        if ($0 != "effective_thickness_m,effective_thickness_least_m,effective_thickness_most_m,packing,packing_least,packing_most," \
            "core_m,wraps_before,turns,taken_up_m,thickness_m,assumed") print "head", $0
        next
    }
    {
        over = o / 1000; bare = t / 1000; least = 1; most = 0
        for (a = -1; a <= 1; a += 2) for (b = -1; b <= 1; b += 2) {
            te = thickness(n + a / 4, over + b * inch / 4)
            if (te < least) least = te
            if (te > most) most = te
        }
        te = thickness(n, over)
        if (off($1, te)) print "thickness", $1, "not", te
        if (off($2, least) || off($3, most)) print "from", $2, "to", $3, "not from", least, "to", most
        if (off($4, $1 / bare) || off($5, $2 / bare) || off($6, $3 / bare)) print "packing", $4, $5, $6
        if (off($7, core) || off($8, w) || off($9, n) || off($10, over) || off($11, bare) || $12 != "" || NF != 12) print "was asked otherwise"
    }
    END { if (NR != 2) print NR, "lines" }' -v c="$1" -v w="$2" -v n="$3" -v o="$4" -v t="$5"
}
inverse 35.56 1 10 1168.4 0.15
inverse 42 0.5 7.25 1900 8
inverse 35 0 9.5 1070 0.15
# so little above what the bare core takes that the thinnest reading leaves nothing
inverse 34.8 1 10 1100 0.15
check "least" 'NR == 2 && !($1 > 0 && $2 == 0 && $3 > $1) { print }'

# There and back: the table's turns and take-up give the thickness and packing that it was made with, and that thickness gives the table.
run 0 --core=35mm --thickness=0.2mm --packing=1.25 --wraps=2 --drop=1.5m --format=csv
over=$("$AWK" -F, '$1 == 10 { print $3 }' out)
run 0 --core=35mm --wraps=2 --counted=10 --over="${over}m" --thickness=0.2mm --format=csv
check "there" 'NR == 2 && (off($1, 0.00025) || off($4, 1.25)) { print }'
run 0 --core=35mm --wraps=2 --thickness="$("$AWK" -F, 'NR == 2 { print $1 }' out)m" --packing=1 --drop="${over}m" --format=csv
check "and back" 'END { if (off($1, 10)) print $1, "turns" }'

# For people: 0.136 and 0.0431 to 0.2377 mm are the first inverse above, rounded to 0.001 mm and 0.0001 in.
run 0 --core=1.4in --counted='10 turns' --over='46 in' --thickness=0.15mm
prints "0.0054 in"
prints "0.0017 to 0.0094 in"
prints "0.91"
prints "0.29 to 1.58"
prints "3 ft 10 in"
prints "10 turns"
hides "count and measure again"
run 0 --core=1.4in --counted=10 --over='46 in' --units=si
prints "0.136 mm"
prints "0.043 to 0.238 mm"
hides "PACKING FACTOR"
run 0 --core=35mm --counted=5 --over=1m --thickness=0.15mm
prints "count and measure again"
run 0 --core=35mm --counted=5 --over=600mm --format=csv
check "no packing without a thickness" 'NR == 2 && ($4 $5 $6 $11 != "" || $1 == "" || NF != 12) { print }'

# --- JSON: the figures of csv, and a document that others can read ---

is_json() {
    command -v python3 > /dev/null || return 0
    checks=$((checks + 1))
    python3 -c 'import json, sys; json.load(open(sys.argv[1]), parse_constant=lambda word: sys.exit(word))' out || wrong "no JSON: $1"
}
run 0 --core=35mm --drop=1m --format=csv
sed 1d out | cut -d, -f1-5 > wanted
run 0 --core=35mm --drop=1m --format=json
is_json table
tr -d ' \n' < out > flat
for member in '"complete":true' '"assumed":["thickness","packing","wraps_shut"]' '"core":{"value":0.035,"unit":"m"}' '"packing":{"value":1.15,"unit":"1"}' \
    '"wraps_shut":{"value":1,"unit":"turn"}' '"drop":{"value":1,"unit":"m"}' '{"turn":{"value":0,"unit":"turn"},"taken_up":{"value":0,"unit":"m"}'; do
    grep -qF -- "$member" flat || wrong "the JSON table has no $member"
done
values() { # of what is found, one a line, as they stand
    sed -n "/\"$1\": [[{]/,\$p" out | sed -n 's/.*{"value": \([^,]*\),.*/\1/p'
}
checks=$((checks + 1))
values turns > got
tr , '\n' < wanted | cmp -s - got || wrong "the JSON table is not that of csv"
run 0 --core=35mm --counted=5 --over=600mm --thickness=0.15mm --format=csv
sed 1d out | cut -d, -f1-6 | tr , '\n' > wanted
run 0 --core=35mm --counted=5 --over=600mm --thickness=0.15mm --format=json
is_json inverse
tr -d ' \n' < out > flat
grep -qF '"assumed":["wraps_before"]' flat || wrong "the JSON inverse assumes something else"
grep -qF '"turns":{"value":5,"unit":"turn"},"taken_up":{"value":0.6,"unit":"m"},"thickness":{"value":0.00015,"unit":"m"}}' flat || wrong "the JSON inverse was asked something else"
checks=$((checks + 1))
values found > got
cmp -s wanted got || wrong "the JSON inverse is not that of csv"
run 0 --core=35mm --counted=5 --over=600mm --wraps=1 --format=json
is_json "inverse without thickness"
prints '"assumed": []'
hides '"packing'
hides '"thickness"'

# --- refusals name the option, what was given, and the bound ---

# refused OPTION VALUE TEXT ARGUMENT...: of values that are otherwise good, the option's last.
refused() {
    option=$1 value=$2 text=$3
    shift 3
    run 1 "$@" "--$option=$value"
    says "tunnelside-turns: --$option: \"$value\": "
    says "$text"
}
for option in core drop thickness; do
    refused $option 35 "a bare number has no unit" --core=35mm --drop=1m
    refused $option "1 kg" "" --core=35mm --drop=1m
    refused $option "" "" --core=35mm --drop=1m
    refused $option "1,4 in" "" --core=35mm --drop=1m
    refused $option nan "" --core=35mm --drop=1m
    refused $option 1e999m "" --core=35mm --drop=1m
done
refused core 0mm "0 m is not above 0 m" --drop=1m
refused core 1.1m "1.1 m is above 1 m" --drop=1m
refused drop -1m "-1 m is not above 0 m" --core=35mm
refused drop 0m "0 m is not above 0 m" --core=35mm
refused drop 1001m "1001 m is above 1000 m" --core=35mm
refused thickness -1mm "-0.001 m is below 0 m" --core=35mm --drop=1m
refused thickness 201mm "0.201 m is above 0.2 m" --core=35mm --drop=1m
refused packing 0 "0 is not above 0" --core=35mm --drop=1m
refused packing 5.1 "5.1 is above 5" --core=35mm --drop=1m
refused packing 1mm "" --core=35mm --drop=1m
refused wraps -1 "-1 turn is below 0 turn" --core=35mm --drop=1m
refused wraps 1000.5 "is above 1000 turn" --core=35mm --drop=1m
# 1000 wraps of 1 mm take up pi m, and no more may be on the bar.
refused drop 3.2m "3.2 m is above 3.14159 m: more than 1000 wraps" --core=1mm --thickness=0mm --wraps=0
run 0 --core=1mm --thickness=0mm --wraps=0 --drop=3.14159m --format=csv
check "a thousand wraps" 'END { if (NR != 1002 || !($1 > 999.9 && $1 < 1000)) print NR, $1 }'

refused counted 0.25 "0.25 turn is not above 0.25 turn" --core=35mm --over=1m
refused counted 1000 "1000 turn is above 999 turn" --core=35mm --over=1m
refused counted 3ft "" --core=35mm --over=1m
refused over 1 "a bare number has no unit" --core=35mm --counted=5
refused over '1/4 in' "0.00635 m is not above 0.00635 m" --core=35mm --counted=5
refused over 1001m "1001 m is above 1000 m" --core=35mm --counted=5
refused thickness 0mm "0 m is not above 1e-06 m" --core=35mm --counted=5 --over=600mm
refused thickness 1m "1 m is above 0.2 m" --core=35mm --counted=5 --over=600mm
refused wraps -1 "-1 turn is below 0 turn" --core=35mm --counted=5 --over=600mm
refused core 1.1m "1.1 m is above 1 m" --counted=5 --over=600mm
# 10 turns of a bare bar of 35 mm take up 0.35 pi m.
refused over 1m "1 m contradicts --core" --core=35mm --counted=10
says "the least that fits is 1.09956 m"

# --- no locale matters ---

if test "$(LC_ALL=de_DE.UTF-8 locale decimal_point 2> /dev/null)" = ,; then
    for format in text csv json; do
        run 0 --core=1.4in --drop='4.5 ft' --format=$format
        checks=$((checks + 1))
        LC_ALL=de_DE.UTF-8 "$program" --core=1.4in --drop='4.5 ft' --format=$format 2>&1 | cmp -s - out ||
            wrong "a locale with a decimal comma changes $format"
    done
else
    echo "no locale with a decimal comma: not tested whether one matters"
fi

# --- output is complete, or its absence is said ---

# unwritten WHAT: the status in the file status is that of a failure, and it was said.
unwritten() {
    checks=$((checks + 1))
    test "$(cat status)" = 1 || wrong "$1: exit status $(cat status), not 1"
    says "standard output: cannot be written"
}
if test -c /dev/full; then
    for arguments in "--core=35mm --drop=1m" "--core=1mm --thickness=0mm --wraps=0 --drop=3m --format=json" \
        "--core=35mm --counted=5 --over=600mm" --help --version; do
        "$program" $arguments > /dev/full 2> err
        echo $? > status
        unwritten "a full disk, $arguments"
    done
fi
"$program" --core=35mm --drop=1m >&- 2> err
echo $? > status
unwritten "standard output that is closed"
{
    sleep 1 # until the reader has gone
    "$program" --core=35mm --drop=1m 2> err
    echo $? > status
} | true
unwritten "a reader that has gone"

test $failed = 0 || exit 1
echo "$checks checks of tunnelside-turns"
