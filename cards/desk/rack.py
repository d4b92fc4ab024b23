"""What the rack makes of the folder's leaders, and what is to be bought for so many of them."""

from typing import Any

from starlette.requests import Request
from starlette.routing import BaseRoute

from tagend.cards.batches.batch import Order
from tagend.cards.batches.cutting import cut_batch
from tagend.cards.batches.whole_leaders import whole_leaders
from tagend.cards.book.orders import Wanted
from tagend.cards.desk import proposing, spool_rows
from tagend.cards.desk.desk import Desk
from tagend.cards.desk.leader_drawn import title
from tagend.cards.desk.page import Json, Shown, page, posted, shown
from tagend.cards.desk.plan_told import asked_of, plan_told
from tagend.cards.leader.worksheet import worksheet
from tagend.cards.practice.rack_file import Rack
from tagend.cards.words.batch_words import lacking
from tagend.cards.words.leader_words import Told


def routes() -> list[BaseRoute]:
    """Return the routes of the rack's screens."""
    return [
        shown("/rack", rack_page),
        posted("/rack/makes", makes),
        *spool_rows.routes(),
        *proposing.routes(),
    ]


def rack_page(desk: Desk, request: Request) -> Shown:
    """Show the folder's leaders, and how many whole ones of each the rack makes by itself."""
    return page(desk, "rack", part="makes", leaders=_leaders(desk), rack=desk.rack())


def makes(desk: Desk, said: Json) -> Json:
    """Return what so many leaders would take of the rack, and what is to be bought for them."""
    practice, rack = desk.job().practice, desk.rack() or Rack(())
    wanted = [
        Wanted(worksheet(recipe, practice), count)
        for recipe, count in asked_of(desk, said["counts"])
    ]
    if not wanted:
        return {}
    batch = cut_batch([Order(each.sheet.leader, each.count) for each in wanted], rack)
    return plan_told(desk, wanted, batch, rack)


def _leaders(desk: Desk) -> list[dict[str, Any]]:
    job, rack = desk.job(), desk.rack() or Rack(())
    kept = [each for each in desk.leaders() if each.recipe is not None]
    all_told = [Told(desk.worked_out(each), job.wording) for each in kept]
    made = whole_leaders([told.leader for told in all_told], rack)
    return [
        {
            "file": each.name,
            "name": told.leader.recipe.name,
            "told": title(told),
            "most": most,
            "lacking": lacking(told.leader, most, job.wording) if most else (),
        }
        for each, told, most in zip(kept, all_told, made, strict=True)
    ]
