from datetime import date
from io import BytesIO

import pypdf

from tagend.cards.printing.pull import FoundLeader, PullSheet, pull_pdf
from tests.layouts.drawn import text
from tests.told import JOB

ROW = FoundLeader(
    number=141,
    recipe="Sandbar eight",
    tied=date(2026, 5, 31),
    holds="Stiff 25, lot B 22",
    state="tied",
)
PULL = PullSheet("lot B 22", date(2026, 11, 27), (ROW,))


def test_what_was_found_can_be_read_from_the_page() -> None:
    shown = text(pull_pdf(JOB, PULL, None))
    for said in ("Pull from the wallets: 1", "141", "Sandbar eight", "Stiff 25, lot B 22"):
        assert said in shown


def test_the_paper_is_the_one_asked_for_and_the_bytes_repeat() -> None:
    made = pull_pdf(JOB, PULL, "A4")
    # A4 is 210 mm wide, of which 25.4 are 72 pt
    assert round(float(pypdf.PdfReader(BytesIO(made)).pages[0].mediabox.width)) == 595
    assert made == pull_pdf(JOB, PULL, "A4")
