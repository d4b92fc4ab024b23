"""Knots and materials in the characters of a code: a name in, its code or its own letters out."""

import re

from tagend.cards.base.named_table import NamedTable, R
from tagend.cards.code.code_escapes import escape, unescape
from tagend.cards.code.cursor import Cursor
from tagend.layouts.base.faults import under

# The codes are those of our own files, so that a label reads alike whatever shop file lies about.
_CODE = re.compile("[A-Z][A-Z0-9]*")
_QUOTED = re.compile(r"%(?:\$.|[^%$])*%")
MEANT = re.compile(rf"{_QUOTED.pattern}|[^ ]")  # all but the spaces outside of own names


def write_name(name: str, known: NamedTable[R], ours: NamedTable[R]) -> str:
    """Return the code of a row of ours, or the name of a person's own between percent signs."""
    name = known.find(name).name
    for row in ours:
        if row.name == name:
            return row.code
    return f"%{escape(name, capital=False)}%"


def read_told(cursor: Cursor, ours: NamedTable[R]) -> str | None:
    """Read a name that only tells, if one stands here; a person's own may be unknown."""
    start = cursor.at
    if quoted := cursor.take(_QUOTED):
        return unescape(cursor.part(start + 1, start + len(quoted[0]) - 1), capital=False)
    if code := cursor.take(_CODE):
        with under(cursor.where(start)):
            return ours.by_code(code[0]).name
    return None


def read_name(cursor: Cursor, known: NamedTable[R], ours: NamedTable[R]) -> R | None:
    """Read `name = letter {letter | digit} | "%" text "%"`, if one stands here.

    Raises `Refused` with what there is instead, for a code or a name that nothing has.
    """
    start = cursor.at
    if code := cursor.take(_CODE):
        with under(cursor.where(start)):
            return known.find(ours.by_code(code[0]).name)
    if quoted := cursor.take(_QUOTED):
        inside = cursor.part(start + 1, start + len(quoted[0]) - 1)
        written = unescape(inside, capital=False)
        with under(cursor.where(start)):
            return known.find(written)
    return None
