"""Dimension lines, as in a technical drawing: two places in, a line with its measure out."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from tagend.fonts import OURS
from tagend.layouts.paper.face import MM, Item, Path, Step, rectangle, segment
from tagend.layouts.paper.legible import FLOOR
from tagend.layouts.paper.lengths import in_inches, in_mm
from tagend.layouts.paper.rulers import PEN
from tagend.layouts.paper.text import CAP_HEIGHT, set_line
from tagend.layouts.sheets.ink import Box, apart

ARROW, BARB = 1.8 * MM, 0.45 * MM  # an arrow's length, and half its width
STOP = 1.2 * MM  # half the bar at either end
AROUND = 0.8 * MM  # paper kept white around a figure
CLEAR = 0.6 * MM  # from one dimension to the next one's figure


@dataclass(frozen=True, slots=True)
class Dimension:
    """A dimension: its line, how long it is, and where that is said, above all lines."""

    line: Path
    line_box: Box
    length: float
    figure_box: Box

    def is_clear_of(self, others: Iterable["Dimension"]) -> bool:
        """Whether no figure stands on another, or on another's line."""
        return all(
            apart(self.figure_box, other.figure_box, CLEAR)
            and apart(self.figure_box, other.line_box, CLEAR)
            and apart(self.line_box, other.figure_box, CLEAR)
            for other in others
        )

    def figure(self, number: Callable[[str], str]) -> tuple[Item, ...]:
        """Return the figure on white paper; `number` writes it in a language's style.

        The box is as wide as with decimal points: commas are no wider.
        """
        left, top, right, bottom = self.figure_box
        paper = Path(rectangle(left, top, right - left, bottom - top), fill=1)
        text = set_line(number(_figure(self.length)), OURS.medium, FLOOR)
        return paper, *text.at((left + right) / 2, bottom - AROUND, "centre")


def across(start: float, end: float, y: float, figure_at: float | None = None) -> Dimension:
    """Return the dimension from left to right, its figure in the middle or at a place.

    A figure that would hide the line stands above it.
    """
    x = (start + end) / 2 if figure_at is None else figure_at
    width, height = figure_size(end - start)
    above = figure_at is None and width + 2 * ARROW > end - start
    box = (start, y - STOP, end, y + STOP)
    figure_y = y - STOP - height / 2 if above else y
    return _dimension(_arrows(start, end, y, upright=False), box, end - start, x, figure_y)


def down(start: float, end: float, x: float, figure_at: float | None = None) -> Dimension:
    """Return the dimension from top to bottom, its figure in the middle or at a place."""
    y = (start + end) / 2 if figure_at is None else figure_at
    box = (x - STOP, start, x + STOP, end)
    return _dimension(_arrows(start, end, x, upright=True), box, end - start, x, y)


def figure_size(length: float) -> tuple[float, float]:
    """Return how wide and how tall the figure of a length is, its white paper and all."""
    return set_line(_figure(length), OURS.medium, FLOOR).width + 2 * AROUND, _TALL


_TALL = CAP_HEIGHT * FLOOR + 2 * AROUND


def _dimension(
    steps: Iterable[Step], line_box: Box, length: float, x: float, y: float
) -> Dimension:
    width, height = figure_size(length)
    box = (x - width / 2, y - height / 2, x + width / 2, y + height / 2)
    return Dimension(Path(tuple(steps), line=PEN, fill=0), line_box, length, box)


def _figure(length: float) -> str:
    return f"{in_mm(length)} · {in_inches(length)}"


def _arrows(start: float, end: float, at: float, upright: bool) -> Iterator[Step]:
    """Yield a line with a bar at either end, and arrows where it is long enough for them."""
    lines = [((start, at), (end, at))]
    lines += [((place, at - STOP), (place, at + STOP)) for place in (start, end)]
    for one, other in lines:
        yield from segment(*_turned(one, upright), *_turned(other, upright))
    if end - start > 3 * ARROW:
        for tip, inwards in ((start, ARROW), (end, -ARROW)):
            barbs = ((tip + inwards, at - BARB), (tip + inwards, at + BARB))
            yield ("move", *_turned((tip, at), upright))
            yield from (("line", *_turned(barb, upright)) for barb in barbs)
            yield ("close",)


def _turned(place: tuple[float, float], upright: bool) -> tuple[float, float]:
    return (place[1], place[0]) if upright else place
