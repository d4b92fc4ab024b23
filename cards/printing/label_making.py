"""A leader and a label sheet in; its labels out, or a refusal that tells what would do."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import islice

from tagend.cards.code.notation import write_notation
from tagend.cards.faces.block import TooSmall
from tagend.cards.faces.label import LabelNote, wallet_label
from tagend.cards.leader.leader import Leader
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.words.language import Wording
from tagend.layouts.base.faults import Refused, refused
from tagend.layouts.codes.code import DESIGN_MODULE, symbol
from tagend.layouts.paper.face import Code, Face, Symbol, TextRun
from tagend.layouts.paper.lengths import size_in_mm
from tagend.layouts.stock.formats import LabelSheet

_NAMED = 3  # sheets in one message
# What a recipe can do without, the first to go first: hands need the rest.
_SPARED: tuple[tuple[str, Callable[[Recipe], Recipe]], ...] = (
    ("note", lambda recipe: replace(recipe, note=None)),
    ("use", lambda recipe: replace(recipe, use=None)),
    (
        "strengths",
        lambda recipe: replace(
            recipe, sections=tuple(replace(section, strength=None) for section in recipe.sections)
        ),
    ),
)


def labels_of(
    leader: Leader,
    codes: Sequence[Symbol],
    sheet: LabelSheet,
    notes: Sequence[LabelNote],
    practice: Practice,
    wording: Wording,
    known: Iterable[LabelSheet],
) -> list[Face]:
    """Return the label of a leader with each of the notes; the plainest of the codes comes last.

    Raises `Refused`, which tells the known sheets that would do and what could be left out,
    where the label is too small, and `NoGlyph`.
    """
    try:
        return [_label(leader, codes, sheet, wording, note) for note in notes]
    except TooSmall:
        raise _too_small(leader, codes[-1], sheet, practice, wording, known) from None


def _label(
    leader: Leader,
    codes: Sequence[Symbol],
    sheet: LabelSheet,
    wording: Wording,
    note: LabelNote,
) -> Face:
    """Return the label with the strongest code that costs no word and no design module.

    By the tables of tests/bench/wear.py such a code outlives damage better, and is seen as well.
    """
    *stronger, plainest = codes
    face = wallet_label(leader, plainest, sheet, wording, note)
    for code in stronger:
        if code != plainest and _holds(leader, code, sheet, wording):
            other = wallet_label(leader, code, sheet, wording, note)
            if _module(other) >= DESIGN_MODULE and _words(other) == _words(face):
                return other
    return face


def _module(face: Face) -> float:
    return min(item.module for item in face.items if isinstance(item, Code))


def _words(face: Face) -> list[str]:
    runs = (item.text for item in face.items if isinstance(item, TextRun))
    return sorted(word for run in runs for word in run.split())


def _too_small(
    leader: Leader,
    code: Symbol,
    sheet: LabelSheet,
    practice: Practice,
    wording: Wording,
    known: Iterable[LabelSheet],
) -> Refused:
    ways = []
    if names := [
        other.name for other in islice(_that_hold(leader, code, sheet, wording, known), _NAMED)
    ]:
        ways.append(f"use --stock {' or '.join(names)}")
    if words := _to_leave_out(leader, sheet, practice, wording):
        ways.append(f"leave out its {' and '.join(words)}")
    return refused(
        f"its code of {code.side} modules and its words do not fit a label of "
        f"{size_in_mm(sheet.width, sheet.height)}",
        ", or ".join(ways) or "no label known here is large enough",
        leader.recipe.name,
    )


def _that_hold(
    leader: Leader,
    code: Symbol,
    sheet: LabelSheet,
    wording: Wording,
    known: Iterable[LabelSheet],
) -> Iterator[LabelSheet]:
    """Yield the sheets whose labels hold the leader: first of the same kind, smallest first."""

    def effort(other: LabelSheet) -> tuple[bool, bool, float]:
        another_kind = other.on_roll != sheet.on_roll
        return another_kind, other.paper != sheet.paper, other.width * other.height

    return (other for other in sorted(known, key=effort) if _holds(leader, code, other, wording))


def _to_leave_out(
    leader: Leader, sheet: LabelSheet, practice: Practice, wording: Wording
) -> list[str]:
    """Return what the recipe has to do without to fit; nothing where that does not help either."""
    recipe, left_out = leader.recipe, []
    for word, without in _SPARED:
        if (shorter := without(recipe)) == recipe:
            continue
        recipe = shorter
        left_out.append(word)
        code = symbol(write_notation(recipe, practice.knots, practice.materials))
        if _holds(leader, code, sheet, wording):
            return left_out
    return []


def _holds(leader: Leader, code: Symbol, sheet: LabelSheet, wording: Wording) -> bool:
    try:
        wallet_label(leader, code, sheet, wording)
    except TooSmall:
        return False
    return True
