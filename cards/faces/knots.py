"""The knots card: lessons of leaders in; each knot's strip and steps, on a card's sides, out."""

from collections.abc import Sequence

from tagend.cards.faces.block import Block, Scale, TooSmall
from tagend.cards.faces.flow import Grid, flowed
from tagend.cards.faces.imprint import Imprint, imprint_block
from tagend.cards.faces.lesson import HEIGHTS, SLIM, has_figure, lesson_block
from tagend.cards.faces.panel import CardSide, Panel, columns_of, side_faces
from tagend.cards.words.lessons import Lesson
from tagend.fonts import Fonts
from tagend.layouts.paper.face import Face
from tagend.layouts.paper.text import TooWide
from tagend.layouts.stock.formats import CardSize

_MOST = 40  # sides


def knots_card(
    lessons: Sequence[Lesson],
    size: CardSize,
    fonts: Fonts,
    factors: Sequence[float],
    imprint: Imprint | None = None,
) -> tuple[Face, ...]:
    """Return the fewest sides, in the largest type, and then with the largest strips.

    `factors` are those of the type that may be taken, the largest first. Raises `TooSmall`.
    """
    panels = [Panel(size, Scale(factor, fonts)) for factor in factors]

    def laid(panel: Panel, heights: Sequence[float], most: int) -> list[CardSide]:
        """Return the fewest sides; none where they are more than `most`."""
        tries = (
            _sides(lessons, imprint, panel, columns, heights, most) for columns in columns_of(panel)
        )
        return min((sides for sides in tries if sides), key=len, default=[])

    slim = [SLIM] * len(lessons)
    most = len(laid(panels[-1], slim, _MOST))
    panel = next((each for each in panels if laid(each, slim, most)), None)
    if not most or panel is None:
        raise TooSmall("the steps of a knot need more room")
    least = next(each for each in HEIGHTS[::-1] if laid(panel, [each] * len(lessons), most))
    heights = [least] * len(lessons)
    for place in range(len(lessons)):  # and higher where a side has room for that
        for heights[place] in HEIGHTS[::-1]:
            if heights[place] == least or laid(panel, heights, most):
                break
    return side_faces("knots", laid(panel, heights, most))


def _sides(
    lessons: Sequence[Lesson],
    imprint: Imprint | None,
    panel: Panel,
    columns: Grid,
    heights: Sequence[float],
    most: int,
) -> list[CardSide] | None:
    """Return the sides, not more than `most`; None where something is too large."""
    try:
        groups = [
            [_taught(lesson, panel.scale, columns.width, height)]
            for lesson, height in zip(lessons, heights, strict=True)
        ]
        whose = imprint_block(imprint or Imprint(), panel.scale, columns.width)
        found = flowed([*groups, *([[whose]] if whose.height else [])], columns, panel.room, most)
    except (TooSmall, TooWide):
        return None
    return None if found is None else [CardSide(panel, (columns.block(each),)) for each in found]


def _taught(lesson: Lesson, scale: Scale, width: float, height: float) -> Block:
    heights = [each for each in HEIGHTS if each >= height] if has_figure(lesson) else HEIGHTS[:1]
    tries = (lesson_block(lesson, scale, width, each, "steps") for each in heights)
    block = next((each for each in tries if each is not None), None)
    if block is None:
        raise TooSmall(f"the {lesson.name} is wider than its column")
    return block
