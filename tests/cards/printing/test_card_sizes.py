"""Cards and labels of a leader: what holds it, and what to use where that does not."""

import re
from collections.abc import Sequence
from itertools import pairwise

import pytest
from hypothesis import given, settings

from tagend.cards.base.units import parse_diameter, parse_line_length
from tagend.cards.faces.card_text import CardText
from tagend.cards.leader.leader import Leader
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.practice.rack_file import Rack, Spool
from tagend.cards.printing.card_sizes import CardSizes, cards_of, paired, size_for_all
from tagend.cards.printing.cards import CardWishes, card_text
from tagend.cards.words.cautions import cautions
from tagend.cards.words.language import ENGLISH
from tagend.fonts import OURS
from tagend.layouts.base.faults import Refused
from tagend.layouts.paper.face import Face
from tagend.layouts.sheets.cutouts import Card
from tagend.layouts.stock.formats import CardSize
from tagend.layouts.stock.stock import card_size, shipped
from tests.seen import runs, words
from tests.tieable import counts, seeds, tieable
from tests.told import JOB
from tests.written import SIX, leader, recipe, section

KNOWN = tuple(shipped().cards.values())
ID_1 = card_size("ID-1")
TINY = card_size("40x30mm")
TOO_SMALL = CardSize("too small", 60, 40)  # points: for the code of any leader
SALT = leader(SIX)


def says(of: Leader, wishes: CardWishes | None = None) -> CardText:
    return card_text(JOB, Worksheet(of, ()), wishes or CardWishes())


def cards(
    text: CardText, size: CardSize, known: Sequence[CardSize] = KNOWN, *, grows: bool = False
) -> tuple[Card, ...]:
    return cards_of(text, CardSizes(size, tuple(known), grows, OURS)).cards


def test_a_wire_leaders_card_warns_of_wire() -> None:
    wire = leader(recipe(section("3 ft", "0.015 in"), section("6 in", "0.012 in", "wire")))
    (warned,) = (caution for caution in cautions(ENGLISH, "wire") if caution.when == "wire")
    told = says(wire)
    assert warned in told.cautions
    assert warned not in says(SALT).cautions
    (card,) = cards(told, card_size("A6"))
    shown = " ".join(words(face) for face in (card.front, card.back) if face is not None)
    assert warned.short.replace("'", "’") in shown.replace("'", "’")


def refusal(text: CardText, size: CardSize) -> str:
    with pytest.raises(Refused) as caught:
        cards(text, size)
    return str(caught.value)


def offered(message: str) -> list[str]:
    found = re.search(r"use --size (.+)$", message)
    assert found, message
    return found[1].split(" or ")


def test_a_leader_that_fits_is_one_card_with_its_back() -> None:
    card, *_ = cards(says(SALT, CardWishes(taught=False)), card_size("index-3x5"))
    assert card.back is not None
    assert "CUT" in words(card.front)


def test_sides_are_paired_and_the_last_back_may_be_blank() -> None:
    sides = [Face(str(k), 100, 50, ()) for k in range(5)]
    cards = paired(sides)
    assert [(c.front.name, c.back and c.back.name) for c in cards] == [
        ("0", "1"), ("2", "3"), ("4", None),
    ]  # fmt: skip


def test_a_card_that_is_too_small_is_refused_with_up_to_three_that_are_not() -> None:
    message = refusal(says(SALT), TINY)
    assert message.startswith(
        "Under test: this leader needs more room than 40 × 30 mm in type that can be read; use "
    )
    sizes = offered(message)
    assert 1 <= len(sizes) <= 3
    for name in sizes:
        assert cards(says(SALT), card_size(name))


def test_the_smallest_that_would_do_is_named_first() -> None:
    areas = [card_size(name) for name in offered(refusal(says(SALT), TINY))]
    assert all(a.width * a.height <= b.width * b.height for a, b in pairwise(areas))
    smaller = [c for c in KNOWN if c.width * c.height < areas[0].width * areas[0].height]
    for size in smaller:
        refusal(says(SALT), size)


def test_a_leader_for_no_known_card_says_so() -> None:
    with pytest.raises(Refused, match="no card known here is large enough"):
        cards(says(SALT), TINY, [TINY])


@given(seeds, counts)
@settings(max_examples=15, deadline=None)
def test_every_size_that_is_offered_fits(seed: int, count: int | None) -> None:
    text = says(tieable(seed, count))
    for name in offered(refusal(text, TOO_SMALL)):
        assert cards(text, card_size(name))


@given(seeds, counts)
@settings(max_examples=15, deadline=None)
def test_the_size_that_is_named_for_all_is_the_smallest_whose_card_lacks_nothing(
    seed: int, count: int | None
) -> None:
    text = says(tieable(seed, count))
    larger = CardSizes(ID_1, KNOWN, grows=True, fonts=OURS).to_try()[1:]
    whole = [size.name for size in larger if lacks_nothing(text, size)]
    assert size_for_all([text], CardSizes(ID_1, KNOWN, grows=False, fonts=OURS)) == (
        whole[0] if whole else None
    )


def lacks_nothing(text: CardText, size: CardSize) -> bool:
    try:
        made = cards_of(text, CardSizes(size, (), grows=False, fonts=OURS))
    except Refused:
        return False
    return len(made.cards) == 1 and not made.missing


def test_large_type_takes_a_larger_card_where_it_must() -> None:
    (large,) = cards(says(SALT, CardWishes(large=True, taught=False)), ID_1, grows=True)
    assert large.front.width * large.front.height > ID_1.width * ID_1.height
    usual, *_ = cards(says(SALT), ID_1, grows=True)
    assert (usual.front.width, usual.front.height) == (ID_1.width, ID_1.height)


def test_a_person_s_own_spools_are_named_in_the_table() -> None:
    stiff = Spool("Stiff 25", "hard nylon", parse_diameter("0.023 in"), parse_line_length("40 yd"))
    front = cards(says(SALT, CardWishes(rack=Rack((stiff,)))), ID_1)[0].front
    texts = [run.text for run in runs(front)]
    assert "Stiff 25" in texts
    assert "fluorocarbon" in texts  # a line that is not on the rack keeps its name
    assert "spool" in texts


def test_what_to_buy_is_listed_where_it_is_asked_for() -> None:
    sides = [
        side
        for card in cards(says(SALT, CardWishes(shopping=12)), ID_1)
        for side in (card.front, card.back)
        if side
    ]
    text = " ".join(words(side) for side in sides)
    assert "For 12 leaders, buy:" in text
    # 12 × 57 1/4 in = 687 in = 19.08 yd
    assert "19.1 yd of 0.023 in hard nylon" in text
