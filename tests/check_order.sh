#!/bin/sh
# SPDX-License-Identifier: MIT
# The program tunnelside-order: a small invented site counted and priced by hand, sides and prices refused with file and line, a price never
# over an incomplete order, forms that agree, and output that is complete or absent.
program=${TSIDE_ORDER:-${ORDER:-examples/tunnelside-order}}
planner=${PLAN:-examples/tunnelside-plan}
turner=${TURNS:-examples/tunnelside-turns}
here=$PWD
. "${srcdir:-${top_srcdir:-.}}/tests/program.sh"
planner=$(cd "$here" && absolute "$planner")
turner=$(cd "$here" && absolute "$turner")

after_run() {
    test "$wanted" != 2 || test ! -s out || wrong "$called $*: misused, and prints"
}

# tells TEXT: printed, wherever its line is broken, and however wide its columns are.
tells() {
    checks=$((checks + 1))
    tr -s '\n ' ' ' < out | grep -qF -- "$1" || wrong "$called: not told: \"$1\""
}

# --- the command line ---

run 0 --help
silent err
test "$(wc -l < out)" -le 24 || wrong "--help does not fit a screen"
test -z "$(awk 'length > 80' out)" || wrong "--help is wider than a screen"
for option in prices in-hand for-customer number date kerf trim also units format output help version; do
    prints "--$option"
done
run 0 --version
prints "tunnelside-order "
run 2
says "no file"
run 2 --units=ells "$sites/film30.json"
says "us or si, not ells"
run 2 --format=verse "$sites/film30.json"
says "text, json, csv or html, not verse"
run 2 --nonsense
run 2 - - < /dev/null
says "standard input can be read once only"
run 2 --prices=- - < /dev/null
run 1 --kerf=3 "$sites/film30.json"
says '--kerf: "3": '
run 1 --kerf=-1mm "$sites/film30.json"
says '"-1mm": -0.001 m is not from 0 to 0.1 m'
run 1 --trim=11m "$sites/film30.json"
says "--trim"
run 1 --also=0m "$sites/film30.json"
says "--also"
run 1 nothing.json
says "nothing.json: No such file"
silent out

# --- every demo is ordered, in both units, and every form of it says the same ---

for demo in "$sites"/*.json; do
    name=$(basename "$demo" .json)
    cp "$demo" "$name.json" # a long path cannot be broken
    for units in us si; do
        run 0 --units=$units "$name.json"
        silent err
        test -z "$(awk 'length > 80' out)" || wrong "$name: lines wider than 80 columns: $(awk 'length > 80' out | head -1)"
        test "$(grep '^[A-Z]' out | grep -v '^STOP' | sed 's/[ ,].*//' | tr '\n' ' ')" = "ORDER BUY CUT PIECES LEFT MASS CAUTIONS " || wrong "$name: other parts"
    done
    grep -qi 'nan\|inf ' out && wrong "$name: a number that is none"
    case $name in
    film30_hip) grep -q '^STOP ' out || wrong "$name: nobody is told not to buy yet" ;;
    *) ! grep -q '^STOP ' out || wrong "$name: the work is stopped" ;;
    esac
done

# bolts by the trade's names, each file's own hardware, whatever the sheet's units
for units in us si; do
    run 0 --units=$units "$sites/leanto_metric.json" "$sites/film30.json"
    for line in 'carriage bolt M8 x 120' 'carriage bolt M8 x 110' 'bolt nut M8' 'eye nut M16' 'carriage bolt 5/16 in x 4 in' 'bolt washer 5/16 in' 'eye washer 5/8 in'; do
        prints "$line"
    done
    prints "bolt, extender to bow M8 x 120, drive's end"
    prints "bolt, extender to bow 5/16 in, 4 in, drive's end"
done

# a guide on its foot has no chain and no eye bolt; the pipe stands in the ground too: 5 ft 8 in to the eye and 24 in
run 0 "$sites/film30_foot.json"
silent err
for none in chain "eye bolt" "eye nut"; do
    hides "$none"
done
prints "guide pipe 1.66 x 0.111 in, 7 ft 8 in, drive's end"

# what stops the work is told in the sheet's units, its limits on their safe side
run 0 --units=us film30_hip.json
tr -s '\n ' ' ' < out | grep -q "STOP [^.]*kicks out 3 ft 0 1/4 in with its eye misplaced, and the limit is 4 in" || wrong "what stops the work, in feet: $(grep -A1 STOP out)"
run 0 --units=si film30_hip.json
tr -s '\n ' ' ' < out | grep -q "STOP [^.]*kicks out 92[01] mm with its eye misplaced, and the limit is 101 mm" || wrong "what stops the work, in mm: $(grep -A1 STOP out)"

# --- a site counted by hand, in metres ---

cat > site.json <<'END'
{
  "job": "Invented site", "note": "Invented: nobody lives there.",
  "length": 12,
  "frame": {"width": 8, "leg_height": 1.8, "peak_height": 3.8, "tube": {"diameter": "48.3 mm", "wall": "2.6 mm"}},
  "curtain": {"hip": 1.7, "sill": 0.4, "past": 0.15},
  "bar": {"tube": {"diameter": "33.7 mm", "wall": "2.6 mm"}, "joints": "stock", "stock": 6, "swage": 0.1, "past_drive": 0.2, "past_free": 0.1},
  "stops": {"gap": 0.2},
  "drive": {"kind": "hand", "rated_torque": 50},
  "collar": {"half_length": 0, "clearance": 0},
  "drive_end": {"hung": "hip", "alignment": "given", "guide": {"tube": {"diameter": "42.4 mm", "wall": "2.6 mm"}}},
  "free_end": {"hung": "hip", "alignment": "given", "guide": {"tube": {"diameter": "42.4 mm", "wall": "2.6 mm"}}},
  "fittings": {"clip_spacing": 0.6, "channel_stock": 2, "guide_stock": 6},
  "sides": [{"name": "East", "hand": "right"}, {"name": "West", "hand": "left"}]
}
END
run 0 --units=si site.json
silent err

# Two sides of 12 m, their curtains 0.15 m past each end bow: 12.3 m. Clips every 0.6 m at most: 20.5 spaces, so 21, and 22 clips on each.
# Bars: 12.3 + 0.2 + 0.1 = 12.6 m, and 0.1 m lost in each of two joints: 6 + 6 + 0.8 m of sticks of 6 m. On each side 2 sticks whole, and both
# short ends from one: 5, not 6. Screws at a joint: 2 on each side of it, 2 joints, 2 sides: 16; couplings 2 each.
# Channel of 2 m along 12 m: 6 whole; up two flaps below 2 m and above 1 m, one stick each: 8 a side. Its screws every 0.6 m at most: along the side
# 20 spaces, 21 screws; up each flap, 1.605 m, 3 spaces, 4 screws: 29 a side.
# Guides, eyes, chains: one at each of 4 ends; 2 links, 2 nuts, 2 washers each; guides of 1.394 m, four in one stick of 6 m. Chain 4 x 2.5 in.
while IFS='|' read -r count what; do
    checks=$((checks + 1))
    awk '/^BUY/,/^CUT/' out | tr -s ' ' | grep -q "^ $count $what" || wrong "not ordered: $count $what"
done <<'END'
2|curtain film 0.14 kg/m2 x 1699 mm x 12300 mm
4|end flap film 0.14 kg/m2 x 508 mm x 1605 mm
16|splice screw
4|coupling screw
44|clip
2|hand drive 50 N m
2|collar
254 mm|chain
8|chain link
4|eye bolt M16
8|eye nut M16
8|eye washer M16
58|channel screw
5|round tube 33.7 mm x 2.6 mm x 6000 mm
1|round tube 42.4 mm x 2.6 mm x 6000 mm
16|channel 2000 mm
END
checks=$((checks + 1))
test "$(awk '/^BUY/ { on = 1; next } /^CUT/ { on = 0 } on && NF' out | wc -l)" = 17 || wrong "more is ordered than counted by hand, or less"
tells "4 of 6000 mm 1 x roll bar 6000 mm; left nothing"
tells "1 of 6000 mm 2 x roll bar 800 mm; left 4394 mm" # 6000 - 2 x 800 - 2 kerfs of 3
prints "proven least, and in the fewest sticks"
test "$(grep -c '^ *22  *clip, curtain to bar, ' out)" = 2 || wrong "pieces are not listed side by side"

# 105 ft of side are 16 lengths of channel of 2 m and 4 mm, which no saw cuts: two halves take the place of the last length and the rest
sed 's/"length": "96 ft"/"length": "105 ft"/' "$sites/film30.json" > stub.json
run 0 --units=si stub.json
silent err
tells " 2 AH1 to AH2 channel, 1002 mm "

# what must be mended is said before it is bought, in every form
sed 's/"rated_torque": 50/"rated_torque": 5/' site.json > weak.json
run 0 weak.json
prints "STOP   East: the drive is too weak"
run 0 --format=json weak.json
test "$(grep -c '"the drive is too weak' out)" = 2 || wrong "JSON does not say of both sides that the drive is too weak"
run 0 --format=csv weak.json
prints 'stop,weak.json,West,'

# what differs is bought apart: a motor is no hand drive, nor one of another voltage; film goes by its mass
sed 's/"name": "West"/&, "drive": {"kind": "motor", "rated_torque": 50, "rated_voltage": 24, "supply_voltage": 24}, "curtain": {"areal_mass": 0.2}/' site.json > mixed.json
run 0 --units=si mixed.json
for line in "1  hand drive 50 N m" "1  motor drive 50 N m x 24 V" "1  curtain film 0.14 kg/m2 x 1699 mm" "1  curtain film 0.2 kg/m2 x 1699 mm"; do
    prints "$line"
done

# kerf and trim: with 5 mm and 10 mm the short ends' stick loses 10 + 2 x 5
sed 's/"stock": 6/"stock": 5.9/' site.json > shorter.json
run 0 --units=si --kerf=5mm shorter.json
prints "2 x roll bar"
run 1 --trim=1m "$sites/film30.json"
says "square tube 1.5 in x 0.12 in: cuts[0].length: 0.988094 m contradicts stock: longer than any stick less its trim"
says "is missing [3 ft 2 15/16 in; at most 2 ft 8 5/8 in]"
run 1 --units=si --trim=10mm site.json # a whole stick is a piece, and has no room for a trim
says "tunnelside-order: round tube 33.7 mm x 2.6 mm: "
silent out
run 0 --units=si --trim=10mm --also=6.5m site.json
prints "6500 mm"

# --- its price, by hand ---

cat > prices.csv <<'END'
# Invented prices.
kind,what,size,grade,unit,price
currency,shells,,,,
material,curtain film,,,each,30.00
material,end flap film,,,each,2.5
material,splice screw,,,hundred,9.99
material,coupling screw,,,hundred,12.50
material,clip,,,each,0.35
material,hand drive,50 N m,,each,150
material,collar,,,each,11.00
material,chain,,,m,4.10
material,chain link,,,each,0.75
material,eye bolt,M16,,each,1.25
material,eye nut,M16,,each,0.10
material,eye washer,16 mm,,each,0.05
material,locking wire,,,m,0.00
material,channel screw,,,hundred,5.00
material,round tube,33.7 mm x 2.6 mm x 6 m,steel,each,25.01
material,round tube,42.4 mm x 2.6 mm,,m,4.01
material,channel,2 m,,each,7.10
labour,"fitting, with two men",,,side,100.01
labour,length,,,m,1.05
labour,journey,,,order,10.00
labour,cutting,,,cut,0.50
markup,handling,,,materials,7.5
markup,office,,,labour,2.5%
tax,goods,,,materials,20
tax,levy,,,all,0.05 %
END
run 1 --prices=prices.csv site.json
says 'prices.csv:5: "2.5" is malformed: a price has two decimals or none'
silent out
sed 's/,2\.5$/,2.50/' prices.csv > good.csv
run 0 --prices=good.csv site.json
silent err
# 16 at 9.99 a hundred are 1.5984, so 1.60; 4 at 12.50 are 0.50; 0.254 m of chain is 0.25 m, at 4.10 1.025, a half, so up: 1.03; 58 at 5.00 are 2.90.
# Materials: 60.00 + 10.00 + 1.60 + 0.50 + 15.40 + 300.00 + 22.00 + 1.03 + 6.00 + 5.00 + 0.80 + 0.40 + 0 + 2.90 + 125.05 + 24.06 + 113.60 = 688.34.
# Cuts: 2 of the bars, 4 guides, 4 of the channel. Labour: 200.02 + 24 x 1.05 + 10.00 + 10 x 0.50 = 240.22.
# 7.5 % of 688.34 is 51.6255, 51.63; 2.5 % of 240.22 is 6.0055, 6.01: net 688.34 + 51.63 + 240.22 + 6.01 = 986.20.
# 20 % of 739.97 is 147.994, 147.99; 0.05 % of 986.20 is 0.4931, 0.49: total 1134.68.
tr -s ' ' < out > flat
while read -r line; do
    checks=$((checks + 1))
    grep -qxF -- " $line" flat || wrong "the price has no line \"$line\""
done <<'END'
16 at 9.99 per hundred 1.60
0.25 at 4.10 per m 1.03
30.42 at 0.00 per m 0.00
6 at 4.01 per m 24.06
5 at 25.01 each 125.05
MATERIALS 688.34
2 at 100.01 per side 200.02
24 at 1.05 per m 25.20
1 at 10.00 per order 10.00
10 at 0.50 per cut 5.00
LABOUR 240.22
7.5 % of materials, 688.34 51.63
2.5 % of labour, 240.22 6.01
NET 986.20
20 % of materials, 739.97 147.99
0.05 % of all, 986.20 0.49
TOTAL 1134.68
END
prints "PRICE IN shells"
prints "halves up"
printf '\357\273\277' > marked.csv # as a spreadsheet saves it: a mark, and carriage returns
sed 's/$/\r/' good.csv >> marked.csv
cp out plain.txt
run 0 --prices=marked.csv site.json
cmp -s out plain.txt || wrong "a list as a spreadsheet saves it gives another price"
run 0 --prices=- site.json < good.csv
cmp -s out plain.txt || wrong "a list from standard input gives another price"

# the invented list prices both demo jobs
for job in two_sides_job shared_tube_job; do
    run 0 --prices="$examples/prices.csv" "$sites/$job.json"
    silent err
    prints "TOTAL"
done
grep -q 'nvented' "$examples/prices.csv" || wrong "the price list does not say that it is invented"

# --- prices refused, with their line; all that are missing at once ---

# refused SED-SCRIPT TEXT...: of a list changed so, each text is said, and nothing printed.
refused() {
    sed "$1" good.csv > changed.csv
    cmp -s good.csv changed.csv && wrong "the edit $1 changes nothing"
    shift
    run 1 --prices=changed.csv site.json
    silent out
    for text; do
        says "$text"
    done
}
refused 's/0\.35$/-0.35/' 'changed.csv:8: "-0.35" is negative'
refused 's/0\.35$/0,35/' 'changed.csv:8: more than 6 cells'
refused 's/0\.35$/"0,35"/' 'changed.csv:8: "0,35" is ambiguous'
refused 's/0\.35$/1.350/' 'changed.csv:8: "1.350" is ambiguous'
refused 's/0\.35$/.35/' 'changed.csv:8: ".35" is no price'
refused 's/0\.35$/0.35 shells/' 'is no price'
refused 's/0\.35$/1e3/' 'is no price'
refused 's/0\.35$/nan/' 'is no price'
refused 's/0\.35$//' 'changed.csv:8: no price is given'
refused 's/0\.35$/12345678901/' 'the most is 10 digits'
refused 's/,each,0\.35$/,each,9999999999.99/' 'changed.csv:8: the amount is above what makes sense'
refused 's/^\(material,clip.*\)/\1\n\1/' 'changed.csv:9: clip is ambiguous: line 8 has it too'
refused 's/^\(material,round tube,33.*\)/\1\nmaterial,round tube,33.7 mm,,m,4.00/' 'ambiguous: round tube 33.7 mm x 2.6 mm x 6000 mm is priced in line 18 too'
refused 's/^\(tax,goods.*\)/\1\n\1/' 'goods is ambiguous'
refused 's/material,clip/material,clips/' 'changed.csv:8: "clips" is nothing that is ordered; what is: curtain film'
refused 's/material,clip/stuff,clip/' 'changed.csv:8: kind "stuff" is not one of: material, labour, markup, tax, currency, whose, validity, terms'
refused 's/clip,,,each/clip,,,dozen/' 'unit "dozen" is not one of: each, hundred, pack of ..., m, ft, coil of ..., m of ..., ft of ..., roll of ..., m2, ft2'
refused 's/clip,,,each/clip,,,m/' 'changed.csv:8: clip is not bought by m here: by each'
refused 's/clip,,,/clip,3 mm,,/' 'more measures than a clip has, 0'
# a grade in capitals or not, and a size in typographic marks, are the same article
run 0 --prices="$examples/prices.csv" --format=csv "$sites/shared_tube_job.json"
cp out plain
sed 's/,steel,/,Steel,/; s/A500_B_shaped/a500_b_SHAPED/; s/fence 1-3\/8 in/fence 1-3\/8″/; s/eye bolt,3\/8 in/eye bolt,3\/8 inches/' "$examples/prices.csv" > typed.csv
cmp -s typed.csv "$examples/prices.csv" && wrong "nothing is typed otherwise"
run 0 --prices=typed.csv --format=csv "$sites/shared_tube_job.json"
cmp -s out plain || wrong "prices typed otherwise: $(diff plain out | head -5)"
refused 's/clip,,,/clip,,steel,/' 'a clip has no grade'
refused 's/,steel,each/,tin,each/' 'grade "tin" is no metal'
refused 's/33\.7 mm x 2.6 mm x 6 m/1-3\/8 in x 2.6 mm/' 'changed.csv:18: "1-3/8 in"'
refused 's/33\.7 mm x 2.6 mm x 6 m/33.7 x 2.6/' 'a bare number has no unit'
refused 's/labour,journey,,,order/labour,journey,,,each/' 'unit "each" is not one of: m, ft, order, side, cut'
refused 's/labour,journey,,/labour,journey,3 m,/' 'size and grade are for materials'
refused 's/materials,7\.5$/all,7.5/' 'unit "all" is not one of: materials, labour'
refused 's/materials,7\.5$/materials,-7.5/' 'is negative'
refused 's/materials,7\.5$/materials,7.55555/' 'is no share that makes sense'
refused 's/,shells,,,,/,shells,,,,3/' 'a row of the kind "currency" has no price'
refused 's/^currency.*/&\ncurrency,crowns/' 'the currency is ambiguous: line 3 has it too'
refused 's/^kind,.*/kind;what;size;grade;unit;price/' 'changed.csv:2: no price list: wanted the header kind,what,size,grade,unit,price'
refused 's/"fitting, with/"fitting/; s/men",/men,/' 'a quote is not closed'
refused '/chain link/d; /33.7 mm/d; /,clip/d' 'prices are missing' 'material,clip,,,each,' 'material,chain link,,,each,' \
    'material,round tube,33.7 mm x 2.6 mm x 6000 mm,steel -,each,'
test "$(grep -c '^material,' err)" = 3 || wrong "other prices than the missing three are listed"
# two faults are both said; what is listed as missing can be filled in
refused 's/0\.35$/x/; s/4\.10$/y/' '"x" is no price' '"y" is no price'
printf 'kind,what,size,grade,unit,price\n' > empty.csv
run 1 --prices=empty.csv "$sites/two_sides_job.json"
silent out
{ cat empty.csv; grep '^material' err | sed 's/$/1.00/'; } > filled.csv
run 0 --prices=filled.csv "$sites/two_sides_job.json"
prints "TOTAL"
# ... also where one tube is bought by the length and by the stick
grep -v '^material,round tube\|^material,curtain' "$examples/prices.csv" > some.csv
for list in empty.csv some.csv; do
    for units in us si; do
        run 1 --units=$units --prices="$list" "$sites"/*.json
        silent out
        { cat "$list"; grep '^material' err | sed 's/$/1.00/'; } > filled.csv
        run 0 --units=$units --prices=filled.csv "$sites"/*.json
        silent err
        prints "TOTAL"
    done
done
# ... and where films differ by less than a millimetre, and drives by less than half a percent, as 30 N m and 22 lbf ft do
sed 's/"hand": "left"/"hand": "left", "curtain": {"sill": 0.3993}, "drive": {"rated_torque": 50.2}/' site.json > nearly.json
cmp -s site.json nearly.json && wrong "no side of site.json has another sill and drive"
run 1 --prices=empty.csv nearly.json
{ cat empty.csv; grep '^material' err | sed 's/$/1.00/'; } > filled.csv
run 0 --prices=filled.csv nearly.json
test "$(grep -c '^material,hand drive,' filled.csv)" = 2 || wrong "two drives are not two rows"
# ... and where one tube is of two grades, one of them unknown
sed 's/"hand": "left"/"hand": "left", "bar": {"tube": {"diameter": "33.7 mm", "wall": "2.6 mm"}, "material": {"grade": "S235"}, "joints": "stock", "stock": 6}/' site.json > graded.json
run 1 --prices=empty.csv graded.json
{ cat empty.csv; grep '^material' err | sed 's/$/1.00/'; } > filled.csv
test "$(grep -c '^material,round tube,33.7 mm x 2.6 mm x 6000 mm,\(steel -\|S235\),each' filled.csv)" = 2 || wrong "one tube of two grades is not two rows"
run 0 --prices=filled.csv graded.json
# "-" is for what has no such measure: no row for tube by length alone prices a stick
refused 's/33\.7 mm x 2.6 mm x 6 m,steel,each/33.7 mm x 2.6 mm x -,steel,m/' 'prices are missing' 'material,round tube,33.7 mm x 2.6 mm x 6000 mm,steel -,each,'
refused 's/33\.7 mm x 2.6 mm x 6 m/- x 2.6 mm x 6 m/' 'changed.csv:18: "-"'
# --- packs, coils and rolls are sold whole, and what is left of them is said ---

# Two curtains of 12.3 m from a roll of 25 m leave 0.4 m. Two flaps of 508 mm stand side by side on 1.1 m: 2 x 1.605 m. 16 screws from 2 packs of
# 12 leave 8. Each chain of 63.5 mm comes from one coil: 4 of 100 mm, 146 mm left. Wire is begun anew: 2 x (12 + 2 x 1.605) m, 30.419 m, from 2 coils of 30 m.
sed 's/^material,curtain film.*/material,curtain film,,,roll of 2 m x 25 m,100.00/; s/^material,end flap film.*/material,end flap film,,,m of 1.1 m,2.00/
    s/^material,splice screw.*/material,splice screw,,,pack of 12,5.00/; s/^material,chain,.*/material,chain,,,coil of 100 mm,1.00/
    s/^material,locking wire.*/material,locking wire,,,coil of 30 m,10.00/' good.csv > packs.csv
run 0 --prices=packs.csv site.json
silent err
for line in "1 roll  curtain film 0.14 kg/m2, roll of 2000 mm x 25.000 m; left 400 mm" "3.21 m  end flap film 0.14 kg/m2, m off a roll of 1100 mm" \
    "2 packs  splice screw, pack of 12; left 8" "4 coils  chain, coil of 100 mm; left 146 mm" "2 coils  locking wire, coil of 30.000 m; left 29.581 m" \
    "3.21 at 2.00 per m off a roll of 1100 mm"; do
    prints "$line"
done
sed -n '/^BUY/,/^CUT/p' out > bought
! grep -q '254 mm\|30.420 m\|1699 mm\|12300 mm' bought || wrong "a length is bought that is not sold"
run 0 --prices=packs.csv --format=csv site.json
prints 'buy,,,,chain,,,,,,,,,,,,0.146'
prints ',4,coil,,,,,,,,,coil of 100 mm'
prints 'buy,,,,splice screw,,,,,,,,,,,,,2,pack,,,,,,,,,"pack of 12, left 8"'
run 0 --prices=packs.csv --format=json site.json
if command -v python3 > /dev/null; then
    checks=$((checks + 1))
    python3 - out <<'END' || wrong "packs in JSON differ"
import json, sys
order = json.load(open(sys.argv[1]))
bought = {b["what"]: b for b in order["buy"]}
assert bought["curtain film"]["sold_in"] == {"unit": "roll", "width": {"value": 2, "unit": "m"}, "length": {"value": 25, "unit": "m"}}
assert bought["curtain film"]["quantity"] == {"value": 1, "unit": "roll"} and abs(bought["curtain film"]["left"]["value"] - 0.4) < 1e-9
assert bought["splice screw"]["left"] == 8 and "count" not in bought["splice screw"]
assert "total_length" not in bought["chain"] and bought["clip"]["count"] == 44
END
fi
packed() { # by the list of packs, changed, the order is refused with all of these
    change=$1
    shift
    sed "$change" packs.csv > changed.csv
    run 1 --prices=changed.csv site.json
    for message in "$@"; do
        says "$message"
    done
    silent out
}
packed 's/pack of 12/pack of 0/' 'changed.csv:6: a pack of "0": wanted a whole number from 1 to 1000000'
packed 's/pack of 12/pack of 1.5/' 'a pack of "1.5": wanted a whole number'
packed 's/pack of 12/pack/' 'unit "pack" is not one of: each, hundred, pack of'
packed 's/coil of 100 mm/coil of 100/' '"100": '
packed 's/coil of 100 mm/coil of 0 mm/' '"0 mm" is not above 0'
packed 's/coil of 100 mm/coil of 50 mm/' 'chain: a piece of 64 mm is longer than a coil of 50 mm'
packed 's/roll of 2 m x 25 m/roll of 2 m/' '"": '
packed 's/roll of 2 m x 25 m/roll of 1 m x 25 m/' 'curtain film: a sheet of 1699 mm x 12300 mm is not cut from a roll of 1000 mm x 25.000 m'
packed 's/pack of 12/coil of 12 m/' 'splice screw is not bought by coil of 12000 mm here: by each'
packed 's/coil of 30 m/roll of 1 m x 30 m/' 'locking wire is not bought by roll of'
# masses, for freight: of what the sides tell, or the list, by its units; what has none is named
sed 's/,price$/,price,mass/; s/^material,chain,.*/&,0.5 kg/; s/^material,splice screw.*/&,90 g/; s/^material,eye bolt.*/&,0.3 kg/' packs.csv > masses.csv
run 0 --prices=masses.csv --format=csv site.json
# 4 coils of chain, 2 packs of screws, 4 eye bolts; 16 needed screws and a roll of 2 m x 25 m at 0.14 kg/m2
for row in 'buy,,,,chain,,,,,,,,,,,2,' 'buy,,,,splice screw,,,,,,,,,,,0.18,' 'buy,,,,eye bolt,,,,4,,,0.016,,,,1.2' 'buy,,,,curtain film,,,,,,,,,,,7'; do
    prints "$row"
done
run 0 --units=si --prices=masses.csv site.json
tr -s "\n " "  " < out > flat
grep -q "Not in it, for want of a mass: coupling screw, chain link, eye nut, eye washer, locking wire, channel screw, channel\." flat || wrong "other masses are wanting"
prints "drive, drive's end, 3 kg"
sed 's/0\.5 kg/0 kg/' masses.csv > changed.csv
run 1 --prices=changed.csv site.json
says '"0 kg" is not above 0'
sed 's/^labour,journey.*/&,3 kg/' masses.csv > changed.csv
run 1 --prices=changed.csv site.json
says 'a mass is of a material'

# by the foot and by the metre one price is the other converted, 0.16 / 0.3048 = 0.5249; another is ambiguous
sed 's/^material,locking wire.*/material,locking wire,,,ft,0.16\nmaterial,locking wire,,,m,0.52/' good.csv > both.csv
run 0 --units=si --prices=both.csv site.json
prints "30.42 at 0.52 per m"
run 0 --units=us --prices=both.csv site.json
prints "99.8 at 0.16 per ft"
sed 's/m,0\.52/m,0.60/' both.csv > changed.csv
run 1 --prices=changed.csv site.json
says 'changed.csv:17: locking wire is ambiguous: line 16 has it too'
# every invented site has its prices in the invented list
for demo in "$sites"/*.json; do
    run 0 --prices="$examples/prices.csv" "$demo"
    silent err
    prints "TOTAL"
done

# --- stock in hand is used first, the shortest first, and less is bought ---

# On each side 2 bars' sticks of 6 m and one of 800 mm; four guides of 1.398 m and a little more. In hand 2 rests of 850 mm, each of which gives one end, and one of 3 m
# of guide's tube, which gives two guides: 4 sticks of the bars are bought, and one of the guides. 2.5 m of channel gives one length of 2 m.
cat > hand.csv <<'END'
# Invented rests.
what,size,grade,count
round tube,33.7 mm x 2.6 mm x 850 mm,steel,3
round tube,42.4 mm x 2.6 mm x 3 m,,1
channel,2.5 m,,1
round tube,48.3 mm x 2.6 mm x 3 m,,2
END
run 0 --units=si --in-hand=hand.csv site.json
silent err
for line in " 1 of 850 mm 1 x roll bar 800 mm; left 47 mm; in hand" "mark AB3" "mark BB3" " 1 of 3000 mm 2 x guide pipe 1399 mm; left 196 mm; in hand" \
    " 4 round tube 33.7 mm x 2.6 mm x 6000 mm, steel" " 1 round tube 42.4 mm x 2.6 mm x 6000 mm, steel" " 15 channel 2000 mm" \
    " and 6 mm lost in cuts and ends" "24.000 m bought: proven least for what the stock in hand leaves to cut" " in hand, not used: 1 of round tube 850 mm" " in hand, not used: 2 of round tube 3000 mm"; do
    tells "$line"
done
run 0 --format=json --in-hand=hand.csv site.json
test "$(grep -c '"in_hand": true' out)" = 4 || wrong "JSON has other sticks in hand"
run 0 --format=csv --in-hand=hand.csv site.json
test "$(grep -c '^stick.*,in hand$' out)" = 4 || wrong "CSV has other sticks in hand"
printf 'what,size,grade,count\nround tube,42.4 mm x 2.6 mm x 6 m,,1\n' > whole.csv
run 0 --in-hand=whole.csv site.json
prints "Nothing is bought: the stock in hand gives all."
sed -n '/^BUY/,/^CUT/p' out > bought
! grep -q '1 5/8\|1.669' bought || wrong "what is in hand is bought too"
held() { # with this row in hand the order is refused
    printf 'what,size,grade,count\n%s\n' "$1" > changed.csv
    run 1 --in-hand=changed.csv site.json
    says "changed.csv:2: $2"
    silent out
}
held 'clip,,,3' 'a clip is not cut from sticks'
held 'curtain film,0.14 kg/m2 x 2 m x 10 m,,3' 'a curtain film is not cut from sticks'
held 'round tube,33.7 mm x 2.6 mm,,1' "wanted the size with the stick's length as its last measure"
held 'round tube,33.7 mm x 2.6 mm x -,,1' "wanted the size with the stick's length as its last measure"
held 'channel,,,1' "wanted the size with the stick's length as its last measure"
held 'channel,2 m,,0' 'count "0": wanted a whole number from 1 to 1000'
held 'channel,2 m,,' 'count "": wanted'
held 'channel,2 m,steel,1' 'a channel has no grade'
held 'rod,2 m,,1' '"rod" is nothing that is ordered'
printf 'what,size,count\n' > changed.csv
run 1 --in-hand=changed.csv site.json
says "changed.csv:1: no list of stock in hand: wanted the header what,size,grade,count"
run 1 --in-hand=none.csv site.json
says "none.csv: No such file"
run 2 --in-hand=- - < /dev/null
run 2 --in-hand=hand.csv --output=hand.csv site.json
says "it is the list of stock in hand"

# --- the customer's copy: number, dates, whose, terms; markups in the prices, and nobody can tell cost or markup ---

{ cat good.csv; printf 'whose,Invented Fitters\nvalidity,30 days\nterms,"Half now, half then."\n'; } > letter.csv
copy="--for-customer --number=Q-17 --date=2027-12-15"
run 0 --units=si --prices=letter.csv $copy site.json
silent err
for line in "QUOTATION  Q-17" "DATE       2027-12-15, valid until 2028-01-14" "FROM       Invented Fitters" "Half now, half then." "Invented site: West" \
    "44  clip                                                 16.55" "  MATERIALS                                                             739.97" \
    "  LABOUR                                                                246.23" "  TOTAL                                                                1134.68"; do
    prints "$line"
done
hides handling
cp out customer.txt
run 0 --units=si --prices=letter.csv $copy --format=csv site.json
cp out customer.csv
run 0 --units=si --prices=letter.csv $copy --format=json site.json
cp out customer.json
run 0 --units=si --prices=letter.csv --format=json site.json
if command -v python3 > /dev/null; then
    checks=$((checks + 1))
    python3 - <<'END' || wrong "the customer's copy tells cost or markup, or does not add up"
import csv, json, re
ours, theirs = json.load(open("out"))["price"], json.load(open("customer.json"))
price = theirs["price"]
cents = lambda money: money["value"]
of = lambda p, *kinds: [line for line in p["lines"] if line["kind"] in kinds]
# the sums are ours, and the lines add up to them
assert all(price[name] == ours[name] for name in ("net", "tax", "total")) and not of(price, "markup")
assert sum(cents(line["amount"]) for line in of(price, "material")) == cents(price["materials"]) == 73997
assert sum(cents(line["amount"]) for line in of(price, "labour")) == cents(price["labour"]) == 24623
assert cents(price["materials"]) + cents(price["labour"]) == cents(price["net"])
# each line is its cost with its share of the markups, to the cent: 7.5 % of materials, 2.5 % of labour
for kind, share in ("material", 1.075), ("labour", 1.025):
    for cost, raised in zip(of(ours, kind), of(price, kind)):
        assert abs(cents(raised["amount"]) - share * cents(cost["amount"])) <= 1.5, (cost, raised)
assert set(price) == {"currency", "rounding", "lines", "materials", "labour", "net", "tax", "total"}
assert all(not {"price", "list_line"} & set(line) for line in price["lines"])
assert theirs["quotation"] == {"number": "Q-17", "date": "2027-12-15", "valid_until": "2028-01-14", "whose": ["Invented Fitters"], "terms": ["Half now, half then."]}
assert set(theirs) == {"program", "version", "complete", "quotation", "sides", "price"} and all("pieces" not in side for side in theirs["sides"])
# no cost, no price of a unit, no markup, no sum of costs stands in any form of it
secret = {cents(line[key]) for line in ours["lines"] if line["kind"] in ("material", "labour", "markup") for key in ("amount", "price", "base") if key in line}
secret |= {cents(ours["materials"]), cents(ours["labour"])} - {0}
shown = {cents(line["amount"]) for line in price["lines"]} | {cents(price[name]) for name in ("materials", "labour", "net", "tax", "total")}
shown |= {cents(line["base"]) for line in of(price, "tax")}
assert secret - {0} and not (secret & shown) - {0}, secret & shown
text = open("customer.txt").read()
assert {round(100 * float(n)) for n in re.findall(r"(?:^|[ ])(\d+\.\d\d)$", text, re.M)} <= shown, "a price that is none of the lines'"
rows = list(csv.DictReader(open("customer.csv", newline="")))
assert {int(r["amount [cent]"]) for r in rows if r["amount [cent]"]} <= shown and not any(r["price [cent]"] or r["list line"] for r in rows)
assert {int(r["base [cent]"]) for r in rows if r["base [cent]"]} <= shown
assert {r["part"] for r in rows} == {"quotation", "stop", "material", "labour", "tax", "sum"}
for form in "customer.txt", "customer.csv", "customer.json":
    words = open(form).read()
    assert not re.search(r"handling|office|markup|7\.5|75000|2\.5 ?%|25000\b", words), form
END
fi
copies() { # with these options the copy is refused: usage
    says=$1
    shift
    run 2 "$@" site.json
    says "$says"
}
copies "--for-customer needs --prices, --number and --date" --for-customer
copies "--for-customer needs --prices, --number and --date" --for-customer --prices=letter.csv --number= --date=2026-01-01
copies "--number and --date are for --for-customer" --number=7
for date in 2026-02-29 2026-13-01 2026-00-10 2026-04-31 0000-01-01 26-01-01 2026-1-01 2026-01-01x 01.02.2026 ""; do
    copies "--date: no date, such as 2026-11-28: $date" --for-customer --prices=letter.csv --number=7 "--date=$date"
done
run 0 --prices=letter.csv --for-customer --number=7 --date=2028-02-29 site.json
prints "valid until 2028-03-30"
run 1 --prices=good.csv $copy site.json
says "good.csv: a customer's copy needs a row of the kind \"terms\""
silent out
sed 's/30 days/a month/' letter.csv > changed.csv
run 1 --prices=changed.csv $copy site.json
says '"a month" is no validity: wanted days from 1 to 3650, such as 30 days'
silent out
sed 's/"hand": "left"/"hand": "left", "curtain": {"hip": 9}/' site.json > bad.json
run 1 --prices=letter.csv $copy bad.json
silent out

: > nothing.csv
run 1 --prices=nothing.csv site.json
says "nothing.csv:1: no price list"
run 1 --prices=no.csv site.json
says "no.csv: No such file"
head -c 4096 "$program" > binary.csv
run 1 --prices=binary.csv site.json
silent out

# --- a side that is refused is said with file, line and field; the others are ordered, and never priced as if they were all ---

sed 's/"hand": "left"/"hand": "left", "curtain": {"hip": 9}/' site.json > bad.json
run 1 --prices=good.csv bad.json
says "tunnelside-order: bad.json:$(grep -n '"hip": 9' bad.json | sed 's/:.*//'): sides[1].curtain.hip: "
says "no price: a side is refused"
prints "INCOMPLETE"
prints "NO PRICE"
tells " 22 clip, curtain to bar"
hides "TOTAL"
run 1 bad.json --format=json --prices=good.csv
prints '"complete": false'
prints '"no_price"'
hides '"total"'
run 1 bad.json --format=csv --prices=good.csv
prints 'refused,bad.json,West,'
hides 'sum,'
sed 's/"clip_spacing": 0.6/"clip_spacing": 0/' site.json > bad.json
run 1 bad.json
says "bad.json:$(grep -n clip_spacing bad.json | sed 's/:.*//'): fittings.clip_spacing: 0 m is below 0.05 m"
silent out
"$planner" bad.json > out 2> err && wrong "tunnelside-plan takes what tunnelside-order refuses"
says "fittings.clip_spacing: 0 m is below"
"$planner" site.json > out 2> err || wrong "tunnelside-plan does not take the fittings: $(head -3 err)"
sed 's/"clip_spacing"/"clip_spacings"/' site.json > bad.json
run 1 bad.json
says 'fittings.clip_spacings: no such field; the nearest name here is "clip_spacing"'
sed 's/"note": /"hem": 1, "note": /' site.json > bad.json
run 1 bad.json
says 'hem: no such field; did you mean "fittings.hem"?'
run 0 site.json "$sites/film30.json"
prints "for 3 sides"
run 0 - < site.json
printf '{' > broken.json
run 1 broken.json site.json
says "broken.json:1: "
prints "INCOMPLETE"

# --- marks: by place in the run, or given; the same on every run, none twice ---

marks() { # of each side, in order, as JSON has them
    tr -d '\n ' < out | grep -o '"drive_at":"[^"]*","mark":"[^"]*"' | sed 's/.*:"//; s/"//' | tr '\n' ' '
}
run 0 --format=json site.json "$sites/film30.json"
test "$(marks)" = "A B C " || wrong "marks of three sides: $(marks)"
for mark in AC1 AL1 AL2 AB1 AB2 AB3 ADG1 ADN1 ADE1 AFG1 AFN1 AFE1 AH1 AH2 BB3 BFG1 CDX1 CFX1 CB1; do
    prints "\"$mark\""
done
twice=$(sed '/"buy"/q' out | grep -o '"[A-Z]*[1-9][0-9]*"' | sort | uniq -d)
test -z "$twice" || wrong "marks twice: $twice"
sed 's/"name": "West"/"name": "West", "mark": "a"/' site.json > marked.json
cmp -s site.json marked.json && wrong "no side of site.json is marked"
run 0 --format=json site.json
cp out plain
run 0 --format=json marked.json
test "$(marks)" = "B A " || wrong "marks where the second side is A: $(marks)"
prints '"ADG1"'
"$planner" --format=json marked.json > out
test "$(marks)" = "B A " || wrong "tunnelside-plan marks otherwise: $(marks)"
run 1 site.json nothing.json
run 0 --format=json site.json
cmp -s out plain || wrong "marks differ from run to run"
sed 's/"mark": "a"/"mark": "AD"/' marked.json > bad.json
run 1 bad.json
says "bad.json:$(grep -n '"AD"' bad.json | sed 's/:.*//'): sides[1].mark: \"AD\": the second letter of a side's mark is one from A to Z, not D, F, I, O or Q"
sed 's/"mark": "a"/"mark": 7/' marked.json > bad.json
run 1 bad.json
says "sides[1].mark: wanted a text"
sed 's/"name": "East"/"name": "East", "mark": "A"/' marked.json > bad.json
run 1 bad.json
says "sides[1].mark: another side, of bad.json, has it too"
run 1 marked.json marked.json
says "sides[1].mark: another side, of marked.json, has it too"

# four extenders alike to look at: each by its mark, with its own holes, and the stick that it is cut from
run 0 "$sites/two_sides_job.json"
for mark in ADX1 AFX1 BDX1 BFX1; do
    prints "mark $mark"
done
tr -s "\n " "  " < out > flat
for places in "10 3/8, 32 5/16" "9 5/8, 29 15/16"; do
    grep -q "drill at 1, $places in from the top end: eye 5/8 in, bow 11/32 in, member 11/32 in" flat || wrong "no extender is drilled at $places"
done
run 0 --format=csv "$sites/two_sides_job.json"
prints ",ADX1,extender,drive_end,right_handed,"
prints "stick,,,BFX1,square tube,"

# --- JSON and CSV, as others read them ---

run 0 --prices=good.csv --format=json site.json
cp out order.json
run 0 --prices=good.csv --format=csv site.json
cp out order.csv
prints "sum,,,,total,,,,,,,,,,,,,,,,,,113468,,,,,"
if command -v python3 > /dev/null; then
    checks=$((checks + 1))
    python3 - <<'END' || wrong "JSON and CSV differ, or do not add up, as Python reads them"
import csv, json
from decimal import Decimal, ROUND_HALF_UP
order = json.load(open("order.json"), parse_constant=lambda word: 1 / 0)
rows = list(csv.DictReader(open("order.csv", newline="")))
assert order["complete"] is True and len(order["sides"]) == 2
assert [r["part"] for r in rows].count("piece") == sum(len(side["pieces"]) for side in order["sides"])
price = order["price"]
cents = lambda money: (money["unit"] == "cent" and type(money["value"]) is int and money["value"]) or 0
half_up = lambda number: int(number.quantize(Decimal(1), ROUND_HALF_UP))
per = {"hundred": 100}
for line in price["lines"]:
    if "share" in line:
        want = half_up(Decimal(cents(line["base"])) * line["share"]["value"] / 1000000)
    else:
        q = line["quantity"]
        want = half_up(cents(line["price"]) * Decimal(str(q["value"])) / per.get(q["unit"], 1))
    assert cents(line["amount"]) == want, line
kinds = lambda *names: sum(cents(line["amount"]) for line in price["lines"] if line["kind"] in names)
assert cents(price["materials"]) == kinds("material") == 68834
assert cents(price["net"]) == kinds("material", "labour", "markup")
assert cents(price["total"]) == kinds("material", "labour", "markup", "tax") == 113468
priced = [r for r in rows if r["part"] in ("material", "labour", "markup", "tax")]
assert [int(r["amount [cent]"]) for r in priced] == [cents(line["amount"]) for line in price["lines"]]
assert len(rows[0]) == 28 and all(None not in r and None not in r.values() for r in rows)
# every piece asked for is cut, and no stick is overfull
length_of = {mark: p["length"]["value"] for side in order["sides"] for p in side["pieces"] for mark in p["marks"]}
cut_marks = []
for plan in order["cut_plans"]:
    kerf = plan["stock"]["kerf"]["value"]
    for stick in plan["sticks"]:
        used = sum(c["count"] * c["length"]["value"] for c in stick["cuts"]) + kerf * (stick["pieces"] - 1)
        assert abs(used - stick["used"]["value"]) < 1e-6 and used <= stick["length"]["value"] + 1e-9
    # each stick names what is cut from it, and every mark is cut once, at its length
        lengths = [length_of[mark] for marks in stick["marks"] for mark in marks]
        assert len(stick["marks"]) == stick["count"] and len(set(map(len, stick["marks"]))) == 1
        if plan["what"] != "channel":
            assert all(abs(sum(map(length_of.get, marks)) + kerf * (len(marks) - 1) - used) < 1e-3 for marks in stick["marks"])
        cut_marks += [mark for marks in stick["marks"] for mark in marks]
    cut = sum(s["count"] * c["count"] * c["length"]["value"] for s in plan["sticks"] for c in s["cuts"])
    asked = sum(p["count"] * p["length"]["value"] for side in order["sides"] for p in side["pieces"]
                if p["by"] == "cut" and (p["text"] == "channel" if plan["what"] == "channel" else p["size"]["value"] == plan["size"]["value"]))
    assert abs(cut - asked) < 1e-4 and plan["plan"]["proven"] == 1, (plan["what"], cut, asked)
assert sorted(cut_marks) == sorted(mark for side in order["sides"] for p in side["pieces"] if p["by"] == "cut" for mark in p["marks"])
END
fi

# --- one shape for the JSON of all programs: what a document begins with, numbers with their units, sides and refused ones alike ---

sed 's/"hand": "left"/"hand": "left", "curtain": {"hip": 9}/' site.json > bad.json
"$planner" --format=json bad.json > plan.json 2> /dev/null && wrong "tunnelside-plan takes bad.json"
"$program" --format=json bad.json > order.json 2> /dev/null && wrong "tunnelside-order takes bad.json"
"$turner" --core=35mm --drop=1m --format=json > turns.json || wrong "tunnelside-turns does not answer"
if command -v python3 > /dev/null; then
    checks=$((checks + 1))
    python3 - <<'END' || wrong "the programs' JSON differs in shape"
import json
documents = [json.load(open(name + ".json")) for name in ("plan", "order", "turns")]
plan, order, turns = documents
for document, name in zip(documents, ("plan", "order", "turns")):
    assert list(document)[:3] == ["program", "version", "complete"] and document["program"] == "tunnelside-" + name
assert [d["complete"] for d in documents] == [False, False, True] and len({d["version"] for d in documents}) == 1
def numbers(value, key=""): # a number with a fraction stands beside its unit, whatever program tells it
    if isinstance(value, dict):
        if set(value) == {"value", "unit"}:
            assert isinstance(value["unit"], str) and isinstance(value["value"], (int, float)), key
            return
        for name, member in value.items():
            numbers(member, name)
    elif isinstance(value, list):
        for member in value:
            numbers(member, key)
    else:
        assert not isinstance(value, float), (key, value)
for document in documents:
    numbers(document)
place = ["file", "within", "job", "name", "note", "drive_at", "mark"]
for a, b in zip(plan["sides"], order["sides"]):
    assert [a[key] for key in place] == [b[key] for key in place] and list(a)[:7] == list(b)[:7] == place
assert plan["sides"][1] == order["sides"][1] and set(plan["sides"][1]) == set(place) | {"refused"} and len(plan["sides"]) == len(order["sides"]) == 2
assert set(turns["turns"][0]) - {"on_bar"} <= set(plan["sides"][0]["turns"][0])
assert set(turns["asked"]) <= {"core", "thickness", "packing", "wraps_shut", "drop"} and set(turns["assumed"]) <= set(turns["asked"])
END
fi

# --- output is complete or absent ---

run 0 --output=order.txt --prices=good.csv site.json
silent out
cmp -s order.txt plain.txt || wrong "--output writes something else"
run 1 --output=order.txt --prices=empty.csv site.json
cmp -s order.txt plain.txt || wrong "a refused price destroys the old output"
run 1 --output=no/such/folder/order.txt site.json
says "cannot be written"
mkdir folder
run 1 --output=folder site.json
says "folder: cannot be written"
if test "$(id -u)" != 0; then
    chmod a-w folder
    run 1 --output=folder/order.txt site.json
    says "folder/order.txt: cannot be written"
elif test -d /proc/self; then # not even root writes there
    run 1 --output=/proc/self/order.txt site.json
    says "/proc/self/order.txt: cannot be written"
fi
test -z "$(ls folder; ls | grep 'order.txt.')" || wrong "something is left beside the output"
if test -c /dev/full; then
    for arguments in site.json "--format=json --prices=good.csv site.json" "--format=csv site.json" "--output=/dev/full site.json" --help --version; do
        checks=$((checks + 1))
        "$program" $arguments > /dev/full 2> err && wrong "a full disk is not noticed: $arguments"
        says "cannot be written"
    done
fi
"$program" site.json >&- 2> err && wrong "a closed standard output is not noticed"
says "standard output: cannot be written"
{
    sleep 1 # until the reader has gone
    "$program" --format=json "$sites/two_sides_job.json" 2> err
    echo $? > status
} | true
test "$(cat status)" = 1 || wrong "a reader that has gone is not noticed"
says "standard output: cannot be written"

# --- the README's order: each block that follows the command is printed so, line after line ---

if test -f "$examples/../README.md"; then
    run 0 --prices="$examples/prices.csv" "$sites/shared_tube_job.json"
    checks=$((checks + 1))
    awk '
    FNR == NR { printed = printed $0 "\n"; next }
    /^#/ { here = 0 }
    /examples\/tunnelside-order --prices=examples\/prices.csv examples\/sites\/shared_tube_job.json/ { here = 1 }
    !here { next }
    /^```/ {
        if (inside && !index(printed, "\n" block)) { print "README.md promises what is not printed:"; print block; bad = 1 }
        blocks += inside
        inside = !inside
        block = ""
        next
    }
    inside { block = block $0 "\n" }
    END { if (blocks != 2) print blocks + 0, "blocks"; exit bad || blocks != 2 }' out "$examples/../README.md" || wrong "the README's order is another"
fi

# --- no locale matters ---

if test "$(LC_ALL=de_DE.UTF-8 locale decimal_point 2> /dev/null)" = ,; then
    for format in text json csv; do
        run 0 --prices=good.csv --format=$format site.json
        checks=$((checks + 1))
        LC_ALL=de_DE.UTF-8 "$program" --prices=good.csv --format=$format site.json 2>&1 | cmp -s - out || wrong "a locale with a decimal comma changes $format"
    done
fi

test $failed = 0 || exit 1
echo "$checks checks of tunnelside-order"
