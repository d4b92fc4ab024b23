"""A font as it is measured and embedded: its name in; its characters, widths and heights out."""

import struct
import unicodedata
from collections.abc import Mapping
from functools import cache
from hashlib import sha256
from typing import TYPE_CHECKING

from tagend.fonts.files import OWN, font_path

if TYPE_CHECKING:
    from reportlab.pdfbase.ttfonts import TTFont

# Heights of the first font in the chain, both weights, in ems: `hhea` and `OS/2` of its files.
# The fallback's are smaller, so what makes room for these makes room for both.
ASCENT = 1.025
DESCENT = 0.275
CAP_HEIGHT = 0.698
X_HEIGHT = 0.520

_MARK = b"-own-"  # in the name under which a person's own font is embedded


@cache
def _loaded(font: str) -> "TTFont":
    from reportlab.pdfbase.ttfonts import TTFont

    path = font_path(font)
    made = TTFont(font, str(path), asciiReadable=False)
    if font.startswith(OWN):
        # The library takes two fonts of one name for one, as long as the process lives.
        made.face.name += _MARK + sha256(path.read_bytes()).hexdigest()[:8].encode()
    return made


@cache
def widths(font: str) -> Mapping[str, float]:
    """Return every character that the font can set, with its width in ems."""
    face = _loaded(font).face
    characters = {chr(code): face.charWidths[code] / 1000 for code in face.charToGlyph}
    return {character: width for character, width in characters.items() if _stands(character)}


def postscript_name(font: str) -> str:
    """Return what the font is called inside."""
    name, _, _ = _loaded(font).face.name.partition(_MARK)
    return str(name, "ascii")


def torn_table(font: str) -> str | None:
    """Return the first table that does not lie within the font's file, if there is one."""
    end = font_path(font).stat().st_size
    tables = _loaded(font).face.tables
    return next((t["tag"] for t in tables if t["offset"] + t["length"] > end), None)


def is_embeddable(font: str) -> bool:
    """Whether its maker allows a part of it in a PDF: OpenType's OS/2 table, fsType."""
    face = _loaded(font).face
    if "OS/2" not in face.table:
        return True
    (rights,) = struct.unpack_from(">H", face.get_table("OS/2"), 8)
    restricted, no_subsets, bitmaps_only = 0x0002, 0x0100, 0x0200
    return not rights & (restricted | no_subsets | bitmaps_only)


def _stands(character: str) -> bool:
    # Controls and private codes say nothing to a reader. A combining mark has a glyph, but it
    # would be put beside its letter: the writer places glyphs by their widths alone.
    return unicodedata.category(character)[0] not in "CM"


@cache
def register(font: str) -> None:
    """Make the font known to the PDF library under its name here."""
    from reportlab.pdfbase.pdfmetrics import registerFont

    registerFont(_loaded(font))
