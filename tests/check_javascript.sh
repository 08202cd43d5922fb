#!/bin/sh
# SPDX-License-Identifier: MIT
# The tests of the JavaScript module, on the package as make has gathered it, in Node; and that npm packs, installs and runs it, where npm is.
set -eu

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
HEARD=$work/heard
export BUILD HEARD top_srcdir
"$NODE" --test "$top_srcdir"/bindings/javascript/tests/*.test.js

# every function that the headers declare is called by one of these tests
"$AWK" -F '\t' '$1 == "function" { print $3 }' "$RECORDS" | sort > "$work/declared"
sort -u "$HEARD" | comm -23 "$work/declared" - > "$work/unheard"
test "$(wc -l < "$work/declared")" -gt 80
test ! -s "$work/unheard" || { echo "no test calls:"; cat "$work/unheard"; exit 1; }

readme=$(cd "$top_srcdir" && pwd)/bindings/javascript/README.md
cd "$work"

# what README shows
mkdir node_modules
ln -s "$BUILD/bindings/javascript/package" node_modules/tunnelside
sed -n '/^```js$/,/^```$/p' "$readme" | sed '1d;$d' > shown.mjs
"$NODE" shown.mjs > out
grep -qx '10.81 turns, 17.8 N m at the worst place' out
grep -qx 'extender, cut: [0-9]* ft [0-9 /]* in' out
grep -q '^contradicts curtain.sill - curtain.sill: 1.8288 m contradicts curtain.hip' out
rm -r node_modules

command -v npm > /dev/null 2>&1 || exit 0
packed=$(npm pack --silent "$BUILD/bindings/javascript/package")
echo '{"name": "quote", "private": true, "type": "module"}' > package.json
npm install --silent --offline --no-audit --no-fund "./$packed"
cat > quote.js <<'END'
import { load } from "tunnelside";
const ts = await load();
console.log(ts.rollDiameter({ core: "1 in", thickness: "1 mm", packing: 1 }, 10) === 0.0254 + 10 * 2 * 0.001);
END
test "$("$NODE" quote.js)" = true
