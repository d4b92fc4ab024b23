"""Small fonts for tests: the characters and a name in, a file out."""

from pathlib import Path

from fontTools.fontBuilder import FontBuilder
from fontTools.pens.t2CharStringPen import T2CharStringPen
from fontTools.pens.ttGlyphPen import TTGlyphPen


def truetype(path: Path, characters: str, name: str, embedding: int = 0) -> Path:
    """Write a font in which every character is a box half an em wide."""
    builder = _builder(characters, truetype=True)
    pen = TTGlyphPen(None)
    _box(pen)
    glyph = pen.glyph()
    builder.setupGlyf(dict.fromkeys(_names(characters), glyph))
    _finish(builder, characters, name, embedding)
    builder.save(path)
    return path


def postscript(path: Path, characters: str, name: str) -> Path:
    """Write the same font with PostScript (CFF) outlines."""
    builder = _builder(characters, truetype=False)
    pen = T2CharStringPen(500, None)
    _box(pen)
    shapes = dict.fromkeys(_names(characters), pen.getCharString())
    builder.setupCFF(name, {}, shapes, {})
    _finish(builder, characters, name, 0)
    builder.save(path)
    return path


def _names(characters: str) -> list[str]:
    return [".notdef", *(f"u{ord(character):X}" for character in characters)]


def _builder(characters: str, *, truetype: bool) -> FontBuilder:
    builder = FontBuilder(1000, isTTF=truetype)
    builder.setupGlyphOrder(_names(characters))
    builder.setupCharacterMap({ord(character): f"u{ord(character):X}" for character in characters})
    return builder


def _box(pen: TTGlyphPen | T2CharStringPen) -> None:
    pen.moveTo((50, 0))
    pen.lineTo((50, 700))
    pen.lineTo((450, 700))
    pen.lineTo((450, 0))
    pen.closePath()


def _finish(builder: FontBuilder, characters: str, name: str, embedding: int) -> None:
    builder.setupHorizontalMetrics(dict.fromkeys(_names(characters), (500, 50)))
    builder.setupHorizontalHeader(ascent=800, descent=-200)
    builder.setupOS2(fsType=embedding)
    builder.setupNameTable({"familyName": name, "styleName": "Regular", "psName": name})
    builder.setupPost()
