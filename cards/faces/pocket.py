"""The pocket card: everything about one leader in; the sides of a card, front first, out."""

from collections.abc import Sequence
from dataclasses import replace

from tagend.cards.base.shown_lengths import ShownUnit
from tagend.cards.faces.back_sides import Backing, backs
from tagend.cards.faces.block import Block, Scale, TooSmall, stack_height
from tagend.cards.faces.card_table import needed_width
from tagend.cards.faces.front import Fronting, drawing, front, split_front
from tagend.cards.faces.lesson import Figure
from tagend.cards.faces.panel import INSET, More, Panel, Side, Title, nothing
from tagend.cards.faces.taught import lesson_blocks
from tagend.layouts.paper.face import Face, shifted
from tagend.layouts.paper.text import TooWide
from tagend.layouts.sheets.rulers import edge_ruler
from tagend.layouts.stock.formats import CardSize

# Of the type scale: at 1 it is as small as print allows, at 1.3 capitals have 20 minutes of arc
# at 40 cm (layouts.legible holds both figures and their sources).
FACTORS = (2.0, 1.8, 1.6, 1.5, 1.4, 1.3, 1.2, 1.1, 1.0)
LARGE = 1.3


def pocket_card(
    of: Fronting, backing: Backing, size: CardSize, least: float = 1.0, *, ruled: bool = False
) -> tuple[Face, ...]:
    """Return the sides of a card, in the largest type in which one side holds the whole table.

    The diagram stands on the front where there is room for it. Type is never set below the
    factor `least`. A `ruled` card has a ruler along the edge of its last side. Raises `TooSmall`
    where the card does not hold the leader, and `NoGlyph`.
    """
    panels = [Panel(size, Scale(factor)) for factor in FACTORS if factor >= least]
    try:
        sides = _sides(of, backing, panels)
        *faces, last = _faces(of.leader.recipe.name, sides)
        return (*faces, _ruled(last, sides[-1], of.leader.unit) if ruled and faces else last)
    except TooWide as error:
        raise TooSmall(str(error)) from None


def _sides(of: Fronting, backing: Backing, panels: Sequence[Panel]) -> Sequence[Side]:
    for narrow in (False, True):
        of = replace(of, narrow=narrow)
        needed = needed_width(of.leader, of.spools, of.wording, Scale(1.0), narrow=narrow)
        wide = [panel for panel in panels if needed * panel.scale.factor <= panel.width]
        if wide:
            break
    else:
        raise TooSmall("its table is wider than the card")

    title = Title(of.leader.recipe.name, 0)

    def diagrams(panel: Panel) -> Sequence[Block]:
        return [drawing(of, panel)]

    for drawn in (True, False):
        for place, panel in enumerate(wide):
            side = front(of, panel, drawn=drawn)
            if side is not None:
                extra = nothing if drawn else diagrams
                return _behind(side, backing, wide[place:], extra, title.after(1))
    fronts = split_front(of, wide[-1])
    return [*fronts, *backs(backing, wide[-1:], diagrams, title.after(len(fronts)))]


def _behind(
    side: Side, backing: Backing, panels: Sequence[Panel], extra: More, title: Title
) -> list[Side]:
    """Return a front and its backs, the first lessons on the front where that takes fewer sides.

    So it is too where there is one back: what it is rid of leaves room for figures.
    """
    whole = [side, *backs(backing, panels, extra, title)]
    shared = _shared(side, backing, panels, extra, title)
    better = shared and (len(shared) < len(whole) or len(whole) == len(shared) == 2)
    return shared if better else whole


def _shared(
    side: Side, backing: Backing, panels: Sequence[Panel], extra: More, title: Title
) -> list[Side]:
    """Return the front with as many of the lessons as it holds, and its backs; none for none."""

    def fuller(count: int, figure: Figure) -> Side:
        lessons = lesson_blocks(backing.lessons[:count], side.panel, figure)
        return Side(side.panel, (*side.blocks, *lessons))

    def most(figure: Figure) -> int:
        counts = range(len(backing.lessons), 0, -1)
        return next((n for n in counts if side.panel.holds(fuller(n, figure).blocks)), 0)

    plain = most("none")
    drawn = most("room") if plain else 0  # figures take their time to load
    if not plain:
        return []
    count, front_side = (drawn, fuller(drawn, "drawn")) if drawn else (plain, fuller(plain, "none"))
    left = backing._replace(lessons=backing.lessons[count:])
    return [front_side, *backs(left, panels, extra, title)]


def _ruled(face: Face, side: Side, unit: ShownUnit) -> Face:
    """Return the last side with a ruler along its upper edge, where there is room for one.

    It measures loops and tags; a card's own edge is always at hand.
    """
    ruler = edge_ruler(face.width - 2 * INSET, "in" if unit == "in" else "mm")
    if ruler is None:
        return face
    down = ruler.height + 2.0 - INSET
    if stack_height(side.blocks, side.panel.gap) + down > side.panel.height:
        return face
    items = (*shifted(face.items, 0, down), *shifted(ruler.items, INSET, 0))
    return face._replace(items=items)


def _faces(name: str, sides: Sequence[Side]) -> tuple[Face, ...]:
    return tuple(
        side.panel.face(f"{name}, side {number}", side.blocks)
        for number, side in enumerate(sides, start=1)
    )
