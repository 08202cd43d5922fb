#!/bin/sh
# SPDX-License-Identifier: MIT
# The library elsewhere: builds it for each target whose compiler is here, from what a release holds, runs it by emulation where that is needed and installed, and
# compares a thousand sides' plans and some cut plans with this machine's: whole numbers, choices, findings and refusals must be the same, and of the doubles it
# prints how many differ, and by how much. Data rows and calls of any bytes are run there too. TARGETS names some of them. Everything is made in portable/.
set -eu

source=$(cd "$SOURCE_FOLDER" && pwd)
mkdir -p portable
cd portable
failed=0

# Each target: name, compiler, configure's host, what runs its programs.
targets='native:gcc:: clang:clang:: musl:musl-gcc:: i686:i686-linux-gnu-gcc:i686-linux-gnu:qemu-i386 s390x:s390x-linux-gnu-gcc:s390x-linux-gnu:qemu-s390x
    arm64:aarch64-linux-gnu-gcc:aarch64-linux-gnu:qemu-aarch64 windows:x86_64-w64-mingw32-gcc:x86_64-w64-mingw32:wine'

# compared NAME: what it printed beside what this machine's compiler did, to within 0.4 um of a length.
compared() {
    LC_ALL=C awk -F '\t' -v name="$1" '
        function size(x) { return x < 0 ? -x : x }
        NR == FNR { wanted[FNR] = $0; lines = FNR; next }
        $0 == wanted[FNR] { doubles += $1 == "double"; next }
        {
            split(wanted[FNR], was, "\t")
            if ($1 != "double" || $1 != was[1] || $2 != was[2]) {
                if (++others <= 5)
                    print "    otherwise: " $0 "\n          here: " wanted[FNR]
                next
            }
            doubles++
            differ++
            by = size($4 - was[4])
            share = by / (size(was[4]) > 1e-3 ? size(was[4]) : 1e-3)
            if (share > worst) { worst = share; which = $2 }
            if ($3 == "m" && by > metres) { metres = by; longest = $2 }
        }
        END {
            others += FNR != lines
            printf "%-8s %6d of %d doubles differ", name, differ, doubles
            if (differ)
                printf "; by %.1e at most, %s; a length by %.2g um, %s", worst, which, 1e6 * metres, longest
            printf "%s\n", others ? "; " others " LINES OTHERWISE" : "; all else the same"
            exit others > 0 || 1e6 * metres > 0.4
        }' native.out "$1.out"
}

for target in $targets; do
    name=${target%%:*}
    rest=${target#*:}
    compiler=${rest%%:*}
    rest=${rest#*:}
    host=${rest%%:*}
    runner=${rest#*:}
    case " ${TARGETS:-$name} native " in
    *" $name "*) ;;
    *) continue ;;
    esac
    for tool in $compiler $runner; do
        command -v "$tool" > /dev/null || { echo "$name: not tried, there is no $tool"; continue 2; }
    done
    rm -rf "$name"
    mkdir "$name"
    (
        cd "$name"
        "$source/configure" -q ${host:+--host=$host} --disable-shared CC="$compiler" PYTHON=none
        suffix=$(sed -n 's/^EXEEXT = //p' Makefile)
        "${MAKE:-make}" -s LDFLAGS=-all-static "tests/portable$suffix" "tests/fuzz/text$suffix" "tests/fuzz/side$suffix" "tests/fuzz/cuts$suffix"
    ) > "$name.log" 2>&1 || { tail -n 20 "$name.log"; echo "$name: does not build"; failed=1; continue; }
    suffix=$(sed -n 's/^EXEEXT = //p' "$name/Makefile")
    WINEDEBUG=-all $runner "$name/tests/portable$suffix" "$source/tests/data" > "$name.raw" 2> "$name.log" || { tail -n 20 "$name.log"; echo "$name: does not run, or its rows differ"; failed=1; continue; }
    tr -d '\r' < "$name.raw" > "$name.out"
    grep -h rows "$name.log"
    for fuzzer in text side cuts; do
        WINEDEBUG=-all $runner "$name/tests/fuzz/$fuzzer$suffix" 1 "$source/tests/data/fuzz/$fuzzer.hex" > "$name.log" 2>&1 || { tail -n 5 "$name.log"; echo "$name: calls of any bytes: $fuzzer"; failed=1; }
    done
    compared "$name" || failed=1
done
exit $failed
