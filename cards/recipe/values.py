"""How each kind of value in recipe and rack files is read: what a person wrote in, values out."""

from datetime import date
from typing import cast

from pydantic_core.core_schema import ValidationInfo

from tagend.cards.base.errors import refused
from tagend.cards.base.file_schema import Schema, by
from tagend.cards.base.units import parse_diameter, parse_length, parse_span, parse_strength
from tagend.cards.base.value_readers import text_line
from tagend.cards.recipe.recipe import NAME_MOST, NOTE_MOST, SECTIONS_MOST, Strand
from tagend.cards.recipe.vocabulary import EndOf, Vocabulary

BARE = "none"  # at the butt or the fly: no knot, and the bare end


def read_knot(value: object, end: EndOf, words: Vocabulary) -> str:
    """Return the name of the knot at one end of a section; at the outer two it may be `none`."""
    if not isinstance(value, str):
        raise refused("this is not a text in quotes", 'write a knot, such as "blood"')
    if end != "joint" and value.strip().lower() == BARE:
        return BARE
    return words.knot(value, end)


def _words(info: ValidationInfo) -> Vocabulary:
    return cast(Vocabulary, info.context)


def _read_material(value: object, info: ValidationInfo) -> str:
    if not isinstance(value, str):
        raise refused("this is not a text in quotes", 'write a material, such as "nylon"')
    return _words(info).material(value)


def _read_strand(value: object, info: ValidationInfo) -> Strand:
    from tagend.cards.recipe.strand import parse_strand  # few recipes have variants

    return parse_strand(value, _words(info))


def _read_place(value: object) -> int:
    if str(value) not in map(str, range(1, SECTIONS_MOST + 1)):
        raise refused(f"{str(value)[:40]!r} is no section", "write its number from the butt")
    return int(str(value))


def _read_date(value: object) -> date:
    if type(value) is date:
        return value
    try:
        return date.fromisoformat(str(value))
    except ValueError:
        raise refused(f"{str(value)[:20]!r} is not a date", "write it as 2026-05-31") from None


def _knot(end: EndOf) -> Schema:
    return by(lambda value, info: read_knot(value, end, _words(info)), with_context=True)


NAME = by(text_line(NAME_MOST))
NOTE = by(text_line(NOTE_MOST))
DATE = by(_read_date)
LENGTH = by(parse_length)
SPAN = by(parse_span)
DIAMETER = by(parse_diameter)
STRENGTH = by(parse_strength)
MATERIAL = by(_read_material, with_context=True)
BUTT_KNOT, JOINT_KNOT, FLY_KNOT = _knot("butt"), _knot("joint"), _knot("fly")
STRAND = by(_read_strand, with_context=True)
REPLACEMENTS: Schema = {"type": "dict", "keys_schema": by(_read_place), "values_schema": STRAND}
