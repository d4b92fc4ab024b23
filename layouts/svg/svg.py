"""A sheet in, the bytes of an SVG file out: true to size, in black and greys, with no font needed.

The same sheet gives the same bytes. What comes often, such as a glyph, is stated once.
"""

from collections import Counter
from collections.abc import Iterable, Iterator
from itertools import groupby
from xml.sax.saxutils import escape, quoteattr

from tagend.fonts import EM, OURS
from tagend.layouts.paper.face import MM, Code, Face, Item, Path, Picture, Symbol, TextRun
from tagend.layouts.paper.raster import Raster
from tagend.layouts.sheets.sheet import TURNED, Adjustment, Placed, Sheet
from tagend.layouts.svg.shapes import glyphs, modules, number, path_element, png_data

_XLINK = "http://www.w3.org/1999/xlink"  # without it, older editors find no glyph
_MITER = 10  # the limit of a PDF's pointed corners, ISO 32000-1, 8.4.1; an SVG's own is 4


class _Drawing:
    """What has been stated to be drawn again."""

    def __init__(self) -> None:
        # So that a glyph has one name in all files, which may stand side by side in one page.
        self.fonts = {font: place for place, font in enumerate((*OURS.medium, *OURS.bold))}
        self.glyphs: dict[str, str] = {}  # outlines by their names
        self.codes: dict[Symbol, str] = {}  # the name of each
        self.pictures: dict[Raster, str] = {}
        self.faces: dict[int, str] = {}  # by the id of a face, which its sheet holds

    def defs(self) -> Iterator[str]:
        """Yield a definition of all but the faces, which are drawn where they first come."""
        for name, outline in self.glyphs.items():
            yield f'<path id="{name}" d="{outline}"/>'
        for symbol, name in self.codes.items():
            yield f'<path id="{name}" d="{modules(symbol)}"/>'
        for raster, name in self.pictures.items():
            size = f'width="{raster.width}" height="{raster.height}" preserveAspectRatio="none"'
            href = f"data:image/png;base64,{png_data(raster)}"
            yield f'<image id="{name}" {size} xlink:href="{href}"/>'


def face_svg(face: Face, *, title: str, language: str = "en") -> bytes:
    """Return an SVG of one face, as `sheet_svg` does."""
    sheet = Sheet(face.width, face.height, (Placed(face, 0, 0),))
    return sheet_svg(sheet, title=title, language=language)


def sheet_svg(sheet: Sheet, *, title: str, language: str = "en") -> bytes:
    """Return an SVG 1.1 file of the sheet on white, its lengths in mm and its drawing in points.

    It shows what a PDF of the sheet does. `language` is that of the text, as BCP 47 names it. One
    who has it read out hears the title and all words.
    """
    drawing = _Drawing()
    drawn = list(_on_sheet(drawing, sheet))
    width, height = number(sheet.width), number(sheet.height)
    lines = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        f'<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="{_XLINK}" version="1.1" '
        f'width="{number(sheet.width / MM)}mm" height="{number(sheet.height / MM)}mm" '
        f'viewBox="0 0 {width} {height}" role="img" xml:lang={quoteattr(language)} '
        f'stroke-miterlimit="{_MITER}">',
        f"<title>{escape(title)}</title>",
        f"<desc>{escape(_words(sheet))}</desc>",
        "<defs>",
        *drawing.defs(),
        "</defs>",
        f'<rect width="{width}" height="{height}" fill="#ffffff"/>',
        *drawn,
        "</svg>\n",
    ]
    return "\n".join(lines).encode()


def _words(sheet: Sheet) -> str:
    """Return all words of a sheet, a line of type on each line, those of equal faces once."""
    faces = {id(placed.face): placed.face for placed in sheet.placed}
    items = [*(face.items for face in faces.values()), sheet.marks]
    runs = [[item for item in each if isinstance(item, TextRun)] for each in items]
    lines = (line for each in runs for _, line in groupby(each, key=lambda run: run.y))
    return "\n".join(" ".join(run.text for run in line) for line in lines)


def _on_sheet(drawing: _Drawing, sheet: Sheet) -> Iterator[str]:
    by = sheet.adjustment
    if by != Adjustment():
        yield f"<g {_transform(by.scale_x, 0, 0, by.scale_y, by.x, by.y)}>"
    uses = Counter(id(placed.face) for placed in sheet.placed)
    for placed in sheet.placed:
        yield from _placed(drawing, placed, often=uses[id(placed.face)] > 1)
    yield from _items(drawing, sheet.marks)
    if by != Adjustment():
        yield "</g>"


def _placed(drawing: _Drawing, placed: Placed, *, often: bool) -> Iterator[str]:
    x_by_u, y_by_u, x_by_v, y_by_v = TURNED[placed.turn]
    place = _transform(x_by_u, y_by_u, x_by_v, y_by_v, *placed.at(0, 0))
    key = id(placed.face)
    if key in drawing.faces:
        yield f'<use xlink:href="#{drawing.faces[key]}" {place}/>'
        return
    name = ""
    if often:
        drawing.faces[key] = f"face{len(drawing.faces) + 1}"
        name = f' id="{drawing.faces[key]}"'
    yield f"<g {place}><g{name}>"
    yield from _items(drawing, placed.face.items)
    yield "</g></g>"


def _items(drawing: _Drawing, items: Iterable[Item]) -> Iterator[str]:
    for item in items:
        match item:
            case TextRun():
                yield _text(drawing, item)
            case Path():
                yield path_element(item)
            case Code(x, y, module, symbol):
                name = drawing.codes.setdefault(symbol, f"code{len(drawing.codes) + 1}")
                yield f'<use xlink:href="#{name}" {_transform(module, 0, 0, module, x, y)}/>'
            case Picture(x, y, width, height, raster):
                name = drawing.pictures.setdefault(raster, f"picture{len(drawing.pictures) + 1}")
                scaled = width / raster.width, 0, 0, height / raster.height
                yield f'<use xlink:href="#{name}" {_transform(*scaled, x, y)}/>'


def _text(drawing: _Drawing, run: TextRun) -> str:
    font = drawing.fonts.setdefault(run.font, len(drawing.fonts))
    uses, outlines = glyphs(run.text, run.font, f"g{font}-")
    drawing.glyphs.update(outlines)
    unit = run.size / EM
    return f"<g {_transform(unit, 0, 0, -unit, run.x, run.y)}>{uses}</g>"


def _transform(a: float, b: float, c: float, d: float, x: float, y: float) -> str:
    return f'transform="matrix({a:.6g} {b:.6g} {c:.6g} {d:.6g} {number(x)} {number(y)})"'
