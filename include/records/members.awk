# SPDX-License-Identifier: MIT
# The names of an enumeration, those that a list makes too, and the members of a structure.
#
# A member's comment stands on its line. That of a double begins with its unit, or says "in the unit of ..."; "given with X"
# says that X_given tells whether it is there.

# The comment on the line of what was just taken, or "".
function comment_on_line()
{
    take("[ \t]*")
    return substr(rest, 1, 2) == "/*" ? paragraphs(take_comment()) : ""
}

function read_names(kind, of, body,    name, value, at)
{
    rest = body
    for (at = 0;; at = value + 1) {
        take("[ \t\n]*")
        if (substr(rest, 1, 2) == "/*") {
            put("heading", of, paragraphs(take_comment()))
            take("[ \t\n]*")
        }
        if (rest ~ /^TSIDE_[A-Z_]+\(/) {
            value = read_listed(kind, of, at) - 1
            continue
        }
        name = take("[A-Za-z_0-9]+")
        if (name == "")
            break
        if (name !~ /^TSIDE_/)
            fail("a name without our prefix: " name)
        value = take("[ \t\n]*=[ \t\n]*[0-9]+")
        value = value == "" ? at : substr(value, index(value, "=") + 1) + 0
        take(",")
        put(kind, of, name, value, comment_on_line())
    }
    if (rest != "")
        fail("cannot read " one_line(rest))
}

# Gives the names of an enumeration that a list makes.
function read_listed(kind, of, value,    name, macro, items, word)
{
    name = take("TSIDE_[A-Z_]+\\(")
    macro = take("TSIDE_[A-Z_]+")
    take("\\)")
    name = substr(name, 1, length(name) - 1)
    if (!(name in list_of) || !(macro in list_of))
        fail("no such list: " name "(" macro ")")
    items = list_of[name]
    macro = list_of[macro]
    sub(/##.*/, "", macro)
    while (match(items, /^ *[A-Z]+\([A-Z_0-9]+[,)]/)) {
        word = substr(items, RSTART, RLENGTH - 1)
        sub(/.*\(/, "", word)
        items = substr(items, RLENGTH)
        if (!match(items, /^[^")]*\)/)) # no text
            match(items, /"[^"]*"\)/)
        put(kind, of, macro word, value++, substr(items, RSTART) ~ /^"/ ? substr(items, RSTART + 1, RLENGTH - 3) : "")
        items = substr(items, RSTART + RLENGTH)
    }
    if (items ~ /[^ ]/)
        fail("cannot read " items)
    return value
}

function read_members(struct, body,    type, names, comment, count, name, i, dimension, unit, given, flags)
{
    split("", flags)
    given = body
    while (match(given, /[a-z0-9_]+_given[,;]/)) {
        flags[substr(given, RSTART, RLENGTH - 1)]
        given = substr(given, RSTART + RLENGTH)
    }
    rest = body
    for (;;) {
        take("[ \t\n]*")
        if (substr(rest, 1, 2) == "/*") {
            put("heading", struct, paragraphs(take_comment()))
            continue
        }
        names = take("[^;]*;")
        if (names == "")
            break
        comment = comment_on_line()
        names = one_line(names)
        match(names, /^(const )?[a-z_0-9]+ (unsigned |\*const \*|\*)?/)
        type = one_line(substr(names, 1, RLENGTH))
        names = substr(names, RLENGTH + 1)
        sub(/;$/, "", names)
        unit = type == "double" ? unit_of(comment) : ""
        if (type == "double" && unit == "" && comment !~ /in (the|that)( same)? unit/)
            fail(names ": its comment begins with no unit")
        count = split(names, name, /, */)
        for (i = 1; i <= count; i++) {
            dimension = ""
            if (match(name[i], /\[.*\]$/)) {
                dimension = substr(name[i], RSTART + 1, RLENGTH - 2)
                name[i] = substr(name[i], 1, RSTART - 1)
            }
            given = (name[i] "_given") in flags ? name[i] "_given" : ""
            if (match(comment, /given with [a-z0-9_]+/))
                given = substr(comment, RSTART + 11, RLENGTH - 11) "_given"
            if (given != "" && !(given in flags))
                fail(name[i] ": there is no " given)
            put("member", struct, name[i], type, dimension, unit, given, comment)
            if (type == "double" || type in holds_numbers)
                holds_numbers[struct]
        }
    }
    if (rest != "")
        fail("cannot read " one_line(rest))
}
