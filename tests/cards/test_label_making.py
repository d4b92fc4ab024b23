from dataclasses import replace

import pytest

from cards.errors import Refused
from cards.faces.label import LabelNote
from cards.label_making import labels_of
from cards.leader import work_out
from cards.printing import code_of
from cards.recipe import Recipe
from layouts.code import SMALLEST_MODULE
from layouts.face import Code
from layouts.formats import LabelSheet
from layouts.stock import label_sheet, shipped
from tests.leaders import SANDBAR
from tests.written import PRACTICE

KNOWN = tuple(shipped().labels.values())
# 200 characters, the most that a note may have
NOTE = ("For a stiff crosswind, when crabs come out over pale sand. " * 4)[:200]


def refusal(recipe: Recipe, sheet: LabelSheet, known: tuple[LabelSheet, ...] = KNOWN) -> str:
    leader = work_out(recipe, PRACTICE)
    with pytest.raises(Refused) as caught:
        labels_of(leader, [code_of(recipe, PRACTICE)], sheet, [LabelNote()], PRACTICE, known)
    (fault,) = caught.value.faults
    return str(fault)


def fits(recipe: Recipe, sheet: LabelSheet) -> bool:
    leader = work_out(recipe, PRACTICE)
    try:
        labels_of(leader, [code_of(recipe, PRACTICE)], sheet, [LabelNote()], PRACTICE, KNOWN)
    except Refused:
        return False
    return True


def test_there_is_a_label_for_each_note() -> None:
    leader, sheet = work_out(SANDBAR, PRACTICE), label_sheet("letter-3x10-66.7x25.4")
    notes = [LabelNote(number="1 of 2"), LabelNote(number="2 of 2")]
    code = code_of(SANDBAR, PRACTICE)
    made = labels_of(leader, [code], sheet, notes, PRACTICE, KNOWN)
    assert len(made) == len({*made}) == 2


def test_a_label_that_is_too_small_names_sheets_that_would_do() -> None:
    sheet = label_sheet("letter-4x20-44.5x12.7")
    found, _, names = refusal(SANDBAR, sheet).partition("; use --stock ")
    assert found == (
        "Sandbar eight: its code of 37 modules and its words do not fit a label of 44.45 × 12.7 mm"
    )
    assert 1 <= len(names.split(" or ")) <= 3
    for name in names.split(" or "):
        other = label_sheet(name)
        assert other.paper == sheet.paper
        assert fits(SANDBAR, other)


def test_who_has_a_roll_is_told_of_rolls() -> None:
    _, _, names = refusal(SANDBAR, label_sheet("roll-17x54")).partition("; use --stock ")
    assert all(label_sheet(name).on_roll for name in names.split(" or "))


def test_the_note_is_the_first_to_be_left_out_then_the_use() -> None:
    sheet = label_sheet("letter-4x15-44.5x16.9")
    noted = replace(SANDBAR, note=NOTE)
    used = replace(noted, use=NOTE)
    assert fits(SANDBAR, sheet)
    assert refusal(noted, sheet).endswith(", or leave out its note")
    assert not fits(replace(used, note=None), sheet)
    assert refusal(used, sheet).endswith(", or leave out its note and use")


def test_strengths_are_the_last_to_be_left_out() -> None:
    sheet = label_sheet("letter-4x15-44.5x16.9")
    many = replace(SANDBAR, sections=(SANDBAR.sections[0], *SANDBAR.sections))
    bare = replace(many, sections=tuple(replace(s, strength=None) for s in many.sections))
    assert fits(bare, sheet)
    assert refusal(many, sheet).endswith(", or leave out its strengths")


def test_nothing_is_said_to_help_that_does_not() -> None:
    # 10 mm less 2 × 1.5 leave 7 mm: 20 modules of 0.34 mm, and the smallest code has 21
    low = label_sheet("a4-7x27-25.4x10")
    assert "leave out" not in refusal(replace(SANDBAR, note=NOTE), low)
    assert refusal(SANDBAR, low, known=()).endswith("; no label known here is large enough")


def test_no_code_falls_below_the_smallest_module() -> None:
    leader, code = work_out(SANDBAR, PRACTICE), code_of(SANDBAR, PRACTICE)
    for sheet in KNOWN:
        try:
            faces = labels_of(leader, [code], sheet, [LabelNote()], PRACTICE, ())
        except Refused:
            continue
        for face in faces:
            modules = [item.module for item in face.items if isinstance(item, Code)]
            assert min(modules) >= SMALLEST_MODULE - 1e-9


def test_a_stronger_code_is_taken_where_it_costs_nothing() -> None:
    leader = work_out(SANDBAR, PRACTICE)
    codes = [code_of(SANDBAR, PRACTICE, "Q"), code_of(SANDBAR, PRACTICE)]
    taken = {}
    for name in ("letter-4x15-44.5x16.9", "letter-3x10-66.7x25.4"):
        sheet = label_sheet(name)
        (face,) = labels_of(leader, codes, sheet, [LabelNote()], PRACTICE, KNOWN)
        (code,) = [item for item in face.items if isinstance(item, Code)]
        taken[name] = code.symbol.level, round(code.module, 2)
    # Q takes 45 modules for M's 37; at 0.42 mm (1.2 pt) they are 19 mm high, at 0.51 mm 22.9.
    assert taken == {"letter-4x15-44.5x16.9": ("M", 0.96), "letter-3x10-66.7x25.4": ("Q", 1.2)}
