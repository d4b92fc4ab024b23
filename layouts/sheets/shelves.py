"""Cutouts at places: the ways to cut cards out and the printable room in, sheets of slots out.

Every sheet can be cut apart by cuts that run from edge to edge: cutouts stand in rows, and all
of a row have one height.
"""

from collections.abc import Sequence
from itertools import pairwise
from typing import Literal

from msgspec import Struct

from tagend.layouts.paper.face import MM
from tagend.layouts.paper.lengths import SLACK, fits
from tagend.layouts.sheets.cutouts import Cutout

RunOrder = Literal["sheet", "stack"]
Options = tuple[Cutout, ...]  # the ways to cut one card out

# Holds the marks of the row above and of the row below, where the two are cut differently.
ROW_GAP = 6 * MM


class Room(Struct, frozen=True):
    """What a sheet offers, and the distance between two cutouts on it; all in points."""

    width: float
    height: float
    gutter: float = 0.0

    def grid(self, cutout: Cutout) -> tuple[int, int]:
        """Return how many columns and rows of a cutout find place."""
        return (
            _count(cutout.width, self.width, self.gutter),
            _count(cutout.height, self.height, self.gutter),
        )

    def holds(self, cutout: Cutout) -> bool:
        return min(self.grid(cutout)) > 0


class Slot(Struct, frozen=True):
    """A cutout and its top left corner, measured from the corner of the room or of the sheet."""

    cutout: Cutout
    x: float
    y: float

    @property
    def right(self) -> float:
        return self.x + self.cutout.width

    @property
    def bottom(self) -> float:
        return self.y + self.cutout.height


def grid_sheets(
    cards: Sequence[Options], room: Room, order: RunOrder
) -> tuple[tuple[Slot, ...], ...]:
    """Return sheets of one centred grid, for cards of one size of which the room holds some.

    In order "sheet" one row is read after the other. In order "stack" the cards of one cell
    follow each other from sheet to sheet, so that the stacks cut from the cells, laid on top of
    each other, are in order.
    """
    ways = [k for k, cutout in enumerate(cards[0]) if room.holds(cutout)]
    best = min(ways, key=lambda k: _sheets_needed(len(cards), cards[0][k], room))
    places = _grid_places(cards[0][best], room)
    sheets = _sheets_needed(len(cards), cards[0][best], room)
    by_sheet: list[list[Slot]] = [[] for _ in range(sheets)]
    for k, options in enumerate(cards):
        cell, sheet = divmod(k, sheets) if order == "stack" else (k % len(places), k // len(places))
        by_sheet[sheet].append(Slot(options[best], *places[cell]))
    return tuple(map(tuple, by_sheet))


def row_sheets(cards: Sequence[Options], room: Room) -> tuple[tuple[Slot, ...], ...]:
    """Return sheets of rows, the highest first, for cards of any size that the room holds."""
    fitting = [[cutout for cutout in options if room.holds(cutout)] for options in cards]
    plain = _packed([ways[0] for ways in fitting], room)
    # A full row then takes least of the sheet's height for each.
    thrifty = _packed(
        [min(ways, key=lambda way: way.height / room.grid(way)[0]) for ways in fitting], room
    )
    return min(plain, thrifty, key=len)


def _packed(cutouts: list[Cutout], room: Room) -> tuple[tuple[Slot, ...], ...]:
    """Return sheets of rows, each row on the first sheet that has place for it."""
    highest_first = sorted(cutouts, key=lambda cutout: (-cutout.height, -cutout.width))
    sheets: list[list[list[Cutout]]] = []
    for row in _rows(highest_first, room):
        for sheet in sheets:
            if fits(_tops([*sheet, row], room.gutter)[-1], room.height):
                sheet.append(row)
                break
        else:
            sheets.append([row])
    return tuple(_row_slots(sheet, room) for sheet in sheets)


def _count(size: float, room: float, gutter: float) -> int:
    return max(0, int((room + gutter + SLACK) // (size + gutter)))


def _sheets_needed(cards: int, cutout: Cutout, room: Room) -> int:
    columns, rows = room.grid(cutout)
    return -(-cards // (columns * rows))


def _grid_places(cutout: Cutout, room: Room) -> list[tuple[float, float]]:
    columns, rows = room.grid(cutout)
    pitch_x, pitch_y = cutout.width + room.gutter, cutout.height + room.gutter
    left = (room.width - columns * pitch_x + room.gutter) / 2
    top = (room.height - rows * pitch_y + room.gutter) / 2
    return [
        (left + column * pitch_x, top + row * pitch_y)
        for row in range(rows)
        for column in range(columns)
    ]


def _rows(cutouts: list[Cutout], room: Room) -> list[list[Cutout]]:
    rows: list[list[Cutout]] = []
    for cutout in cutouts:
        for row in rows:
            width = _width([*row, cutout], room.gutter)
            if row[0].height == cutout.height and fits(width, room.width):
                row.append(cutout)
                break
        else:
            rows.append([cutout])
    return rows


def _width(row: list[Cutout], gutter: float) -> float:
    return sum(cutout.width for cutout in row) + (len(row) - 1) * gutter


def _tops(rows: list[list[Cutout]], gutter: float) -> list[float]:
    """Return where each row begins, and last where the last one ends."""
    tops = [0.0]
    for row, below in pairwise(rows):
        tops.append(tops[-1] + row[0].height + _gap(row, below, gutter))
    return [*tops, tops[-1] + rows[-1][0].height]


def _gap(row: list[Cutout], below: list[Cutout], gutter: float) -> float:
    alike = all(
        (cutout.width, cutout.fold) == (under.width, under.fold)
        for cutout, under in zip(row, below, strict=False)
    )
    return gutter if alike else max(gutter, ROW_GAP)


def _row_slots(rows: list[list[Cutout]], room: Room) -> tuple[Slot, ...]:
    # All rows begin at one left edge, so that one cut squares the whole sheet.
    left = (room.width - max(_width(row, room.gutter) for row in rows)) / 2
    tops = _tops(rows, room.gutter)
    top = (room.height - tops[-1]) / 2
    return tuple(
        Slot(cutout, left + _width([*row[:k], cutout], room.gutter) - cutout.width, top + tops[j])
        for j, row in enumerate(rows)
        for k, cutout in enumerate(row)
    )
