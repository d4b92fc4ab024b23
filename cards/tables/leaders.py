"""A sheet that is understood in; its leaders, what is said of each cell by cell, out."""

from collections.abc import Iterable
from typing import NamedTuple

from tagend.cards.tables.lexicon import is_empty
from tagend.cards.tables.row_a_leader import leaders_by_row
from tagend.cards.tables.row_a_section import leaders_by_section
from tagend.cards.tables.sheet import Understood
from tagend.cards.tables.understanding import check_needs
from tagend.cards.tables.written import SheetRow, Spot, Written
from tagend.layouts.base.faults import Fault, noting, refuse_any


class LeadersRead(NamedTuple):
    """All leaders of a sheet, and what of it is none."""

    leaders: tuple[Written, ...]
    left_out: tuple[str, ...] = ()  # rows, as they are told


def all_leaders(sheets: Iterable[Understood]) -> LeadersRead:
    """Return the leaders of all sheets that hold some; raises `Refused` where none does."""
    leaders: list[Written] = []
    left_out: list[str] = []
    faults: list[Fault] = []
    for sheet in sheets:
        with noting(faults):
            check_needs(sheet)
            found = leaders_of(sheet)
            leaders += found.leaders
            left_out += found.left_out
    if not leaders:
        refuse_any(faults or [Fault("", "no leader stands below the headings", "write one a row")])
    return LeadersRead(tuple(leaders), (*left_out, *map(str, faults)))


def leaders_of(sheet: Understood) -> LeadersRead:
    """Return the leaders below the headings: each row one, or each row a section of one."""
    lines: list[SheetRow] = []
    left_out: list[str] = []
    for row in sheet.rows:
        line = _line(sheet, row)
        if (why := _no_leader(sheet, row, line)) is None:
            lines.append(line)
        elif why:
            left_out.append(f"{sheet.grid.address(row, 0)}: {why}")
    of_lines = leaders_by_row if sheet.wide else leaders_by_section
    return LeadersRead(tuple(of_lines(sheet, lines)), tuple(left_out))


def _line(sheet: Understood, row: int) -> SheetRow:
    own, grid = sheet.headings.own, sheet.grid
    spots, empty = [], []
    for column in sheet.taken:
        assert column.meaning is not None
        text, where = grid.cell(row, column.place), grid.address(row, column.place)
        if text and (own or not is_empty(text)):
            spots.append((column, Spot(text, where, column.meaning, grid.comma)))
        else:
            empty.append((column.meaning, where))
    return SheetRow(row, tuple(spots), tuple(empty))


def _no_leader(sheet: Understood, row: int, line: SheetRow) -> str | None:
    """Return why a row is left out, nothing where it is empty, and None where it is none of it."""
    cells = [cell for cell in sheet.grid.rows[row] if cell]
    if not cells:
        return ""
    if sheet.headings.own:
        return None
    if why := sheet.passed_over(row):
        return why
    said = {spot.meaning.field for _, spot in line.spots if spot.meaning.of_section}
    if not said and ((len(cells) == 1 and (sheet.wide or not line.name)) or not line.spots):
        return f"{cells[0][:40]!r} stands alone"
    return None
