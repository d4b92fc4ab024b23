"""The pocket card: everything about one leader in; the sides of a card, front first, out."""

from collections.abc import Sequence

from cards.faces.backs import Backing, backs
from cards.faces.block import Block, Scale, TooSmall
from cards.faces.diagram import diagram
from cards.faces.front import front, split_front
from cards.faces.panel import Panel, Side
from cards.faces.table import needed_width
from cards.leader import Leader
from cards.materials import Materials
from layouts.face import Face
from layouts.formats import CardSize

# Of the type scale: at 1 it is as small as print allows, at 1.3 capitals have 20 minutes of arc
# at 40 cm (layouts.legible holds both figures and their sources).
FACTORS = (2.0, 1.8, 1.6, 1.5, 1.4, 1.3, 1.2, 1.1, 1.0)
LARGE = 1.3


def pocket_card(
    leader: Leader, backing: Backing, materials: Materials, size: CardSize, least: float = 1.0
) -> tuple[Face, ...]:
    """Return the sides of a card, in the largest type in which one side holds the whole table.

    The diagram stands on the front where there is room for it. Type is never set below the
    factor `least`. Raises `TooSmall` where that does not fit, and `NoGlyph`.
    """
    needed = needed_width(leader, Scale(1.0))
    panels = [Panel(size, Scale(factor)) for factor in FACTORS if factor >= least]
    wide = [panel for panel in panels if needed * panel.scale.factor <= panel.width]
    if not wide:
        raise TooSmall("its table is wider than the card")

    def drawing(panel: Panel) -> Sequence[Block]:
        return [diagram(leader, materials, panel.scale, panel.width)]

    for drawn in (True, False):
        for place, panel in enumerate(wide):
            side = front(leader, materials, panel, drawn=drawn)
            if side is not None:
                behind = backs(backing, wide[place:], drawing if not drawn else _nothing)
                return _faces(leader.recipe.name, [side, *behind])
    sides = split_front(leader, wide[-1])
    return _faces(leader.recipe.name, [*sides, *backs(backing, wide[-1:], drawing)])


def _nothing(_: Panel) -> Sequence[Block]:
    return ()


def _faces(name: str, sides: Sequence[Side]) -> tuple[Face, ...]:
    return tuple(
        side.panel.face(f"{name}, side {number}", side.blocks)
        for number, side in enumerate(sides, start=1)
    )
