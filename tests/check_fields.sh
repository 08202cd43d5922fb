#!/bin/sh
# SPDX-License-Identifier: MIT
# The comments beside the members of the public headers against the tables of fields, both as they are written: a comment that starts with a
# unit starts with its row's, and every double of a structure that has a table has a row.
set -eu
cd "$top_srcdir"

awk '
    function complain(text) {
        print FILENAME ":" FNR ": " text
        failed = 1
    }

    # lib: #define MACRO(S, member, ...) ROW(S, member, TSIDE_NUMBER, unit, ...: which type such a row has, and its unit where the macro says it
    /^#define / || defining {
        defining = defining $0
        if (/^    KIND\([A-Z_]+, [a-z_]+\)/) # the list of kinds
            kinds++
        if (sub(/\\$/, "", defining))
            next
        if (match(defining, /ROW\(S, member, TSIDE_[A-Z]+, ("[^"]*")?/)) {
            macro = substr(defining, 9)
            sub(/\(.*/, "", macro)
            split(substr(defining, RSTART, RLENGTH), part, /, */)
            type[macro] = part[3]
            fixed[macro] = part[4]
        }
        defining = ""
        next
    }

    # lib: {MACRO(tside_x, member, "unit", ...
    FILENAME ~ /^lib\// {
        rest = $0
        while (match(rest, /[A-Z_]+\(tside_[a-z_]+, [a-z0-9_]+, ("[^"]*")?/)) {
            row = substr(rest, RSTART, RLENGTH)
            rest = substr(rest, RSTART + RLENGTH)
            split(row, part, /[(,] */)
            if (!(part[1] in type))
                continue
            structure = part[2]
            if (!(structure in has_table))
                tables++
            has_table[structure] = 1
            if (type[part[1]] != "TSIDE_NUMBER")
                continue
            key = structure "." part[3]
            says = fixed[part[1]] != "" ? fixed[part[1]] : part[4]
            if (says !~ /^".*"$/) {
                complain(key ": its unit is not written beside its name")
                continue
            }
            says = substr(says, 2, length(says) - 2)
            if (key in unit && unit[key] != says)
                complain(key ": two rows, in " unit[key] " and in " says)
            unit[key] = says
            if (says != "") # without one, another member says which
                is_unit[says] = 1
        }
        next
    }

    # include/tunnelside/*.h: double a, b; followed by a comment
    /^typedef struct tside_[a-z_]* \{/ { structure = $3; next }
    /^\}/ { structure = ""; next }
    !(structure in has_table) || !/^ *double / { next }
    {
        names = $0
        sub(/^ *double /, "", names)
        sub(/;.*/, "", names)
        says = ""
        if (match($0, /\/\* .*/)) {
            says = substr($0, RSTART + 3)
            sub(/ *\*\/.*/, "", says)
            sub(/[,;].*/, "", says)
        }
        count = split(names, name, /, */)
        for (i = 1; i <= count; i++) {
            key = structure "." name[i]
            members++
            met[key] = 1
            if (!(key in unit))
                complain(key " has no row")
            else if (says in is_unit && unit[key] != "") {
                compared++
                if (says != unit[key])
                    complain(key ": its comment says " says ", and its row " unit[key])
            }
        }
    }

    END {
        for (key in unit)
            if (!(key in met)) {
                print "the row " key " has no double in the headers"
                failed = 1
            }
        # what is read otherwise than it is written must not pass in silence
        if (!kinds || tables != kinds) {
            print tables + 0 " structures have rows, and the directory holds " kinds + 0
            failed = 1
        }
        if (!compared) {
            print "no comment starts with a unit"
            failed = 1
        }
        if (!failed)
            print tables " tables, " members " numbers, " compared " of them with their unit in their comment"
        exit failed
    }
' lib/base/field.h lib/*/*.c include/tunnelside/*.h
