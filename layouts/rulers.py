"""Rulers to measure with on paper: a unit and a length in, ticks and figures out."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Literal, TypeAlias

from layouts.face import MM, POINTS_PER_INCH, Face, Item, Path, Step, segment
from layouts.legible import FLOOR
from layouts.lengths import SLACK
from layouts.text import set_line

Unit: TypeAlias = Literal["mm", "in"]

PEN = 0.25  # common practice in print: the thinnest line that every printer draws whole

_BESIDE = 0.6 * MM  # from a long tick to its figure


@dataclass(frozen=True, slots=True)
class Ruler:
    """A ruler along a card's edge, which is y = 0; its zero is at x = 0."""

    items: tuple[Item, ...]
    length: float
    height: float


@dataclass(frozen=True, slots=True)
class TrueSizeRule:
    """50 mm with ticks above one line, 2 in with eighths below it.

    `mm_label` and `inch_label` are where the baselines of what is said about them begin.
    """

    path: Path
    mm_label: tuple[float, float]
    inch_label: tuple[float, float]
    width: float
    height: float


@dataclass(frozen=True, slots=True)
class _Division:
    """How a ruler is divided: `ticks` has a length for every so many steps, the longest last."""

    step: float
    figure_every: int
    figure_step: int
    ticks: Mapping[int, float]


# The short ticks stay visible when the card is cut half a millimetre too small, and the figures
# stand below all but the longest.
_DIVISIONS: dict[Unit, _Division] = {
    "mm": _Division(MM, 10, 10, {1: 1.5 * MM, 5: 2.1 * MM, 10: 4.2 * MM}),
    "in": _Division(
        POINTS_PER_INCH / 16,
        16,
        1,
        {1: 1.2 * MM, 2: 1.7 * MM, 4: 2.2 * MM, 8: 3 * MM, 16: 4.2 * MM},
    ),
}


def edge_ruler(length: float, unit: Unit) -> Ruler | None:
    """Return a ruler of as many whole centimetres or inches as the length holds, None for none.

    The figures stand beside their ticks, so that nothing reaches beyond either end.
    """
    of = _DIVISIONS[unit]
    steps = int((length + SLACK) / (of.step * of.figure_every)) * of.figure_every
    if steps == 0:
        return None
    end, height = steps * of.step, of.ticks[of.figure_every]
    figures = _figures(of, steps, unit, height)
    ticks = Path(tuple(_ticks(0, 0, of.step, steps, of.ticks)), line=PEN)
    return Ruler((ticks, *figures), end, height)


def true_size_rule(x: float, y: float) -> TrueSizeRule:
    """Return a rule with its top left corner at a place, to check a printer's scale."""
    tall, width = 3 * MM, 2 * POINTS_PER_INCH
    base, label_x = y + tall, x + width + 2 * MM
    ticks = (
        *_ticks(x, base, MM, 50, _up_to(-tall, 5, 10)),
        *_ticks(x, base, POINTS_PER_INCH / 8, 16, _up_to(tall, 4, 8)),
    )
    path = Path((*segment(x, base, x + width, base), *ticks), line=PEN)
    return TrueSizeRule(path, (label_x, base - 0.6 * MM), (label_x, base + tall), width, 2 * tall)


def rule_faces() -> tuple[Face, ...]:
    """Return rules that say how to check a print with them, the fuller one first."""
    words, inches = (set_line(text, "medium", FLOOR) for text in (_WORDS, "and this is 2 in"))
    rule = true_size_rule(0, 0)
    full = (rule.path, *words.at(*rule.mm_label), *inches.at(*rule.inch_label))
    tall, width = 3 * MM, 50 * MM
    base = (*segment(0, tall, width, tall), *_ticks(0, tall, MM, 50, _up_to(-tall, 5, 10)))
    slim = (Path(base, line=PEN), *words.at(width + 2 * MM, tall - 0.3 * MM))
    return (
        Face("true size", rule.mm_label[0] + words.width, rule.height, full),
        Face("true size", width + 2 * MM + words.width, tall, slim),
    )


_WORDS = "100 % print: this is 50 mm"


def _figures(of: _Division, steps: int, unit: Unit, baseline: float) -> Iterator[Item]:
    """Yield a figure to the right of every long tick but the last; the first says the unit."""
    for k in range(0, steps, of.figure_every):
        figure = k // of.figure_every * of.figure_step
        text = f"{figure}" if k else f"0 {unit}"
        yield from set_line(text, "medium", FLOOR).at(k * of.step + _BESIDE, baseline)


def _up_to(tall: float, middle: int, long: int) -> dict[int, float]:
    return {1: tall * 2 / 5, middle: tall * 2 / 3, long: tall}


def _ticks(
    x: float, base: float, step: float, count: int, lengths: Mapping[int, float]
) -> Iterator[Step]:
    """Yield ticks up or down from a line; each is as long as the largest multiple it stands at."""
    for k in range(count + 1):
        (*_, length) = (length for every, length in lengths.items() if k % every == 0)
        yield from segment(x + k * step, base, x + k * step, base + length)
