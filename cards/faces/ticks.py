"""Boxes to tick: how many things there are in, or their numbers; rows of boxes out."""

from collections.abc import Sequence
from typing import NamedTuple, Protocol

from tagend.cards.faces.block import Block, Scale
from tagend.cards.faces.page import Page
from tagend.cards.words.language import Wording
from tagend.layouts.paper.face import Item, Path, rectangle, shifted
from tagend.layouts.paper.lengths import fits
from tagend.layouts.paper.text import CAP_HEIGHT, SetLine, set_line

_BOX = 11.0  # points; a pencil's tick fits
_HIGH = 15.0  # of a box with a number in it
_NUMBER = 10.0  # the type of that
_INSIDE = 1.5  # at its left and right
_BETWEEN = 2.5
_GROUP = 5  # boxes between two wider gaps, so that they can be counted at a glance
_GROUP_GAP = 4.0
_PEN = 0.7
_MOST = 60  # boxes; beyond that each stands for ten, or for a hundred


class Ticked(Protocol):
    """What is ticked off, one by one."""

    @property
    def count(self) -> int: ...
    @property
    def numbers(self) -> Sequence[int]: ...


def ticked(block: Block, of: Ticked, page: Page, x: float, line: float) -> Block:
    """Return a block with its boxes beside it at x, or below it at -x where that is not over 0.

    The first boxes stand in the middle of its first line, which is so high.
    """
    boxes = tick_boxes(of.count, page.wording, page.scale, page.width - abs(x), of.numbers)
    high = _HIGH if of.numbers else _BOX
    y = max((line - high) / 2, 0.0) if x > 0 else block.height
    items = (*block.items, *shifted(boxes.items, abs(x), y))
    return Block(items, max(block.height, y + boxes.height))


def boxes_width(count: int, numbers: Sequence[int], scale: Scale) -> float:
    """Return how wide all boxes stand in one row."""
    boxes = _boxes(count, numbers, scale)
    return _row_width(len(boxes.labels), boxes.wide + _BETWEEN)


def tick_boxes(
    count: int, wording: Wording, scale: Scale, width: float, numbers: Sequence[int] = ()
) -> Block:
    """Return boxes within a width, and what each stands for where that is not one.

    Where the things have numbers, each box has its own in it, or its first and last.
    """
    boxes = _boxes(count, numbers, scale)
    wide, high = boxes.wide, _HIGH if numbers else _BOX
    step = wide + _BETWEEN
    in_row = _in_row(len(boxes.labels), step, width)
    items: list[Item] = []
    for place, label in enumerate(boxes.labels):
        row, column = divmod(place, in_row)
        x, y = column * step + column // _GROUP * _GROUP_GAP, row * (high + _BETWEEN)
        items.append(Path(rectangle(x, y, wide, high), _PEN))
        items += label.at(x + wide / 2, y + high / 2 + CAP_HEIGHT * _NUMBER / 2, "centre")
    height = -(-len(boxes.labels) // in_row) * (high + _BETWEEN)
    if boxes.each > 1:
        words = set_line(wording.say("box_for", count=boxes.each), scale.medium, scale.small)
        items += words.at(0, height + scale.small)
        height += 1.3 * scale.small
    return Block(tuple(items), height)


class _Boxes(NamedTuple):
    """What stands in each box, what each is for, and how wide it is."""

    labels: list[SetLine]
    each: int
    wide: float


def _boxes(count: int, numbers: Sequence[int], scale: Scale) -> _Boxes:
    each = next(each for each in (1, 10, 100, 1000) if count <= _MOST * each)
    labels = [_label(numbers[at : at + each], scale) for at in range(0, count, each)]
    return _Boxes(
        labels, each, max([_BOX, *(label.width + 2 * _INSIDE for label in labels if numbers)])
    )


def _in_row(count: int, step: float, width: float) -> int:
    """Return how many boxes a row has: all, or whole groups where there is room for one."""
    if fits(_row_width(count, step), width):
        return count
    groups = int((width + _GROUP_GAP + _BETWEEN) // (_GROUP * step + _GROUP_GAP))
    return groups * _GROUP or max(1, int((width + _BETWEEN) // step))


def _row_width(count: int, step: float) -> float:
    return count * step + (count - 1) // _GROUP * _GROUP_GAP - _BETWEEN


def _label(numbers: Sequence[int], scale: Scale) -> SetLine:
    ends = dict.fromkeys(str(number) for number in (*numbers[:1], *numbers[-1:]))
    return set_line("–".join(ends), scale.medium, _NUMBER)
