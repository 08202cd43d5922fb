#!/bin/sh
# SPDX-License-Identifier: MIT
# What a program does when memory runs out, at any of its allocations, when what it writes to fails or nobody reads it, and when a signal comes while it writes: it
# says so and exits with 1, or ends by the signal; what it was to write is whole or untouched, and nothing is left beside it. Of many allocations some are tried, with FAULTS=all every one.
build=$PWD
program=$build/examples/tunnelside-plan
. "${srcdir:-${top_srcdir:-.}}/tests/program.sh"

leave_out() {
    echo "not tested: $1"
    exit 77
}

case ${CFLAGS-} in
*-fsanitize*) leave_out "sanitizers have allocations of their own" ;;
esac
${CC:-cc} -shared -fPIC -o faults.so "$examples/../tests/faults.c" 2> log || leave_out "no library to preload can be made"
LD_LIBRARY_PATH=$build/lib/.libs
export LD_LIBRARY_PATH
# What libtool runs, not its script.
here() {
    test -x "$build/examples/.libs/$1" && echo "$build/examples/.libs/$1" || echo "$build/examples/$1"
}

# faulty VARIABLE=VALUE... PROGRAM ARGUMENT...
faulty() {
    env "$@" > out 2> err
}
preload="LD_PRELOAD=$work/faults.so"
faulty "$preload" COUNT_IN="$work/count" "$(here tunnelside-turns)" --version && test -s count || leave_out "a preloaded library changes nothing"

# exhaust PROGRAM ARGUMENT...: with each allocation failing in turn.
exhaust() {
    name=$1
    shift
    real=$(here "$name")
    rm -f wanted.txt written.txt count
    faulty "$preload" COUNT_IN="$work/count" "$real" "$@" || wrong "$name $*: $(head -3 err)"
    cp out wanted
    test ! -e written.txt || mv written.txt wanted.txt
    total=$(cat count)
    step=1
    test "${FAULTS-}" = all || step=$((total / 120 + 1))
    at=1
    while test $at -le "$total"; do
        checks=$((checks + 1))
        echo old > written.txt
        faulty "$preload" FAIL_AT=$at "$real" "$@"
        got=$?
        if test $got = 0; then # the C library did without
            cmp -s out wanted && { test ! -e wanted.txt || cmp -s written.txt wanted.txt; } || wrong "$name $*: allocation $at failed, and changed what is written in silence"
        else
            test $got = 1 && test -s err || wrong "$name $*: allocation $at: exit status $got, and says: $(head -3 err)"
            test ! -s out && test "$(cat written.txt)" = old || wrong "$name $*: allocation $at: output is half-written"
        fi
        test -z "$(ls -A | grep '^\.tunnelside')" || wrong "$name $*: allocation $at: something is left beside the output"
        at=$((at + step))
    done
}

# deny PROGRAM ARGUMENT...: with nowhere to write. Errors: 5 EIO, 13 EACCES, 28 ENOSPC, 122 EDQUOT.
deny() {
    name=$1
    shift
    real=$(here "$name")
    for fault in write:28 write:5 write:122 close:5 close:28; do
        checks=$((checks + 1))
        faulty "$preload" FAULT_AT=${fault%:*} FAULT_ERROR=${fault#*:} "$real" "$@"
        test $? = 1 || wrong "$name $*: ${fault%:*} fails: exit status is not 1"
        says "standard output: cannot be written: "
    done
}

# unread PROGRAM ARGUMENT...: when whoever read has gone; the signal of that is not heeded.
unread() {
    name=$1
    shift
    real=$(here "$name")
    checks=$((checks + 1))
    sh -c '{ sleep 0.1; "$@" 2> err; echo $? > status; } | true' sh "$real" "$@"
    test "$(cat status)" = 1 || wrong "$name $*: nobody reads: exit status $(cat status)"
    says "standard output: cannot be written: "
}

# deny_file PROGRAM ARGUMENT...: the same of written.txt.
deny_file() {
    name=$1
    shift
    real=$(here "$name")
    for fault in mkstemp:13 mkstemp:28 write:28 write:5 close:28 close:122 rename:13 rename:28; do
        checks=$((checks + 1))
        echo old > written.txt
        faulty "$preload" FAULT_AT=${fault%:*} FAULT_ERROR=${fault#*:} "$real" --output=written.txt "$@"
        test $? = 1 || wrong "$name $*: ${fault%:*} fails: exit status is not 1"
        says "written.txt: cannot be written: "
        test "$(cat written.txt)" = old || wrong "$name $*: ${fault%:*} fails, and the old file is gone"
        test -z "$(ls -A | grep '^\.tunnelside')" || wrong "$name $*: ${fault%:*} fails, and something is left: $(ls -A)"
    done
    rm -f .tunnelside*
}

unread tunnelside-turns --core=35mm --drop=1m
exhaust tunnelside-turns --core=35mm --drop=1m
exhaust tunnelside-turns --core=35mm --counted=5 --over=600mm --format=json
if test -x "$program"; then
    cp "$sites/two_sides_job.json" job.json
    ln -s written.txt link.txt
    exhaust tunnelside-plan --format=json job.json
    exhaust tunnelside-plan --format=csv --output=link.txt job.json
    exhaust tunnelside-plan --what-matters "$sites/film30.json"
    exhaust tunnelside-order --output=written.txt --prices="$examples/prices.csv" job.json
    exhaust tunnelside-order --format=json job.json
    exhaust tunnelside-draw --format=svg --output=written.txt --page=1 job.json
    exhaust tunnelside-draw --format=svg --form --page=1

    deny tunnelside-plan job.json
    deny tunnelside-plan --format=html job.json
    deny tunnelside-order --format=json job.json
    deny tunnelside-draw --format=svg --page=1 job.json
    unread tunnelside-plan job.json
    unread tunnelside-order job.json
    unread tunnelside-draw --format=svg --page=1 job.json
    deny_file tunnelside-plan --format=csv job.json
    deny_file tunnelside-order --prices="$examples/prices.csv" job.json
    deny_file tunnelside-draw --format=svg --page=1 job.json

    # what runs out while a side is refused is no other refusal
    sed 's/"hand": "left"/"hnad": "left"/' job.json > refused.json
    real=$(here tunnelside-plan)
    faulty "$preload" COUNT_IN="$work/count" "$real" refused.json
    total=$(cat count)
    cp err wanted
    cp out wanted.txt
    at=$((total / 4))
    while test $at -le "$total"; do
        checks=$((checks + 1))
        faulty "$preload" FAIL_AT=$at "$real" refused.json
        grep -q 'out of memory' err || { cmp -s err wanted && cmp -s out wanted.txt; } || wrong "allocation $at failed, and another refusal came of it: $(tail -2 err)"
        at=$((at + total / 40 + 1))
    done

    # --- signals: 1 HUP, 2 INT, 15 TERM, 13 PIPE is not heeded ---
    "$real" job.json > wanted.txt
    for number in 1 2 15; do
        for call in mkstemp write rename; do
            checks=$((checks + 1))
            echo old > written.txt
            # in a shell of its own, whose words about the signal go nowhere
            sh -c 'env "$@" > out 2> err; echo $? > status' sh "$preload" FAULT_AT=$call FAULT_SIGNAL=$number "$real" --output=written.txt job.json 2> words
            test "$(cat status)" = $((128 + number)) || wrong "signal $number in $call: exit status $(cat status)"
            cmp -s written.txt wanted.txt || test "$(cat written.txt)" = old || wrong "signal $number in $call: output is half-written"
            test -z "$(ls -A | grep '^\.tunnelside\|^written.txt\.')" || wrong "signal $number in $call: something is left: $(ls -A)"

            checks=$((checks + 1))
            echo old > written.txt
            faulty "$preload" FAULT_AT=$call FAULT_SIGNAL=$number FAULT_IGNORED=1 "$real" --output=written.txt job.json
            test $? = 0 && cmp -s written.txt wanted.txt || wrong "signal $number in $call, ignored by whoever started the program: $(head -3 err)"
        done
    done
    rm -f .tunnelside* written.txt.*
    # a limit on the size of files is a failed write too, not the end by a signal that leaves half a file
    echo old > written.txt
    (ulimit -f 1 && "$real" --output=written.txt job.json > out 2> err)
    test $? = 1 || wrong "a limit on the size of files ends the program otherwise"
    says "written.txt: cannot be written: "
    test "$(cat written.txt)" = old || wrong "a limit on the size of files destroys the old output"
    test -z "$(ls -A | grep '^\.tunnelside')" || wrong "a limit on the size of files leaves something"
fi

test $failed = 0 || exit 1
echo "$checks checks of failing allocations and of signals"
