#!/bin/sh
# SPDX-License-Identifier: MIT
# The sheet that tunnelside-plan writes as HTML, and the order that tunnelside-order does: the very words of the text, in its order; a valid document that fetches and runs nothing, whatever
# a file's names hold; and output that is complete or absent. What a browser makes of it is check_browser.sh's.
program=${TSIDE_PLAN:-${PLAN:-examples/tunnelside-plan}}
order=${TSIDE_ORDER:-${ORDER:-examples/tunnelside-order}}
here=$PWD
. "${srcdir:-${top_srcdir:-.}}/tests/program.sh"
reader=$(dirname "$examples")/tests/read_html.py
order=$(cd "$here" && absolute "$order")

command -v python3 > /dev/null || { echo "python3 is missing: a sheet in HTML is not read"; exit 77; }
command -v tidy > /dev/null || echo "tidy is missing: no validator has read a sheet in HTML"

# sound NAME: the HTML in out is as the reader wants it, and tidy has nothing against it.
sound() {
    checks=$((checks + 1))
    cp out sheet.html
    python3 "$reader" shape sheet.html || wrong "$1: out of shape"
    command -v tidy > /dev/null || return
    # It does not know that a drawing may have a size with a unit.
    tidy -quiet -errors -utf8 sheet.html 2>&1 | grep -vE '<svg> attribute "(width|height)" has invalid value "[0-9.]*mm"' > complaints
    test ! -s complaints || wrong "$1: tidy says: $(head -3 complaints)"
}

# same_words ARGUMENT...: the text and the HTML that the program writes with these arguments have the same words.
same_words() {
    checks=$((checks + 1))
    "$program" "$@" > sheet.txt
    "$program" --format=html "$@" > sheet.html
    python3 "$reader" words sheet.txt sheet.html || wrong "$called $*: text and HTML differ"
}

# --- the reader itself finds what is wrong ---

run 0 -f html "$sites/film30.json"
"$program" "$sites/film30.json" > sheet.txt
# refuses SED-SCRIPT HOW ARGUMENT...: it refuses the sheet in out when changed so.
refuses() {
    checks=$((checks + 1))
    sed "$1" out > spoiled.html
    cmp -s out spoiled.html && wrong "the edit $1 changes nothing"
    shift
    ! python3 "$reader" "$@" spoiled.html > message 2>&1 || wrong "the reader finds nothing wrong with: $*"
}
refuses 's/Snug, no more/Snug/' words sheet.txt
refuses 's/<li value="3">/<li value="4">/' words sheet.txt
refuses 's/<li value="3">/<li value="4">/' shape
refuses '0,/<strong>Caution:/s//<strong>Note:/' words sheet.txt
refuses '0,/<p class="caution">/s//<p>/' words sheet.txt
refuses '/<h2 id="head-2"/d' shape
refuses 's/<caption>.*//' shape
refuses 's/ scope="row"//' shape
refuses "s/default-src 'none'/default-src */" shape
refuses 's/<main>/<main><script>0<\/script>/' shape
refuses 's/href="#page-2"/href="https:\/\/example.org\/"/' shape
refuses 's/color: black/color: red/' shape
refuses 's/<\/section>//' shape
refuses '0,/<desc>.*/s///' shape
refuses '0,/<figcaption>.*/s///' shape
refuses '0,/stroke="#000"/s//stroke="red"/' shape
refuses '0,/<g fill/s//<g class="a" fill/' shape
refuses '/<figcaption>ROLL, open/d' shape

# --- every demo, in both systems; several sides in one document ---

# all_demos WHAT: in one document, in either system.
all_demos() {
    for units in us si; do
        run 0 --format=html --units=$units "$sites"/*.json
        silent err
        sound "$1, $units"
        same_words --units=$units "$sites"/*.json
    done
}
all_demos "all demos"
for demo in film30 film30_hip two_sides_job; do
    run 0 --format=html "$sites/$demo.json"
    sound "$demo"
    same_words --drives="$examples/drives.json" "$sites/$demo.json"
done
prints '>4&nbsp;ft&nbsp;' # a quantity is not broken

# --- what a file's names hold stays text, in the document and in its style; letters of any script come through ---

for name in '</style></title><script>alert(1)</script>' '<b>bold</b> &amp; \"quoted\" \\\" } * { display: none' '\u202eback\u202c and \u0007bell' '\u6e29\u5ba4 \u05d7\u05de\u05de\u05d4 \u00e9'; do
    printf '%s' "$name" | sed 's/[\\&/]/\\&/g' > escaped
    sed "s/\"name\": \"[^\"]*\"/\"name\": \"$(cat escaped)\"/; s/\"note\": \"[^\"]*\"/\"note\": \"$(cat escaped)\"/" "$sites/film30.json" > named.json
    run 0 --format=html named.json
    sound "a name: $name"
    hides '<script'
    hides '<b>'
    same_words named.json
done
prints '温室 חממה'
LC_ALL=C grep -q '[^[:print:][:space:]]' out || wrong "the letters are not there as they are"

# --- a side whose work stops says so on its card ---

run 0 --format=html "$sites/film30_hip.json"
prints '<h3>STOPS THE WORK UNTIL IT IS MENDED</h3>'

# --- what cannot be drawn: the caption says why, and the rest is drawn ---

python3 - "$sites/leanto_metric.json" > long.json << 'END'
import json, sys
side = json.load(open(sys.argv[1], encoding="utf-8"))
side["length"] = "500 m"
side["bar"] = {key: side["bar"][key] for key in ("tube", "material")} | {"joints": "stock", "stock": "2.4 m", "swage": "100 mm"}
json.dump(side, sys.stdout)
END
run 0 --format=html long.json
sound "more joints than a drawing holds"
prints '<figcaption>ALONG THE HOUSE, from outside: not drawn, plan.splices: '
prints '<figcaption>ROLL, shut; 1:'
refuses 's/: not drawn, plan.splices.*</</' shape

# --- the command line; complete, or absent ---

run 2 --format=verse "$sites/film30.json"
says "text, json, csv or html, not verse"
run 2 --what-matters --format=html "$sites/film30.json"
says "text or json, not html"
sed 's/"hip": "[^"]*"/"hip": "900 ft"/' "$sites/film30.json" > refused.json
run 1 --format=html refused.json
silent out
run 1 --format=html refused.json "$sites/half_circle.json"
sound "one of two refused"
test "$(grep -c '<section' out)" = 4 || wrong "not the one sheet that could be planned"
run 0 --format=html --output=kept.html "$sites/film30.json"
silent out
"$program" --format=html "$sites/film30.json" | cmp -s - kept.html || wrong "--output writes something else"
cp kept.html before.html
run 1 --format=html --output=kept.html refused.json
cmp -s kept.html before.html || wrong "a refused side destroys the old output"
if test -w /dev/full; then
    checks=$((checks + 1))
    "$program" --format=html "$sites/film30.json" > /dev/full 2> err && wrong "a full disk is not noticed"
    grep -q "standard output: cannot be written" err || wrong "a full disk is not said"
fi

# --- the order: the same words, out of the same hand ---

program=$order called=tunnelside-order
all_demos "an order of all demos"
for demo in film30_hip two_sides_job shared_tube_job; do
    run 0 --format=html "$sites/$demo.json"
    sound "an order of $demo"
    same_words "$sites/$demo.json"
done
printf 'what,size,grade,count\nround tube,1.315 in x 0.083 in x 14 ft,,3\n' > hand.csv
run 0 --format=html --prices="$examples/prices.csv" --in-hand=hand.csv "$sites/shared_tube_job.json"
sound "a priced order"
same_words --prices="$examples/prices.csv" --in-hand=hand.csv "$sites/shared_tube_job.json"
prints '<dt>TOTAL</dt>'
prints '; in hand</th>'
run 1 --format=html --prices="$examples/prices.csv" "$sites/shared_tube_job.json" refused.json
sound "an order without a side"
prints '<dt>INCOMPLETE</dt>'
prints '<h3>NO PRICE</h3>'
run 2 --format=html --for-customer --prices="$examples/prices.csv" --number=1 --date=2026-11-28 "$sites/shared_tube_job.json"
says "--for-customer goes with --format=text, json or csv, not html"
sed 's|"name": "[^"]*"|"name": "</style><script>alert(1)</script>"|' "$sites/film30.json" > named.json
run 0 --format=html named.json
sound "an order of a name"
hides '<script'
same_words named.json

test $failed = 0 || exit 1
echo "$checks checks of sheets and orders in HTML"
