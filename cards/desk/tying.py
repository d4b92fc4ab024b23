"""The tying book's first screen: a batch planned and tied."""

from collections.abc import Mapping
from typing import Any

from starlette.requests import Request
from starlette.routing import BaseRoute

from tagend.cards.batches.cutting import cut_batch
from tagend.cards.book.changes import Change, changing
from tagend.cards.book.file import started
from tagend.cards.book.history import last_who
from tagend.cards.book.leaders import IN_WALLET, Left, left
from tagend.cards.book.orders import Wanted, wanted_of
from tagend.cards.book.spools import add, spools, usable
from tagend.cards.book.tying import tie
from tagend.cards.desk import book_history, book_leaders, book_papers, book_spools
from tagend.cards.desk.book_here import (
    again_of,
    answer_of,
    moment_of,
    read_date,
    read_field,
    reading,
    recording,
    spools_in,
)
from tagend.cards.desk.desk import BOOK, Desk, Kept
from tagend.cards.desk.leader_drawn import title
from tagend.cards.desk.page import Json, Shown, page, posted, shown
from tagend.cards.desk.plan_told import asked_of, plan_told, sign_of
from tagend.cards.disk.clock import today
from tagend.cards.words.leader_words import Told
from tagend.layouts.base.faults import refused


def routes() -> list[BaseRoute]:
    """Return the routes of the book's screens."""
    return [
        shown("/book", tying_page),
        posted("/book/start", start),
        posted("/book/plan", plan),
        posted("/book/tie", tie_these),
        *book_leaders.routes(),
        *book_papers.routes(),
        *book_spools.routes(),
        *book_history.routes(),
    ]


def tying_page(desk: Desk, request: Request) -> Shown:
    """Show what may be tied; without a book, how to start one."""
    if desk.stamp(BOOK) is None:
        return page(desk, "book", part="start", who="", rack=desk.rack())
    with reading(desk) as db:
        there, who = {each.recipe: each for each in left(db)}, last_who(db)
    kept = [each for each in desk.leaders() if each.recipe is not None]
    leaders = [_told(desk, each, there) for each in kept]
    day = today().isoformat()
    return page(desk, "book", part="tie", who=who, leaders=leaders, today=day)


def start(desk: Desk, said: Json) -> Json:
    """Start a book, with the spools that are brought."""
    rack, moment = spools_in(desk, said), moment_of(said)
    with started(str(desk.path(BOOK))) as db:
        if rack is None:
            return {"told": ""}
        with changing(db, moment) as change:
            add(change, rack)
            return answer_of(desk, change)


def plan(desk: Desk, said: Json) -> Json:
    """Return what a batch would take from which spool; nothing is recorded."""
    asked = asked_of(desk, said["counts"])
    job = desk.job()
    with reading(desk) as db:
        wanted = wanted_of(asked, again_of(said), db, job.practice)
        rack = usable(spools(db))
    if not wanted:
        return {}
    batch = cut_batch([each.order for each in wanted], rack)
    return plan_told(desk, wanted, batch, rack)


def tie_these(desk: Desk, said: Json) -> Json:
    """Draw, number and record a batch just as it was planned.

    Where it would not be cut as the page has shown, nothing is done, and how it would be is told.
    """
    asked, job = asked_of(desk, said["counts"]), desk.job()
    tied = read_field(said, "tied", read_date) or today()
    with recording(desk, said) as change:
        wanted = wanted_of(asked, again_of(said), change.db, job.practice)
        if not wanted:
            raise refused("nothing is chosen", "say how many of which leader")
        changed = _changed(desk, change, wanted, said)
        if changed is not None:
            return {"changed": changed}
        who = moment_of(said).who
        done = tie(change, [each.order for each in wanted], tied, who)
        change.tell(done.told)
        return {**answer_of(desk, change), "batch": done.number}


def _changed(desk: Desk, change: Change, wanted: list[Wanted], said: Json) -> Json | None:
    """Return the plan as it is now, where that is not what was seen or cannot be tied."""
    rack = usable(spools(change.db))
    batch = cut_batch([each.order for each in wanted], rack)
    told = plan_told(desk, wanted, batch, rack)
    may = not batch.shortages and (said.get("anyway") or not told["is_wrong"])
    return None if may and sign_of(batch) == said.get("seen") else told


def _told(desk: Desk, kept: Kept, there: Mapping[str, Left]) -> dict[str, Any]:
    """Return a leader's file, name and measures, and how many are in the wallets since when."""
    told = Told(desk.worked_out(kept), desk.job().wording)
    name = told.leader.recipe.name
    tied = there.get(name)
    return {
        "file": kept.name,
        "name": name,
        "told": title(told),
        "here": sum(tied.states[state] for state in IN_WALLET) if tied else 0,
        "oldest": tied.oldest if tied else None,
    }
