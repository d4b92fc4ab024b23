"""The fields of a code that are of the whole leader: a table of how each is written and read."""

import re
from collections.abc import Callable, Mapping
from datetime import date
from typing import Any

from msgspec import Struct

from tagend.cards.base.units import Diameter, Length, Quantity, Strength
from tagend.cards.base.value_readers import plain_text
from tagend.cards.code.code_escapes import escape, unescape
from tagend.cards.code.cursor import Cursor
from tagend.cards.code.quantity_code import read_quantity, write_quantity
from tagend.cards.code.section_code import Terms, read_knot, write_knot
from tagend.cards.practice.knot_file import load_knots
from tagend.cards.recipe.recipe import NOTE_MOST, Butt
from tagend.layouts.base.faults import under

_SPACE = re.compile(" ?")
_LINE_WEIGHT = re.compile(r"(?:0?[1-9]|1[0-5])(?!\d)")
_DATE = re.compile(r"\d{4}-\d\d-\d\d")


class Header(Struct, frozen=True):
    """One field: its value follows its word."""

    of: str  # the attribute of a recipe or of its reach
    write: Callable[[Any, Terms], str]
    read: Callable[[Cursor, Terms], object]
    in_words: bool = False  # a text, in which spaces mean something


def read_text(cursor: Cursor, most: int) -> str:
    """Read a text of at most so many characters."""
    cursor.take(_SPACE)
    text = unescape(cursor)
    with under(cursor.what):
        return plain_text(text, most)


def _text(of: str) -> Header:
    return Header(
        of=of,
        write=lambda text, _: f" {escape(text)}",
        read=lambda cursor, _: read_text(cursor, NOTE_MOST),
        in_words=True,
    )


def _quantity(of: str, kind: type[Quantity]) -> Header:
    return Header(
        of=of,
        write=lambda quantity, terms: f" {write_quantity(quantity, terms.units)}",
        read=lambda cursor, terms: read_quantity(cursor, kind, terms.units),
    )


def _flag(of: str, meant: object) -> Header:
    """Return a field whose word says all."""
    return Header(of=of, write=lambda *_: "", read=lambda *_: meant)


def _read_line_weight(cursor: Cursor, _: Terms) -> int:
    """Read `"W" 1 to 15`."""
    digits = cursor.take(_LINE_WEIGHT)
    if digits is None:
        raise cursor.fault("this is no line weight", "write W and 1 to 15")
    return int(digits[0])


def _read_date(cursor: Cursor, _: Terms) -> date:
    """Read `"TIED" year "-" month "-" day`."""
    match = cursor.take(_DATE)
    try:
        return date.fromisoformat(match[0] if match else "")
    except ValueError:
        raise cursor.fault("this is no date", "write it as 2026-05-31") from None


def _write_butt(butts: tuple[Butt, Butt], terms: Terms) -> str:
    named, tied = butts
    end = write_knot(named.end, tied.end, terms)
    if named.loop:
        return f" {end}*{write_quantity(named.loop, terms.units)}"
    own = tied.loop and tied.loop.mm != load_knots().loop_mm
    return f" {end}+{write_quantity(tied.loop, terms.units)}" if tied.loop and own else f" {end}"


def _read_butt(cursor: Cursor, terms: Terms) -> Butt:
    """Read `"BUTT" [knot | "+" chosen] [("*" | "+") length]`, of which one stands."""
    end = None if cursor.rest.startswith("*") else read_knot(cursor, terms, "butt")
    if cursor.takes("*"):
        return Butt(end=end, loop=read_quantity(cursor, Length, terms.units))
    if cursor.takes("+"):
        read_quantity(cursor, Length, terms.units)
    return Butt(end=end)


def _write_total(total: Length | None, terms: Terms) -> str:
    """Write a total, or None for one that is the sum of the sections."""
    return f" {write_quantity(total, terms.units)}" if total else ""


def _read_total(cursor: Cursor, terms: Terms) -> Length | None:
    """Read `"TOTAL" [length]`, None for one that is the sum of the sections."""
    return read_quantity(cursor, Length, terms.units) if cursor else None


# By word, in the order in which they are written. No word begins with another.
HEADERS: Mapping[str, Header] = {
    "W": Header("line_weight", lambda number, _: str(number), _read_line_weight),
    "USE": _text("use"),
    "TIP": _quantity("line_tip", Diameter),
    "TOTAL": Header("total", _write_total, _read_total),
    "CUT": _flag("lengths", "cut"),
    "RECORD": _flag("record_lengths", True),
    "CLASS": _quantity("class_", Strength),
    "TIED": Header("tied", lambda day, _: f" {day.isoformat()}", _read_date),
    "BUTT": Header("butt", _write_butt, _read_butt),
    "OUT": _quantity("line_out", Length),
    "ROD": _quantity("rod", Length),
    "NOTE": _text("note"),
}
BELOW_SECTIONS = ("OUT", "ROD", "NOTE")
