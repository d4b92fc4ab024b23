"""Knot figures: a knot and its turns in; the knot in steps, and finished, out."""

from collections.abc import Iterator, Mapping
from functools import cache, lru_cache
from importlib import import_module

from msgspec import Struct

from tagend.cards.figures.arrow import Arrow
from tagend.cards.figures.figure import Figure
from tagend.cards.figures.ink import Box, frame, skyline
from tagend.cards.figures.step import Count, after, pulled, trimmed
from tagend.cards.figures.strand import Course
from tagend.cards.practice.knots import Knot

# Where each knot's figure stands. A leader has a few of them: the others are not loaded.
_FIGURES: Mapping[str, str] = {
    "blood": "blood.BLOOD",
    "double surgeon's": "surgeons.SURGEONS",
    "triple surgeon's": "surgeons.SURGEONS",
    "doubled blood": "doubled.DOUBLED",
    "uni to uni": "uni.UNI",
    "twisted-loop joint": "twisted.TWISTED",
    "loop to loop": "loops.LOOPS",
    "albright": "albright.ALBRIGHT",
    "slim beauty": "slim.SLIM",
    "ring joint": "clinch.RING_JOINT",
    "swivel": "clinch.SWIVEL_JOINT",
    "perfection loop": "perfection.PERFECTION",
    "surgeon's loop": "surgeons.LOOP",
    "nail knot": "nail.NAIL",
    "needle knot": "nail.NEEDLE",
    "improved clinch": "clinch.IMPROVED",
    "clinch": "clinch.CLINCH",
    "non-slip loop": "nonslip.NONSLIP",
    "palomar": "palomar.PALOMAR",
    "haywire twist": "haywire.HAYWIRE",
    "davy": "eight.DAVY",
    "bimini twist": "bimini.BIMINI",
    "crimped sleeve": "sleeve.SLEEVE",
    "figure-eight": "eight.EIGHT",
}


class Frame(Struct, frozen=True):
    """A knot after one step, or finished: its strands, what moves, and the turns that it makes."""

    strands: tuple[Course, ...]
    arrows: tuple[Arrow, ...]
    count: Count | None
    box: Box
    skyline: tuple[tuple[float, float], ...]  # from the box's corner, as `skyline` has it


@lru_cache(maxsize=64)
def knot_frames(knot: Knot, heavy_turns: int, light_turns: int) -> tuple[Frame, ...]:
    """Return a knot's steps in their order, and the finished knot; none where it has no figure.

    The heavy strand is outlined, the light one solid; a knot in one strand is outlined, and its
    turns are the light ones. A knot that lacks its turns has no figure.
    """
    turns = heavy_turns, light_turns
    if not has_figure(knot, *turns):
        return ()
    figure = figure_of(knot.name)
    drawn = trimmed(figure.drawn(*turns))
    finished = _frame(drawn, pulled(drawn) if figure.pulled else (), None)
    return *_steps(figure, *turns), finished


@cache
def figure_of(name: str) -> Figure:
    """Return how the knot of that name is drawn; raises `KeyError` where it is not."""
    room, _, attribute = _FIGURES[name].partition(".")
    figure: Figure = getattr(import_module(f"tagend.cards.figures.{room}"), attribute)
    return figure


def _steps(figure: Figure, *turns: int) -> Iterator[Frame]:
    for build, taken in (*figure.opening, *figure.laid):
        strands = build(*turns)
        for step in taken(*turns):
            yield _frame(*after(strands, step), step.count)


def _frame(strands: tuple[Course, ...], arrows: tuple[Arrow, ...], count: Count | None) -> Frame:
    box = frame(strands, arrows)
    top = skyline(strands, arrows, box)
    return Frame(strands=strands, arrows=arrows, count=count, box=box, skyline=top)


def has_figure(knot: Knot, heavy_turns: int, light_turns: int) -> bool:
    """Whether a knot can be drawn at all."""
    drawn = knot.figure and knot.name in _FIGURES
    return drawn and not _lacks_turns(knot, heavy_turns, light_turns)


def _lacks_turns(knot: Knot, heavy: int, light: int) -> bool:
    """Whether a side that winds round others has no turns; only a joint has a heavy side."""
    takes = knot.takes
    if knot.apart:
        return heavy < 1 or light < 1
    winds = "joint" in knot.places and takes.heavy.core > 0
    return (takes.light.core > 0 and light < 1) or (winds and heavy < 1)
