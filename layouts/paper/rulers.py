"""Rulers to measure with on paper: a unit and a length in, ticks and figures out."""

from collections.abc import Iterator, Mapping
from typing import Literal, NamedTuple, TypeAlias

from msgspec import Struct

from tagend.fonts import Chain
from tagend.layouts.paper.face import MM, POINTS_PER_INCH, Face, Item, Path, Step, segment
from tagend.layouts.paper.legible import FLOOR
from tagend.layouts.paper.lengths import fits
from tagend.layouts.paper.text import set_line

Unit: TypeAlias = Literal["mm", "in"]

PEN = 0.25  # common practice in print: the thinnest line that every printer draws whole
RULE = 50 * MM

_BESIDE = 0.6 * MM  # from a long tick to its figure


class _Division(Struct, frozen=True):
    """How a ruler is divided; `ticks` has a length for every so many steps, the longest last."""

    step: float
    steps_a_figure: int
    figure: int  # that the first long tick after 0 stands for
    ticks: Mapping[int, float]


# The short ticks stay visible when the card is cut half a millimetre too small, and the figures
# stand below all but the longest.
_EDGE: dict[Unit, _Division] = {
    "mm": _Division(
        step=MM,
        steps_a_figure=10,
        figure=10,
        ticks={1: 1.5 * MM, 5: 2.1 * MM, 10: 4.2 * MM},
    ),
    "in": _Division(
        step=POINTS_PER_INCH / 16,
        steps_a_figure=16,
        figure=1,
        ticks={1: 1.2 * MM, 2: 1.7 * MM, 4: 2.2 * MM, 8: 3 * MM, 16: 4.2 * MM},
    ),
}


def edge_ruler(length: float, unit: Unit, fonts: Chain) -> Face | None:
    """Return a ruler of as many whole centimetres or inches as the length holds, None for none.

    It lies along the upper edge of its face, which is as wide as it is long. The figures stand
    beside their ticks, so that nothing reaches beyond the length.
    """
    of = _EDGE[unit]
    long = of.step * of.steps_a_figure
    count = next((n for n in range(int(length / long) + 1, 0, -1) if fits(n * long, length)), 0)
    if count == 0:
        return None
    steps = count * of.steps_a_figure
    ticks = Path(tuple(ticks_along(0, 0, of.step, steps, of.ticks)), line=PEN)
    figures = _figures(of, count, unit, length, fonts)
    height = of.ticks[of.steps_a_figure]
    return Face(name="ruler", width=count * long, height=height, items=(ticks, *figures))


class TrueSizeRules(NamedTuple):
    """The rule by which a print's scale is checked, and a slim one for little room."""

    full: Face  # 50 mm above its line and 2 in below
    slim: Face  # without the inches


def true_size_rules(of_mm: str, of_inches: str, fonts: Chain) -> TrueSizeRules:
    """Return the rules, with what is said beside the 50 mm and below of the 2 in."""
    tall, x = 3 * MM, 2 * POINTS_PER_INCH + 2 * MM
    beside, below = (set_line(text, fonts, FLOOR) for text in (of_mm, of_inches))
    above_line = (*segment(0, tall, RULE, tall), *ticks_along(0, tall, MM, 50, _rising(-tall, 10)))
    below_line = ticks_along(0, tall, POINTS_PER_INCH / 8, 16, _rising(tall, 8))
    slim = Path(above_line, line=PEN)
    full = Path(
        (*above_line, *segment(RULE, tall, 2 * POINTS_PER_INCH, tall), *below_line), line=PEN
    )
    said = beside.at(x, tall - 0.6 * MM)
    width = x + max(beside.width, below.width)
    return TrueSizeRules(
        _rule(width, 2 * tall, (full, *said, *below.at(x, 2 * tall))),
        _rule(x + beside.width, tall, (slim, *said)),
    )


def _rule(width: float, height: float, items: tuple[Item, ...]) -> Face:
    return Face(name="true size", width=width, height=height, items=items)


def ticks_along(
    x: float, base: float, step: float, count: int, lengths: Mapping[int, float]
) -> Iterator[Step]:
    """Yield ticks down from a line, or up where their length is below 0.

    Each has the length of the last multiple of steps at which it stands.
    """
    for k in range(count + 1):
        (*_, length) = (length for every, length in lengths.items() if k % every == 0)
        yield from segment(x + k * step, base, x + k * step, base + length)


def _figures(of: _Division, count: int, unit: Unit, room: float, fonts: Chain) -> Iterator[Item]:
    """Yield a figure to the right of each long tick, where it finds place; 0 says the unit."""
    baseline = of.ticks[of.steps_a_figure]
    for k in range(count + 1):
        x = k * of.step * of.steps_a_figure + _BESIDE
        line = set_line(f"{k * of.figure}" if k else f"0 {unit}", fonts, FLOOR)
        if fits(x + line.width, room):
            yield from line.at(x, baseline)


def _rising(tall: float, long: int) -> dict[int, float]:
    return {1: tall * 2 / 5, long // 2: tall * 2 / 3, long: tall}
