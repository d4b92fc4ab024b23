"""What is in doubt of a table's columns, asked at the terminal; the answers out."""

from collections.abc import Iterator, Sequence

import click
from msgspec.structs import replace

from tagend.cards.cli.spoken import refusal_told
from tagend.cards.practice.practice import Practice
from tagend.cards.tables.columns_file import Answers, means
from tagend.cards.tables.lexicon import unit_named
from tagend.cards.tables.quantity_cells import KIND, UNITS
from tagend.cards.tables.recipe_tables import material_named
from tagend.cards.tables.remembered import material_in_title
from tagend.cards.tables.sheet import SheetColumn, Understood
from tagend.cards.tables.understanding import understand
from tagend.layouts.base.faults import Refused

LEAVE_OUT = "-"


def answers_to(sheets: Sequence[Understood], answers: Answers) -> Answers:
    """Return the answers with those to new questions.

    There is one for each column in doubt, and one for each kind whose numbers have no unit.
    """
    if any(_in_doubt(sheets, answers)):
        click.echo("Enter takes what stands in brackets, - leaves a column out.", err=True)
    while (asked := next(_in_doubt(sheets, answers), None)) is not None:
        answers = _answered(*asked, answers)
        again = (understand(s.grid, answers) for s in sheets)
        sheets = [sheet for sheet in again if sheet]
    return answers


def _in_doubt(
    sheets: Sequence[Understood], answers: Answers
) -> Iterator[tuple[Understood, SheetColumn]]:
    """Yield the columns to ask of: first what they are, then in which unit."""
    for doubt in ("meaning", "unit"):
        for sheet in sheets:
            for column in sheet.columns:
                asked = doubt == "meaning" and column.heading in answers.columns
                if column.doubt == doubt and not asked:
                    yield sheet, column


def _answered(sheet: Understood, column: SheetColumn, answers: Answers) -> Answers:
    assert column.meaning is not None
    if column.doubt == "meaning":
        meaning = _ask_meaning(sheet, column)
        return replace(answers, columns={**answers.columns, column.heading: meaning})
    kind = KIND.get(column.meaning.field, "length")
    unit = _ask_unit(sheet, column, kind)
    if unit and column.meaning.of_section:
        return replace(answers, units={**answers.units, kind: unit})
    meaning = str(replace(column.meaning, unit=unit)) if unit else ""
    return replace(answers, columns={**answers.columns, column.heading: meaning})


def _ask_meaning(sheet: Understood, column: SheetColumn) -> str:
    """Ask what a column is; return it as a heading without doubt, empty to leave it out."""
    question = f"{column.letters} {column.heading!r} ({sheet.shown(column.place)[:40]}) is"
    while (answer := _prompt(question, str(column.meaning))) != LEAVE_OUT:
        if meaning := means(answer):
            return str(meaning)
        click.echo("  write such as butt length (in), or one of `tagend table --columns`", err=True)
    return ""


def _ask_unit(sheet: Understood, column: SheetColumn, kind: str) -> str:
    assert column.meaning is not None
    all_of = f"all {kind}s" if column.meaning.of_section else column.heading
    question = f"Unit of {all_of}, such as {column.letters}: {sheet.shown(column.place)[:40]}"
    while (answer := _prompt(question, column.meaning.unit)) != LEAVE_OUT:
        if (unit := unit_named(answer)) in UNITS[kind]:
            return unit
        click.echo(f"  write one of: {', '.join(UNITS[kind])}", err=True)
    return ""


def asked_material(bare: int, sheets: Sequence[Understood], practice: Practice) -> str | None:
    """Ask what the sections are made of that name no material."""
    question = f"{bare} sections name no material: hard nylon, nylon, fluorocarbon, …"
    while (answer := _prompt(question, material_in_title(sheets, practice))) != LEAVE_OUT:
        try:
            return material_named(answer, practice)
        except Refused as error:
            click.echo(f"  {refusal_told(error)}", err=True)
    return None


def _prompt(question: str, default: str) -> str:
    answer: str = click.prompt(question, default=default or LEAVE_OUT, err=True)
    return answer.strip()
