import pytest
from cfractions import Fraction
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from tagend.cards.base.hand_marks import hand_mark_mm
from tagend.cards.base.shown_lengths import FINEST_MM
from tagend.cards.base.units import Length, parse_length
from tagend.cards.leader.leader import work_out
from tagend.cards.recipe.recipe import LengthsMean, Recipe, Section
from tagend.cards.variants.variant_lengths import with_butt, with_total
from tagend.layouts.base.faults import Refused
from tests.plausible import plausible_recipe
from tests.strategies import lengths
from tests.written import PRACTICE, practice, recipe, section

plausible = st.randoms(use_true_random=False).map(plausible_recipe)
butts = st.integers(20, 90).map(lambda inches: parse_length(f"{inches} in"))
totals = st.integers(4, 40).map(lambda half_feet: parse_length(f"{half_feet} 1/2 ft"))


def spelled(varied: Recipe) -> list[str]:
    return [section.length.plain for section in varied.sections]


def taper(*lengths: str, mean: LengthsMean = "finished", total: str | None = None) -> Recipe:
    """Return a leader of as many sections, the butt first and the tippet last."""
    thou = range(24, 0, -3)
    return recipe(
        *(section(text, f"{size} thou") for text, size in zip(lengths, thou, strict=False)),
        lengths=mean,
        total=total,
    )


def longest(leader: Recipe) -> Fraction:
    return work_out(leader, PRACTICE).finished.high_mm


def finest_mm(leader: Recipe) -> Fraction:
    return FINEST_MM[work_out(leader, PRACTICE).unit]


def beside_marks(before: Recipe, after: Recipe) -> list[Fraction]:
    """The lengths that are new and lie on no mark that hands use."""
    unit = work_out(before, PRACTICE).unit
    new = {section.length.high.mm for section in after.sections}
    new -= {section.length.high.mm for section in before.sections}
    return [mm for mm in new if mm % hand_mark_mm(mm, unit)]


# ---- the wind leader -------------------------------------------------------------------------


def test_in_hard_wind_the_butt_is_doubled_and_the_rest_goes_down_in_steps_of_a_foot() -> None:
    # Common practice, no source: twice 3 ft is 6 ft, and 9 ft - 6 ft are three steps of 1 ft.
    before = taper("36 in", "24 in", "24 in", "12 in")
    wind = with_butt(before, parse_length("60 in"), PRACTICE)
    assert spelled(wind) == ["60 in", "12 in", "12 in", "12 in"]


def test_where_there_is_no_taper_the_tippet_gives() -> None:
    wind = with_butt(taper("36 in", "36 in"), parse_length("48 in"), PRACTICE)
    assert spelled(wind) == ["48 in", "24 in"]


def test_what_a_told_tippet_leaves_goes_to_the_taper() -> None:
    # 36 + 24 + 24 + 12 are 12 less than before: 36 - 12 go off 48.
    before, freed = taper("36 in", "24 in", "24 in", "12 in"), parse_length("1 ft").mm
    wind = with_butt(before, parse_length("6 ft"), PRACTICE, {4}, freed)
    assert spelled(wind) == ["6 ft", "12 in", "12 in", "12 in"]
    less = with_butt(before, parse_length("42 in"), PRACTICE, {4}, freed)
    assert spelled(less) == ["42 in", "27 in", "27 in", "12 in"]


def test_short_sections_stay_as_they_are() -> None:
    # 60 - 46 = 14 less for the taper of 56: 42 = 12 + 12 + 10 + 8.
    before = taper("46 in", "24 in", "14 in", "10 in", "8 in", "30 in", total="11 ft")
    wind = with_butt(before, parse_length("60 in"), PRACTICE)
    assert spelled(wind) == ["60 in", "12 in", "12 in", "10 in", "8 in", "30 in"]
    assert wind.total == before.total


def test_a_butt_of_two_sections_keeps_its_proportion() -> None:
    before = recipe(
        section("30 in", "0.024 in", part="butt"),
        section("20 in", "0.021 in", part="butt"),
        section("20 in", "0.018 in"),
        section("30 in", "0.015 in"),
    )
    # 50 becomes 60: 36 + 24. The taper loses 10.
    assert spelled(with_butt(before, parse_length("5 ft"), PRACTICE)) == [
        "36 in",
        "24 in",
        "10 in",
        "30 in",
    ]


def test_a_bite_guard_and_what_is_bought_keep_their_length() -> None:
    before = recipe(
        section("30 in", "0.024 in"),
        section("40 in", "0.021 in", bought=True),
        section("40 in", "0.015 in", part="tippet"),
        section("18 in", "0.030 in", "fluorocarbon", part="bite guard"),
    )
    wind = with_butt(before, parse_length("50 in"), PRACTICE)
    assert spelled(wind) == ["50 in", "40 in", "20 in", "18 in"]


def test_a_range_keeps_its_proportion() -> None:
    before = taper("36 in", "12 in", "18 to 24 in", "20 in")
    # 24 is cut to 24 - 12 = 12, and 12/24 of 18 is 9.
    assert spelled(with_butt(before, parse_length("48 in"), PRACTICE)) == [
        "48 in",
        "12 in",
        "9 to 12 in",
        "20 in",
    ]


@given(plausible, butts)
@settings(max_examples=200, deadline=None)
def test_a_longer_butt_keeps_the_total_and_the_tippet(before: Recipe, butt: Length) -> None:
    try:
        wind = with_butt(before, butt, PRACTICE)
    except Refused as refusal:
        (fault,) = refusal.faults
        assert fault.instead.startswith(("write a longer butt", "write a shorter butt"))
        return
    assert wind.sections[0].length.high == butt
    assert abs(longest(wind) - longest(before)) <= finest_mm(before)
    worked_out = work_out(before, PRACTICE)
    mark = hand_mark_mm(longest(before), worked_out.unit)
    for piece, new in zip(worked_out.pieces[1:], wind.sections[1:], strict=True):
        assert new.length.high.mm < piece.section.length.high.mm + mark
        if any(other.part == "taper" for other in worked_out.pieces):
            assert piece.part != "tippet" or new.length == piece.section.length
    assert len(beside_marks(before, replace(wind, sections=wind.sections[1:]))) <= 1


@pytest.mark.parametrize(
    ("butt", "fault"),
    [
        ("36 in", "it is 36 in already; write a longer butt"),
        ("84 in", "a butt of 84 in leaves nothing of 84 in; write a shorter butt"),
        ("83 in", "section 2 has 1/2 in between its knots; write a shorter butt"),
        ("83 1/2 in", "nothing is left for section 3; write a shorter butt"),
    ],
)
def test_a_butt_that_cannot_be_is_refused(butt: str, fault: str) -> None:
    # Ten turns of 0.021 in make a knot of 0.21 in, and another is to go beside it.
    before = recipe(
        section("36 in", "0.024 in", knot="albright"),
        section("24 in", "0.100 in", knot="blood"),
        section("24 in", "0.018 in", knot="blood"),
        section("24 in", "0.015 in"),
    )
    with pytest.raises(Refused) as refusal:
        with_butt(before, parse_length(butt), PRACTICE)
    assert str(refusal.value).startswith(fault)


@pytest.mark.parametrize(
    ("sections", "fault"),
    [
        ([section("9 ft", "4X")], "this leader has no butt"),
        (
            [section("5 ft", "0.020 in", bought=True), section("20 in", "4X")],
            "this leader has no butt",
        ),
        (
            [section("5 ft", "0.020 in"), section("20 in", "4X", bought=True)],
            "there is nothing below the butt",
        ),
    ],
)
def test_a_leader_without_butt_or_taper_has_no_longer_butt(
    sections: list[Section], fault: str
) -> None:
    with pytest.raises(Refused) as refusal:
        with_butt(recipe(*sections), parse_length("6 ft"), PRACTICE)
    assert str(refusal.value) == f"{fault} to cut to length; leave its butt as it is"


# ---- another total ---------------------------------------------------------------------------


def test_a_leader_is_scaled_to_a_total_which_it_then_states() -> None:
    # 120/108 of 36 and 24 are 40 and 26 2/3; of 80 in three, two have 27 and one 26.
    longer = with_total(taper("36 in", "24 in", "24 in", "24 in"), parse_length("10 ft"), PRACTICE)
    assert spelled(longer) == ["40 in", "27 in", "27 in", "26 in"]
    assert longer.total == parse_length("10 ft")


def test_a_bite_guard_is_not_scaled() -> None:
    guard = section("12 in", "0.030 in", "fluorocarbon", part="bite guard")
    before = recipe(section("40 in", "0.020 in"), section("20 in", "0.015 in"), guard)
    assert spelled(with_total(before, parse_length("102 in"), PRACTICE)) == [
        "60 in",
        "30 in",
        "12 in",
    ]


def test_the_total_is_finished_where_the_lengths_are_as_cut() -> None:
    before = taper("40 in", "20 in", "20 in", mean="cut")
    longer = with_total(before, parse_length("9 ft"), PRACTICE)
    assert abs(longest(longer) - parse_length("9 ft").mm) <= finest_mm(before) / 2
    assert len(beside_marks(before, longer)) <= 1


def test_metric_leaders_are_scaled_to_whole_centimetres() -> None:
    before = recipe(section("80 cm", "0.5 mm"), section("50 cm", "0.3 mm"))
    # 200/130 of 80 is 123.08, and the rest 76.92.
    assert spelled(with_total(before, parse_length("2 m"), PRACTICE)) == ["123 cm", "77 cm"]


def test_a_person_s_unit_does_not_change_the_recipe_s() -> None:
    shown = practice('units = "cm"')
    longer = with_total(taper("36 in", "36 in"), parse_length("8 ft"), shown)
    assert spelled(longer) == ["48 in", "48 in"]


def test_a_total_beside_the_marks_is_kept_and_one_section_has_what_is_over() -> None:
    longer = with_total(taper("40 in", "20 in", "9 in"), parse_length("90 1/4 in"), PRACTICE)
    # 90 1/4 / 69 of them are 52.3, 26.2 and 11.8: 52 + 26 + 11 1/2, and 3/4 in is left, of which
    # the last takes 1/2.
    assert spelled(longer) == ["52 1/4 in", "26 in", "12 in"]


def test_a_section_whose_length_is_told_is_not_scaled() -> None:
    longer = with_total(taper("40 in", "20 in", "24 in"), parse_length("9 ft"), PRACTICE, {3})
    assert spelled(longer) == ["56 in", "28 in", "24 in"]


@given(plausible, totals)
@settings(max_examples=200, deadline=None)
def test_a_scaled_leader_makes_its_total(before: Recipe, total: Length) -> None:
    try:
        scaled = with_total(before, total, PRACTICE)
    except Refused as refusal:
        (fault,) = refusal.faults
        assert fault.instead == "write a longer total"
        return
    assert abs(longest(scaled) - total.mm) <= finest_mm(before) / 2
    assert len(beside_marks(before, scaled)) <= 1


@given(plausible, lengths)
def test_a_leader_scaled_twice_is_as_long_as_one_scaled_once(before: Recipe, total: Length) -> None:
    try:
        once = with_total(before, total, PRACTICE)
    except Refused:
        return
    assert spelled(with_total(once, total, PRACTICE)) == spelled(once)


@pytest.mark.parametrize(
    ("total", "fault"),
    [
        ("12 1/4 in", "section 1 has 1/4 in between its knots"),
        ("12 in", "12 in leaves nothing to cut to length"),
    ],
)
def test_a_total_that_is_too_short_is_refused(total: str, fault: str) -> None:
    guard = section("12 in", "0.030 in", "fluorocarbon", part="bite guard")
    before = recipe(section("40 in", "0.024 in", knot="albright"), guard)
    with pytest.raises(Refused) as refusal:
        with_total(before, parse_length(total), PRACTICE)
    assert str(refusal.value) == f"{fault}; write a longer total"
