import re
from datetime import date

import pytest
from hypothesis import given, settings
from msgspec.structs import replace

from tagend.cards.faces.label_lines import LabelNote
from tagend.cards.leader.leader import Leader
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.printing.labels import LabelWishes, labels_pdf
from tagend.layouts.base.faults import Refused
from tagend.layouts.stock.formats import LabelSheet
from tagend.layouts.stock.stock import label_sheet
from tests.layouts.drawn import text
from tests.tieable import seeds, tieable
from tests.told import JOB
from tests.written import leader, recipe, section

TINY = label_sheet("a4-7x27-25.4x10")
USUAL = label_sheet("letter-3x10-66.7x25.4")
TWO = leader(recipe(section("46 in", "0.023 in", "hard nylon", "25 lb"), section("24 in", "4X")))


def labels(of: Leader, sheet: LabelSheet, *numbers: str) -> str:
    """Return the text of a leader's labels."""
    notes = tuple(LabelNote(number=number) for number in numbers)
    wishes = LabelWishes(sheet.name, (notes,) if notes else ())
    return text(labels_pdf(JOB, [Worksheet(of, ())], wishes))


def refusal(of: Leader, sheet: LabelSheet, *numbers: str) -> str:
    with pytest.raises(Refused) as caught:
        labels(of, sheet, *numbers)
    return str(caught.value)


def test_there_is_a_label_for_each_number() -> None:
    shown = labels(TWO, USUAL, "1 of 2", "2 of 2")
    assert "1 of 2" in shown
    assert "2 of 2" in shown


def test_a_label_that_is_too_small_is_refused_with_sheets_that_are_not() -> None:
    message = refusal(TWO, TINY)
    assert re.match(
        r"Under test: its code of \d+ modules and its words do not fit a label of 25\.4 × 10 mm; "
        r"use --stock ",
        message,
    )
    found = re.search(r"use --stock ([^,]+)", message)
    assert found
    names = found[1].split(" or ")
    assert 1 <= len(names) <= 3
    for name in names:
        assert labels(TWO, label_sheet(name))
    assert label_sheet(names[0]).paper == TINY.paper  # what is in the printer comes first


def test_each_label_has_its_own_number_day_and_lots() -> None:
    notes = tuple(
        LabelNote(number=f"no. {n}", tied=date(2026, 10, n), lots=(f"K {n}",)) for n in (11, 12)
    )
    pdf = labels_pdf(JOB, [Worksheet(TWO, ())], LabelWishes(notes=(notes,)))
    for n in (11, 12):
        assert f"no. {n} · tied 2026-10-{n}" in text(pdf)
        assert f"lot K {n}" in text(pdf)


def test_what_was_asked_for_and_does_not_fit_is_named_with_a_sheet_that_holds_it() -> None:
    small = label_sheet("a4-4x12-45.7x21.2")
    assert labels(TWO, small)
    number = "number 1234 of the year"
    message = refusal(TWO, small, number)
    assert "and its number do not fit a label of 45.7 × 21.2 mm" in message
    assert message.endswith(", or leave out its number")
    found = re.search(r"use --stock ([^,]+)", message)
    assert found
    for name in found[1].split(" or "):
        assert "1234" in labels(TWO, label_sheet(name), number)


def test_a_long_note_may_be_left_out() -> None:
    note = "Für Wind, Wasser und Ebbe; über Sand, über Kies, über Tang. " * 3
    long = leader(replace(TWO.recipe, note=note.strip()))
    small = label_sheet("a4-4x12-45.7x21.2")
    assert refusal(long, small).endswith(", or leave out its note")
    assert labels(leader(replace(long.recipe, note=None)), small)


@given(seeds)
@settings(max_examples=12, deadline=None)
def test_every_sheet_that_is_offered_fits(seed: int) -> None:
    of = tieable(seed)
    found = re.search(r"use --stock ([^,]+)", refusal(of, TINY))
    assert found
    for name in found[1].split(" or "):
        assert labels(of, label_sheet(name))
