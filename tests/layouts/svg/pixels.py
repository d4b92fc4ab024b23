"""A sheet drawn as an SVG held to its PDF, pixel by pixel, by two renderers that share nothing."""

import math
from functools import lru_cache
from io import BytesIO

import pytest
from msgspec.structs import replace
from PIL import Image, ImageChops, ImageFilter

from tagend.layouts.paper.face import Face
from tagend.layouts.pdf.pdf import write_pdf
from tagend.layouts.sheets.sheet import Placed, Sheet
from tagend.layouts.svg.svg import sheet_svg
from tests.layouts.drawn import page_image

DPI = 200
FINER = 3  # so many times as fine, and made coarser: neither renderer then sets lines on its dots
ALIKE = 64  # of 255; on our cards, labels and sheets there are 41 at most


def sheet_of(face: Face) -> Sheet:
    return Sheet(face.width, face.height, (Placed(face, 0, 0),))


def apart(drawn: Sheet, printed: Sheet) -> int:
    """Return by how much a pixel of either differs from all of the other's within a pixel of it."""
    ours, other = from_svg(_in_dots(drawn)), from_pdf(_in_dots(printed))
    assert ours.size == other.size
    return max(_beyond(ours, other), _beyond(other, ours))


def from_svg(sheet: Sheet) -> Image.Image:
    resvg = pytest.importorskip("resvg_py")
    source = sheet_svg(sheet, title="Sheet").decode()
    png = resvg.svg_to_bytes(svg_string=source, dpi=DPI * FINER)
    return Image.open(BytesIO(png)).convert("L").reduce(FINER)


@lru_cache(maxsize=8)  # held to one copy after another
def from_pdf(sheet: Sheet) -> Image.Image:
    pdf = write_pdf([sheet], title="Sheet", creator="layouts")
    return page_image(pdf, DPI * FINER).reduce(FINER)


def _in_dots(sheet: Sheet) -> Sheet:
    """Return the sheet as wide and high as whole dots, and a trace less, which rounds up."""
    width, height = (
        math.ceil(side * DPI / 72 - 0.05) * 72 / DPI - 0.01 for side in (sheet.width, sheet.height)
    )
    return replace(sheet, width=width, height=height)


def _beyond(one: Image.Image, other: Image.Image) -> int:
    darkest, lightest = (
        other.filter(ImageFilter.MinFilter(3)),
        other.filter(ImageFilter.MaxFilter(3)),
    )
    too_dark, too_light = ImageChops.subtract(darkest, one), ImageChops.subtract(one, lightest)
    extrema = ImageChops.lighter(too_dark, too_light).getextrema()
    return int(extrema[1])  # type: ignore[arg-type]
