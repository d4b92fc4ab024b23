"""A recipe in; what its page shows beside the fields, as JSON, out: pictures, rows and findings."""

import hashlib
from collections.abc import Iterator
from functools import lru_cache
from typing import Any

from tagend.cards.desk.page import Json
from tagend.cards.faces.block import Scale
from tagend.cards.faces.diagram import diagrams
from tagend.cards.leader.audit import Finding
from tagend.cards.leader.joints import End, Joint
from tagend.cards.leader.leader import NOTHING, Piece
from tagend.cards.leader.said import Said
from tagend.cards.leader.suitability import Meeting, unfit, untieable
from tagend.cards.leader.worksheet import Worksheet, worksheet
from tagend.cards.practice.knots import Knot
from tagend.cards.practice.practice import Practice, serving
from tagend.cards.printing.cards import CardWishes, card_faces
from tagend.cards.printing.codes import code_of, code_place
from tagend.cards.printing.job import Job
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.values import BARE
from tagend.cards.recipe.vocabulary import EndOf
from tagend.cards.variants.variant import variant_called
from tagend.cards.words.desk_words import refusal_lines
from tagend.cards.words.leader_words import Told
from tagend.cards.words.said_words import in_words
from tagend.layouts.base.faults import Refused
from tagend.layouts.paper.face import Face, shifted
from tagend.layouts.svg.svg import write_svg

_WIDTH, _FACTOR = 520.0, 1.3  # points of the drawing to scale, and how much larger its type is
_AROUND = 6.0  # points
_THICK = 16  # pixels beside a section, for a millimetre


def drawn(job: Job, recipe: Recipe, said: Json) -> dict[str, Any]:
    """Return all that is shown of a leader, or of that variant of it which `said` asks for.

    `seen` has the pictures that the page has already, which are not sent again. Raises `Refused`.
    """
    variant = said.get("variant")
    shown = variant_called(variant, recipe, job.practice) if variant else recipe
    sheet = worksheet(shown, job.practice)
    (told,) = job.told([sheet])
    cut = NOTHING.longer(told.leader.cut_mm)
    return {
        "title": title(told),
        "altogether": {"finished": told.spans(told.leader.finished), "cut": told.span(cut)},
        "rows": [_row(piece, told) for piece in told.leader.pieces],
        "joints": [
            _joint(joint, place, told, job.practice)
            for place, joint in enumerate(told.leader.joints, 1)
        ],
        "butt": _end(told.leader.butt, "butt", told, job.practice),
        "fly": _end(told.leader.fly, "fly", told, job.practice),
        "findings": [_finding(finding, told) for finding in sheet.findings],
        **_pictures(job, sheet, told, said),
    }


def title(told: Told) -> str:
    """Return how long a leader is and what it ends in: `11 ft, 6 sections, tippet …`."""
    return f"{told.spans(told.leader.finished)}, {told.sections()}"


def _row(piece: Piece, told: Told) -> dict[str, Any]:
    return {
        "line": told.strand(piece),
        "thick": max(2, round(_THICK * float(piece.section.diameter.mm))),
        "cut": told.taken(piece.cut_mm),
        "finished": told.span(piece.finished),
        "part": told.wording.term(piece.part),
        "part_named": piece.section.part is not None,
    }


def _joint(joint: Joint, place: int, told: Told, practice: Practice) -> dict[str, Any]:
    return {
        **_knot(joint.knot, joint.reason, told),
        "told": told.joint(joint),
        "lap": told.lap(place),
        "fits": [*_fitting("joint", joint.meeting, told, practice)],
    }


def _end(end: End, place: EndOf, told: Told, practice: Practice) -> dict[str, Any]:
    return {
        **_knot(end.knot, end.reason, told),
        "told": told.end(end),
        "lap": told.fold(end),
        "fits": [*_fitting(place, end.meeting, told, practice), _choice(BARE, told, None)],
    }


def _knot(knot: Knot | None, reason: Said | None, told: Told) -> dict[str, Any]:
    """Return what is tied, and why the rule took it, where no person named it."""
    return {"knot": knot.name if knot else BARE, "why": in_words(reason, told) if reason else ""}


def _fitting(
    end: EndOf, meeting: Meeting, told: Told, practice: Practice
) -> Iterator[dict[str, str]]:
    """Yield the knots that can be tied where strands meet, last those that practice is against."""
    knots = [knot for knot in serving(practice.knots, end) if untieable(knot, meeting) is None]
    against = [(knot, unfit(knot, meeting)) for knot in knots]
    for knot, why in sorted(against, key=lambda each: each[1] is not None):
        yield _choice(knot.name, told, why)


def _choice(name: str, told: Told, against: Said | None) -> dict[str, str]:
    told_as = told.wording.say("bare_end") if name == BARE else told.wording.knot(name)
    return {"name": name, "told": told_as, "against": in_words(against, told) if against else ""}


def _finding(finding: Finding, told: Told) -> dict[str, Any]:
    term = told.wording.term
    return {
        "row": finding.section and finding.section - 1,
        "severity": finding.severity,
        "what": in_words(finding.says, told),
        "why": in_words(finding.reason, told),
        "standing": term(finding.standing),
        "told": term(finding.severity),
    }


def _pictures(job: Job, sheet: Worksheet, told: Told, said: Json) -> dict[str, Any]:
    """Return the drawing to scale and the sides of the card; a code only where it is asked for."""
    seen = set(said.get("seen", ()))
    code = code_of if said.get("code") else code_place
    pictures = [_picture(_plot(told, job))]
    refusal = ""
    try:
        faces = card_faces(job, sheet, CardWishes(size=said.get("size")), code)
        pictures += map(_picture, faces)
    except Refused as error:
        refusal = "\n".join(refusal_lines(error, job.wording.language))
    return {
        "pictures": [{"id": name, "svg": None if name in seen else svg} for name, svg in pictures],
        "no_card": refusal,
    }


def front_of(job: Job, recipe: Recipe) -> bytes:
    """Return the front of a leader's card as SVG; raises `Refused` where no card holds it."""
    front, *_ = card_faces(job, worksheet(recipe, job.practice), CardWishes())
    return write_svg(front, title=front.name)


def _plot(told: Told, job: Job) -> Face:
    """Return the drawing to scale, with some paper around it."""
    drawing = next(diagrams(told, Scale(_FACTOR, job.fonts), _WIDTH - 2 * _AROUND))
    items = shifted(drawing.items, _AROUND, _AROUND)
    return Face(told.leader.recipe.name, _WIDTH, drawing.height + 2 * _AROUND, items)


@lru_cache(maxsize=64)
def _picture(face: Face) -> tuple[str, str]:
    """Return a name for what a face shows, and its SVG."""
    svg = write_svg(face, title=face.name).decode()
    return hashlib.sha256(svg.encode()).hexdigest()[:16], svg
