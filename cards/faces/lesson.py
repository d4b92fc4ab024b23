"""How a knot is tied, on a card: a lesson and a width in; its steps, a line each, out."""

from typing import Literal, TypeAlias

from tagend.cards.faces.block import DROP, Block, Scale, hung, line_block, stacked
from tagend.cards.words.lessons import Lesson
from tagend.layouts.paper.face import Item, Path, rectangle
from tagend.layouts.paper.text import set_line

_BELOW = 1.5  # points from a figure to the steps
_EDGE = 0.5  # points, of an outlined strand
LEAST_FIGURE = 15.0  # points that a figure takes; no knot's is lower


# "room" is as high as the figure and takes no drawing; "least" is as low as any, and loads nothing.
Figure: TypeAlias = Literal["none", "least", "room", "drawn"]


def lesson_block(lesson: Lesson, scale: Scale, width: float, figure: Figure) -> Block:
    """Return the knot's name, its figure if wanted, its numbered steps and its caution."""
    heading = lesson.name[:1].upper() + lesson.name[1:]  # a person's own may have capitals
    title = set_line(heading, scale.bold, scale.body)
    name = line_block(title)
    steps = [
        hung(f"{number}", step, scale, width) for number, step in enumerate(lesson.steps, start=1)
    ]
    care = [hung("!", lesson.caution, scale, width)] if lesson.caution else []
    shown = []
    if figure == "least":
        shown = [Block((), LEAST_FIGURE)]
    elif figure != "none":
        shown = [_figure(lesson, scale, width, drawn=figure == "drawn")]
    if figure == "drawn" and shown[0].items:
        name = Block((*name.items, *_key(lesson, scale, title.width, width)), name.height)
    return stacked([name, *shown, *steps, *care])


def _key(lesson: Lesson, scale: Scale, start: float, width: float) -> tuple[Item, ...]:
    """Tell a joint's strands apart, after its name; nothing where that leaves no room."""
    items: list[Item] = []
    x, baseline = start + 1.5 * scale.body, DROP * scale.body
    wide, high = 1.8 * scale.small, 0.35 * scale.small
    for word, fill in zip(filter(None, lesson.strands), (1.0, 0.0), strict=False):
        line = set_line(word, scale.medium, scale.small)
        swatch = rectangle(x, baseline - 0.25 * scale.small - high / 2, wide, high)
        items += (Path(swatch, _EDGE, fill=fill), *line.at(x + wide + 0.3 * scale.small, baseline))
        x += wide + line.width + 1.3 * scale.small
    return tuple(items) if x <= width else ()


def _figure(lesson: Lesson, scale: Scale, width: float, *, drawn: bool) -> Block:
    """Return the knot's strip of frames; nothing for a knot that has no figure."""
    from tagend.cards.faces.strip import HEIGHT, strip

    block = strip(lesson, scale, width, HEIGHT * scale.factor, drawn=drawn)
    return Block(block.items, block.height + _BELOW) if block else Block((), 0.0)
