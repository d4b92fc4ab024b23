"""A picture or a PDF in, the texts of the QR codes that can be seen in it out.

Bounded, and read apart: it may be a stranger's. Pages need the library of the `scan` extra.
"""

from math import isqrt, sqrt
from typing import TYPE_CHECKING

from tagend.layouts.paper.face import POINTS_PER_INCH
from tagend.layouts.strangers.apart import SECONDS, apart
from tagend.layouts.strangers.pictures import on_white, opened
from tagend.layouts.strangers.unreadable import Unreadable, library

if TYPE_CHECKING:
    from PIL import Image

MOST_PIXELS = 64_000_000  # of a picture: 64 MB as grey
MOST_PAGES = 40
MOST_CODES = 200  # the fullest label sheet has some 80

_PAGE_SCALE = 300 / POINTS_PER_INCH  # at 300 dpi the smallest module is 4 pixels
_PAGE_PIXELS = 20_000_000  # A3 at 300 dpi has 17; a page that is larger is drawn smaller
_LARGER = 3  # times; of twelve treatments tried on simulated wear, this alone helped most
_FEWER = "give a part of it"
_HEIC = frozenset({b"heic", b"heix", b"heim", b"heis", b"mif1", b"msf1"})  # ISO/IEC 23008-12


def is_picture(data: bytes) -> bool:
    """Whether data begins as a PNG, JPEG, WebP or HEIC file does."""
    webp = data[:4] == b"RIFF" and data[8:12] == b"WEBP"
    return webp or data.startswith((b"\x89PNG", b"\xff\xd8\xff")) or _is_heic(data)


def texts_in_picture(data: bytes) -> tuple[str, ...]:
    """Return the text of each code in a picture's file, equal ones once. Raises `Unreadable`."""
    return tuple(apart(picture_texts, data))


def texts_in_pages(pdf: bytes, seconds: float = SECONDS) -> tuple[str, ...]:
    """Return the text of each code on a PDF's pages, equal ones once. Raises `Unreadable`."""
    return tuple(apart(page_texts, pdf, seconds))


def picture_texts(data: bytes) -> list[str]:
    """Return what `texts_in_picture` does, in this process."""
    formats = ["PNG", "JPEG", "WEBP"]
    if _is_heic(data):
        library("pillow_heif", "pillow-heif").register_heif_opener()
        formats = ["HEIF"]
    instead = f"make it smaller: {MOST_PIXELS:,} in all at most"
    picture = opened(data, formats, MOST_PIXELS, instead)
    picture.draft("L", picture.size)  # a JPEG is then read without its colours
    grey = on_white(picture, "L")
    return _texts_in(grey) or _texts_enlarged(grey)


def page_texts(pdf: bytes) -> list[str]:
    """Return what `texts_in_pages` does, in this process."""
    document = library("pypdfium2", "tagend[scan]").PdfDocument(pdf)
    if len(document) > MOST_PAGES:
        raise Unreadable(f"it has {len(document)} pages, more than {MOST_PAGES}", _FEWER)
    found: list[str] = []
    for page in document:
        width, height = page.get_size()
        scale = min(_PAGE_SCALE, sqrt(_PAGE_PIXELS / (width * height)))
        found += _texts_in(page.render(scale=scale, grayscale=True).to_pil())
    return list(dict.fromkeys(found))


def _texts_in(picture: "Image.Image") -> list[str]:
    import zxingcpp

    found = zxingcpp.read_barcodes(picture, formats=zxingcpp.barcode_formats_from_str("QRCode"))
    if len(found) > MOST_CODES:
        raise Unreadable(f"it shows {len(found)} codes, more than {MOST_CODES}", _FEWER)
    return list(dict.fromkeys(code.text for code in found))


def _texts_enlarged(picture: "Image.Image") -> list[str]:
    """Return what the reader sees when blurred and small codes are shown to it larger."""
    width, height = picture.size
    times = min(_LARGER, isqrt(MOST_PIXELS // (width * height)))
    return _texts_in(picture.resize((times * width, times * height))) if times > 1 else []


def _is_heic(data: bytes) -> bool:
    return data[4:8] == b"ftyp" and data[8:12] in _HEIC
