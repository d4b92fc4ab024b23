"""A name of stock in, the bytes of its dimensioned picture out."""

from collections.abc import Iterator

from tagend.cards.printing.job import Job, paper_faults, pdf_of
from tagend.cards.words.language import Wording
from tagend.layouts.paper.lengths import in_inches, in_mm, size_in_mm
from tagend.layouts.sheets.picture import PictureWords, Stocked, stock_picture
from tagend.layouts.sheets.sheet import Sheet
from tagend.layouts.stock.formats import CardSize, LabelSheet, Paper
from tagend.layouts.stock.stock import any_stock


def stock_pdf(job: Job, name: str) -> bytes:
    """Return a PDF of label sheet, card or paper, true to size. Raises `Refused`."""
    with paper_faults():
        found = any_stock(name, job.stock)

    def sheets() -> list[Sheet]:
        told = (*_facts(found, job.wording), job.wording.say("hold_to_light"))
        words = PictureWords(told, job.rules().full, job.fonts, job.wording.number)
        return [stock_picture(found, job.paper(None), words)]

    return pdf_of(job, sheets, title=job.wording.say("measures_of", name=found.name), true=False)


def _facts(stock: Stocked, wording: Wording) -> Iterator[str]:
    """Yield what a thing is, and those measures that its picture only draws."""
    size = _size(stock, wording)
    match stock:
        case Paper():
            yield wording.say("paper_of_size", size=size)
        case CardSize():
            yield wording.say("card_of_size", size=size)
            yield from _corners(stock.corner, wording)
        case LabelSheet(on_roll=True):
            yield wording.say("roll_of_size", size=size)
            yield from _label_shape(stock, wording)
        case LabelSheet(paper=sheet, columns=columns, rows=rows):
            yield wording.say("labels_of_size", columns=columns, rows=rows, size=size)
            yield from _label_shape(stock, wording)
            yield wording.say("on_paper", name=sheet.name, size=_size(sheet, wording))


def _label_shape(label: LabelSheet, wording: Wording) -> Iterator[str]:
    if label.shape == "round":
        yield wording.say("round_of_radius", radius=_radius(label.corner, wording))
    else:
        yield from _corners(label.corner, wording)


def _corners(radius: float, wording: Wording) -> Iterator[str]:
    if radius > 0:
        yield wording.say("corners_of_radius", radius=_radius(radius, wording))


def _radius(length: float, wording: Wording) -> str:
    return wording.number(f"{in_mm(length)} · {in_inches(length)}")


def _size(of: Stocked, wording: Wording) -> str:
    across = in_inches(of.width).removesuffix(" in")
    size = f"{size_in_mm(of.width, of.height)} · {across} × {in_inches(of.height)}"
    return wording.number(size)
