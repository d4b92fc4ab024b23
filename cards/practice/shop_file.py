"""A shop file: what belongs to the person and not the recipe; TOML in, practice and wishes out."""

from collections.abc import Mapping
from functools import cache
from typing import cast, get_args

from msgspec import Struct

from tagend.cards.base.file_schema import TableReader, by, choice, table
from tagend.cards.base.named_table import read_our_file
from tagend.cards.base.shown_lengths import ShownUnit
from tagend.cards.base.toml_file import read_toml
from tagend.cards.base.units import Length, parse_length
from tagend.cards.base.value_readers import list_of, text_line
from tagend.cards.practice.knot_file import knots_with_own, load_knots
from tagend.cards.practice.knots import Knot, Knots
from tagend.cards.practice.materials import load_materials, materials_with_own
from tagend.cards.practice.practice import Choice, Meets, OwnLap, Practice, end_of_meeting, knot_at
from tagend.cards.practice.rules import common_rules, with_settings
from tagend.layouts.base.faults import refused, under
from tagend.layouts.base.near_names import suggestion

Raw = Mapping[str, object]


class Shop(Struct, frozen=True):
    """What a shop file says, checked; absent words leave the usual."""

    name: str | None = None
    line: str | None = None  # of text, under the name on a card
    address: str | None = None  # under the name on the counter sheet
    units: str | None = None  # one unit, or two: `in and cm`
    language: str | None = None  # of what is printed
    decimal: str | None = None  # sign; absent: the language's own
    tape: Length | None = None  # what cuts are rounded up to
    paper: str | None = None
    card: str | None = None
    labels: str | None = None
    lap: Raw | None = None
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
        own_laps=_own_laps(shop.lap or {}, knots),
        unit=_UNITS.get(first),
        tape=shop.tape,
        second_unit=_UNITS.get(second),
    )


@cache
def common_practice() -> Practice:
    """Return the practice of a person without a shop file."""
    return practice_of(Shop())


def _own_laps(raw: Raw, knots: Knots) -> dict[str, OwnLap]:
    own = {}
    for name, value in raw.items():
        with under(f"lap, {name}"):
            knot = knots.find(name)
            own[knot.name] = _own_lap(knot, value)
    return own


def _own_lap(knot: Knot, value: object) -> OwnLap:
    """Read a lap, half of it for each side; of a knot in one strand its fold; or both sides."""
    if isinstance(value, dict):
        if set(value) != {"above", "below"} or "joint" not in knot.places:
            raise refused("a table here has other keys", _BOTH_SIDES.format(length="6 in"))
        return OwnLap(parse_length(value["above"]).mm, parse_length(value["below"]).mm)
    whole = parse_length(value).mm
    if "joint" not in knot.places:
        return OwnLap(whole, whole)
    if not knot.lapped:
        raise refused("this knot has no lap but a fold on each side", _EACH_SIDE)
    return OwnLap(whole / 2, whole / 2)


_BOTH_SIDES = 'write the lap, such as "{length}", or above and below of a joint'
_EACH_SIDE = 'write { above = "4 in", below = "6 in" }'


def _choices(own: Raw, knots: Knots) -> dict[Meets, Choice]:
    """Return the knots for each meeting: the person's own, and the usual ones."""
    ours = cast("dict[Meets, dict[str, object]]", read_our_file("practice/choice.toml"))
    for meets in own:
        if meets not in ours:
            raise refused(f"no meeting is called {meets!r}", suggestion(meets, [*ours]), "choice")
    return {meets: _choice(meets, own.get(meets), row, knots) for meets, row in ours.items()}


def _choice(meets: Meets, own: object, row: Raw, knots: Knots) -> Choice:
    end = end_of_meeting(meets)
    read = list_of(lambda name: knot_at(knots, str(name), end), "knot", 1, 30)
    with under(f"choice, {meets}"):
        first = () if own is None else read([own] if isinstance(own, str) else own)
        return Choice(own=first, usual=read(row["knots"]))


_TABLES = ("lap", "choice", "rules", "knots", "materials", "stock", "printer")
_UNITS: dict[str, ShownUnit] = {unit: unit for unit in get_args(ShownUnit)}
_BOTH = [f"{a} and {b}" for a in _UNITS for b in _UNITS if (a == "in") != (b == "in")]
UNITS = (*_UNITS, *_BOTH)  # what `units` may say

_read: TableReader[Shop] = TableReader(
    table(
        Shop,
        {
            "name": by(text_line(60)),
            "line": by(text_line(80)),
            "address": by(text_line(120)),
            "units": choice(*UNITS),
            "language": by(text_line(40)),
            "decimal": choice(".", ","),
            "tape": by(parse_length),
            **dict.fromkeys(("paper", "card", "labels"), by(text_line(40))),
            **{key: {"type": "dict"} for key in _TABLES},
            **dict.fromkeys(("font", "logo"), by(text_line(500))),
        },
    )
)
