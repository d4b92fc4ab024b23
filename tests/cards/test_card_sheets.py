"""Cards come onto sheets as they are wanted."""

import pytest

from cards.card_sheets import SheetWishes, card_sheets
from layouts.face import MM, Face
from layouts.imposition import Card
from layouts.printer import Printer
from layouts.rulers import true_size_rules
from layouts.sheet import Adjustment, Placed, Sheet
from layouts.stock import card_size, paper

LETTER, ID_1 = paper("Letter"), card_size("ID-1")
RULES = true_size_rules()


def cards(count: int, name: str = "ID-1") -> list[Card]:
    size = card_size(name)
    return [
        Card(
            Face(f"front {k}", size.width, size.height, ()),
            Face(f"back {k}", size.width, size.height, ()),
        )
        for k in range(count)
    ]


def sheets(count: int, wishes: SheetWishes, printer: Printer | None = None) -> tuple[Sheet, ...]:
    return card_sheets(cards(count), ID_1.corner, LETTER, printer or Printer(), wishes)


def faces(sheet: Sheet) -> list[Placed]:
    return [placed for placed in sheet.placed if placed.face not in RULES]


def test_every_front_has_its_rule() -> None:
    for sheet in sheets(9, SheetWishes(backs="separate")):
        assert sum(placed.face in RULES for placed in sheet.placed) == 1


def test_a_gutter_and_a_margin_are_kept() -> None:
    (sheet,) = sheets(2, SheetWishes(backs="separate", gutter=10 * MM, margin=20 * MM))
    xs = sorted({placed.x for placed in faces(sheet)})
    assert len(xs) in (1, 2)
    first = faces(sheet)[0]
    apart = [
        max(abs(p.x - first.x) - first.size[0], abs(p.y - first.y) - first.size[1])
        for p in faces(sheet)[1:]
    ]
    assert min(apart) == pytest.approx(10 * MM)
    assert min(placed.x for placed in faces(sheet)) >= 20 * MM


def test_a_run_in_stacks_is_in_order_when_the_stacks_are_laid_together() -> None:
    first, second = sheets(10, SheetWishes(backs="fold", order="stack"))[:2]
    fronts = [placed.face.name for placed in faces(first) if placed.face.name.startswith("front")]
    assert fronts[:2] == ["front 0", "front 3"]  # three sheets of four folded cards
    assert "front 1" in {placed.face.name for placed in faces(second)}


def test_backs_behind_their_fronts_have_crosses_on_both_sides() -> None:
    front, back = sheets(8, SheetWishes(backs="long-edge"))
    assert (front.side, back.side) == ("front", "back")
    assert len(back.marks) == 2


def test_sheets_are_corrected_each_side_by_its_own_shift() -> None:
    printer = Printer(front_x=MM, back_x=2 * MM)
    front, back = sheets(8, SheetWishes(backs="long-edge"), printer)
    assert (front.adjustment.x, back.adjustment.x) == pytest.approx((-MM, -2 * MM))


def test_a_pouch_for_wet_use_adds_one_sheet_for_all_cards_of_a_size() -> None:
    mixed = [*cards(30), *cards(2, "A7")]
    plain = card_sheets(mixed, 0, LETTER, Printer(), SheetWishes())
    with_pouches = card_sheets(mixed, 0, LETTER, Printer(), SheetWishes(pouch="wet"))
    assert len(with_pouches) == len(plain) + 2
    film = faces(with_pouches[-1])[0].face
    assert (film.width, film.height) == pytest.approx((84 * MM, 115 * MM))  # A7 and 5 mm around


def test_pages_for_a_print_shop_are_trimmed_and_not_corrected() -> None:
    pages = sheets(2, SheetWishes(press=True), Printer(front_x=3 * MM))
    assert [page.trim is not None for page in pages] == [True] * 4
    assert {page.adjustment for page in pages} == {Adjustment()}
    assert not any(placed.face in RULES for page in pages for placed in page.placed)
