#!/bin/sh
# SPDX-License-Identifier: MIT
# make installcheck: what `make install` lays down in an empty folder is whole; the README's C program, its first ```c block, compiles
# against it through pkg-config and runs, with the shared library and with the static one, printing the same; what the README
# says it prints, the ```text block that follows it, if one does before the next heading, is what it prints; and examples/quote_from_c.c
# compiles, runs and adds up.
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
        ran=shared
    fi
    if test -f "$root$libdir/libtunnelside.a"; then
        # A folder without the shared library, looked at first.
        mkdir "$work/static-only"
        cp "$root$libdir/libtunnelside.a" "$work/static-only"
        $CC $CFLAGS $flags -o "$work/static" "$work/program.c" -L"$work/static-only" $($PKG_CONFIG --libs --static tunnelside) ||
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

    # A supplier's quoting program: below 120 lines, and its total is what its lines and their tax of 19.5 % come to, half a cent up.
    test "$(wc -l < "$top_srcdir/examples/quote_from_c.c")" -lt 120 || fail "examples/quote_from_c.c has 120 lines or more"
    $CC $CFLAGS $flags -o "$work/quote" "$top_srcdir/examples/quote_from_c.c" $($PKG_CONFIG --libs --static tunnelside) || fail "examples/quote_from_c.c does not link"
    LD_LIBRARY_PATH=$root$libdir "$work/quote" > "$work/quote.out" || fail "examples/quote_from_c.c fails"
    awk '
    /^side/ { sides++ }
    /of 6.4 m, pieces/ { sticks += $1 }
    $NF ~ /^[0-9]+\.[0-9][0-9]$/ { split($NF, money, "."); amount[$2] = money[1] * 100 + money[2]; count[$2] = $1 }
    END {
        net = amount["tube,"] + amount["clips"] + amount["fitting,"]
        exit !(sides == 2 && net > 0 && sticks == count["tube,"] && amount["tube,"] == sticks * 4490 && amount["tax,"] == int((net * 195 + 500) / 1000) &&
               amount["total"] == net + amount["tax,"])
    }' "$work/quote.out" || { cat "$work/quote.out"; fail "examples/quote_from_c.c does not add up"; }

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

$MAKE uninstall DESTDIR="$root" > "$work/log" 2>&1 || { cat "$work/log"; fail "make uninstall failed"; }
left=$(find "$root" ! -type d)
test -z "$left" || fail "make uninstall leaves $left"
echo "installcheck: installed, used and uninstalled"
