"""A recipe's variants in a line each, for its main card: a recipe in, plain words out."""

import re
from collections.abc import Iterator, Sequence

from cards.leader import Leader, Piece, work_out
from cards.practice import Practice
from cards.recipe import Recipe, Strand, Variant
from cards.units import INCH_MM
from cards.variant import resolved


def variant_lines(recipe: Recipe, practice: Practice) -> tuple[str, ...]:
    """Return what each variant changes: `In hard wind: butt 6 ft, then 1-ft steps`.

    Raises `Refused` for a variant that cannot be tied.
    """
    return tuple(_line(variant, recipe, practice) for variant in recipe.variants)


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


def _line(variant: Variant, recipe: Recipe, practice: Practice) -> str:
    leader = work_out(resolved(recipe, variant, practice), practice)
    name = variant.name[0].upper() + variant.name[1:]
    return f"{name}: {'; '.join(_changes(variant, leader))}"


def _changes(variant: Variant, leader: Leader) -> Iterator[str]:
    for place, strand in (variant.replace or {}).items():
        yield f"section {place} {_words(strand)}"
    if variant.stop_after:
        end = leader.pieces[variant.stop_after - 1].section
        yield f"stop after section {variant.stop_after}, {end.diameter.plain} {end.material}"
    if variant.tippet:
        yield f"tippet {_words(variant.tippet)}"
    if variant.guard:
        yield f"bite guard {_words(variant.guard)}"
    if variant.total:
        yield f"{variant.total.plain} in all"
    if variant.butt:
        yield _butt(leader)
    elif variant.total:
        yield _list(leader.pieces)
    if variant.line_weight:
        yield f"line weight {variant.line_weight}"


def _words(strand: Strand) -> str:
    quantities = (strand.strength, strand.length)
    more = "".join(f", {quantity.plain}" for quantity in quantities if quantity)
    return f"{strand.diameter.plain} {strand.material}{more}"


def _butt(leader: Leader) -> str:
    """Return the wind leader as it is said: the butt, and the steps below it."""
    butt = [piece for piece in leader.pieces if piece.part == "butt"]
    rest = [piece for piece in leader.pieces if piece.part != "butt"]
    return f"butt {_list(butt)}, then {_steps(rest)}"


def _steps(pieces: Sequence[Piece]) -> str:
    lengths = [piece.section.length for piece in pieces]
    if len(set(lengths)) > 1 or len(lengths) == 1:
        return _list(pieces)
    foot = lengths[0].low.mm == lengths[0].high.mm == 12 * INCH_MM
    return "1-ft steps" if foot else f"{lengths[0].plain} each"


def _list(pieces: Sequence[Piece]) -> str:
    """Return the lengths; a unit that stands behind them all is said once."""
    lengths = [piece.section.length.plain for piece in pieces]
    unit = lengths[-1].rsplit(" ", 1)[1]
    if all(re.fullmatch(rf"[^a-z]+ {unit}", length) for length in lengths):
        lengths = [length.removesuffix(f" {unit}") for length in lengths[:-1]] + lengths[-1:]
    return ", ".join(lengths)
