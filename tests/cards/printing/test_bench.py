from io import BytesIO

import pypdf

from tagend.cards.base.shown_lengths import length_number
from tagend.cards.batches.batch import Order
from tagend.cards.batches.cutting import cut_batch
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.printing.bench import bench_pdf
from tagend.cards.printing.recover import recipes_in
from tagend.layouts.paper.typeset import prepare
from tests.layouts.drawn import text
from tests.told import JOB
from tests.written import PRACTICE, leader, recipe, section

TWO = leader(
    recipe(
        section("46 in", "0.023 in", "hard nylon"),
        section("24 1/2 in", "0.017 in", "hard nylon"),
        butt="perfection loop",
        fly="non-slip loop",
    )
)


def made(on: str | None = None, count: int = 12) -> bytes:
    return bench_pdf(JOB, [Worksheet(TWO, ())], cut_batch([Order(TWO, count)], None), on)


def test_every_cut_and_knot_can_be_read_from_the_page() -> None:
    shown = " ".join(text(made()).split())
    for piece in TWO.pieces:
        cut = prepare(length_number(piece.cut_mm, "in"))
        assert cut.replace(" ", "") in shown.replace(" ", "")
    for knot in ("perfection loop", "blood", "non-slip loop"):
        assert knot in shown


def test_the_paper_is_the_one_asked_for_or_the_usual() -> None:
    sizes = [pypdf.PdfReader(BytesIO(made(on))).pages[0].mediabox for on in (None, "A4")]
    # Letter is 8 1/2 × 11 in of 72 pt; A4 is 210 × 297 mm
    assert [round(float(box.width)) for box in sizes] == [612, 595]
    assert [round(float(box.height)) for box in sizes] == [792, 842]


def test_pages_are_true_to_size_carry_the_recipe_and_repeat() -> None:
    reader = pypdf.PdfReader(BytesIO(made()))
    preferences = reader.root_object["/ViewerPreferences"]
    assert preferences["/PrintScaling"] == "/None"  # type: ignore[index]
    assert recipes_in(made(), PRACTICE).recipes == (TWO.recipe,)
    assert made() == made()
