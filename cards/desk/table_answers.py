"""What a person says of a table's columns: from the page and from kept files in, and kept, out."""

from collections.abc import Sequence
from contextlib import suppress
from pathlib import PurePath

from msgspec.structs import replace

from tagend.cards.desk.desk import COLUMNS, Desk
from tagend.cards.desk.page import Json
from tagend.cards.disk.disk import read_bytes, write_whole
from tagend.cards.disk.file_lock import alone
from tagend.cards.tables.columns_file import (
    NOTHING,
    Answers,
    means,
    read_columns_file,
    with_answers,
)
from tagend.cards.tables.grid import SheetCells
from tagend.cards.tables.meaning import Meaning, read_heading
from tagend.cards.tables.quantity_cells import UNITS
from tagend.cards.tables.read_recipes import understood
from tagend.cards.tables.recipe_tables import material_named
from tagend.cards.tables.remembered import columns_file, fits
from tagend.layouts.base.faults import Refused, refused


def keep_answers(desk: Desk, said: Json) -> None:
    """Keep what was said of a table's columns for the next one; raises `Refused`."""
    file, table = str(said["file"]), " ".join(str(said["table"]).split())
    if not file.endswith(COLUMNS):
        raise refused("this is no file of columns", "load the page again")
    answers = Answers(dict(said["columns"]), dict(said["units"]), said["material"] or None)
    path = str(desk.path(file))
    with alone(path):
        there = None if desk.stamp(file) is None else read_bytes(path)
        data = with_answers(there, table, answers, anew=True)
        read_columns_file(data)
        if data != there:
            write_whole(path, data)


def remembered(desk: Desk, name: str, grids: Sequence[SheetCells]) -> tuple[str, Answers]:
    """Return the file that keeps what is said of this table, and what it says already.

    That is the one named after it, else one that was kept of a table with the same headings.
    """
    own = _own_file(name)
    if desk.stamp(own) is not None:
        return own, read_columns_file(read_bytes(str(desk.path(own))))
    found = sorted(path.name for path in desk.folder.glob(f"*{COLUMNS}"))
    for file in found:
        with suppress(Refused):  # one that is of another table, or cannot be read, is no help
            answers = read_columns_file(read_bytes(str(desk.path(file))))
            if fits(answers, understood(grids, answers)):
                return file, answers
    return own, NOTHING


def _own_file(name: str) -> str:
    return columns_file(PurePath(name).name.lstrip(".") or "pasted")


def answers_of(said: Json, stored: Answers, desk: Desk) -> Answers:
    """Return what is known of a table: what was kept, and before it what the page says now."""
    columns = {heading: _meaning(*parts) for heading, parts in said.get("columns", {}).items()}
    units = {kind: unit for kind, unit in said.get("units", {}).items() if unit in UNITS[kind]}
    material = said.get("material")
    return Answers(
        {**stored.columns, **columns},
        {**stored.units, **units},
        material_named(material, desk.job().practice) if material else stored.material,
    )


def _meaning(field: str, of: str, unit: str) -> str:
    """Return a column's meaning as it is written; nothing where it is left out."""
    if not field:
        return ""
    label = read_heading(of).meaning if of else None
    meaning = Meaning(field, unit=unit)
    if meaning.of_section and label:
        meaning = replace(meaning, part=label.part, number=label.number)
    if not means(str(meaning)):
        raise refused(f"{meaning} means nothing of a leader", "choose another")
    return str(meaning)


def spelled(answers: Answers) -> Json:
    """Return answers as JSON, as `keep_answers` takes them."""
    return {
        "columns": dict(answers.columns),
        "units": dict(answers.units),
        "material": answers.material or "",
    }
