import pytest
from cfractions import Fraction
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from tagend.cards.base.units import Length, Span
from tagend.cards.leader.allowance import round_up
from tagend.cards.leader.leader import Extent, Leader, work_out
from tagend.cards.leader.tying_order import tying_order
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import LengthsMean, Recipe
from tagend.layouts.base.faults import Refused
from tagend.layouts.base.quantities import INCH_MM
from tests.strategies import recipes
from tests.written import leader, practice, recipe, section

INCH = Fraction("25.4")
MARK = INCH / 4

IN_INCHES = practice('units = "in"')
IN_CENTIMETRES = practice('units = "cm"')


def extent(low: str, high: str) -> Extent:
    return Extent(Fraction(low) * INCH, Fraction(high) * INCH)


def cuts(worked_out: Leader) -> list[Fraction]:
    """Return the cut of each section in inches."""
    return [piece.cut_mm / INCH for piece in worked_out.pieces]


TWO = recipe(
    section("46 in", "0.023 in", "hard nylon"),
    section("24 in", "0.020 in", "hard nylon"),
    butt="perfection loop",
    fly="none",
)


def test_a_cut_is_the_finished_length_and_what_both_knots_take() -> None:
    # Section 1: 46 in                                        1168.4 mm
    #   perfection loop: 14.61 + 38.1 + 1.5875 + 101.6         155.8975
    #   blood, thick: 17.95 + 1.5875 + 101.6                   121.1375
    #     (4 sqrt((2 x 0.508 + pi x 1.0922)^2 + 0.5842^2) = 17.942)
    # Each up to a quarter of an inch: 6.138 in to 6 1/4, 4.769 in to 5; 46 + 11 1/4 = 57 1/4 in
    # Section 2: 24 in                                         609.6
    #   blood, thin, 4 turns: 18.511                            18.52
    #     (4 sqrt((2 x 0.5842 + pi x 1.0922)^2 + 0.508^2))
    #   tag and hand                                           103.1875  121.7075 = 4.792 in to 5 in
    # In a lap both sides take what the longer one does: 121.7075 mm, 0.57 mm more of section 1.
    worked_out = leader(TWO)
    first, second = worked_out.pieces
    assert (first.at_butt.mm, first.at_fly.mm) == (Fraction("155.8975"), Fraction("121.7075"))
    assert second.at_butt.mm == Fraction("18.52") + Fraction("103.1875")
    assert cuts(worked_out) == [Fraction("57.25"), 29]
    assert worked_out.cut_mm == Fraction("86.25") * INCH
    assert worked_out.lap_mm(1) == 10 * INCH
    assert worked_out.takes(1) == (5 * INCH, 5 * INCH)


@pytest.mark.parametrize(
    ("shop", "first", "second", "converted"),
    [
        ('name = "Bench"', "in", None, False),
        ('units = "in"', "in", None, True),
        ('units = "cm"', "cm", None, True),
        ('units = "in and cm"', "in", "cm", True),
        ('units = "mm and in"', "mm", "in", True),
    ],
)
def test_a_leader_knows_the_units_that_a_person_wants(
    shop: str, first: str, second: str | None, converted: bool
) -> None:
    of = leader(TWO, practice(shop))
    assert (of.unit, of.second_unit, of.converted) == (first, second, converted)


def test_a_second_unit_changes_no_cut() -> None:
    # A cut is rounded up to the marks of the first unit's tape: there is one piece, said twice.
    for first, second in (("in", "cm"), ("cm", "in")):
        alone = leader(TWO, practice(f'units = "{first}"'))
        beside = leader(TWO, practice(f'units = "{first} and {second}"'))
        assert cuts(beside) == cuts(alone)


def test_the_finished_length_is_the_sum_of_the_sections() -> None:
    assert leader(TWO).finished == extent("70", "70")  # 46 + 24


def test_a_range_is_cut_for_its_longest_and_summed_from_both_ends() -> None:
    ranged = recipe(section("46 in", "0.010 in"), section("22 to 28 in", "0.008 in"), fly="none")
    longest = recipe(section("46 in", "0.010 in"), section("28 in", "0.008 in"), fly="none")
    assert leader(ranged).finished == extent("68", "74")
    assert cuts(leader(ranged)) == cuts(leader(longest))


def test_cut_lengths_are_cut_as_written_and_finish_shorter() -> None:
    worked_out = leader(replace(TWO, lengths="cut"))
    assert cuts(worked_out) == [46, 24]
    # What knots take stays as it is: 46 x 25.4 - 155.8975 - 121.7075 and 24 x 25.4 - 121.7075
    assert [piece.finished.low_mm for piece in worked_out.pieces] == [
        Fraction("890.795"),
        Fraction("487.8925"),
    ]


def test_a_bought_piece_is_not_cut_from_a_spool_and_gives_its_side_of_a_knot() -> None:
    bought = recipe(section("5 ft", "0.024 in", bought=True), section("20 in", "0.020 in"))
    worked_out = leader(bought)
    first, second = worked_out.pieces
    assert first.at_butt.takes_mm == 0
    assert first.cut_mm == 60 * INCH
    assert first.finished.high_mm == 60 * INCH - first.at_fly.takes_mm < 60 * INCH
    assert worked_out.cut_mm == second.cut_mm


@pytest.mark.parametrize(("material", "knot"), [("furled thread", None), ("nylon", "ring joint")])
def test_a_bought_piece_brings_its_own_loop_or_ring(material: str, knot: str | None) -> None:
    furled = section("5 ft", "0.040 in", material, knot=knot, bought=material == "nylon")
    worked_out = leader(recipe(furled, section("4 ft", "3X"), section("2 ft", "5X")))
    first, second, _ = worked_out.pieces
    assert first.bought
    assert first.taken_mm == 0
    assert first.finished == extent("60", "60")
    assert second.at_butt.takes_mm > 0
    assert worked_out.butt.knot is None
    assert worked_out.joints[0].knot.comes_made


def test_a_loop_named_of_a_bought_leader_is_its_own() -> None:
    bought = section("9 ft", "0.024 in", tapers_to="0.010 in", bought=True)
    of = leader(recipe(bought, section("2 ft", "4X"), butt="perfection loop"))
    assert of.butt.made
    assert of.pieces[0].at_butt.takes_mm == 0
    assert [tie.knot.name for tie in tying_order(of)] == ["blood", "improved clinch"]


def test_loops_stand_outside_the_finished_lengths() -> None:
    looped = recipe(
        section("46 in", "0.010 in", knot="loop to loop"),
        section("24 in", "0.008 in"),
        butt="perfection loop",
        loop="1/2 in",
        fly="non-slip loop",
    )
    # The butt's 1/2 in, an inch each where two loops meet, 1/4 in at the fly.
    assert leader(looped).loops_mm == Fraction("2.75") * INCH
    assert leader(looped).finished == extent("70", "70")


def test_a_lap_of_one_s_own_must_leave_line_for_the_turns() -> None:
    short = practice('[lap]\nblood = "1 in"\n')
    with pytest.raises(Refused) as caught:
        leader(TWO, short)
    # 17.95 + 1.5875 = 19.54 mm, up to 13/16 in; 18.52 + 1.5875 = 20.11 mm, up to 13/16 in
    assert "section 1: the lap of your shop file leaves 1/2 in" in str(caught.value)
    assert str(caught.value).count("at least 13/16 in a side") == 2
    assert leader(TWO, practice('[lap]\nblood = "1 5/8 in"\n')).lap_mm(1) == Fraction("41.275")


def test_a_dropper_lengthens_the_piece_above_its_joint() -> None:
    with_dropper = leader(
        recipe(section("46 in", "0.010 in", dropper="6 in"), section("24 in", "0.008 in"))
    )
    without = leader(recipe(section("46 in", "0.010 in"), section("24 in", "0.008 in")))
    longer = [new - old for new, old in zip(cuts(with_dropper), cuts(without), strict=True)]
    assert longer == [6, 0]
    assert with_dropper.finished == without.finished


def test_the_base_leaves_out_the_tippet_and_what_hangs_below_it() -> None:
    guarded = recipe(
        section("30 in", "0.023 in"),
        section("10 in", "0.017 in"),
        section("20 in", "0.013 in"),
        section("6 in", "0.024 in"),
    )
    worked_out = leader(guarded)
    assert worked_out.tippet.place == 3
    assert worked_out.base == extent("40", "40")
    assert leader(recipe(section("9 ft", "4X"))).base == extent("0", "0")


def test_where_no_part_is_a_tippet_the_last_piece_stands_for_it() -> None:
    sighters = recipe(section("6 ft", "0X"), section("2 ft", "2X", part="sighter"))
    assert leader(sighters).tippet.place == 2


@pytest.mark.parametrize(
    ("length", "unit"),
    [
        ("30 in", "in"),
        ("5 ft", "in"),
        ("2 yd", "in"),
        ("76 cm", "cm"),
        ("2 m", "cm"),
        ("760 mm", "mm"),
        ("22 in to 1 m", "cm"),
    ],
)
def test_lengths_are_shown_in_the_unit_of_the_first_section(length: str, unit: str) -> None:
    assert leader(recipe(section(length, "0X"), section("50 cm", "4X"))).unit == unit


def test_a_shop_may_show_its_own_unit() -> None:
    assert leader(TWO, IN_CENTIMETRES).unit == "cm"


def test_what_knots_take_is_rounded_up_to_the_marks_of_the_tape() -> None:
    one = recipe(section("80 cm", "0.20 mm"), butt="none", fly="clinch")
    # 5 sqrt((0.4 + pi x 0.4)^2 + 0.2^2) = 8.343 + body 0.8 + tag 1.5875 + hand 50.8 = 61.54 mm
    assert leader(one).cut_mm == 865
    assert leader(one, practice('tape = "1 mm"')).cut_mm == 862
    # 61.54 mm = 2.423 in
    assert leader(one, IN_INCHES).cut_mm == 800 + Fraction("2.5") * INCH
    assert (
        leader(one, practice('units = "in"\ntape = "1/16 in"')).cut_mm
        == 800 + Fraction(39, 16) * INCH
    )


@pytest.mark.parametrize(("mm", "up"), [("0", 0), ("0.01", 5), ("5", 5), ("5.01", 10)])
def test_rounding_up_reaches_the_next_mark_and_stays_on_one(mm: str, up: int) -> None:
    assert round_up(Fraction(mm), Fraction(5)) == up


# ---- laws ------------------------------------------------------------------------------------


def with_lengths(written: Recipe, lengths_mm: list[Fraction], mean: LengthsMean) -> Recipe:
    """Return the recipe with other lengths, exact in inches whatever their size."""
    spans = [Length(mm, f"{mm / INCH_MM} in", "") for mm in lengths_mm]
    sections = tuple(
        replace(part, length=Span(length, length, ""))
        for part, length in zip(written.sections, spans, strict=True)
    )
    return replace(written, lengths=mean, sections=sections)


@given(recipes)
@settings(max_examples=50)
def test_finished_lengths_and_what_knots_take_add_up_to_the_cuts(written: Recipe) -> None:
    for by in (IN_INCHES, IN_CENTIMETRES):
        of = work_out(written, by)
        laps = sum(of.lap_mm(place) for place in range(1, len(of.pieces)))
        folds = of.pieces[0].at_butt.takes_mm + of.pieces[-1].at_fly.takes_mm
        droppers = sum(piece.dropper_mm for piece in of.pieces)
        cut = sum(piece.cut_mm for piece in of.pieces)
        assert cut - laps - folds - droppers == of.finished.high_mm


@given(recipes, st.data())
@settings(max_examples=50)
def test_a_shorter_finished_length_never_makes_a_longer_cut(
    written: Recipe, data: st.DataObject
) -> None:
    place = data.draw(st.integers(0, len(written.sections) - 1))
    lengths = [part.length.high.mm for part in written.sections]
    shorter = lengths.copy()
    shorter[place] *= data.draw(st.fractions(0, 1))
    before = work_out(with_lengths(written, lengths, "finished"), IN_INCHES)
    after = work_out(with_lengths(written, shorter, "finished"), IN_INCHES)
    for at, (long, short) in enumerate(zip(cuts(before), cuts(after), strict=True)):
        assert short <= long if at == place else short == long


@given(recipes, st.sampled_from([IN_INCHES, IN_CENTIMETRES]))
@settings(max_examples=50)
def test_what_each_side_takes_stands_on_a_mark(written: Recipe, by: Practice) -> None:
    worked_out = work_out(replace(written, lengths="finished"), by)
    for piece in worked_out.pieces:
        for end in (piece.at_butt, piece.at_fly):
            assert end.takes_mm % by.tape_mm(worked_out.unit) == 0
            assert 0 <= end.takes_mm - end.mm < by.tape_mm(worked_out.unit)
    assert worked_out.cut_mm == sum(p.cut_mm for p in worked_out.pieces if not p.bought)
