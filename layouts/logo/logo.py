"""A logo: a picture as the PDF objects that draw it, so that the writer stores it once.

`logo_file` makes one from the bytes of a PNG, JPEG, SVG or PDF file.
"""

from collections.abc import Mapping
from typing import NamedTuple, TypeAlias
from zlib import compress

Object: TypeAlias = tuple[bytes | int, ...]  # its bytes; a number is a reference to an object


class BadLogo(ValueError):
    """A file cannot serve as a logo; holds what was found and what to do instead."""

    def __init__(self, found: str, instead: str) -> None:
        self.found = found
        self.instead = instead
        super().__init__(f"{found}; {instead}")


class Logo(NamedTuple):
    """A picture of a natural size, in a unit of its own.

    The first of its objects is a form (ISO 32000-1, 8.10) that draws it from its lower left
    corner at 0, 0; the others are what that needs, each referred to by its place.
    """

    width: float
    height: float
    objects: tuple[Object, ...]

    def within(self, width: float, height: float) -> tuple[float, float]:
        """Return the largest width and height, in its proportion, that a box holds."""
        factor = min(width / self.width, height / self.height)
        return factor * self.width, factor * self.height


def drawn(width: float, height: float, operators: bytes, *others: Object) -> Logo:
    """Return the logo that operators draw; an image among the others is called /Image in them."""
    entries: dict[str, Object] = {
        "Type": (b"/XObject",),
        "Subtype": (b"/Form",),
        "BBox": (f"[0 0 {number(width)} {number(height)}]".encode(),),
        "Resources": (b"<</XObject<</Image ", 1, b">>>>") if others else (b"<<>>",),
    }
    return Logo(width, height, (stream(entries, operators), *others))


def stream(entries: Mapping[str, Object], data: bytes) -> Object:
    """Return data, compressed, as a stream object with the entries in its dictionary."""
    packed = compress(data, 9)
    own = {"Filter": (b"/FlateDecode",), "Length": (b"%d" % len(packed),)}
    listed = (
        part for key, value in {**entries, **own}.items() for part in (f"/{key} ".encode(), *value)
    )
    return (b"<<", *listed, b">>\nstream\n", packed, b"\nendstream")


def number(value: float) -> str:
    """Return a number as PDF writes it, without an exponent."""
    return f"{value:.8f}".rstrip("0").rstrip(".")
