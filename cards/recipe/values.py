"""How each kind of value in recipe and rack files is read: what a person wrote in, values out."""

from datetime import date
from typing import cast, get_args

from pydantic_core.core_schema import ValidationInfo

from tagend.cards.base.file_schema import Schema, by, choice, whole_number
from tagend.cards.base.units import parse_diameter, parse_length, parse_span, parse_strength
from tagend.cards.base.value_readers import text_line
from tagend.cards.recipe.recipe import (
    NAME_MOST,
    NOTE_MOST,
    SECTIONS_MOST,
    LengthsMean,
    Part,
    Strand,
)
from tagend.cards.recipe.vocabulary import EndOf, Vocabulary
from tagend.layouts.base.faults import refused

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
    from tagend.cards.base.days import read_day

    return read_day(str(value))


def _knot(end: EndOf, *examples: str) -> Schema:
    def read(value: object, info: ValidationInfo) -> str:
        return read_knot(value, end, _words(info))

    return by(read, examples, with_context=True)


NAME = by(text_line(NAME_MOST), ("Sandbar eight",))
USE = by(text_line(NOTE_MOST), ("bonefish on sand",))
NOTE = by(text_line(NOTE_MOST), ("For a stiff crosswind.",))
DATE = by(_read_date, ("2026-05-31",))
LINE_WEIGHT = whole_number(1, 15)
LENGTH = by(parse_length, ("9 ft", "7 1/2 ft", "2.7 m"))
SHORT_LENGTH = by(parse_length, ("3/4 in", "2 cm"))
SPAN = by(parse_span, ("30 in", "22 to 28 in", "76 cm"))
LENGTHS_MEAN = choice(*get_args(LengthsMean))
DIAMETER = by(parse_diameter, ("0.023 in", "0.58 mm", "4X"))
STRENGTH = by(parse_strength, ("25 lb", "11.3 kg"))
MATERIAL = by(_read_material, ("nylon", "hard nylon", "fluorocarbon"), with_context=True)
PART = choice(*get_args(Part))
BUTT_KNOT = _knot("butt", "perfection loop", BARE)
JOINT_KNOT = _knot("joint", "blood")
FLY_KNOT = _knot("fly", "clinch", BARE)
SECTION_NUMBER = whole_number(1, SECTIONS_MOST)
STRAND = by(_read_strand, ("0.028 in fluorocarbon 60 lb 12 in",), with_context=True)
REPLACEMENTS: Schema = {
    "type": "dict",
    "keys_schema": by(_read_place, ("3",)),
    "values_schema": STRAND,
}
