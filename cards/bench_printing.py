"""A batch and what a person wants of the paper in, the bytes of a bench sheet's PDF out."""

from cards.batch import Batch
from cards.cautions import cautions_for
from cards.faces.bench import bench_sheet
from cards.leader import check_tieable
from cards.own_paper import own_paper
from cards.practice import Practice
from cards.printing import CREATOR, paper_faults, recipe_files
from cards.shop_file import Shop, wording_of
from layouts.pdf import write_pdf
from layouts.sheet import Placed, Sheet
from layouts.stock import paper


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
