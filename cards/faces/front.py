"""The front of a card: head, drawing and table of a leader, on one side or more."""

from collections.abc import Iterator, Mapping, Sequence
from itertools import chain

from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.faces.block import Block, TooSmall, stack_height
from tagend.cards.faces.card_text import CardText
from tagend.cards.faces.diagram import diagrams
from tagend.cards.faces.head import card_head, continued_head, note
from tagend.cards.faces.leader_table import Knots, leader_table, table_height
from tagend.cards.faces.panel import CardSide, Panel
from tagend.cards.words.leader_words import Told
from tagend.layouts.paper.lengths import fits

_STRETCHES = (1.4, 1.2, 1.1, 1.0)  # of the table's rows


class Fronts(Struct, frozen=True):
    """The sides with the table, and what found no room on them."""

    sides: tuple[CardSide, ...]
    left: tuple[str, ...] = ()  # that must be said elsewhere
    drawn: bool = False


def fronts(text: CardText, widths: Mapping[Knots, float], panel: Panel) -> list[Fronts]:
    """Return head and table on as few sides as there can be, with all else that has room there.

    The first has the fullest drawing that finds room, the others a lower one and more in words.
    `widths` are those that the table needs at factor 1. None where it is wider than the panel.
    Raises `TooWide`.
    """
    told = text.told
    ways = [way for way in widths if fits(widths[way] * panel.scale.factor, panel.width)]
    for way in ways:
        height = table_height(told, panel.scale, way)
        if not _hold(panel, [card_head(told, panel)], height):
            continue  # before anything is drawn over it
        found: list[Fronts] = []
        for top in _tops(text, panel):
            above = top.sides[0].blocks
            less = not found or len(top.left) < len(found[-1].left)
            if less and _hold(panel, above, height):
                found.append(replace(top, sides=(_whole(told, panel, way, above),)))
                if not top.left:
                    break
        if found:
            return found
    splits = [_split(text, panel, way) for way in ways]
    return sorted(splits, key=lambda split: len(split.sides))[:1]


def _tops(text: CardText, panel: Panel) -> Iterator[Fronts]:
    """Yield what may stand over the table, the fullest first."""
    told = text.told
    head, how, said = card_head(told, panel), panel.small(text.how_to), note(told, panel)
    noted = tuple(filter(None, [told.leader.recipe.note]))
    drawings = chain(diagrams(told, panel.scale, panel.width), [None])
    ways = ((True, True), (True, False), (False, False))
    for drawing, (with_how, with_note) in ((one, way) for one in drawings for way in ways):
        if not with_note and not said.height and with_how:
            continue
        kept = [head, *([said] if with_note and said.height else ()), *([how] if with_how else ())]
        left = (*(() if with_how else (text.how_to,)), *(() if with_note else noted))
        above = kept if drawing is None else [*kept, drawing]
        yield Fronts((CardSide(panel, tuple(above)),), left, drawing is not None)


def _whole(told: Told, panel: Panel, way: Knots, above: Sequence[Block]) -> CardSide:
    """Return blocks over the table, its rows as far apart as there is room."""
    scales = [replace(panel.scale, stretch=stretch) for stretch in _STRETCHES]
    holds = (each for each in scales if _hold(panel, above, table_height(told, each, way)))
    rows = leader_table(told, next(holds, scales[-1]), panel.width, way)
    return CardSide(panel, (*above, rows.part(0, len(rows.rows))))


def _hold(panel: Panel, above: Sequence[Block], height: float) -> bool:
    """Whether a panel holds blocks and a table of a height below them."""
    return fits(stack_height([*above, Block((), height)], panel.least_gap), panel.height)


def _split(text: CardText, panel: Panel, way: Knots) -> Fronts:
    """Return head and table over as many sides as they take, the rows shared out evenly."""
    told = text.told
    rows = leader_table(told, panel.scale, panel.width, way)
    tops = [card_head(told, panel), continued_head(told, panel.scale, panel.width)]
    count = len(rows.rows)
    for parts in range(2, count + 1):
        edges = [count * part // parts for part in range(parts + 1)]
        sides = tuple(
            CardSide(panel, (tops[part > 0], rows.part(edges[part], edges[part + 1])))
            for part in range(parts)
        )
        if all(side.fits for side in sides):
            left = (text.how_to, told.leader.recipe.note)
            return Fronts(sides, tuple(filter(None, left)))
    raise TooSmall("no row of its table fits below its name")
