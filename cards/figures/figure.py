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
from tagend.cards.figures.haywire import haywire_twisted, haywire_wrapped
from tagend.cards.figures.ink import Frame, frame, inked
from tagend.cards.figures.loops import loops_drawn, loops_laid
from tagend.cards.figures.nail import nail_drawn, nail_laid, needle_drawn, needle_laid
from tagend.cards.figures.nonslip import nonslip_drawn, nonslip_laid
from tagend.cards.figures.palomar import palomar_drawn, palomar_laid
from tagend.cards.figures.perfection import perfection_drawn, perfection_laid
from tagend.cards.figures.slim import slim_laid, slim_threaded
from tagend.cards.figures.strand import Strand
from tagend.cards.figures.surgeons import loop_drawn, loop_laid, surgeons_drawn, surgeons_laid
from tagend.cards.figures.twisted import twisted_laid
from tagend.cards.figures.uni import uni_drawn, uni_laid
from tagend.cards.practice.knots import Knot
from tagend.layouts.paper.face import Path

_LEAST = 1.8  # points of a strand: two edges of half a point with white of 0.4 between them
_MOST = 0.072  # of the box's height, for a strand

_Build: TypeAlias = Callable[[int, int], tuple[Strand, ...]]


@dataclass(frozen=True, slots=True)
class Stage:
    """One stage of a knot, drawn from (0, 0) rightwards and down, in points."""

    items: tuple[Path, ...]
    width: float
    height: float


@lru_cache(maxsize=32)
def knot_figure(
    knot: Knot, thick_turns: int, thin_turns: int, width: float, height: float
) -> tuple[Stage, ...] | None:
    """Return the stages of a knot, all to one scale, each within a box of points.

    The thick strand is outlined, the thin one solid; a knot in one strand is outlined, and its
    turns are the thin ones. None for a knot that has no figure, for one that lacks its turns,
    and where the box is too small for so many.
    """
    frames = _frames(knot, thick_turns, thin_turns)
    unit = _unit(frames, width, height)
    if unit is None:
        return None
    return tuple(
        Stage(inked(strands, unit), each.width * unit, each.height * unit)
        for strands, each in zip(knot_strands(knot, thick_turns, thin_turns), frames, strict=True)
    )


def figure_height(
    knot: Knot, thick_turns: int, thin_turns: int, width: float, height: float
) -> float | None:
    """Return how high the highest stage of a knot's figure will be, before anything is drawn."""
    frames = _frames(knot, thick_turns, thin_turns)
    unit = _unit(frames, width, height)
    return None if unit is None else max(each.height * unit for each in frames)


@lru_cache(maxsize=128)  # a few numbers, where strands are thousands
def _frames(knot: Knot, thick_turns: int, thin_turns: int) -> tuple[Frame, ...]:
    return tuple(map(frame, knot_strands(knot, thick_turns, thin_turns)))


def _unit(frames: Sequence[Frame], width: float, height: float) -> float | None:
    """Return the points that a strand's thickness takes; None where there is no such figure."""
    scales = (min(width / each.width, height / each.height) for each in frames)
    unit = min(_MOST * height, *scales) if frames else 0.0
    return None if unit < _LEAST else unit


def knot_strands(knot: Knot, thick_turns: int, thin_turns: int) -> tuple[tuple[Strand, ...], ...]:
    """Return the strands of each stage of a knot; none for a knot that has no figure."""
    if not knot.figure or _lacks_turns(knot, thick_turns, thin_turns):
        return ()
    return tuple(build(thick_turns, thin_turns) for build in _STAGES.get(knot.name, ()))


def _lacks_turns(knot: Knot, thick: int, thin: int) -> bool:
    """Whether a side that winds round others has no turns; only a joint has a thick side."""
    takes = knot.takes
    winds = "joint" in knot.places and takes.thick.core > 0
    return (takes.thin.core > 0 and thin < 1) or (winds and thick < 1)


def _once(build: Callable[[int], tuple[Strand, ...]]) -> _Build:
    """Return the stage of a knot with one number of turns."""
    return lambda _, turns: build(turns)


def _plain(build: Callable[[], tuple[Strand, ...]]) -> _Build:
    """Return the stage of a knot without turns."""
    return lambda _, __: build()


_SURGEONS = (_once(surgeons_laid), _once(surgeons_drawn))

_STAGES: Mapping[str, tuple[_Build, ...]] = {
    "blood": (blood_laid, blood_drawn),
    "doubled blood": (doubled_laid,),
    "double surgeon's": _SURGEONS,
    "triple surgeon's": _SURGEONS,
    "uni to uni": (uni_laid, uni_drawn),
    "twisted-loop joint": (_once(twisted_laid),),
    "loop to loop": (_plain(loops_laid), _plain(loops_drawn)),
    "albright": (_once(albright_laid), _once(albright_drawn)),
    "slim beauty": (_plain(slim_threaded), _once(slim_laid)),
    "ring joint": (ring_laid, ring_drawn),
    "swivel": (swivel_laid, swivel_drawn),
    "perfection loop": (_plain(perfection_laid), _plain(perfection_drawn)),
    "surgeon's loop": (_once(loop_laid), _once(loop_drawn)),
    "nail knot": (_once(nail_laid), _once(nail_drawn)),
    "needle knot": (_once(needle_laid), _once(needle_drawn)),
    "improved clinch": (_once(improved_laid), _once(improved_drawn)),
    "clinch": (_once(clinch_laid), _once(clinch_drawn)),
    "non-slip loop": (_once(nonslip_laid), _once(nonslip_drawn)),
    "palomar": (_plain(palomar_laid), _plain(palomar_drawn)),
    "haywire twist": (_once(haywire_twisted), _once(haywire_wrapped)),
}
