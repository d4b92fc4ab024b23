"""Line in one text, as a person asks for it at a counter: `0.028 in fluorocarbon 60 lb 12 in`."""

from collections.abc import Callable, Sequence
from typing import TypeVar

from tagend.cards.base.units import Diameter, parse_diameter, parse_span, parse_strength
from tagend.cards.recipe.recipe import Strand
from tagend.cards.recipe.vocabulary import Vocabulary
from tagend.layouts.base.faults import Refused, refused

T = TypeVar("T")

_LONGEST = 120  # characters
_HINT = 'write diameter and material, such as "0.028 in fluorocarbon 60 lb 12 in"'


def parse_strand(written: object, words: Vocabulary) -> Strand:
    """Read `DIAMETER MATERIAL [STRENGTH] [LENGTH]`; the length may be a range.

    Raises `Refused` for other texts and for a material that is not known.
    """
    if not isinstance(written, str):
        raise refused("this is not a text in quotes", _HINT)
    if len(written) > _LONGEST:
        raise refused(f"this text has {len(written)} characters", f"write at most {_LONGEST}")
    if not written.strip():
        raise refused("this text is empty", _HINT)
    diameter, rest = _diameter(written.split())
    length, rest = _off_the_end(rest, parse_span)
    strength, rest = _off_the_end(rest, parse_strength)
    if not rest:
        raise refused(f"{written.strip()!r} names no material", _HINT)
    return Strand(
        diameter=diameter,
        material=words.material(" ".join(rest)),
        strength=strength,
        length=length,
        written=written.strip(),
    )


def _diameter(words: Sequence[str]) -> tuple[Diameter, Sequence[str]]:
    """Return the diameter that the first words spell, and the rest."""
    faults = []
    for count in range(1, min(len(words), 3) + 1):  # 4X, 0.023 in, 1 1/2 mm
        try:
            return parse_diameter(" ".join(words[:count])), words[count:]
        except Refused as refusal:
            faults.append(refusal)
    raise faults[0]


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
