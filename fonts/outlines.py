"""Characters as shapes, for pictures that need no font: a font's characters in, outlines out."""

import json
from collections.abc import Iterable, Mapping
from functools import cache

from tagend.fonts.files import OWN, font_path
from tagend.layouts.base.faults import refused
from tagend.layouts.strangers.apart import apart
from tagend.layouts.strangers.unreadable import Unreadable

EM = 1000  # units of an outline in an em


def outlines(font: str, characters: Iterable[str]) -> Mapping[str, str]:
    """Return characters that the font has as SVG path data, y upwards; a space's is empty.

    Raises `Refused` for a person's own font that is damaged.
    """
    known, wanted = _known(font), dict.fromkeys(characters)
    if missing := [character for character in wanted if character not in known]:
        known |= _read(font, missing)
    return {character: known[character] for character in wanted}


@cache
def _known(font: str) -> dict[str, str]:
    """Return the outlines that this process has of a font already; `outlines` adds to them."""
    return {}


def _read(font: str, characters: Iterable[str]) -> dict[str, str]:
    asked = json.dumps([font, *characters]).encode()
    if not font.startswith(OWN):
        return drawn(asked)
    try:
        return apart(drawn, asked)
    except Unreadable as bad:
        raise refused(bad.found, bad.instead, str(font_path(font))) from None


def drawn(asked: bytes) -> dict[str, str]:
    """Return the outlines asked for as JSON, a font and its characters, in this process."""
    from fontTools.pens.svgPathPen import SVGPathPen
    from fontTools.pens.transformPen import TransformPen
    from fontTools.ttLib import TTFont

    name, *characters = json.loads(asked)
    with TTFont(font_path(name)) as font:
        glyphs, names = font.getGlyphSet(), font.getBestCmap()
        scale = EM / font["head"].unitsPerEm
        shapes: dict[str, str] = {}
        for character in characters:
            pen = SVGPathPen(glyphs, ntos="{:g}".format)
            glyph = glyphs[names[ord(character)]]
            glyph.draw(pen if scale == 1 else TransformPen(pen, (scale, 0, 0, scale, 0, 0)))
            shapes[character] = str(pen.getCommands())
    return shapes
