# SPDX-License-Identifier: MIT
# A function's comment, item by item, and what an argument's words say of it.
#
# A function's comment has this shape, each item at the start of a line, in this order, the lines that go on with it after it:
#
#   What it gives. An indented line, or one after an empty one, begins a paragraph.
#   argument: UNIT, RANGE, words.         a number that is asked; of a whole number or a choice there is no unit
#   argument: every field checked         of a structure that is asked; or made by another function, or not checked
#   argument: optional, ...               it may be NULL
#   argument: receives UNIT, words.       a result; "receives TSIDE_N ..." and "receives one for each of LIST" are arrays
#   TSIDE_STATUS: when.                   each status that it can return, or several before one colon
#   Returns what.                         unless that is a status
#   Limits: ...                           where there is something to say
#   Accuracy: ...                         of the numbers that it gives: how near they come to what is exact
#   Source: ...                           of what it computes: a publication, derivation, or this library's choice

BEGIN { kinds = "function argument status returns limits accuracy source" } # of items, in their order

# Splits a comment into items; the words before the first are what the function gives.
function read_items(comment,    lines, line_count, l, line, kind, last_kind, labels, body, last)
{
    split("", item_text)
    status_count = 0
    kind = last = "function"
    line_count = split(comment, lines, "\n")
    for (l = 1; l <= line_count; l++) {
        line = lines[l]
        labels = ""
        if (match(line, /^[A-Za-z_0-9]+(, [A-Za-z_0-9]+)*:( |$)/)) {
            labels = substr(line, 1, index(line, ":") - 1)
            line = substr(line, RLENGTH + 1)
        } else if (sub(/^Returns /, "", line))
            labels = "Returns"
        if (labels != "") {
            end_item(kind, last, body)
            body = ""
            last_kind = kind
            kind = kind_of(labels)
            if (index(kinds, kind) < index(kinds, last_kind))
                fail("'" labels "' stands after '" last "': arguments come first, then statuses, Returns, Limits, Accuracy, Source")
            last = labels
        }
        body = body (body == "" ? "" : "\n") line
    }
    end_item(kind, last, body)
}

function kind_of(labels,    i, name, names)
{
    if (labels ~ /^(Returns|Limits|Accuracy|Source|Sources)$/)
        return labels == "Sources" ? "source" : tolower(labels)
    if (labels ~ /^TSIDE_[A-Z_]*(, TSIDE_[A-Z_]*)*$/)
        return "status"
    names = split(labels, name, /, /)
    for (i = 1; i <= names; i++)
        if (!place_of(name[i]))
            fail("'" name[i] ":' is no argument, status, Returns, Limits, Accuracy or Source")
    return "argument"
}

function place_of(name,    i)
{
    for (i = 1; i <= argument_count; i++)
        if (argument_name[i] == name)
            return i
    return 0
}

function end_item(kind, labels, body,    name, names, i, at)
{
    body = paragraphs(body)
    if (kind == "source" && labels == "Sources")
        labels = "Source"
    names = split(labels, name, /, /)
    for (i = 1; i <= names; i++)
        if (kind == "argument") {
            at = place_of(name[i])
            if (at && words_of[at] != "")
                fail(name[i] " stands twice")
            if (at)
                words_of[at] = body
        } else if (kind == "status") {
            status_name[++status_count] = name[i]
            status_text[status_count] = body
        }
    if (kind != "argument" && kind != "status") {
        if (kind in item_text)
            fail("'" labels "' stands twice")
        item_text[kind] = body
    }
    if (body == "")
        fail(kind == "function" ? "no comment says what it gives" : "nothing after '" labels ":'")
}

# What an argument's words say of its unit, its range and its form.
function put_argument(name, i,    words, base)
{
    words = words_of[i]
    base = argument_type[i]
    gsub(/const | ?\*/, "", base)
    if (words == "") {
        if (direction[i] != "fault")
            complain(i, "not a word about it")
    } else {
        if (words ~ /NULL/ && words !~ /^optional, /)
            complain(i, "it may be NULL: 'optional, ...'")
        if (sub(/^optional, /, "", words) && form[i] == "one")
            form[i] = "optional"
        if (direction[i] == "out" && !sub(/^receives? /, "", words) && base != "void")
            complain(i, "is a result: 'receives ...'")
        else if (base == "double")
            words = take_unit(i, words)
        if (direction[i] == "in")
            read_range(i, words, base)
        else
            read_extent(i, words)
    }
    put("argument", name, argument_name[i], argument_type[i], direction[i], form[i], with[i], unit[i], range[i], words_of[i])
}

function take_unit(i, words)
{
    unit[i] = unit_of(words)
    if (unit[i] == "" && words !~ /^in the unit/)
        complain(i, "no unit: begin with one")
    words = substr(words, length(unit[i]) + 1)
    sub(/^[,;:.] */, "", words)
    return words
}

# Of a number, and of a structure, whether and how it is checked.
function read_range(i, words, base)
{
    if (base ~ /^(char|void)$/)
        return
    range[i] = match(words, /[,;:.]( |$)/) ? substr(words, 1, RSTART - 1) : words
    if (base ~ /^(double|int|size_t)$/ && range[i] !~ /^(from|above|below|up to|any|within|one of|not) ?/)
        complain(i, "no range: 'from', 'above', 'below', 'up to', 'within', 'one of' or 'any' after its unit")
    if (base in is_struct && range[i] !~ /^(every field checked|made by|not checked|any)/)
        complain(i, "'every field checked', 'made by ...', 'not checked' or 'any'")
}

# Of a result, whether it is an array, and how long.
function read_extent(i, words)
{
    if (match(words, /^TSIDE_[A-Z_]+ /)) {
        form[i] = "fixed"
        with[i] = substr(words, 1, RLENGTH - 1)
    } else if (match(words, /^one for each of [a-z_]+/)) {
        form[i] = "each"
        with[i] = substr(words, 17, RLENGTH - 16)
        if (!place_of(with[i]))
            complain(i, "no argument is called " with[i])
    }
}

function complain(i, why) { fail(argument_name[i] ": " why ": " (words_of[i] == "" ? "(nothing)" : words_of[i])) }
