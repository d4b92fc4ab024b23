"""Cards come onto sheets as they are wanted."""

from typing import get_args

import pytest
from msgspec.structs import replace

from tagend.cards.printing.card_sheets import SheetWishes, card_sheets
from tagend.cards.words.language import ENGLISH, Wording, languages, wording_in
from tagend.layouts.paper.face import MM, Face
from tagend.layouts.pdf.pdf import write_pdf
from tagend.layouts.sheets.cutouts import Card
from tagend.layouts.sheets.pouch import Use
from tagend.layouts.sheets.sheet import Placed, Sheet
from tagend.layouts.stock.stock import card_size, paper
from tests.layouts.drawn import text
from tests.told import JOB

LETTER, ID_1 = paper("Letter"), card_size("ID-1")
RULES = JOB.rules()


def cards(count: int, name: str = "ID-1") -> list[Card]:
    size = card_size(name)
    return [
        Card(
            Face(f"front {k}", size.width, size.height, ()),
            Face(f"back {k}", size.width, size.height, ()),
        )
        for k in range(count)
    ]


def sheets(count: int, wishes: SheetWishes) -> tuple[Sheet, ...]:
    return card_sheets(cards(count), ID_1.corner, LETTER, wishes, JOB)


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


def test_a_pouch_for_wet_use_adds_one_sheet_for_all_cards_of_a_size() -> None:
    mixed = [*cards(30), *cards(2, "A7")]
    plain = card_sheets(mixed, 0, LETTER, SheetWishes(), JOB)
    with_pouches = card_sheets(mixed, 0, LETTER, SheetWishes(pouch="wet"), JOB)
    assert len(with_pouches) == len(plain) + 2
    film = faces(with_pouches[-1])[0].face
    assert (film.width, film.height) == pytest.approx((84 * MM, 115 * MM))  # A7 and 5 mm around


def pouch_text(use: Use, wording: Wording) -> str:
    wishes = SheetWishes(pouch=use)
    *_, sheet = card_sheets(cards(1), ID_1.corner, LETTER, wishes, replace(JOB, wording=wording))
    return " ".join(text(write_pdf([sheet], title="", creator="")).split())


def test_a_pouch_tells_step_by_step_what_to_do_and_how_much_film_stays() -> None:
    read = pouch_text("dry", ENGLISH)
    places = [read.index(start) for start in ("1. Lay the open", "2. Take", "3. Lay", "So 3.2 mm")]
    assert places == sorted(places)
    assert "So 3,2 mm of film" in pouch_text("dry", Wording("en", ","))


@pytest.mark.parametrize("language", languages())
def test_the_usual_card_has_room_for_the_words_of_every_language(language: str) -> None:
    wording = wording_in(language, None)
    for use in get_args(Use):
        read = pouch_text(use, wording)
        assert f"3. {wording.steps('pouch')[2]}" in read
        assert wording.say("true_size_mm") in read


def test_pages_for_a_print_shop_are_trimmed() -> None:
    pages = sheets(2, SheetWishes(press=True))
    assert [page.trim is not None for page in pages] == [True] * 4
    assert not any(placed.face in RULES for page in pages for placed in page.placed)
