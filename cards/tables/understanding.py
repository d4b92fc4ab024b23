"""A sheet in; where its headings stand and what each of its columns means, with doubts, out."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, replace

from tagend.cards.tables.columns import NUMBER
from tagend.cards.tables.grid import Grid, column_letters
from tagend.cards.tables.heading_rows import Headings, find_headings
from tagend.cards.tables.lexicon import is_empty
from tagend.cards.tables.meaning import STRAND, UNIT_KIND, Doubt, Meaning, read_heading
from tagend.cards.tables.quantity_cells import KIND, is_bare, quantity, reads, unit_by_size
from tagend.cards.tables.strand_cells import float_of, section_said
from tagend.layouts.base.faults import Refused, refused

_HALF = 0.5  # of a column's cells must read as what its heading says
_SHOWN = 3  # cells


@dataclass(frozen=True, slots=True)
class Column:
    """One column of a sheet, as it was understood."""

    place: int  # counted from 0
    heading: str
    meaning: Meaning | None  # None: left out; where it is in doubt, the best guess
    doubt: Doubt = ""
    why: str = ""  # it is left out or in doubt, to a person

    @property
    def letters(self) -> str:
        return column_letters(self.place)


@dataclass(frozen=True, slots=True)
class Understood:
    """A sheet whose headings were found."""

    grid: Grid
    headings: Headings
    columns: tuple[Column, ...]

    @property
    def wide(self) -> bool:
        """Whether a row is a leader: columns speak of sections by their number or part."""
        return is_wide(self.columns)

    @property
    def taken(self) -> tuple[Column, ...]:
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
        rows = range(self.headings.data, len(self.grid.rows))
        cells = (self.grid.cell(row, place) for row in rows)
        return [cell for cell in cells if not is_empty(cell)]

    def shown(self, place: int) -> str:
        """Return the first cells below a heading, to recognise it by."""
        return ", ".join(self.cells(place)[:_SHOWN])


def understand(grid: Grid, known: Mapping[str, str], units: Mapping[str, str]) -> Understood | None:
    """Return what a sheet's columns mean, or None where nothing in it is a heading.

    `known` are headings that a person has explained, `units` those of bare numbers by kind.
    """
    headings = find_headings(grid, known)
    if headings is None:
        return None
    bare = Understood(grid, headings, ())
    columns = [_column(bare, place, text, known) for place, text in enumerate(headings.texts)]
    of_whole = _of_whole(list(_once(columns)))
    return replace(bare, columns=tuple(_with_units(bare, list(of_whole), units)))


def check_needs(sheet: Understood) -> None:
    """Raise `Refused` where the columns that are beyond doubt make no leader."""
    where = sheet.grid.sheet
    lost = [column for column in sheet.columns if column.doubt == "unit" and column.meaning]
    kinds = {KIND.get(column.meaning.field, "length") for column in lost if column.meaning}
    if needed := [kind for kind in ("length", "diameter") if kind in kinds]:
        letters = ", ".join(
            c.letters for c in lost if c.meaning and KIND.get(c.meaning.field, "length") in needed
        )
        instead = 'say --units, such as "in, in, lb" for lengths, diameters, strengths'
        raise refused(f"no unit is given in column {letters}", instead, where)
    if not sheet.fields & {"length", STRAND}:
        instead = "call them length, or butt length, length 1, …; `tagend table --columns` has all"
        raise refused("no column is taken as the lengths of sections", instead, where)
    if "name" not in sheet.fields and (sheet.wide or not (sheet.title or where)):
        raise refused("no column is taken as the leaders' names", 'call one "name"', where)


def is_wide(columns: Sequence[Column]) -> bool:
    """Whether columns speak of sections by their number or part, so that a row is a leader."""
    meanings = [column.meaning for column in columns if column.meaning and not column.doubt]
    labels = {m.label for m in meanings if m.of_section} - {("", 0)}
    has_length = any(m.field == "length" and m.label == ("", 0) for m in meanings)
    return len(labels) > 1 or (len(labels) == 1 and not has_length)


def _of_whole(columns: Sequence[Column]) -> Iterator[Column]:
    """Yield the columns; where a row is a leader, what is said of no section is said of all.

    That is a material, and a length, which is the total.
    """
    wide = is_wide(columns)
    total = any(column.meaning and column.meaning.field == "total" for column in columns)
    for column in columns:
        meaning = column.meaning
        if (
            wide
            and meaning
            and meaning.field == "length"
            and meaning.label == ("", 0)
            and not total
        ):
            column = replace(column, meaning=replace(meaning, field="total"))
        elif wide and meaning and _of_no_section(meaning):
            column = replace(column, doubt="meaning", why="it does not say of which section")
        elif not wide and meaning and meaning.of_section and meaning.label != ("", 0):
            column = replace(column, doubt="meaning", why="a row is a section here")
        yield column


def _of_no_section(meaning: Meaning) -> bool:
    apart = meaning.of_section or meaning.field == NUMBER
    return apart and meaning.label == ("", 0) and meaning.field != "material"


def _column(sheet: Understood, place: int, heading: str, known: Mapping[str, str]) -> Column:
    cells = sheet.cells(place)
    if not heading:
        return Column(place, heading, None, why="it has no heading" if cells else "")
    if heading in known:
        return Column(place, heading, read_heading(known[heading]).meaning)
    read = read_heading(heading)
    meaning = read.meaning and _of_unit(read.meaning, cells, comma=sheet.grid.comma)
    if meaning is None:
        return Column(place, heading, None, why="nothing of a leader")
    if not read.sure:
        return Column(place, heading, meaning, "meaning", "its heading says more")
    if cells and not sheet.headings.own and _share(meaning, cells, sheet.grid.comma) < _HALF:
        return Column(place, heading, meaning, "meaning", "its cells look otherwise")
    return Column(place, heading, meaning)


def _of_unit(meaning: Meaning, cells: Sequence[str], *, comma: bool) -> Meaning:
    """Return the meaning of a heading that says a unit and no field: the field that is measured."""
    if meaning.field != STRAND or not meaning.unit:
        return meaning
    kind = UNIT_KIND[meaning.unit]
    thin = all(not is_bare(cell, comma) or float_of(cell.split()[0]) < 3 for cell in cells)
    if meaning.unit == "mm" and not thin:
        kind = "length"
    if meaning.unit == "in" and cells and all(unit_by_size(cell, comma) == "in" for cell in cells):
        kind = "diameter"
    return replace(meaning, field=kind)


def _share(meaning: Meaning, cells: Sequence[str], comma: bool) -> float:
    """Return how many of the cells can be what their heading says."""
    kind = KIND.get(meaning.field)
    if kind is not None:
        fit = [
            is_bare(cell, comma) or reads(quantity(cell, kind, "", comma), kind) for cell in cells
        ]
    elif meaning.field == "line_weight":
        fit = [line_weight(cell).isdecimal() for cell in cells]
    elif meaning.field == STRAND:
        fit = [any(map(str.isdigit, cell)) for cell in cells]
    else:
        return 1
    return sum(fit) / len(fit)


def line_weight(cell: str) -> str:
    """Return the number of a fly line: 8 for `8 wt`, `#8` and `8wt`."""
    return cell.lower().strip(" #").removesuffix("t").removesuffix("w").removesuffix("-").strip()


def _once(columns: Sequence[Column]) -> Iterator[Column]:
    """Yield the columns; of two that say the same of the same section the first is taken."""
    taken: dict[tuple[str, str, int], Column] = {}
    for column in columns:
        meaning = column.meaning
        key = meaning and (meaning.field, *meaning.label)
        if key and not column.doubt and (first := taken.setdefault(key, column)) is not column:
            column = replace(column, meaning=None, why=f"column {first.letters} says it")
        yield column


def _with_units(
    sheet: Understood, columns: Sequence[Column], given: Mapping[str, str]
) -> Iterator[Column]:
    """Yield the columns, bare numbers with the unit that another heading or a person gives them.

    Where neither does, a diameter shows its unit by its size; another is in doubt.
    """
    said: dict[str, set[str]] = {}
    for column in columns:
        if (meaning := column.meaning) and meaning.unit and meaning.of_section:
            said.setdefault(KIND.get(meaning.field, "length"), set()).add(meaning.unit)
    every = {kind: next(iter(units)) for kind, units in said.items() if len(units) == 1}
    for column in columns:
        yield _with_unit(sheet, column, {**every, **given})


def _with_unit(sheet: Understood, column: Column, every: Mapping[str, str]) -> Column:
    meaning = column.meaning
    if meaning is None or meaning.unit:
        return column
    comma = sheet.grid.comma
    bare = [cell for cell in sheet.cells(column.place) if is_bare(cell, comma)]
    if meaning.field == STRAND:
        bare = list(_bare_lengths(sheet.cells(column.place), comma))
    kind = KIND.get(meaning.field, "length" if meaning.field == STRAND else "")
    if not kind or not bare:
        return column
    if kind in every and meaning.of_section:
        return replace(column, meaning=replace(meaning, unit=every[kind]))
    if kind == "diameter" and all(unit_by_size(cell, comma) for cell in bare):
        return column
    if column.doubt:
        return column
    guess = replace(meaning, unit=_guess(kind, bare, every, meaning))
    return replace(column, meaning=guess, doubt="unit", why="no unit is given")


def _bare_lengths(cells: Iterable[str], comma: bool) -> Iterator[str]:
    """Yield the lengths without a unit in cells that say all of a section."""
    for cell in cells:
        with suppress(Refused):
            length = section_said(cell, {}, comma).get("length", "")
            if is_bare(length, comma):
                yield length


def _guess(kind: str, bare: Sequence[str], every: Mapping[str, str], meaning: Meaning) -> str:
    if kind == "length" and not meaning.of_section:
        short = all(float_of(cell) <= 20 for cell in bare)
        metric = every.get("length", "in") not in ("in", "ft")
        return ("m" if metric else "ft") if short else every.get("length", "in")
    return {"length": "in", "diameter": "thou", "strength": "lb"}[kind]
