"""A shop file: what belongs to the person and not the recipe; TOML in, practice and wishes out."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import get_args

from pydantic_core import SchemaValidator

from tagend.cards.base.file_schema import Schema, check, known_keys, optional, parsed, table, text
from tagend.cards.base.named_table import read_our_file
from tagend.cards.base.shown_lengths import ShownUnit
from tagend.cards.base.toml_file import read_toml
from tagend.cards.base.units import Length, parse_length
from tagend.cards.base.value_readers import list_of
from tagend.cards.practice.knot_file import knots_with_own, load_knots
from tagend.cards.practice.knots import Knot, Knots
from tagend.cards.practice.materials import load_materials, materials_with_own
from tagend.cards.practice.practice import EndOf, OwnAllowance, Practice, knot_at
from tagend.cards.practice.rules import common_rules, with_settings
from tagend.cards.words.language import Wording, languages, wording_in
from tagend.layouts.base.faults import refused, under
from tagend.layouts.base.quantities import INCH_MM

TAPE_IN_MM = INCH_MM / 4
TAPE_METRIC_MM = Fraction(5)

Raw = Mapping[str, object]


@dataclass(frozen=True, slots=True)
class Shop:
    """What a shop file says, checked; absent words leave the usual."""

    name: str | None = None
    line: str | None = None  # of text, under the name on a card
    units: str | None = None  # one unit, or two: `in and cm`
    language: str | None = None  # of what is printed
    decimal: str | None = None  # sign; absent: the language's own
    tape: Length | None = None
    paper: str | None = None
    card: str | None = None
    labels: str | None = None
    allowance: Raw | None = None
    choice: Raw | None = None
    rules: Raw | None = None
    knots: Raw | None = None
    materials: Raw | None = None
    stock: Raw | None = None
    printer: Raw | None = None
    font: str | None = None  # the path of a font's file
    logo: str | None = None  # the path of a picture's file


def read_shop(data: bytes) -> Shop:
    """Return what a shop file says; raises `Refused` with the faults of the first wrong part."""
    shop: Shop = check(_validator(), read_toml(data), None, known_keys(SHOP))
    practice_of(shop)
    return shop


def practice_of(shop: Shop) -> Practice:
    """Return common practice with what a shop changes of it."""
    with under("knots"):
        knots = _knots(shop)
    with under("materials"):
        materials = materials_with_own(shop.materials) if shop.materials else load_materials()
    with under("rules"):
        rules = with_settings(common_rules(), shop.rules or {})
    first, _, second = (shop.units or "").partition(" and ")
    inches = shop.tape is not None and shop.tape.unit in ("in", "ft", "yd")
    return Practice(
        knots=knots,
        materials=materials,
        rules=rules,
        choice=_choices(shop.choice or {}, knots),
        own_allowances=_own_allowances(shop.allowance or {}, knots),
        unit=_UNITS.get(first),
        tape_in_mm=shop.tape.mm if shop.tape and inches else TAPE_IN_MM,
        tape_metric_mm=shop.tape.mm if shop.tape and not inches else TAPE_METRIC_MM,
        second_unit=_UNITS.get(second),
    )


def wording_of(shop: Shop) -> Wording:
    """Return the words and the number style of what a shop prints."""
    return wording_in(shop.language or "en", shop.decimal)


def _knots(shop: Shop) -> Knots:
    if not shop.knots and shop.language in (None, "en"):
        return load_knots()
    return knots_with_own(shop.knots or {}, shop.language or "en")


@cache
def common_practice() -> Practice:
    """Return the practice of a person without a shop file."""
    return practice_of(Shop())


def _own_allowances(raw: Raw, knots: Knots) -> dict[str, OwnAllowance]:
    own = {}
    for name, value in raw.items():
        with under(f"allowance, {name}"):
            own[knots.find(name).name] = _own_allowance(value)
    return own


def _own_allowance(value: object) -> OwnAllowance:
    if not isinstance(value, dict):
        both = parse_length(value).mm
        return OwnAllowance(both, both)
    if set(value) != {"thick", "thin"}:
        raise refused("a table here has other keys", "write thick and thin, or one length for both")
    return OwnAllowance(parse_length(value["thick"]).mm, parse_length(value["thin"]).mm)


def _choices(own: Raw, knots: Knots) -> dict[EndOf, tuple[Knot, ...]]:
    """Return the order for each end: the person's own, and after it ours, so that one suits."""
    ours = read_our_file("practice/choice.toml")
    for end in own:
        if end not in ours:
            raise refused(f"no end is called {end!r}", f"write one of: {', '.join(ours)}", "choice")
    return {end: _order(own.get(end), ours[end], end, knots) for end in get_args(EndOf)}


def _order(own: object, ours: object, end: EndOf, knots: Knots) -> tuple[Knot, ...]:
    read = list_of(lambda name: knot_at(knots, str(name), end), "knot", 1, 30)
    with under(f"choice, {end}"):
        first = () if own is None else read(own)
        return tuple(dict.fromkeys((*first, *read(ours))))


_TABLE: Schema = {"type": "dict"}
_UNITS: dict[str, ShownUnit] = {unit: unit for unit in get_args(ShownUnit)}
_BOTH = [f"{a} and {b}" for a in _UNITS for b in _UNITS if (a == "in") != (b == "in")]

SHOP = table(
    Shop,
    {
        "name": optional(text(60, "The shop's or the guide's name.")),
        "line": optional(text(80, "A line of text under the name.")),
        "units": optional({"type": "literal", "expected": [*_UNITS, *_BOTH]}),
        "language": optional({"type": "literal", "expected": languages()}),
        "decimal": optional({"type": "literal", "expected": [".", ","]}),
        "tape": optional(parsed(parse_length, "What cuts are rounded up to.", ["1/4 in", "5 mm"])),
        "paper": optional(text(40, "The paper in the printer.")),
        "card": optional(text(40, "The size of a card.")),
        "labels": optional(text(40, "The label sheet.")),
        "allowance": optional(_TABLE),
        "choice": optional(_TABLE),
        "rules": optional(_TABLE),
        "knots": optional(_TABLE),
        "materials": optional(_TABLE),
        "stock": optional(_TABLE),
        "printer": optional(_TABLE),
        "font": optional(text(500, "A font file for letters that no font here has.")),
        "logo": optional(text(500, "A PNG, JPEG, SVG or PDF file, for the imprint.")),
    },
)


@cache
def _validator() -> SchemaValidator:
    return SchemaValidator(SHOP)
