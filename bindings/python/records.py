# SPDX-License-Identifier: MIT
"""Reads the records of the public headers, which include/headers2records writes and describes."""
import re
from collections import namedtuple
from pathlib import Path

FIELDS = {
    "about": "topic text", "macro": "topic name value text", "constant": "topic name value text",
    "enum": "topic name text", "name": "owner name value text",
    "struct": "topic name text", "opaque": "topic name text",
    "member": "owner name type dimension unit given text", "heading": "owner text",
    "function": "topic name returns text",
    "argument": "owner name type direction form partners unit range text", "status": "owner name text",
    "returns": "owner text", "limits": "owner text", "accuracy": "owner text", "source": "owner text",
}
TYPES = {kind: namedtuple(kind, fields) for kind, fields in FIELDS.items()}


def unescaped(text):
    return re.sub(r"\\(.)", lambda match: "\n" if match[1] == "n" else match[1], text)


class Records(list):
    """All of them, in the headers' order; each is a named tuple whose type says its kind."""

    def __init__(self, path):
        super().__init__()
        for line in Path(path).read_text(encoding="utf-8").splitlines():
            kind, *fields = line.split("\t")
            self.append(TYPES[kind](*map(unescaped, fields)))

    def of(self, *kinds, owner=None):
        """Those of these kinds; where an owner is named, what belongs to it."""
        return [one for one in self if type(one).__name__ in kinds and (owner is None or one.owner == owner)]
