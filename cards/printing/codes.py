"""A leader in; the code that holds it out, proven to read back, or only the place that it takes."""

from functools import cache

from tagend.cards.code.notation import write_notation
from tagend.cards.leader.leader import Leader
from tagend.cards.leader.naming import all_named
from tagend.cards.practice.practice import Practice
from tagend.layouts.codes.code import smallest_version, symbol
from tagend.layouts.codes.code_proof import proven
from tagend.layouts.paper.face import Symbol


def code_text(leader: Leader, practice: Practice) -> str:
    """Return a leader's notation. Raises `Refused` for one that is longer than any label's."""
    return write_notation(leader.recipe, practice.knots, practice.materials, all_named(leader))


def code_of(leader: Leader, practice: Practice) -> Symbol:
    """Return the symbol of a leader's notation; raises `NotProven` where it does not read back."""
    return proven(symbol(code_text(leader, practice)))


def code_place(leader: Leader, practice: Practice) -> Symbol:
    """Return a symbol as large as the leader's, of which only the three corners are drawn.

    It is for what is seen while a recipe is written, and no reader takes it for a code.
    """
    text = code_text(leader, practice)
    version = smallest_version(text, "M")
    side = 17 + 4 * version  # ISO/IEC 18004, as are the marks of the corners
    return Symbol(text=text, version=version, level="M", dark=_corners(side))


@cache
def _corners(side: int) -> int:
    far = side - _MARK
    places = (0, 0), (far, 0), (0, far)
    return sum(
        any(_is_dark(x - left, y - top) for left, top in places) << (side - y) * (side + 1) - x - 1
        for y in range(side)
        for x in range(side)
    )


_MARK = 7  # modules along the side of a corner's mark


def _is_dark(x: int, y: int) -> bool:
    """Whether a module is, by its place in the mark: its outer ring and its middle are."""
    return max(abs(x - _MARK // 2), abs(y - _MARK // 2)) in (0, 1, 3)
