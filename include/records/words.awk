# SPDX-License-Identifier: MIT
# Words of a header: taken off `rest`, and made plain.

BEGIN {
    count_of_units = split("kg/m3 kg/m2 kg/m kg N_m N/m N m4 m3/s m3 m2 m/s m rad/s rad /s s Pa J/(kg_K) J V A W/(m2_K) W/m2 W K degC ohm turn 1/m 1/K 1", units, " ")
}

# What a regular expression matches, taken off `rest`.
function take(pattern,    taken)
{
    if (!match(rest, "^(" pattern ")"))
        return ""
    taken = substr(rest, 1, RLENGTH)
    rest = substr(rest, RLENGTH + 1)
    return taken
}

# Takes the comment at the start of `rest` off it and returns its words, line by line, without stars.
function take_comment(    body)
{
    body = substr(rest, 3, index(rest, "*/") - 3)
    rest = substr(rest, index(rest, "*/") + 2)
    gsub(/\n[ \t]*\*[ \t]?/, "\n", body)
    gsub(/^[ \t\n]+|[ \t\n]+$/, "", body)
    return body
}

# Takes a declaration, up to its semicolon outside braces and comments.
function take_declaration(    at, depth, c)
{
    for (at = 1; at <= length(rest); at++) {
        c = substr(rest, at, 1)
        if (substr(rest, at, 2) == "/*")
            at += index(substr(rest, at), "*/")
        else if (c == "{")
            depth++
        else if (c == "}")
            depth--
        else if (c == ";" && depth == 0)
            break
    }
    c = substr(rest, 1, at)
    rest = substr(rest, at + 1)
    return c
}

function one_line(words)
{
    gsub(/[ \t\n]+/, " ", words)
    gsub(/^ | $/, "", words)
    return words
}

# A comment's paragraphs, each on one line: an empty line parts them, and an indented line begins one.
function paragraphs(comment,    lines, count, i, whole, apart)
{
    count = split(comment, lines, "\n")
    for (i = 1; i <= count; i++) {
        if (lines[i] ~ /^[ \t]*$/) {
            apart = 1
            continue
        }
        whole = whole (whole == "" ? "" : apart || lines[i] ~ /^[ \t]/ ? "\n" : " ") one_line(lines[i])
        apart = 0
    }
    return whole
}

# The unit that a text begins with, or "".
function unit_of(words,    i, unit)
{
    for (i = 1; i <= count_of_units; i++) {
        unit = units[i]
        sub(/_/, " ", unit)
        if (index(words, unit) == 1 && substr(words, length(unit) + 1) ~ /^([,;.:]|$)/)
            return unit
    }
    return ""
}
