"""The pocket card: everything about one leader in; the sides of a card, front first, out."""

from collections.abc import Sequence

from cards.faces.backs import Backing, backs
from cards.faces.block import Block, Scale, TooSmall
from cards.faces.front import Fronting, drawing, front, split_front
from cards.faces.panel import Panel, Side
from cards.faces.table import needed_width
from layouts.face import Face
from layouts.formats import CardSize
from layouts.text import TooWide

# Of the type scale: at 1 it is as small as print allows, at 1.3 capitals have 20 minutes of arc
# at 40 cm (layouts.legible holds both figures and their sources).
FACTORS = (2.0, 1.8, 1.6, 1.5, 1.4, 1.3, 1.2, 1.1, 1.0)
LARGE = 1.3


def pocket_card(
    of: Fronting, backing: Backing, size: CardSize, least: float = 1.0
) -> tuple[Face, ...]:
    """Return the sides of a card, in the largest type in which one side holds the whole table.

    The diagram stands on the front where there is room for it. Type is never set below the
    factor `least`. Raises `TooSmall` where that does not fit, and `NoGlyph`.
    """
    panels = [Panel(size, Scale(factor)) for factor in FACTORS if factor >= least]
    try:
        return _faces(of.leader.recipe.name, _sides(of, backing, panels))
    except TooWide as error:
        raise TooSmall(str(error)) from None


def _sides(of: Fronting, backing: Backing, panels: Sequence[Panel]) -> Sequence[Side]:
    needed = needed_width(of.leader, Scale(1.0), of.spools)
    wide = [panel for panel in panels if needed * panel.scale.factor <= panel.width]
    if not wide:
        raise TooSmall("its table is wider than the card")

    def diagrams(panel: Panel) -> Sequence[Block]:
        return [drawing(of, panel)]

    for drawn in (True, False):
        for place, panel in enumerate(wide):
            side = front(of, panel, drawn=drawn)
            if side is not None:
                behind = backs(backing, wide[place:], _nothing if drawn else diagrams)
                return [side, *behind]
    return [*split_front(of, wide[-1]), *backs(backing, wide[-1:], diagrams)]


def _nothing(_: Panel) -> Sequence[Block]:
    return ()


def _faces(name: str, sides: Sequence[Side]) -> tuple[Face, ...]:
    return tuple(
        side.panel.face(f"{name}, side {number}", side.blocks)
        for number, side in enumerate(sides, start=1)
    )
