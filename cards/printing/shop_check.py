"""What a shop file says in; nothing, or what no print could be made with, out."""

from collections.abc import Iterable

from tagend.cards.practice.shop_file import Shop
from tagend.cards.printing.job import job_of
from tagend.layouts.base.faults import Fault, noting, refuse_any, under

STOCKED = ("paper", "card", "labels")  # keys that name stock


def check_shop(shop: Shop, stocked: Iterable[str] = STOCKED) -> None:
    """Raise `Refused` for stock, a printer, a font or a language that cannot be, by its key.

    Of the keys that name stock, only for these.
    """
    job = job_of(shop)
    named = {"paper": job.paper, "card": job.card_size, "labels": job.label_sheet}
    faults: list[Fault] = []
    for key in stocked:
        with noting(faults), under(key):
            named[key](None)
    refuse_any(faults)
