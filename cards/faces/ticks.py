"""Boxes to tick: how many things there are in, rows of boxes out."""

from tagend.cards.faces.block import Block, Scale
from tagend.cards.words.language import Wording
from tagend.layouts.paper.face import Item, Path, rectangle
from tagend.layouts.paper.text import set_line

_BOX = 9.0  # points; a pencil's tick fits
_STEP = 13.0
_GROUP = 5  # boxes between two wider gaps, so that they can be counted at a glance
_GROUP_GAP = 5.0
_PEN = 0.7
_MOST = 60  # boxes; beyond that each stands for ten, or for a hundred


def tick_boxes(count: int, wording: Wording, scale: Scale, width: float) -> Block:
    """Return boxes within a width, and what each stands for where that is not one."""
    each = next(each for each in (1, 10, 100, 1000) if count <= _MOST * each)
    boxes = -(-count // each)
    groups = max(1, int((width + _GROUP_GAP) // (_GROUP * _STEP + _GROUP_GAP)))
    row_of = groups * _GROUP
    items: list[Item] = []
    for place in range(boxes):
        row, column = divmod(place, row_of)
        x = column * _STEP + column // _GROUP * _GROUP_GAP
        items.append(Path(rectangle(x, row * _STEP + 1, _BOX, _BOX), _PEN))
    height = -(-boxes // row_of) * _STEP
    if each > 1:
        words = set_line(wording.say("box_for", count=each), scale.medium, scale.small)
        items += words.at(0, height + scale.small)
        height += 1.3 * scale.small
    return Block(tuple(items), height)
