#!/bin/sh
# SPDX-License-Identifier: MIT
# What a browser makes of a sheet in HTML: printed on A4 and on Letter each page of the card is one page, with its foot, its drawings are on one
# or two more, an end wall on the first of an end's, and the annex begins a new one; on a screen as narrow as a phone's nothing but a table's own box scrolls sideways.
program=${TSIDE_PLAN:-${PLAN:-examples/tunnelside-plan}}
. "${srcdir:-${top_srcdir:-.}}/tests/program.sh"

for needed in chromium pdfinfo pdftotext python3; do
    command -v $needed > /dev/null || { echo "$needed is missing: no browser has shown or printed a sheet (Debian: chromium, poppler-utils)"; exit 77; }
done

# browse ARGUMENT...: Chromium, without a window, on pages of this test's own making.
browse() {
    HOME=$work timeout 300 chromium --headless --no-sandbox --disable-gpu --disable-dev-shm-usage --hide-scrollbars --user-data-dir="$work/profile" \
        "$@" 2> browser.log || { wrong "the browser ended with status $?"; tail -3 browser.log; }
}

# All demos, and a side whose name is one long word.
long=$(printf 'Long%.0s' 1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18 19 20 21 22 23 24 25)
sed "s/\"name\": \"[^\"]*\"/\"name\": \"$long\"/" "$sites/film30_foot.json" > long.json
run 0 --format=html "$sites"/*.json long.json
cp out sheets.html
run 0 "$sites"/*.json long.json
cp out sheets.txt

# --- on paper ---

# printed SIZE WIDTH HEIGHT: the sheets on such paper, of so many points.
printed() {
    checks=$((checks + 1))
    sed "s/^<style>\$/&@page { size: $1 }/; s/size: landscape/size: $1 landscape/" sheets.html > "$1.html" # the first of sizes gives way
    browse --no-pdf-header-footer --print-to-pdf="$1.pdf" "file://$work/$1.html"
    pdfinfo -l 9999 "$1.pdf" > info || { wrong "$1: nothing is printed"; return; }
    sed -n 's/^Page .*size: *\([0-9.]*\) x \([0-9.]*\) pts.*/\1 \2/p' info | awk -v width="$2" -v height="$3" '
        function is(x, y) { return ($1 - x) ^ 2 < 1 && ($2 - y) ^ 2 < 1 }
        is(width, height) { upright++ } is(height, width) { lies++ } END { exit upright + lies != NR || upright < lies || !NR }' ||
        wrong "$1: $(grep 'size:' info | sort -k 4 | uniq -c | head -3)"
    pdftotext -layout "$1.pdf" "$1.txt"
    python3 - sheets.txt "$1.txt" "$(sed -n 's/^Pages: *//p' info)" << 'END' || wrong "$1: the pages are not as they should be"
import re, sys

text, printed = (open(name, encoding="utf-8").read().split("\f") for name in sys.argv[1:3])
pages, count = [page for page in printed if page.strip()], int(sys.argv[3])
assert len(pages) == count, (len(pages), count)
feet = []
for i, page in enumerate(pages):
    last = [line for line in page.splitlines() if line.strip()][-1]
    foot = re.fullmatch(r" *(\S.*?) +page (\d+) of (\d+)", last)
    assert foot and (int(foot[2]), int(foot[3])) == (i + 1, count), (i + 1, last)
    feet.append(foot[1])
# The text has the same pages; where one of them goes on, its head is repeated.
heads = [re.match(r"(.*?)  (.*\S) +page (\d+) of", page.split("\n")[0]) for page in text]
wanted = []
for head in heads:
    if head[3] == "1" or (head[1], head[2]) != wanted[-1]:
        wanted.append((head[1], head[2]))
at = 0
for title, whose in wanted:
    begins = "%s: %s" % (title, whose.removesuffix("...")[:20])
    used = 0
    first = pages[at].lstrip().split("\n")[0] if at < count else ""
    assert first.startswith(title), (at + 1, first, title)
    while at < count and feet[at].startswith(begins) and (not used or not pages[at].lstrip().startswith(title)):
        at, used = at + 1, used + 1
    of_an_end = title.startswith("CARD") and title.endswith("end")
    assert used in (2, 3) if title.startswith("CARD") else used >= 1, (title, whose, used)
    if of_an_end:
        first = at - used + 1
        walls, corners = ([i for i in range(at - used, at) if view in pages[i]] for view in ("END WALL, from outside: ", "CORNER, from above: "))
        assert walls == [first] and corners in ([first], [first + 1]), (title, whose, walls, corners)
assert at == count, (at, count)
END
}
printed A4 595.28 841.89
printed letter 612 792

# --- on a screen ---

# A frame of the width asked; the sheet inside has no scripts, so the page around it measures.
checks=$((checks + 1))
python3 - > frames.html << 'END'
import html

sheet = html.escape(open("sheets.html", encoding="utf-8").read())
print("<!DOCTYPE html><meta charset=utf-8><body>")
for width in (320, 360, 600, 1100):
    print(f'<iframe width={width} height=600 style="border:0" srcdoc="{sheet}"></iframe>')
print("""<pre id=measured></pre><script>onload = () => {
measured.textContent = [...document.querySelectorAll("iframe")].map(f => {
    const top = f.contentDocument.documentElement
    const letters = parseFloat(f.contentWindow.getComputedStyle(f.contentDocument.querySelector("main p")).fontSize)
    return [f.width, top.clientWidth, top.scrollWidth, letters, top.scrollHeight].join(" ")
}).join("\\n") }</script>""")
END
browse --dump-dom "file://$work/frames.html" | sed -n '/<pre/,/<\/pre>/p' | sed 's/.*<pre[^>]*>//; s/<\/pre>.*//' > measured
awk '{ if ($1 != $2 || $3 > $2 || $4 < 16 || $5 < 10000) { print "a screen of " $1 ": " $0; bad = 1 } } END { exit bad || NR != 4 }' measured ||
    wrong "a sheet does not fit a screen: $(tr '\n' ';' < measured)"

test $failed = 0 || exit 1
echo "$checks checks of sheets in a browser"
