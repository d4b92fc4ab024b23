"""A person's own font: the path of its file in; while it is in use, the last font that is tried.

It is known under a name made of its path. So a line set with it can be drawn later too, and
nothing that is set outside its use changes.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from pathlib import Path

from tagend.fonts.faces import is_embeddable, postscript_name, torn_table, widths
from tagend.fonts.files import CHAINS, FONTS, OWN, Weight
from tagend.layouts.base.faults import refused

_in_use: ContextVar[tuple[str, ...]] = ContextVar("own fonts in use", default=())


def chain(weight: Weight) -> tuple[str, ...]:
    """Return the fonts of a weight in the order in which they are tried."""
    return (*CHAINS[weight], *_in_use.get())


@contextmanager
def own_font(path: Path | None) -> Iterator[None]:
    """Set, inside, what no other font has in the font of a file; None changes nothing.

    Raises `Refused` with the path.
    """
    token = _in_use.set(() if path is None else (_checked(path),))
    try:
        yield
    finally:
        _in_use.reset(token)


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
