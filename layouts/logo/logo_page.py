"""The bytes of a PDF file in, a logo of its first page out, as far as its crop box goes."""

import logging
from io import BytesIO
from typing import TYPE_CHECKING

from tagend.layouts.logo.logo import BadLogo, Logo, Object, number, stream
from tagend.layouts.logo.logo_copy import Copy

if TYPE_CHECKING:
    from pypdf import PageObject, PdfReader
    from pypdf.generic import PdfObject


def read_page(data: bytes) -> Logo:
    """Return what the first page shows. Raises BadLogo."""
    from pypdf import PdfReader

    # Without a handler of its own, the library's remarks on a damaged file go to the terminal.
    logging.getLogger("pypdf").addHandler(logging.NullHandler())
    try:
        reader = PdfReader(BytesIO(data))
        if reader.is_encrypted:
            raise BadLogo("this PDF is encrypted", "save it without a password")
        if not reader.pages:
            raise BadLogo("this PDF has no page", "give one with the logo on its first page")
        _check_layers(reader)
        return _page(reader.pages[0])
    except BadLogo:
        raise
    except Exception as fault:  # whatever the library meets in a stranger's file
        raise BadLogo("this PDF is damaged or cut off", "save it again") from fault


def _check_layers(reader: "PdfReader") -> None:
    """Refuse layers that are hidden: they would all be shown (ISO 32000-1, 8.11.4)."""
    from pypdf.generic import DictionaryObject

    found: PdfObject | None = reader.root_object
    for key in ("/OCProperties", "/D", "/OFF"):
        below = found.get(key) if isinstance(found, DictionaryObject) else None
        found = None if below is None else below.get_object()
    if found:
        raise BadLogo("this PDF has hidden layers", "save it without them")


def _page(page: "PageObject") -> Logo:
    from pypdf.generic import DictionaryObject

    contents = page.get_contents()
    operators = b"" if contents is None else contents.get_data()
    if not operators.strip():
        raise BadLogo("the first page of this PDF is empty", "put the logo on its first page")
    left, bottom, right, top = _crop(page)
    width, height = right - left, top - bottom
    if not (width > 0 and height > 0):
        raise BadLogo("the first page of this PDF has no size", "save it again")
    # ISO 32000-1, 7.7.3.3: a page is turned clockwise.
    matrix = {
        90: (0, -1, 1, 0, -bottom, right),
        180: (-1, 0, 0, -1, right, top),
        270: (0, 1, -1, 0, top, -left),
    }.get(page.rotation % 360, (1, 0, 0, 1, -left, -bottom))
    if page.rotation % 180:
        width, height = height, width
    copy = Copy()
    entries: dict[str, Object] = {
        "Type": (b"/XObject",),
        "Subtype": (b"/Form",),
        "BBox": (_array((left, bottom, right, top)),),
        "Matrix": (_array(matrix),),
        "Resources": tuple(copy.parts(page.get("/Resources", DictionaryObject()))),
    }
    if "/Group" in page:
        entries["Group"] = tuple(copy.parts(page["/Group"]))
    form = stream(entries, copy.drawing(operators))
    others = tuple(copy.others())
    if not copy.is_whole:
        raise BadLogo("a font of this PDF is not inside it", "convert its text to paths")
    return Logo(width, height, (form, *others))


def _crop(page: "PageObject") -> tuple[float, float, float, float]:
    crop, media = page.cropbox, page.mediabox
    return (
        max(float(crop.left), float(media.left)),
        max(float(crop.bottom), float(media.bottom)),
        min(float(crop.right), float(media.right)),
        min(float(crop.top), float(media.top)),
    )


def _array(values: tuple[float, ...]) -> bytes:
    return f"[{' '.join(map(number, values))}]".encode()
