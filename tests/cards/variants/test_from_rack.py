"""A leader strung again from a rack: its taper is kept by ratio, or what to buy is told."""

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tagend.cards.practice.rack_file import Rack, Spool, read_rack
from tagend.cards.recipe.recipe import Recipe, Section, Variant
from tagend.cards.recipe.strand import StrandByStrength, parse_strand, parse_strand_by_strength
from tagend.cards.variants.by_strength import spool_by_strength
from tagend.cards.variants.from_rack import NEAR, strung_from
from tagend.cards.variants.variant import vary
from tagend.layouts.base.faults import Refused
from tests.plausible import plausible_recipe
from tests.written import PRACTICE, recipe, section


def rack(*spools: str) -> Rack:
    """Return a rack of spools written as `0.021 in; nylon; 25 lb; 30 yd`, labelled a, b, c."""
    tables = []
    for label, spool in zip("abcdefghijklmnop", spools, strict=False):
        diameter, material, strength, left = spool.split("; ")
        tables.append(
            f'[[spool]]\nlabel = "{label}"\ndiameter = "{diameter}"\nmaterial = "{material}"\n'
            f'left = "{left}"\n' + (f'strength = "{strength}"\n' if strength != "-" else "")
        )
    return read_rack("\n".join(tables).encode(), PRACTICE)


def strands(leader: Recipe) -> list[str]:
    return [f"{part.diameter.plain} {part.material}" for part in leader.sections]


TAPER = recipe(
    section("36 in", "0.021 in", strength="20 lb"),
    section("24 in", "0.017 in"),
    section("20 in", "0.013 in"),
    section("24 in", "4X", "fluorocarbon"),
)


def test_each_section_takes_diameter_material_and_strength_from_a_near_spool() -> None:
    has = rack(
        "0.022 in; nylon; 25 lb; 30 yd",
        "0.018 in; nylon; -; 30 yd",
        "0.014 in; nylon; 9 lb; 30 yd",
        "0.18 mm; fluorocarbon; 2.6 kg; 30 m",
        "0.030 in; nylon; 40 lb; 30 yd",
    )
    strung = strung_from(has, TAPER, frozenset(), PRACTICE)
    assert strands(strung) == [
        "0.022 in nylon",
        "0.018 in nylon",
        "0.014 in nylon",
        "0.18 mm fluorocarbon",
    ]
    said = [part.strength and part.strength.plain for part in strung.sections]
    assert said == ["25 lb", None, "9 lb", "2.6 kg"]
    assert [part.length for part in strung.sections] == [part.length for part in TAPER.sections]


def test_ratios_count_for_more_than_single_diameters() -> None:
    # With the butt at 0.023 in, 0.018 keeps 21/17 (1.24) better than 0.0165 does: 1.28 and 1.39.
    two = recipe(section("36 in", "0.021 in"), section("24 in", "0.017 in"))
    has = rack(
        "0.023 in; nylon; -; 30 yd", "0.0165 in; nylon; -; 30 yd", "0.018 in; nylon; -; 30 yd"
    )
    assert strands(strung_from(has, two, frozenset(), PRACTICE)) == [
        "0.023 in nylon",
        "0.018 in nylon",
    ]


def test_another_kind_of_line_is_taken_only_where_the_rack_has_none() -> None:
    one = recipe(section("9 ft", "0.012 in"))
    nearer = ["0.012 in; fluorocarbon; -; 30 yd", "0.011 in; hard nylon; -; 30 yd"]
    assert strands(strung_from(rack(*nearer), one, frozenset(), PRACTICE)) == [
        "0.011 in hard nylon"
    ]
    assert strands(strung_from(rack(nearer[0]), one, frozenset(), PRACTICE)) == [
        "0.012 in fluorocarbon"
    ]


def test_of_like_spools_the_fullest_is_taken_and_a_used_one_never() -> None:
    one = recipe(section("9 ft", "0.012 in"))
    has = rack("0.012 in; nylon; 8 lb; 4 ft", "0.012 in; nylon; 9 lb; 30 yd")
    (part,) = strung_from(has, one, frozenset(), PRACTICE).sections
    assert part.strength
    assert part.strength.plain == "9 lb"
    with pytest.raises(Refused, match=r"holds 9 ft; buy 0.012 in nylon"):
        strung_from(rack("0.012 in; nylon; 8 lb; 4 ft"), one, frozenset(), PRACTICE)


def test_what_is_bought_wire_and_what_a_change_names_stay() -> None:
    before = recipe(
        section("60 in", "0.040 in", bought=True),
        section("20 in", "0.015 in"),
        section("6 in", "0.012 in", "wire"),
    )
    has = rack("0.012 in; nylon; -; 30 yd", "0.015 in; nylon; 11 lb; 30 yd")
    assert strands(strung_from(has, before, frozenset(), PRACTICE)) == strands(before)
    change = Variant("finer", tippet=parse_strand("0.009 in copolymer", PRACTICE))
    assert strands(vary(before, change, PRACTICE, has))[1] == "0.009 in copolymer"


def test_what_has_no_near_spool_is_all_told_with_what_to_buy() -> None:
    with pytest.raises(Refused) as refusal:
        strung_from(rack("0.017 in; nylon; -; 30 yd"), TAPER, frozenset(), PRACTICE)
    told = [(fault.where, fault.instead) for fault in refusal.value.faults]
    assert told == [
        ("section 1", "buy 0.021 in nylon"),
        ("section 3", "buy 0.013 in nylon"),
        ("section 4", "buy 4X fluorocarbon"),
    ]


def test_one_spool_makes_no_two_steps_of_a_taper() -> None:
    close = recipe(section("36 in", "0.021 in"), section("24 in", "0.019 in"))
    with pytest.raises(Refused, match=r"section 2: .*buy 0.021 in nylon or 0.019 in nylon"):
        strung_from(rack("0.020 in; nylon; -; 30 yd"), close, frozenset(), PRACTICE)
    level = recipe(section("36 in", "0.021 in"), section("24 in", "0.021 in"))
    strung_from(rack("0.020 in; nylon; -; 30 yd"), level, frozenset(), PRACTICE)


MIXED = st.randoms(use_true_random=False).map(plausible_recipe)
THOU = st.lists(st.integers(5, 30), min_size=6, max_size=16, unique=True)


@given(MIXED, THOU)
@settings(max_examples=200, deadline=None)
def test_a_strung_leader_is_near_and_falls_where_it_fell(before: Recipe, thou: list[int]) -> None:
    has = rack(*(f"{size} thou; nylon; {size} lb; 100 yd" for size in thou))
    try:
        after = strung_from(has, before, frozenset(), PRACTICE)
    except Refused:
        return
    on_spools = {spool.diameter: spool for spool in has.spools}
    for old, new in zip(before.sections, after.sections, strict=True):
        assert new.length == old.length
        if new != old:
            assert new.strength == on_spools[new.diameter].strength
            ratio = new.diameter.mm / old.diameter.mm
            assert 1 / NEAR <= ratio <= NEAR
    for (upper, lower), (above, below) in zip(
        pairwise(before.sections), pairwise(after.sections), strict=True
    ):
        if upper.tapers_to is None and upper.diameter.thou - lower.diameter.thou >= 1:
            assert above.diameter.mm > below.diameter.mm


@given(MIXED)
@settings(max_examples=100, deadline=None)
def test_a_rack_of_the_leaders_own_spools_changes_nothing(before: Recipe) -> None:
    spools = tuple(own_spool(place, part) for place, part in enumerate(before.sections))
    after = strung_from(Rack(spools), before, frozenset(), PRACTICE)
    assert strands(after) == strands(before)


def own_spool(place: int, part: Section) -> Spool:
    return Spool(
        label=str(place),
        material=part.material,
        diameter=part.diameter,
        left=part.length.high,
        strength=part.strength,
    )


# ---- by strength alone -----------------------------------------------------------------------

POUNDS = rack(
    "0.022 in; fluorocarbon; 34 lb; 30 yd",
    "0.021 in; fluorocarbon; 31 lb; 30 yd",
    "0.020 in; nylon; 30 lb; 30 yd",
    "0.021 in; hard nylon; 25 lb; 30 yd",
)


def asked(text: str) -> StrandByStrength:
    found = parse_strand_by_strength(text, PRACTICE)
    assert found
    return found


@pytest.mark.parametrize(
    ("text", "label"),
    [
        ("30 lb fluorocarbon 12 in", "b"),
        ("33 lb fluorocarbon", "a"),
        ("13.6 kg nylon", "c"),
        ("25 lb nylon", "d"),  # of the kind, where the material has none so strong
    ],
)
def test_a_strand_is_found_by_its_strength(text: str, label: str) -> None:
    assert spool_by_strength(asked(text), POUNDS, PRACTICE).label == label


@pytest.mark.parametrize("text", ["60 lb fluorocarbon", "30 lb wire"])
def test_a_strength_that_no_spool_is_near_is_told(text: str) -> None:
    with pytest.raises(Refused, match="read the diameter off the spool"):
        spool_by_strength(asked(text), POUNDS, PRACTICE)
