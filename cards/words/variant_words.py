"""A recipe's variants in a line each, for its main card: a recipe in, plain words out."""

import re
from collections.abc import Iterator, Sequence

from tagend.cards.leader.leader import Leader, Piece, work_out
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Recipe, Strand, Variant
from tagend.cards.variants.variant import resolved
from tagend.cards.words.language import Wording
from tagend.cards.words.leader_words import diameter, length_words, thickness
from tagend.layouts.base.quantities import INCH_MM


def variant_lines(recipe: Recipe, practice: Practice, wording: Wording) -> tuple[str, ...]:
    """Return what each variant changes: `In hard wind: butt 6 ft, then 1-ft steps`.

    Raises `Refused` for a variant that cannot be tied.
    """
    return tuple(_line(variant, recipe, practice, wording) for variant in recipe.variants)


def short_words(variant: Variant) -> str:
    """Return what a variant without a name can be called: `to section 5, butt 6 ft`."""
    replaced = (variant.replace or {}).items()
    words = [f"section {place} {strand.diameter.plain}" for place, strand in replaced]
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
    leader = work_out(resolved(recipe, variant, practice), practice)
    name = variant.name[0].upper() + variant.name[1:]
    return f"{name}: {'; '.join(_changes(variant, leader, wording))}"


def _changes(variant: Variant, leader: Leader, wording: Wording) -> Iterator[str]:
    def words(strand: Strand) -> str:
        return _words(strand, leader, wording)

    for place, strand in (variant.replace or {}).items():
        yield wording.say("section_is", section=place, strand=words(strand))
    if variant.stop_after:
        end = leader.pieces[variant.stop_after - 1]
        strand_there = thickness(end, leader, wording)
        yield wording.say("stop_after", section=variant.stop_after, strand=strand_there)
    if variant.tippet:
        yield wording.say("tippet", strand=words(variant.tippet))
    if variant.guard:
        yield wording.say("guard", strand=words(variant.guard))
    if variant.total:
        yield wording.say("in_all", length=length_words(variant.total, leader, wording))
    if variant.butt:
        yield _butt(leader, wording)
    elif variant.total:
        yield _list(leader.pieces, leader, wording)
    if variant.line_weight:
        yield wording.say("line_weight", weight=variant.line_weight)


def _words(strand: Strand, leader: Leader, wording: Wording) -> str:
    more = [wording.number(strand.strength.plain)] if strand.strength else []
    more += [length_words(strand.length, leader, wording)] if strand.length else []
    thick = diameter(strand.diameter, leader, wording)
    says = wording.say("strand", diameter=thick, material=wording.material(strand.material))
    return ", ".join((says, *more))


def _butt(leader: Leader, wording: Wording) -> str:
    """Return the wind leader as it is said: the butt, and the steps below it."""
    butt = [piece for piece in leader.pieces if piece.part == "butt"]
    rest = [piece for piece in leader.pieces if piece.part != "butt"]
    return wording.say(
        "butt_then", butt=_list(butt, leader, wording), rest=_steps(rest, leader, wording)
    )


def _steps(pieces: Sequence[Piece], leader: Leader, wording: Wording) -> str:
    lengths = [piece.section.length for piece in pieces]
    if len(set(lengths)) > 1 or len(lengths) == 1:
        return _list(pieces, leader, wording)
    foot = lengths[0].low.mm == lengths[0].high.mm == 12 * INCH_MM
    if foot and leader.unit == "in":
        return wording.say("foot_steps")
    return wording.say("each", length=length_words(lengths[0], leader, wording))


def _list(pieces: Sequence[Piece], leader: Leader, wording: Wording) -> str:
    """Return the lengths; a unit that stands behind them all is said once."""
    lengths = [length_words(piece.section.length, leader, wording) for piece in pieces]
    unit = lengths[-1].rsplit(" ", 1)[1]
    if all(re.fullmatch(rf"[^a-z]+ {unit}", length) for length in lengths):
        lengths = [length.removesuffix(f" {unit}") for length in lengths[:-1]] + lengths[-1:]
    return wording.listed(lengths)
