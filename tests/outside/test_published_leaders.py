"""Nineteen leader formulas from print, through the worksheet and the audit.

Lengths, diameters and totals are facts; the source stands beside each. Where print gives pounds
alone, a diameter is assumed from 700 MPa, a middling nylon (common practice, no source), and only
sums and rises are held against it. Where it gives neither, all of it is 4X.
"""

import math
from dataclasses import dataclass, replace
from fractions import Fraction

import pytest

from tagend.cards.base.units import parse_diameter, parse_strength
from tagend.cards.leader.audit import audit
from tagend.cards.leader.leader import Extent
from tagend.cards.recipe.recipe import Recipe
from tagend.layouts.base.quantities import INCH_MM
from tests.written import PRACTICE, leader, recipe, section

ASSUMED_MPA = 700
NEWTONS_PER_KG = 9.80665


@dataclass(frozen=True, slots=True)
class Published:
    number: str
    lengths: tuple[str, ...]
    strands: tuple[str, ...]  # diameters, or pounds, or nothing
    inches: tuple[str, str]  # the sum, shortest and longest, by hand
    stated: str | None = None
    beyond: tuple[int, ...] = ()  # sections whose step is more than the customary 0.004 in


def lengths(inches: str) -> tuple[str, ...]:
    return tuple(f"{length} in" for length in inches.split(" / "))


def pounds(strengths: str) -> tuple[str, ...]:
    return tuple(f"{strength} lb" for strength in strengths.split(" / "))


def thou(diameters: str) -> tuple[str, ...]:
    return tuple(f"0{diameter} in" for diameter in diameters.split(" / "))


LEADERS = (
    # T. Rowland, podcast notes, 30 October 2018: each half the last, the last doubled.
    Published(
        "F1", lengths("48 / 24 / 12 / 24"), pounds("50 / 30 / 25 / 15"), ("108", "108"), "9 ft"
    ),
    # texaskayakfisherman.com, forum.
    Published(
        "F2", lengths("60 / 12 / 12 / 12 / 24"), pounds("50 / 40 / 30 / 20 / 15"), ("120", "120")
    ),
    # S. Thomas, saltyshores.com, 2009: each half the last, 15 ft 3 in.
    Published(
        "F3", lengths("72 / 36 / 18 / 9 / 48"), pounds("40 / 30 / 20 / 16 / 12"), ("183", "183")
    ),
    # headhuntersflyshop blog, 5 April 2009; its permanent butt is not counted.
    Published(
        "F4",
        lengths("10 / 20 / 20 / 20 / 12 / 10 / 28"),
        thou(".017 / .015 / .013 / .011 / .009 / .007 / .006"),
        ("120", "120"),
        "10 ft",
    ),
    # G. Harvey, "New Leader Formula", Fly Fisherman: the base, without its tippet.
    Published(
        "F5",
        lengths("18 to 19 / 18 to 19 / 18 to 19 / 18 to 19"),
        thou(".015 / .013 / .011 / .009"),
        ("72", "76"),
    ),
    # theflyfishingforum.com, post 532363; a step of 7 thousandths. The tippet's size is left open
    # in print, and 2X is one that it names.
    Published(
        "F6",
        lengths("48 / 12 / 48 / 24 to 36"),
        thou(".020 / .013 / .010 / .009"),
        ("132", "144"),
        beyond=(2,),
    ),
    # Sports Illustrated, outdoors, June 2025: the base.
    Published("F7", lengths("18 / 18 / 18 / 18"), pounds("12 / 10 / 8 / 6"), ("72", "72"), "6 ft"),
    # theflyfishingforum.com, 25 January 2001: an inch short of what it says.
    Published(
        "F8",
        lengths("38 / 25 / 11 / 11 / 22"),
        pounds("30 / 25 / 20 / 15 / 12"),
        ("107", "107"),
        "9 ft",
    ),
    # lemoucheux.ca: sold as a 5X leader, and its last strand is 4X by the rule.
    Published(
        "F9",
        lengths("20 / 20 / 20 / 12 / 18 / 22 to 28"),
        thou(".015 / .013 / .012 / .009 / .008 / .007"),
        ("112", "118"),
        "9.5 ft",
    ),
    # The same; as a 6X leader, and its last strand is 5X.
    Published(
        "F10",
        lengths("20 / 20 / 16 / 12 / 12 / 12 / 22 to 28"),
        thou(".015 / .013 / .011 / .009 / .008 / .007 / .006"),
        ("114", "120"),
        "9.5 ft",
    ),
    # paflyfish.com, thread 82652.
    Published(
        "F11",
        lengths("18 / 36 / 24 / 30"),
        thou(".017 / .015 / .012 / .009"),
        ("108", "108"),
        "9 ft",
    ),
    # Confluenze no. 8, p. 70; up from 0.30 to a shock tippet of 0.70 mm.
    Published(
        "F12",
        ("500 mm", "400 mm", "300 mm", "400 mm"),
        ("0.50 mm", "0.40 mm", "0.30 mm", "0.70 mm"),
        ("8000/127", "8000/127"),  # 1600 mm
    ),
    # flyfishingheaven.com, Belize.
    Published("F13", lengths("72 / 24 / 24"), pounds("60 / 30 / 80"), ("120", "120")),
    # ezspey.com: 30, 30 and 40 per cent.
    Published("F14", lengths("36 / 36 / 48"), pounds("10 / 8 / 6"), ("120", "120")),
    # washingtonflyfishing.com, thread 4757; steps of 10 and 9 thousandths.
    Published(
        "F15",
        lengths("12 to 18 / 12 to 18 / 12 to 18"),
        thou(".030 / .020 / .011"),
        ("36", "54"),
        beyond=(2, 3),
    ),
    # fishnflies.com, December 2018.
    Published("F16", lengths("48 / 36 / 30 to 36"), pounds("30 / 20 / 15"), ("114", "120")),
    # yellowdogflyfishing.com: 50, 25 and 25 per cent.
    Published("F17", lengths("54 / 27 / 27"), (), ("108", "108"), "9 ft"),
    # J. B. Healy, The Pocket Guide to Fishing Knots, p. 36: 60, 20 and 20 per cent.
    Published("F18", lengths("64.8 / 21.6 / 21.6"), (), ("108", "108"), "9 ft"),
    # tcflyfishers.com, archive; its tippet is not counted.
    Published("F19", lengths("72 / 36 / 36"), pounds("20 / 15 / 8"), ("144", "144"), "12 ft"),
)

every_leader = pytest.mark.parametrize("published", LEADERS, ids=lambda published: published.number)


def assumed_diameter(strength: str) -> str:
    """Return the diameter of a strand of 700 MPa, to a thousandth of an inch."""
    newtons = float(parse_strength(strength).kg) * NEWTONS_PER_KG
    mm = math.sqrt(newtons / ASSUMED_MPA * 4 / math.pi)
    return f"{round(mm / float(INCH_MM) * 1000)} thou"


def written(published: Published) -> Recipe:
    strands = published.strands or ("4X",) * len(published.lengths)
    sections = [
        section(length, assumed_diameter(strand), strength=strand)
        if strand.endswith("lb")
        else section(length, strand)
        for length, strand in zip(published.lengths, strands, strict=True)
    ]
    return recipe(*sections, total=published.stated)


def found(recipe_: Recipe, *rules: str) -> list[tuple[str, int | None]]:
    findings = audit(leader(recipe_), PRACTICE)
    return [(f.rule, f.section) for f in findings if f.rule in rules]


def test_there_are_nineteen() -> None:
    assert [leader.number for leader in LEADERS] == [f"F{number}" for number in range(1, 20)]


@every_leader
def test_the_worksheet_sums_what_is_printed(published: Published) -> None:
    low, high = (Fraction(inches) * INCH_MM for inches in published.inches)
    assert leader(written(published)).finished == Extent(low, high)


@every_leader
def test_all_but_one_are_as_long_as_they_say(published: Published) -> None:
    wrong = [("stated total", None)] if published.number == "F8" else []
    assert found(written(published), "stated total") == wrong


def test_the_one_is_an_inch_short() -> None:
    (finding,) = audit(leader(written(LEADERS[7])), PRACTICE)[:1]
    assert finding.severity == "error"
    assert finding.says == "the recipe says 9 ft, its sections make 8 ft 11 in"


@every_leader
def test_steps_beyond_the_customary_limit_are_warned_of(published: Published) -> None:
    if published.strands and published.strands[0].endswith("lb"):
        return  # their diameters are our assumption
    assert found(written(published), "step") == [("step", place) for place in published.beyond]


@every_leader
def test_a_published_leader_is_never_wrong_but_in_its_sum(published: Published) -> None:
    # Published tapers break every custom somewhere, so a custom is a warning and no error.
    errors = {f.rule for f in audit(leader(written(published)), PRACTICE) if f.severity == "error"}
    assert errors <= {"stated total"}


@every_leader
def test_a_thicker_end_is_a_bite_guard_and_no_rise(published: Published) -> None:
    worked_out = leader(written(published))
    guarded = worked_out.pieces[-1].part == "bite guard"
    assert guarded is (published.number in ("F12", "F13"))
    assert found(written(published), "rise") == []


@pytest.mark.parametrize("number", [12, 13])
def test_two_shock_tippets_are_longer_than_the_published_rule(number: int) -> None:
    # 400 mm and 24 in, where IGFA has 30.48 cm (12 in) at most.
    record = replace(written(LEADERS[number - 1]), record_lengths=True)
    assert ("shock tippet", len(record.sections)) in found(record, "shock tippet")


@pytest.mark.parametrize(("number", "sold_as", "by_rule"), [(9, "5X", "4X"), (10, "6X", "5X")])
def test_a_leader_may_be_sold_by_another_x_than_its_diameter(
    number: int, sold_as: str, by_rule: str
) -> None:
    last = written(LEADERS[number - 1]).sections[-1].diameter
    assert last.mm == parse_diameter(by_rule).mm
    assert last.mm != parse_diameter(sold_as).mm
