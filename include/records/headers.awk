# SPDX-License-Identifier: MIT
# A header, declaration by declaration: directives and lists here, structures and enumerations in members.awk, functions
# in functions.awk.

function fail(why)
{
    print "headers2records: " file ": " (subject == "" ? "" : subject ": ") why > "/dev/stderr"
    failed = 1
}

FNR == 1 {
    if (file != "")
        read_header(text)
    file = FILENAME
    text = ""
}

{ text = text $0 "\n" }

END {
    if (file != "")
        read_header(text)
    write_records()
    exit failed
}

function topic_of(path)
{
    sub(/.*\//, "", path)
    sub(/\.h(\.in)?$/, "", path)
    return path
}

function read_header(whole,    comment, comments, space, line)
{
    topic = topic_of(file)
    rest = whole
    for (;;) {
        space = take("[ \t\n]*")
        if (gsub(/\n/, "", space) > 1)
            comment = ""
        if (rest == "")
            break
        if (substr(rest, 1, 2) == "/*") {
            comment = take_comment()
            if (++comments == 2) {
                put("about", topic, paragraphs(comment))
                comment = ""
            }
        } else if (substr(rest, 1, 1) == "#") {
            line = take("([^\n\\\\]|\\\\\n)*")
            if (line ~ /^#ifdef __cplusplus/)
                rest = substr(rest, index(rest, "#endif") + 6)
            else
                read_directive(line, comment)
            comment = ""
        } else {
            read_declaration(take_declaration(), comment)
            comment = ""
        }
    }
    if (topic == "tunnelside")
        return
    if (!(topic in gathered))
        fail("not included by tunnelside.h")
    if (comments < 2)
        fail("no comment says what the header is about")
}

function read_directive(line, comment,    name, value)
{
    if (topic == "tunnelside" && line ~ /^#include <tunnelside\//) {
        line = topic_of(substr(line, index(line, "/") + 1))
        sub(/\.h>.*/, "", line)
        topic_at[++topics] = line
        gathered[line]
    } else if (line ~ /^#define TSIDE_[A-Z_]+\(/)
        read_list(line)
    else if (line ~ /^#define TSIDE_/ && line !~ /^#define (TSIDE_API|TSIDE_NODISCARD)/) {
        split(line, name, /[ \t]+/)
        value = substr(line, index(line, name[2]) + length(name[2]) + 1)
        put("macro", topic, name[2], one_line(value), paragraphs(comment))
    } else if (line ~ /^#define/ && line !~ /^#define (TSIDE_API|TSIDE_NODISCARD|TUNNELSIDE_[A-Z_]*H)/)
        fail("a macro without our prefix: " line)
}

# A list is a macro of a macro, "#define TSIDE_X_LIST(ITEM) ITEM(CODE, ...) ITEM(...)", and an item's last argument, if it is a text, says what it means; such a macro is
# "#define TSIDE_X_NAME(code, ...) TSIDE_X_##code,", whose beginning is kept. An enumeration is then "TSIDE_X_LIST(TSIDE_X_NAME)".
function read_list(line,    name)
{
    name = line
    sub(/^#define /, "", name)
    sub(/\(.*/, "", name)
    sub(/^#define [^)]*\)/, "", line)
    gsub(/\\\n/, " ", line)
    list_of[name] = one_line(line)
}

function read_declaration(declaration, comment,    name, body, after)
{
    after = rest
    if (declaration ~ /^TSIDE_API /) {
        name = one_line(declaration)
        gsub(/\( /, "(", name) # a list of arguments may begin on a line of its own
        read_function(name, comment)
        return
    }
    body = declaration
    sub(/^[^{]*\{/, "", body)
    sub(/\}[^}]*$/, "", body)
    name = one_line(declaration)
    sub(/;$/, "", name)
    sub(/.*[ }]/, "", name)
    subject = name
    if (declaration ~ /^typedef (enum|struct) / && name !~ /^tside_/)
        fail("a name without our prefix")
    if (declaration ~ /^typedef enum /) {
        put("enum", topic, name, paragraphs(comment))
        read_names("name", name, body)
    } else if (declaration ~ /^enum \{/)
        read_names("constant", topic, body)
    else if (declaration ~ /^typedef struct [a-z0-9_]+ [a-z0-9_]+;$/)
        put("opaque", topic, name, paragraphs(comment))
    else if (declaration ~ /^typedef struct /) {
        is_struct[name]
        put("struct", topic, name, paragraphs(comment))
        read_members(name, body)
    } else
        fail("neither function with TSIDE_API, structure nor enumeration: " one_line(declaration))
    rest = after
    subject = ""
}
