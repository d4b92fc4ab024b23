"""What of the book is printed: a batch's sheets, labels once more, what is to be pulled."""

from collections.abc import Mapping

from starlette.requests import Request
from starlette.routing import BaseRoute

from tagend.cards.batches.cutting import cut_batch
from tagend.cards.book.leaders import Sought, recall
from tagend.cards.book.naming import batch_number, numbers
from tagend.cards.book.orders import leader_reader, wanted_of
from tagend.cards.book.spools import spools, usable
from tagend.cards.book.tying import tied_orders, with_draws
from tagend.cards.desk.book_here import again_of, pdf, reading, sought_in
from tagend.cards.desk.desk import Desk
from tagend.cards.desk.page import Shown, shown
from tagend.cards.desk.plan_told import asked_of
from tagend.cards.disk.clock import today
from tagend.cards.printing.batch import BatchWishes, batch_pdf, labels_again_pdf
from tagend.cards.printing.bench import bench_pdf
from tagend.cards.printing.cards import CardWishes
from tagend.cards.printing.labels import LabelWishes
from tagend.cards.printing.pull import pull_of, pull_pdf
from tagend.layouts.base.faults import refused, under


def routes() -> list[BaseRoute]:
    """Return the routes of these papers."""
    return [
        shown("/book/plan.pdf", plan_sheet),
        shown("/book/batch/{batch}.pdf", batch_sheets),
        shown("/book/labels.pdf", labels_again),
        shown("/book/pull.pdf", pull_sheet),
    ]


def plan_sheet(desk: Desk, request: Request) -> Shown:
    """Answer with the bench sheet of a batch that is planned, which has no numbers yet."""
    job, fields = desk.job(), request.query_params
    asked = asked_of(desk, {name: text for name, text in fields.items() if name.endswith(".toml")})
    with reading(desk) as db:
        wanted = wanted_of(asked, again_of(fields), db, job.practice)
        rack = usable(spools(db))
    if not wanted:
        raise refused("nothing is chosen", "say how many of which leader")
    batch = cut_batch([each.order for each in wanted], rack)
    return pdf(bench_pdf(job, [each.sheet for each in wanted], batch, None), "plan")


def batch_sheets(desk: Desk, request: Request) -> Shown:
    """Answer with the sheets of a batch that are ticked: bench sheet, labels, cards."""
    job, asked = desk.job(), request.query_params
    with reading(desk) as db:
        number = batch_number(request.path_params["batch"])
        tied = tied_orders(db, number, leader_reader(job.practice))
        if asked.get("bench") or asked.get("cards"):
            tied = with_draws(db, tied)
        leaders = recall(db, Sought(batch=number)).leaders
    wishes = BatchWishes(
        bench="bench" in asked,
        cards=CardWishes() if "cards" in asked else None,
        labels=_labels(asked) if "labels" in asked else None,
    )
    return pdf(batch_pdf(job, tied, leaders, wishes), f"batch-{number}")


def labels_again(desk: Desk, request: Request) -> Shown:
    """Answer with a label for each leader of some numbers, whichever batches they are of."""
    job, asked = desk.job(), request.query_params
    with reading(desk) as db:
        of = numbers(asked.getlist("number"))
        if not of:
            raise refused("no leader is chosen", "go back and tick those that need a label")
        leaders = recall(db, Sought(numbers=of)).leaders
        read = leader_reader(job.practice)
        batches = [
            tied_orders(db, batch, read) for batch in sorted({each.batch for each in leaders})
        ]
    return pdf(labels_again_pdf(job, batches, leaders, _labels(asked)), "labels")


def pull_sheet(desk: Desk, request: Request) -> Shown:
    """Answer with the sheet by which the leaders that are sought are pulled from the wallets."""
    job, sought = desk.job(), sought_in(request.query_params)
    with reading(desk) as db:
        found = recall(db, sought)
    return pdf(pull_pdf(job, pull_of(found, sought, today(), job.wording), None), "pull")


def _labels(asked: Mapping[str, str]) -> LabelWishes:
    start = asked.get("start") or "1"
    with under("start"):
        if not start.isdecimal() or int(start[:5]) < 1:
            raise refused(f"{start[:40]!r} is no label of a sheet", "write a number such as 5")
    return LabelWishes(stock=asked.get("stock") or None, start=int(start))
