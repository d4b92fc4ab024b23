"""A leader's lengths changed: a recipe and the wish for its butt or total in, a recipe out."""

from collections.abc import Iterable, Mapping, Sequence, Set

from cfractions import Fraction
from msgspec.structs import replace

from tagend.cards.base.hand_marks import hand_mark_mm, on_hand_marks
from tagend.cards.base.shown_lengths import FINEST_MM, ShownUnit, length, length_number
from tagend.cards.base.units import Length, Span, parse_span
from tagend.cards.leader.audit.lengths import crowded
from tagend.cards.leader.leader import Leader, Piece, work_out
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Recipe
from tagend.layouts.base.faults import refused

_SHORTER_BUTT = "write a shorter butt, or say a shorter tippet"
_LONGER_TOTAL = "write a longer total"


def with_butt(
    recipe: Recipe,
    butt: Length,
    practice: Practice,
    told: Set[int] = frozenset(),
    freed_mm: Fraction = Fraction(0),
) -> Recipe:
    """Return the recipe with a longer butt, and the taper cut down so that the total stays.

    The tippet and the sections `told`, by their place, keep their length; where there is no taper,
    the tippet gives. What these were cut down by, `freed_mm`, goes to the taper. In hard wind the
    butt is doubled, up to 6 ft, and the rest goes down in quick steps of about 1 ft: common
    practice, no source. Raises `Refused` where the rest would not hold its knots.
    """
    leader = _as_written(recipe, practice)
    butts = [piece for piece in _to_cut(leader) if piece.part == "butt"]
    below = [piece for piece in _to_cut(leader, told) if piece.part != "butt"]
    rest = [piece for piece in below if piece.part != "tippet"] or below
    if not butts or not rest:
        found = "there is nothing below the butt" if butts else "this leader has no butt"
        raise refused(f"{found} to cut to length", "leave its butt as it is")
    now, taper = _sum(butts), _sum(rest)
    left = _spelled_mm(taper + freed_mm - (butt.mm - now), leader.unit)
    if butt.mm <= now:
        raise refused(f"it is {length(now, leader.unit)} already", "write a longer butt")
    if left <= 0:
        whole = length(now + taper + freed_mm, leader.unit)
        raise refused(f"a butt of {butt} leaves nothing of {whole}", _SHORTER_BUTT)
    fit = levelled if left <= taper else scaled
    spans = _spans(leader, rest, fit(_lengths(rest), left, leader.unit), _SHORTER_BUTT)
    if len(butts) == 1:
        spans[butts[0].place] = Span(butt, butt, butt.written)
    else:
        in_all = _spelled_mm(butt.mm, leader.unit)
        spans |= _spans(leader, butts, scaled(_lengths(butts), in_all, leader.unit), _SHORTER_BUTT)
    return _recut(recipe, spans, practice, _SHORTER_BUTT)


def with_total(
    recipe: Recipe, total: Length, practice: Practice, told: Set[int] = frozenset()
) -> Recipe:
    """Return the recipe scaled to a finished length, but for bite guards and what is bought.

    The sections `told`, by their place, keep their length too. Raises `Refused` where a section
    would not hold its knots.
    """
    leader = _as_written(recipe, practice)
    pieces = _to_cut(leader, told)
    kept = leader.finished.high_mm - _sum(pieces)  # where lengths are as cut, knots take of it
    left = _spelled_mm(total.mm - kept, leader.unit)
    if not pieces or left <= 0:
        raise refused(f"{total} leaves nothing to cut to length", _LONGER_TOTAL)
    lengths = scaled(_lengths(pieces), left, leader.unit)
    spans = _spans(leader, pieces, lengths, _LONGER_TOTAL)
    return _recut(replace(recipe, total=total), spans, practice, _LONGER_TOTAL)


def _as_written(recipe: Recipe, practice: Practice) -> Leader:
    """Return the leader in the unit of its recipe, whatever a person likes to be shown."""
    return work_out(recipe, replace(practice, unit=None))


def _to_cut(leader: Leader, told: Set[int] = frozenset()) -> list[Piece]:
    """Return all pieces but those whose length is given: by teeth, a maker or a person."""
    return [
        piece
        for piece in leader.pieces
        if not (piece.part == "bite guard" or piece.bought or piece.place in told)
    ]


def _lengths(pieces: Iterable[Piece]) -> list[Fraction]:
    return [piece.section.length.high.mm for piece in pieces]


def _sum(pieces: Iterable[Piece]) -> Fraction:
    return sum(_lengths(pieces), start=Fraction(0))


def _spelled_mm(mm: Fraction, unit: ShownUnit) -> Fraction:
    return round(mm / FINEST_MM[unit]) * FINEST_MM[unit]


def _spans(
    leader: Leader, pieces: Sequence[Piece], lengths: Sequence[Fraction], instead: str
) -> dict[int, Span]:
    """Return the lengths of those pieces that change, by their place."""
    spans = {}
    for piece, mm in zip(pieces, lengths, strict=True):
        if mm <= 0:
            raise refused(f"nothing is left for section {piece.place}", instead)
        if mm != piece.section.length.high.mm:
            spans[piece.place] = _span(piece.section.length, mm, leader.unit)
    return spans


def _span(before: Span, mm: Fraction, unit: ShownUnit) -> Span:
    """Return a length, or a range in the proportion of the one before."""
    if before.low == before.high:
        return parse_span(length(mm, unit))
    wanted = before.low.mm * mm / before.high.mm
    mark = hand_mark_mm(wanted, unit)
    low = max(round(wanted / mark) * mark, mark)
    if low >= mm:
        return parse_span(length(mm, unit))
    return parse_span(f"{length_number(low, unit)} to {length(mm, unit)}")


def _recut(recipe: Recipe, spans: Mapping[int, Span], practice: Practice, instead: str) -> Recipe:
    """Return the recipe with new lengths, or refuse it where one leaves no room for its knots."""
    sections = (
        replace(section, length=spans.get(place, section.length))
        for place, section in enumerate(recipe.sections, start=1)
    )
    recut = replace(recipe, sections=tuple(sections))
    leader = _as_written(recut, practice)
    for place, left_mm in crowded(leader):
        if place in spans:
            left = length(left_mm, leader.unit)
            raise refused(f"section {place} has {left} between its knots", instead)
    return recut


def scaled(lengths: Sequence[Fraction], total: Fraction, unit: ShownUnit) -> list[Fraction]:
    """Return the lengths in their proportion and on the marks of hands; they make `total`."""
    factor = total / sum(lengths)
    return list(lengths) if factor == 1 else on_hand_marks([mm * factor for mm in lengths], unit)


def levelled(lengths: Sequence[Fraction], total: Fraction, unit: ShownUnit) -> list[Fraction]:
    """Return the lengths with the longest cut down to one length, so that they make `total`.

    `total` is no more than they make now. The short ones, which have the least room for their
    knots, stay as they are.
    """
    level = _level(lengths, total)
    long = [place for place, length in enumerate(lengths) if length > level]
    cut = on_hand_marks([level] * len(long), unit) if long else []
    new = dict(zip(long, cut, strict=True))
    return [new.get(place, length) for place, length in enumerate(lengths)]


def _level(lengths: Sequence[Fraction], total: Fraction) -> Fraction:
    """Return the length to which all longer ones come down."""
    left, count = total, len(lengths)
    for shortest in sorted(lengths):
        if shortest * count >= left:
            break
        left, count = left - shortest, count - 1
    return left / count
