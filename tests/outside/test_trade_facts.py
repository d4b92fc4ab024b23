"""What the trade holds true of leaders. Each is common practice, no source, unless it names one."""

import pytest
from cfractions import Fraction

from tagend.cards.base.units import parse_length
from tagend.cards.leader.audit import audit
from tagend.cards.recipe.recipe import Recipe, Section
from tests.written import PRACTICE, leader, recipe, section

INCH = Fraction("25.4")


def heeded(written: Recipe) -> list[tuple[str, str, int | None]]:
    return [(f.rule, f.severity, f.section) for f in audit(leader(written), PRACTICE)]


def taper(*diameters: str, material: str = "hard nylon") -> Recipe:
    return recipe(*(section("20 in", diameter, material) for diameter in diameters))


def test_a_salt_taper_in_steps_of_three_thousandths_passes() -> None:
    # Common practice, no source.
    salt = taper("0.023 in", "0.020 in", "0.017 in", "0.014 in", "0.011 in")
    assert heeded(salt) == []
    assert [joint.knot.name for joint in leader(salt).joints] == ["blood"] * 4


def test_a_trout_taper_in_steps_of_two_thousandths_passes_down_to_5x() -> None:
    # Steps of .002: "Repairing leaders", newsletter, May 2005. 9 / 7 = 1.29 and 7 / 6 = 1.17.
    trout = taper(
        "0.021 in", "0.019 in", "0.017 in", "0.015 in", "0.013 in", "0.011 in", "2X", "4X"
    )
    assert heeded(trout) == []


def test_too_big_a_drop_is_warned_of_and_no_error() -> None:
    # 0.020 straight to 0.013 in is printed in a well-known design (theflyfishingforum.com, post
    # 532363), so custom advises against it and no more.
    severities = {severity for _, severity, _ in heeded(taper("0.020 in", "0.013 in"))}
    assert severities == {"warning"}


def test_a_rise_is_warned_of() -> None:
    # Common practice, no source.
    assert ("rise", "warning", 2) in heeded(taper("0.013 in", "0.015 in", "0.011 in"))


def nylon_to_fluorocarbon(knot: str | None = None) -> Recipe:
    upper = section("30 in", "0.013 in", "hard nylon", "8 lb", knot=knot)
    return recipe(upper, section("30 in", "0.010 in", "fluorocarbon", "8.5 lb"))


def test_from_nylon_to_fluorocarbon_strength_may_rise_while_the_diameter_falls() -> None:
    # Common practice, no source.
    assert heeded(nylon_to_fluorocarbon()) == [("weak section", "note", 1)]


@pytest.mark.parametrize("nylon", ["nylon", "hard nylon", "copolymer"])
def test_from_nylon_to_fluorocarbon_no_blood_knot_is_chosen(nylon: str) -> None:
    # Common practice, no source.
    for upper, lower in ((nylon, "fluorocarbon"), ("fluorocarbon", nylon)):
        written = recipe(section("30 in", "0.013 in", upper), section("30 in", "0.012 in", lower))
        assert leader(written).joints[0].knot.name == "triple surgeon's"


def test_a_blood_knot_from_nylon_to_fluorocarbon_is_warned_of() -> None:
    # Common practice, no source.
    assert ("unfit knot", "warning", 1) in heeded(nylon_to_fluorocarbon("blood"))


def test_a_perfection_loop_is_fine_on_a_tapered_butt_and_not_on_a_level_leader() -> None:
    # Common practice, no source.
    def looped(*sections: Section) -> list[str]:
        written = recipe(*sections, butt="perfection loop")
        return [rule for rule, _, _ in heeded(written)]

    assert "unfit loop" not in looped(section("6 ft", "0X"), section("3 ft", "2X"))
    assert "unfit loop" in looped(section("9 ft", "0X"))


def test_a_butt_loop_takes_extra_line() -> None:
    # Common practice, no source; it takes twice the loop and its knot.
    level = section("9 ft", "0X")
    bare, small, large = (
        leader(recipe(level, butt=end, loop=loop)).pieces[0].at_butt.mm
        for end, loop in (
            ("none", None),
            ("perfection loop", "1/2 in"),
            ("perfection loop", "1 in"),
        )
    )
    assert bare == 0
    assert small > 2 * parse_length("1/2 in").mm
    assert large - small == 2 * parse_length("1/2 in").mm


def test_a_sixteenth_of_an_inch_of_tag_is_left_on_every_knot() -> None:
    # Common practice, no source.
    sixteenth = INCH / 16
    for knot in PRACTICE.knots:
        name = knot.name
        if "joint" in knot.places:
            upper = leader(recipe(section("3 ft", "0X", knot=name), section("3 ft", "2X"))).pieces
            ends = [upper[0].at_fly, upper[1].at_butt]
        elif "fly" in knot.places:
            ends = [leader(recipe(section("9 ft", "0X"), fly=name)).pieces[0].at_fly]
        else:
            ends = [leader(recipe(section("9 ft", "0X"), butt=name)).pieces[0].at_butt]
        for end in ends:
            assert [share.mm for share in end.shares if share.into == "tag"] == [sixteenth], name


@pytest.mark.parametrize("thou", range(5, 31))
def test_a_side_of_a_blood_knot_takes_what_half_a_printed_overlap_does(thou: int) -> None:
    # Overlaps of 5 to 12 in are printed (titelines.net; Budworth & Dalton, The Little Book of
    # Incredibly Useful Knots, p. 48), so 2 1/2 to 6 in a side; 2 in finer than the books think of.
    written = recipe(section("3 ft", f"{thou} thou", knot="blood"), section("3 ft", f"{thou} thou"))
    assert Fraction("2.3") * INCH < leader(written).pieces[0].at_fly.mm < 6 * INCH


@pytest.mark.parametrize("thou", range(9, 31))
def test_a_triple_surgeons_uses_more_line_than_a_blood_knot(thou: int) -> None:
    # J. B. Healy, The Pocket Guide to Fishing Knots, p. 37. Below 0.009 in our blood knot has seven
    # turns, and the two come out alike to a millimetre and a half.
    def taken(knot: str) -> Fraction:
        strand = f"{thou} thou"
        written = recipe(section("3 ft", strand, knot=knot), section("3 ft", strand))
        return leader(written).pieces[0].at_fly.mm

    assert taken("triple surgeon's") > taken("blood")


def test_a_dropper_needs_line_beyond_its_tag_and_the_spacing() -> None:
    # American Angler, November 2013, as quoted: 24 in apart and a tag of 6 make a piece of 30 in,
    # which leaves nothing for the knots.
    written = recipe(section("24 in", "3X", dropper="6 in"), section("24 in", "4X"), butt="none")
    assert leader(written).pieces[0].cut_mm > 30 * INCH + 2 * INCH


@pytest.mark.parametrize("share", ["2/3", "3/5", "3/4"])
def test_a_butt_near_two_thirds_of_the_lines_tip_is_usual(share: str) -> None:
    # 2/3: theflyfishingforum.com, January 2001; 60 %: FishUSA forum; 3/4 on long leaders.
    thou = Fraction(share) * 36
    written = recipe(section("9 ft", f"{float(thou):.1f} thou"), line_tip="0.036 in")
    assert "butt and line" not in [rule for rule, _, _ in heeded(written)]
