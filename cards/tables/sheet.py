"""A sheet of a table, with what each of its columns was taken as."""

from collections.abc import Sequence

from msgspec import Struct

from tagend.cards.tables.grid import SheetCells, column_letters
from tagend.cards.tables.heading_rows import Headings
from tagend.cards.tables.lexicon import is_empty, is_total
from tagend.cards.tables.meaning import Doubt, Meaning

_SHOWN = 3  # cells


class SheetColumn(Struct, frozen=True):
    """One column of a sheet, as it was understood."""

    place: int  # counted from 0
    heading: str
    meaning: Meaning | None  # None: left out; where it is in doubt, the best guess
    doubt: Doubt = ""
    why: str = ""  # it is left out or in doubt, to a person

    @property
    def letters(self) -> str:
        return column_letters(self.place)


class Understood(Struct, frozen=True):
    """A sheet whose headings were found."""

    grid: SheetCells
    headings: Headings
    columns: tuple[SheetColumn, ...]

    @property
    def wide(self) -> bool:
        """Whether a row is a leader: columns speak of sections by their number or part."""
        return is_wide(self.columns)

    @property
    def taken(self) -> tuple[SheetColumn, ...]:
        """The columns that are understood beyond doubt."""
        return tuple(column for column in self.columns if column.meaning and not column.doubt)

    @property
    def fields(self) -> frozenset[str]:
        return frozenset(column.meaning.field for column in self.taken if column.meaning)

    @property
    def title(self) -> str:
        """What stands above the headings."""
        above = (cell for row in self.grid.rows[: self.headings.row] for cell in row if cell)
        return next(above, "")

    def cells(self, place: int) -> list[str]:
        """Return what stands below a heading."""
        cells = (self.grid.cell(row, place) for row in self.rows if not self.passed_over(row))
        return [cell for cell in cells if not is_empty(cell)]

    @property
    def rows(self) -> range:
        """The rows below the headings."""
        return range(self.headings.data, len(self.grid.rows))

    def passed_over(self, row: int) -> str:
        """Return why a row is none of a leader, whatever its columns mean; else nothing."""
        cells = self.grid.rows[row]
        if self.headings.own or not any(cells):
            return ""
        if is_total(next(filter(None, cells))):
            return "it sums up"
        return "it repeats the headings" if cells == self.grid.rows[self.headings.row] else ""

    def shown(self, place: int) -> str:
        """Return the first cells below a heading, to recognise it by."""
        return ", ".join(self.cells(place)[:_SHOWN])


def is_wide(columns: Sequence[SheetColumn]) -> bool:
    """Whether columns speak of sections by their number or part, so that a row is a leader."""
    sure = (column for column in columns if column.doubt != "meaning")
    meanings = [column.meaning for column in sure if column.meaning]
    labels = {m.label for m in meanings if m.of_section} - {("", 0)}
    has_length = any(m.field == "length" and m.label == ("", 0) for m in meanings)
    return len(labels) > 1 or (len(labels) == 1 and not has_length)
