"""Real cards and labels as SVGs, held to their PDFs pixel by pixel."""

import pytest
from msgspec.structs import replace

from tagend.cards.faces.label_lines import PLAIN
from tagend.cards.leader.worksheet import worksheet
from tagend.cards.printing.card_svg import cards_svg
from tagend.cards.printing.cards import CardWishes, cards_pdf
from tagend.cards.printing.labels import LabelWishes, labels_sheets
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.layouts.logo.logo_file import read_logo
from tagend.layouts.paper.face import MM, Code, Path, Picture, TextRun
from tagend.layouts.sheets.printer import Printer, corrected
from tagend.layouts.sheets.sheet import Sheet
from tests.layouts.svg.pixels import ALIKE, apart
from tests.told import JOB
from tests.tree import SAMPLES
from tests.written import PRACTICE

LEADER = worksheet(read_recipe((SAMPLES / "sandbar-eight.toml").read_bytes(), PRACTICE), PRACTICE)
LOGO = read_logo((SAMPLES / "wrack-line.png").read_bytes())
SHOP = replace(JOB, imprint=replace(JOB.imprint, name="The Wrack Line", logo=LOGO))


def card() -> Sheet:
    (sheet,) = cards_svg(SHOP, LEADER, CardWishes()).sheets
    return sheet


def labels() -> Sheet:
    wishes = LabelWishes(stock="letter-3x10-66.7x25.4", notes=((PLAIN,) * 24,))
    (sheet,) = labels_sheets(JOB, [LEADER], wishes)
    (adjusted,) = corrected([sheet], Printer(front_x=1 * MM, front_y=-0.5 * MM))
    return adjusted


def test_a_card_has_every_kind_of_item_and_looks_as_printed() -> None:
    sheet = card()
    kinds = {type(item) for placed in sheet.placed for item in placed.face.items}
    assert kinds == {TextRun, Path, Code, Picture}
    assert apart(sheet, sheet) <= ALIKE
    moved = tuple(replace(placed, y=placed.y + 0.3 * MM) for placed in sheet.placed)
    assert apart(replace(sheet, placed=moved), sheet) > ALIKE


def test_its_sides_are_those_of_the_card_in_their_order() -> None:
    printed = cards_pdf(SHOP, [LEADER], CardWishes()).sheets[0]
    assert [placed.face for placed in card().placed] == [each.face for each in printed.placed[:2]]


@pytest.mark.parametrize("kind", [TextRun, Path, Code, Picture])
def test_an_item_that_a_card_lacks_is_seen(kind: type) -> None:
    sheet = card()
    placed = next(
        each for each in sheet.placed if any(isinstance(item, kind) for item in each.face.items)
    )
    items = placed.face.items
    lost = next(place for place, item in enumerate(items) if isinstance(item, kind))
    face = replace(placed.face, items=items[:lost] + items[lost + 1 :])
    broken = tuple(replace(each, face=face) if each is placed else each for each in sheet.placed)
    assert apart(replace(sheet, placed=broken), sheet) > ALIKE


def test_a_sheet_of_labels_made_true_for_a_printer_looks_as_printed() -> None:
    sheet = labels()
    assert len(sheet.placed) > 20
    assert apart(sheet, sheet) <= ALIKE
