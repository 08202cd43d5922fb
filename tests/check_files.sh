#!/bin/sh
# SPDX-License-Identifier: MIT
# Files as they come and go, of the programs that read sides: what steers a terminal or a spreadsheet, byte order marks, files that are too long, complaints by the
# thousand; and outputs that are links, inputs, long names.
program=${TSIDE_PLAN:-${PLAN:-examples/tunnelside-plan}}
order=${TSIDE_ORDER:-${ORDER:-examples/tunnelside-order}}
turns=${TSIDE_TURNS:-${TURNS:-examples/tunnelside-turns}}
here=$PWD
. "${srcdir:-${top_srcdir:-.}}/tests/program.sh"
planner=$program
order=$(cd "$here" && absolute "$order")
turns=$(cd "$here" && absolute "$turns")

# steered FILE: it has a byte or a character that steers a terminal: C0 but for line ends and form feeds, DEL, U+009B, U+202E, or a byte 0x9B by itself.
steered() {
    LC_ALL=C tr '\n\014' '  ' < "$1" | od -An -v -tx1 | tr -d '\n' | grep -qE ' (0[0-9a-f]|1[0-9a-f]|7f|c2 9b|e2 80 ae)( |$)|^ 9b| [0-7][0-9a-f] 9b'
}
unsteered() {
    checks=$((checks + 1))
    ! steered out || wrong "$*: standard output steers the terminal"
    ! steered err || wrong "$*: standard error steers the terminal"
}

# --- what steers a terminal is shown: in names, messages, arguments, names of files ---

raw=$(printf '\233')
sed 's/"name": "[^"]*"/"name": "a\\u009b31mb\\u202ec\\u2066d\\u001be\\tf"/' "$sites/film30.json" > "a${raw}b$(printf '\342\200\256').json"
for program in "$planner" "$order"; do
    for format in text json csv; do
        run 0 --format=$format "a${raw}b$(printf '\342\200\256').json"
        prints "a<U+009B>31mb<U+202E>c<U+2066>d<U+001B>e f"
        unsteered names in $format
    done
    sed 's/"width": "30 ft"/"wi\\u009bdth": "30 \\u202eft"/' "$sites/film30.json" > "bad$raw.json"
    run 1 "bad$raw.json"
    says "bad<0x9B>.json:8: frame.wi<U+009B>dth: no such field"
    unsteered messages
    run 2 "--units=$raw" x
    says "us or si, not <0x9B>"
    run 2 "--no$raw"
    says "<0x9B>"
    unsteered arguments
    run 1 "--output=no${raw}folder/x" "$sites/film30.json"
    says "no<0x9B>folder/x: cannot be written"
done
program=$order
printf 'kind,what,size,grade,unit,price\nlabour,a\302\233b\342\200\256,,,order,x\n' > steers.csv
run 1 --prices=steers.csv "$sites/film30.json"
unsteered prices
run 1 "--kerf=$raw" "$sites/film30.json"
says '--kerf: "<0x9B>"'
program=$turns
run 1 "--core=3${raw}mm" --drop=1m
says '<0x9B>'
unsteered turns
program=$planner

# letters of any script are left as they are
printf '\303\234ber \360\237\214\261 \327\251' > letters
sed "s/\"name\": \"[^\"]*\"/\"name\": \"$(cat letters)\"/" "$sites/film30.json" > script.json
run 0 script.json
prints "$(cat letters)"

# --- no cell of CSV is a formula; numbers below 0 stay numbers ---

for formula in '=1+1' '+1' '-1+1' '@SUM(A1)' '=1,\\"2\\"'; do
    sed "s/\"name\": \"[^\"]*\"/\"name\": \"$formula\"/" "$sites/film30.json" > "=$$.json"
    for program in "$planner" "$order"; do
        run 0 --format=csv "=$$.json"
        prints "'=$$.json"
        checks=$((checks + 1))
        ! grep -qE "(^|,)\"?[=+@]|(^|,)\"?-[^0-9,]|,\"?-1\\+1" out || wrong "$program: a cell is a formula: $formula"
        prints "'$(printf '%s' "$formula" | sed 's/\\\\"/""/g')"
    done
done
program=$planner
run 0 --format=csv - < "$sites/film30.json"
checks=$((checks + 1))
sed 1d out | grep -q '^-,' || wrong "a dash by itself is no formula, and was changed: $(sed 1d out | head -c 20)"
sed 1d out | grep -q ',-[0-9.]*,' || wrong "no number below 0 is left in CSV"

# --- a byte order mark is read, as some editors put it ---

run 0 "$sites/film30.json"
cp out wanted
{ printf '\357\273\277'; cat "$sites/film30.json"; } > marked.json
run 0 marked.json
cmp -s out wanted || wrong "a byte order mark changes the sheet"
run 0 - < marked.json
cmp -s out wanted || wrong "a byte order mark on standard input changes the sheet"
{ printf '\357\273\277'; sed 's/"width": "30 ft"/"width": "30 elephants"/' "$sites/film30.json"; } > marked.json
run 1 marked.json
says 'marked.json:8: frame.width: "30 elephants"'

# --- files over the limit: 16 MiB are read, one byte more is refused ---

size=$(wc -c < "$sites/film30.json")
{ cat "$sites/film30.json"; head -c $((16777216 - size)) /dev/zero | tr '\0' ' '; } > limit.json
run 0 limit.json
cmp -s out wanted || wrong "a file of 16 MiB is read otherwise"
echo >> limit.json
run 1 limit.json
says "limit.json: longer than 16 MiB"
rm limit.json

# --- complaints by the thousand: quickly, the first hundred, and how many more; each with its line ---

awk 'BEGIN { print "["; for (i = 0; i < 2000; i++) print "{}" (i < 1999 ? "," : ""); print "]" }' > empty.json
run 1 --format=json empty.json
test "$(wc -l < err)" = 101 || wrong "$(wc -l < err) lines of complaints, not 100 and a last"
lacks=$(grep -c '"empty.json:2: \[0\]' out)
says "tunnelside-plan: empty.json: and $((2000 * lacks - 100)) more"
for i in 0 1 999 1999; do
    checks=$((checks + 1))
    test "$(grep -c "\"empty.json:$((i + 2)): \[$i\]\." out)" = "$lacks" || wrong "side $i of the list is not told its lines"
done
awk 'BEGIN { print "{"; for (i = 0; i < 20000; i++) printf "\"unknown%d\": [1, \"]\\\"\", {}, {\"a\": null}], \n", i; print "\"last\": 1}" }' > keys.json
run 1 --format=json keys.json
says "keys.json:101: unknown99: no such field"
hides "unknown100"
more=$(sed -n 's/.*keys.json: and \([0-9]*\) more$/\1/p' err)
checks=$((checks + 1))
test "$more" -ge 19901 || wrong "$more more complaints of 20001 unknown keys and what is missing"
prints "keys.json: and $more more"
# seconds of the processor, not of the clock; with each complaint read from the top of the file it was a minute
if (ulimit -t 20) 2> /dev/null; then
    checks=$((checks + 1))
    (ulimit -t 20 && "$program" empty.json keys.json > out 2> err)
    test $? = 1 || wrong "thousands of complaints take more than 20 s"
fi
awk 'BEGIN { printf "["; for (i = 0; i < 10001; i++) printf "0,"; printf "0]" }' > many.json
run 1 many.json
says "many.json:1: a list of 10002 sides: the most is 10000"
program=$order
awk 'BEGIN { print "kind,what,size,grade,unit,price"; for (i = 0; i < 10000; i++) printf "labour,job %d,,,order,%s\n", i, i < 300 ? "x" : "1.00" }' > long.csv
run 1 --prices=long.csv "$sites/half_circle.json"
says "long.csv:101: "
says "long.csv: and 200 more"
checks=$((checks + 1))
! grep -q 'long.csv:102: ' err || wrong "more than 100 complaints of one price list"
echo 'labour,one too many,,,order,1.00' >> long.csv
run 1 --prices=long.csv "$sites/half_circle.json"
says "long.csv: and 201 more"

# --- outputs ---

for program in "$planner" "$order"; do
    run 0 "$sites/film30.json"
    cp out wanted
    mkdir there
    ln -s there/target.txt dangling.txt
    ln -s dangling.txt twice.txt
    run 0 --output=twice.txt "$sites/film30.json"
    test -h twice.txt && test -h dangling.txt || wrong "a link is replaced by a file"
    cmp -s there/target.txt wanted || wrong "what a dangling link names is not written"
    ln -sf loop.txt loop.txt
    run 1 --output=loop.txt "$sites/film30.json"
    says "loop.txt: cannot be written: "
    long=$(awk 'BEGIN { for (i = 0; i < 255; i++) printf "n" }')
    run 0 "--output=$long" "$sites/film30.json"
    cmp -s "$long" wanted || wrong "a file with a long name is not written"
    run 1 "--output=n$long" "$sites/film30.json"
    says "cannot be written"
    chmod 640 "$long"
    run 0 "--output=$long" "$sites/film30.json"
    test "$(ls -l "$long" | cut -c1-10)" = -rw-r----- || wrong "the mode of a file that is replaced is not kept"

    cp "$sites/film30.json" input.json
    ln -s input.json linked.json
    ln input.json hard.json
    for name in input.json ./input.json linked.json hard.json; do
        run 2 "--output=$name" input.json
        says "--output: it is an input"
        run 2 "--output=$name" - < input.json
    done
    cmp -s input.json "$sites/film30.json" || wrong "an input is overwritten"
    rm -rf there dangling.txt twice.txt loop.txt "$long" input.json linked.json hard.json
    test -z "$(ls -A | grep '^\.')" || wrong "something is left beside the output"
done
cp "$examples/prices.csv" prices.csv
run 2 --output=prices.csv --prices=prices.csv "$sites/shared_tube_job.json"
says "--output: it is the price list"
run 0 --output=/dev/null "$sites/film30.json"
test ! -f /dev/null || wrong "a device is replaced by a file"

test $failed = 0 || exit 1
echo "$checks checks of files"
