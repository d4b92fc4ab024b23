"""Line in one text, as a person asks for it at a counter: `0.028 in fluorocarbon 60 lb 12 in`."""

from collections.abc import Callable, Sequence
from typing import TypeVar

from msgspec import Struct

from tagend.cards.base.units import (
    Span,
    Strength,
    parse_diameter,
    parse_span,
    parse_strength,
)
from tagend.cards.recipe.recipe import Strand
from tagend.cards.recipe.vocabulary import Vocabulary
from tagend.layouts.base.faults import Refused, refused

T = TypeVar("T")

_LONGEST = 120  # characters
_HINT = 'write diameter and material, such as "0.028 in fluorocarbon 60 lb 12 in"'


class StrandByStrength(Struct, frozen=True):
    """Line whose diameter is not said, and must be found on a spool."""

    strength: Strength
    material: str  # a name in the materials file
    length: Span | None


def parse_strand(written: object, words: Vocabulary) -> Strand:
    """Read `DIAMETER MATERIAL [STRENGTH] [LENGTH]`; the length may be a range.

    Raises `Refused` for other texts and for a material that is not known.
    """
    text = _text(written)
    if parse_strand_by_strength(text, words):
        raise refused(
            f"{text!r} says a strength and no diameter", "read it off the spool and write it first"
        )
    diameter, rest = _off_the_start(text.split(), parse_diameter)
    if diameter is None:
        diameter = parse_diameter(rest[0])  # which says what is wrong with it
    length, rest = _off_the_end(rest, parse_span)
    strength, rest = _off_the_end(rest, parse_strength)
    if not rest:
        raise refused(f"{text!r} names no material", _HINT)
    return Strand(
        diameter=diameter,
        material=words.material(" ".join(rest)),
        strength=strength,
        length=length,
        written=text,
    )


def parse_strand_by_strength(written: object, words: Vocabulary) -> StrandByStrength | None:
    """Read `30 lb fluorocarbon 12 in`, or `fluorocarbon 30 lb 12 in`; None for other texts.

    Raises `Refused` for no text and for a material that is not known.
    """
    length, rest = _off_the_end(_text(written).split(), parse_span)
    strength, material = _off_the_end(rest, parse_strength)
    if strength is None:
        strength, material = _off_the_start(rest, parse_strength)
    diameter, _ = _off_the_start(material, parse_diameter)
    if strength is None or diameter or not material:
        return None
    return StrandByStrength(strength, words.material(" ".join(material)), length)


def _text(written: object) -> str:
    if not isinstance(written, str):
        raise refused("this is not a text in quotes", _HINT)
    if len(written) > _LONGEST:
        raise refused(f"this text has {len(written)} characters", f"write at most {_LONGEST}")
    if not written.strip():
        raise refused("this text is empty", _HINT)
    return written.strip()


def _off_the_start(
    words: Sequence[str], parse: Callable[[object], T]
) -> tuple[T | None, Sequence[str]]:
    """Return what the first words spell, and the words behind them."""
    for count in range(1, min(len(words), 3) + 1):  # 4X, 0.023 in, 1 1/2 mm
        try:
            return parse(" ".join(words[:count])), words[count:]
        except Refused:
            continue
    return None, words


def _off_the_end(
    words: Sequence[str], parse: Callable[[object], T]
) -> tuple[T | None, Sequence[str]]:
    """Return what the most of the last words spell, and the words before them."""
    for start in range(len(words)):
        try:
            return parse(" ".join(words[start:])), words[:start]
        except Refused:
            continue
    return None, words
