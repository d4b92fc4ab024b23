"""The table of a leader: what is told of it in; a row a section out, each knot at its junction."""

from dataclasses import dataclass
from itertools import accumulate
from typing import Literal

from tagend.cards.faces.block import Block, Scale, stacked
from tagend.cards.faces.columns import columns
from tagend.cards.words.leader_words import Told
from tagend.layouts.paper.face import Item, Path, segment
from tagend.layouts.paper.text import CAP_HEIGHT, SetLine, set_line

# What stands beside the knots: the sizes of the loops, and how far ends are lapped or folded.
Beside = Literal["loops and laps", "laps", "nothing"]

_RULE = 0.5  # points, and grey: it leads the eye to the knot
_RULE_GREY = 0.45
_HEAD, _FOOT = 1.4, 0.6  # heights above and below the rows, in small type sizes
_GAP = 0.35  # the least between two columns, in body type sizes
_LAP_GAP = 0.5  # the least from a knot's name to its lap, in small type sizes
_COMMA_PITCH = 1.01  # of the rows, in type sizes of the cuts


@dataclass(frozen=True, slots=True)
class LeaderTable:
    """The blocks of a table: it may go on to another panel between any two rows."""

    heads: tuple[Block, ...]  # for each row, the heading with the knot above that row
    rows: tuple[Block, ...]  # each with the knot below it at its lower edge
    foot: Block  # room for the lower half of the last knot

    def part(self, first: int, end: int) -> Block:
        """Return the rows from `first` up to `end` with their heading, counted from 0."""
        return stacked([self.heads[first], *self.rows[first:end], self.foot])


@dataclass(frozen=True, slots=True)
class _Junction:
    """A knot's name, and how far its ends are lapped or folded."""

    knot: SetLine
    lap: SetLine

    @property
    def width(self) -> float:
        return self.knot.width + bool(self.lap.width) * _LAP_GAP * self.knot.size + self.lap.width


def needed_width(told: Told, scale: Scale, beside: Beside) -> float:
    """Return the least width of a leader's table, which grows with the factor of the scale."""
    of_columns = sum(column.width + _GAP * scale.body for column in columns(told, scale))
    return of_columns + _last_width(told, scale, beside)


def table_height(told: Told, scale: Scale) -> float:
    """Return how high a leader's whole table stands, before it is set."""
    return (_HEAD + _FOOT) * scale.small + len(told.leader.pieces) * _pitch(told, scale)


def leader_table(told: Told, scale: Scale, width: float, beside: Beside) -> LeaderTable:
    """Return the table of a leader, its columns spread over the width.

    What does not stand `beside` the knots is left to the card's head.
    """
    of_columns = list(columns(told, scale))
    knots = _junctions(told, scale, beside)
    free = width - sum(column.width for column in of_columns) - _last_width(told, scale, beside)
    gap = free / len(of_columns)
    *starts, knot_x = accumulate((column.width + gap for column in of_columns), initial=0.0)
    placed = list(zip(of_columns, starts, strict=True))
    head, pitch = _HEAD * scale.small, _pitch(told, scale)
    names = [item for column, x in placed for item in column.head_at(x, 0.8 * scale.small)]
    names += _last_head(told, scale, beside).at(width, 0.8 * scale.small, "right")

    def row(place: int) -> Block:
        cells = (item for column, x in placed for item in column.cell_at(place, x, pitch))
        return Block((*cells, *_junction(knots[place + 1], knot_x, width, pitch)), pitch)

    return LeaderTable(
        heads=tuple(
            Block((*names, *_junction(knot, knot_x, width, head)), head) for knot in knots[:-1]
        ),
        rows=tuple(row(place) for place in range(len(told.leader.pieces))),
        foot=Block((), _FOOT * scale.small),
    )


def _junctions(told: Told, scale: Scale, beside: Beside) -> list[_Junction]:
    """Return what stands at each junction, from the butt to the fly."""
    leader, end = told.leader, told.end_and_loop if beside == "loops and laps" else told.end_name
    words = [end(leader.butt), *map(told.joint, leader.joints), end(leader.fly)]
    laps = [""] * len(words) if beside == "nothing" else told.lap_numbers()

    def line(of: str) -> SetLine:
        return set_line(of, scale.medium, scale.small)

    return [_Junction(line(knot), line(lap)) for knot, lap in zip(words, laps, strict=True)]


def _pitch(told: Told, scale: Scale) -> float:
    """Return how far the rows stand apart: further where a decimal comma hangs over a rule."""
    return max(scale.pitch, _COMMA_PITCH * scale.cut if told.wording.decimal == "," else 0.0)


def _last_head(told: Told, scale: Scale, beside: Beside) -> SetLine:
    """Return what heads the laps."""
    head = "" if beside == "nothing" else told.wording.say("laps", unit=told.leader.unit)
    return set_line(head, scale.medium, scale.small)


def _last_width(told: Told, scale: Scale, beside: Beside) -> float:
    widths = [junction.width for junction in _junctions(told, scale, beside)]
    return max(_last_head(told, scale, beside).width, *widths)


def _junction(of: _Junction, x: float, end: float, y: float) -> tuple[Item, ...]:
    """Set a knot's name at x and its lap at the end, and a rule that leads to it between rows."""
    size, baseline = of.knot.size, y + CAP_HEIGHT * of.knot.size / 2
    rule = Path(segment(0, y, x - 0.35 * size, y), _RULE, _RULE_GREY)
    return (rule, *of.knot.at(x, baseline), *of.lap.at(end, baseline, "right"))
