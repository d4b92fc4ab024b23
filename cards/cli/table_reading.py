"""A table's file in, what its columns were taken as shown and asked, its recipes and faults out."""

import os
import sys
from collections.abc import Sequence
from functools import partial

import click
from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.cli.columns import in_columns
from tagend.cards.cli.files import naming
from tagend.cards.cli.table_questions import answers_to, asked_material
from tagend.cards.disk.disk import mode_of, read_bytes, write_whole
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.rack_file import Rack
from tagend.cards.tables.columns_file import Answers, read_columns_file, with_answers
from tagend.cards.tables.leaders import all_leaders
from tagend.cards.tables.open_table import check_is_table, open_table
from tagend.cards.tables.read_recipes import (
    TableRead,
    read_leaders,
    understood,
    without_material,
)
from tagend.cards.tables.remembered import columns_file, with_taken
from tagend.cards.tables.sheet import SheetColumn, Understood
from tagend.cards.tables.written import Written
from tagend.cards.variants.by_strength import with_diameters


class Asked(Struct, frozen=True):
    """What the command was asked for, for each of its tables."""

    practice: Practice
    rack: Rack | None
    units: dict[str, str]
    material: str | None
    like: str | None  # the columns file of another table


def read_table_file(name: str, asked: Asked) -> TableRead:
    """Return the recipes of a table, and its faults by cell; raises `Refused` for no table."""
    check_is_table(name)
    grids = open_table(read_bytes(name))
    beside = None if name == "-" else columns_file(name)
    stored = _stored(beside) if beside and os.path.exists(beside) else Answers()
    begun = _stored(asked.like) if asked.like else stored
    answers = replace(
        begun,
        units={**begun.units, **asked.units},
        material=asked.material or begun.material,
    )
    sheets = understood(grids, answers)
    for sheet in sheets:
        _show(name, sheet)
    asks = sys.stdin.isatty() and name != "-"
    if asks:
        answers = answers_to(sheets, answers)
        sheets = understood(grids, answers)
    leaders, left_out = all_leaders(sheets)
    for row in left_out:
        click.echo(f"left out: {row}", err=True)
    if asks and not answers.material and (bare := without_material(leaders, answers)):
        answers = replace(answers, material=asked_material(bare, sheets, asked.practice))
    if beside and answers != stored:
        _store(beside, name, answers, sheets)
    return _read(leaders, asked, answers)


def _read(leaders: Sequence[Written], asked: Asked, answers: Answers) -> TableRead:
    fill = partial(with_diameters, rack=asked.rack, practice=asked.practice)
    return read_leaders(leaders, asked.practice, answers, fill)


def _stored(name: str) -> Answers:
    with naming(name):
        return read_columns_file(read_bytes(name))


def _store(name: str, table: str, answers: Answers, sheets: Sequence[Understood]) -> None:
    """Write what was answered, and what the columns were taken as, beside the table."""
    there = read_bytes(name) if mode_of(name) is not None else None
    data = with_answers(there, os.path.basename(table), with_taken(answers, sheets))
    if data != there:
        # Without a checksum: nothing but the answers could make it again.
        write_whole(name, data)
        click.echo(f"stored in {name}", err=True)


def _show(name: str, sheet: Understood) -> None:
    """Print what each column was taken as; a table of our own is taken as it is."""
    if sheet.headings.own and len(sheet.taken) == len(sheet.columns):
        return
    where = f"{name}, {sheet.grid.sheet}" if sheet.grid.sheet else name
    what = "a row a leader" if sheet.wide else "a row a section"
    click.echo(f"{where}: headings in row {sheet.headings.row + 1}, {what}")
    rows = [_row(sheet, column) for column in sheet.columns if column.heading or column.why]
    for line in in_columns([("", "heading", "", "taken as", "cells"), *rows]):
        click.echo(f"  {line}")


def _row(sheet: Understood, column: SheetColumn) -> tuple[str, str, str, str, str]:
    mark = "?" if column.doubt else " " if column.meaning else "-"
    taken = str(column.meaning) if column.meaning else f"left out: {column.why}"
    doubt = f" ({column.why})" if column.doubt else ""
    return column.letters, column.heading[:30], mark, taken + doubt, sheet.shown(column.place)[:36]
