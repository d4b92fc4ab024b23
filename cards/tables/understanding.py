"""A sheet in; where its headings stand and what each of its columns means, with doubts, out."""

from collections.abc import Iterator, Mapping, Sequence

from msgspec.structs import replace

from tagend.cards.tables.bare_units import with_units
from tagend.cards.tables.columns import NUMBER
from tagend.cards.tables.columns_file import Answers
from tagend.cards.tables.grid import SheetCells
from tagend.cards.tables.heading_rows import find_headings
from tagend.cards.tables.lexicon import part_named
from tagend.cards.tables.meaning import STRAND, UNIT_KIND, Meaning, read_heading
from tagend.cards.tables.quantity_cells import KIND, UNITS, is_bare, quantity, reads, unit_by_size
from tagend.cards.tables.sheet import SheetColumn, Understood, is_wide
from tagend.cards.tables.strand_cells import float_of, section_said
from tagend.layouts.base.faults import Refused, refused

NAME = Meaning("name")
ASK_UNITS = 'say --units, such as "in, in, lb" for lengths, diameters, strengths'
ASK_LENGTHS = "call them length, or butt length, length 1, …; `tagend table --columns` has all"
ASK_NAMES = 'call one "name"'
_HALF = 0.5  # of a column's cells must read as what its heading says


def understand(grid: SheetCells, answers: Answers) -> Understood | None:
    """Return what a sheet's columns mean, or None where nothing in it is a heading."""
    known = answers.columns
    headings = find_headings(grid, known)
    if headings is None:
        return None
    bare = Understood(grid, headings, ())
    columns = [_column(bare, place, text, known) for place, text in enumerate(headings.texts)]
    if not headings.own and not any(column.meaning == NAME for column in columns):
        columns = list(_with_name(bare, columns))
    of_whole = _of_whole(list(_once(columns)))
    return replace(bare, columns=tuple(with_units(bare, list(of_whole), answers.units)))


def check_needs(sheet: Understood) -> None:
    """Raise `Refused` where the columns that are beyond doubt make no leader."""
    where = sheet.grid.sheet
    if lost := ", ".join(column.letters for column in sheet.columns if _is_lost(column)):
        raise refused(f"no unit is given in column {lost}", ASK_UNITS, where)
    if not sheet.fields & {"length", STRAND}:
        raise refused("no column is taken as the lengths of sections", ASK_LENGTHS, where)
    if "name" not in sheet.fields and (sheet.wide or not (sheet.title or where)):
        raise refused("no column is taken as the leaders' names", ASK_NAMES, where)


def _is_lost(column: SheetColumn) -> bool:
    """Whether a column that a leader cannot be without is in doubt for its unit alone."""
    needed = column.meaning is not None and column.meaning.field in ("length", "diameter", STRAND)
    return needed and column.doubt == "unit"


def _of_whole(columns: Sequence[SheetColumn]) -> Iterator[SheetColumn]:
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


def _column(sheet: Understood, place: int, heading: str, known: Mapping[str, str]) -> SheetColumn:
    cells = sheet.cells(place)
    if not heading:
        return SheetColumn(place, heading, None, why="it has no heading" if cells else "")
    if heading in known:
        return SheetColumn(place, heading, read_heading(known[heading]).meaning)
    read = read_heading(heading)
    meaning = read.meaning and _of_unit(read.meaning, cells, comma=sheet.grid.comma)
    if meaning is None and read.doubt and (guess := _by_cells(cells, sheet.grid.comma)):
        return SheetColumn(place, heading, guess, "meaning", "by its cells")
    if meaning is None:
        return SheetColumn(place, heading, None, why="nothing of a leader")
    if meaning.field == NUMBER and cells and all(map(part_named, cells)):
        meaning = Meaning("part")
    if read.doubt:
        return SheetColumn(place, heading, meaning, "meaning", read.doubt)
    if cells and not sheet.headings.own and _share(meaning, cells, sheet.grid.comma) < _HALF:
        return SheetColumn(place, heading, meaning, "meaning", "its cells look otherwise")
    return SheetColumn(place, heading, meaning)


def _by_cells(cells: Sequence[str], comma: bool) -> Meaning | None:
    """Return what most cells below a strange heading look like, or None."""
    for kind in ("diameter", "strength", "length"):
        read = [reads(quantity(cell, kind, "", comma), kind) for cell in cells]
        if cells and sum(read) / len(cells) > _HALF:
            return Meaning(kind)
    said = [_strand(cell, comma) for cell in cells]
    several = sum(len(keys.keys() & UNITS.keys()) > 1 for keys in said)
    return Meaning(STRAND) if cells and several / len(cells) > _HALF else None


def _strand(cell: str, comma: bool) -> Mapping[str, str]:
    try:
        return section_said(cell, {}, comma)
    except Refused:
        return {}


def _with_name(sheet: Understood, columns: Sequence[SheetColumn]) -> Iterator[SheetColumn]:
    """Yield the columns, of which the first strange one with words may hold the names."""
    found = False
    for column in columns:
        cells = sheet.cells(column.place)
        words = cells and all(any(map(str.isalpha, cell)) for cell in cells)
        if not found and words and column.meaning is None and column.heading:
            found = True
            column = replace(column, meaning=NAME, doubt="meaning", why="perhaps the name")
        yield column


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
    """Return the number of a fly line: 8 for `8 wt`, `#8`, `8wt` and `8-weight`."""
    plain = cell.lower().strip(" #").removesuffix("eight").removesuffix("t")
    return plain.removesuffix("w").removesuffix("-").strip()


def _once(columns: Sequence[SheetColumn]) -> Iterator[SheetColumn]:
    """Yield the columns; of two that say the same of the same section the first is taken."""
    taken: dict[tuple[str, str, int], SheetColumn] = {}
    for column in columns:
        meaning = column.meaning
        key = meaning and (meaning.field, *meaning.label)
        if key and not column.doubt and (first := taken.setdefault(key, column)) is not column:
            column = replace(column, meaning=None, why=f"column {first.letters} says it")
        yield column
