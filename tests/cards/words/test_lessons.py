"""How a knot is tied in words: nothing is left in a step that is still to be put in."""

import pytest

from tagend.cards.practice.knot_file import load_knots
from tagend.cards.practice.knots import LENGTHS, TIED, Knot, Sides
from tagend.cards.words.knot_words import knot_in
from tagend.cards.words.language import ENGLISH, languages, wording_in
from tagend.cards.words.lessons import counted


def test_turns_and_lengths_are_put_into_their_steps() -> None:
    step, lap = counted(
        ["{heavy} and {light}", "by {lap}"], [Sides(4, 6)], {"lap": "9 3/4 in"}, ENGLISH
    )
    assert step == "4 and 6"
    assert lap == "by 9 3/4 in"


@pytest.mark.parametrize("language", languages())
@pytest.mark.parametrize("knot", load_knots().rows, ids=lambda knot: knot.name)
def test_nothing_is_left_to_be_put_in(knot: Knot, language: str) -> None:
    wording = wording_in(language, None)
    steps = counted(
        knot_in(wording, knot).steps,
        [Sides(4, 6)],
        dict.fromkeys((*LENGTHS, *TIED), "6 in"),
        wording,
    )
    assert not {"{", "}"} & set("".join(steps))
