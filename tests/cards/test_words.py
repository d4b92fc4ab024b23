from cards.words import end_words, span, span_number, strand, thickness
from tests.written import leader, recipe, section

RANGED = leader(
    recipe(
        section("7 ft", "0.017 in", "hard nylon", "13 lb"),
        section("22 to 28 in", "4X", "fluorocarbon"),
        butt="perfection loop",
        fly="clinch",
    )
)


def test_a_range_is_said_from_the_shortest_to_the_longest() -> None:
    assert span(RANGED.finished, RANGED) == "8 ft 10 in to 9 ft 4 in"
    assert span_number(RANGED.pieces[1].finished, RANGED) == "22–28"


def test_one_length_is_said_once() -> None:
    assert span(RANGED.pieces[0].finished, RANGED) == "7 ft"
    assert span_number(RANGED.pieces[0].finished, RANGED) == "84"


def test_a_strand_is_said_with_what_its_spool_says() -> None:
    butt, tippet = RANGED.pieces
    assert thickness(butt) == "0.017 in hard nylon"
    assert strand(butt) == "0.017 in hard nylon, 13 lb"
    assert strand(tippet) == "4X fluorocarbon"


def test_an_end_is_said_with_its_loop_where_it_has_one() -> None:
    assert end_words(RANGED.butt, RANGED) == "perfection loop, 3/4 in"
    assert end_words(RANGED.fly, RANGED) == "clinch"
    bare = leader(recipe(section("9 ft", "4X"), butt="none", fly="none"))
    assert end_words(bare.butt, bare) == "bare end"
