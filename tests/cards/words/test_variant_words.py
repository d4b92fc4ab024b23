import pytest
from msgspec.structs import replace

from tagend.cards.base.units import parse_length
from tagend.cards.recipe.recipe import Recipe, Variant
from tagend.cards.recipe.strand import parse_strand
from tagend.cards.words.language import ENGLISH, Wording
from tagend.cards.words.variant_words import short_words, variant_lines
from tagend.layouts.base.faults import Refused
from tests.written import PRACTICE, recipe, section

LEADER = recipe(
    section("36 in", "0.021 in"),
    section("24 in", "0.019 in"),
    section("24 in", "0.017 in"),
    section("12 in", "0.013 in", "fluorocarbon"),
)
WIND = Variant("in hard wind", butt=parse_length("5 ft"))
LESS = Variant("in a breeze", butt=parse_length("40 in"))
SHORT = Variant("short", stop_after=3, line_weight=7)
LONG = Variant("long", total=parse_length("12 ft"))
LONG_WIND = Variant("Both", total=parse_length("88 in"), butt=parse_length("54 in"))
GUARD = Variant(
    "for rough mouths",
    tippet=parse_strand("0.015 in nylon", PRACTICE),
    guard=parse_strand("0.020 in fluorocarbon 34 lb 12 in", PRACTICE),
)
OTHER = Variant("other", replace={2: parse_strand("0.018 in hard nylon", PRACTICE)})
RESTRUNG = replace(OTHER, replace={**(OTHER.replace or {}), 3: parse_strand("4X nylon", PRACTICE)})


def line(variant: Variant, leader: Recipe = LEADER, wording: Wording = ENGLISH) -> str:
    (only,) = variant_lines(replace(leader, variants=(variant,)), PRACTICE, wording)
    return only


@pytest.mark.parametrize(
    ("variant", "says"),
    [
        (WIND, "In hard wind: butt 5 ft, then 1-ft steps"),
        (LESS, "In a breeze: butt 40 in, then 22, 22, 12 in"),
        (SHORT, "Short: stop after section 3, 0.017 in nylon; line weight 7"),
        (LONG, "Long: 12 ft in all; 54, 36, 36, 18 in"),
        (LONG_WIND, "Both: 88 in in all; butt 54 in, then 11 1/2, 11 1/2, 11 in"),
        (
            GUARD,
            "For rough mouths: tippet 0.015 in nylon; "
            "bite guard 0.020 in fluorocarbon, 34 lb, 12 in",
        ),
        (OTHER, "Other: section 2 0.018 in hard nylon"),
    ],
)
def test_a_line_says_what_is_changed(variant: Variant, says: str) -> None:
    assert line(variant) == says


def test_metric_steps_are_said_in_centimetres() -> None:
    metric = recipe(*(section(text, "0.5 mm") for text in ("90 cm", "60 cm", "60 cm", "30 cm")))
    wind = Variant("wind", butt=parse_length("1.5 m"))
    assert line(wind, metric) == "Wind: butt 1.5 m, then 30 cm each"


def test_a_line_has_the_decimal_sign_of_the_shop_and_lists_no_lengths_by_it() -> None:
    comma = Wording("en", ",")
    fine = Variant("fine", tippet=parse_strand("0.25 mm nylon 3.9 kg 55.5 cm", PRACTICE))
    assert line(fine, wording=comma) == "Fine: tippet 0,25 mm nylon, 3,9 kg, 55,5 cm"
    assert line(LESS, wording=comma) == "In a breeze: butt 40 in, then 22; 22; 12 in"
    assert line(LONG, wording=comma) == "Long: 12 ft in all; 54; 36; 36; 18 in"


def test_lengths_of_several_units_each_say_theirs() -> None:
    mixed = recipe(section("36 in", "0.021 in"), section("18 to 24 in", "4X"))
    assert line(Variant("short", total=parse_length("4 ft")), mixed) == (
        "Short: 4 ft in all; 29 in, 14 to 19 in"
    )


def test_the_lines_stand_in_the_order_of_the_file() -> None:
    lines = variant_lines(replace(LEADER, variants=(SHORT, WIND)), PRACTICE, ENGLISH)
    assert [text.partition(":")[0] for text in lines] == ["Short", "In hard wind"]
    assert variant_lines(LEADER, PRACTICE, ENGLISH) == ()


def test_a_variant_that_cannot_be_tied_has_no_line() -> None:
    with pytest.raises(Refused, match=r"^variant 'short', stop_after: the leader has 4 sections"):
        line(replace(SHORT, stop_after=4))


@pytest.mark.parametrize(
    ("variant", "words"),
    [
        (WIND, "butt 5 ft"),
        (SHORT, "to section 3, line 7"),
        (GUARD, "tippet 0.015 in, guard 0.020 in"),
        (LONG_WIND, "88 in, butt 54 in"),
        (OTHER, "section 2 0.018 in"),
        (RESTRUNG, "restrung"),
        (Variant("x", use="Carp"), "another use"),
    ],
)
def test_a_variant_without_a_name_is_called_after_its_change(variant: Variant, words: str) -> None:
    assert short_words(variant) == words
