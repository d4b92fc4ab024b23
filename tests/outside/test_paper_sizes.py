"""Sizes against the standards' own rules, and against an unrelated table."""

import papersizes_guide
import pytest
from reportlab.lib import pagesizes

from tagend.layouts.paper.face import MM
from tagend.layouts.stock.stock import card_size, paper, shipped

# ISO 216: the first size of each series in mm; every other is the one before with its long side
# halved, rounded down to whole millimetres.
FIRST = {"A": (841, 1189), "B": (1000, 1414)}


def halved(series: str, times: int) -> tuple[int, int]:
    short, long = FIRST[series]
    for _ in range(times):
        short, long = long // 2, short
    return short, long


@pytest.mark.parametrize("series", ["A", "B"])
@pytest.mark.parametrize("size", range(11))
def test_iso_sizes_follow_the_halving_rule(series: str, size: int) -> None:
    sheet = paper(f"{series}{size}")
    width, height = halved(series, size)
    assert (sheet.width, sheet.height) == pytest.approx((width * MM, height * MM))


# papersizes-guide 1.0.3, a table made independently of this one (CC BY 4.0).
# None of the entries compared here is wrong. Other libraries' tables are: some give B4 as 250 × 352
# (ISO 216 has 353, half of B3's 707 rounded down) and Half Letter as 5.5 × 8 in (below). Of
# Executive there are two kinds, 7 × 10 and 7.25 × 10.5 in; this table and ours have the latter.
PAPERS = {
    **{f"{series}{size}": f"{series}{size}".lower() for series in "AB" for size in range(11)},
    "Letter": "letter",
    "Legal": "legal",
    "Tabloid": "tabloid",
    "Half-Letter": "half-letter",
    "Executive": "executive",
    "5x8": "junior-legal",
    "4x6": "4r",
}
CARDS = {
    "ID-1": "id-1-credit-card",
    "business-EU": "european-business-card",
    "business-US": "us-business-card",
    "business-JP": "japanese-business-card",
    "business-Nordic": "scandinavian-business-card",
    "index-3x5": "index-card-3x5",
    "index-4x6": "index-card-4x6",
    "index-5x8": "index-card-5x8",
    "trading-card": "trading-card",
    "A6": "a6",
    "A7": "a7",
    "B8": "b8",
}


def test_all_papers_are_compared() -> None:
    assert set(PAPERS) == {sheet.name for sheet in shipped().papers.values()}
    # That table has no pouch for luggage tags.
    assert set(CARDS) == {card.name for card in shipped().cards.values()} - {"pocket-tall"}


@pytest.mark.parametrize(("ours", "theirs"), PAPERS.items())
def test_papers_agree_with_an_unrelated_table(ours: str, theirs: str) -> None:
    reference = papersizes_guide.get(theirs)
    assert reference is not None
    sheet = paper(ours)
    # It rounds inch sizes to the tenth of a millimetre in places.
    assert sheet.width / MM == pytest.approx(reference.width_mm, abs=0.051)
    assert sheet.height / MM == pytest.approx(reference.height_mm, abs=0.051)


@pytest.mark.parametrize(("ours", "theirs"), CARDS.items())
def test_cards_agree_with_an_unrelated_table(ours: str, theirs: str) -> None:
    reference = papersizes_guide.get(theirs)
    assert reference is not None
    card = card_size(ours)
    assert card.width / MM == pytest.approx(reference.width_mm, abs=0.051)
    assert card.height / MM == pytest.approx(reference.height_mm, abs=0.051)


@pytest.mark.parametrize("name", ["Letter", "Legal", "Tabloid", "A4", "A5", "A6", "B5"])
def test_papers_agree_with_the_drawing_library(name: str) -> None:
    sheet = paper(name)
    theirs: tuple[float, float] = getattr(pagesizes, name.upper())
    assert (sheet.width, sheet.height) == pytest.approx(theirs, abs=0.01)


def test_half_letter_is_half_of_letter_whatever_the_drawing_library_says() -> None:
    half, whole = paper("Half-Letter"), paper("Letter")
    assert (half.width, half.height) == (whole.height / 2, whole.width)
    # reportlab 5.1.0 says 5.5 × 8 in. When this fails it was put right: compare it above.
    assert tuple(pagesizes.HALF_LETTER) == (5.5 * 72, 8 * 72)


@pytest.mark.parametrize("name", [sheet.name for sheet in shipped().labels.values()])
def test_label_sheets_close_on_their_paper(name: str) -> None:
    """What is left at the right is the left margin, at the bottom the top margin."""
    sheet = next(known for known in shipped().labels.values() if known.name == name)
    x, y = sheet.places[-1]
    assert sheet.paper.width - (x + sheet.width) == pytest.approx(sheet.left, abs=0.06 * MM)
    assert sheet.paper.height - (y + sheet.height) == pytest.approx(sheet.top, abs=0.06 * MM)
