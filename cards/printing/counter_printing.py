"""A shop's worksheets in, the bytes of a counter sheet's PDF out."""

from collections.abc import Sequence

from tagend.cards.faces.counter import counter_sheet
from tagend.cards.leader.leader import check_tieable
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.shop_file import Shop
from tagend.cards.printing.own_paper import own_paper
from tagend.cards.printing.pages import CREATOR, paper_faults, recipe_files
from tagend.cards.words.language import wording_of
from tagend.layouts.paper.raster import Raster
from tagend.layouts.pdf.pdf import write_pdf
from tagend.layouts.sheets.sheet import Placed, Sheet
from tagend.layouts.stock.stock import paper


def counter_pdf(
    worksheets: Sequence[Worksheet],
    practice: Practice,
    shop: Shop,
    on: str | None,
    logo: Raster | None = None,
) -> bytes:
    """Return a PDF of the counter sheet; `on` names the paper. Raises `Refused`."""
    leaders = [worksheet.leader for worksheet in worksheets]
    for leader in leaders:
        check_tieable(leader)
    wording = wording_of(shop)
    with own_paper(shop) as own, paper_faults():
        sheet = paper(on or shop.paper or own.stock.defaults["paper"], own.stock)
        faces = counter_sheet(
            leaders, practice.materials, wording, shop.name or wording.say("leaders"), sheet, logo
        )
        return write_pdf(
            [Sheet(sheet.width, sheet.height, (Placed(face, 0, 0),)) for face in faces],
            title=wording.say("counter_sheet", count=len(leaders)),
            creator=CREATOR,
            files=recipe_files([leader.recipe for leader in leaders]),
        )
