"""A leader as a drawing for the terminal: its lengths to scale, its thickness in eighths."""

from collections.abc import Iterator

from tagend.cards.leader.leader import Leader, Piece

_WIDTH = 60  # characters, of the whole leader
_EIGHTHS = "▁▂▃▄▅▆▇█"
_PLAIN = "..--==##"  # where these cannot be shown
_KNOT = "|"


def taper_lines(leader: Leader, encoding: str | None) -> tuple[str, str]:
    """Return the leader from the butt to the fly, and the places of its sections below it."""
    signs = _EIGHTHS if _knows(encoding, _EIGHTHS) else _PLAIN
    drawn, places = "", ""
    for piece, columns in _columns(leader):
        drawn += (_KNOT if drawn else "") + signs[_eighth(piece, leader)] * columns
        places += " " * (len(drawn) - columns - len(places)) + str(piece.place)
    return drawn, places


def _columns(leader: Leader) -> Iterator[tuple[Piece, int]]:
    whole = float(leader.finished.high_mm)
    for piece in leader.pieces:
        yield piece, max(1, round(_WIDTH * float(piece.finished.high_mm) / whole))


def _eighth(piece: Piece, leader: Leader) -> int:
    """Return its thickness in eighths of the thickest, from 0: the thinnest is still seen."""
    thickest = max(each.section.diameter.mm for each in leader.pieces)
    return max(1, round(8 * piece.section.diameter.mm / thickest)) - 1


def _knows(encoding: str | None, signs: str) -> bool:
    try:
        signs.encode(encoding or "ascii")
    except (UnicodeEncodeError, LookupError):
        return False
    return True
