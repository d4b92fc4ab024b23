"""A table and what a person said of it in; its columns, cells and leaders as JSON out."""

from collections.abc import Iterator, Sequence
from functools import partial
from typing import Any

from tagend.cards.desk.brought import leaders_shown
from tagend.cards.desk.desk import Desk
from tagend.cards.desk.page import Json, refusals
from tagend.cards.desk.table_answers import answers_of, remembered, spelled
from tagend.cards.tables.bare_units import bare_kinds
from tagend.cards.tables.columns_file import Answers
from tagend.cards.tables.leaders import all_leaders
from tagend.cards.tables.meaning import STRAND, Meaning, read_heading
from tagend.cards.tables.open_table import check_is_table, open_table
from tagend.cards.tables.quantity_cells import KIND, UNITS
from tagend.cards.tables.read_recipes import (
    ASK_DIAMETER,
    ASK_MATERIAL,
    read_leaders,
    understood,
    without_material,
)
from tagend.cards.tables.remembered import material_in_title, with_taken
from tagend.cards.tables.sheet import SheetColumn, Understood
from tagend.cards.tables.understanding import ASK_LENGTHS, ASK_NAMES, ASK_UNITS
from tagend.cards.tables.written import Written
from tagend.cards.variants.by_strength import with_diameters
from tagend.cards.words.refusal_words import words_in
from tagend.layouts.base.faults import Fault, Refused

_ROWS = 60  # that are shown; what is wrong further down is told by its cell all the same
_INSTEAD = {  # of a command's options, what the page has for them
    ASK_UNITS: "choose it above that column",
    ASK_LENGTHS: "choose above a column that it holds lengths",
    ASK_NAMES: "choose above a column that it holds the names",
    ASK_MATERIAL: "choose it above the leaders, or write it in a column of that name",
    ASK_DIAMETER: "read it off the label of the spool, or write the spool into your rack.toml",
}


def of_table(desk: Desk, name: str, data: bytes, said: Json) -> Json:
    """Return what a table holds, with what was said of it; raises `Refused` for no table."""
    check_is_table(name)
    grids = open_table(data)
    file, stored = remembered(desk, name, grids)
    answers = answers_of(said, stored, desk)
    sheets, language = understood(grids, answers), desk.job().wording.language
    shown = [_sheet(sheet, answers, language) for sheet in sheets]
    try:
        found = all_leaders(sheets)
    except Refused as refusal:
        return {"sheets": shown, "faults": refusals(desk, _here(refusal))}
    return {
        "sheets": shown,
        "left_out": [words_in(language, line) for line in found.left_out],
        "leaders": [*_leaders(desk, found.leaders, answers)],
        "material": {
            "bare": without_material(found.leaders, answers),
            "now": answers.material or "",
            "guess": material_in_title(sheets, desk.job().practice),
        },
        "answers": {"file": file, "table": name, **spelled(with_taken(answers, sheets))},
    }


def _sheet(sheet: Understood, answers: Answers, language: str) -> Json:
    rows = range(min(len(sheet.grid.rows), sheet.headings.data + _ROWS))
    return {
        "name": sheet.grid.sheet,
        "wide": sheet.wide,
        "columns": [_column(sheet, column, answers, language) for column in sheet.columns],
        "heading": sheet.headings.row,
        "data": sheet.headings.data,
        "rows": [[_cell(sheet, row, place) for place in range(len(sheet.columns))] for row in rows],
        "more": len(sheet.grid.rows) - len(rows),
    }


def _cell(sheet: Understood, row: int, column: int) -> tuple[str, str]:
    return sheet.grid.address(row, column), sheet.grid.cell(row, column)


def _column(
    sheet: Understood, column: SheetColumn, answers: Answers, language: str
) -> dict[str, Any]:
    meaning = column.meaning
    field, of = (meaning.field, _label(meaning)) if meaning else ("", "")
    return {
        "letters": column.letters,
        "heading": column.heading,
        "field": field,
        "of": of,
        "unit": meaning.unit if meaning else "",
        "doubt": column.doubt,
        "why": words_in(language, column.why),
        "units": [*_units(sheet, column, answers)],
    }


def _units(sheet: Understood, column: SheetColumn, answers: Answers) -> Iterator[Json]:
    """Yield, for each kind of which the column has bare numbers, their unit and those possible."""
    meaning, own = column.meaning, read_heading(column.heading).meaning
    if meaning is None or (own and own.unit):  # which its heading says
        return
    for kind in bare_kinds(sheet, column):
        is_own = kind == KIND.get(meaning.field, "length")
        now = meaning.unit if is_own else answers.units.get(kind, "")
        yield {"kind": kind, "now": now, "all": UNITS[kind], "own": is_own}


def _label(meaning: Meaning) -> str:
    return str(Meaning(STRAND, meaning.part, meaning.number)).removeprefix("section ")


def _leaders(desk: Desk, leaders: Sequence[Written], answers: Answers) -> Iterator[Json]:
    """Yield each leader of a table, or what is wrong in its cells."""
    practice = desk.job().practice
    fill = partial(with_diameters, rack=desk.rack(), practice=practice)
    read = [read_leaders([leader], practice, answers, fill) for leader in leaders]
    shown = iter(leaders_shown(desk, [recipe for one in read for recipe in one.recipes]))
    for leader, one in zip(leaders, read, strict=True):
        if one.recipes:
            yield next(shown)
        else:
            name = leader.whole.get("name")
            faults = refusals(desk, _here(Refused(*one.faults)))
            yield {"name": name.text if name else leader.row, "faults": faults}


def _here(refusal: Refused) -> Refused:
    """Return what is refused with what can be done about it on the page."""
    return Refused(*map(_on_the_page, refusal.faults))


def _on_the_page(fault: Fault) -> Fault:
    if fault.instead == ASK_MATERIAL:  # of all sections, and asked once
        fault = fault._replace(where="")
    return fault._replace(instead=_INSTEAD.get(fault.instead, fault.instead))
