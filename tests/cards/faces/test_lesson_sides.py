"""Lessons over sides: none lost, each after the other, two columns where the card is wide."""

from collections.abc import Sequence
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tagend.cards.faces.block import Block, TooSmall, line_block
from tagend.cards.faces.card_text import CardText
from tagend.cards.faces.lesson import Figure
from tagend.cards.faces.lesson_sides import lesson_blocks, lesson_sides
from tagend.cards.faces.panel import INSET, CardSide, More, Panel, nothing
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.practice.knot_file import load_knots
from tagend.cards.practice.knots import LENGTHS, TIED, Sides
from tagend.cards.printing.cards import CardWishes, card_text
from tagend.cards.words.language import ENGLISH
from tagend.cards.words.lessons import Lesson, counted
from tagend.fonts import OURS
from tagend.layouts.paper.text import set_line
from tagend.layouts.stock.formats import CardSize
from tagend.layouts.stock.stock import card_size
from tests.seen import faults, runs
from tests.told import JOB, scale
from tests.written import SIX, leader

WIDE, NARROW = card_size("index-5x8"), card_size("ID-1")
SAID = dict.fromkeys((*LENGTHS, *TIED), "9 3/4 in")
TURNS = (Sides(5, 6),)
LESSONS = tuple(
    Lesson(
        knot=knot,
        turns=TURNS,
        name=knot.name,
        steps=counted(knot.steps, TURNS, SAID, ENGLISH),
        caution=knot.caution,
    )
    for knot in load_knots()
)


TEXT = card_text(JOB, Worksheet(leader(SIX), ()), CardWishes())


def taught(lessons: Sequence[Lesson], *, figures: bool) -> CardText:
    return replace(TEXT, lessons=tuple(lessons), figures=figures)


def a_line(panel: Panel) -> Sequence[Block]:
    return [line_block(set_line("Before all of them", OURS.medium, panel.scale.small))]


def panels(size: CardSize) -> list[Panel]:
    return [Panel(size, scale(factor)) for factor in (1.5, 1.2, 1.0)]


def headings(side: CardSide) -> list[tuple[str, float]]:
    """Return the knots' names on a side with their left edges, as they are read."""
    bold = [run for run in runs(side.face("side")) if run.size > 8]
    names = {lesson.name.capitalize() for lesson in LESSONS}
    found = [(run.x, run.y, run.text.replace("’", "'")) for run in bold]
    return [(text, x) for x, _, text in sorted(found) if text in names]


def test_a_wide_panel_has_two_columns_and_a_narrow_one_a_single_one() -> None:
    for size, columns in ((WIDE, 2), (NARROW, 1)):
        (side, *_) = lesson_sides(taught(LESSONS[:4], figures=False), panels(size), nothing, 2)
        assert len({x for _, x in headings(side)}) == columns


def test_two_columns_are_about_even() -> None:
    (block,) = lesson_blocks(LESSONS[:4], panels(WIDE)[-1], "none")
    singles = [lesson_blocks([lesson], panels(WIDE)[-1], "none")[0] for lesson in LESSONS[:4]]
    together = sum(single.height for single in singles)
    assert block.height < together / 2 + max(single.height for single in singles)


def test_columns_need_less_height_than_one() -> None:
    panel = panels(WIDE)[-1]
    (block,) = lesson_blocks(LESSONS[:5], panel, "none")
    tall = Panel(CardSize("tall", WIDE.width / 2, 2000), panel.scale)
    assert block.height < sum(one.height for one in lesson_blocks(LESSONS[:5], tall, "none"))


@pytest.mark.parametrize("size", [WIDE, NARROW], ids=["wide", "narrow"])
@pytest.mark.parametrize("before", [nothing, a_line])
@given(count=st.integers(1, len(LESSONS)), figures=st.booleans())
@settings(max_examples=12, deadline=None)
def test_every_lesson_stands_once_and_in_its_order(
    size: CardSize, before: More, count: int, figures: bool
) -> None:
    sides = lesson_sides(taught(LESSONS[:count], figures=figures), panels(size), before, 2)
    found = [name for side in sides for name, _ in headings(side)]
    assert found == [lesson.name.capitalize() for lesson in LESSONS[:count]]
    for side in sides:
        assert faults(side.face("side"), INSET) == []
    assert ("Before" in str(sides[0].blocks)) == (before is a_line)


def test_figures_are_drawn_where_they_take_no_more_sides() -> None:
    few = lesson_sides(taught(LESSONS[:2], figures=False), panels(WIDE), nothing, 2)
    assert len(few) == 1
    plain: Figure = "none"
    bare = lesson_blocks(LESSONS[:2], few[0].panel, plain)
    assert len(few[0].blocks[-1].items) > len(bare[0].items)


def test_a_lesson_higher_than_a_side_is_refused() -> None:
    low = [Panel(CardSize("low", 240, 60), scale())]
    with pytest.raises(TooSmall):
        lesson_sides(taught(LESSONS[:1], figures=False), low, nothing, 2)


def test_the_front_of_every_further_card_is_named() -> None:
    for before in (1, 2, 3):
        sides = lesson_sides(taught(LESSONS, figures=False), panels(NARROW), nothing, before)
        assert len(sides) > 3
        named = [TEXT.name in str(side.blocks[0]) for side in sides]
        assert named == [(before + number) % 2 == 0 for number in range(len(sides))]
