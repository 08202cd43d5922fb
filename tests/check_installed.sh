#!/bin/sh
# SPDX-License-Identifier: MIT
# make installcheck: what `make install` lays down in an empty folder is whole; the README's C program, its first ```c block, compiles
# against it through pkg-config and runs, with the shared library and with the static one, printing the same; what the README
# says it prints, the ```text block that follows it, if one does before the next heading, is what it prints; and examples/quote_from_c.c
# does so too, each of its lines and their sum worked out again by awk; and examples/chain_from_c.c, parts_from_c.c and
# wind_from_c.c, lines of them worked out again.
set -eu

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
root=$work/root
fail() {
    echo "installcheck: $*"
    exit 1
}

$MAKE install DESTDIR="$root" > "$work/log" 2>&1 || { cat "$work/log"; fail "make install failed"; }

for header in tunnelside.h $(for header in $TOPIC_HEADERS; do echo "tunnelside/${header##*/}"; done) tunnelside/version.h; do
    test -f "$root$includedir/$header" || fail "$includedir/$header is not installed"
done
test -z "$(find "$root$includedir" -name internal.h)" || fail "a private header is installed"
test -n "$man3dir" && test -f "$root$man3dir/tunnelside.3" || fail "the manual is not installed"
dangling=$(find "$root" -type l ! -exec test -e {} \; -print)
test -z "$dangling" || fail "links lead nowhere: $dangling"

for program in $PROGRAMS; do
    program=$root$bindir/${program##*/}
    LD_LIBRARY_PATH=$root$libdir "$program" --version > "$work/version" || fail "$program --version failed"
    test -s "$work/version" || fail "$program --version printed nothing"
done

cmp "$top_srcdir/LICENSE" "$root$docdir/LICENSE" || fail "the licence is not installed"
if test -x "$root$bindir/tunnelside-plan"; then
    for program in $PROGRAMS; do
        cmp "$top_srcdir/examples/completion.bash" "$root${docdir%/doc/*}/bash-completion/completions/$(basename "$program" .exe)" || fail "no completion of $program is installed"
    done
fi

# What manual pages name of the examples is where they say, and so is every site; their command to order works as it stands.
for file in $(sed -n 's/.*[ =("]\(examples\/[a-z0-9_/]*\.[a-z]*\).*/\1/p' "$top_srcdir"/man/*.[17]) $(cd "$top_srcdir" && ls examples/sites/*.json examples/batch/*.csv examples/*.py); do
    cmp "$top_srcdir/$file" "$root$docdir/$file" || fail "$file is not installed in $docdir"
done
grep -q "share/doc/libtunnelside/examples" "$top_srcdir/man/tunnelside-order.1" || fail "no manual page says where the examples are"
if test -x "$root$bindir/tunnelside-order"; then
    (cd "$root$docdir" && LD_LIBRARY_PATH=$root$libdir "$root$bindir/tunnelside-order" --prices=examples/prices.csv examples/sites/shared_tube_job.json) > "$work/order" ||
        fail "the manual page's order of installed sites fails"
    test -s "$work/order" || fail "the manual page's order of installed sites prints nothing"
fi

if test -n "$PKG_CONFIG" && test -f "$top_srcdir/README.md"; then
    # The folder stands for the root of the machine, and nothing that is installed elsewhere may be found.
    export PKG_CONFIG_LIBDIR="$root$libdir/pkgconfig" PKG_CONFIG_SYSROOT_DIR="$root"
    export PKG_CONFIG_ALLOW_SYSTEM_CFLAGS=1 PKG_CONFIG_ALLOW_SYSTEM_LIBS=1
    unset PKG_CONFIG_PATH

    awk '/^```/ { if (inside) exit; inside = $0 ~ /^```c$/; next } inside' "$top_srcdir/README.md" > "$work/program.c"
    grep -q 'main' "$work/program.c" || fail "README.md has no C program"
    awk '/^```/ { if (wanted) exit; if ($0 ~ /^```c$/) after = 1; wanted = after && $0 ~ /^```text$/; next }
         /^#/ && after && !wanted { if (seen_end) exit } { seen_end = after } wanted' "$top_srcdir/README.md" > "$work/promised"

    flags=$($PKG_CONFIG --cflags tunnelside) || fail "pkg-config does not find tunnelside"
    if ls "$root$libdir"/libtunnelside.so > /dev/null 2>&1; then
        $CC $CFLAGS $flags -o "$work/shared" "$work/program.c" $($PKG_CONFIG --libs tunnelside) -lm || fail "the README's program does not link with the shared library"
        LD_LIBRARY_PATH=$root$libdir "$work/shared" > "$work/shared.out" || fail "the README's program fails with the shared library"
        test -s "$work/shared.out" || fail "the README's program prints nothing"
        # Without the path the linker does not find the prefix, and with the flag that README names it does.
        ! env -u LD_LIBRARY_PATH "$work/shared" > "$work/found" 2>&1 || fail "the README's program finds another library"
        grep -q -- '-Wl,-rpath,PREFIX/lib' "$top_srcdir/README.md" || fail "README.md does not say how the linker is told of a prefix"
        $CC $CFLAGS $flags -o "$work/told" "$work/program.c" $($PKG_CONFIG --libs tunnelside) -lm -Wl,-rpath,"$root$libdir" || fail "the README's program does not link with a path"
        env -u LD_LIBRARY_PATH "$work/told" | cmp - "$work/shared.out" || fail "the README's program does not find the library by its own path"
        ran=shared
    fi
    if test -f "$root$libdir/libtunnelside.a"; then
        # A folder without the shared library, looked at first. Where no shared one is installed, nobody need ask for the static one.
        static=--static
        test "${ran:-}" = shared || static=
        # Named, and not only linked: a sanitizer brings libm along.
        case " $($PKG_CONFIG --libs $static tunnelside) " in
        *" ${LIBM:--ltunnelside} "*) ;;
        *) fail "pkg-config --libs $static tunnelside does not name $LIBM" ;;
        esac
        mkdir "$work/static-only"
        cp "$root$libdir/libtunnelside.a" "$work/static-only"
        $CC $CFLAGS $flags -o "$work/static" "$work/program.c" -L"$work/static-only" $($PKG_CONFIG --libs $static tunnelside) ||
            fail "the README's program does not link with the static library"
        env -u LD_LIBRARY_PATH "$work/static" > "$work/static.out" || fail "the README's program fails with the static library"
        ran="${ran:+$ran and }static"
    fi
    test -n "${ran:-}" || fail "neither a shared nor a static library is installed"
    if test -f "$work/shared.out" && test -f "$work/static.out"; then
        cmp "$work/shared.out" "$work/static.out" || fail "the README's program prints other things with the static library than with the shared one"
    fi
    if test -s "$work/promised"; then
        for output in "$work"/shared.out "$work"/static.out; do
            test ! -f "$output" || diff "$work/promised" "$output" || fail "the README's program does not print what README.md says"
        done
    fi

    quote=$top_srcdir/examples/quote_from_c.c
    test "$(wc -l < "$quote")" -lt 140 || fail "quote_from_c.c has 140 lines or more: too long to show how"
    # run_example NAME: compiles examples/NAME.c, and runs it into $work/NAME.out, with each library that is installed.
    run_example() {
        source=$top_srcdir/examples/$1.c
        if test -f "$work/shared.out"; then
            $CC $CFLAGS $flags -o "$work/$1" "$source" $($PKG_CONFIG --libs tunnelside) -lm || fail "$1.c does not link with the shared library"
            LD_LIBRARY_PATH=$root$libdir "$work/$1" > "$work/$1.out" || fail "$1.c fails with the shared library"
        fi
        if test -f "$work/static.out"; then
            $CC $CFLAGS $flags -o "$work/$1" "$source" -L"$work/static-only" $($PKG_CONFIG --libs $static tunnelside) || fail "$1.c does not link with the static library"
            env -u LD_LIBRARY_PATH "$work/$1" > "$work/$1.static" || fail "$1.c fails with the static library"
            test -f "$work/$1.out" || cp "$work/$1.static" "$work/$1.out"
            cmp "$work/$1.out" "$work/$1.static" || fail "$1.c prints other things with the static library than with the shared one"
        fi
    }
    run_example quote_from_c
    # Counted by hand: a drive a side; of a 30 m side with bar 6.4 m long and 0.1016 m lost in each joint, 5 sticks; two guides from 6.4008 m; two
    # extenders from 3 m; 15 channels of 2 m along each side, and one up each of two flaps. Every line is its quantity times its price, halves up.
    awk '
    function cents(money) { sub(/[.]/, "", money); return money + 0 }
    function expect(name, want) { if (!(name in bought) || bought[name] != want) print name " is " bought[name] ", not " want }
    / pieces from / { next }
    $1 == "total" { total = cents($2); next }
    {
        name = $0; sub(/  .*/, "", name)
        for (i = 1; $i != "x"; i++) ;
        bought[name] = $(i - 1)
        thousandths = cents($(i - 1)); exact = thousandths * cents($(i + 1))
        if (int((exact + 500) / 1000) != cents($(i + 3))) print name ": " $(i + 3) " is not " exact / 1000 " cents, rounded"
        sum += cents($(i + 3))
    }
    END {
        expect("drive", "2.000"); expect("collar", "2.000"); expect("eye bolt", "4.000"); expect("roll bar", "64.000"); expect("guide pipe", "12.802")
        expect("extender", "6.000"); expect("channel", "68.000"); expect("bolt, extender to bow", "4.000")
        if (!total || total != sum) print "the total is " total ", not the sum of its lines, " sum
    }' "$work/quote_from_c.out" > "$work/found"
    test ! -s "$work/found" || { cat "$work/found"; fail "quote_from_c.c is wrong"; }
    echo "installcheck: quote_from_c.c prints a $(tail -1 "$work/quote_from_c.out" | tr -s " ")"

    # By hand: half a tube of 60.3 mm from centreline to face; 4 turns of 0.15 mm, packed to 1.15, make the roll 1.38 mm thicker; a torque in proportion to the
    # length but for the drive's own weight lifts 40/17.5 of 30 m at least. Past the end bow the eye is at 60.3/2 + 50 + 101.6 mm, the drive at 50.8 + 150.
    # An arch of half chord 3.96985 m rises 1.96985 m from 1.8 m: its radius is 4.98516 m. A crank of 7 in gains 10 at half efficiency. A couple is its
    # force times its arm. What an extender bears is its line of strength, in MPa and with three digits of it.
    run_example chain_from_c
    awk '
    function off(what, got, want, by) { if (got < want - by || got > want + by) print what " is " got ", not " want }
    { gsub(/[,;:]/, "") }
    $1 == "bow" && $3 == "level" { off("the brace", $9, sqrt(4.98516 ^ 2 - (2.4 - 3.76985 + 4.98516) ^ 2), 0.001); seen++ }
    $1 == "crank" { off("the effort", $8, most / (10 * 0.5 * 0.1778), 0.06); seen++ }
    $1 == "foot" && $3 == "stall" { off("the couple", $10 * $16, $6, 1.5); seen++ }
    $1 == "stand" && $2 == "under" { combined = $(NF - 1) * 1e6 }
    $1 == "stand" && $2 == "extender" { off("the stress", combined, $(NF - 5), 1e4); seen++ }
    $1 == "bow" && $3 == "centreline" { off("half the bow", $14 - $9, 0.03015, 0.001); seen++ }
    $1 == "bar" && $5 == "roll" { if (rolls++) off("what four turns add", $6 - before, 1.38, 0.1); before = $6; seen++ }
    $1 == "lift" && $5 == "when" { most = $9; seen++ }
    $1 == "lift" && $3 == "least" { off("the longest curtain", $16, 30 * 40 / most, 6); if ($16 < 30 * 40 / most) print "the longest curtain is too short"; seen++ }
    $1 == "house" { off("the eye", $10, 181.75, 0.1); off("the drive", $18, 200.8, 0.1); off("farther out", $20, 19.05, 0.1); seen++ }
    $1 == "rope" && $2 != "over" { off("pull on the anchor", $(NF - 1), sqrt($9 ^ 2 - (200 * 30 / 15 * 1.8 / 2) ^ 2), 1); seen++ }
    $1 == "air" { off("what air and film carry off", (1.2 * 1006 * 700 / 3600 * $5 + 6 * 500) * $9, 900 * 0.8 * 0.5 * 240, 2000); seen++ }
    END { if (seen != 13) print seen + 0 " lines of 13 found" }' "$work/chain_from_c.out" > "$work/found"
    test ! -s "$work/found" || { cat "$work/found"; fail "chain_from_c.c is wrong"; }
    echo "installcheck: chain_from_c.c prints $(wc -l < "$work/chain_from_c.out" | tr -d ' ') lines"

    # Pipe of 1, 1-1/4 and 1-1/2 is 1.315, 1.660 and 1.900 in wide (ASME B36.10M, from memory); of EN 10219-2's tables a tube 50 x 3 has 4.25 kg/m and 19.5 cm4.
    # A wall bears 1.8 d t Fy/2; a cord of 1.5 mm2 has 13.3 ohm/km at 20 degC (IEC 60228), there and back, and 0.393 % more for each kelvin.
    run_example parts_from_c
    awk '
    function off(what, got, want, by) { if (got < want - by || got > want + by) print what " is " got ", not " want }
    BEGIN { inch["1"] = 1.315; inch["1-1/4"] = 1.660; inch["1-1/2"] = 1.900; cord = 2 * 20 * 0.0133 * (1 + 0.00393 * 30) }
    { gsub(/[,;:]/, "") }
    $1 == "sold" { off("pipe " $3, $5, 25.4 * inch[$3], 0.05); seen++ }
    $1 == "tube" { off("the mass", $7, 4.25, 0.006); off("the inertia", $16, 19.5, 0.05); seen++ }
    $1 == "bolt" { off("the limit", $9, 1.8 * 10 * 3 * 235 / 2, 0.5); off("the share", $14, 2000 / 6345, 0.005); seen++ }
    $1 == "cable" { off("the resistance", $9, cord, 0.0005); off("the loss", $17, 4 * cord, 0.005); seen++ }
    END { if (seen != 6) print seen + 0 " lines of 6 found" }' "$work/parts_from_c.out" > "$work/found"
    test ! -s "$work/found" || { cat "$work/found"; fail "parts_from_c.c is wrong"; }

    # A gust of 20 m/s presses with 1.25 20^2/2; ASCE/SEI 7-22 with 0.613 Kz V^2, Kz = 2.41 (15/2460)^(2/9.8) up to 15 ft in exposure C, and Kd 0.85 on the net
    # pressure, with 1.28 and 0.6 (through public copies). Half the pressure is made at the speed over the root of 2. Film's sag f under p over c makes it pull
    # p (c^2/8f + f/2), and is as long as that stretches it: c + 8 f^2/(3 c), nearly. A loose curtain
    # hangs at b = atan(p D/w) at its bar and at b + s p cos b/w at its rail: a right angle there where it flies, their mean its lean where it leaves. A bar bears
    # half the film and the roll, w a^2/8 from rope to rope.
    run_example wind_from_c
    awk '
    function off(what, got, want, by) { if (got < want - by || got > want + by) print what " is " got ", not " want }
    BEGIN { q["gust"] = 1.25 * 20 ^ 2 / 2; net["gust"] = 1.28; q["ASCE"] = 0.613 * 2.41 * (15 / 2460) ^ (2 / 9.8) * 50 ^ 2; net["ASCE"] = 0.85 * 1.28 * 0.6 }
    { gsub(/[,;:]/, "") }
    $1 == "wind" { off("q", $7, q[$3], 0.05); off("the net pressure", $9, q[$3] * net[$3], 0.05); off("the speed", $(NF - 1), $4 / sqrt(2), 0.005); seen++ }
    $1 == "film" { f = $11 / 1000; off("the pull", $18, $14 * ($6 ^ 2 / (8 * f) + f / 2), 2); off("the stretch", 8 * f ^ 2 / (3 * $6 ^ 2), $18 / (200e3 * $3), 2e-4)
        off("the stress", $20, $18 / $3 / 1000, 0.006); seen++ }
    $1 == "loose" { p = 1.25 * $17 ^ 2 / 2 * 1.28; b = atan2(p * 0.05, 20); off("what flies", b + 1.5 * p * cos(b) / 20, atan2(1, 0), 0.003)
        p = 1.25 * $7 ^ 2 / 2 * 1.28; b = atan2(p * 0.05, 20); off("what leaves", b + 0.75 * p * cos(b) / 20, 0.1, 0.001); off("the raise", $(NF - 1), 0.1, 0.0005); seen++ }
    $1 == "roped" { off("the load", $8, net["gust"] * q["gust"] * 0.8, 0.05); off("the moment", $11, $8 * $3 ^ 2 / 8, 0.06); off("the screw", $(NF - 1), 0.3 * sqrt(240 ^ 2 + 25 ^ 2), 0.05); seen++ }
    END { if (seen != 5) print seen + 0 " lines of 5 found" }' "$work/wind_from_c.out" > "$work/found"
    test ! -s "$work/found" || { cat "$work/found"; fail "wind_from_c.c is wrong"; }

    # Headers, library and pkg-config file are of one version.
    cat > "$work/version.c" << 'EOF'
#include <stdio.h>
#include <string.h>
#include <tunnelside.h>
int main(void)
{
    char parts[64];
    sprintf(parts, "%d.%d.%d", TSIDE_VERSION_MAJOR, TSIDE_VERSION_MINOR, TSIDE_VERSION_PATCH);
    puts(tside_version());
    return strcmp(parts, TSIDE_VERSION) != 0 || strcmp(tside_version(), TSIDE_VERSION) != 0;
}
EOF
    $CC $CFLAGS $flags -o "$work/version-program" "$work/version.c" $($PKG_CONFIG --libs tunnelside) || fail "the version's program does not link"
    said=$(LD_LIBRARY_PATH=$root$libdir "$work/version-program") || fail "headers and library are of different versions"
    test "$said" = "$($PKG_CONFIG --modversion tunnelside)" || fail "the library says it is $said, pkg-config says otherwise"
    echo "installcheck: README.md's C program runs with the $ran library:"
    sed 's/^/    /' "$work/${ran##* }.out"
else
    test "${CI:-}" != true || fail "without pkg-config and README.md nothing is compiled"
    echo "installcheck: SKIPPED compiling README.md's program, for want of pkg-config"
fi

# find_package(tunnelside) finds the same, shared and static; another major version is not taken for it.
if test "$CMAKE" != no; then
    mkdir "$work/cmake"
    cp "$work/version.c" "$work/cmake/main.c"
    cat > "$work/cmake/CMakeLists.txt" << 'EOF'
cmake_minimum_required(VERSION 3.10)
project(user C)
find_package(tunnelside ${WANTED} REQUIRED)
foreach(kind tunnelside static)
  if(TARGET tunnelside::${kind})
    add_executable(${kind} main.c)
    target_link_libraries(${kind} tunnelside::${kind})
  endif()
endforeach()
unset(tunnelside_FOUND)
find_package(tunnelside 99 QUIET)
if(tunnelside_FOUND)
  message(FATAL_ERROR "version 99 was found")
endif()
EOF
    version=$(sed -n 's/^Version: //p' "$root$libdir/pkgconfig/tunnelside.pc")
    { "$CMAKE" -S "$work/cmake" -B "$work/cmake/b" -DCMAKE_C_COMPILER="${CC%% *}" -DCMAKE_C_FLAGS="$CFLAGS" -DWANTED="$version" -Dtunnelside_DIR="$root$libdir/cmake/tunnelside" &&
        "$CMAKE" --build "$work/cmake/b"; } > "$work/log" 2>&1 || { cat "$work/log"; fail "CMake's find_package(tunnelside) fails"; }
    linked=
    for kind in tunnelside static; do
        test -x "$work/cmake/b/$kind" || continue
        test "$("$work/cmake/b/$kind")" = "$version" || fail "what CMake links with tunnelside::$kind prints another version"
        linked="$linked tunnelside::$kind"
    done
    test -n "$linked" || fail "CMake built nothing"
    # README.md's own lines, with the prefix that they speak of
    mkdir "$work/readme"
    printf 'cmake_minimum_required(VERSION 3.10)\nproject(quote C)\nadd_executable(quote main.c)\n' > "$work/readme/CMakeLists.txt"
    awk '/^```/ { if (inside) exit; inside = $0 ~ /^```cmake$/; next } inside' "$top_srcdir/README.md" >> "$work/readme/CMakeLists.txt"
    grep -q tunnelside::tunnelside "$work/readme/CMakeLists.txt" || fail "README.md names no target of CMake's"
    cp "$work/version.c" "$work/readme/main.c"
    { "$CMAKE" -S "$work/readme" -B "$work/readme/b" -DCMAKE_C_COMPILER="${CC%% *}" -DCMAKE_C_FLAGS="$CFLAGS" -DCMAKE_PREFIX_PATH="$root$prefix" &&
        "$CMAKE" --build "$work/readme/b" && "$work/readme/b/quote"; } > "$work/log" 2>&1 || { cat "$work/log"; fail "README.md's lines for CMake fail"; }
    echo "installcheck: CMake finds, links and runs$linked"
else
    test "${CI:-}" != true || fail "without CMake its package file is not tested"
    echo "installcheck: SKIPPED the CMake package file, for want of cmake"
fi

# The Python package, from where it was installed and from nowhere else.
if test -n "$PYTHONDIR"; then
    (cd "$work" && PYTHONPATH="$root$PYTHONDIR" $PYTHON -c '
import os, sys, tunnelside, tunnelside._core
for module in (tunnelside, tunnelside._core):
    assert module.__file__.startswith(sys.argv[1]), module.__file__
assert tunnelside.version() == tunnelside.__version__, tunnelside.version()
assert os.path.exists(os.path.join(sys.argv[1], "tunnelside", "py.typed"))
print("installcheck: Python imports version", tunnelside.version(), "from", sys.argv[1][len(sys.argv[2]):])' \
        "$root$PYTHONDIR" "$root") || fail "the installed Python package does not work"
fi

$MAKE uninstall DESTDIR="$root" > "$work/log" 2>&1 || { cat "$work/log"; fail "make uninstall failed"; }
left=$(find "$root" ! -type d)
test -z "$left" || fail "make uninstall leaves $left"
echo "installcheck: installed, used and uninstalled"
