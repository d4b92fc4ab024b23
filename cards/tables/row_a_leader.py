"""Rows that are a leader each in; the leaders, their sections from the butt to the fly, out."""

from collections.abc import Iterator, Mapping, Sequence

from tagend.cards.tables.meaning import Meaning
from tagend.cards.tables.sheet import Understood
from tagend.cards.tables.written import MAKES, SheetRow, Spot, Written

_RANK: Mapping[str, int] = {
    "": 1,
    "butt": 0,
    "taper": 1,
    "sighter": 1,
    "tippet": 2,
    "bite guard": 3,
}


def leaders_by_row(sheet: Understood, lines: Sequence[SheetRow]) -> Iterator[Written]:
    """Yield a leader a row."""
    labels = _in_order(sheet)
    for line in lines:
        said = {label: _section(line, label) for label in labels}
        there = [label for label in labels if said[label].keys() & MAKES]
        if all(part for part, _ in there):  # the others are called by their number alone
            for place, label in enumerate(there, start=1):
                said[label] = {**said.get(("", place), {}), **said[label]}
        yield Written(
            row=sheet.grid.address(line.row, 0),
            whole=line.whole,
            sections=tuple(said[label] for label in there),
            empty=tuple(line.without(label) for label in there),
        )


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


def _section(line: SheetRow, label: tuple[str, int]) -> dict[str, Spot]:
    every = {s.meaning.field: s for _, s in line.spots if s.meaning == Meaning("material")}
    own = {s.meaning.field: s for _, s in line.spots if s.meaning.label == label}
    said = {field: spot for field, spot in own.items() if spot.meaning.of_section}
    if said and label[0] and "part" not in said:
        first = next(iter(said.values()))
        said["part"] = Spot(label[0], first.where, Meaning("part"))
    return {**every, **said}
