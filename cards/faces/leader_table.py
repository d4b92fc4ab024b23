"""The table of a card: a leader and a width in; its sections and the knots between them out."""

from collections.abc import Callable, Iterator
from functools import lru_cache
from itertools import accumulate
from typing import Literal

from msgspec import Struct

from tagend.cards.faces.block import Block, Scale, stacked
from tagend.cards.faces.columns import Column, columns
from tagend.cards.words.leader_words import Told
from tagend.fonts import Fonts
from tagend.layouts.paper.face import Item, Path, segment
from tagend.layouts.paper.text import CAP_HEIGHT, SetLine, set_line

# Where the knots stand: at the right, each on the edge of two rows, or between these in a row of
# its own, which is narrower and higher.
Knots = Literal["beside", "between"]

_RULE = 0.3  # points
_HEAD, _FOOT = 1.5, 0.62  # heights above and below the rows, in small type sizes
_GAP = 0.24  # the least between two columns, in body type sizes
_LAP_GAP = 0.5  # the least from a knot's name to its lap, in small type sizes
_COMMA_PITCH = 1.01  # of the rows, in type sizes of the cuts
_BETWEEN = 1.05  # of a knot's own row, in small type sizes
_BELOW = 0.06  # the last of these, where a letter hangs out of it


class LeaderTable(Struct, frozen=True):
    """The blocks of a table: it may go on to another panel between any two rows."""

    heads: tuple[Block, ...]  # for each row, the heading with the knot above that row
    rows: tuple[Block, ...]  # each with the knot below it
    foot: Block  # room for the lower half of the last knot

    def part(self, first: int, end: int) -> Block:
        """Return the rows from `first` up to `end` with their heading, counted from 0."""
        return stacked([self.heads[first], *self.rows[first:end], self.foot])


class _Junction(Struct, frozen=True):
    """What is tied, and how far its ends are lapped or folded."""

    knot: SetLine
    lap: SetLine

    @property
    def width(self) -> float:
        return self.knot.width + bool(self.lap.width) * _LAP_GAP * self.knot.size + self.lap.width


class _Set(Struct, frozen=True):
    """All lines of a table, measured."""

    columns: tuple[Column, ...]
    heading: _Junction
    junctions: tuple[_Junction, ...]

    @property
    def cells(self) -> float:
        return sum(column.width for column in self.columns)

    @property
    def knots(self) -> float:
        return max(each.width for each in (self.heading, *self.junctions))


def needed_widths(told: Told, scale: Scale) -> dict[Knots, float]:
    """Return the least width of a leader's table in either way, the one of lower tables first.

    They grow with the factor of the scale.
    """
    of, gap = _set(told, scale.factor, scale.fonts), _GAP * scale.body
    indent = of.columns[0].width + gap
    return {
        "beside": of.cells + of.knots + len(of.columns) * gap,
        "between": max(of.cells + (len(of.columns) - 1) * gap, indent + of.knots),
    }


def table_height(told: Told, scale: Scale, knots: Knots) -> float:
    """Return how high a leader's whole table stands, before it is set."""
    count, pitch = len(told.leader.pieces), _pitch(told, scale)
    if knots == "beside":
        return (_HEAD + _FOOT) * scale.small + count * pitch
    return (_HEAD + _BELOW + (count + 1) * _BETWEEN) * scale.small + count * pitch


def leader_table(told: Told, scale: Scale, width: float, knots: Knots) -> LeaderTable:
    """Return the table of a leader, its columns spread over the width."""
    of, pitch = _set(told, scale.factor, scale.fonts), _pitch(told, scale)
    beside = knots == "beside"
    free = width - of.cells - (of.knots if beside else 0.0)
    gap = free / (len(of.columns) - (not beside))
    *starts, end = accumulate((column.width + gap for column in of.columns), initial=0.0)
    # Between the rows under the second column, unless its own words and lap need more room.
    knot_x = end if beside else min(starts[1], width - of.knots)
    placed = list(zip(of.columns, starts, strict=True))
    baseline = 0.8 * scale.small
    own, y = 0.0 if beside else _BETWEEN * scale.small, _HEAD * scale.small

    def head(place: int) -> Iterator[Item]:
        for column, x in placed:
            yield from column.head_at(x, baseline)
        if beside:
            yield from _texts(of.heading, knot_x, width, baseline)
        yield from _junction(of.junctions[place], knot_x, width, y + own / 2)

    def row(place: int) -> Iterator[Item]:
        for column, x in placed:
            yield from column.cell_at(place, x, pitch)
        yield from _junction(of.junctions[place + 1], knot_x, width, pitch + own / 2)

    def block(items: Callable[[int], Iterator[Item]], place: int, height: float) -> Block:
        return Block(lambda: tuple(items(place)), height)

    count = len(told.leader.pieces)
    return LeaderTable(
        heads=tuple(block(head, place, y + own) for place in range(count)),
        rows=tuple(block(row, place, pitch + own) for place in range(count)),
        foot=Block((), (_FOOT if beside else _BELOW) * scale.small),
    )


@lru_cache(maxsize=16)  # a card is tried in a few sizes of type, and many of paper
def _set(told: Told, factor: float, fonts: Fonts) -> _Set:
    leader, scale = told.leader, Scale(factor, fonts)
    words = [_butt(told), *map(told.tied, range(1, len(leader.pieces)))]
    words.append(told.end_and_loop(leader.fly))

    def junction(knot: str, lap: str) -> _Junction:
        set_knot, set_lap = (set_line(text, scale.medium, scale.small) for text in (knot, lap))
        return _Junction(set_knot, set_lap)

    return _Set(
        columns=tuple(columns(told, scale)),
        heading=junction(told.wording.say("knot"), told.wording.say("laps", unit=leader.unit)),
        junctions=tuple(map(junction, words, told.lap_numbers())),
    )


def _butt(told: Told) -> str:
    """Return the butt's end, and how long it is bought where no knot is tied there."""
    leader, first = told.leader, told.leader.pieces[0]
    end = told.end_and_loop(leader.butt)
    if first.bought and leader.butt.knot is None:
        return f"{end}, {told.length(first.section.length)}"
    return end


def _pitch(told: Told, scale: Scale) -> float:
    """Return how far the rows stand apart: further where a decimal comma hangs over a rule."""
    return max(scale.pitch, _COMMA_PITCH * scale.cut if told.wording.decimal == "," else 0.0)


def _junction(of: _Junction, x: float, end: float, y: float) -> Iterator[Item]:
    """Set a knot's name at x and its lap at the end, and rules that lead to both."""
    size = of.knot.size
    yield Path(segment(0, y, x - 0.35 * size, y), _RULE)
    yield from _texts(of, x, end, y + CAP_HEIGHT * size / 2)
    left, right = x + of.knot.width + 0.35 * size, end - of.lap.width - 0.35 * size
    if of.lap.width and right - left > size:
        yield Path(segment(left, y, right, y), _RULE)


def _texts(of: _Junction, x: float, end: float, baseline: float) -> tuple[Item, ...]:
    return (*of.knot.at(x, baseline), *of.lap.at(end, baseline, "right"))
