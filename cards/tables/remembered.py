"""Sheets as they were understood in; what of it serves another month's table too, out."""

from collections.abc import Sequence
from pathlib import PurePath

from msgspec.structs import replace

from tagend.cards.practice.practice import Practice
from tagend.cards.tables.columns_file import Answers
from tagend.cards.tables.sheet import Understood

_USUAL = "nylon"


def with_taken(answers: Answers, sheets: Sequence[Understood]) -> Answers:
    """Return what a person said, and what the columns were taken as besides."""
    taken = {
        column.heading: str(column.meaning)
        for sheet in sheets
        if not sheet.headings.own
        for column in sheet.taken
    }
    return replace(answers, columns={**taken, **answers.columns})


def fits(answers: Answers, sheets: Sequence[Understood]) -> bool:
    """Whether answers are of a table with the same headings; new ones may have come to it."""
    headings = {column.heading for sheet in sheets for column in sheet.columns}
    return bool(answers.columns) and answers.columns.keys() <= headings


def columns_file(table: str) -> str:
    """Return the name of the file that keeps the answers to a table's: `list.columns.toml`."""
    path = PurePath(table)
    return str(path.with_name(f"{path.stem}.columns.toml"))


def material_in_title(sheets: Sequence[Understood], practice: Practice) -> str:
    """Return the material that a table's title names, as the first guess."""
    titles = " ".join(f"{sheet.title} {sheet.grid.sheet}" for sheet in sheets).casefold()
    named = [material.name for material in practice.materials if material.name in titles]
    return max(named, key=len, default=_USUAL)
