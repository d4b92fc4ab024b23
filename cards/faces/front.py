"""The front of a card: head, diagram and table of a leader, on one side or more."""

from collections.abc import Sequence

from cards.faces.block import Scale, TooSmall
from cards.faces.diagram import diagram
from cards.faces.head import continued_head, head
from cards.faces.panel import Panel, Side
from cards.faces.table import table
from cards.leader import Leader
from cards.materials import Materials
from layouts.text import TooWide

_STRETCHES = (1.0, 1.1, 1.2, 1.4)  # of the table's rows


def front(leader: Leader, materials: Materials, panel: Panel, *, drawn: bool) -> Side | None:
    """Return head and table, its rows as far apart as there is room, and the diagram if `drawn`.

    None where they do not fit.
    """
    try:
        above = [head(leader, panel.scale, panel.width)]
    except TooWide:
        return None
    if drawn:
        above.append(diagram(leader, materials, panel.scale, panel.width))
    fitting = None
    for stretch in _STRETCHES:
        rows = table(leader, Scale(panel.scale.factor, stretch), panel.width)
        blocks = (*above, rows.part(0, len(rows.rows)))
        if not panel.holds(blocks):
            break
        fitting = Side(panel, blocks)
    return fitting


def split_front(leader: Leader, panel: Panel) -> list[Side]:
    """Return head and table over as many sides as they take."""
    rows = table(leader, panel.scale, panel.width)
    sides: list[Side] = []
    first = 0
    while first < len(rows.rows):
        make = continued_head if sides else head
        top = make(leader, panel.scale, panel.width)
        ends = range(first + 1, len(rows.rows) + 1)
        end = _last([panel.holds((top, rows.part(first, end))) for end in ends])
        if not end:
            raise TooSmall("no row of its table fits below its name")
        sides.append(Side(panel, (top, rows.part(first, first + end))))
        first += end
    return sides


def _last(fits: Sequence[bool]) -> int:
    """Return how many of the first are true."""
    return fits.index(False) if False in fits else len(fits)
