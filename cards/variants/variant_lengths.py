"""A leader's lengths changed: a recipe and the wish for its butt or total in, a recipe out."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from tagend.cards.base.shown_lengths import FINEST_MM, ShownUnit, length, length_number
from tagend.cards.base.units import Length, Span, parse_span
from tagend.cards.leader.allowance import round_up
from tagend.cards.leader.audit.lengths import too_short
from tagend.cards.leader.leader import Leader, Piece, work_out
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Recipe
from tagend.layouts.base.faults import refused

_SHORTER_BUTT = "write a shorter butt"
_LONGER_TOTAL = "write a longer total"


def with_butt(recipe: Recipe, butt: Length, practice: Practice) -> Recipe:
    """Return the recipe with a longer butt, and the rest cut down so that the total stays.

    In hard wind the butt is doubled, up to 6 ft, and the rest goes down in quick steps of about
    1 ft: common practice, no source. Raises `Refused` where the rest would not hold its knots.
    """
    leader = _as_written(recipe, practice)
    butts = [piece for piece in _to_cut(leader) if piece.part == "butt"]
    rest = [piece for piece in _to_cut(leader) if piece.part != "butt"]
    if not butts or not rest:
        found = "there is nothing below the butt" if butts else "this leader has no butt"
        raise refused(f"{found} to cut to length", "leave its butt as it is")
    now, below = _sum(butts), _sum(rest)
    left = below - (butt.mm - now)
    if butt.mm <= now:
        raise refused(f"it is {length(now, leader.unit)} already", "write a longer butt")
    if left <= 0:
        whole = length(now + below, leader.unit)
        raise refused(f"a butt of {butt} leaves nothing of {whole}", _SHORTER_BUTT)
    mark = _mark_mm(leader, practice)
    spans = _spans(leader, rest, levelled(_lengths(rest), left, mark), mark, _SHORTER_BUTT)
    if len(butts) == 1:
        spans[butts[0].place] = Span(butt, butt, butt.written)
    else:
        spans |= _spans(leader, butts, scaled(_lengths(butts), butt.mm, mark), mark, _SHORTER_BUTT)
    return _recut(recipe, spans, practice, _SHORTER_BUTT)


def with_total(recipe: Recipe, total: Length, practice: Practice) -> Recipe:
    """Return the recipe scaled to a finished length, but for bite guards and what is bought.

    Raises `Refused` where a section would not hold its knots.
    """
    leader = _as_written(recipe, practice)
    pieces = _to_cut(leader)
    kept = leader.finished.high_mm - _sum(pieces)  # where lengths are as cut, knots take of it
    if not pieces or total.mm <= kept:
        raise refused(f"{total} leaves nothing to cut to length", _LONGER_TOTAL)
    mark = _mark_mm(leader, practice)
    lengths = scaled(_lengths(pieces), total.mm - kept, mark)
    spans = _spans(leader, pieces, lengths, mark, _LONGER_TOTAL)
    return _recut(replace(recipe, total=total), spans, practice, _LONGER_TOTAL)


def _as_written(recipe: Recipe, practice: Practice) -> Leader:
    """Return the leader in the unit of its recipe, whatever a person likes to be shown."""
    return work_out(recipe, replace(practice, unit=None))


def _to_cut(leader: Leader) -> list[Piece]:
    """Return all pieces but those whose length is given: by teeth, or by who made them."""
    return [p for p in leader.pieces if p.part != "bite guard" and not p.bought]


def _lengths(pieces: Iterable[Piece]) -> list[Fraction]:
    return [piece.section.length.high.mm for piece in pieces]


def _sum(pieces: Iterable[Piece]) -> Fraction:
    return sum(_lengths(pieces), start=Fraction(0))


def _mark_mm(leader: Leader, practice: Practice) -> Fraction:
    return round_up(practice.tape_mm(leader.unit), FINEST_MM[leader.unit])


def _spans(
    leader: Leader,
    pieces: Sequence[Piece],
    lengths: Sequence[Fraction],
    mark: Fraction,
    instead: str,
) -> dict[int, Span]:
    """Return the lengths of those pieces that change, by their place."""
    spans = {}
    for piece, mm in zip(pieces, lengths, strict=True):
        if mm <= 0:
            raise refused(f"nothing is left for section {piece.place}", instead)
        if mm != piece.section.length.high.mm:
            spans[piece.place] = _span(piece.section.length, mm, mark, leader.unit)
    return spans


def _span(before: Span, mm: Fraction, mark: Fraction, unit: ShownUnit) -> Span:
    """Return a length, or a range in the proportion of the one before."""
    low = max(round(before.low.mm * mm / before.high.mm / mark) * mark, mark)
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
    for found in too_short(_as_written(recut, practice), practice.rules["too short"]):
        if found.section in spans:
            raise refused(found.says, instead)
    return recut


def scaled(lengths: Sequence[Fraction], total: Fraction, mark: Fraction) -> list[Fraction]:
    """Return the lengths in their proportion; their sum is the mark nearest to `total`.

    What rounding down to the marks leaves over goes to those that it took most from.
    """
    factor = total / sum(lengths) / mark
    exact = [length * factor for length in lengths]
    marks = [number // 1 for number in exact]
    left = round(total / mark) - sum(marks)
    most_lost = sorted(range(len(exact)), key=lambda place: marks[place] - exact[place])
    for place in most_lost[:left]:
        marks[place] += 1
    return [number * mark for number in marks]


def levelled(lengths: Sequence[Fraction], total: Fraction, mark: Fraction) -> list[Fraction]:
    """Return the lengths with the longest cut down to one length, so that they make `total`.

    `total` is no more than they make now. The short ones, which have the least room for their
    knots, stay as they are.
    """
    level = _level(lengths, total)
    long = [place for place, length in enumerate(lengths) if length > level]
    rest = sum(length for length in lengths if length <= level)
    cut = scaled([Fraction(1)] * len(long), total - rest, mark) if long else []
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
