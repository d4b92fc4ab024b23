"""A face in, the bytes of an SVG file out: true to size, in black and greys, with no font needed.

The same face gives the same bytes. Text is drawn as its glyphs' outlines, each stated once.
"""

from collections.abc import Iterable, Iterator
from functools import lru_cache
from xml.sax.saxutils import escape, quoteattr

from tagend.fonts import EM, outlines, text_width
from tagend.layouts.codes.code import symbol_path
from tagend.layouts.paper.face import MM, Code, Face, Item, Path, Picture, Step, TextRun
from tagend.layouts.paper.raster import Raster

_XLINK = "http://www.w3.org/1999/xlink"  # without it, older editors find no glyph
_LETTERS = {"move": "M", "line": "L", "curve": "C", "close": "Z"}

_Glyph = tuple[str, str]  # a character and its font


def write_svg(face: Face, *, title: str) -> bytes:
    """Return an SVG 1.1 file of the face on white, its lengths in mm and its drawing in points."""
    shapes = _shapes(face)
    names = {glyph: f"g{number}" for number, glyph in enumerate(shapes, start=1)}
    width, height = _number(face.width), _number(face.height)
    lines = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        f'<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="{_XLINK}" version="1.1" '
        f'width="{_number(face.width / MM)}mm" height="{_number(face.height / MM)}mm" '
        f'viewBox="0 0 {width} {height}">',
        f"<title>{escape(title)}</title>",
        "<defs>",
        *(f'<path id="{name}" d="{shapes[glyph]}"/>' for glyph, name in names.items()),
        "</defs>",
        f'<rect width="{width}" height="{height}" fill="#ffffff"/>',
        *(_drawn(item, names) for item in face.items),
        "</svg>\n",
    ]
    return "\n".join(lines).encode()


def _shapes(face: Face) -> dict[_Glyph, str]:
    """Return the outline of each glyph of a face that has one, in the order of their coming."""
    runs = (item for item in face.items if isinstance(item, TextRun))
    seen = dict.fromkeys((character, run.font) for run in runs for character in run.text)
    shapes = {
        font: outlines(font, [character for character, its_font in seen if its_font == font])
        for font in {font: None for _, font in seen}
    }
    return {glyph: shape for glyph in seen if (shape := shapes[glyph[1]][glyph[0]])}


def _drawn(item: Item, names: dict[_Glyph, str]) -> str:
    match item:
        case TextRun():
            return _text(item, names)
        case Path():
            return _path(item)
        case Code():
            return _code(item)
        case Picture():
            return _picture(item)


def _text(run: TextRun, names: dict[_Glyph, str]) -> str:
    unit = run.size / EM
    uses = (
        f'<use xlink:href="#{names[glyph]}" x="{_number(x)}"/>'
        for glyph, x in _places(run)
        if glyph in names
    )
    move = f"translate({_number(run.x)} {_number(run.y)})"
    scale = f"scale({unit:.6g} {-unit:.6g})"
    return f'<g transform="{move} {scale}" aria-label={quoteattr(run.text)}>{"".join(uses)}</g>'


def _places(run: TextRun) -> Iterator[tuple[_Glyph, float]]:
    """Yield each glyph and where it starts, in the units of outlines."""
    x = 0.0
    for character in run.text:
        yield (character, run.font), x
        x += text_width(character, run.font, EM)


def _path(path: Path) -> str:
    look = f'fill="{"none" if path.fill is None else _grey(path.fill)}"'
    if path.line > 0:
        look += f' stroke="{_grey(path.grey)}" stroke-width="{_number(path.line)}"'
        look += ' stroke-linecap="round"' if path.round_ends else ""
        look += f' stroke-dasharray="{_numbers(path.dash)}"' if path.dash else ""
    if path.x or path.y:
        look += f' transform="translate({_number(path.x)} {_number(path.y)})"'
    return f'<path d="{_steps(path.shape)}" {look}/>'


@lru_cache(maxsize=2048)  # a knot's shapes stand on many faces
def _steps(steps: tuple[Step, ...]) -> str:
    return "".join(_LETTERS[step[0]] + _numbers(step[1:]) for step in steps)


def _code(code: Code) -> str:
    # One path: module by module, some renderers show seams.
    boxes = (f"M{x} {y}h{w}v{h}h{-w}z" for x, y, w, h in symbol_path(code.symbol))
    move = f"translate({_number(code.x)} {_number(code.y)}) scale({_number(code.module)})"
    return f'<path transform="{move}" d="{"".join(boxes)}"/>'


def _picture(picture: Picture) -> str:
    place = f'x="{_number(picture.x)}" y="{_number(picture.y)}"'
    size = f'width="{_number(picture.width)}" height="{_number(picture.height)}"'
    data = f"data:image/png;base64,{_png(picture.raster)}"
    return f'<image {place} {size} preserveAspectRatio="none" xlink:href="{data}"/>'


def _png(raster: Raster) -> str:
    import zlib
    from base64 import b64encode
    from io import BytesIO

    from PIL import Image

    mode = {1: "1", 8: "L", 24: "RGB"}[raster.bits]
    size = raster.width, raster.height
    out = BytesIO()
    Image.frombytes(mode, size, zlib.decompress(raster.packed)).save(out, "PNG")
    return b64encode(out.getvalue()).decode()


def _grey(grey: float) -> str:
    return "#" + f"{round(255 * grey):02x}" * 3


def _numbers(numbers: Iterable[object]) -> str:
    return " ".join(_number(number) for number in numbers if isinstance(number, float | int))


def _number(number: float) -> str:
    """Return a number to a thousandth of a point, as short as it can be."""
    return f"{round(number, 3) + 0.0:.3f}".rstrip("0").rstrip(".")  # adding 0 takes -0's sign
