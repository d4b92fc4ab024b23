"""A shop that speaks Spanish is told in Spanish what its book, kept in English, says was done."""

import shutil
from pathlib import Path

import pytest

from tagend.cards.desk.book_spools import correct
from tagend.cards.desk.desk import Desk
from tagend.cards.desk.page import refusals
from tagend.cards.desk.tying import start
from tagend.layouts.base.faults import Refused
from tests.cards.desk.conftest import SAMPLES


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    (tmp_path / "shop.toml").write_text('language = "es"\n')
    shutil.copy(SAMPLES / "rack.toml", tmp_path)
    return Desk(tmp_path)


def test_what_was_done_is_told_in_spanish(desk: Desk) -> None:
    assert start(desk, {"rack": True, "who": "Ada"})["told"] == "10 bobinas añadidas"


def test_what_the_page_refuses_is_told_in_spanish(desk: Desk) -> None:
    start(desk, {"rack": True})
    with pytest.raises(Refused) as refusal:
        correct(desk, {"spool": "Clear 8", "entry": 1})
    (fault,) = refusals(desk, refusal.value)
    assert fault == {
        "where": "left",
        "text": "aquí no hay nada escrito; escribir lo que queda en ella",
    }
