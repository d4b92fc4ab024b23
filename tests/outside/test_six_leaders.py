"""Six leaders worked out by hand: takes, laps, cuts, totals, loops, turns and who winds.

The turns, cores, bodies, holds and the tag are those of cards/practice/knots.toml, written out
again. The line in N close turns of a strand d round m strands of D that touch is a helix,
s = sqrt((2 pi N R)^2 + h^2) (OpenStax, Calculus Volume 3, arc length and curvature), whose every
turn is as long as the hull: pi (d + D) round one strand, 2 D more round two, 3 D more round three
in a triangle (the perimeter of the hull of touching circles); h = N d.
"""

import json
import math
from collections.abc import Sequence
from typing import Any

import pytest
from msgspec import Struct

from tagend.cards.leader.worksheet import worksheet
from tagend.cards.practice.shop_file import common_practice
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.cards.words.language import ENGLISH
from tagend.cards.words.tying_words import turn_words
from tagend.cards.words.worksheet_json import json_line
from tests.tree import ROOT

PRACTICE = common_practice()
TAG, TAG_MM = 1 / 16, 25.4 / 16
STRAIGHT = {1: 0, 2: 2, 3: 3}  # straight parts of the hull, in diameters


def wraps(turns: int, own: float, core: float, strands: int) -> float:
    around = STRAIGHT[strands] * core + math.pi * (own + core)
    return math.sqrt((turns * around) ** 2 + (turns * own) ** 2)


class Side(Struct, frozen=True):
    """What a side of a knot takes: the sum of its terms, and that up to a mark, by hand.

    In a lap the shorter side takes as much as the other, so that the knot is in the middle.
    """

    terms: tuple[float, ...]
    alone: float
    evened: float | None = None

    @property
    def takes(self) -> float:
        return self.evened or self.alone


class Leader(Struct, frozen=True, kw_only=True):
    """What is worked out of a leader, in inches or mm."""

    unit_mm: float
    mark: float
    sides: Sequence[tuple[Side, Side]]  # of each section, at its butt end and at its fly end
    cuts: Sequence[float]  # of a bought piece what is bought
    total: float
    total_cut: float
    loops: float
    turns: Sequence[tuple[int, int]]  # above and below
    winds: Sequence[str | None]
    end_turns: tuple[int, int]


NOTHING = Side((), 0)

# ---- a stiff taper for salt water, in inches ---------------------------------------------------
SALT = Leader(
    unit_mm=25.4,
    mark=0.25,
    sides=[
        (
            # Perfection loop: 25 x 0.024 = 0.600, two legs of 3/4, tag 1/16, hand 4 from 0.020 in.
            Side((25 * 0.024, 2 * 0.75, TAG, 4), 6.25),  # 6.1625
            # Blood, 4 turns from 0.020 in, round two of 0.021:
            # 4 sqrt((0.042 + pi x 0.045)^2 + 0.024^2) = 4 x 0.18494 = 0.7397
            Side((wraps(4, 0.024, 0.021, 2), TAG, 4), 5.0),  # 4.8022
        ),
        (
            # 0.024 / 0.021 = 1.143 is less than 1.225: no more turns on the thin side.
            # 4 sqrt((0.048 + pi x 0.045)^2 + 0.021^2) = 4 x 0.19053 = 0.7621
            Side((wraps(4, 0.021, 0.024, 2), TAG, 4), 5.0),  # 4.8246
            # 4 sqrt((0.034 + pi x 0.038)^2 + 0.021^2) = 4 x 0.15480 = 0.6192
            Side((wraps(4, 0.021, 0.017, 2), TAG, 4), 4.75),  # 4.6817
        ),
        (
            # 0.021 / 0.017 = 1.235: five turns and two more.
            # 7 sqrt((0.042 + pi x 0.038)^2 + 0.017^2) = 7 x 0.16227 = 1.1359; hand 3
            Side((wraps(7, 0.017, 0.021, 2), TAG, 3), 4.25, 4.75),  # 4.1984
            # Triple surgeon's: 3 sqrt((0.026 + pi x 0.030)^2 + 0.017^2) = 3 x 0.12144 = 0.3643;
            # body 27 x 0.017 = 0.459; hand 3
            Side((wraps(3, 0.017, 0.013, 2), 27 * 0.017, TAG, 3), 4.0),  # 3.8858
        ),
        (
            # 3 sqrt((0.034 + pi x 0.030)^2 + 0.013^2) = 3 x 0.12890 = 0.3867; 27 x 0.013 = 0.351
            Side((wraps(3, 0.013, 0.017, 2), 27 * 0.013, TAG, 3), 4.0),  # 3.8002
            # Albright: the thin strand winds, above; 10 turns from 0.013 in, round three of 0.024:
            # 10 sqrt((0.072 + pi x 0.037)^2 + 0.013^2) = 1.8868; 12 x 0.013 = 0.156; hand 3
            Side((wraps(10, 0.013, 0.024, 3), 12 * 0.013, TAG, 3), 5.25),  # 5.1053
        ),
        (
            # The thick one is folded: 15 x 0.024 = 0.360; hand 4
            Side((15 * 0.024, TAG, 4), 4.5),  # 4.4225
            # Non-slip, 3 turns from 0.020 in round its own two: 3 sqrt((0.048 + pi x 0.048)^2 +
            # 0.024^2) = 3 x 0.20025 = 0.6008; body 0.48; two legs of 1/4; hand 4
            Side((wraps(3, 0.024, 0.024, 2), 20 * 0.024, 2 * 0.25, TAG, 4), 5.75),  # 5.6433
        ),
    ],
    # 40 + 6 1/4 + 5; 20 + 5 + 4 3/4; 12 + 4 3/4 + 4; 16 + 4 + 5 1/4; 12 + 4 1/2 + 5 3/4
    cuts=[51.25, 29.75, 20.75, 25.25, 22.25],
    total=100,  # 40 + 20 + 12 + 16 + 12
    total_cut=149.25,
    loops=1,  # 3/4 and 1/4
    turns=[(4, 4), (4, 7), (3, 3), (10, 0)],
    winds=["both", "both", "both", "above"],
    end_turns=(0, 3),
)

# ---- a long taper for trout, in mm, with a dropper and a range ---------------------------------
TROUT = Leader(
    unit_mm=1,
    mark=5,
    sides=[
        (
            # Nail knot: 0.50 mm is below 0.020 in (0.508) by more than print rounds off: 6 turns,
            # round three of its own: 6 sqrt((1.5 + pi)^2 + 0.5^2) = 28.008; hand 3 in = 76.2
            Side((wraps(6, 0.5, 0.5, 3), TAG_MM, 76.2), 110),  # 105.80
            # Blood, 5 turns from 0.011 in: 5 sqrt((0.8 + pi x 0.9)^2 + 0.5^2) = 18.308
            Side((wraps(5, 0.5, 0.4, 2), TAG_MM, 76.2), 100, 105),  # 96.10
        ),
        (
            # 0.50 / 0.40 = 1.25: 5 + 2 turns; 7 sqrt((1.0 + pi x 0.9)^2 + 0.4^2) = 26.937
            Side((wraps(7, 0.4, 0.5, 2), TAG_MM, 76.2), 105),  # 104.72
            # 5 sqrt((0.6 + pi x 0.7)^2 + 0.4^2) = 14.138
            Side((wraps(5, 0.4, 0.3, 2), TAG_MM, 76.2), 95),  # 91.93
        ),
        (
            # 0.40 / 0.30 = 1.33: 5 + 2 turns, as 0.30 mm is above 0.011 in (0.279);
            # 7 sqrt((0.8 + pi x 0.7)^2 + 0.3^2) = 21.099; hand 2 in = 50.8 below 0.013 in (0.330)
            Side((wraps(7, 0.3, 0.4, 2), TAG_MM, 50.8), 75, 95),  # 73.49
            # Uni, 6 turns: 6 sqrt((0.44 + pi x 0.52)^2 + 0.3^2) = 12.571; body 10 x 0.3
            Side((wraps(6, 0.3, 0.22, 2), 10 * 0.3, TAG_MM, 50.8), 70),  # 67.96
        ),
        (
            # 6 sqrt((0.6 + pi x 0.52)^2 + 0.22^2) = 13.468; body 2.2
            Side((wraps(6, 0.22, 0.3, 2), 10 * 0.22, TAG_MM, 50.8), 70),  # 68.06
            # Double surgeon's: 2 sqrt((0.32 + pi x 0.38)^2 + 0.22^2) = 3.059; body 20 x 0.22 = 4.4
            Side((wraps(2, 0.22, 0.16, 2), 20 * 0.22, TAG_MM, 50.8), 60),  # 59.85
        ),
        (
            # 2 sqrt((0.44 + pi x 0.38)^2 + 0.16^2) = 3.284; body 3.2
            Side((wraps(2, 0.16, 0.22, 2), 20 * 0.16, TAG_MM, 50.8), 60),  # 58.87
            # Improved clinch, 5 turns: 5 sqrt((0.32 + pi x 0.32)^2 + 0.16^2) = 6.674; body 1.6
            Side((wraps(5, 0.16, 0.16, 2), 10 * 0.16, TAG_MM, 50.8), 65),  # 60.66
        ),
    ],
    # 1200 + 110 + 105; 750 + 105 + 95; 450 + 95 + 70; 300 + 70 + 60 and the dropper's 150;
    # of the range the longest, 1200 + 60 + 65
    cuts=[1415, 950, 615, 580, 1325],
    total=3900,  # 1200 + 750 + 450 + 300 + 1200
    total_cut=4885,
    loops=0,
    turns=[(5, 7), (5, 7), (6, 6), (2, 2)],
    winds=["both"] * 4,
    end_turns=(6, 5),
)

# ---- pike: a single strand of wire, albright and haywire ---------------------------------------
PIKE = Leader(
    unit_mm=25.4,
    mark=0.25,
    sides=[
        (
            # Surgeon's loop, both legs two turns round two: 2 x 2 sqrt((0.044 + pi x 0.044)^2 +
            # 0.022^2) = 4 x 0.18356 = 0.7342; body 40 x 0.022 = 0.88; two legs of 3/4; hand 4
            Side((2 * wraps(2, 0.022, 0.022, 2), 40 * 0.022, 1.5, TAG, 4), 7.25),  # 7.1767
            # Blood, 4 turns: 4 sqrt((0.034 + pi x 0.039)^2 + 0.022^2) = 4 x 0.15803 = 0.6321
            Side((wraps(4, 0.022, 0.017, 2), TAG, 4), 4.75),  # 4.6946
        ),
        (
            # 0.022 / 0.017 = 1.294: 5 + 2; 7 sqrt((0.044 + pi x 0.039)^2 + 0.017^2) = 1.1717
            Side((wraps(7, 0.017, 0.022, 2), TAG, 3), 4.25, 4.75),  # 4.2342
            # Albright: wire never winds however thin, so the nylon does, 10 turns from 0.013 in:
            # 10 sqrt((0.036 + pi x 0.029)^2 + 0.017^2) = 1.2823; 12 x 0.017 = 0.204; hand 3
            Side((wraps(10, 0.017, 0.012, 3), 12 * 0.017, TAG, 3), 4.75),  # 4.5488
        ),
        (
            # The wire is folded: 15 x 0.012 = 0.18; hand 2 below 0.013 in
            Side((15 * 0.012, TAG, 2), 2.25),  # 2.2425
            # Haywire, 6 twists of one round one: 6 sqrt((pi x 0.024)^2 + 0.012^2) = 0.4581; five
            # barrel wraps 32 x 0.012 = 0.384; two legs of 1/4; hand 2
            Side((wraps(6, 0.012, 0.012, 1), 32 * 0.012, 0.5, TAG, 2), 3.5),  # 3.4046
        ),
    ],
    cuts=[72, 33.5, 17.75],  # 60 + 7 1/4 + 4 3/4; 24 + 4 3/4 + 4 3/4; 12 + 2 1/4 + 3 1/2
    total=96,
    total_cut=123.25,
    loops=1,  # 3/4 and 1/4
    turns=[(4, 7), (10, 0)],
    winds=["both", "above"],
    end_turns=(2, 6),
)

# ---- pike: coated wire at a swivel, in mm ------------------------------------------------------
COATED = Leader(
    unit_mm=1,
    mark=5,
    sides=[
        (
            # Perfection: 25 x 0.55 = 13.75; two legs of 25.4; hand 4 in = 101.6
            Side((25 * 0.55, 2 * 25.4, TAG_MM, 101.6), 170),  # 167.74
            # The line's side of a swivel is a clinch, 3 turns from 0.015 in, round its own two:
            # 3 sqrt((1.1 + pi x 1.1)^2 + 0.55^2) = 13.767; body 4 x 0.55 = 2.2
            Side((wraps(3, 0.55, 0.55, 2), 4 * 0.55, TAG_MM, 101.6), 120),  # 119.15
        ),
        (
            # The wire's side is a sleeve: 20 x 0.45 = 9; two legs of 1/4 in; hand 3 in
            Side((20 * 0.45, 2 * 6.35, TAG_MM, 76.2), 100),  # 99.49
            # Figure-eight: 15 x 0.45 = 6.75; hand 3 in
            Side((15 * 0.45, TAG_MM, 76.2), 85),  # 84.54
        ),
    ],
    cuts=[1790, 485],  # 1500 + 170 + 120; 300 + 100 + 85
    total=1800,
    total_cut=2275,
    loops=31.75,  # an inch at the butt, a quarter at the swivel
    turns=[(3, 0)],
    winds=["above"],
    end_turns=(0, 0),
)

# ---- a furled butt with its ring, and two loops ------------------------------------------------
FURLED = Leader(
    unit_mm=25.4,
    mark=0.25,
    sides=[
        (NOTHING, NOTHING),  # bought with its loop and its ring
        (
            # Clinch, 5 turns below 0.015 in: 5 sqrt((0.018 + pi x 0.018)^2 + 0.009^2) = 0.3754;
            # body 4 x 0.009 = 0.036; hand 2
            Side((wraps(5, 0.009, 0.009, 2), 4 * 0.009, TAG, 2), 2.5),  # 2.4739
            # Perfection loop: 25 x 0.009 = 0.225; two legs of an inch
            Side((25 * 0.009, 2, TAG, 2), 4.5),  # 4.2875
        ),
        (
            # 5X is 0.006 in: 25 x 0.006 = 0.15
            Side((25 * 0.006, 2, TAG, 2), 4.25),  # 4.2125
            Side((15 * 0.006, TAG, 2), 2.25),  # 2.1525
        ),
    ],
    cuts=[60, 27, 36.5],  # 20 + 2 1/2 + 4 1/2; 30 + 4 1/4 + 2 1/4
    total=110,
    total_cut=63.5,  # nothing of the furled butt
    loops=2,  # an inch on either side of loop to loop
    turns=[(0, 5), (0, 0)],  # the ring is the butt's own: only the nylon is tied to it
    winds=["below", None],
    end_turns=(0, 0),
)

# ---- a class leader: bimini twist and slim beauty, of record lengths ---------------------------
CLASS = Leader(
    unit_mm=25.4,
    mark=0.25,
    sides=[
        (
            # 25 x 0.021 = 0.525; two legs of an inch; hand 4
            Side((25 * 0.021, 2, TAG, 4), 6.75),  # 6.5875
            # The thick side of a bimini's joint is a common loop of an inch, with the same body.
            Side((25 * 0.021, 2, TAG, 4), 6.75),  # 6.5875
        ),
        (
            # Twenty coils on its own strand: 20 sqrt((0.030 + pi x 0.030)^2 + 0.015^2) = 2.5031;
            # body 100 x 0.015 = 1.5; two legs of 6 in; a doubled end is held by 2 x 3 in
            Side((wraps(20, 0.015, 0.015, 2), 1.5, 12, TAG, 6), 22.25),  # 22.0656
            # Slim beauty: doubled, 7 turns round two of 0.026: 2 x 7 sqrt((0.052 + pi x 0.041)^2 +
            # 0.015^2) = 2.5398; body 15 x 0.015 = 0.225; 2 x 3 in
            Side((2 * wraps(7, 0.015, 0.026, 2), 0.225, TAG, 6), 9.0),  # 8.8273
        ),
        (
            Side((20 * 0.026, TAG, 4), 4.75),  # 4.5825: it knots itself
            Side((30 * 0.026, TAG, 8), 9.0),  # 8.8425: palomar, held by 2 x 4 in
        ),
    ],
    cuts=[73.5, 49.25, 23.75],  # 60 + 13 1/2; 18 + 31 1/4; 10 + 13 3/4
    total=88,
    total_cut=146.5,
    loops=8,  # an inch at the butt; an inch and six where the bimini joins
    turns=[(0, 20), (7, 2)],
    winds=["below", "above"],
    end_turns=(0, 0),
)

SIX = {
    "salt": SALT,
    "trout": TROUT,
    "pike": PIKE,
    "coated": COATED,
    "furled": FURLED,
    "class": CLASS,
}


def written(name: str) -> Recipe:
    return read_recipe((ROOT / f"tests/outside/six/{name}.toml").read_bytes(), PRACTICE)


def told(name: str) -> dict[str, Any]:
    """Return what the tool works out of the leader of this name."""
    found: dict[str, Any] = json.loads(json_line(worksheet(written(name), PRACTICE)))
    return found


EACH = pytest.mark.parametrize("name", SIX)


@EACH
def test_the_sums_by_hand_come_to_the_marks(name: str) -> None:
    worked = SIX[name]
    for side in (side for both in worked.sides for side in both):
        exact = sum(side.terms)
        assert side.alone == math.ceil(exact / worked.mark) * worked.mark
        # So far from the mark that no hundredth of a millimetre, rounded up, decides.
        assert side.alone - exact >= 0.04 / worked.unit_mm or side == NOTHING


@EACH
def test_takes_laps_and_cuts_are_those_worked_out_by_hand(name: str) -> None:
    worked, found = SIX[name], told(name)
    sections, unit = found["sections"], worked.unit_mm

    def mm(*each: float) -> object:
        return pytest.approx([one * unit for one in each], abs=1e-4)

    assert found["butt_fold_mm"] == pytest.approx(worked.sides[0][0].takes * unit)
    assert found["fly_fold_mm"] == pytest.approx(worked.sides[-1][1].takes * unit)
    for section, above, below in zip(sections, worked.sides, worked.sides[1:], strict=False):
        assert section["takes_mm"] == mm(above[1].takes, below[0].takes)
        assert section["lap_mm"] == pytest.approx((above[1].takes + below[0].takes) * unit)
    assert [section["cut_mm"] for section in sections] == mm(*worked.cuts)
    assert [found["total_finished_mm"], found["total_cut_mm"], found["loops_mm"]] == mm(
        worked.total, worked.total_cut, worked.loops
    )
    # Each piece that is cut is as long as what is told of its two ends and of its dropper.
    droppers = [section["dropper_mm"] or 0 for section in sections]
    taken = [(above.takes + below.takes) * unit for above, below in worked.sides]
    asked = [section["finished_mm"] for section in sections]
    assert [sum(each) for each in zip(asked, taken, droppers, strict=True)] == mm(*worked.cuts)


@EACH
def test_turns_and_who_winds_are_those_worked_out_by_hand(name: str) -> None:
    worked, found = SIX[name], told(name)
    joints = found["sections"][:-1]
    assert [tuple(joint["turns"]) for joint in joints] == worked.turns
    assert [joint["winds"] for joint in joints] == worked.winds
    assert (found["butt_turns"], found["fly_turns"]) == worked.end_turns


@pytest.mark.parametrize(
    ("name", "place", "says"),
    [
        ("class", 1, "7 turns of section 2"),  # 4 out and 3 back; the thick strand's 2 are passes
        ("class", 0, "20 turns of section 2"),
        ("pike", 1, "10 turns of section 2"),  # round the wire, which never winds
        ("coated", 0, "clinch, 3 turns + crimped sleeve"),
        ("furled", 0, "clinch, 5 turns"),  # the butt brings its ring and is tied to nothing
    ],
)
def test_the_bench_says_which_strand_winds_and_how_often(name: str, place: int, says: str) -> None:
    leader = worksheet(written(name), PRACTICE).leader
    assert turn_words(leader.joints[place], place + 1, ENGLISH) == says
