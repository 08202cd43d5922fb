#!/bin/sh
# SPDX-License-Identifier: MIT
# What bash completes of the programs' command lines: every long option of each one's own --help, choices, and files.
set -eu

command -v bash > /dev/null || { echo "not tested: no bash"; exit 77; }
cat > completion_test.bash <<'END'
source "$top_srcdir/examples/completion.bash"
failed=0
# completes PROGRAM WORD... WANTED: the last word of the line, parted at "=" as bash does.
completes() {
    local program=$1 wanted=${*: -1}
    COMP_WORDS=("$program" "${@:2:$#-2}")
    COMP_CWORD=$((${#COMP_WORDS[@]} - 1))
    _tunnelside "$program"
    test "${COMPREPLY[*]}" = "$wanted" || { echo "${COMP_WORDS[*]}: completed to: ${COMPREPLY[*]}; wanted: $wanted"; failed=1; }
}
completes "$PLAN" --uni "--units="
completes "$PLAN" --units = "us si"
completes "$PLAN" --units = s "si"
completes "$PLAN" --format = "text html csv json"
completes "$PLAN" --wha "--what-matters"
completes "$ORDER" --format = h "html"
completes "$ORDER" --for-c "--for-customer"
completes "$DRAW" --paper = "a4 letter"
completes "$DRAW" --end = "drive free"
completes "$DRAW" --view = roll_ "roll_shut roll_open"
completes "$DRAW" --format = "pdf svg png"
completes "$TURNS" --format = "text csv json"
completes "$PLAN" "$top_srcdir/README.m" "$top_srcdir/README.md"
for program in "$PLAN" "$ORDER" "$DRAW" "$TURNS"; do
    for option in $("$program" --help | grep -oE -e '^ +(-., )?--[a-z-]+=?' | grep -oE -e '--.*'); do
        COMP_WORDS=("$program" "${option%=}")
        COMP_CWORD=1
        _tunnelside "$program"
        case " ${COMPREPLY[*]} " in *" $option "*) ;; *) echo "$program: $option is not completed"; failed=1 ;; esac
    done
done
exit $failed
END
status=0
bash completion_test.bash 2>&1 || status=$?
rm -f completion_test.bash
exit $status
