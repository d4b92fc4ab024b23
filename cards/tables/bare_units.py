"""The columns of a sheet in; the same, with the unit that their bare numbers are in, out."""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import suppress

from msgspec.structs import replace

from tagend.cards.tables.meaning import STRAND, Meaning
from tagend.cards.tables.quantity_cells import KIND, is_bare, unit_by_size
from tagend.cards.tables.sheet import SheetColumn, Understood
from tagend.cards.tables.strand_cells import float_of, section_said
from tagend.layouts.base.faults import Refused


def with_units(
    sheet: Understood, columns: Sequence[SheetColumn], given: Mapping[str, str]
) -> Iterator[SheetColumn]:
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


def _with_unit(sheet: Understood, column: SheetColumn, every: Mapping[str, str]) -> SheetColumn:
    meaning = column.meaning
    if meaning is None or meaning.unit:
        return column
    comma, bare = sheet.grid.comma, bare_cells(sheet, column)
    kind = KIND.get(meaning.field, "length" if meaning.field == STRAND else "")
    if not kind or not bare:
        return column
    if kind in every and meaning.of_section:
        return replace(column, meaning=replace(meaning, unit=every[kind]))
    if kind == "diameter" and (by_size := [unit_by_size(cell, comma) for cell in bare]):
        if all(by_size):
            return column
        unit, times = Counter(by_size).most_common(1)[0]
        if unit and times > len(bare) / 2:
            return replace(column, meaning=replace(meaning, unit=unit))
    if column.doubt or (sheet.headings.own and len(bare) < len(sheet.cells(column.place))):
        return column
    guess = replace(meaning, unit=_guess(kind, bare, every, meaning))
    return replace(column, meaning=guess, doubt="unit", why="no unit is given")


def bare_kinds(sheet: Understood, column: SheetColumn) -> Iterator[str]:
    """Yield the kinds of quantities that stand in a column without a unit."""
    field = column.meaning.field if column.meaning else ""
    kinds = ("length", "strength") if field == STRAND else filter(None, [KIND.get(field)])
    yield from (kind for kind in kinds if bare_cells(sheet, column, kind))


def bare_cells(sheet: Understood, column: SheetColumn, kind: str = "length") -> list[str]:
    """Return a column's numbers without a unit; those of a kind where a cell says more of them."""
    cells, comma = sheet.cells(column.place), sheet.grid.comma
    if column.meaning and column.meaning.field == STRAND:
        cells = list(_of_kind(cells, kind, comma))
    return [cell for cell in cells if is_bare(cell, comma)]


def _of_kind(cells: Iterable[str], kind: str, comma: bool) -> Iterator[str]:
    """Yield what cells that say all of a section say of one kind."""
    for cell in cells:
        with suppress(Refused):
            yield section_said(cell, {}, comma).get(kind, "")


def _guess(kind: str, bare: Sequence[str], every: Mapping[str, str], meaning: Meaning) -> str:
    if kind == "length" and not meaning.of_section:
        short = all(float_of(cell) <= 20 for cell in bare)
        metric = every.get("length", "in") not in ("in", "ft")
        return ("m" if metric else "ft") if short else every.get("length", "in")
    return {"length": "in", "diameter": "thou", "strength": "lb"}[kind]
