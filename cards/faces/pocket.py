"""The pocket card: everything about one leader in; the sides of a card, front first, out."""

from collections.abc import Sequence
from dataclasses import replace
from typing import get_args

from tagend.cards.faces.backs import backs
from tagend.cards.faces.block import Block, Scale, TooSmall, stack_height
from tagend.cards.faces.card_text import CardText
from tagend.cards.faces.diagram import diagram
from tagend.cards.faces.front import front, split_front
from tagend.cards.faces.leader_table import Beside, needed_width
from tagend.cards.faces.lesson import Figure
from tagend.cards.faces.lesson_sides import lesson_blocks
from tagend.cards.faces.panel import INSET, CardSide, More, Panel, nothing, side_faces
from tagend.fonts import Fonts
from tagend.layouts.paper.face import Face, shifted
from tagend.layouts.paper.rulers import Unit, edge_ruler
from tagend.layouts.paper.text import TooWide
from tagend.layouts.stock.formats import CardSize

# Of the type scale: at 1 it is as small as print allows, at 1.3 capitals have 20 minutes of arc
# at 40 cm (layouts.legible holds both figures and their sources).
FACTORS = (2.0, 1.8, 1.6, 1.5, 1.4, 1.3, 1.2, 1.1, 1.0)
LARGE = 1.3


def pocket_card(text: CardText, size: CardSize, fonts: Fonts) -> tuple[Face, ...]:
    """Return the sides of a card, in the largest type in which one side holds the whole table.

    The diagram stands on the front where there is room for it. Raises `TooSmall` where the card
    does not hold the leader, and `NoGlyph`.
    """
    scales = [Scale(factor, fonts) for factor in FACTORS if factor >= text.least]
    try:
        sides = _with_renewals(_sides(text, _wide_panels(text, size, scales)), text)
        *faces, last = side_faces(text.name, sides)
    except TooWide as error:
        raise TooSmall(str(error)) from None
    if text.ruler and faces:
        last = _ruled(last, sides[-1], "in" if text.told.leader.unit == "in" else "mm")
    return (*faces, last)


def _wide_panels(text: CardText, size: CardSize, scales: Sequence[Scale]) -> list[Panel]:
    """Return the panels on which the table finds room; narrow ones only where no other does."""
    for beside in get_args(Beside):
        panels = [Panel(size, scale, beside) for scale in scales]
        needed = needed_width(text.told, replace(scales[0], factor=1.0), beside)
        wide = [panel for panel in panels if needed * panel.scale.factor <= panel.width]
        if wide:
            return wide
    raise TooSmall("its table is wider than the card")


def _sides(text: CardText, panels: Sequence[Panel]) -> Sequence[CardSide]:
    def drawing(panel: Panel) -> Sequence[Block]:
        return [diagram(text.told, panel.scale, panel.width)]

    for drawn in (True, False):
        for place, panel in enumerate(panels):
            side = front(text.told, panel, drawn=drawn)
            if side is not None:
                return _with_backs(side, text, panels[place:], nothing if drawn else drawing)
    fronts = split_front(text.told, panels[-1])
    return [*fronts, *backs(text, panels[-1:], drawing, len(fronts))]


def _with_backs(
    side: CardSide, text: CardText, panels: Sequence[Panel], extra: More
) -> list[CardSide]:
    """Return a front and its backs, the first lessons on the front where that takes fewer sides.

    So it is too where there is one back: what it is rid of leaves room for figures.
    """
    whole = [side, *backs(text, panels, extra, 1)]
    shared, count = _with_lessons(side, text)
    if not count:
        return whole
    left = replace(text, lessons=text.lessons[count:])
    sides = [shared, *backs(left, panels, extra, 1)]
    return sides if len(sides) < len(whole) or len(sides) == len(whole) == 2 else whole


def _with_lessons(side: CardSide, text: CardText) -> tuple[CardSide, int]:
    """Return the front with as many of the lessons as it holds, and how many."""

    def fuller(count: int, figure: Figure) -> CardSide:
        return side.plus(lesson_blocks(text.lessons[:count], side.panel, figure))

    def most(figure: Figure) -> int:
        counts = range(len(text.lessons), 0, -1)
        return next((n for n in counts if fuller(n, figure).fits), 0)

    plain = most("none")
    drawn = most("room") if plain else 0  # figures take their time to load
    return (fuller(drawn, "drawn"), drawn) if drawn else (fuller(plain, "none"), plain)


def _with_renewals(sides: Sequence[CardSide], text: CardText) -> Sequence[CardSide]:
    """Return the sides with what new pieces cost, on the first that has room for it."""
    if not text.renewals:
        return sides
    for place, side in enumerate(sides):
        fuller = side.plus([side.panel.small(*text.renewals)])
        if fuller.fits:
            return [*sides[:place], fuller, *sides[place + 1 :]]
    return sides


def _ruled(face: Face, side: CardSide, unit: Unit) -> Face:
    """Return the last side with a ruler along its upper edge, where there is room for one.

    It measures loops and tags; a card's own edge is always at hand.
    """
    ruler = edge_ruler(side.panel.width, unit, side.panel.scale.medium)
    if ruler is None:
        return face
    down = ruler.height + 2.0 - INSET
    if stack_height(side.blocks, side.panel.gap) + down > side.panel.height:
        return face
    items = (*shifted(face.items, 0, down), *shifted(ruler.items, INSET, 0))
    return replace(face, items=items)
