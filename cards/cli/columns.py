"""Rows of cells in; lines for a terminal out, the cells in columns."""

from collections.abc import Container, Sequence


def in_columns(rows: Sequence[Sequence[str]], right: Container[int] = ()) -> list[str]:
    """Return a line a row; the columns of some places are set to the right."""
    widths = [max(map(len, column)) for column in zip(*rows, strict=True)]
    return ["  ".join(_cells(row, widths, right)).rstrip() for row in rows]


def _cells(row: Sequence[str], widths: Sequence[int], right: Container[int]) -> list[str]:
    return [
        cell.rjust(width) if place in right else cell.ljust(width)
        for place, (cell, width) in enumerate(zip(row, widths, strict=True))
    ]
