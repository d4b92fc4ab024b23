"""The file of a person's own font in, the name that it is drawn by out.

That name is made of its path. What parses it runs apart: it may be a stranger's.
"""

import os
from pathlib import Path

from tagend.fonts.faces import is_embeddable, postscript_name, torn_table, widths
from tagend.fonts.files import FONTS, OWN, font_path
from tagend.layouts.base.faults import refused
from tagend.layouts.strangers.apart import apart
from tagend.layouts.strangers.unreadable import Unreadable

LARGEST = 50_000_000  # bytes; a font of all Chinese characters has some 20


def own_font(path: Path) -> str:
    """Return the name of the font in a file. Raises `Refused` for one that cannot serve."""
    if not path.is_file():
        raise refused("there is no such file", "give the path of a TrueType font", str(path))
    if path.stat().st_size > LARGEST:
        raise refused("it is too large", f"give a font of at most {LARGEST:,} bytes", str(path))
    font = f"{OWN}{path.absolute()}"
    try:
        apart(check_font, os.fsencode(font))
    except Unreadable as bad:
        raise refused(bad.found, bad.instead, str(path)) from None
    return font


def check_font(font: bytes) -> None:
    """Raise `Unreadable`, in this process, for a person's own font that cannot serve."""
    name = os.fsdecode(font)
    try:
        widths(name)
        called, torn, allowed = postscript_name(name), torn_table(name), is_embeddable(name)
    except MemoryError:
        raise
    except Exception:  # whatever the parser meets in a file that may be anything
        raise Unreadable(*_told(name)) from None
    if not allowed:
        raise Unreadable("its maker does not allow it in a PDF", "give another font")
    if torn is not None:
        raise Unreadable(f"its table {torn!r} is cut off", "fetch the font again")
    if called in map(postscript_name, FONTS):
        found = f"it is called {called} inside, as a font that is used here already"
        raise Unreadable(found, "give a font of another name")


def _told(font: str) -> tuple[str, str]:
    """Return what was found and what to do, in words for a person."""
    with font_path(font).open("rb") as file:
        if file.read(4) == b"OTTO":  # OpenType: a font whose outlines are CFF begins so
            return "its outlines are PostScript (CFF)", "give its TrueType version, a .ttf"
    return "this is no TrueType font, or it is damaged", "give a .ttf file that opens elsewhere"
