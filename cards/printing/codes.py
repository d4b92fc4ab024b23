"""A leader in; the code that holds it out, proven to read back, or only the place that it takes."""

from tagend.cards.code.notation import write_notation
from tagend.cards.leader.leader import Leader
from tagend.cards.leader.naming import all_named
from tagend.cards.practice.practice import Practice
from tagend.layouts.codes.code import Level, smallest_version, symbol
from tagend.layouts.codes.code_proof import proven
from tagend.layouts.paper.face import Symbol


def code_text(leader: Leader, practice: Practice) -> str:
    """Return a leader's notation. Raises `Refused` for one that is longer than any label's."""
    return write_notation(leader.recipe, practice.knots, practice.materials, all_named(leader))


def code_of(leader: Leader, practice: Practice, level: Level = "M") -> Symbol:
    """Return the symbol of a leader's notation; raises `NotProven` where it does not read back."""
    return proven(symbol(code_text(leader, practice), level))


def code_place(leader: Leader, practice: Practice, level: Level = "M") -> Symbol:
    """Return a symbol as large as the leader's, of which only the three corners are drawn.

    It is for what is seen while a recipe is written, and no reader takes it for a code.
    """
    text = code_text(leader, practice)
    version = smallest_version(text, level)
    side = 17 + 4 * version  # ISO/IEC 18004
    rows = tuple(
        tuple(any(_in_finder(x - x0, y - y0) for x0, y0 in _corners(side)) for x in range(side))
        for y in range(side)
    )
    return Symbol(text=text, version=version, level=level, rows=rows)


def _corners(side: int) -> tuple[tuple[int, int], ...]:
    far = side - _FINDER
    return (0, 0), (far, 0), (0, far)


_FINDER = 7  # modules along the side of one; its ring is light


def _in_finder(x: int, y: int) -> bool:
    """Whether a module is dark in the mark of a corner, ISO/IEC 18004."""
    out = max(abs(x - 3), abs(y - 3))
    return out in (0, 1, 3)
