"""Objects of a PDF that was read in, a logo's objects out, with all that they refer to."""

import re
from collections.abc import Iterator
from io import BytesIO
from typing import TYPE_CHECKING

from tagend.layouts.logo.logo import BadLogo, Object

if TYPE_CHECKING:
    from pypdf.generic import DictionaryObject, IndirectObject, PdfObject

MOST_OBJECTS = 2000

# What draws nothing, and may lead from a page's resources to all of its document.
_LEFT_OUT = frozenset({"/Metadata", "/PieceInfo", "/StructParent", "/StructParents", "/Parent"})
_FONT_FILES = ("/FontFile", "/FontFile2", "/FontFile3")
_NEED_A_FILE = ("/Type1", "/MMType1", "/TrueType", "/CIDFontType0", "/CIDFontType2")
_SHOWS_TEXT = re.compile(rb"""[)>\]]\s*(T[jJ]|['"])""")  # ISO 32000-1, table 109


class Copy:
    """Copies objects, each that is referred to once, in the order met."""

    def __init__(self) -> None:
        self._places: dict[tuple[int, int], int] = {}
        self._met: list[PdfObject] = []
        self._shows_text = False
        self._lacks_font = False

    @property
    def is_whole(self) -> bool:
        """Whether no text is shown in a font that is not there; to be asked at the end."""
        return not (self._shows_text and self._lacks_font)

    def drawing(self, operators: bytes) -> bytes:
        """Return operators as they are, having seen whether they show text."""
        self._shows_text |= _SHOWS_TEXT.search(operators) is not None
        return operators

    def parts(self, value: "PdfObject") -> Iterator[bytes | int]:
        """Yield an object's bytes, and the places of those that it refers to."""
        from pypdf.generic import ArrayObject, DictionaryObject, IndirectObject, StreamObject

        if isinstance(value, IndirectObject):
            yield self._place(value)
        elif isinstance(value, ArrayObject):
            yield b"["
            for each in value:
                yield from self.parts(each)
                yield b" "
            yield b"]"
        elif isinstance(value, StreamObject):
            if value.get("/Subtype") == "/Form":
                self.drawing(value.get_data())
            yield from self._dictionary(value, b"/Length %d" % len(value._data))
            yield from (b"\nstream\n", value._data, b"\nendstream")
        elif isinstance(value, DictionaryObject):
            self._lacks_font |= _lacks_font(value)
            yield from self._dictionary(value)
        else:
            yield _written(value)

    def others(self) -> Iterator[Object]:
        """Yield the objects that were referred to; copying them, more are."""
        for met in self._met:
            yield tuple(self.parts(met))

    def _dictionary(self, value: "DictionaryObject", last: bytes = b"") -> Iterator[bytes | int]:
        yield b"<<"
        for key, each in value.items():
            if key not in _LEFT_OUT and not (last and key == "/Length"):
                yield _written(key) + b" "
                yield from self.parts(each)
                yield b"\n"
        yield last + b">>"

    def _place(self, reference: "IndirectObject") -> int:
        from pypdf.generic import NullObject

        key = reference.idnum, reference.generation
        if key not in self._places:
            if len(self._met) == MOST_OBJECTS:
                raise BadLogo("this PDF has too many parts", "simplify it, or save it as PNG")
            target = reference.get_object()
            self._met.append(NullObject() if target is None else target)
            self._places[key] = len(self._met)
        return self._places[key]


def _written(value: "PdfObject") -> bytes:
    out = BytesIO()
    value.write_to_stream(out)
    return out.getvalue()


def _lacks_font(value: "DictionaryObject") -> bool:
    """Whether this is a font without its file, for which a reader would take another."""
    if value.get("/Type") != "/Font" or value.get("/Subtype") not in _NEED_A_FILE:
        return False
    described = value.get("/FontDescriptor")
    return described is None or not any(key in described.get_object() for key in _FONT_FILES)
