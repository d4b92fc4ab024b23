import pytest
from msgspec.structs import replace

from tagend.cards.base.shown_lengths import ShownUnit
from tagend.cards.base.units import parse_diameter, parse_span
from tagend.cards.words.language import ENGLISH, Wording
from tagend.cards.words.leader_words import Told
from tests.written import SIX, leader, practice, recipe, section

COMMA = Wording("en", ",")
IN_BOTH = leader(SIX, practice('units = "in and cm"'))
IN_BOTH_METRIC_FIRST = leader(SIX, practice('units = "cm and in"'))

RANGED = leader(
    recipe(
        section("7 ft", "0.017 in", "hard nylon", "13 lb"),
        section("22 to 28 in", "4X", "fluorocarbon"),
        butt="perfection loop",
        fly="clinch",
    )
)


def test_a_range_is_said_from_the_shortest_to_the_longest() -> None:
    assert Told(RANGED, ENGLISH).span(RANGED.finished) == "8 ft 10 in to 9 ft 4 in"
    assert Told(RANGED, ENGLISH).span_number(RANGED.pieces[1].finished) == "22–28"


def test_one_length_is_said_once() -> None:
    assert Told(RANGED, ENGLISH).span(RANGED.pieces[0].finished) == "7 ft"
    assert Told(RANGED, ENGLISH).span_number(RANGED.pieces[0].finished) == "84"


def test_a_strand_is_said_with_what_its_spool_says() -> None:
    butt, tippet = RANGED.pieces
    assert Told(RANGED, ENGLISH).thickness(butt) == "0.017 in hard nylon"
    assert Told(RANGED, ENGLISH).strand(butt) == "0.017 in hard nylon, 13 lb"
    assert Told(RANGED, ENGLISH).strand(tippet) == "4X fluorocarbon"


def test_an_end_is_said_with_its_loop_where_it_has_one() -> None:
    assert Told(RANGED, ENGLISH).end(RANGED.butt) == "perfection loop, 3/4 in"
    assert Told(RANGED, ENGLISH).end(RANGED.fly) == "clinch"
    bare = leader(recipe(section("9 ft", "4X"), butt="none", fly="none"))
    assert Told(bare, ENGLISH).end(bare.butt) == "bare end"


def test_a_length_is_said_in_a_second_unit_where_a_person_wants_one() -> None:
    # 132 in = 335.28 cm
    assert Told(IN_BOTH, ENGLISH).second_span(IN_BOTH.finished) == "3.35 m"
    assert Told(IN_BOTH, ENGLISH).spans(IN_BOTH.finished) == "11 ft · 3.35 m"
    metric = IN_BOTH_METRIC_FIRST
    assert Told(metric, COMMA).spans(metric.finished) == "3,35 m · 11 ft"


def test_without_a_second_unit_a_length_is_said_once() -> None:
    of = leader(SIX)
    assert Told(of, ENGLISH).second_span(of.finished) == ""
    assert Told(of, ENGLISH).spans(of.finished) == "11 ft"


def test_a_range_is_a_range_in_the_second_unit_too() -> None:
    of = leader(RANGED.recipe, practice('units = "in and cm"'))
    # 106 in = 269.24 cm, 112 in = 284.48 cm
    assert Told(of, ENGLISH).second_span(of.finished) == "2.69 m to 2.84 m"


@pytest.mark.parametrize(
    ("shop", "shown"),
    [
        ('name = "Bench"', ["0.023 in", "0.58 mm", "4X"]),  # as they are written
        ('units = "in"', ["0.023 in", "0.023 in", "4X"]),
        ('units = "cm"', ["0.58 mm", "0.58 mm", "4X"]),
        ('units = "in and cm"', ["0.023 in", "0.023 in", "4X"]),
        ('units = "mm and in"', ["0.58 mm", "0.58 mm", "4X"]),
    ],
)
def test_diameters_are_shown_in_the_first_unit_that_a_person_wants(
    shop: str, shown: list[str]
) -> None:
    of = leader(SIX, practice(shop))
    plain = map(parse_diameter, ("0.023 in", "0.58 mm", "4X"))
    assert [Told(of, ENGLISH).diameter(each) for each in plain] == shown


def test_a_strand_is_said_in_the_unit_and_with_the_decimal_sign_of_a_shop() -> None:
    metric = leader(SIX, practice('units = "cm"'))
    assert Told(metric, ENGLISH).strand(metric.tippet) == "0.25 mm fluorocarbon, 3.9 kg"
    assert Told(metric, COMMA).strand(metric.tippet) == "0,25 mm fluorocarbon, 3,9 kg"


@pytest.mark.parametrize(
    ("plain", "english", "comma"),
    [
        ("46 in", "46 in", "46 in"),
        ("7 1/2 ft", "7 1/2 ft", "7 1/2 ft"),
        ("7 ft 6 in", "7 ft 6 in", "7 ft 6 in"),
        ("76.5 cm", "76.5 cm", "76,5 cm"),
        ("22 to 28 in", "22 to 28 in", "22 to 28 in"),
        ("55.5 to 71.5 cm", "55.5 to 71.5 cm", "55,5 to 71,5 cm"),
        ("0.95 to 1.2 m", "0.95 to 1.2 m", "0,95 to 1,2 m"),
        ("20 in to 2 ft", "20 in to 2 ft", "20 in to 2 ft"),
    ],
)
def test_a_length_keeps_the_units_and_digits_it_was_written_in(
    plain: str, english: str, comma: str
) -> None:
    assert Told(RANGED, ENGLISH).length(parse_span(plain)) == english
    assert Told(RANGED, COMMA).length(parse_span(plain)) == comma


@pytest.mark.parametrize(
    ("plain", "centimetres", "inches"),
    [
        ("10 in", "25.4 cm", "10 in"),
        ("7 ft 6 in", "228.6 cm", "7 ft 6 in"),
        ("30 cm", "30 cm", "11 13/16 in"),
        ("22 to 28 in", "55.9 to 71.1 cm", "22 to 28 in"),
        ("0.5 to 1 m", "0.5 to 1 m", "19 11/16 to 39 3/8 in"),
    ],
)
def test_a_length_is_shown_in_the_units_that_a_person_wants(
    plain: str, centimetres: str, inches: str
) -> None:
    units: tuple[tuple[ShownUnit, str], ...] = (("cm", centimetres), ("in", inches))
    for unit, said in units:
        of = replace(RANGED, unit=unit, converted=True)
        assert Told(of, ENGLISH).length(parse_span(plain)) == said


def test_a_range_is_said_with_the_word_of_its_language() -> None:
    spanish = Told(RANGED, Wording("es", ",")).length(parse_span("22 to 28 in"))
    assert spanish.split() == ["22", "a", "28", "in"]


def test_loops_and_droppers_have_the_decimal_sign_too() -> None:
    dropped = recipe(
        section("7 ft", "0.011 in", dropper="15.5 cm"),
        section("24 in", "4X"),
        butt="perfection loop",
        loop="2.5 cm",
        fly="clinch",
    )
    metric = leader(dropped, practice('units = "cm"'))
    assert Told(metric, COMMA).end(metric.butt) == "perfection loop, 25 mm"
    assert Told(metric, COMMA).droppers() == "dropper of 15,5 cm left above section 2"
