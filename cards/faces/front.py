"""The front of a card: head, diagram and table of a leader, on one side or more."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import takewhile

from tagend.cards.faces.block import Block, Scale, TooSmall, stack_height
from tagend.cards.faces.diagram import diagrams
from tagend.cards.faces.head import continued_head, head
from tagend.cards.faces.leader_table import LeaderTable, leader_table, table_height
from tagend.cards.faces.panel import CardSide, Panel
from tagend.cards.words.leader_words import Told
from tagend.layouts.paper.text import TooWide

_STRETCHES = (1.0, 1.1, 1.2, 1.4)  # of the table's rows


def front(told: Told, panel: Panel, *, drawn: bool) -> CardSide | None:
    """Return head and table, its rows as far apart as there is room, and the diagram if `drawn`.

    Of the diagram, the fullest that fits. None where nothing does.
    """
    try:
        top = _head(told, panel)
        drawings = diagrams(told, panel.scale, panel.width)
        tops = ((top, drawing) for drawing in drawings) if drawn else [(top,)]
        return next(filter(None, (_over_table(told, panel, above) for above in tops)), None)
    except TooWide:
        return None


def _over_table(told: Told, panel: Panel, above: Sequence[Block]) -> CardSide | None:
    """Return blocks over the table, its rows as far apart as there is room."""
    room = panel.height - stack_height(above, panel.gap) - panel.gap
    scales = [replace(panel.scale, stretch=stretch) for stretch in _STRETCHES]
    fitting = [scale for scale in scales if table_height(told, scale) <= room]
    if not fitting:
        return None
    rows = _table(told, panel, fitting[-1])
    return CardSide(panel, (*above, rows.part(0, len(rows.rows))))


def split_front(told: Told, panel: Panel) -> list[CardSide]:
    """Return head and table over as many sides as they take."""
    rows = _table(told, panel, panel.scale)
    sides: list[CardSide] = []
    first = 0
    while first < len(rows.rows):
        top = continued_head(told, panel.scale, panel.width) if sides else _head(told, panel)
        ends = range(first + 1, len(rows.rows) + 1)
        tries = [CardSide(panel, (top, rows.part(first, end))) for end in ends]
        fitting = list(takewhile(lambda side: side.fits, tries))
        if not fitting:
            raise TooSmall("no row of its table fits below its name")
        sides.append(fitting[-1])
        first += len(fitting)
    return sides


def _table(told: Told, panel: Panel, scale: Scale) -> LeaderTable:
    return leader_table(told, scale, panel.width, panel.beside)


def _head(told: Told, panel: Panel) -> Block:
    return head(told, panel.scale, panel.width, panel.beside)
