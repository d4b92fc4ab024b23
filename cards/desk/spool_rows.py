"""The spools of the rack's file: shown in fields, changed, and written with its comments kept."""

from collections.abc import Mapping, Sequence
from typing import Any

from msgspec.structs import fields
from starlette.requests import Request
from starlette.routing import BaseRoute

from tagend.cards.base.toml_file import read_toml
from tagend.cards.desk.book_here import spools_in
from tagend.cards.desk.desk import RACK, Desk
from tagend.cards.desk.leader import base_of
from tagend.cards.desk.page import Json, Shown, page, posted, shown
from tagend.cards.desk.same_file import RACK as RACK_SHAPE
from tagend.cards.desk.same_file import with_draft
from tagend.cards.disk.disk import read_bytes, write_whole
from tagend.cards.disk.file_lock import alone
from tagend.cards.practice.rack_file import Rack, Spool, rack_of, read_rack
from tagend.layouts.base.faults import Refused, refused

_KEYS = [field.name for field in fields(Spool)]
Row = Mapping[str, Any]  # a spool's fields as they are typed; `was` has its place in the file


def routes() -> list[BaseRoute]:
    """Return the routes of this screen."""
    return [
        shown("/rack/spools", spools_page),
        posted("/rack/save", save),
        posted("/rack/bring", bring),
    ]


def spools_page(desk: Desk, request: Request) -> Shown:
    """Show the spools in their fields."""
    data = _data(desk)
    return page(
        desk,
        "rack",
        part="spools",
        rows=_rows(data),
        base=base_of(data),
        materials=[each.name for each in desk.job().practice.materials],
    )


def save(desk: Desk, said: Json) -> Json:
    """Write the spools as they stand in their fields; not over what was changed meanwhile."""
    path = str(desk.path(RACK))
    with alone(path):
        data = _data(desk)
        if base_of(data) != said.get("base"):
            raise refused(f"{RACK} was changed meanwhile", "load the page again", RACK)
        _write(desk, data, said["rows"])
    return {}


def bring(desk: Desk, said: Json) -> Json:
    """Write the spools of a table or of another rack behind those of the rack's file."""
    brought = spools_in(desk, said)
    if brought is None:
        raise refused("no file is chosen", "choose one")
    with alone(str(desk.path(RACK))):
        data = _data(desk)
        rows = _rows(data)
        known = {row.get("label") for row in rows}
        new = [_row(spool) for spool in brought.spools if spool.label not in known]
        _write(desk, data, [*rows, *new])
    return {"added": len(new), "of": len(brought.spools)}


def _data(desk: Desk) -> bytes:
    return b"" if desk.stamp(RACK) is None else read_bytes(str(desk.path(RACK)))


def _rows(data: bytes) -> list[Row]:
    found = read_toml(data).get("spool", []) if data else []
    rows = found if isinstance(found, list) else []
    return [
        {"was": place, **{key: str(row[key]) for key in _KEYS if key in row}}
        for place, row in enumerate(rows)
        if isinstance(row, dict)
    ]


def _row(spool: Spool) -> Row:
    values = {
        "label": spool.label,
        "material": spool.material,
        "diameter": spool.diameter.plain,
        "left": spool.left.plain,
        "strength": spool.strength and spool.strength.plain,
        "lot": spool.lot,
        "bought": spool.bought and spool.bought.isoformat(),
    }
    return {key: value for key, value in values.items() if value is not None}


def _write(desk: Desk, data: bytes, rows: Sequence[Row]) -> None:
    """Write the file so that it has these spools. Raises `Refused` with what is wrong in them."""
    practice = desk.job().practice
    said = [_said(row) for row in rows]
    rack = rack_of({"spool": said}, practice)
    places = [row.get("was") for row in rows]
    after = with_draft(data, {"spool": said}, {"spool": places}, RACK_SHAPE)
    if _read(after, desk) != rack:
        found = f"{RACK} is written in a way that this page cannot keep"
        raise refused(found, "change it in an editor", RACK)
    if after != data:
        write_whole(str(desk.path(RACK)), after)


def _said(row: Row) -> dict[str, str]:
    texts = ((key, str(row.get(key) or "").strip()) for key in _KEYS)
    return {key: text for key, text in texts if text}


def _read(data: bytes, desk: Desk) -> Rack | None:
    try:
        return read_rack(data, desk.job().practice)
    except Refused:
        return None
