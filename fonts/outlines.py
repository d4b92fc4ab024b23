"""Characters as shapes, for pictures that need no font: a character in, its outline out."""

from functools import cache
from typing import TYPE_CHECKING

from tagend.fonts.files import font_path

if TYPE_CHECKING:
    from fontTools.ttLib import TTFont


@cache
def _opened(font: str) -> "TTFont":
    from fontTools.ttLib import TTFont

    return TTFont(font_path(font))


def units_per_em(font: str) -> int:
    """Return the unit of a font's outlines."""
    return int(_opened(font)["head"].unitsPerEm)


@cache
def outline(character: str, font: str) -> str:
    """Return a character that the font has as SVG path data, in its units, y upwards.

    It is empty for a space.
    """
    from fontTools.pens.svgPathPen import SVGPathPen

    glyphs = _opened(font).getGlyphSet()
    pen = SVGPathPen(glyphs)
    glyphs[_opened(font).getBestCmap()[ord(character)]].draw(pen)
    return str(pen.getCommands())
