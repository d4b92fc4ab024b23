"""No code is printed that does not read back."""

from collections.abc import Callable

import pytest

from tagend.cards.base.errors import Refused
from tagend.cards.leader.worksheet import worksheet
from tagend.cards.printing.cards import CardWishes, cards_pdf
from tagend.cards.printing.labels import LabelWishes, labels_pdf
from tagend.layouts.codes import code_proof
from tests.leaders import SANDBAR
from tests.told import JOB
from tests.written import PRACTICE

SHEET = worksheet(SANDBAR, PRACTICE)
PRINTS: list[Callable[[], bytes]] = [
    lambda: cards_pdf(JOB, [SHEET], CardWishes()),
    lambda: labels_pdf(JOB, [SHEET], LabelWishes()),
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
