"""The bytes of a logo's file in, the raster that is printed of it out."""

from collections.abc import Callable
from typing import TYPE_CHECKING, TypeAlias
from zlib import compress

from tagend.layouts.logo.greys import without_colour
from tagend.layouts.logo.logo_page import first_page
from tagend.layouts.logo.logo_svg import drawn_svg
from tagend.layouts.logo.size import BOX
from tagend.layouts.paper.raster import Bits, Raster
from tagend.layouts.strangers.apart import apart
from tagend.layouts.strangers.pictures import on_white, opened
from tagend.layouts.strangers.unreadable import Unreadable

if TYPE_CHECKING:
    from PIL import Image

Shown: TypeAlias = Callable[[bytes], "Image.Image"]

LARGEST = 5_000_000  # bytes
MOST_PIXELS = 20_000_000  # of a PNG or JPEG

_FAINTEST = 250  # of 255; what is no darker than this shows as bare paper
_BITS: dict[str, Bits] = {"1": 1, "L": 8, "RGB": 24}


def read_logo(data: bytes) -> Raster:
    """Return the logo that a PNG, JPEG, SVG or PDF file shows; the kind is told from its bytes.

    It keeps its proportions and colours, and is meant for white paper. Raises `Unreadable`.
    """
    if len(data) > LARGEST:
        raise Unreadable(f"it has {len(data):,} bytes", f"make it smaller: {LARGEST:,} at most")
    width, height, bits, packed = apart(raster_of, data)
    return Raster(width, height, bits, packed)


def raster_of(data: bytes) -> tuple[int, int, Bits, bytes]:
    """Return the fields of the raster that a file shows. Raises `Unreadable`."""
    picture = without_colour(_on_white(_reader(data)(data)))
    if not any(picture.convert("L").histogram()[:_FAINTEST]):
        raise Unreadable("it is all white", "give a version that is dark on white paper")
    picture.thumbnail(BOX)
    if picture.mode == "L" and not any(picture.histogram()[1:-1]):
        picture = picture.convert("1")
    return picture.width, picture.height, _BITS[picture.mode], compress(picture.tobytes())


def _reader(data: bytes) -> Shown:
    if data.startswith((b"\x89PNG", b"\xff\xd8\xff")):
        return _pixels
    if data.startswith(b"%PDF-"):
        return first_page
    if data.lstrip(b"\xef\xbb\xbf \t\r\n").startswith(b"<"):
        return drawn_svg
    raise Unreadable("this is no picture of a kind known here", "give a PNG, JPEG, SVG or PDF file")


def _pixels(data: bytes) -> "Image.Image":
    from PIL import ImageOps

    instead = f"make it smaller: {BOX[0]} across are plenty"
    return ImageOps.exif_transpose(opened(data, ["PNG", "JPEG"], MOST_PIXELS, instead))


def _on_white(picture: "Image.Image") -> "Image.Image":
    if picture.mode.startswith("I"):  # 16 bits of grey, of which the conversion keeps the lower
        picture = picture.point(lambda value: value / 256)
    grey = picture.mode in ("1", "L", "I") and not picture.has_transparency_data
    return on_white(picture, "L" if grey else "RGB")
