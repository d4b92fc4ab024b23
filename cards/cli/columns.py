"""Rows of cells in; lines for a terminal out, the cells in columns."""

from collections.abc import Container, Sequence

from tagend.cards.base.value_readers import is_writing


def in_columns(rows: Sequence[Sequence[str]], right: Container[int] = ()) -> list[str]:
    """Return a line a row; the columns of some places are set to the right."""
    rows = [list(map(_shown, row)) for row in rows]
    widths = [max(map(len, column)) for column in zip(*rows, strict=True)]
    return ["  ".join(_cells(row, widths, right)).rstrip() for row in rows]


def _shown(cell: str) -> str:
    """Return a cell that leaves the terminal as it is; a file may come from anybody."""
    if cell.isprintable():
        return cell
    return "".join(char if is_writing(char) else "\ufffd" for char in cell)


def _cells(row: Sequence[str], widths: Sequence[int], right: Container[int]) -> list[str]:
    return [
        cell.rjust(width) if place in right else cell.ljust(width)
        for place, (cell, width) in enumerate(zip(row, widths, strict=True))
    ]
