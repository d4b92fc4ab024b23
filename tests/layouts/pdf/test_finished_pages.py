"""Sheets of every stock, finished as PDF and read back by another library, have its geometry."""

from typing import Literal

import pytest

from tagend.layouts.paper.face import MM, Face, Path, rectangle
from tagend.layouts.pdf.pdf import write_pdf
from tagend.layouts.sheets.cutouts import Card
from tagend.layouts.sheets.imposition import place_cards, place_labels
from tagend.layouts.stock.formats import CardSize, LabelSheet
from tagend.layouts.stock.stock import paper, shipped
from tests.layouts.drawn import Box, boxes, is_grey_only

NEAR = 0.01 * MM


def outlined(name: str, width: float, height: float) -> Face:
    """Return a face whose outline is its own box; faces of other names are drawn by themselves."""
    return Face(name, width, height, (Path(rectangle(0, 0, width, height), line=0.25),))


def near(found: list[Box], expected: list[Box]) -> bool:
    return len(found) == len(expected) and all(
        abs(a - b) < NEAR
        for one, other in zip(sorted(found), sorted(expected), strict=True)
        for a, b in zip(one, other, strict=True)
    )


@pytest.mark.parametrize("stock", shipped().labels.values(), ids=lambda stock: stock.name)
def test_a_full_sheet_of_labels_has_every_label_in_its_place(stock: LabelSheet) -> None:
    count = stock.columns * stock.rows
    faces = [outlined(f"{k}", stock.width, stock.height) for k in range(count)]
    pdf = write_pdf(place_labels(faces, stock), title="", creator="")
    assert near(boxes(pdf), list(stock.boxes))
    assert is_grey_only(pdf)


@pytest.mark.parametrize("size", shipped().cards.values(), ids=lambda size: size.name)
@pytest.mark.parametrize("backs", ["fold", "long-edge"])
def test_cards_have_their_size_on_the_sheet(
    size: CardSize, backs: Literal["fold", "long-edge"]
) -> None:
    cards = [
        Card(*(outlined(f"{side} {k}", size.width, size.height) for side in ("front", "back")))
        for k in range(2)
    ]
    sheets = place_cards(cards, paper("Tabloid"), backs=backs)
    pdf = write_pdf(sheets, title="", creator="")
    sizes = [
        sorted((right - left, bottom - top))
        for page in range(len(sheets))
        for left, top, right, bottom in boxes(pdf, page)
    ]
    wanted = sorted((size.width, size.height))
    assert sum(of == pytest.approx(wanted, abs=NEAR) for of in sizes) == 4
    assert is_grey_only(pdf)
