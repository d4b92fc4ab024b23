"""A name of stock in, the bytes of a page with its outline out."""

from collections.abc import Iterator

from tagend.cards.printing.job import Job, Printed, pdf_of
from tagend.cards.words.language import Wording
from tagend.layouts.paper.lengths import in_inches, size_in_mm
from tagend.layouts.sheets.outline import OutlineWords, Stocked, stock_outline
from tagend.layouts.sheets.sheet import Sheet
from tagend.layouts.stock.formats import CardSize, LabelSheet, Paper
from tagend.layouts.stock.stock import any_stock


def stock_pdf(job: Job, name: str) -> Printed:
    """Return a PDF of label sheet, card or paper, true to size. Raises `Refused`."""
    found = any_stock(name, job.stock)

    def sheets() -> list[Sheet]:
        told = (*_facts(found, job.wording), job.wording.say("hold_to_light"))
        says = OutlineWords(told, job.rules().full, job.fonts)
        return [stock_outline(found, job.paper(None), says)]

    return pdf_of(job, sheets, title=job.wording.say("measures_of", name=found.name), true=False)


def _facts(stock: Stocked, wording: Wording) -> Iterator[str]:
    """Yield what a thing is, and its size."""
    size = _size(stock, wording)
    match stock:
        case Paper():
            yield wording.say("paper_of_size", size=size)
        case CardSize():
            yield wording.say("card_of_size", size=size)
        case LabelSheet(on_roll=True):
            yield wording.say("roll_of_size", size=size)
        case LabelSheet(paper=sheet, columns=columns, rows=rows):
            yield wording.say(
                "labels_of_size", count=columns * rows, columns=columns, rows=rows, size=size
            )
            yield wording.say("on_paper", name=sheet.name, size=_size(sheet, wording))


def _size(of: Stocked, wording: Wording) -> str:
    across = in_inches(of.width).removesuffix(" in")
    size = f"{size_in_mm(of.width, of.height)} · {across} × {in_inches(of.height)}"
    return wording.number(size)
