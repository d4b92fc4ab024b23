"""Hypothesis strategies: any quantity, text, section, recipe or variant of a recipe file."""

import unicodedata
from typing import TypeVar, get_args

from hypothesis import strategies as st
from msgspec.structs import replace

from tagend.cards.base.units import (
    Diameter,
    Length,
    Span,
    Strength,
    parse_diameter,
    parse_length,
    parse_span,
    parse_strength,
)
from tagend.cards.practice.knot_file import load_knots
from tagend.cards.practice.materials import load_materials
from tagend.cards.practice.shop_file import common_practice
from tagend.cards.recipe.recipe import (
    NAME_MOST,
    NOTE_MOST,
    SECTIONS_MOST,
    Butt,
    Fly,
    LengthsMean,
    Part,
    Reach,
    Recipe,
    Section,
    Strand,
    Variant,
)
from tagend.cards.recipe.strand import parse_strand

T = TypeVar("T")


@st.composite
def _number(draw: st.DrawFn, least: int, most: int) -> str:
    """Return a number as people spell it: 30, 007, 7.50, 7 1/2 or 7-1/2."""
    whole = draw(st.sampled_from(["", "", "", "0", "00"])) + str(draw(st.integers(least, most)))
    match draw(st.integers(0, 4)):
        case 0:
            return f"{whole}.{draw(st.integers(0, 9999))}"
        case 1:
            return f"{whole} {draw(_fractions)}"
        case 2:
            return f"{whole}-{draw(_fractions)}"
    return whole


@st.composite
def _length(draw: st.DrawFn) -> str:
    match draw(st.integers(0, 9)):
        case 0:
            return f"{draw(_number(1, 50))} ft {draw(_number(0, 50))} in"
        case 1:
            return f"{draw(st.integers(1, 50))}' {draw(st.integers(0, 50))}\""
        case 2:
            return draw(_fractions) + draw(st.sampled_from([" in", " ft", "yd"]))
        case 3:
            return f".{draw(st.integers(1, 9999)):02} ft"
    unit = draw(st.sampled_from(list(_LENGTH_MOST)))
    return draw(_number(1, _LENGTH_MOST[unit])) + draw(_gap) + unit


@st.composite
def _diameter(draw: st.DrawFn) -> str:
    more = draw(st.sampled_from(["", "0", "5", "37"]))
    match draw(st.integers(0, 5)):
        case 0:
            return f"1/{draw(st.integers(10, 99))} in"
        case 1:
            return f"{draw(st.integers(0, 8))}X"
        case 2:
            return f"{draw(st.integers(0, 7))}.5x"
        case 3:
            return draw(_number(2, 90)) + draw(_gap) + "thou"
        case 4:
            return f"{draw(st.integers(0, 2))}.{draw(st.integers(4, 99)):02}{more}{draw(_gap)}mm"
    return f"{draw(_zeros)}.0{draw(st.integers(2, 99)):02}{more}{draw(_gap)}in"


@st.composite
def _strength(draw: st.DrawFn) -> str:
    unit, most = draw(st.sampled_from([("lb", 500), ("lbs", 500), ("kg", 220)]))
    return draw(_number(1, most)) + draw(_gap) + unit


@st.composite
def _span(draw: st.DrawFn) -> str:
    low, high = sorted((draw(_length()), draw(_length())), key=lambda text: parse_length(text).mm)
    return low if parse_length(low).mm == parse_length(high).mm else f"{low} to {high}"


_LENGTH_MOST = {"in": 2000, "inches": 2000, "ft": 170, "yd": 40, "m": 35, "cm": 5900, "mm": 59000}
_gap = st.sampled_from(["", " "])
_zeros = st.sampled_from(["", "0", "00"])
_fractions = st.builds("{}/{}".format, st.integers(1, 20), st.integers(1, 20))

lengths: st.SearchStrategy[Length] = _length().map(parse_length)
spans: st.SearchStrategy[Span] = (_length() | _span()).map(parse_span)
diameters: st.SearchStrategy[Diameter] = _diameter().map(parse_diameter)
strengths: st.SearchStrategy[Strength] = _strength().map(parse_strength)

_WRITING = st.characters(exclude_categories=("C", "Zl", "Zp")).filter(
    lambda char: unicodedata.category(char) != "So" or ord(char) < 0x2300
)
_USUAL = st.sampled_from("abcdefgh LMNOPéÉüøŁßñçıİ'’,.:;-–+*/%$&()\"0123½°ёшλ語")


def texts(most: int) -> st.SearchStrategy[str]:
    """Return any text of up to `most` characters that the door lets in, as it comes out of it."""
    written = st.text(_USUAL, min_size=1, max_size=most) | st.text(
        _WRITING, min_size=1, max_size=most
    )
    composed = written.map(lambda text: unicodedata.normalize("NFC", text).strip())
    return composed.filter(lambda text: 0 < len(text) <= most)


def _knots_for(*places: str) -> st.SearchStrategy[str]:
    return st.sampled_from([knot.name for knot in load_knots() if {*knot.places} & {*places}])


materials = st.sampled_from([material.name for material in load_materials()])
joint_knots = _knots_for("joint")
butt_ends = _knots_for("butt", "line") | st.just("none")
fly_ends = _knots_for("fly") | st.just("none")
parts: st.SearchStrategy[Part] = st.sampled_from(get_args(Part))


def _maybe(values: st.SearchStrategy[T]) -> st.SearchStrategy[T | None]:
    return st.none() | values


@st.composite
def sections(draw: st.DrawFn, *, last: bool = False) -> Section:
    """Return any section; the `last` of a leader has no joint to a next one."""
    return Section(
        length=draw(spans),
        diameter=draw(diameters),
        material=draw(materials),
        strength=draw(_maybe(strengths)),
        knot=None if last else draw(_maybe(joint_knots)),
        part=draw(_maybe(parts)),
        dropper=None if last else draw(_maybe(lengths)),
        tapers_to=draw(_maybe(diameters)),
        bought=draw(st.booleans()),
    )


def _butts() -> st.SearchStrategy[Butt]:
    looped = st.builds(Butt, end=_maybe(_knots_for("butt", "line")), loop=_maybe(lengths))
    return looped | st.just(Butt("none"))


recipes: st.SearchStrategy[Recipe] = st.builds(
    Recipe,
    name=texts(NAME_MOST),
    sections=st.builds(
        lambda above, end: (*above, end),
        st.lists(sections(), max_size=SECTIONS_MOST - 1),
        sections(last=True),
    ),
    lengths=st.sampled_from(get_args(LengthsMean)),
    use=_maybe(texts(NOTE_MOST)),
    line_weight=_maybe(st.integers(1, 15)),
    line_tip=_maybe(diameters),
    total=_maybe(lengths),
    note=_maybe(texts(NOTE_MOST)),
    tied=_maybe(st.dates()),
    record_lengths=st.booleans(),
    butt=_butts(),
    fly=st.builds(Fly, _maybe(fly_ends)),
    reach=_maybe(st.builds(Reach, line_out=lengths, rod=lengths)),
)


@st.composite
def strands(draw: st.DrawFn) -> Strand:
    """Return any line for a variant, with or without its strength and length."""
    words = [draw(_diameter()), draw(materials)]
    words += draw(st.just([]) | _strength().map(lambda text: [text]))
    words += draw(st.just([]) | _span().map(lambda text: [text]))
    return parse_strand(" ".join(words), common_practice())


_places = st.integers(1, SECTIONS_MOST)
variants: st.SearchStrategy[Variant] = st.builds(
    Variant,
    name=texts(NAME_MOST),
    use=_maybe(texts(NOTE_MOST)),
    line_weight=_maybe(st.integers(1, 15)),
    replace=_maybe(st.dictionaries(_places, strands(), min_size=1, max_size=3)),
    stop_after=_maybe(_places),
    tippet=_maybe(strands()),
    guard=_maybe(strands()),
    butt=_maybe(lengths),
    total=_maybe(lengths),
).filter(lambda variant: variant != Variant(variant.name, variant.use))

recipes_with_variants: st.SearchStrategy[Recipe] = st.builds(
    lambda recipe, variants: replace(recipe, variants=tuple(variants)),
    recipes,
    st.lists(variants, max_size=3, unique_by=lambda variant: variant.name.casefold()),
)
