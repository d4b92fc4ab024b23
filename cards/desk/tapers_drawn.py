"""Tapers that were proposed in; what the page tells of each, and drawings to one scale, out."""

from collections.abc import Iterator, Sequence
from typing import Any

from tagend.cards.desk.leader_drawn import title
from tagend.cards.desk.plan_told import heeded
from tagend.cards.faces.block import Block, Scale
from tagend.cards.faces.chart import comparison, sample
from tagend.cards.faces.diagram import diagrams_alike
from tagend.cards.printing.job import Job
from tagend.cards.propose.proposal import Proposal
from tagend.cards.words.leader_words import Told
from tagend.cards.words.said_words import in_words
from tagend.cards.words.taper_words import taper_told
from tagend.layouts.paper.face import Face
from tagend.layouts.svg.svg import write_svg

_WIDTHS = 180.0, 640.0  # points of a drawing: as wide as its place on the page
_FACTOR, _HEIGHT = 1.2, 130.0  # points of a drawing, its type, the chart's height


def told_of(proposal: Proposal, told: Told) -> dict[str, Any]:
    """Return what is told of a proposal."""
    joints = [(told.joint(joint), joint.reason) for joint in told.leader.joints]
    return {
        "title": title(told),
        "name": proposal.recipe.name,
        "taper": taper_told(told),
        "rows": [
            {"length": told.span(piece.finished), "line": told.strand(piece), "spool": strand.label}
            for piece, strand in zip(told.leader.pieces, proposal.strands, strict=True)
        ],
        "joints": [(knot, in_words(reason, told) if reason else "") for knot, reason in joints],
        "heeded": list(heeded([told])),
    }


def pictures(job: Job, all_told: Sequence[Told], wide: float) -> Iterator[str]:
    """Yield each leader's line in the chart and its drawing, all to one scale; last the chart."""
    scale = Scale(_FACTOR, job.fonts)
    width = min(max(wide * 72 / 96, _WIDTHS[0]), _WIDTHS[1])
    drawn = diagrams_alike(all_told, scale, width)
    chart, *_ = comparison(all_told, scale, _WIDTHS[1], _HEIGHT)
    for place, block in enumerate(drawn):
        yield _svg(sample(place, scale), 3.2 * scale.small)
        yield _svg(block, width)
    yield _svg(chart, _WIDTHS[1])


def _svg(block: Block, width: float) -> str:
    return write_svg(Face("taper", width, block.height, block.items), title="").decode()
