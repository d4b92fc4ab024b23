"""No code is printed that does not read back."""

from collections.abc import Callable

import pytest

from tagend.cards.leader.worksheet import worksheet
from tagend.cards.printing.cards import CardWishes, cards_pdf
from tagend.cards.printing.counter import counter_pdf
from tagend.cards.printing.labels import LabelWishes, labels_pdf
from tagend.layouts.base.faults import Refused
from tagend.layouts.codes import code_proof
from tagend.layouts.codes.code import symbol, symbol_path
from tests.leaders import SANDBAR
from tests.told import JOB
from tests.written import PRACTICE

SHEET = worksheet(SANDBAR, PRACTICE)
PRINTS: list[Callable[[], bytes]] = [
    lambda: cards_pdf(JOB, [SHEET], CardWishes()),
    lambda: labels_pdf(JOB, [SHEET], LabelWishes()),
    lambda: counter_pdf(JOB, [SHEET], None),
]


@pytest.mark.parametrize("write", PRINTS)
def test_a_code_that_reads_otherwise_is_not_printed(
    write: Callable[[], bytes], monkeypatch: pytest.MonkeyPatch
) -> None:
    drawn = symbol_path(symbol("TAG3:ANOTHER"))
    monkeypatch.setattr(code_proof, "symbol_path", lambda _: drawn)
    with pytest.raises(Refused, match=r"^Sandbar eight: its code .* so nothing is printed"):
        write()
