"""The fonts that text is set with: ours, or with the file of a person's own font as the last.

A person's own font is known under a name made of its path, by which it is drawn later too.
"""

from dataclasses import dataclass
from pathlib import Path
from typing import TypeAlias

from tagend.fonts.faces import is_embeddable, postscript_name, torn_table, widths
from tagend.fonts.files import FONTS, OWN
from tagend.layouts.base.faults import refused

Chain: TypeAlias = tuple[str, ...]  # names of fonts, in the order in which they are tried


@dataclass(frozen=True, slots=True)
class Fonts:
    """The fonts of one job, a chain for each weight."""

    medium: Chain
    bold: Chain


# The first has tabular digits and the primes, the second Greek and Cyrillic.
OURS = Fonts(("medium", "medium-fallback"), ("bold", "bold-fallback"))


def fonts_with(path: Path | None) -> Fonts:
    """Return our fonts, after which that of a file is tried; None adds none. Raises `Refused`."""
    if path is None:
        return OURS
    own = _checked(path)
    return Fonts((*OURS.medium, own), (*OURS.bold, own))


def _checked(path: Path) -> str:
    if not path.is_file():
        raise refused("there is no such file", "give the path of a TrueType font", str(path))
    font = f"{OWN}{path.absolute()}"
    try:
        widths(font)
        name, torn, allowed = postscript_name(font), torn_table(font), is_embeddable(font)
    except Exception as fault:  # whatever the parser meets in a file that may be anything
        raise refused(*_told(path), str(path)) from fault
    if not allowed:
        raise refused("its maker does not allow it in a PDF", "give another font", str(path))
    if torn is not None:
        raise refused(f"its table {torn!r} is cut off", "fetch the font again", str(path))
    if name in map(postscript_name, FONTS):
        found = f"it is called {name} inside, as a font that is used here already"
        raise refused(found, "give a font of another name", str(path))
    return font


def _told(path: Path) -> tuple[str, str]:
    """Return what was found and what to do, in words for a person."""
    if path.read_bytes()[:4] == b"OTTO":  # OpenType: a font whose outlines are CFF begins so
        return "its outlines are PostScript (CFF)", "give its TrueType version, a .ttf"
    return "this is no TrueType font, or it is damaged", "give a .ttf file that opens elsewhere"
