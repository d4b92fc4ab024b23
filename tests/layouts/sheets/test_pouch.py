"""A pouch cut along the sheet's lines leaves the film it must around every card."""

from collections.abc import Iterator

import pytest

from tagend.fonts import OURS
from tagend.layouts.paper.face import MM, TextRun
from tagend.layouts.pdf.pdf import write_pdf
from tagend.layouts.sheets.imposition import DoesNotFit
from tagend.layouts.sheets.pouch import Use, pouch_sheet
from tagend.layouts.stock.formats import CardSize
from tagend.layouts.stock.stock import card_size, paper
from tests.layouts.drawn import Box, boxes, is_grey_only, text

LETTER, ID_1 = paper("Letter"), card_size("ID-1")
SEALED: dict[Use, float] = {"wet": 5, "dry": 3.2}
TOLD = ("1. Lay the open pouch here.", "2. Take the sheet away, seal the pouch and cut it out.")


@pytest.mark.parametrize("use", SEALED)
def test_the_film_reaches_beyond_the_card_on_all_sides(use: Use) -> None:
    pdf = write_pdf([pouch_sheet(ID_1, 1, LETTER, use, TOLD, OURS.medium)], title="", creator="")
    found = boxes(pdf)
    width, height = 85.6 * MM, 53.98 * MM
    (card,) = [b for b in found if b[2] - b[0] == pytest.approx(width, abs=0.02)]
    (film,) = [
        b
        for b in found
        if b[2] - b[0] == pytest.approx(width + 2 * SEALED[use] * MM, abs=0.02)
        and b[3] - b[1] == pytest.approx(height + 2 * SEALED[use] * MM, abs=0.02)
    ]
    beyond = (card[0] - film[0], card[1] - film[1], film[2] - card[2], film[3] - card[3])
    assert [edge / MM for edge in beyond] == pytest.approx([SEALED[use]] * 4, abs=0.01)


@pytest.mark.parametrize("use", SEALED)
@pytest.mark.parametrize("size", ["ID-1", "A7", "index-3x5"])
def test_a_hole_lies_in_sealed_film_as_far_from_the_paper_as_the_films_end(
    use: Use, size: str
) -> None:
    of = card_size(size)
    sheet = pouch_sheet(of, 1, LETTER, use, TOLD, OURS.medium, hole=True)
    found = boxes(write_pdf([sheet], title="", creator=""))

    def sized(width: float, height: float) -> Iterator[Box]:
        for b in found:
            sides = sorted((b[2] - b[0], b[3] - b[1]))
            if sides == pytest.approx(sorted((width, height)), abs=0.02):
                yield b

    (hole,), (card,) = sized(5 * MM, 5 * MM), sized(of.width, of.height)
    film = max(found, key=lambda b: (b[2] - b[0]) * (b[3] - b[1]))
    between = max(card[0] - hole[2], hole[0] - card[2], card[1] - hole[3], hole[1] - card[3])
    assert between / MM >= SEALED[use] - 0.01
    for inner, least in ((hole, 3), (card, SEALED[use])):
        ends = (inner[0] - film[0], inner[1] - film[1], film[2] - inner[2], film[3] - inner[3])
        assert min(ends) / MM >= least - 0.01


def test_neighbours_share_the_cut_between_them() -> None:
    sheet = pouch_sheet(ID_1, 8, LETTER, "wet", TOLD, OURS.medium)
    first, second, below = sheet.placed[0].box, sheet.placed[1].box, sheet.placed[2].box
    assert first[2] == pytest.approx(second[0])
    assert first[3] == pytest.approx(below[1])


def test_one_sheet_serves_any_number_of_cards() -> None:
    # 95.6 × 63.98 mm: two across and four down.
    assert len(pouch_sheet(ID_1, 100, LETTER, "wet", TOLD, OURS.medium).placed) == 8
    assert len(pouch_sheet(ID_1, 3, LETTER, "wet", TOLD, OURS.medium).placed) == 3


def test_it_says_what_to_do() -> None:
    pdf = write_pdf([pouch_sheet(ID_1, 1, LETTER, "dry", TOLD, OURS.medium)], title="", creator="")
    assert " ".join(text(pdf).split()) == " ".join(TOLD)
    assert is_grey_only(pdf)


def test_a_small_card_goes_without_words() -> None:
    sheet = pouch_sheet(CardSize("tag", 20 * MM, 20 * MM), 1, LETTER, "wet", TOLD, OURS.medium)
    assert not any(isinstance(item, TextRun) for item in sheet.placed[0].face.items)


def test_a_card_whose_pouch_is_larger_than_the_paper_is_refused() -> None:
    # As narrow as the paper's room: the card fits, its film does not.
    with pytest.raises(DoesNotFit, match=r"a pouch of 106 × 106 mm does not fit A6") as caught:
        pouch_sheet(CardSize("wide", 96 * MM, 96 * MM), 1, paper("A6"), "wet", TOLD, OURS.medium)
    assert caught.value.would_do
