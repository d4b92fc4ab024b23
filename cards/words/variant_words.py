"""A recipe's variants in a line each, for its main card: a recipe in, plain words out."""

import re
from collections.abc import Iterator, Sequence

from tagend.cards.leader.leader import Piece, work_out
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Recipe, Strand, Variant
from tagend.cards.variants.variant import resolved
from tagend.cards.words.language import Wording
from tagend.cards.words.leader_words import Told
from tagend.layouts.base.quantities import INCH_MM


def variant_lines(recipe: Recipe, practice: Practice, wording: Wording) -> tuple[str, ...]:
    """Return what each variant changes: `In hard wind: butt 6 ft, then 1-ft steps`.

    Raises `Refused` for a variant that cannot be tied.
    """
    return tuple(_line(variant, recipe, practice, wording) for variant in recipe.variants)


def short_words(variant: Variant) -> str:
    """Return what a variant without a name can be called: `to section 5, butt 6 ft`."""
    replaced = variant.replace or {}
    words = [f"section {place} {strand.diameter.plain}" for place, strand in replaced.items()]
    if len(words) > 1:
        words = ["restrung"]
    if variant.stop_after:
        words.append(f"to section {variant.stop_after}")
    if variant.tippet:
        words.append(f"tippet {variant.tippet.diameter.plain}")
    if variant.guard:
        words.append(f"guard {variant.guard.diameter.plain}")
    if variant.total:
        words.append(variant.total.plain)
    if variant.butt:
        words.append(f"butt {variant.butt.plain}")
    if variant.line_weight:
        words.append(f"line {variant.line_weight}")
    return ", ".join(words) or "another use"


def _line(variant: Variant, recipe: Recipe, practice: Practice, wording: Wording) -> str:
    told = Told(work_out(resolved(recipe, variant, practice), practice), wording)
    name = variant.name[0].upper() + variant.name[1:]
    return f"{name}: {'; '.join(_changes(variant, told))}"


def _changes(variant: Variant, told: Told) -> Iterator[str]:
    pieces, say = told.leader.pieces, told.wording.say
    for place, strand in (variant.replace or {}).items():
        yield say("section_is", section=place, strand=_words(strand, told))
    if variant.stop_after:
        strand_there = told.thickness(pieces[variant.stop_after - 1])
        yield say("stop_after", section=variant.stop_after, strand=strand_there)
    if variant.tippet:
        yield say("tippet", strand=_words(variant.tippet, told))
    if variant.guard:
        yield say("guard", strand=_words(variant.guard, told))
    if variant.total:
        yield say("in_all", length=told.length(variant.total))
    if variant.butt:
        yield _butt(told)
    elif variant.total:
        yield _list(pieces, told)
    if variant.line_weight:
        yield say("line_weight", weight=variant.line_weight)


def _words(strand: Strand, told: Told) -> str:
    more = [told.strength(strand.strength)] if strand.strength else []
    more += [told.length(strand.length)] if strand.length else []
    return ", ".join((told.kind(told.diameter(strand.diameter), strand.material), *more))


def _butt(told: Told) -> str:
    """Return the wind leader as it is said: the butt, and the steps below it."""
    butt = [piece for piece in told.leader.pieces if piece.part == "butt"]
    rest = [piece for piece in told.leader.pieces if piece.part != "butt"]
    return told.wording.say("butt_then", butt=_list(butt, told), rest=_steps(rest, told))


def _steps(pieces: Sequence[Piece], told: Told) -> str:
    first, *others = (piece.section.length for piece in pieces)
    if not others or any(other != first for other in others):
        return _list(pieces, told)
    if first.low.mm == first.high.mm == 12 * INCH_MM and told.leader.unit == "in":
        return told.wording.say("foot_steps")
    return told.wording.say("each", length=told.length(first))


def _list(pieces: Sequence[Piece], told: Told) -> str:
    """Return the lengths; a unit that stands behind them all is said once."""
    lengths = [told.length(piece.section.length) for piece in pieces]
    unit = lengths[-1].rsplit(" ", 1)[1]
    if all(re.fullmatch(rf"[^a-z]+ {unit}", length) for length in lengths):
        lengths = [length.removesuffix(f" {unit}") for length in lengths[:-1]] + lengths[-1:]
    return told.wording.listed(lengths)
