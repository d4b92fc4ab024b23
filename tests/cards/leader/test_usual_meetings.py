"""Strands as they often meet: the knot that is usual there fits, one of elsewhere does not."""

from typing import get_args

import pytest

from tagend.cards.leader.usual_meetings import fitting
from tagend.cards.practice.practice import Meets
from tests.written import PRACTICE


@pytest.mark.parametrize("meets", get_args(Meets))
def test_the_usual_knot_fits(meets: Meets) -> None:
    assert PRACTICE.choice[meets].usual[0] in fitting(meets, PRACTICE)


def test_what_cannot_be_tied_there_does_not_fit() -> None:
    names = {meets: {knot.name for knot in fitting(meets, PRACTICE)} for meets in get_args(Meets)}
    assert "blood" in names["same line"]
    for meets in ("wire", "nylon to fluorocarbon", "butt", "fly"):
        assert "blood" not in names[meets]
