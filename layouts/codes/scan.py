"""A picture or a PDF in, the texts of the QR codes that can be seen in it out.

Bounded: it may be a stranger's. Needs the libraries of the `scan` extra.
"""

import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from importlib import import_module
from io import BytesIO
from math import isqrt, sqrt
from typing import TYPE_CHECKING

from tagend.layouts.paper.face import POINTS_PER_INCH

if TYPE_CHECKING:
    from PIL import Image

MOST_PIXELS = 64_000_000  # of a picture: 64 MB as grey
MOST_PAGES = 40
MOST_CODES = 200  # the fullest label sheet has some 80

_PAGE_SCALE = 300 / POINTS_PER_INCH  # at 300 dpi the smallest module is 4 pixels
_PAGE_PIXELS = 20_000_000  # A3 at 300 dpi has 17; a page that is larger is drawn smaller
_LARGER = 3  # times; of twelve treatments tried on simulated wear, this alone helped most
_HEIC = frozenset({b"heic", b"heix", b"heim", b"heis", b"mif1", b"msf1"})  # ISO/IEC 23008-12


class ScanMissing(ValueError):
    """A library that reads pictures is not installed; the message is its name."""


class NotReadable(ValueError):
    """A picture or PDF that is damaged, or too large; the message begins with `it`."""


def is_picture(data: bytes) -> bool:
    """Whether data begins as a PNG, JPEG, WebP or HEIC file does."""
    webp = data[:4] == b"RIFF" and data[8:12] == b"WEBP"
    return webp or data.startswith((b"\x89PNG", b"\xff\xd8\xff")) or _is_heic(data)


def texts_in_picture(data: bytes) -> tuple[str, ...]:
    """Return the text of each code in a picture's file, equal ones once.

    Raises `ScanMissing` and `NotReadable`.
    """
    with _decoding():
        picture = _grey(data)
        return _texts_in(picture) or _texts_in(_enlarged(picture))


def texts_in_pages(pdf: bytes) -> tuple[str, ...]:
    """Return the text of each code on a PDF's pages, equal ones once.

    Raises `ScanMissing` and `NotReadable`.
    """
    with _decoding():
        import pypdfium2

        document = pypdfium2.PdfDocument(pdf)
        if len(document) > MOST_PAGES:
            raise NotReadable(f"it has {len(document)} pages, more than {MOST_PAGES}")
        found: list[str] = []
        for page in document:
            width, height = page.get_size()
            scale = min(_PAGE_SCALE, sqrt(_PAGE_PIXELS / (width * height)))
            found += _texts_in(page.render(scale=scale, grayscale=True).to_pil())
    return tuple(dict.fromkeys(found))


def texts_in_grey(pixels: memoryview) -> tuple[str, ...]:
    """Return the text of each code in rows of grey pixels. Raises `ScanMissing`."""
    with _needed():
        return _texts_in(pixels)


def _texts_in(picture: "Image.Image | memoryview") -> tuple[str, ...]:
    import zxingcpp

    found = zxingcpp.read_barcodes(picture, formats=zxingcpp.barcode_formats_from_str("QRCode"))
    if len(found) > MOST_CODES:
        raise NotReadable(f"it shows {len(found)} codes, more than {MOST_CODES}")
    return tuple(dict.fromkeys(code.text for code in found))


def _grey(data: bytes) -> "Image.Image":
    from PIL import Image

    picture = _opened(data)
    width, height = picture.size
    if width * height > MOST_PIXELS:
        raise NotReadable(f"it has {width} × {height} pixels, more than {MOST_PIXELS:,} in all")
    if not picture.has_transparency_data:
        return picture.convert("L")
    layer = picture.convert("RGBA")
    white = Image.new("L", picture.size, "white")
    return Image.composite(layer.convert("L"), white, layer.getchannel("A"))


def _enlarged(picture: "Image.Image") -> "Image.Image":
    """Return a picture that shows blurred and small codes better to the reader."""
    width, height = picture.size
    times = min(_LARGER, isqrt(MOST_PIXELS // (width * height)))
    return picture.resize((times * width, times * height))


def _opened(data: bytes) -> "Image.Image":
    """Return a picture of which no more than its head is read yet."""
    from PIL import Image

    formats = ["PNG", "JPEG", "WEBP"]
    if _is_heic(data):
        import_module("pillow_heif").register_heif_opener()
        formats = ["HEIF"]
    # Pillow has limits of its own: what it warns of is over ours, and told in our words.
    with warnings.catch_warnings(action="ignore", category=Image.DecompressionBombWarning):
        try:
            return Image.open(BytesIO(data), formats=formats)
        except Image.DecompressionBombError:
            raise NotReadable(f"it has more than {MOST_PIXELS:,} pixels") from None


def _is_heic(data: bytes) -> bool:
    return data[4:8] == b"ftyp" and data[8:12] in _HEIC


@contextmanager
def _decoding() -> Iterator[None]:
    """Turn whatever a decoder meets in a stranger's bytes into `NotReadable`."""
    try:
        with _needed():
            yield
    except (NotReadable, ScanMissing):
        raise
    except Exception as fault:
        raise NotReadable("it is damaged") from fault


@contextmanager
def _needed() -> Iterator[None]:
    try:
        yield
    except ImportError as fault:
        raise ScanMissing(fault.name or str(fault)) from None
