"""Knot figures: a knot and its turns in; the knot in steps, and finished, out."""

from collections.abc import Callable, Iterator, Mapping
from functools import lru_cache
from typing import TypeAlias

from msgspec import Struct

from tagend.cards.figures.albright import albright_drawn, albright_laid, albright_steps
from tagend.cards.figures.arrow import Arrow
from tagend.cards.figures.bimini import bimini_drawn, bimini_laid, bimini_steps
from tagend.cards.figures.blood import blood_drawn, blood_laid, blood_steps
from tagend.cards.figures.clinch import (
    clinch_drawn,
    clinch_laid,
    clinch_steps,
    improved_drawn,
    improved_laid,
    improved_steps,
    ring_drawn,
    ring_laid,
    ring_steps,
    swivel_drawn,
    swivel_laid,
    swivel_steps,
)
from tagend.cards.figures.doubled import doubled_drawn, doubled_laid, doubled_steps
from tagend.cards.figures.eight import (
    davy_drawn,
    davy_laid,
    davy_steps,
    eight_drawn,
    eight_laid,
    eight_steps,
)
from tagend.cards.figures.haywire import haywire_steps, haywire_wrapped
from tagend.cards.figures.ink import Box, frame, skyline
from tagend.cards.figures.loops import (
    apart_steps,
    loops_apart,
    loops_drawn,
    loops_laid,
    loops_slipped,
    loops_steps,
    slipped_steps,
)
from tagend.cards.figures.nail import (
    nail_drawn,
    nail_laid,
    nail_steps,
    needle_drawn,
    needle_laid,
    needle_steps,
)
from tagend.cards.figures.nonslip import nonslip_drawn, nonslip_laid, nonslip_steps
from tagend.cards.figures.palomar import palomar_drawn, palomar_laid, palomar_steps
from tagend.cards.figures.perfection import (
    perfection_drawn,
    perfection_laid,
    perfection_steps,
    perfection_through,
    through_steps,
)
from tagend.cards.figures.sleeve import sleeve_crimped, sleeve_laid, sleeve_steps
from tagend.cards.figures.slim import (
    slim_drawn,
    slim_laid,
    slim_steps,
    slim_threaded,
    threaded_steps,
)
from tagend.cards.figures.step import Count, Stage, after, pulled, trimmed
from tagend.cards.figures.strand import Course
from tagend.cards.figures.surgeons import (
    loop_drawn,
    loop_laid,
    loop_steps,
    surgeons_drawn,
    surgeons_laid,
    surgeons_steps,
)
from tagend.cards.figures.twisted import twisted_drawn, twisted_laid, twisted_steps
from tagend.cards.figures.uni import uni_drawn, uni_laid, uni_steps
from tagend.cards.practice.knots import Knot

_Build: TypeAlias = Callable[[int, int], tuple[Course, ...]]
_Steps: TypeAlias = Callable[[int, int], tuple[Stage, ...]]


class Figure(Struct, frozen=True):
    """How a knot is drawn: laid up in steps, and finished."""

    laid: tuple[tuple[_Build, _Steps], ...]
    drawn: _Build
    opening: tuple[tuple[_Build, _Steps], ...] = ()  # before its strands meet
    pulled: bool = True  # by its standing parts, which seats it


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
    figure = FIGURES[knot.name]
    drawn = trimmed(figure.drawn(*turns))
    finished = _frame(drawn, pulled(drawn) if figure.pulled else (), None)
    return *_steps(figure, *turns), finished


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
    drawn = knot.figure and knot.name in FIGURES
    return drawn and not _lacks_turns(knot, heavy_turns, light_turns)


def _lacks_turns(knot: Knot, heavy: int, light: int) -> bool:
    """Whether a side that winds round others has no turns; only a joint has a heavy side."""
    takes = knot.takes
    if knot.apart:
        return heavy < 1 or light < 1
    winds = "joint" in knot.places and takes.heavy.core > 0
    return (takes.light.core > 0 and light < 1) or (winds and heavy < 1)


FIGURES: Mapping[str, Figure] = {
    "blood": Figure(((blood_laid, blood_steps),), blood_drawn),
    "double surgeon's": Figure(((surgeons_laid, surgeons_steps),), surgeons_drawn),
    "triple surgeon's": Figure(((surgeons_laid, surgeons_steps),), surgeons_drawn),
    "doubled blood": Figure(((doubled_laid, doubled_steps),), doubled_drawn),
    "uni to uni": Figure(((uni_laid, uni_steps),), uni_drawn),
    "twisted-loop joint": Figure(((twisted_laid, twisted_steps),), twisted_drawn),
    "loop to loop": Figure(
        ((loops_laid, loops_steps),),
        loops_drawn,
        opening=((loops_apart, apart_steps), (loops_slipped, slipped_steps)),
    ),
    "albright": Figure(((albright_laid, albright_steps),), albright_drawn),
    "slim beauty": Figure(((slim_threaded, threaded_steps), (slim_laid, slim_steps)), slim_drawn),
    "ring joint": Figure(((ring_laid, ring_steps),), ring_drawn),
    "swivel": Figure(((swivel_laid, swivel_steps),), swivel_drawn),
    "perfection loop": Figure(
        ((perfection_laid, perfection_steps), (perfection_through, through_steps)),
        perfection_drawn,
    ),
    "surgeon's loop": Figure(((loop_laid, loop_steps),), loop_drawn),
    "nail knot": Figure(((nail_laid, nail_steps),), nail_drawn),
    "needle knot": Figure(((needle_laid, needle_steps),), needle_drawn),
    "improved clinch": Figure(((improved_laid, improved_steps),), improved_drawn),
    "clinch": Figure(((clinch_laid, clinch_steps),), clinch_drawn),
    "non-slip loop": Figure(((nonslip_laid, nonslip_steps),), nonslip_drawn),
    "palomar": Figure(((palomar_laid, palomar_steps),), palomar_drawn),
    "haywire twist": Figure(((haywire_wrapped, haywire_steps),), haywire_wrapped, pulled=False),
    "davy": Figure(((davy_laid, davy_steps),), davy_drawn),
    "bimini twist": Figure(((bimini_laid, bimini_steps),), bimini_drawn),
    "crimped sleeve": Figure(((sleeve_laid, sleeve_steps),), sleeve_crimped, pulled=False),
    "figure-eight": Figure(((eight_laid, eight_steps),), eight_drawn),
}
