"""The pocket card: everything about one leader in; the sides of a card, front first, out.

As few sides as there can be, then the largest type with which they stay so few, and then all that
the room which is left holds.
"""

from collections.abc import Callable, Sequence
from functools import cache, partial
from itertools import product
from typing import TypeAlias

from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.faces.backs import Fullness, Missing, back_blocks, left_out, wishes
from tagend.cards.faces.block import Block, Scale, TooSmall, stack_height
from tagend.cards.faces.card_text import CardText
from tagend.cards.faces.flow import Grid, flowed
from tagend.cards.faces.front import Fronts, fronts
from tagend.cards.faces.leader_table import needed_widths
from tagend.cards.faces.panel import INSET, CardSide, Panel, columns_of, side_faces
from tagend.fonts import Fonts
from tagend.layouts.paper.face import Face, shifted
from tagend.layouts.paper.legible import FLOOR
from tagend.layouts.paper.rulers import Unit, edge_ruler
from tagend.layouts.paper.text import TooWide
from tagend.layouts.stock.formats import CardSize

# Of the type scale: at 1 it is as small as print allows.
LARGE = 14 / FLOOR
FACTORS = (2.4, 2.1, LARGE, 1.7, 1.6, 1.5, 1.4, 1.3, 1.2, 1.1, 1.0)

_LEAST, _MOST = 2, 24  # sides
_ROOMY = 1.25  # times the least type, above which what is no must comes before larger type
_RULER = 8.0  # points, which a ruler along an edge takes of the height within the inset


_FrontsOf: TypeAlias = Callable[[Panel], Sequence[Fronts]]  # of one text, each panel's made once


class _Layout(Struct, frozen=True):
    """A card as it is laid out, and how full it is."""

    text: CardText
    front: Fronts
    columns: Grid
    shared: bool  # does the last front hold blocks of the backs too?
    full: Fullness

    @property
    def panel(self) -> Panel:
        return self.front.sides[0].panel

    def behind(self) -> list[list[Block]] | None:
        """Return what stands behind its front's table, as `back_blocks` does."""
        left, width = self.front.left, self.columns.width
        return back_blocks(self.text, left, self.panel.scale, width, self.full)

    def sides(self, most: int, blocks: Sequence[Sequence[Block]] | None) -> list[CardSide] | None:
        """Return its sides with the blocks behind; None where they are more than `most`."""
        if blocks is None:
            return None
        columns, panel, front = self.columns, self.panel, self.front.sides
        ruler = _RULER if self.text.ruler else 0.0
        before = len(front) - self.shared

        def over(number: int) -> tuple[Block, ...]:
            if self.shared and number == 0:
                return front[-1].blocks
            return tuple(self.text.over(panel, before + number))

        def room(number: int) -> float:
            return CardSide(panel, over(number)).room - ruler

        found = flowed(blocks, columns, room, most - before)
        if found is None:
            return None
        behind = (
            CardSide(panel, (*over(n), columns.block(each)) if each else over(n))
            for n, each in enumerate(found)
        )
        return [*front[:before], *behind]


class PocketCard(Struct, frozen=True):
    """The sides of a leader's card, and what of its text found no room on them."""

    faces: tuple[Face, ...]
    missing: Missing


def pocket_card(text: CardText, size: CardSize, fonts: Fonts) -> PocketCard:
    """Return the sides of a card, always an even number where lessons or cautions fill the last.

    Raises `TooSmall` where the card does not hold the leader, and `NoGlyph`.
    """
    factors = (factor for factor in FACTORS if text.least <= factor <= text.most)
    panels = [Panel(size, Scale(factor, fonts)) for factor in factors]
    try:
        card, count = _laid_out(text, panels)
        card = _filled(card, count)
        sides = card.sides(count, card.behind()) or []
        *faces, last = side_faces(text.name, sides)
    except TooWide as error:
        raise TooSmall(str(error)) from None
    if text.ruler and faces:
        last = _ruled(last, sides[-1], "in" if text.told.leader.unit == "in" else "mm")
    missing = left_out(text, card.full, card.panel.scale, card.columns.width)
    return PocketCard((*faces, last), missing)


def holds_all(text: CardText, size: CardSize, fonts: Fonts) -> bool:
    """Whether one card of that size leaves nothing out."""
    ample = Fullness.ample(len(text.lessons))
    panel = Panel(size, Scale(text.least, fonts))
    return _or_none(text, panel, _fronts_of(text, panel), _LEAST, ample) is not None


def _laid_out(text: CardText, panels: Sequence[Panel]) -> tuple[_Layout, int]:
    """Return the card in the largest type with which its sides are fewest, and how many.

    Where all finds room on these in the least type, in the largest in which it still does.
    """
    ample, full = Fullness.ample(len(text.lessons)), Fullness.least(len(text.lessons))
    fronts_of = _fronts_of(text, panels[-1])
    found = _fewest(text, panels[-1], fronts_of, _MOST, full)
    if found is None:
        raise TooSmall("its table or a knot's figure is wider than the card")
    fuller = _or_none(text, panels[-1], fronts_of, found[1], ample)
    if fuller is not None:
        found, full = fuller, ample
    # The larger the type, the less finds room: so the largest that does is searched by halves.
    few, none = len(panels) - 1, -1
    while few - none > 1:
        place = (few + none) // 2
        roomy = panels[place].scale.factor > _ROOMY * text.least
        larger = _or_none(text, panels[place], fronts_of, found[1], ample if roomy else full)
        if larger is None:
            none = place
        else:
            found, few = larger, place
    return found


def _fronts_of(text: CardText, panel: Panel) -> _FrontsOf:
    widths = needed_widths(text.told, replace(panel.scale, factor=1.0))
    return cache(partial(fronts, text, widths))


def _or_none(
    text: CardText, panel: Panel, fronts_of: _FrontsOf, most: int, full: Fullness
) -> tuple[_Layout, int] | None:
    try:
        return _fewest(text, panel, fronts_of, most, full)
    except (TooSmall, TooWide):
        return None


def _fewest(
    text: CardText, panel: Panel, fronts_of: _FrontsOf, most: int, full: Fullness
) -> tuple[_Layout, int] | None:
    """Return the card on one panel with the fewest sides, an even number of them."""
    best: tuple[_Layout, int] | None = None
    for front, columns in product(fronts_of(panel), columns_of(panel)):
        cards = [_Layout(text, front, columns, shared, full) for shared in (False, True)]
        blocks = cards[0].behind()
        for card in cards:
            sides = card.sides(most if best is None else best[1], blocks)
            count = len(sides) if sides else 0
            count += count % 2
            if sides and count <= most and (best is None or count < best[1]):
                best = card, count
            if best is not None and best[1] == _LEAST:
                return best
    return best


def _filled(card: _Layout, most: int) -> _Layout:
    """Return the card with all that finds room on so many sides."""
    for change in wishes(card.text, card.front):
        fuller = replace(card, full=change(card.full))
        if _fits(fuller, most):
            card = fuller
    return card


def _fits(card: _Layout, most: int) -> bool:
    try:
        return card.sides(most, card.behind()) is not None
    except (TooSmall, TooWide):
        return False


def _ruled(face: Face, side: CardSide, unit: Unit) -> Face:
    """Return the last side with a ruler along its upper edge, where there is room for one.

    It measures loops and tags; a card's own edge is always at hand.
    """
    ruler = edge_ruler(side.panel.width, unit, side.panel.scale.medium)
    if ruler is None:
        return face
    down = ruler.height + 2.0 - INSET
    if stack_height(side.blocks, side.gap) + down > side.panel.height:
        return face
    items = (*shifted(face.items, 0, down), *shifted(ruler.items, INSET, 0))
    return replace(face, items=items)
