"""The leaders in the book: listed, recalled by a spool or a lot, marked, put right."""

from typing import Any

from starlette.requests import Request
from starlette.routing import BaseRoute

from tagend.cards.base.value_readers import plain_text
from tagend.cards.book.changes import Change
from tagend.cards.book.correcting import Used, correct_day, correct_use, untie
from tagend.cards.book.history import check_unchanged, last_entry, last_who
from tagend.cards.book.leaders import STATES, BookLeader, Sought, State, mark, recall
from tagend.cards.book.naming import numbers, ranges
from tagend.cards.book.spools import spools
from tagend.cards.desk.book_here import (
    answer_of,
    read_date,
    read_field,
    reading,
    recording,
    sought_in,
    with_book,
)
from tagend.cards.desk.desk import Desk
from tagend.cards.desk.page import Json, Shown, page, posted, refusals, shown
from tagend.cards.disk.clock import today
from tagend.cards.recipe.recipe import NOTE_MOST
from tagend.cards.words.language import Wording
from tagend.cards.words.shopping import spool_name
from tagend.layouts.base.faults import Refused, refused


def routes() -> list[BaseRoute]:
    """Return the routes of this screen."""
    return [
        shown("/book/leaders", with_book(leaders_page)),
        posted("/book/mark", mark_these),
        posted("/book/correct", correct_these),
    ]


def leaders_page(desk: Desk, request: Request) -> Shown:
    """Show the leaders that are sought, by number."""
    job, asked, wrong = desk.job(), dict(request.query_params), None
    with reading(desk) as db:
        try:
            found = recall(db, sought_in(asked))
        except Refused as refusal:  # told beside what was asked
            found, wrong = recall(db, Sought(numbers=())), refusal
        entry, there, who = last_entry(db), spools(db), last_who(db)
        recipes = [row["name"] for row in db.execute("SELECT DISTINCT name FROM recipe")]
    return page(
        desk,
        "book",
        part="leaders",
        who=who,
        leaders=[_row(leader, job.wording) for leader in found.leaders],
        of=found.of,
        numbers=ranges(leader.number for leader in found.leaders),
        asked=asked,
        faults=refusals(desk, wrong) if wrong else (),
        query=request.url.query,
        entry=entry,
        recipes=[(name, name) for name in sorted(recipes)],
        lots=[(lot, lot) for lot in sorted({spool.lot for spool in there if spool.lot})],
        spools=[(spool.label, spool_name(spool.label, spool.lot, job.wording)) for spool in there],
        states=[(state, state_told(state, job.wording)) for state in STATES],
        stocks=[sheet.name for sheet in job.stock.labels.values()],
        stock=job.label_sheet(None).name,
    )


def mark_these(desk: Desk, said: Json) -> Json:
    """Say what became of leaders."""
    state = str(said.get("state"))
    if state not in STATES:
        raise refused("no state is chosen", "choose one")
    remark = read_field(said, "remark", lambda text: plain_text(text, NOTE_MOST))
    on = read_field(said, "on", read_date) or today()
    with recording(desk, said) as change:
        mark(change, _chosen(change, said), state, on, remark)
        return answer_of(desk, change)


def correct_these(desk: Desk, said: Json) -> Json:
    """Put right what the book says of leaders: their day, a section's spool, or that they are."""
    tied = read_field(said, "tied", read_date)
    section = read_field(said, "section", _section)
    spool = str(said.get("spool") or "") or None
    with recording(desk, said) as change:
        of = _chosen(change, said)
        if said.get("what") == "untie":
            untie(change, of)
        elif said.get("what") == "day" and tied:
            correct_day(change, of, tied)
        elif said.get("what") == "use" and section and (spool or said.get("spoiled")):
            used = Used(section=section, spool=spool, spoiled=bool(said.get("spoiled")))
            correct_use(change, of, used)
        else:
            raise refused("this does not say what to put right", "fill in its fields")
        return answer_of(desk, change)


def state_told(state: State, wording: Wording) -> str:
    """Return a state in words: `tied`, `given away`."""
    return wording.say("tied") if state == "tied" else wording.say(f"is_{state}")


def _chosen(change: Change, said: Json) -> tuple[int, ...]:
    """Return the leaders that are ticked; raises `Refused` where one was changed meanwhile."""
    of = numbers([str(number) for number in said.get("numbers", ())])
    if not of:
        raise refused("no leader is chosen", "tick those that are meant")
    check_unchanged(change.db, "leader", of, int(said["entry"]))
    return of


def _section(text: str) -> int:
    if not text.isdecimal() or not 1 <= int(text[:4]) <= 99:
        raise refused(f"{text[:40]!r} is no section", "write its number from the butt, such as 3")
    return int(text)


def _row(leader: BookLeader, wording: Wording) -> dict[str, Any]:
    holds = (spool_name(of.spool, of.lot, wording) for of in leader.drawn)
    return {
        "number": leader.number,
        "recipe": leader.recipe,
        "batch": leader.batch,
        "tied": leader.tied.isoformat(),
        "holds": "; ".join(dict.fromkeys(holds)),
        "state": state_told(leader.state, wording),
        "state_day": "" if leader.state_day is None else leader.state_day.isoformat(),
        "remark": leader.remark or "",
    }
