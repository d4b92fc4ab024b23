"""Which font sets which characters: a text in, its runs out; and how wide a run is."""

import unicodedata
from itertools import groupby
from typing import NamedTuple

from tagend.fonts.faces import widths
from tagend.fonts.fonts import Chain


class Run(NamedTuple):
    """A piece of text that one font sets."""

    text: str
    font: str


class NoGlyph(ValueError):
    """No font can set a character: it would be missing on the paper, and nobody told."""

    def __init__(self, character: str) -> None:
        self.character = character
        shown = character if character.isprintable() else repr(character)
        name = unicodedata.name(character, "no name")
        super().__init__(f"no font has the character {shown} (U+{ord(character):04X}, {name})")


def runs(text: str, chain: Chain) -> tuple[Run, ...]:
    """Return the text split by the first font of the chain that has each character.

    Raises NoGlyph.
    """
    first = chain[0]
    if text and widths(first).keys() >= set(text):  # as nearly every text is
        return (Run(text, first),)
    grouped = groupby(text, key=lambda character: _font_of(character, chain))
    return tuple(Run("".join(characters), font) for font, characters in grouped)


def text_width(text: str, font: str, size: float) -> float:
    """Return the width of text that the font has, set without kerning, in the unit of `size`.

    Raises NoGlyph.
    """
    known = widths(font)
    try:
        return sum(known[character] for character in text) * size
    except KeyError as missing:
        raise NoGlyph(missing.args[0]) from None


def _font_of(character: str, chain: Chain) -> str:
    for font in chain:
        if character in widths(font):
            return font
    raise NoGlyph(character)
