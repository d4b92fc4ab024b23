"""The bytes of an SVG file in, what resvg draws of it out, or why a part of it would be lost."""

import xml.etree.ElementTree as ElementTree
from io import BytesIO
from typing import TYPE_CHECKING

from tagend.layouts.logo.size import BOX
from tagend.layouts.strangers.unreadable import Unreadable, library

if TYPE_CHECKING:
    from PIL import Image

# Drawn in no font or in another one on each machine, or not at all.
_TEXT = frozenset({"text", "flowRoot", "foreignObject"})
_REFERRING = frozenset({"image", "feImage", "use"})
_INSIDE = ("#", *(f"data:image/{kind}" for kind in ("png", "jpeg", "jpg", "gif", "webp")))
_HREF = ("href", "{http://www.w3.org/1999/xlink}href")


def drawn_svg(data: bytes) -> "Image.Image":
    """Return what the file draws within its view box, on white. Raises `Unreadable`."""
    from PIL import Image

    resvg = library("resvg_py", "tagend[logo]")
    source = _checked(data)
    width, height = BOX
    try:
        drawn = resvg.svg_to_bytes(
            svg_string=source,
            width=width,
            height=height,
            dpi=96,  # of CSS; without it no length in mm or inches is understood
            background="white",
            skip_system_fonts=True,
        )
    except ValueError as fault:
        raise Unreadable(f"this SVG cannot be drawn: {fault}", "save it as plain SVG") from None
    return Image.open(BytesIO(drawn), formats=["PNG"]).convert("RGB")  # clear nowhere


def _checked(data: bytes) -> str:
    """Return the file's text when it holds nothing that is not drawn: paper would show it only."""
    try:
        source = data.decode("utf-8-sig")
        root = ElementTree.fromstring(source)
    except UnicodeDecodeError:
        raise Unreadable("this SVG is not UTF-8 text", "save it again as plain SVG") from None
    except ElementTree.ParseError as fault:
        found = f"this SVG is damaged or cut off at line {fault.position[0]}"
        raise Unreadable(found, "save it again") from None
    if root.tag.rpartition("}")[2] != "svg":
        raise Unreadable("this is no SVG file", "give a PNG, JPEG, SVG or PDF file")
    for element in root.iter():
        _check(element)
    return source


def _check(element: ElementTree.Element) -> None:
    name = element.tag.rpartition("}")[2] if isinstance(element.tag, str) else ""
    if name in _TEXT and "".join(element.itertext()).strip():
        raise Unreadable("this SVG holds text, which is not drawn", "convert its text to paths")
    refers = next((element.get(key) for key in _HREF if key in element.attrib), None)
    if name in _REFERRING and refers is not None and not refers.strip().startswith(_INSIDE):
        found = f"this SVG draws another file, {refers[:40]!r}"
        raise Unreadable(found, "put that picture into it, or save all as PNG or PDF")
