"""The title of a drawing: a name and what is to be said of it in, a framed block out."""

from collections.abc import Sequence

from tagend.fonts import Fonts
from tagend.layouts.paper.face import MM, Face, Item, Path, rectangle, shifted
from tagend.layouts.paper.legible import FLOOR
from tagend.layouts.paper.lengths import fits
from tagend.layouts.paper.rulers import PEN
from tagend.layouts.paper.text import CAP_HEIGHT, SetLine, break_lines

WIDTH = 92 * MM  # holds the rule with most words
PAD = 3 * MM
NAME = 11.0
LEADING = 1.35


def title_block(name: str, told: Sequence[str], rule: Face, fonts: Fonts, room: float) -> Face:
    """Return a name, what is told of it and the rule of true size, all within the room.

    Without room for the rule there is none. Raises TooWide.
    """
    width = min(max(WIDTH, rule.width + 2 * PAD), room)
    inner = width - 2 * PAD
    lines = list(break_lines(name, fonts.bold, NAME, inner))
    for text in told:
        lines += break_lines(text, fonts.medium, FLOOR, inner)
    items, y = _set(lines)
    if fits(rule.width, inner):
        items += shifted(rule.items, PAD, y + PAD / 2)
        y += PAD / 2 + rule.height
    frame = Path(rectangle(0, 0, width, y + PAD), line=2 * PEN, fill=1)
    return Face(name, width, y + PAD, (frame, *items))


def _set(lines: Sequence[SetLine]) -> tuple[list[Item], float]:
    """Return the lines one below the other, and where the last one ends."""
    items: list[Item] = []
    y = PAD
    for line in lines:
        items += line.at(PAD, y + CAP_HEIGHT * line.size)
        y += LEADING * line.size
    return items, y
