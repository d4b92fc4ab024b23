"""The pocket card: everything about one leader in; the sides of a card, front first, out."""

from collections.abc import Sequence
from dataclasses import replace

from tagend.cards.base.shown_lengths import ShownUnit
from tagend.cards.faces.backs import backs
from tagend.cards.faces.block import Block, Scale, TooSmall, stack_height
from tagend.cards.faces.card_text import CardText
from tagend.cards.faces.diagram import diagram
from tagend.cards.faces.front import front, split_front
from tagend.cards.faces.leader_table import needed_width
from tagend.cards.faces.lesson import Figure
from tagend.cards.faces.lesson_sides import lesson_blocks
from tagend.cards.faces.panel import INSET, CardSide, More, Panel, Title, nothing
from tagend.fonts import Fonts
from tagend.layouts.paper.face import Face, shifted
from tagend.layouts.paper.rulers import edge_ruler
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
        sides = _sides(text, _wide_panels(text, size, scales))
        *faces, last = _faces(text.told.leader.recipe.name, sides)
        ruled = text.ruler and faces
        return (*faces, _ruled(last, sides[-1], text.told.leader.unit) if ruled else last)
    except TooWide as error:
        raise TooSmall(str(error)) from None


def _wide_panels(text: CardText, size: CardSize, scales: Sequence[Scale]) -> list[Panel]:
    """Return the panels on which the table finds room; narrow ones only where no other does."""
    for narrow in (False, True):
        panels = [Panel(size, scale, narrow) for scale in scales]
        needed = needed_width(text.told, scales[0]._replace(factor=1.0), narrow=narrow)
        wide = [panel for panel in panels if needed * panel.scale.factor <= panel.width]
        if wide:
            return wide
    raise TooSmall("its table is wider than the card")


def _sides(text: CardText, panels: Sequence[Panel]) -> Sequence[CardSide]:
    title = Title(text.told.leader.recipe.name, 0)

    def drawing(panel: Panel) -> Sequence[Block]:
        return [diagram(text.told, panel.scale, panel.width)]

    for drawn in (True, False):
        for place, panel in enumerate(panels):
            side = front(text.told, panel, drawn=drawn)
            if side is not None:
                extra = nothing if drawn else drawing
                return _behind(side, text, panels[place:], extra, title.after(1))
    fronts = split_front(text.told, panels[-1])
    return [*fronts, *backs(text, panels[-1:], drawing, title.after(len(fronts)))]


def _behind(
    side: CardSide, text: CardText, panels: Sequence[Panel], extra: More, title: Title
) -> list[CardSide]:
    """Return a front and its backs, the first lessons on the front where that takes fewer sides.

    So it is too where there is one back: what it is rid of leaves room for figures.
    """
    whole = [side, *backs(text, panels, extra, title)]
    shared = _shared(side, text, panels, extra, title)
    better = shared and (len(shared) < len(whole) or len(whole) == len(shared) == 2)
    return shared if better else whole


def _shared(
    side: CardSide, text: CardText, panels: Sequence[Panel], extra: More, title: Title
) -> list[CardSide]:
    """Return the front with as many of the lessons as it holds, and its backs; none for none."""

    def fuller(count: int, figure: Figure) -> CardSide:
        lessons = lesson_blocks(text.lessons[:count], side.panel, figure)
        return CardSide(side.panel, (*side.blocks, *lessons))

    def most(figure: Figure) -> int:
        counts = range(len(text.lessons), 0, -1)
        return next((n for n in counts if side.panel.holds(fuller(n, figure).blocks)), 0)

    plain = most("none")
    drawn = most("room") if plain else 0  # figures take their time to load
    if not plain:
        return []
    count, front_side = (drawn, fuller(drawn, "drawn")) if drawn else (plain, fuller(plain, "none"))
    left = replace(text, lessons=text.lessons[count:])
    return [front_side, *backs(left, panels, extra, title)]


def _ruled(face: Face, side: CardSide, unit: ShownUnit) -> Face:
    """Return the last side with a ruler along its upper edge, where there is room for one.

    It measures loops and tags; a card's own edge is always at hand.
    """
    ruler = edge_ruler(
        face.width - 2 * INSET, "in" if unit == "in" else "mm", side.panel.scale.medium
    )
    if ruler is None:
        return face
    down = ruler.height + 2.0 - INSET
    if stack_height(side.blocks, side.panel.gap) + down > side.panel.height:
        return face
    items = (*shifted(face.items, 0, down), *shifted(ruler.items, INSET, 0))
    return replace(face, items=items)


def _faces(name: str, sides: Sequence[CardSide]) -> tuple[Face, ...]:
    return tuple(
        side.panel.face(f"{name}, side {number}", side.blocks)
        for number, side in enumerate(sides, start=1)
    )
