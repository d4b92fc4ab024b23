"""A sheet that is understood in; its leaders, what is said of each cell by cell, out."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from tagend.cards.recipe.fields import OF_RECIPE
from tagend.cards.tables.columns import NUMBER
from tagend.cards.tables.lexicon import is_empty, is_total
from tagend.cards.tables.meaning import STRAND, Meaning
from tagend.cards.tables.sheet import Column, Understood
from tagend.layouts.base.faults import Fault

_RANK: Mapping[str, int] = {
    "": 1,
    "butt": 0,
    "taper": 1,
    "sighter": 1,
    "tippet": 2,
    "bite guard": 3,
}


@dataclass(frozen=True, slots=True)
class Spot:
    """What one cell says, and where it stands."""

    text: str
    where: str  # B7
    meaning: Meaning
    comma: bool = False


Said = Mapping[str, Spot]  # by column of our own tables


@dataclass(frozen=True, slots=True)
class Written:
    """One leader as a table has it."""

    row: str  # where it begins: A7
    whole: Said
    sections: tuple[Said, ...]
    empty: tuple[Mapping[str, str], ...] = ()  # where the cells stand that a section lacks
    faults: tuple[Fault, ...] = ()
    own: bool = False  # in a table of our own, which is read to the letter


@dataclass(frozen=True, slots=True)
class LeadersRead:
    """All leaders of a sheet, and what of it is none."""

    leaders: tuple[Written, ...]
    left_out: tuple[str, ...] = ()  # rows, as they are told


def leaders_of(sheet: Understood) -> LeadersRead:
    """Return the leaders below the headings: each row one, or each row a section of one."""
    lines: list[Line] = []
    left_out: list[str] = []
    for row in range(sheet.headings.data, len(sheet.grid.rows)):
        line = _line(sheet, row)
        if (why := _no_leader(sheet, row, line)) is None:
            lines.append(line)
        elif why:
            left_out.append(f"{sheet.grid.address(row, 0)}: {why}")
    of_lines = _wide if sheet.wide else _long
    return LeadersRead(tuple(of_lines(sheet, lines)), tuple(left_out))


@dataclass(frozen=True, slots=True)
class Line:
    """One row with what its cells say, by their columns."""

    row: int
    spots: tuple[tuple[Column, Spot], ...]
    empty: tuple[tuple[Meaning, str], ...]  # what has an empty cell, and where

    def without(self, label: tuple[str, int]) -> dict[str, str]:
        """Return where the empty cells of a section stand, by their columns."""
        return {meaning.field: where for meaning, where in self.empty if meaning.label == label}

    @property
    def whole(self) -> dict[str, Spot]:
        return {s.meaning.field: s for _, s in self.spots if s.meaning.field in OF_RECIPE}

    @property
    def section(self) -> dict[str, Spot]:
        return {s.meaning.field: s for _, s in self.spots if s.meaning.of_section}

    @property
    def name(self) -> str | None:
        said = self.whole.get("name")
        return None if said is None else said.text


def _line(sheet: Understood, row: int) -> Line:
    own, grid = sheet.headings.own, sheet.grid
    spots, empty = [], []
    for column in sheet.taken:
        assert column.meaning is not None
        text, where = grid.cell(row, column.place), grid.address(row, column.place)
        if text and (own or not is_empty(text)):
            spots.append((column, Spot(text, where, column.meaning, grid.comma)))
        else:
            empty.append((column.meaning, where))
    return Line(row, tuple(spots), tuple(empty))


def _no_leader(sheet: Understood, row: int, line: Line) -> str | None:
    """Return why a row is left out, nothing where it is empty, and None where it is none of it."""
    cells = [cell for cell in sheet.grid.rows[row] if cell]
    if not cells:
        return ""
    if sheet.headings.own:
        return None
    if is_total(cells[0]):
        return "it sums up"
    if list(sheet.grid.rows[row]) == list(sheet.grid.rows[sheet.headings.row]):
        return "it repeats the headings"
    said = {spot.meaning.field for _, spot in line.spots if spot.meaning.of_section}
    if not said and ((len(cells) == 1 and (sheet.wide or not line.name)) or not line.spots):
        return f"{cells[0][:40]!r} stands alone"
    return None


# ---- a row a leader ---------------------------------------------------------------------------


def _wide(sheet: Understood, lines: Sequence[Line]) -> Iterator[Written]:
    labels = _in_order(sheet)
    for line in lines:
        said = {label: _section(line, label) for label in labels}
        there = [label for label in labels if said[label].keys() & _MAKES]
        yield Written(
            row=sheet.grid.address(line.row, 0),
            whole=line.whole,
            sections=tuple(said[label] for label in there),
            empty=tuple(line.without(label) for label in there),
        )


_MAKES = frozenset(("length", "diameter", "strength", STRAND))  # what a section is known by


def _in_order(sheet: Understood) -> list[tuple[str, int]]:
    """Return the sections that the columns speak of, from the butt to the fly."""
    labels = dict.fromkeys(
        column.meaning.label
        for column in sheet.taken
        if column.meaning and column.meaning.of_section and column.meaning.label != ("", 0)
    )
    numbered = all(number for part, number in labels if _RANK[part] == 1)
    places = {label: place for place, label in enumerate(labels)}
    return sorted(
        labels,
        key=lambda label: (
            _RANK[label[0]],
            label[1] if numbered or _RANK[label[0]] != 1 else places[label],
        ),
    )


def _section(line: Line, label: tuple[str, int]) -> dict[str, Spot]:
    every = {s.meaning.field: s for _, s in line.spots if s.meaning == Meaning("material")}
    own = {s.meaning.field: s for _, s in line.spots if s.meaning.label == label}
    said = {field: spot for field, spot in own.items() if spot.meaning.of_section}
    if said and label[0] and "part" not in said:
        first = next(iter(said.values()))
        said["part"] = Spot(label[0], first.where, Meaning("part"))
    return {**every, **said}


# ---- a row a section --------------------------------------------------------------------------


def _long(sheet: Understood, lines: Sequence[Line]) -> Iterator[Written]:
    last: dict[str, int] = {}  # the row that each name ended in
    for group in _groups(lines):
        first = group[0]
        name = first.name or ""
        faults = [*_torn(sheet, first, last), *_row_faults(sheet, group)]
        whole = first.whole if first.name or "name" in sheet.fields else _titled(sheet, first)
        own = sheet.headings.own
        sections = [line for line in group if own or line.section.keys() & _MAKES]
        yield Written(
            row=sheet.grid.address(first.row, 0),
            whole=whole,
            sections=tuple(line.section for line in sections),
            empty=tuple(line.without(("", 0)) for line in sections),
            faults=tuple(faults),
            own=own,
        )
        last[name] = group[-1].row


def _titled(sheet: Understood, first: Line) -> dict[str, Spot]:
    """Return what is said of the one leader of a sheet, which its title names."""
    title = sheet.title or sheet.grid.sheet
    where = sheet.grid.address(first.row, 0)
    return {**first.whole, **({"name": Spot(title, where, Meaning("name"))} if title else {})}


def _groups(lines: Sequence[Line]) -> Iterator[list[Line]]:
    """Yield the rows of each leader: until another name, or the number 1, begins the next."""
    group: list[Line] = []
    for line in lines:
        begins = _number(line) == "1" or (line.name and (not group or line.name != group[0].name))
        if group and begins and (group[0].section or len(group) > 1 or line.name):
            yield group
            group = []
        group.append(line)
    if group:
        yield group


def _number(line: Line) -> str | None:
    said = next((s for _, s in line.spots if s.meaning.field == NUMBER), None)
    return None if said is None else said.text


def _torn(sheet: Understood, first: Line, last: Mapping[str, int]) -> Iterator[Fault]:
    """Find a leader whose rows were torn apart; one that is numbered from 1 is another."""
    name = first.name or ""
    if name in last and _number(first) != "1":
        yield Fault(
            f"{first.whole['name'].where if name else sheet.grid.address(first.row, 0)}, name",
            f"{name!r} ended in row {last[name] + 1}",
            "put the rows of a leader together, or number the sections of each from 1",
        )


def _row_faults(sheet: Understood, group: Sequence[Line]) -> Iterator[Fault]:
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
