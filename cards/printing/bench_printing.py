"""A batch and what a person wants of the paper in, the bytes of a bench sheet's PDF out."""

from tagend.cards.batches.batch import Batch
from tagend.cards.faces.bench import bench_sheet
from tagend.cards.leader.leader import check_tieable
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.shop_file import Shop
from tagend.cards.printing.own_paper import own_paper
from tagend.cards.printing.pages import CREATOR, paper_faults, recipe_files
from tagend.cards.words.cautions import cautions_for
from tagend.cards.words.language import wording_of
from tagend.layouts.pdf.pdf import write_pdf
from tagend.layouts.sheets.sheet import Placed, Sheet
from tagend.layouts.stock.stock import paper


def bench_pdf(batch: Batch, practice: Practice, shop: Shop, on: str | None) -> bytes:
    """Return a PDF of the bench sheet; `on` names the paper. Raises `Refused`."""
    leaders = [order.leader for order in batch.orders]
    names = [leader.recipe.name for leader in leaders]
    for leader in leaders:
        check_tieable(leader)
    wording = wording_of(shop)
    with own_paper(shop) as own, paper_faults():
        sheet = paper(on or shop.paper or own.stock.defaults["paper"], own.stock)
        faces = bench_sheet(
            batch, cautions_for(leaders, practice.materials, wording), wording, sheet
        )
        return write_pdf(
            [Sheet(sheet.width, sheet.height, (Placed(face, 0, 0),)) for face in faces],
            title=wording.say("bench_sheet_of", leaders=", ".join(names)),
            creator=CREATOR,
            files=recipe_files([leader.recipe for leader in leaders]),
        )
