#!/bin/sh
# SPDX-License-Identifier: MIT
# The library touches nothing but its arguments: it calls the mathematics and string functions of C and nothing else, so no heap, no
# input or output, no locale, no errno, no way to end the program; it has no writable data; and its code and stack are small.
#
# Compiled here at -O2, so that the answer is about the sources and not about the CFLAGS of the day.
set -eu

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
failed=0
wrong() {
    echo "$*"
    failed=1
}

TEXT_LIMIT=196608  # bytes of code of all that a plan, a cut plan and a take-off are made of
DRAWING_LIMIT=65536 # bytes of code of the drawing floor, which a program that does not draw need not link
STACK_LIMIT=24576 # bytes of stack below any public function
FOREIGN_STACK=1024 # bytes granted to a function of libc or libm: glibc's sin, cos, atan2 and pow use less
ROUNDS=4          # how often a function may stand in one chain of calls: side, end, extender, tube is the deepest nesting of tables
POINTER_ROUNDS=2  # the same where it goes through a pointer: a root of what is sought along the travel is the deepest, and stands in it once

# gcc alone writes down who calls whom; any other compiler's code is close enough in stack.
compiler=$CC
graph=
for candidate in "$CC" gcc; do
    echo 'int probe(void); int probe(void) { return 0; }' > "$work/probe.c"
    if $candidate -O2 -fcallgraph-info=su -c -o "$work/probe.o" "$work/probe.c" 2> /dev/null && test -f "$work/probe.ci"; then
        compiler=$candidate
        graph=yes
        break
    fi
done

objects=
for source in $LIBRARY_SOURCES; do
    object=$work/$(echo "$source" | tr / _).o
    $compiler -O2 -fPIC $LIBRARY_CFLAGS -I"$top_srcdir/include" -Iinclude -I"$top_srcdir/lib" ${graph:+-fcallgraph-info=su} -c -o "$object" "$top_srcdir/$source"
    objects="$objects $object"
done

# What it calls. errno is __errno_location or a relative of it, and so is not on the list.
mathematics='a?(sin|cos|tan)h?|sincos|atan2|exp|exp2|expm1|log|log2|log10|log1p|pow|sqrt|cbrt|hypot|fabs|fmod|remainder|floor|ceil|trunc|l?l?round|l?l?rint|nearbyint'
mathematics="$mathematics|frexp|ldexp|scalbl?n|logb|ilogb|modf|copysign|nextafter|fmin|fmax|fdim|fma"
strings='mem(chr|cmp|cpy|move|set)|str(chr|cmp|cspn|len|ncmp|pbrk|rchr|spn|str)'
compiler_own='_GLOBAL_OFFSET_TABLE_|__stack_chk_fail|__(mem|str)[a-z]*_chk'
$NM -g --defined-only $objects | awk 'NF == 3 { print $3 }' | sort -u > "$work/defined"
$NM -u $objects | awk 'NF == 2 { print $2 }' | sort -u | comm -23 - "$work/defined" |
    grep -v -x -E "$mathematics|$strings|$compiler_own" > "$work/foreign" || :
test -s "$work/foreign" && wrong "calls from outside mathematics and strings: $(tr '\n' ' ' < "$work/foreign")"
test -s "$work/defined" || wrong "no symbols found in the objects"

# What it can write to. Tables of constants that hold addresses are relocated once at loading and read-only from then on (.data.rel.ro).
$OBJDUMP -t $objects | awk 'NF > 4 && $(NF - 2) ~ /^(\.data|\.bss|\.tdata|\.tbss|\*COM\*)/ && $(NF - 2) !~ /^\.data\.rel\.ro/ && $(NF - 1) !~ /^0+$/ { print $NF, "in", $(NF - 2) }' > "$work/writable"
test -s "$work/writable" && wrong "writable data: $(tr '\n' ';' < "$work/writable")"
$OBJDUMP -h $objects | awk '$2 ~ /^\.(data|bss|tdata|tbss)/ && $2 !~ /^\.data\.rel\.ro/ && $3 !~ /^0+$/ { print $2 }' | sort -u > "$work/writable"
test -s "$work/writable" && wrong "sections of writable data: $(tr '\n' ' ' < "$work/writable")"

# How large its code is.
code=0
code_below() {
    limit=$1
    shift
    text=0
    for size in $($OBJDUMP -h "$@" | awk '$2 ~ /^\.text/ { print $3 }'); do
        text=$((text + 0x$size))
    done
    code=$((code + text))
    test "$text" -gt 0 && test "$text" -lt "$limit" || wrong "code of $text bytes, and $limit are allowed"
}
drawing=$(ls "$work"/lib_drawing_*.o)
code_below $TEXT_LIMIT $(ls "$work"/lib_*.o | grep -vF "$drawing")
code_below $DRAWING_LIMIT $drawing

# How deep it goes: the sum of the frames along the deepest chain of calls below each public function.
if test -n "$graph"; then
    cat "$work"/*.ci | awk -v rounds=$ROUNDS -v pointer_rounds=$POINTER_ROUNDS -v foreign=$FOREIGN_STACK '
    # A name in an edge or node, without what the compiler adds to tell its own copies apart.
    function name_in(line, key)
    {
        sub(".*" key ": \"", "", line)
        sub(/".*/, "", line)
        if (sub(/\.localalias$/, "", line))
            sub(/.*:/, "", line)
        return line
    }
    function walk(from, name,    i, callees, n)
    {
        n = split(calls[name], callees, " ")
        for (i = 1; i <= n; i++)
            if (!((from, callees[i]) in reaches)) {
                reaches[from, callees[i]]
                walk(from, callees[i])
            }
    }
    # Whether a function is called through a pointer by what it calls.
    function through_pointer(name)
    {
        return (name, "__indirect_call") in reaches && ("__indirect_call", name) in reaches
    }
    # Stack from a function down. Functions that call each other in a ring count together, each `rounds` times.
    function depth(name,    times, looped, other, ring, size, i, callees, n, one, deepest, next_down)
    {
        if (!(name in frame))
            return foreign
        if (name in known)
            return known[name]
        looped = (name, name) in reaches
        times = through_pointer(name) ? pointer_rounds : rounds
        ring = ""
        size = 0
        for (other in frame)
            if (other == name || ((name, other) in reaches && (other, name) in reaches)) {
                size += frame[other] * (looped ? times : 1)
                ring = ring calls[other]
            }
        n = split(ring, callees, " ")
        deepest = 0
        for (i = 1; i <= n; i++)
            if (!((callees[i], name) in reaches)) {
                one = depth(callees[i])
                if (one > deepest) {
                    deepest = one
                    next_down = callees[i]
                }
            }
        below[name] = next_down
        own[name] = size
        return known[name] = size + deepest
    }
    /^node:/ && / bytes \(/ {
        name = name_in($0, "title")
        size = $0
        sub(/ bytes \(.*/, "", size)
        sub(/.*\\n/, "", size)
        frame[name] = size + 0
        if ($0 ~ /\(dynamic\)/) {
            print "frame of unbounded size: " name
            bad = 1
        }
    }
    /^edge:/ {
        from = name_in($0, "sourcename")
        to = name_in($0, "targetname")
        if (!((from, to) in edge)) {
            edge[from, to]
            calls[from] = calls[from] " " to
        }
        called[to]
    }
    END {
        # A call through a pointer may go to any function that nobody calls by name and that is not public.
        frame["__indirect_call"] = 0
        for (name in frame)
            if (!(name in called) && name !~ /^tside_/ && name != "__indirect_call")
                calls["__indirect_call"] = calls["__indirect_call"] " " name
        for (name in frame)
            walk(name, name)
        for (name in frame)
            if (name ~ /^tside_/ && name !~ /^tside_i_/ && depth(name) > most) {
                most = depth(name)
                where = name
            }
        chain = where " " own[where]
        for (name = where; name in below && below[name] != ""; name = below[name])
            chain = chain " > " below[name] " " (below[name] in own ? own[below[name]] : foreign)
        gsub(/[^ ]*:/, "", chain)
        print (bad ? 0 : most + 0), chain
    }' > "$work/stack"
    sed '$d' "$work/stack"
    stack=$(tail -n 1 "$work/stack" | cut -d ' ' -f 1)
    where=$(tail -n 1 "$work/stack" | cut -d ' ' -f 2-)
    test "$stack" -gt 0 || failed=1
    test "$stack" -le $STACK_LIMIT || wrong "stack of $stack bytes, and $STACK_LIMIT are allowed: $where"
    stack="deepest stack $stack bytes: $where"
else
    stack="stack not measured, for want of a gcc that writes call graphs"
fi

test $failed = 0 || exit 1
echo "calls only mathematics and strings; no writable data; code $code bytes; $stack"
