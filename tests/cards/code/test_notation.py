from contextlib import suppress
from datetime import date

import pytest
from hypothesis import assume, given
from msgspec.structs import replace

from tagend.cards.base.units import parse_diameter, parse_length
from tagend.cards.code.check_characters import CHARACTERS, check_characters
from tagend.cards.code.notation import codes_used, read_notation, write_notation
from tagend.cards.practice.knot_file import knots_with_own
from tagend.cards.practice.materials import materials_with_own
from tagend.cards.recipe.recipe import Butt, Fly, Reach, Recipe, Section
from tagend.layouts.base.faults import Refused
from tests.leaders import PLAIN, SANDBAR, SANDBAR_TEXT, checked, read, section, write
from tests.strategies import recipes
from tests.tree import ROOT


def fields(recipe: Recipe) -> str:
    """Return what stands between the name and the check."""
    return write(recipe).removeprefix("TAG3:PLAIN:")[:-3]


def test_six_named_sections_fit_the_fifth_version() -> None:
    assert write(SANDBAR) == SANDBAR_TEXT
    # Version 5 at level M holds 122 characters: ISO/IEC 18004.
    assert len(SANDBAR_TEXT) <= 122
    assert read(SANDBAR_TEXT) == SANDBAR


def too_long(recipe: Recipe) -> bool:
    """Return whether no code holds the recipe; any other refusal is a fault of ours."""
    try:
        write(recipe)
    except Refused as refusal:
        if "characters; shorten its note or use" in str(refusal):
            return True
        raise
    return False


@given(recipes)
def test_every_recipe_comes_back_from_its_text(recipe: Recipe) -> None:
    assume(not too_long(recipe))
    text = write(recipe)
    assert set(text) <= set(CHARACTERS)
    assert read(text) == recipe
    assert read(text.lower().replace(":", " : \n")) == recipe


def test_without_any_spaces_only_the_names_differ() -> None:
    assert read(SANDBAR_TEXT.replace(" ", "")) == replace(SANDBAR, name="Sandbareight")


def test_spaces_anywhere_between_names_mean_nothing() -> None:
    spread = " ".join(SANDBAR_TEXT.partition("W8")[2])
    assert read(SANDBAR_TEXT.partition("W8")[0] + "w 8" + spread) == SANDBAR


@pytest.mark.parametrize(
    ("recipe", "text"),
    [
        (replace(PLAIN, lengths="cut", record_lengths=True), "CUT:RECORD:30*23*HN"),
        (replace(PLAIN, use="Bonefish on sand"), "USE BONEFISH ON SAND:30*23*HN"),
        (replace(PLAIN, note="It's stiff."), "30*23*HN:NOTE IT*S STIFF."),
        (replace(PLAIN, line_tip=parse_diameter("0.036 in")), "TIP 36:30*23*HN"),
        (replace(PLAIN, total=parse_length("7 ft 6 in")), "TOTAL 7FT6IN:30*23*HN"),
        (replace(PLAIN, total=parse_length("30 in")), "TOTAL:30*23*HN"),
        (replace(PLAIN, total=parse_length("2 1/2 ft")), "TOTAL 2+1/2FT:30*23*HN"),
        (replace(PLAIN, tied=date(2026, 5, 31)), "TIED 2026-05-31:30*23*HN"),
        (replace(PLAIN, butt=Butt("none")), "BUTT NONE:30*23*HN"),
        (replace(PLAIN, butt=Butt(None, parse_length("1/2 in"))), "BUTT *1/2:30*23*HN"),
        (replace(PLAIN, fly=Fly("none")), "30*23*HN-NONE"),
        (
            replace(PLAIN, reach=Reach(parse_length("30 ft"), parse_length("9 ft"))),
            "30*23*HN:OUT 30FT:ROD 9FT",
        ),
    ],
)
def test_each_word_of_a_recipe_has_its_field(recipe: Recipe, text: str) -> None:
    assert fields(recipe) == text


@pytest.mark.parametrize(
    ("only", "text"),
    [
        (section("22 to 28 in", "4X", "nylon"), "22-28*4X*N"),
        (section("22 1/2 in to 2 ft", "23 thou", "nylon"), "22+1/2-2FT*23THOU*N"),
        (section("7 ft 6 1/2 in", "0.5X", "wire"), "7FT6+1/2IN*.5X*W"),
        (section("0.50 m", "0.330 mm", "nylon", "2.0 kg"), ".50M*.330MM*N*2.0KG"),
        (section("30 in", "0.33 mm", "nylon", "2 lb"), "30*.33MM*N*2"),
        (section("30 in", "0.009 in"), "30*9*HN"),
        (section("30 in", "0.0235 in"), "30*.0235*HN"),
        (section("30 in", "0.02 in"), "30*.02*HN"),
        (section("30 in", "23 thou"), "30*23THOU*HN"),
        (replace(section("9 ft", "0.023 in"), tapers_to=parse_diameter("4X")), "9FT*23-4X*HN"),
        (replace(section("9 in", "0.023 in"), bought=True), "9*23*HN/BOUGHT"),
        (replace(section("9 in", "0.023 in"), part="bite guard"), "9*23*HN/GUARD"),
    ],
)
def test_sections_read_as_a_person_says_them(only: Section, text: str) -> None:
    assert fields(replace(PLAIN, sections=(only,))) == text


def test_a_dropper_and_a_part_follow_the_knot() -> None:
    upper = section("20 in", "0.009 in", "nylon", None, "triple surgeon's")
    upper = replace(upper, dropper=parse_length("6 in"), part="tippet")
    recipe = replace(PLAIN, sections=(upper, section("20 in", "0.008 in", "nylon")))
    assert fields(recipe) == "20*9*N-S3/TIPPET/DROP6:20*8"


def test_common_units_are_said_once() -> None:
    metric = tuple(section("60 cm", f"0.{size} mm", "nylon", "4 kg") for size in (50, 40, 30))
    odd = (*metric, section("20 in", "5X", "nylon", "4 lb"))
    text = "CM/MM/KG:60*.50*N*4:60*.40*4:60*.30*4:20IN*5X*4LB"
    assert fields(replace(PLAIN, sections=odd)) == text


OWN_KNOTS = knots_with_own(
    {
        "Bench join": {
            "code": "BJ",
            "places": ["joint"],
            "mixed": "yes",
            "straight": "yes",
            "takes": {"hold": 1},
            "steps": ["Tie it."],
            "seat": "Pull.",
        },
        "blood": {"code": "ZZ"},
    }
)
OWN_MATERIALS = materials_with_own({"stiff 50% stuff": {"code": "N50", "kind": "nylon"}})
OWN = replace(
    PLAIN,
    sections=(
        section("30 in", "0.023 in", "stiff 50% stuff", "25 lb", "Bench join"),
        section("30 in", "0.020 in", "nylon", None, "blood"),
        section("30 in", "0.017 in", "nylon"),
    ),
)
OWN_TEXT = "TAG3:PLAIN:30*23*%STIFF 50$% STUFF%*25-%+BENCH JOIN%:30*20*N-B:30*17:"


def test_own_knots_and_materials_are_written_by_name_and_ours_by_our_code() -> None:
    text = write_notation(OWN, OWN_KNOTS, OWN_MATERIALS)
    assert text == OWN_TEXT + check_characters(OWN_TEXT)
    assert read_notation(text, OWN_KNOTS, OWN_MATERIALS) == OWN


def test_an_own_name_that_is_not_known_here_is_refused() -> None:
    text = "TAG3:PLAIN:30*23*%STIFF 50$% STUFF%*25:"
    said = "^section 1, character 18: no material is called 'stiff 50% stuff'; "
    with pytest.raises(Refused, match=said):
        read(text + check_characters(text))


def test_the_card_can_list_the_codes_of_ours_that_a_text_uses() -> None:
    assert codes_used(OWN) == (("N", "nylon"), ("B", "blood"))
    assert codes_used(SANDBAR)[:3] == (
        ("PL", "perfection loop"),
        ("HN", "hard nylon"),
        ("B", "blood"),
    )


def test_the_description_shows_the_sample_and_every_escape() -> None:
    described = (ROOT / "cards" / "code" / "NOTATION.md").read_text(encoding="utf-8")
    assert SANDBAR_TEXT in described
    for sign in CHARACTERS.replace(" ", "").replace(":", ""):
        with suppress(Refused):
            read(checked(f"A${sign}A:30*23*HN"))
            assert f"`${sign}`" in described
