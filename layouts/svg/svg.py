"""A sheet in, the bytes of an SVG file out: true to size, in black and greys, with no font needed.

The same sheet gives the same bytes. A face, a code or a picture that comes often is stated once.
"""

from collections import Counter
from collections.abc import Iterable, Iterator
from itertools import chain, groupby
from xml.sax.saxutils import escape, quoteattr

from tagend.fonts.outlines import EM, outlines
from tagend.layouts.paper.face import MM, Code, Face, Item, Path, Picture, TextRun
from tagend.layouts.sheets.sheet import TURNED, Adjustment, Placed, Sheet
from tagend.layouts.svg.glyphs import glyphs_path
from tagend.layouts.svg.shapes import (
    Shared,
    code_shape,
    number,
    path_element,
    picture_shape,
    shared,
)

_XLINK = "http://www.w3.org/1999/xlink"  # without it, older editors find no code
_MITER = 10  # the limit of a PDF's pointed corners, ISO 32000-1, 8.4.1; an SVG's own is 4


class _Stated:
    """What has been stated to be drawn again."""

    def __init__(self) -> None:
        self.shapes: dict[str, str] = {}  # elements by their names
        self.faces: dict[int, Shared] = {}  # by the id of a face, which its sheet holds

    def use(self, shape: Shared, place: str) -> str:
        """Return a use of a shape at its place."""
        self.shapes[shape.name] = shape.element
        return f'<use xlink:href="#{shape.name}" {place}/>'


def write_svg(face: Face, *, title: str, language: str = "en") -> bytes:
    """Return an SVG of one face, as `sheet_svg` does."""
    sheet = Sheet(face.width, face.height, (Placed(face, 0, 0),))
    return sheet_svg(sheet, title=title, language=language)


def sheet_svg(sheet: Sheet, *, title: str, language: str = "en") -> bytes:
    """Return an SVG 1.1 file of the sheet on white, its lengths in mm and its drawing in points.

    It shows what a PDF of the sheet does. `language` is that of the text, as BCP 47 names it. One
    who has it read out hears the title and all words.
    """
    texts = _texts(sheet)
    _read_fonts(texts)
    stated = _Stated()
    drawn = list(_on_sheet(stated, sheet))
    width, height = number(sheet.width), number(sheet.height)
    lines = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        f'<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="{_XLINK}" version="1.1" '
        f'width="{number(sheet.width / MM)}mm" height="{number(sheet.height / MM)}mm" '
        f'viewBox="0 0 {width} {height}" role="img" xml:lang={quoteattr(language)} '
        f'stroke-miterlimit="{_MITER}">',
        f"<title>{escape(title)}</title>",
        f"<desc>{escape(_words(texts))}</desc>",
        "<defs>",
        *stated.shapes.values(),
        "</defs>",
        f'<rect width="{width}" height="{height}" fill="#ffffff"/>',
        *drawn,
        "</svg>\n",
    ]
    return "\n".join(lines).encode()


def _texts(sheet: Sheet) -> list[list[TextRun]]:
    """Return the text of each face and of the marks, that of equal faces once."""
    faces = {id(placed.face): placed.face for placed in sheet.placed}
    items = [*(face.items for face in faces.values()), sheet.marks]
    return [[item for item in each if isinstance(item, TextRun)] for each in items]


def _words(texts: Iterable[Iterable[TextRun]]) -> str:
    """Return all words, a line of type on each line."""
    lines = (line for each in texts for _, line in groupby(each, key=lambda run: run.y))
    return "\n".join(" ".join(run.text for run in line) for line in lines)


def _read_fonts(texts: Iterable[Iterable[TextRun]]) -> None:
    """Have all outlines read at once: for each text by itself, a font would be opened anew."""
    wanted: dict[str, dict[str, None]] = {}
    for run in chain.from_iterable(texts):
        wanted.setdefault(run.font, {}).update(dict.fromkeys(run.text))
    for font, characters in wanted.items():
        outlines(font, characters)


def _on_sheet(stated: _Stated, sheet: Sheet) -> Iterator[str]:
    by = sheet.adjustment
    if by != Adjustment():
        yield f"<g {_transform(by.scale_x, 0, 0, by.scale_y, by.x, by.y)}>"
    uses = Counter(id(placed.face) for placed in sheet.placed)
    for placed in sheet.placed:
        yield _placed(stated, placed, often=uses[id(placed.face)] > 1)
    yield from _items(stated, sheet.marks)
    if by != Adjustment():
        yield "</g>"


def _placed(stated: _Stated, placed: Placed, *, often: bool) -> str:
    x_by_u, y_by_u, x_by_v, y_by_v = TURNED[placed.turn]
    place = _transform(x_by_u, y_by_u, x_by_v, y_by_v, *placed.at(0, 0))
    known = stated.faces.get(id(placed.face))
    if known is None:
        inside = f">{''.join(_items(stated, placed.face.items))}"
        if not often:
            return f"<g {place}{inside}</g>"
        known = stated.faces[id(placed.face)] = shared("g", inside)
    return stated.use(known, place)


def _items(stated: _Stated, items: Iterable[Item]) -> Iterator[str]:
    for item in items:
        match item:
            case TextRun():
                yield _text(item)
            case Path():
                yield path_element(item)
            case Code(x, y, module, symbol):
                yield stated.use(code_shape(symbol), _transform(module, 0, 0, module, x, y))
            case Picture(x, y, width, height, raster):
                scaled = width / raster.width, 0, 0, height / raster.height
                yield stated.use(picture_shape(raster), _transform(*scaled, x, y))


def _text(run: TextRun) -> str:
    unit = run.size / EM
    place = _transform(unit, 0, 0, -unit, run.x, run.y)
    return f'<path {place} d="{glyphs_path(run.text, run.font)}"/>'


def _transform(a: float, b: float, c: float, d: float, x: float, y: float) -> str:
    return f'transform="matrix({a:.6g} {b:.6g} {c:.6g} {d:.6g} {number(x)} {number(y)})"'
