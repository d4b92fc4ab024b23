import pytest

from tagend.cards.faces.card_text import CardText
from tagend.cards.faces.front import Fronts
from tagend.cards.faces.front import fronts as fronts_by
from tagend.cards.faces.leader_table import needed_widths
from tagend.cards.faces.panel import INSET, Panel
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.printing.cards import CardWishes, card_text
from tagend.layouts.stock.stock import card_size
from tests.seen import faults, words
from tests.told import JOB, scale
from tests.written import SIX, leader, recipe, section

ID_1 = Panel(card_size("ID-1"), scale())


def of_sections(count: int) -> CardText:
    """Return a leader of so many sections, of 10, 20, 30 in and so on from the fly upwards."""
    lengths = range(10 * count, 0, -10)
    pieces = [section(f"{length} in", f"0.0{10 + length // 10} in") for length in lengths]
    of = leader(recipe(*pieces, butt="none", fly="clinch"))
    return card_text(JOB, Worksheet(of, ()), CardWishes())


def fronts(text: CardText, panel: Panel) -> list[Fronts]:
    return fronts_by(text, needed_widths(text.told, scale()), panel)


def shown(front: Fronts) -> list[str]:
    return [words(side.face("front")) for side in front.sides]


def test_a_short_leader_is_drawn_and_told_how_to_be_tied() -> None:
    text = of_sections(3)
    front, *_ = fronts(text, ID_1)
    (face,) = shown(front)
    assert front.drawn
    assert text.how_to in face
    assert "60 in" in face  # 10 + 20 + 30, at the butt's end of the drawing
    assert front.left == ()


def test_six_sections_are_drawn_over_their_table_on_a_bank_card() -> None:
    front, *_ = fronts(card_text(JOB, Worksheet(leader(SIX), ()), CardWishes()), ID_1)
    assert front.drawn
    assert len(front.sides) == 1
    assert faults(front.sides[0].face("front"), INSET) == []


@pytest.mark.parametrize("count", [1, 4, 6, 8, 11, 17, 25])
def test_what_finds_no_room_is_left_and_no_row_is_lost(count: int) -> None:
    text = of_sections(count)
    for front in fronts(text, ID_1):
        everything = " ".join(shown(front))
        assert (text.how_to in everything) != (text.how_to in front.left)
        for piece in text.told.leader.pieces:
            assert f".0{10 + 10 * (count - piece.place + 1) // 10} " in everything


@pytest.mark.parametrize("count", [11, 17, 25])
def test_a_table_of_several_sides_shares_out_its_rows(count: int) -> None:
    (front,) = fronts(of_sections(count), ID_1)
    rows = [side.count(" nylon ") for side in shown(front)]
    assert sum(rows) == count
    assert max(rows) - min(rows) <= 1


def test_a_table_wider_than_the_panel_has_no_front() -> None:
    assert fronts(of_sections(3), Panel(card_size("30x54mm"), scale())) == []
