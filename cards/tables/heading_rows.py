"""Where the headings of a sheet stand: a grid in; its headings, one a column, and its data out."""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct

from tagend.cards.tables.columns import COLUMNS
from tagend.cards.tables.grid import SheetCells
from tagend.cards.tables.lexicon import unit_named
from tagend.cards.tables.meaning import STRAND, Meaning, is_label, read_heading

_LOOKED_AT = 40  # rows
_LEAST = 2  # headings; fewer are no table


class Headings(Struct, frozen=True):
    """The headings of a sheet, each unlike the others, and the row that its data begin in."""

    row: int
    data: int
    texts: tuple[str, ...]
    own: bool  # whether it is a table of tagend's own


def _own_column(heading: str) -> str:
    return "_".join(heading.lower().replace("-", " ").replace("_", " ").split())


def find_headings(grid: SheetCells, known: Mapping[str, str]) -> Headings | None:
    """Return the headings: the first of the rows that hold the most words with a meaning."""
    counts = [_understood(row, known) for row in grid.rows[:_LOOKED_AT]]
    most = max(counts, default=0)
    if most < _LEAST:
        return None
    row = counts.index(most)
    texts = [" ".join(text.split()) for text in grid.rows[row]]
    if row and sum(map(is_label, grid.rows[row - 1])) >= _LEAST:
        texts = _below(list(grid.rows[row - 1]), texts)
    data = row + 1
    if data < len(grid.rows) and _are_units(grid.rows[data]):
        texts = list(_with_units(texts, grid.rows[data]))
        data += 1
    numbered = tuple(_numbered(texts))
    own = all(_own_column(text) in COLUMNS for text in numbered if text)
    return Headings(row=row, data=data, texts=numbered, own=own)


def _understood(row: Sequence[str], known: Mapping[str, str]) -> int:
    """Count the cells that are headings; a quantity such as `25 lb` or a number alone is none."""
    return sum(
        text in known
        or (not text[:1].isdigit() and not text.startswith(".") and _means_something(text))
        for text in row
        if text
    )


def _means_something(text: str) -> bool:
    read = read_heading(text)
    return read.meaning is not None and not read.doubt


def _below(above: list[str], texts: list[str]) -> list[str]:
    """Return headings with those above them, which stand over several as merged cells do."""
    width = max(len(above), len(texts))
    above, texts = (line + [""] * (width - len(line)) for line in (above, texts))
    over = ""
    joined = []
    for upper, text in zip(above, texts, strict=True):
        over = upper or over
        own = read_heading(text).meaning
        holds = text and own is not None and own.of_section and own.label == ("", 0)
        label = over if upper or (holds and is_label(over)) else ""
        joined.append(" ".join(filter(None, (label, text))))
    return joined


def _are_units(row: Sequence[str]) -> bool:
    cells = [cell for cell in row if cell]
    return len(cells) >= _LEAST and all(unit_named(cell.strip("()[]")) for cell in cells)


def _with_units(texts: Sequence[str], units: Sequence[str]) -> Iterator[str]:
    for place, text in enumerate(texts):
        unit = units[place].strip("()[]") if place < len(units) else ""
        yield f"{text} ({unit})" if text and unit else text


def _numbered(texts: Sequence[str]) -> Iterator[str]:
    """Yield each heading; those of sections that are alike belong to the section named before them.

    Where none is named they are numbered as they come.
    """
    alike, seen = Counter(texts), Counter[str]()
    before = ""
    for text in texts:
        seen[text] += 1
        meaning = read_heading(text).meaning if text else None
        if meaning is not None and meaning.of_section and meaning.label != ("", 0):
            before = str(Meaning(STRAND, meaning.part, meaning.number))
        elif text and alike[text] > 1 and meaning is not None and meaning.of_section:
            yield f"{before} {text}" if before else f"{text} {seen[text]}"
            continue
        yield f"{text} {seen[text]}" if text and seen[text] > 1 else text
