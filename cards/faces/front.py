"""The front of a card: head, diagram and table of a leader, on one side or more."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from tagend.cards.faces.block import Block, Scale, TooSmall, stack_height
from tagend.cards.faces.card_table import Table, table, table_height
from tagend.cards.faces.columns import Spools
from tagend.cards.faces.diagram import diagram, diagrams
from tagend.cards.faces.head import continued_head, head
from tagend.cards.faces.panel import Panel, Side
from tagend.cards.leader.leader import Leader
from tagend.cards.practice.materials import Materials
from tagend.cards.words.language import Wording
from tagend.layouts.paper.text import TooWide

_STRETCHES = (1.0, 1.1, 1.2, 1.4)  # of the table's rows


@dataclass(frozen=True, slots=True)
class Fronting:
    """What the front of a card shows: a leader, and what helps to draw and to find its strands."""

    leader: Leader
    materials: Materials
    wording: Wording
    spools: Spools = field(default_factory=dict)
    narrow: bool = False  # with the table as narrow as can be


def front(of: Fronting, panel: Panel, *, drawn: bool) -> Side | None:
    """Return head and table, its rows as far apart as there is room, and the diagram if `drawn`.

    Of the diagram, the fullest that fits. None where nothing does.
    """
    try:
        top = _head(of, panel)
        tops = ((top, below) for below in _drawings(of, panel)) if drawn else [(top,)]
        return next(filter(None, (_over_table(of, panel, above) for above in tops)), None)
    except TooWide:
        return None


def _over_table(of: Fronting, panel: Panel, above: tuple[Block, ...]) -> Side | None:
    """Return blocks over the table, its rows as far apart as there is room."""
    room = panel.height - stack_height(above, panel.gap) - panel.gap
    scales = [Scale(panel.scale.factor, stretch) for stretch in _STRETCHES]
    fitting = [scale for scale in scales if table_height(of.leader, of.wording, scale) <= room]
    if not fitting:
        return None
    rows = _table(of, fitting[-1], panel.width)
    return Side(panel, (*above, rows.part(0, len(rows.rows))))


def drawing(of: Fronting, panel: Panel) -> Block:
    """Return the section diagram as wide as the panel."""
    return diagram(of.leader, of.materials, of.wording, panel.scale, panel.width)


def _drawings(of: Fronting, panel: Panel) -> Iterator[Block]:
    return diagrams(of.leader, of.materials, of.wording, panel.scale, panel.width)


def split_front(of: Fronting, panel: Panel) -> list[Side]:
    """Return head and table over as many sides as they take."""
    rows = _table(of, panel.scale, panel.width)
    sides: list[Side] = []
    first = 0
    while first < len(rows.rows):
        top = _continued_head(of, panel) if sides else _head(of, panel)
        ends = range(first + 1, len(rows.rows) + 1)
        end = _last([panel.holds((top, rows.part(first, end))) for end in ends])
        if not end:
            raise TooSmall("no row of its table fits below its name")
        sides.append(Side(panel, (top, rows.part(first, first + end))))
        first += end
    return sides


def _table(of: Fronting, scale: Scale, width: float) -> Table:
    return table(of.leader, of.spools, of.wording, scale, width, narrow=of.narrow)


def _head(of: Fronting, panel: Panel) -> Block:
    return head(of.leader, of.wording, panel.scale, panel.width, loops=of.narrow)


def _continued_head(of: Fronting, panel: Panel) -> Block:
    return continued_head(of.leader, of.wording, panel.scale, panel.width)


def _last(fits: Sequence[bool]) -> int:
    """Return how many of the first are true."""
    return fits.index(False) if False in fits else len(fits)
