"""The figures that the tests go over: every knot that has one, with turns that it may take."""

import pytest

from tagend.cards.figures.frames import figure_of, has_figure
from tagend.cards.figures.strand import Course
from tagend.cards.practice.knot_file import load_knots
from tagend.cards.practice.knots import Knot
from tests.cards.figures.topology import Curve

KNOTS = load_knots()


def knot_strands(knot: Knot, heavy_turns: int, light_turns: int) -> tuple[tuple[Course, ...], ...]:
    """Return the strands of each stage of a knot; none for a knot that has no figure."""
    if not has_figure(knot, heavy_turns, light_turns):
        return ()
    figure = figure_of(knot.name)
    builds = *(build for build, _ in figure.laid), figure.drawn
    return tuple(build(heavy_turns, light_turns) for build in builds)


def _cases() -> list[tuple[Knot, int, int]]:
    cases = []
    for knot in KNOTS.rows:
        turns = KNOTS.find(knot.ties[0]).turns if knot.apart else knot.turns
        rungs = {(rung.heavy, rung.light) for rung in turns} or {(0, 0)}
        if knot.extra_turns is not None:
            rungs |= {(thick, thin + knot.extra_turns.light) for thick, thin in rungs}
        cases += [(knot, *rung) for rung in sorted(rungs) if knot_strands(knot, *rung)]
    return cases


CASES = _cases()
every_figure = pytest.mark.parametrize(
    ("knot", "thick", "thin"), CASES, ids=lambda of: getattr(of, "name", str(of))
)


def stage(name: str, number: int, thick: int, thin: int | None = None) -> tuple[Course, ...]:
    """Return the strands of one stage of a knot, the first is 0."""
    return knot_strands(KNOTS.find(name), thick, thick if thin is None else thin)[number]


def curves(strands: tuple[Course, ...]) -> list[Curve]:
    return [strand.points for strand in strands]
