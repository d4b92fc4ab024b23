"""The spools of the book: what is left on each; more brought in, measured, marked."""

from typing import Any

from starlette.requests import Request
from starlette.routing import BaseRoute

from tagend.cards.base.units import Length
from tagend.cards.base.value_readers import plain_text
from tagend.cards.book.changes import Change
from tagend.cards.book.correcting import (
    SPOOL_STATES,
    correct_spool,
    mark_spool,
    spool_called,
)
from tagend.cards.book.history import check_unchanged, last_entry, last_who
from tagend.cards.book.spools import BookSpool, add, spools
from tagend.cards.desk.book_here import (
    answer_of,
    read_date,
    read_field,
    reading,
    recording,
    spools_in,
    with_book,
)
from tagend.cards.desk.desk import Desk
from tagend.cards.desk.page import Json, Shown, page, posted, shown
from tagend.cards.disk.clock import today
from tagend.cards.practice.rack_file import Rack, rack_of, read_left
from tagend.cards.printing.job import Job
from tagend.cards.recipe.recipe import NOTE_MOST
from tagend.layouts.base.faults import Refused, refused

FIELDS = ("label", "material", "diameter", "strength", "left", "lot", "bought")


def routes() -> list[BaseRoute]:
    """Return the routes of this screen."""
    return [
        shown("/book/spools", with_book(spools_page)),
        posted("/book/add", add_spools),
        posted("/book/spool", correct),
        posted("/book/spool/mark", mark_one),
    ]


def spools_page(desk: Desk, request: Request) -> Shown:
    """Show the spools, in the order in which they came into the book."""
    job = desk.job()
    with reading(desk) as db:
        there, entry, who = spools(db), last_entry(db), last_who(db)
    return page(
        desk,
        "book",
        part="spools",
        who=who,
        spools=[_told(spool, job) for spool in there],
        entry=entry,
        states=SPOOL_STATES,
        materials=[each.name for each in job.practice.materials],
        rack=desk.rack(),
    )


def add_spools(desk: Desk, said: Json) -> Json:
    """Take spools into the book: one that is typed, or those of a file or of the rack."""
    rack = spools_in(desk, said)
    if rack is None and "label" not in said:
        raise refused("no file is chosen", "choose one")
    rack = rack or _typed(desk, said)
    with recording(desk, said) as change:
        add(change, rack)
        return answer_of(desk, change)


def correct(desk: Desk, said: Json) -> Json:
    """Say what is really left on a spool, its lot, or when it was bought."""
    left: Length | None = read_field(said, "left", read_left)
    lot = read_field(said, "lot", lambda text: plain_text(text, 40))
    bought = read_field(said, "bought", read_date)
    of_spool = {"lot": lot, "bought": bought}
    with recording(desk, said) as change:
        spool = _chosen(change, said)
        says = {
            column: str(value)
            for column, value in of_spool.items()
            if value is not None and value != getattr(spool, column)
        }
        if left is None and not says:
            raise refused("nothing is written here", "write what is left on it", "left")
        correct_spool(change, spool, left, says)
        return answer_of(desk, change)


def mark_one(desk: Desk, said: Json) -> Json:
    """Say that a spool is opened, empty or bad, or good after all."""
    state = str(said.get("state"))
    if state not in SPOOL_STATES:
        raise refused("no state is chosen", "choose one", "state")
    remark = read_field(said, "remark", lambda text: plain_text(text, NOTE_MOST))
    with recording(desk, said) as change:
        mark_spool(change, _chosen(change, said), state, today(), remark)
        return answer_of(desk, change)


def _chosen(change: Change, said: Json) -> BookSpool:
    """Return the spool that is meant; raises `Refused` where it was changed meanwhile."""
    spool = spool_called(change, str(said.get("spool")))
    check_unchanged(change.db, "spool", [spool.id], int(said["entry"]))
    return spool


def _typed(desk: Desk, said: Json) -> Rack:
    """Return the spool that is typed; raises `Refused` with all that is wrong, by its field."""
    row = {name: text for name in FIELDS if (text := str(said.get(name) or "").strip())}
    try:
        return rack_of({"spool": [row]}, desk.job().practice)
    except Refused as refusal:
        raise Refused(
            *(
                fault._replace(where=fault.where.removeprefix("spool 1").removeprefix(", "))
                for fault in refusal.faults
            )
        ) from None


def _told(spool: BookSpool, job: Job) -> dict[str, Any]:
    wording = job.wording
    days = {"bad": spool.bad, "empty": spool.empty, "opened": spool.opened}
    state = next(((state, day.isoformat()) for state, day in days.items() if day), None)
    strength = f", {wording.number(spool.strength.plain)}" if spool.strength else ""
    line = f"{wording.number(spool.diameter.plain)} {wording.material(spool.material)}{strength}"
    return {
        "label": spool.label,
        "lot": spool.lot or "",
        "line": line,
        "left": wording.number(spool.left.plain),
        "length": wording.number(spool.length.plain),
        "share": round(100 * spool.left_mm / spool.length.mm) if spool.length.mm else 0,
        "state": state,
        "remark": spool.remark or "",
    }
