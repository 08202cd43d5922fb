# SPDX-License-Identifier: MIT
# A function: its arguments as they are declared, and whether its comment says what such a function must say.

function read_function(declaration, comment,    name, returns, nodiscard, list, i)
{
    name = declaration
    sub(/ *\(.*/, "", name)
    returns = substr(name, length("TSIDE_API ") + 1)
    nodiscard = sub(/^TSIDE_NODISCARD /, "", returns)
    sub(/.*[ *]/, "", name)
    sub(/ *[a-z0-9_]*$/, "", returns)
    subject = name
    list = declaration
    sub(/^[^(]*\(/, "", list)
    sub(/\);$/, "", list)
    argument_count = list == "void" ? 0 : split(list, argument_text, / *, */)
    if (name !~ /^tside_/)
        fail("a name without our prefix")
    for (i = 1; i <= argument_count; i++)
        split_argument(i)
    pair_arguments()
    read_items(comment)
    put("function", topic, name, returns, item_text["function"])
    for (i = 1; i <= argument_count; i++)
        put_argument(name, i)
    for (i = 1; i <= status_count; i++)
        put("status", name, status_name[i], status_text[i])
    put_item("returns", name)
    put_item("limits", name)
    put_item("accuracy", name)
    put_item("source", name)
    if (nodiscard != (returns == "tside_status"))
        fail("TSIDE_NODISCARD stands at what returns a status, and nowhere else")
    check_function(returns)
    subject = ""
}

# "const tside_roll *roll": its type, its name, and whether it is asked or a result.
function split_argument(i,    words)
{
    words = argument_text[i]
    match(words, /[a-z0-9_]+$/)
    argument_name[i] = substr(words, RSTART)
    argument_type[i] = substr(words, 1, RSTART - 1)
    sub(/ $/, "", argument_type[i])
    direction[i] = argument_type[i] == "tside_fault *" ? "fault" : argument_type[i] ~ /\*$/ && argument_type[i] !~ /^const / ? "out" : "in"
    form[i] = direction[i] == "fault" ? "beside" : "one"
    with[i] = unit[i] = range[i] = words_of[i] = ""
}

function is_whole(i, ending, type)
{
    return argument_name[i] ~ ending "$" && argument_type[i] == type
}

# Arrays and what follows them: (const T *list, int count), (T *list, int capacity, int *count), (char *buffer, size_t size[, size_t *needed]).
function pair_arguments(    i)
{
    for (i = 1; i < argument_count; i++) {
        if (argument_type[i] ~ /^const .*\*$/ && is_whole(i + 1, "count", "int"))
            pair("list", i, 1)
        else if (direction[i] == "out" && i + 1 < argument_count && is_whole(i + 1, "capacity", "int") && is_whole(i + 2, "count", "int *"))
            pair("room", i, 2)
        else if (argument_type[i] == "char *" && is_whole(i + 1, "size", "size_t"))
            pair("text", i, i + 1 < argument_count && is_whole(i + 2, "needed", "size_t *") ? 2 : 1)
    }
}

function pair(what, i, followers,    j)
{
    form[i] = what
    for (j = i + 1; j <= i + followers; j++) {
        with[i] = with[i] (with[i] == "" ? "" : " ") argument_name[j]
        form[j] = "beside"
    }
}

function names_status(status,    i)
{
    for (i = 1; i <= status_count; i++)
        if (status_name[i] == status)
            return 1
    return 0
}

# The first argument that may be refused for its value: one with a unit must at least be finite; 0 where there is none.
function first_bounded(    i)
{
    for (i = 1; i <= argument_count; i++)
        if (direction[i] == "in" && form[i] != "beside" && (unit[i] != "" || range[i] ~ /^(from|above|below|up to|within|one of|every field)/))
            return i
    return 0
}

function check_function(returns,    i)
{
    if (!("source" in item_text))
        fail("no 'Source:' of what it gives: a publication, derivation, or this library's choice")
    check_accuracy(returns)
    if (returns != "tside_status") {
        if (!("returns" in item_text) && returns != "void")
            fail("no 'Returns ...'")
        if (status_count)
            fail("it returns no status")
        return
    }
    if (!status_count) {
        fail("no status that it can return")
        return
    }
    i = first_bounded()
    if (i && !names_status("TSIDE_OUT_OF_BOUNDS"))
        fail(argument_name[i] " has a range, or must be finite, and TSIDE_OUT_OF_BOUNDS is not said")
    for (i = 1; i <= argument_count; i++)
        if (form[i] == "room" && !names_status("TSIDE_TOO_SMALL"))
            fail(argument_name[i] " may have too little room, and TSIDE_TOO_SMALL is not said")
}

function check_accuracy(returns,    i, type, numbers)
{
    numbers = returns == "double" || returns in holds_numbers
    for (i = 1; i <= argument_count; i++) {
        type = argument_type[i]
        gsub(/const | ?\*/, "", type)
        if (direction[i] == "out" && (type == "double" || type in holds_numbers))
            numbers = 1
    }
    if (numbers && !("accuracy" in item_text))
        fail("no 'Accuracy:' of the numbers that it gives: how near they come to what is exact")
}
