# SPDX-License-Identifier: MIT
# What the tests of programs share. Source it with $program set to the program; it leaves the shell in a folder of its own, gone when the shell ends.
set -u

# absolute PATH: that path from wherever the shell goes.
absolute() {
    case $1 in
    /*) echo "$1" ;;
    *) echo "$PWD/$1" ;;
    esac
}

program=$(absolute "$program")
called=tunnelside-${program##*tunnelside-}
work=$(mktemp -d) || exit 99
trap 'rm -rf "$work"' EXIT
examples=$(cd "${srcdir:-${top_srcdir:-.}}/examples" && pwd) || exit 1
sites=$examples/sites
failed=0
checks=0

wrong() {
    echo "$*"
    failed=1
}

# run STATUS ARGUMENT...: the program must end with this status; out and err receive what it prints. after_run ARGUMENT... is a script's own look at both.
after_run() {
    :
}
run() {
    wanted=$1
    shift
    checks=$((checks + 1))
    "$program" "$@" > out 2> err
    got=$?
    test $got = "$wanted" || wrong "$called $*: exit status $got, not $wanted: $(head -3 err)"
    after_run "$@"
}

# says TEXT: standard error has this text. prints TEXT: standard output has it. hides TEXT: it has not. silent FILE: it is empty.
says() {
    checks=$((checks + 1))
    grep -qF -- "$1" err || wrong "no message \"$1\" but: $(head -3 err)"
}
prints() {
    checks=$((checks + 1))
    grep -qF -- "$1" out || wrong "not printed: \"$1\""
}
hides() {
    checks=$((checks + 1))
    ! grep -qF -- "$1" out || wrong "printed: \"$1\""
}
silent() {
    checks=$((checks + 1))
    test ! -s "$1" || wrong "$1 is not empty: $(head -3 "$1")"
}

cd "$work" || exit 1
