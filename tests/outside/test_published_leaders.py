"""Nineteen leader formulas from print, through the worksheet and the audit.

Lengths, diameters and totals are facts; the source stands beside each. Where print gives pounds
alone, or nothing, there are no diameters, and none are made up: all of it is 4X, and its sum alone
is held against it. For the rest the table says what is warned of and why; all else in it is
customary, and no warning may come of it.
"""

import pytest
from cfractions import Fraction
from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.base.units import parse_diameter
from tagend.cards.leader.audit import audit
from tagend.cards.leader.leader import Extent
from tagend.cards.recipe.recipe import Recipe
from tagend.layouts.base.quantities import INCH_MM
from tests.told import in_english
from tests.written import PRACTICE, leader, recipe, section


class Published(Struct, frozen=True):
    number: str
    lengths: tuple[str, ...]
    diameters: tuple[str, ...]  # none where print has none
    inches: tuple[str, str]  # the sum, shortest and longest, by hand
    stated: str | None = None
    pounds: str = ""  # as printed, for the reader: no diameter follows from them
    guarded: bool = False  # print calls the last strand a shock tippet
    # Rules, with the section and the share of a wave that turns back there, r = (d above - d below)
    # / (d above + d below) by hand; the reason stands beside.
    warned: tuple[tuple[str, int, str], ...] = ()


def lengths(inches: str) -> tuple[str, ...]:
    return tuple(f"{length} in" for length in inches.split(" / "))


def thou(diameters: str) -> tuple[str, ...]:
    return tuple(f"0{diameter} in" for diameter in diameters.split(" / "))


LEADERS = (
    # T. Rowland, podcast notes, 30 October 2018: each half the last, the last doubled.
    Published(
        "F1", lengths("48 / 24 / 12 / 24"), (), ("108", "108"), "9 ft", pounds="50 / 30 / 25 / 15"
    ),
    # texaskayakfisherman.com, forum.
    Published(
        "F2", lengths("60 / 12 / 12 / 12 / 24"), (), ("120", "120"), pounds="50 / 40 / 30 / 20 / 15"
    ),
    # S. Thomas, saltyshores.com, 2009: each half the last, 15 ft 3 in.
    Published(
        "F3", lengths("72 / 36 / 18 / 9 / 48"), (), ("183", "183"), pounds="40 / 30 / 20 / 16 / 12"
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
        warned=(("step", 2, "21 %"),),  # 0.020 to 0.013 in: 1.54 times
    ),
    # Sports Illustrated, outdoors, June 2025: the base.
    Published(
        "F7", lengths("18 / 18 / 18 / 18"), (), ("72", "72"), "6 ft", pounds="12 / 10 / 8 / 6"
    ),
    # theflyfishingforum.com, 25 January 2001: an inch short of what it says.
    Published(
        "F8",
        lengths("38 / 25 / 11 / 11 / 22"),
        (),
        ("107", "107"),
        "9 ft",
        pounds="30 / 25 / 20 / 15 / 12",
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
        guarded=True,
    ),
    # flyfishingheaven.com, Belize.
    Published(
        "F13", lengths("72 / 24 / 24"), (), ("120", "120"), pounds="60 / 30 / 80", guarded=True
    ),
    # ezspey.com: 30, 30 and 40 per cent.
    Published("F14", lengths("36 / 36 / 48"), (), ("120", "120"), pounds="10 / 8 / 6"),
    # washingtonflyfishing.com, thread 4757; steps of 10 and 9 thousandths.
    Published(
        "F15",
        lengths("12 to 18 / 12 to 18 / 12 to 18"),
        thou(".030 / .020 / .011"),
        ("36", "54"),
        warned=(("step", 2, "20 %"), ("step", 3, "29 %")),  # 1.5 and 1.82 times
    ),
    # fishnflies.com, December 2018.
    Published("F16", lengths("48 / 36 / 30 to 36"), (), ("114", "120"), pounds="30 / 20 / 15"),
    # yellowdogflyfishing.com: 50, 25 and 25 per cent.
    Published("F17", lengths("54 / 27 / 27"), (), ("108", "108"), "9 ft"),
    # J. B. Healy, The Pocket Guide to Fishing Knots, p. 36: 60, 20 and 20 per cent.
    Published("F18", lengths("64.8 / 21.6 / 21.6"), (), ("108", "108"), "9 ft"),
    # tcflyfishers.com, archive; its tippet is not counted.
    Published("F19", lengths("72 / 36 / 36"), (), ("144", "144"), "12 ft", pounds="20 / 15 / 8"),
)

every_leader = pytest.mark.parametrize("published", LEADERS, ids=lambda each: each.number)
with_diameters = pytest.mark.parametrize(
    "published", [each for each in LEADERS if each.diameters], ids=lambda each: each.number
)


def written(published: Published) -> Recipe:
    diameters = published.diameters or ("4X",) * len(published.lengths)
    sections = [section(*each) for each in zip(published.lengths, diameters, strict=True)]
    if published.guarded:
        sections[-1] = replace(sections[-1], part="bite guard")
    return recipe(*sections, total=published.stated)


def heeded(recipe_: Recipe) -> list[tuple[str, int | None]]:
    """Return what is warned of, or worse."""
    findings = audit(leader(recipe_), PRACTICE)
    return [(f.rule, f.section) for f in findings if f.severity != "note"]


def test_there_are_nineteen() -> None:
    assert [leader.number for leader in LEADERS] == [f"F{number}" for number in range(1, 20)]


@every_leader
def test_the_worksheet_sums_what_is_printed(published: Published) -> None:
    low, high = (Fraction(inches) * INCH_MM for inches in published.inches)
    assert leader(written(published)).finished == Extent(low, high)


@every_leader
def test_all_but_one_are_as_long_as_they_say(published: Published) -> None:
    wrong = ("stated total", None) in heeded(written(published))
    assert wrong is (published.number == "F8")


def test_the_one_is_an_inch_short() -> None:
    (finding,) = audit(leader(written(LEADERS[7])), PRACTICE)[:1]
    assert finding.severity == "error"
    assert in_english(finding.says) == "the recipe says 9 ft, its sections make 8 ft 11 in"


@with_diameters
def test_what_the_table_says_is_warned_of_and_nothing_customary(published: Published) -> None:
    assert heeded(written(published)) == [each[:2] for each in published.warned]


@with_diameters
def test_the_warning_says_how_much_turns_back(published: Published) -> None:
    findings = [f for f in audit(leader(written(published)), PRACTICE) if f.rule == "step"]
    for finding, (_, _, share) in zip(findings, published.warned, strict=True):
        turns_back = f"on an ideal string {share} of a wave would turn back here"
        assert turns_back in in_english(finding.says)
        assert finding.standing == "computed, for an ideal string"


@with_diameters
@pytest.mark.parametrize("weight", [4, 5, 6])
def test_nor_on_the_lines_that_trout_leaders_are_for(published: Published, weight: int) -> None:
    # Common practice, no source; F12 and F15 are for heavier lines, or none that print names.
    if published.number not in ("F12", "F15"):
        on_line = replace(written(published), line_weight=weight)
        assert heeded(on_line) == [each[:2] for each in published.warned]


def test_a_shock_tippet_that_nobody_names_is_asked_for() -> None:
    (f12,) = (each for each in LEADERS if each.number == "F12")
    assert heeded(written(replace(f12, guarded=False))) == [("assumed guard", 4)]


@pytest.mark.parametrize("number", [12, 13])
def test_two_shock_tippets_are_longer_than_the_published_rule(number: int) -> None:
    # 400 mm and 24 in, where IGFA has 30.48 cm (12 in) at most.
    record = replace(written(LEADERS[number - 1]), record_lengths=True)
    assert ("shock tippet", len(record.sections)) in heeded(record)


@pytest.mark.parametrize(("number", "sold_as", "by_rule"), [(9, "5X", "4X"), (10, "6X", "5X")])
def test_a_leader_may_be_sold_by_another_x_than_its_diameter(
    number: int, sold_as: str, by_rule: str
) -> None:
    last = written(LEADERS[number - 1]).sections[-1].diameter
    assert last.mm == parse_diameter(by_rule).mm
    assert last.mm != parse_diameter(sold_as).mm
