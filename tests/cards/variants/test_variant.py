import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from tagend.cards.base.units import parse_length
from tagend.cards.code.notation import write_notation
from tagend.cards.leader.leader import work_out
from tagend.cards.recipe.recipe import NAME_MOST, SECTIONS_MOST, Recipe, Variant
from tagend.cards.recipe.recipe_file import read_recipe, variant_of
from tagend.cards.recipe.recipe_text import recipe_text
from tagend.cards.recipe.strand import parse_strand
from tagend.cards.variants.variant import (
    joined_name,
    variant_called,
    vary,
    with_variants,
)
from tagend.layouts.base.faults import Refused
from tests.leaders import SANDBAR, SANDBAR_TEXT, read
from tests.plausible import plausible_recipe
from tests.strategies import recipes, recipes_with_variants, variants
from tests.written import PRACTICE, recipe, section

plausible = st.randoms(use_true_random=False).map(plausible_recipe)

WIND = Variant("in hard wind", use="Hard wind", butt=parse_length("5 ft"))
SHORT = Variant("short", stop_after=5, line_weight=9)
VARIED = replace(SANDBAR, variants=(WIND, SHORT))


def assert_clear(refusal: Refused) -> None:
    for fault in refusal.faults:
        assert fault.found
        assert fault.instead
        assert "\n" not in str(fault)


@given(recipes | plausible, variants)
@settings(max_examples=400, deadline=None)
def test_every_variant_is_a_recipe_or_a_clear_refusal(before: Recipe, change: Variant) -> None:
    try:
        varied = vary(before, change, PRACTICE)
    except Refused as refusal:
        assert_clear(refusal)
        return
    assert read_recipe(recipe_text(varied).encode(), PRACTICE) == varied
    assert varied.variants == ()
    assert len(varied.sections) <= SECTIONS_MOST
    work_out(varied, PRACTICE)


@given(recipes_with_variants)
@settings(max_examples=50, deadline=None)
def test_a_code_carries_the_leader_without_its_variants(before: Recipe) -> None:
    plain = replace(before, variants=())
    try:
        text = write_notation(before, PRACTICE.knots, PRACTICE.materials)
    except Refused:  # too long for any code
        return
    assert text == write_notation(plain, PRACTICE.knots, PRACTICE.materials)
    assert read(text) == plain


def test_a_label_of_the_main_leader_reads_as_before() -> None:
    assert write_notation(VARIED, PRACTICE.knots, PRACTICE.materials) == SANDBAR_TEXT


def test_a_change_says_another_use_and_line_and_leaves_the_rest() -> None:
    varied = vary(VARIED, replace(WIND, line_weight=9), PRACTICE)
    assert (varied.use, varied.line_weight) == ("Hard wind", 9)
    kept = ("name", "butt", "fly", "note", "lengths")
    assert all(getattr(varied, key) == getattr(VARIED, key) for key in kept)
    assert vary(VARIED, SHORT, PRACTICE).use == VARIED.use


def test_the_total_is_scaled_before_the_butt_takes_its_share() -> None:
    before = recipe(section("30 in", "0.020 in"), section("30 in", "0.017 in"))
    change = Variant("both", total=parse_length("8 ft"), butt=parse_length("5 ft"))
    lengths = [part.length.plain for part in vary(before, change, PRACTICE).sections]
    assert lengths == ["5 ft", "36 in"]


@pytest.mark.parametrize(
    ("change", "total"),
    [
        (Variant("line", line_weight=9), "10 ft"),
        (Variant("finer", tippet=parse_strand("4X nylon", PRACTICE)), "10 ft"),
        (Variant("short", stop_after=2), None),
        (Variant("longer", total=parse_length("12 ft")), "12 ft"),
        (Variant("wind", butt=parse_length("50 in")), "10 ft"),
    ],
)
def test_a_stated_total_stays_while_it_holds(change: Variant, total: str | None) -> None:
    before = recipe(
        section("40 in", "0.020 in"),
        section("40 in", "0.015 in"),
        section("30 to 40 in", "4X"),
        total="10 ft",
    )
    varied = vary(before, change, PRACTICE)
    assert varied.total == (parse_length(total) if total else None)


def test_a_total_at_the_short_end_of_a_range_goes_with_it() -> None:
    before = recipe(section("40 in", "0.020 in"), section("30 to 40 in", "4X"), total="70 in")
    # 40 + 40 - 60 = 20, and 20/40 of 30 is 15: 75 to 80 in, which 70 in no longer is.
    wind = vary(before, Variant("wind", butt=parse_length("60 in")), PRACTICE)
    assert [part.length.plain for part in wind.sections] == ["60 in", "15 to 20 in"]
    assert wind.total is None


# ---- by name ---------------------------------------------------------------------------------


def test_a_recipe_comes_before_its_variants_each_under_a_name_of_its_own() -> None:
    assert [leader.name for leader in with_variants(VARIED, PRACTICE)] == [
        "Sandbar eight",
        "Sandbar eight, in hard wind",
        "Sandbar eight, short",
    ]


@pytest.mark.parametrize("name", ["in hard wind", " In Hard Wind "])
def test_a_variant_is_found_by_its_name(name: str) -> None:
    assert variant_called(name, VARIED, PRACTICE).sections[0].length.plain == "5 ft"


@pytest.mark.parametrize(
    ("leader", "fault"),
    [
        (VARIED, "no variant is called 'wind'; write one of: in hard wind, short"),
        (SANDBAR, "no variant is called 'wind'; this recipe has none"),
    ],
)
def test_an_unknown_variant_is_told(leader: Recipe, fault: str) -> None:
    with pytest.raises(Refused) as refusal:
        variant_called("wind", leader, PRACTICE)
    assert str(refusal.value) == fault


def test_a_fault_names_its_variant() -> None:
    wrong = replace(SANDBAR, variants=(Variant("calm", butt=parse_length("1 ft")),))
    with pytest.raises(Refused) as refusal:
        list(with_variants(wrong, PRACTICE))
    fault = "variant 'calm', butt: it is 30 in already; write a longer butt"
    assert str(refusal.value) == fault


def test_the_name_of_a_variant_has_the_room_of_any_name() -> None:
    assert len(joined_name(SANDBAR, "x" * 45)) == NAME_MOST
    with pytest.raises(Refused) as refusal:
        joined_name(SANDBAR, "x" * 46)
    name = f"Sandbar eight, {'x' * 46}"
    assert str(refusal.value) == f"name: '{name}' has 61 characters; shorten it to 60"


def test_a_variant_is_read_as_a_file_is() -> None:
    keys = {"name": "in hard wind", "use": "Hard wind", "butt": "5 ft"}
    assert variant_of(keys, PRACTICE) == WIND
    with pytest.raises(Refused, match=r"^butt: '72' has no unit; "):
        variant_of({"name": "x", "butt": "72"}, PRACTICE)
