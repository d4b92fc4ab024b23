"""What the trade says of knots and materials, each with its source."""

import pytest

from tagend.cards.base.units import parse_diameter, parse_length
from tagend.cards.practice.knot_file import load_knots
from tagend.cards.practice.knots import Side, joint_turns
from tagend.cards.practice.materials import load_materials
from tagend.cards.words.cautions import cautions
from tagend.cards.words.language import ENGLISH

KNOTS = load_knots()


def count(knot: str, strand: str, other: str, side: Side) -> int:
    thin, thick = sorted((parse_diameter(strand).mm, parse_diameter(other).mm))
    return joint_turns(KNOTS.find(knot), thick, thin).of(side)


# A working ladder for equal strands: 0.020 in and up 3 or 4; 0.013 to 0.019 five; 0.009 to 0.012
# five or six; 0.008 and under six or seven. Common practice, no source.
@pytest.mark.parametrize(
    ("sizes", "usual"),
    [
        (("0.030 in", "0.025 in", "0.020 in"), {3, 4}),
        (("0.019 in", "0.015 in", "0.013 in"), {5}),
        (("0.012 in", "0.011 in", "0.009 in"), {5, 6}),
        (("0.008 in", "0.006 in", "0.003 in"), {6, 7}),
    ],
)
def test_blood_knot_turns_keep_to_the_working_ladder(
    sizes: tuple[str, ...], usual: set[int]
) -> None:
    for size in sizes:
        assert count("blood", size, size, "heavy") in usual
        assert count("blood", size, size, "light") in usual


def test_a_step_of_three_or_four_thousandths_ties_five_and_seven() -> None:
    # Five thick, seven thin across a big step: common practice in print.
    for thick, thin in (("0.016 in", "0.013 in"), ("0.017 in", "0.013 in")):
        assert count("blood", thick, thin, "heavy") == 5
        assert count("blood", thin, thick, "light") == 7


def test_the_thinner_strand_never_makes_fewer_turns() -> None:
    # J. B. Healy, The Pocket Guide to Fishing Knots, p. 37.
    sizes = [f"0.0{thou:02} in" for thou in range(30, 2, -1)]
    for thick, thin in zip(sizes, sizes[2:], strict=False):
        assert count("blood", thin, thick, "light") >= count("blood", thick, thin, "heavy")


def test_thick_line_makes_fewer_turns() -> None:
    # R. Penn, The Everything Knots Book, p. 208: thick line does not draw up otherwise.
    for knot in KNOTS:
        counts = [rung.light for rung in knot.turns]
        assert counts == sorted(counts)


def test_doubled_blood_ties_three_heavy_and_five_light_turns() -> None:
    # D. E. Avery, The New Encyclopedia of Knots, p. 117.
    assert count("doubled blood", "0.024 in", "0.013 in", "heavy") == 3
    assert count("doubled blood", "0.013 in", "0.024 in", "light") == 5


def test_improved_clinch_ties_five_turns_and_the_heavy_plain_one_three_and_a_half() -> None:
    # D. E. Avery, The New Encyclopedia of Knots, p. 117. The half is the way into the small loop.
    assert count("improved clinch", "0.008 in", "0.008 in", "light") == 5
    assert count("clinch", "0.030 in", "0.030 in", "light") == 3
    assert "half on" in " ".join(KNOTS.find("clinch").steps)


def test_a_bimini_twist_has_twenty_turns_or_more() -> None:
    # J. B. Healy, The Pocket Guide to Fishing Knots, p. 54.
    assert count("bimini twist", "0.013 in", "0.013 in", "light") >= 20


def test_two_passes_are_the_double_and_three_the_triple() -> None:
    # By name; print counts the passes in more than one way. Common practice, no source.
    assert count("double surgeon's", "0.009 in", "0.009 in", "light") == 2
    assert count("triple surgeon's", "0.009 in", "0.009 in", "light") == 3
    assert count("surgeon's loop", "0.021 in", "0.021 in", "light") == 2


def test_slim_beauty_goes_four_out_and_three_back() -> None:
    # Common practice in print.
    steps = " ".join(KNOTS.find("slim beauty").steps)
    assert "4 turns away along" in steps
    assert "3 turns back" in steps
    assert count("slim beauty", "0.013 in", "0.024 in", "light") == 4 + 3


def test_nylon_and_fluorocarbon_meet_in_a_triple_surgeons_or_a_double_uni() -> None:
    # Common practice, no source; a blood knot only with hard nylon of like size.
    assert KNOTS.find("triple surgeon's").mixed == "yes"
    assert KNOTS.find("uni to uni").mixed == "yes"
    assert KNOTS.find("blood").mixed == "hard nylon"
    assert load_materials().find("hard nylon").hard
    assert not load_materials().find("nylon").hard


def test_a_perfection_loop_sits_at_a_tapered_butt_and_a_surgeons_loop_anywhere() -> None:
    # Common practice, no source.
    assert KNOTS.find("perfection loop").tapered_only
    assert not KNOTS.find("surgeon's loop").tapered_only


def test_surgeons_knots_leave_the_line_at_an_angle_and_a_blood_knot_does_not() -> None:
    # J. B. Healy, The Pocket Guide to Fishing Knots, p. 37.
    assert KNOTS.find("blood").straight == "yes"
    assert {KNOTS.find(name).straight for name in ("double surgeon's", "triple surgeon's")} == {
        "no"
    }


def test_one_side_of_a_surgeons_knot_is_free_to_pass_whole() -> None:
    # From the way they are tied; so a leader is built from the butt down.
    passing = {knot.name for knot in KNOTS if knot.whole_side_passes and "joint" in knot.places}
    assert {"double surgeon's", "triple surgeon's", "twisted-loop joint"} <= passing
    assert not passing & {"blood", "uni to uni", "albright", "ring joint"}


def test_big_steps_have_the_doubled_blood_the_albright_and_the_slim_beauty() -> None:
    # Common practice, no source.
    for name in ("doubled blood", "albright", "slim beauty"):
        assert KNOTS.find(name).shock
        assert KNOTS.find(name).largest_ratio is None


def test_a_half_blood_is_a_clinch_and_its_improved_form_no_blood_knot() -> None:
    # British books: common practice in print.
    assert KNOTS.find("half blood").name == "clinch"
    assert KNOTS.find("improved half blood").name == "improved clinch"


def test_a_fly_loop_is_the_printed_quarter_inch() -> None:
    # A finished perfection loop is printed as 1/4 to 3/8 in; the larger butt loop has no source.
    assert KNOTS.fly_loop_mm == parse_length("1/4 in").mm
    assert KNOTS.loop_mm == parse_length("3/4 in").mm


def test_the_haywire_twist_is_for_wire_and_its_tag_is_broken() -> None:
    # Common practice in print.
    haywire = KNOTS.find("haywire twist")
    assert haywire.on == ("wire",)
    assert "never cut" in (haywire.caution or "")
    assert 3.5 <= count("haywire twist", "0.018 in", "0.018 in", "light") <= 8


def test_fluorocarbon_sinks_five_to_six_times_as_hard_as_nylon() -> None:
    # Nylon 6,6 is 1.14 g/cm3 and PVDF 1.78, fresh water 1.00: 0.78 / 0.14 = 5.6 (textbook values).
    nylon, fluoro = (load_materials().find(name).density for name in ("nylon", "fluorocarbon"))
    assert nylon is not None
    assert fluoro is not None
    assert 5.5 < (fluoro[0] - 1) / (nylon[0] - 1) < 5.6


def test_a_hook_in_an_eye_is_neither_pulled_nor_pressed() -> None:
    # Healthwise, First Aid for a Fish Hook Stuck in an Eye, 2023.
    first = cautions(ENGLISH, "fly")[0]
    for word in ("do not pull", "do not press", "Shield", "Emergency care"):
        assert word in first.long
    assert "don't pull, don't press" in first.short
