# SPDX-License-Identifier: MIT
# Records, kept by topic and written in the topics' order.

BEGIN {
    count_of_kinds = split("about 2 macro 4 constant 4 enum 3 name 4 struct 3 opaque 3 member 7 heading 2 function 4 argument 9 " \
                           "status 3 returns 2 limits 2 accuracy 2 source 2", table, " ")
    for (i = 1; i < count_of_kinds; i += 2)
        count_of_fields[table[i]] = table[i + 1]
}

function escaped(words)
{
    gsub(/\\/, "\\\\&", words)
    gsub(/\n/, "\\n", words)
    gsub(/\t/, " ", words)
    return words
}

function put(kind, a, b, c, d, e, f, g, h, i,    fields, count, field)
{
    count = count_of_fields[kind]
    fields[1] = a; fields[2] = b; fields[3] = c; fields[4] = d; fields[5] = e; fields[6] = f; fields[7] = g; fields[8] = h; fields[9] = i
    records[topic] = records[topic] kind
    for (field = 1; field <= count; field++)
        records[topic] = records[topic] "\t" escaped(fields[field])
    records[topic] = records[topic] "\n"
}

function put_item(kind, name)
{
    if (kind in item_text)
        put(kind, name, item_text[kind])
}

function write_records(    i)
{
    for (i = 1; i <= topics; i++)
        printf "%s", records[topic_at[i]]
}
