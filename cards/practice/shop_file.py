"""A shop file: what belongs to the person and not the recipe; TOML in, practice and wishes out."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import get_args

from tagend.cards.base.file_schema import TableReader, by, choice, table
from tagend.cards.base.named_table import read_our_file
from tagend.cards.base.shown_lengths import ShownUnit
from tagend.cards.base.toml_file import read_toml
from tagend.cards.base.units import Length, parse_length
from tagend.cards.base.value_readers import list_of, text_line
from tagend.cards.practice.knot_file import knots_with_own, load_knots
from tagend.cards.practice.knots import Knot, Knots, Sides
from tagend.cards.practice.materials import load_materials, materials_with_own
from tagend.cards.practice.practice import Practice, knot_at
from tagend.cards.practice.rules import common_rules, with_settings
from tagend.cards.recipe.vocabulary import EndOf
from tagend.layouts.base.faults import refused, under
from tagend.layouts.base.near_names import suggestion

Raw = Mapping[str, object]


@dataclass(frozen=True, slots=True)
class Shop:
    """What a shop file says, checked; absent words leave the usual."""

    name: str | None = None
    line: str | None = None  # of text, under the name on a card
    units: str | None = None  # one unit, or two: `in and cm`
    language: str | None = None  # of what is printed
    decimal: str | None = None  # sign; absent: the language's own
    tape: Length | None = None  # what cuts are rounded up to
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
    shop = _read(read_toml(data))
    practice_of(shop)
    return shop


def practice_of(shop: Shop) -> Practice:
    """Return common practice with what a shop changes of it."""
    with under("knots"):
        knots = knots_with_own(shop.knots) if shop.knots else load_knots()
    with under("materials"):
        materials = materials_with_own(shop.materials) if shop.materials else load_materials()
    with under("rules"):
        rules = with_settings(common_rules(), shop.rules or {})
    first, _, second = (shop.units or "").partition(" and ")
    return Practice(
        knots=knots,
        materials=materials,
        rules=rules,
        choice=_choices(shop.choice or {}, knots),
        own_allowances=_own_allowances(shop.allowance or {}, knots),
        unit=_UNITS.get(first),
        tape=shop.tape,
        second_unit=_UNITS.get(second),
    )


@cache
def common_practice() -> Practice:
    """Return the practice of a person without a shop file."""
    return practice_of(Shop())


def _own_allowances(raw: Raw, knots: Knots) -> dict[str, Sides[Fraction]]:
    own = {}
    for name, value in raw.items():
        with under(f"allowance, {name}"):
            own[knots.find(name).name] = _own_allowance(value)
    return own


def _own_allowance(value: object) -> Sides[Fraction]:
    if not isinstance(value, dict):
        both = parse_length(value).mm
        return Sides(both, both)
    if set(value) != {"heavy", "light"}:
        raise refused("a table here has other keys", "write thick and thin, or one length for both")
    return Sides(parse_length(value["heavy"]).mm, parse_length(value["light"]).mm)


def _choices(own: Raw, knots: Knots) -> dict[EndOf, tuple[Knot, ...]]:
    """Return the order for each end: the person's own, and after it ours, so that one suits."""
    ours = read_our_file("practice/choice.toml")
    for end in own:
        if end not in ours:
            raise refused(f"no end is called {end!r}", suggestion(end, [*ours]), "choice")
    return {end: _order(own.get(end), ours[end], end, knots) for end in get_args(EndOf)}


def _order(own: object, ours: object, end: EndOf, knots: Knots) -> tuple[Knot, ...]:
    read = list_of(lambda name: knot_at(knots, str(name), end), "knot", 1, 30)
    with under(f"choice, {end}"):
        first = () if own is None else read(own)
        return tuple(dict.fromkeys((*first, *read(ours))))


_TABLES = ("allowance", "choice", "rules", "knots", "materials", "stock", "printer")
_UNITS: dict[str, ShownUnit] = {unit: unit for unit in get_args(ShownUnit)}
_BOTH = [f"{a} and {b}" for a in _UNITS for b in _UNITS if (a == "in") != (b == "in")]

_read: TableReader[Shop] = TableReader(
    table(
        Shop,
        {
            "name": by(text_line(60)),
            "line": by(text_line(80)),
            "units": choice(*_UNITS, *_BOTH),
            "language": by(text_line(40)),
            "decimal": choice(".", ","),
            "tape": by(parse_length),
            **dict.fromkeys(("paper", "card", "labels"), by(text_line(40))),
            **{key: {"type": "dict"} for key in _TABLES},
            **dict.fromkeys(("font", "logo"), by(text_line(500))),
        },
    )
)
