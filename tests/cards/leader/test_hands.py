"""A leader tied as hands tie it from the printed list comes out as long as it was asked for."""

import json
import re
import tomllib

import pytest
from cfractions import Fraction
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from msgspec import Struct

from tagend.cards.cli.worksheet_lines import cut_lines
from tagend.cards.leader.leader import check_tieable
from tagend.cards.leader.worksheet import worksheet
from tagend.cards.practice.shop_file import practice_of, read_shop
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.cards.words.language import ENGLISH
from tagend.cards.words.leader_words import Told
from tagend.cards.words.lessons import Lesson, lessons
from tagend.cards.words.worksheet_json import json_line
from tagend.layouts.base.faults import Refused
from tests.hands import (
    Page,
    Split,
    knots_mm,
    length_mm,
    lengths_mm,
    middles,
    read_page,
    sections_mm,
)
from tests.tree import ROOT

INCH = Fraction("25.4")

STRANDS = {
    "nylon": "line",
    "hard nylon": "line",
    "fluorocarbon": "line",
    "wire": "wire",
    "coated wire": "stranded wire",
    "furled thread": "thread",
}
KNOTS = {
    name: knot
    for name, knot in tomllib.loads((ROOT / "cards/practice/knots.toml").read_text()).items()
    if isinstance(knot, dict)
}
ENDS = {
    place: [name for name in KNOTS if place in KNOTS[name]["places"]]
    for place in ("butt", "line", "fly")
}


def joints(above: str, below: str) -> list[str]:
    """Return the knots that can join two strands: wire winds on nothing, nor wire on it."""
    both, strands = {above, below}, {"wire", "stranded wire"}
    return [
        name
        for name, knot in KNOTS.items()
        if "joint" in knot["places"]
        and both <= set(knot.get("on", ["line"]))
        and ("ties" in knot or not both <= strands)
    ]


class Bench(Struct, frozen=True):
    """A recipe as it is written, the marks of the tape, and what the tape shows of the recipe."""

    recipe: str
    shop: str
    mark_mm: Fraction
    wanted: tuple[str, ...]  # the length of each section


class Printed(Struct, frozen=True):
    """What a person has in hand: the list, and the two sides of each joint."""

    page: Page
    takes: list[Split]  # of each joint, of the pieces above and below it
    lessons: tuple[Lesson, ...]

    @property
    def finest_mm(self) -> Fraction:
        """What the tape shows at the finest: a sixteenth of an inch, or a millimetre."""
        return INCH / 16 if " in" in self.page.total or " ft" in self.page.total else Fraction(1)

    @property
    def coarse_mm(self) -> Fraction:
        """What is rounded off of a total, which is said to a centimetre above a metre."""
        return self.finest_mm / 2 if self.finest_mm > 1 else Fraction(5)

    def asked(self, bench: Bench) -> list[Fraction]:
        """Return how long each section should be; of what is bought the knots take from it."""
        return [
            length_mm(row.tied if row.bought else wanted)
            for row, wanted in zip(self.page.rows, bench.wanted, strict=True)
        ]


# The tape of a shop, in the unit that lengths are written in, and how far its marks are apart.
TAPES = {
    "in": {"": INCH / 4, "1/16 in": INCH / 16, "1/8 in": INCH / 8, "1/2 in": INCH / 2},
    "cm": {"": Fraction(5), "1 mm": Fraction(1), "2 mm": Fraction(2), "1 cm": Fraction(10)},
}


@st.composite
def benches(draw: st.DrawFn, *, as_cut: bool = False) -> Bench:
    """Return any recipe whose lengths a tape shows, as a person writes it."""
    unit = draw(st.sampled_from(["in", "cm"]))
    count = draw(st.integers(1, 12))
    least = 14 if as_cut else 3
    kinds = [draw(st.sampled_from(["nylon", "hard nylon", "fluorocarbon"])) for _ in range(count)]
    if draw(st.booleans()):
        kinds[-1] = draw(st.sampled_from(["wire", "coated wire"]))
    if count > 1 and draw(st.booleans()):
        kinds[0] = "furled thread"
    lengths = [draw(_lengths(unit, least)) for _ in range(count)]
    text = [f'name = "Any"\nlengths = "{"cut" if as_cut else "finished"}"', _butt(draw, kinds[0])]
    for place, (kind, length) in enumerate(zip(kinds, lengths, strict=True)):
        below = kinds[place + 1] if place + 1 < count else None
        text.append(_section(draw, kind, length, below, unit))
    if (fly := draw(st.sampled_from(["", *ENDS["fly"], "none"]))) and _holds(fly, kinds[-1]):
        text.append(f'[fly]\nknot = "{fly}"')
    tape, mark_mm = draw(st.sampled_from(sorted(TAPES[unit].items())))
    shop = 'name = "Bench"\n' + (f'tape = "{tape}"\n' if tape else "")
    own = {"in": '"9 1/8 in"', "cm": '{ above = "10.7 cm", below = "12.2 cm" }'}[unit]
    shop += draw(st.sampled_from(["", f"[lap]\nblood = {own}\n"]))
    return Bench("\n".join(text), shop, mark_mm, tuple(lengths))


@st.composite
def _lengths(draw: st.DrawFn, unit: str, least_in: int) -> str:
    """Return a length on the marks of a tape, now and then a range."""
    if unit == "cm":
        tenths = st.integers(25 * least_in, 2000)
        low, high = sorted((draw(tenths), draw(tenths)))
        low_text, text = (f"{each // 10}.{each % 10} cm" for each in (low, high))
    else:
        sixteenths = st.integers(16 * least_in, 16 * 70)
        low, high = sorted((draw(sixteenths), draw(sixteenths)))
        low_text, text = (f"{each // 16} {each % 16}/16 in" for each in (low, high))
    return f"{low_text} to {text}" if low < high and draw(st.integers(0, 4)) == 0 else text


def _holds(knot: str, kind: str) -> bool:
    return knot == "none" or STRANDS[kind] in KNOTS[knot].get("on", ["line"])


def _butt(draw: st.DrawFn, kind: str) -> str:
    end = draw(st.sampled_from(["", *ENDS["butt"], *ENDS["line"], "none"]))
    if not end or not _holds(end, kind):
        return ""
    loop = draw(st.sampled_from(["", 'loop = "1/2 in"', 'loop = "3 cm"']))
    return f'[butt]\nend = "{end}"\n{loop if end != "none" else ""}'


def _section(draw: st.DrawFn, kind: str, length: str, below: str | None, unit: str) -> str:
    thou = draw(st.integers(4, 30))
    diameter = f"0.{thou:03} in" if unit == "in" else f"{thou * 0.0254:.2f} mm"
    text = [f'[[section]]\nlength = "{length}"\ndiameter = "{diameter}"\nmaterial = "{kind}"']
    text += ["bought = true"] * (STRANDS[kind] == "line" and draw(st.integers(0, 9)) == 0)
    if below is not None:
        can = joints(STRANDS[kind], STRANDS[below])
        if knot := draw(st.sampled_from([None, *can, *can])):
            text.append(f'knot = "{knot}"')
        if STRANDS[kind] != "thread" and draw(st.integers(0, 6)) == 0:
            text.append(f'dropper = "{draw(_lengths(unit, 2)).split(" to ")[0]}"')
    return "\n".join(text)


def printed(bench: Bench) -> Printed:
    """Return what `tagend cuts` prints, and what its JSON says of each joint's two sides."""
    practice = practice_of(read_shop(bench.shop.encode()))
    sheet = worksheet(read_recipe(bench.recipe.encode(), practice), practice)
    try:
        check_tieable(sheet.leader)
    except Refused:
        assume(False)
    sections = json.loads(json_line(sheet))["sections"]
    takes = [tuple(Fraction(str(mm)) for mm in each["takes_mm"]) for each in sections[:-1]]
    told = Told(sheet.leader, ENGLISH)
    page = read_page(cut_lines(told, "utf-8"))
    return Printed(page, [(a, b) for a, b in takes], lessons(told))


@given(benches())
@settings(max_examples=150, deadline=None)
def test_a_leader_tied_from_the_list_is_as_long_as_it_was_asked_for(bench: Bench) -> None:
    of = printed(bench)
    asked = of.asked(bench)
    knots = knots_mm(of.page, of.takes)
    pinched = knots_mm(of.page, middles(of.page))  # as hands do: in the middle of each lap
    own_sides = "above =" in bench.shop  # a person's own sides, which are printed beside their lap
    for laid in (knots,) if own_sides else (knots, pinched):
        for measured, wanted in zip(sections_mm(laid), asked, strict=True):
            assert abs(measured - wanted) <= bench.mark_mm
    for laid in (knots, pinched):
        assert abs(laid[-1] - laid[0] - sum(asked, start=Fraction(0))) <= bench.mark_mm
    assert abs(length_mm(of.page.total) - sum(asked, start=Fraction(0))) <= of.coarse_mm


@given(benches(as_cut=True))
@settings(max_examples=100, deadline=None)
def test_cut_lengths_come_out_as_long_as_the_list_says(bench: Bench) -> None:
    # Takes are not on marks here: what is printed of each length and lap is rounded by itself.
    of = printed(bench)
    for row, written in zip(of.page.rows, bench.wanted, strict=True):
        assert row.cut_mm == length_mm(written)
    tied = [length_mm(row.tied) for row in of.page.rows]
    knots = knots_mm(of.page, of.takes)
    most_mm = max(bench.mark_mm, 2 * of.finest_mm)
    for measured, wanted in zip(sections_mm(knots), tied, strict=True):
        assert abs(measured - wanted) <= most_mm
    rounded_mm = (2 * len(tied) + 1) * of.finest_mm / 2
    assert abs(knots[-1] - knots[0] - sum(tied, start=Fraction(0))) <= rounded_mm
    assert abs(length_mm(of.page.total) - sum(tied, start=Fraction(0))) <= of.coarse_mm + rounded_mm


@given(benches())
@settings(max_examples=100, deadline=None)
def test_what_is_printed_of_a_joint_is_what_is_taken(bench: Bench) -> None:
    of = printed(bench)
    for row, below, (above_mm, below_mm) in zip(
        of.page.rows, of.page.rows[1:], of.takes, strict=False
    ):
        knot = row.knot
        assert row.lapped == KNOTS[knot].get("lapped", False)
        said = row.lap_mm if row.lapped else row.folds_mm[0] + row.folds_mm[1]
        assert abs(said - above_mm - below_mm) <= of.finest_mm
        if KNOTS[knot].get("comes_made"):
            assert (above_mm == 0) == row.bought
            assert (below_mm == 0) == below.bought
        else:
            assert above_mm > 0 < below_mm


@given(st.integers(4, 30), st.sampled_from(sorted(TAPES)), st.data())
@settings(max_examples=50, deadline=None)
def test_a_knot_in_the_middle_of_a_lap_of_like_sides_shifts_nothing(
    thou: int, unit: str, data: st.DataObject
) -> None:
    knot = data.draw(st.sampled_from([name for name in KNOTS if KNOTS[name].get("lapped")]))
    length = "30 in" if unit == "in" else "75 cm"
    one = f'[[section]]\nlength = "{length}"\ndiameter = "{thou} thou"\nmaterial = "nylon"\n'
    written = f'name = "Any"\n{one}knot = "{knot}"\n{one}'
    of = printed(Bench(written, 'name = "Bench"', TAPES[unit][""], (length, length)))
    assert sections_mm(knots_mm(of.page, middles(of.page))) == [length_mm(length)] * 2


@pytest.mark.parametrize("knot", ["perfection loop", "surgeon's loop"])
def test_a_longer_loop_at_the_butt_changes_its_fold_alone(knot: str) -> None:
    body = '[[section]]\nlength = "50 in"\ndiameter = "0.020 in"\nmaterial = "nylon"\n'
    small, large = (
        printed(
            Bench(
                f'name = "Any"\n[butt]\nend = "{knot}"\nloop = "{loop}"\n{body}',
                'name = "Bench"',
                INCH / 4,
                ("50 in",),
            )
        ).page
        for loop in ("1/2 in", "1 1/2 in")
    )
    assert large.butt_mm - small.butt_mm == 2 * INCH  # both legs of one inch more
    assert knots_mm(large, [])[1] - knots_mm(large, [])[0] == 50 * INCH
    assert large.total == small.total


@st.composite
def pairs(draw: st.DrawFn) -> tuple[Bench, str, bool]:
    """Return two sections with bare ends, their knot, and whether the upper one is heavy."""
    kinds = st.sampled_from([kind for kind in STRANDS if STRANDS[kind] != "thread"])
    above, below = draw(kinds), draw(kinds)
    knot = draw(st.sampled_from(joints(STRANDS[above], STRANDS[below])))
    thick = [draw(st.integers(8, 30)) for _ in range(2)]
    unit = draw(st.sampled_from(["in", "cm"]))
    length = "30 in" if unit == "in" else "75 cm"
    sections = [
        f'[[section]]\nlength = "{length}"\ndiameter = "{thou} thou"\nmaterial = "{kind}"\n'
        for thou, kind in zip(thick, (above, below), strict=True)
    ]
    ends = '[butt]\nend = "none"\n', '[fly]\nknot = "none"\n'
    text = f'name = "Any"\n{ends[0]}{sections[0]}knot = "{knot}"\n{sections[1]}{ends[1]}'
    bench = Bench(text, 'name = "Bench"', TAPES[unit][""], (length, length))
    wires = [STRANDS[kind].endswith("wire") for kind in (above, below)]
    return bench, knot, thick[0] >= thick[1] if wires[0] == wires[1] else wires[0]


@given(pairs())
@settings(max_examples=150, deadline=None)
def test_lessons_say_the_laps_and_folds_of_the_list(pair: tuple[Bench, str, bool]) -> None:
    bench, knot, upper_is_heavy = pair
    of = printed(bench)
    row, joint = of.page.rows[0], next(each for each in of.lessons if each.knot.name == knot)
    ties = [each for each in of.lessons if each.knot.name != knot]
    if row.lapped:
        assert list(lengths_mm(steps_with("lap", joint))) == [row.lap_mm]
    elif not ties:
        heavy, light = row.folds_mm if upper_is_heavy else row.folds_mm[::-1]
        steps = steps_with("fold", joint)
        folds = re.findall(r"([\d/. ]*\d (?:in|cm)) (?:of|from) the (thick|thin|other)", steps)
        assert [(length_mm(mm), strand) for mm, strand in folds] == [
            (heavy if strand == "thick" else light, strand) for _, strand in folds
        ]
        assert len(folds) == len(list(lengths_mm(steps))) > 0
    else:
        assert not steps_with("fold", joint)
        said = [mm for tie in ties for mm in lengths_mm(steps_with("fold", tie))]
        # A loop here is an inch at the most, and a fold two at the least, for two fingers to hold.
        assert {mm for mm in said if mm > 2 * INCH} == {*row.folds_mm}


def steps_with(blank: str, lesson: Lesson) -> str:
    """Return the steps of a lesson that say a lap, or a fold, without the size of a loop."""
    both = zip(lesson.steps, KNOTS[lesson.knot.name]["steps"], strict=True)
    said = "\n".join(step for step, written in both if f"{blank}}}" in written)
    return re.sub(r"loop of .*", "", said)
