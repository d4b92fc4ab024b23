"""No code is printed that does not read back."""

from collections.abc import Callable

import pytest

from tagend.cards.leader.worksheet import worksheet
from tagend.cards.practice.shop_file import Shop
from tagend.cards.printing.pages import CardWishes, LabelWishes, cards_pdf, labels_pdf
from tagend.layouts.base.faults import Refused
from tagend.layouts.codes import code_proof
from tests.leaders import SANDBAR
from tests.written import PRACTICE

SHEET = worksheet(SANDBAR, PRACTICE)
PRINTS: list[Callable[[], bytes]] = [
    lambda: cards_pdf([SHEET], PRACTICE, Shop(), CardWishes()),
    lambda: labels_pdf([SHEET], PRACTICE, Shop(), LabelWishes()),
]


@pytest.mark.parametrize("write", PRINTS)
def test_a_code_that_reads_otherwise_is_not_printed(
    write: Callable[[], bytes], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(code_proof, "text_of", lambda _: "TAG1:ANOTHER")
    with pytest.raises(Refused) as refusal:
        write()
    assert str(refusal.value) == (
        "Sandbar eight: its code does not read back as its text (it reads 'TAG1:ANOTHER'), so "
        "nothing is printed; this is a fault of the program, not of the recipe: please report it"
    )


@pytest.mark.parametrize("write", PRINTS)
def test_a_code_that_no_camera_reads_is_not_printed(
    write: Callable[[], bytes], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(code_proof, "texts_in_grey", lambda _: ())
    with pytest.raises(Refused, match="no camera reads it"):
        write()
