"""The front of a card: head, diagram and table of a leader, on one side or more."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from cards.faces.block import Block, Scale, TooSmall
from cards.faces.columns import Spools
from cards.faces.diagram import diagram
from cards.faces.head import continued_head, head
from cards.faces.panel import Panel, Side
from cards.faces.table import table
from cards.leader import Leader
from cards.materials import Materials
from layouts.text import TooWide

_STRETCHES = (1.0, 1.1, 1.2, 1.4)  # of the table's rows


@dataclass(frozen=True, slots=True)
class Fronting:
    """What the front of a card shows: a leader, and what helps to draw and to find its strands."""

    leader: Leader
    materials: Materials
    spools: Spools = field(default_factory=dict)


def front(of: Fronting, panel: Panel, *, drawn: bool) -> Side | None:
    """Return head and table, its rows as far apart as there is room, and the diagram if `drawn`.

    None where they do not fit.
    """
    try:
        above = [head(of.leader, panel.scale, panel.width)]
    except TooWide:
        return None
    if drawn:
        above.append(drawing(of, panel))
    fitting = None
    for stretch in _STRETCHES:
        rows = table(of.leader, Scale(panel.scale.factor, stretch), panel.width, of.spools)
        blocks = (*above, rows.part(0, len(rows.rows)))
        if not panel.holds(blocks):
            break
        fitting = Side(panel, blocks)
    return fitting


def drawing(of: Fronting, panel: Panel) -> Block:
    """Return the section diagram as wide as the panel."""
    return diagram(of.leader, of.materials, panel.scale, panel.width)


def split_front(of: Fronting, panel: Panel) -> list[Side]:
    """Return head and table over as many sides as they take."""
    rows = table(of.leader, panel.scale, panel.width, of.spools)
    sides: list[Side] = []
    first = 0
    while first < len(rows.rows):
        make = continued_head if sides else head
        top = make(of.leader, panel.scale, panel.width)
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
