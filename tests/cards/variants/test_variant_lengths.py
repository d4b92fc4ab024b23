from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

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


def mark_mm(leader: Recipe) -> Fraction:
    return PRACTICE.tape_mm(work_out(leader, PRACTICE).unit)


# ---- the wind leader -------------------------------------------------------------------------


def test_in_hard_wind_the_butt_is_doubled_and_the_rest_goes_down_in_steps_of_a_foot() -> None:
    # Common practice, no source: twice 3 ft is 6 ft, and 9 ft - 6 ft are three steps of 1 ft.
    wind = with_butt(taper("36 in", "24 in", "24 in", "24 in"), parse_length("6 ft"), PRACTICE)
    assert spelled(wind) == ["6 ft", "12 in", "12 in", "12 in"]


def test_short_sections_stay_as_they_are() -> None:
    # 72 - 46 = 26 less for the rest of 86: 60 = 14 + 14 + 10 + 8 + 14.
    before = taper("46 in", "24 in", "14 in", "10 in", "8 in", "30 in", total="11 ft")
    wind = with_butt(before, parse_length("72 in"), PRACTICE)
    assert spelled(wind) == ["72 in", "14 in", "14 in", "10 in", "8 in", "14 in"]
    assert wind.total == before.total


def test_a_butt_of_two_sections_keeps_its_proportion() -> None:
    before = recipe(
        section("30 in", "0.024 in", part="butt"),
        section("20 in", "0.021 in", part="butt"),
        section("20 in", "0.018 in"),
        section("30 in", "0.015 in"),
    )
    # 50 becomes 60: 36 + 24. The rest loses 10: 20 + 20.
    assert spelled(with_butt(before, parse_length("5 ft"), PRACTICE)) == [
        "36 in",
        "24 in",
        "20 in",
        "20 in",
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
    before = taper("36 in", "12 in", "18 to 24 in")
    # 24 is cut to 24 - 12 = 12, and 12/24 of 18 is 9.
    assert spelled(with_butt(before, parse_length("48 in"), PRACTICE)) == [
        "48 in",
        "12 in",
        "9 to 12 in",
    ]


@given(plausible, butts)
@settings(max_examples=200)
def test_a_longer_butt_keeps_the_total(before: Recipe, butt: Length) -> None:
    try:
        wind = with_butt(before, butt, PRACTICE)
    except Refused as refusal:
        (fault,) = refusal.faults
        assert fault.instead in ("write a longer butt", "write a shorter butt")
        return
    mark = mark_mm(before)
    assert wind.sections[0].length.high == butt
    assert abs(longest(wind) - longest(before)) <= mark / 2
    for old, new in zip(before.sections[1:], wind.sections[1:], strict=True):
        assert new.length.high.mm < old.length.high.mm + mark
        assert new.length == old.length or new.length.high.mm % mark == 0


@pytest.mark.parametrize(
    ("butt", "fault"),
    [
        ("36 in", "it is 36 in already; write a longer butt"),
        ("9 ft", "a butt of 9 ft leaves nothing of 108 in; write a shorter butt"),
        ("107 1/4 in", "section 2 has 1/4 in between its knots; write a shorter butt"),
        ("107 3/4 in", "nothing is left for section 3; write a shorter butt"),
    ],
)
def test_a_butt_that_cannot_be_is_refused(butt: str, fault: str) -> None:
    # Ten turns of 0.021 in make a knot of 0.21 in, and another is to go beside it.
    before = recipe(
        section("36 in", "0.024 in", knot="albright"),
        section("24 in", "0.021 in", knot="blood"),
        section("24 in", "0.018 in", knot="blood"),
        section("24 in", "0.015 in"),
    )
    with pytest.raises(Refused) as refusal:
        with_butt(before, parse_length(butt), PRACTICE)
    assert str(refusal.value) == fault


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
    # 120/108 of 36 and 24 are 40 and 26 2/3; of 80 in three, two have 26 3/4 and one 26 1/2.
    longer = with_total(taper("36 in", "24 in", "24 in", "24 in"), parse_length("10 ft"), PRACTICE)
    assert spelled(longer) == ["40 in", "26 3/4 in", "26 3/4 in", "26 1/2 in"]
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
    assert abs(longest(longer) - parse_length("9 ft").mm) <= mark_mm(before) / 2
    assert all(section.length.high.mm % mark_mm(before) == 0 for section in longer.sections)


def test_metric_leaders_are_scaled_to_the_marks_of_a_metric_tape() -> None:
    before = recipe(section("80 cm", "0.5 mm"), section("50 cm", "0.3 mm"))
    # 200/130 of 80 is 123.08, to the nearest 5 mm with the rest 123 and 77.
    assert spelled(with_total(before, parse_length("2 m"), PRACTICE)) == ["123 cm", "77 cm"]


def test_a_person_s_unit_does_not_change_the_recipe_s() -> None:
    shown = practice('units = "cm"')
    longer = with_total(taper("36 in", "36 in"), parse_length("8 ft"), shown)
    assert spelled(longer) == ["48 in", "48 in"]


def test_marks_that_cannot_be_spelled_are_not_used() -> None:
    finer = practice('tape = "3/32 in"')
    longer = with_total(taper("30 in", "30 in", "30 in"), parse_length("100 in"), finer)
    # Of the tape's 3/32 in the next that is spelled in sixteenths is 1/8 in.
    assert spelled(longer) == ["33 3/8 in", "33 3/8 in", "33 1/4 in"]


@given(plausible, totals)
@settings(max_examples=200)
def test_a_scaled_leader_makes_its_total(before: Recipe, total: Length) -> None:
    try:
        scaled = with_total(before, total, PRACTICE)
    except Refused as refusal:
        (fault,) = refusal.faults
        assert fault.instead == "write a longer total"
        return
    mark = mark_mm(before)
    assert abs(longest(scaled) - total.mm) <= mark / 2
    for old, new in zip(before.sections, scaled.sections, strict=True):
        assert new.length == old.length or new.length.high.mm % mark == 0


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
        ("12 1/16 in", "nothing is left for section 1"),
        ("12 in", "12 in leaves nothing to cut to length"),
    ],
)
def test_a_total_that_is_too_short_is_refused(total: str, fault: str) -> None:
    guard = section("12 in", "0.030 in", "fluorocarbon", part="bite guard")
    before = recipe(section("40 in", "0.024 in", knot="albright"), guard)
    with pytest.raises(Refused) as refusal:
        with_total(before, parse_length(total), PRACTICE)
    assert str(refusal.value) == f"{fault}; write a longer total"
