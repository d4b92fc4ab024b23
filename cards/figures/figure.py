"""Knot figures: a knot, its turns and a box in; the knot drawn in stages that fit the box out."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import TypeAlias

from tagend.cards.figures.albright import albright_drawn, albright_laid
from tagend.cards.figures.blood import blood_drawn, blood_laid
from tagend.cards.figures.clinch import (
    clinch_drawn,
    clinch_laid,
    improved_drawn,
    improved_laid,
    ring_drawn,
    ring_laid,
    swivel_drawn,
    swivel_laid,
)
from tagend.cards.figures.doubled import doubled_laid
from tagend.cards.figures.eight import eight_laid
from tagend.cards.figures.haywire import haywire_twisted, haywire_wrapped
from tagend.cards.figures.ink import Frame, frame, inked
from tagend.cards.figures.loops import loops_drawn, loops_laid
from tagend.cards.figures.nail import nail_drawn, nail_laid, needle_drawn, needle_laid
from tagend.cards.figures.nonslip import nonslip_drawn, nonslip_laid
from tagend.cards.figures.palomar import palomar_drawn, palomar_laid
from tagend.cards.figures.perfection import perfection_drawn, perfection_laid
from tagend.cards.figures.slim import slim_laid, slim_threaded
from tagend.cards.figures.strand import Course
from tagend.cards.figures.surgeons import loop_drawn, loop_laid, surgeons_drawn, surgeons_laid
from tagend.cards.figures.twisted import twisted_laid
from tagend.cards.figures.uni import uni_drawn, uni_laid
from tagend.cards.practice.knots import Knot
from tagend.layouts.paper.face import Path

_LEAST = 1.8  # points of a strand: two edges of half a point with white of 0.4 between them
_MOST = 0.072  # of the box's height, for a strand

_Build: TypeAlias = Callable[[int, int], tuple[Course, ...]]


@dataclass(frozen=True, slots=True)
class Stage:
    """One stage of a knot, drawn from (0, 0) rightwards and down, in points."""

    items: tuple[Path, ...]
    width: float
    height: float


@lru_cache(maxsize=32)
def knot_figure(
    knot: Knot, heavy_turns: int, light_turns: int, width: float, height: float
) -> tuple[Stage, ...] | None:
    """Return the stages of a knot, all to one scale, each within a box of points.

    The heavy strand is outlined, the light one solid; a knot in one strand is outlined, and its
    turns are the light ones. None for a knot that has no figure, for one that lacks its turns,
    and where the box is too small for so many.
    """
    frames = _frames(knot, heavy_turns, light_turns)
    unit = _unit(frames, width, height)
    if unit is None:
        return None
    return tuple(
        Stage(inked(strands, unit), each.width * unit, each.height * unit)
        for strands, each in zip(knot_strands(knot, heavy_turns, light_turns), frames, strict=True)
    )


def figure_height(
    knot: Knot, heavy_turns: int, light_turns: int, width: float, height: float
) -> float | None:
    """Return how high the highest stage of a knot's figure will be, before anything is drawn."""
    frames = _frames(knot, heavy_turns, light_turns)
    unit = _unit(frames, width, height)
    return None if unit is None else max(each.height * unit for each in frames)


@lru_cache(maxsize=128)  # a few numbers, where strands are thousands
def _frames(knot: Knot, heavy_turns: int, light_turns: int) -> tuple[Frame, ...]:
    return tuple(map(frame, knot_strands(knot, heavy_turns, light_turns)))


def _unit(frames: Sequence[Frame], width: float, height: float) -> float | None:
    """Return the points that a strand's thickness takes; None where there is no such figure."""
    scales = (min(width / each.width, height / each.height) for each in frames)
    unit = min(_MOST * height, *scales) if frames else 0.0
    return None if unit < _LEAST else unit


def knot_strands(knot: Knot, heavy_turns: int, light_turns: int) -> tuple[tuple[Course, ...], ...]:
    """Return the strands of each stage of a knot; none for a knot that has no figure."""
    if not knot.figure or _lacks_turns(knot, heavy_turns, light_turns):
        return ()
    return tuple(build(heavy_turns, light_turns) for build in _STAGES.get(knot.name, ()))


def _lacks_turns(knot: Knot, heavy: int, light: int) -> bool:
    """Whether a side that winds round others has no turns; only a joint has a heavy side."""
    takes = knot.takes
    if knot.apart:
        return heavy < 1 or light < 1
    winds = "joint" in knot.places and takes.heavy.core > 0
    return (takes.light.core > 0 and light < 1) or (winds and heavy < 1)


_STAGES: Mapping[str, tuple[_Build, ...]] = {
    "blood": (blood_laid, blood_drawn),
    "doubled blood": (doubled_laid,),
    "double surgeon's": (surgeons_laid, surgeons_drawn),
    "triple surgeon's": (surgeons_laid, surgeons_drawn),
    "uni to uni": (uni_laid, uni_drawn),
    "twisted-loop joint": (twisted_laid,),
    "loop to loop": (loops_laid, loops_drawn),
    "albright": (albright_laid, albright_drawn),
    "slim beauty": (slim_threaded, slim_laid),
    "ring joint": (ring_laid, ring_drawn),
    "swivel": (swivel_laid, swivel_drawn),
    "perfection loop": (perfection_laid, perfection_drawn),
    "surgeon's loop": (loop_laid, loop_drawn),
    "nail knot": (nail_laid, nail_drawn),
    "needle knot": (needle_laid, needle_drawn),
    "improved clinch": (improved_laid, improved_drawn),
    "clinch": (clinch_laid, clinch_drawn),
    "non-slip loop": (nonslip_laid, nonslip_drawn),
    "palomar": (palomar_laid, palomar_drawn),
    "haywire twist": (haywire_twisted, haywire_wrapped),
    "figure-eight": (eight_laid,),
}
