import pytest
from cfractions import Fraction
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.base.hand_marks import hand_mark_mm
from tagend.cards.base.units import parse_length
from tagend.cards.propose.lengths import Plan, fitted, in_halves, nearest, plan_of
from tagend.cards.propose.tape import Tape, tape_for
from tagend.cards.propose.wish import Shares
from tagend.layouts.base.faults import Refused
from tagend.layouts.base.quantities import INCH_MM
from tests.written import PRACTICE

USUAL = Shares(60, 20, 20)


def plan(total: str, sections: int, shares: Shares = USUAL) -> Plan:
    found = plan_of(sections, shares, tape_for(parse_length(total), Fraction(0), PRACTICE))
    assert found is not None
    return found


def test_three_sections_have_the_shares_themselves() -> None:
    # 108 in: 64.8, 21.6 and 21.6.
    assert plan("9 ft", 3).lengths == (65, 22, 21)
    assert plan("9 ft", 3, Shares(50, 25, 25)).lengths == (54, 27, 27)


def test_a_butt_of_two_is_60_and_40_and_a_taper_is_level() -> None:
    # 38 / 25 / 11 / 11 / 22 in print for 107 in: a 60/20/20 leader of an anglers' forum, 2001.
    assert plan("107 in", 5).lengths == (38, 26, 11, 11, 21)
    assert plan("107 in", 5).parts == ("butt", "butt", "taper", "taper", "tippet")


def test_two_sections_leave_the_share_of_the_taper_to_the_butt() -> None:
    assert plan("100 in", 2).lengths == (80, 20)


def test_no_piece_is_shorter_than_six_inches() -> None:
    # A taper of 20 % would be 12 in for three pieces; it gets 18, and the others give.
    assert min(plan("60 in", 7).lengths) == 6
    assert sum(plan("60 in", 7).lengths) == 60


def test_more_pieces_than_the_leader_has_room_for_have_no_plan() -> None:
    tape = tape_for(parse_length("60 in"), Fraction(0), PRACTICE)
    assert plan_of(10, USUAL, tape) is not None
    assert plan_of(11, USUAL, tape) is None


def test_a_spool_that_runs_out_leaves_its_rest_to_the_others_of_its_part() -> None:
    # Butt 65 in of 39 and 26; the first spool gives no more than 36, so the second gives 29.
    whole = plan("108 in", 5)
    assert whole.lengths == (39, 26, 11, 11, 21)
    assert fitted(whole, [36, 108, 108, 108, 108]) == (36, 29, 11, 11, 21)


@pytest.mark.parametrize(
    ("total", "marks", "rest_mm"),
    [
        ("9 ft", 108, 0),
        ("90 1/2 in", 90, INCH_MM / 2),
        ("90 3/16 in", 90, 3 * INCH_MM / 16),
        ("2.75 m", 275, 0),
        ("2751 mm", 275, 1),
    ],
)
def test_a_total_is_whole_inches_or_centimetres_and_one_rest(
    total: str, marks: int, rest_mm: Fraction
) -> None:
    tape = tape_for(parse_length(total), Fraction(0), PRACTICE)
    assert (tape.total, tape.rest_mm) == (marks, rest_mm)


def test_a_length_of_no_tape_is_refused() -> None:
    with pytest.raises(Refused, match="write a total such as 90 5/16 in"):
        tape_for(parse_length("90.3 in"), Fraction(0), PRACTICE)


def test_pieces_that_are_asked_for_leave_the_rest_to_share() -> None:
    assert tape_for(parse_length("9 ft"), 18 * INCH_MM, PRACTICE).total == 90
    with pytest.raises(Refused, match="leave 0 in of 9 ft"):
        tape_for(parse_length("9 ft"), 120 * INCH_MM, PRACTICE)


def test_below_a_bought_butt_taper_and_tippet_share_alike() -> None:
    tape = tape_for(parse_length("48 in"), Fraction(0), PRACTICE)
    found = plan_of(3, USUAL, tape, bought=True)
    assert found is not None
    assert (found.parts, found.lengths) == (("taper", "taper", "tippet"), (12, 12, 24))
    alone = plan_of(1, USUAL, tape, bought=True)
    assert alone is not None
    assert (alone.parts, alone.lengths) == (("tippet",), (48,))


@given(st.data())
def test_only_pieces_below_a_foot_lie_between_whole_inches(data: st.DataObject) -> None:
    total, sections = data.draw(st.integers(24, 150)), data.draw(st.integers(2, 8))
    tape = tape_for(parse_length(f"{total} in"), Fraction(0), PRACTICE)
    whole = plan_of(sections, data.draw(st.sampled_from([USUAL, Shares(30, 30, 40)])), tape)
    if whole is None:
        return
    most = [length + data.draw(st.integers(0, 40)) for length in whole.lengths]
    found = in_halves(whole, fitted(whole, most), most, tape.foot)
    assert sum(found) == total
    for length, low, high in zip(found, whole.least, most, strict=True):
        assert low <= length <= high
        assert length * INCH_MM % hand_mark_mm(length * INCH_MM, "in") == 0


def test_a_taper_of_short_pieces_is_level_to_the_half_inch() -> None:
    # 25 in of taper in two are 12 1/2, beyond a foot; 23 in are 11 1/2 each.
    short = plan("115 in", 5)
    assert short.lengths[2:4] == (12, 11)
    assert in_halves(short, short.lengths, [115] * 5, 12)[2:4] == (Fraction(23, 2),) * 2


def test_a_spool_gives_what_its_whole_marks_leave_beside_the_knots() -> None:
    # 20.2 in are 20 on the tape; knots of 4.1 in leave 15.9, of which 15 are whole inches.
    tape = Tape(unit="in", mark_mm=INCH_MM, total=108, rest_mm=Fraction(0), cut_mm=INCH_MM / 4)
    assert tape.room(INCH_MM * Fraction("20.2"), INCH_MM * Fraction("4.1")) == 15
    assert tape.room(INCH_MM, INCH_MM * 2) == -1
    assert tape.room(INCH_MM * 1000, INCH_MM) == 108
    assert tape.room(None, INCH_MM) == 108


@given(st.data())
def test_moving_one_mark_never_comes_nearer(data: st.DataObject) -> None:
    count = data.draw(st.integers(1, 5))
    least = data.draw(st.lists(st.integers(0, 9), min_size=count, max_size=count))
    most = [low + data.draw(st.integers(0, 20)) for low in least]
    total = data.draw(st.integers(sum(least), sum(most)))
    wanted = [Fraction(data.draw(st.integers(0, 90)), 3) for _ in least]
    found = nearest(wanted, least, most, total)

    def off(numbers: list[int]) -> Fraction:
        squares = ((n - w) ** 2 for n, w in zip(numbers, wanted, strict=True))
        return sum(squares, start=Fraction(0))

    assert sum(found) == total
    assert all(a <= n <= b for a, n, b in zip(least, found, most, strict=True))
    for giver in range(count):
        for taker in range(count):
            moved = list(found)
            moved[giver] -= 1
            moved[taker] += 1
            if moved[giver] >= least[giver] and moved[taker] <= most[taker]:
                assert off(moved) >= off(list(found))
