"""Rows that are a section each in; the leaders that they make, and what is wrong with them, out."""

from collections.abc import Iterator, Mapping, Sequence

from tagend.cards.tables.columns import NUMBER
from tagend.cards.tables.meaning import Meaning
from tagend.cards.tables.sheet import Understood
from tagend.cards.tables.written import MAKES, SheetRow, Spot, Written
from tagend.layouts.base.faults import Fault


def leaders_by_section(sheet: Understood, lines: Sequence[SheetRow]) -> Iterator[Written]:
    """Yield the leaders: a row without a name belongs to the one above."""
    last: dict[str, int] = {}  # the row that each name ended in
    for group in _groups(lines):
        first = group[0]
        name = first.name or ""
        faults = [*_torn(sheet, first, last), *_row_faults(sheet, group)]
        whole = first.whole if first.name or "name" in sheet.fields else _titled(sheet, first)
        own = sheet.headings.own
        sections = [line for line in group if own or line.section.keys() & MAKES]
        yield Written(
            row=sheet.grid.address(first.row, 0),
            whole=whole,
            sections=tuple(line.section for line in sections),
            empty=tuple(line.without(("", 0)) for line in sections),
            faults=tuple(faults),
            own=own,
        )
        last[name] = group[-1].row


def _titled(sheet: Understood, first: SheetRow) -> dict[str, Spot]:
    """Return what is said of the one leader of a sheet, which its title names."""
    title = sheet.title or sheet.grid.sheet
    where = sheet.grid.address(first.row, 0)
    return {**first.whole, **({"name": Spot(title, where, Meaning("name"))} if title else {})}


def _groups(lines: Sequence[SheetRow]) -> Iterator[list[SheetRow]]:
    """Yield the rows of each leader: until another name, or the number 1, begins the next."""
    group: list[SheetRow] = []
    for line in lines:
        begins = _number(line) == "1" or (line.name and (not group or line.name != group[0].name))
        if group and begins and (group[0].section or len(group) > 1 or line.name):
            yield group
            group = []
        group.append(line)
    if group:
        yield group


def _number(line: SheetRow) -> str | None:
    said = next((s for _, s in line.spots if s.meaning.field == NUMBER), None)
    return None if said is None else said.text


def _torn(sheet: Understood, first: SheetRow, last: Mapping[str, int]) -> Iterator[Fault]:
    """Find a leader whose rows were torn apart; one that is numbered from 1 is another."""
    name = first.name or ""
    if name in last and _number(first) != "1":
        yield Fault(
            f"{first.whole['name'].where if name else sheet.grid.address(first.row, 0)}, name",
            f"{name!r} ended in row {last[name] + 1}",
            "put the rows of a leader together, or number the sections of each from 1",
        )


def _row_faults(sheet: Understood, group: Sequence[SheetRow]) -> Iterator[Fault]:
    first = group[0].whole
    own = sheet.headings.own
    counted = [line for line in group if own or line.section]
    for place, line in enumerate(counted, start=1):
        if beyond := _beyond(sheet, line.row):
            yield beyond
        if (number := _number(line)) is not None and number != str(place):
            where = next(s.where for _, s in line.spots if s.meaning.field == NUMBER)
            found = f"{number[:40]!r} stands where section {place} comes"
            yield Fault(f"{where}, {NUMBER}", found, "number from the butt, or leave it empty")
        for field, spot in line.whole.items():
            other = first.get(field)
            if (other is None or spot.text != other.text) and (own or field != "note"):
                found = f"{spot.text[:40]!r} differs from row {group[0].row + 1}"
                yield Fault(
                    f"{spot.where}, {field}", found, "write it in the leader's first row only"
                )


def _beyond(sheet: Understood, row: int) -> Fault | None:
    """Find what stands beyond the last heading, as a comma without quotes leaves it there."""
    width = len(sheet.headings.texts)
    beyond = " ".join(filter(None, sheet.grid.rows[row][width:])) if sheet.grid.ragged else ""
    if not beyond:
        return None
    found = f"{beyond[:40]!r} is beyond the last column"
    return Fault(sheet.grid.address(row, width), found, "put a cell that holds commas in quotes")
