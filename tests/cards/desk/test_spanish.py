"""A shop that speaks Spanish is told in Spanish what its book, kept in English, says was done."""

import shutil
from pathlib import Path

import pytest
from starlette.requests import Request
from starlette.responses import Response

from tagend.cards.desk.book_spools import correct
from tagend.cards.desk.bring import look
from tagend.cards.desk.desk import Desk
from tagend.cards.desk.leader_drawn import drawn
from tagend.cards.desk.leaders import leaders_page
from tagend.cards.desk.page import refusals
from tagend.cards.desk.proposing import proposed
from tagend.cards.desk.tying import start
from tagend.cards.practice.shop_file import Shop
from tagend.cards.printing.job import job_of
from tagend.cards.recipe.recipe_file import read_recipe
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


def test_a_card_that_is_too_small_is_told_in_spanish() -> None:
    job = job_of(Shop(language="es"))
    recipe = read_recipe((SAMPLES / "sandbar-eight.toml").read_bytes(), job.practice)
    told = drawn(job, recipe, {"size": "20 x 20 mm"})["no_card"]
    assert told.startswith("Sandbar eight: este bajo no cabe en 20 × 20 mm")
    assert told.endswith("; usar tamaño business-US, ID-1 o business-EU")


def test_what_is_put_right_of_a_spool_is_told_in_spanish(desk: Desk) -> None:
    start(desk, {"rack": True})
    told = correct(desk, {"spool": "Clear 8", "entry": 1, "left": "20 yd", "lot": "R 2"})["told"]
    assert told == "Clear 8: lote R 2, quedan 20 yd"


def test_a_taper_is_called_after_its_measures_in_spanish(desk: Desk) -> None:
    asked = {"total": "9 ft", "butt": "0.021 in", "tippet": "0.015 in", "butt_share": "60"}
    said = {
        **asked,
        "taper_share": "20",
        "tippet_share": "20",
        "diameters": "0.021 in, 0.018 in, 0.015 in",
    }
    (recipe, *_) = proposed(desk, said)["recipes"]
    assert 'name = "9 ft, de 0,021 in a 0,015 in"' in recipe


def test_a_leader_that_cannot_be_read_is_told_in_spanish(desk: Desk) -> None:
    (desk.folder / "reed.toml").write_text('[[section]]\nlength = "30 in"\n')
    shown = leaders_page(desk, Request({"type": "http"}))
    assert isinstance(shown, Response)
    assert "falta esta clave" in bytes(shown.body).decode()


def test_a_row_that_is_left_out_is_told_in_spanish(desk: Desk) -> None:
    rows = b"{}\nName,Butt length (in),Butt diameter (in)\nReed,30,0.023\nof 2025,,\n"
    (told,) = look(desk, "reed.csv", rows)["left_out"]
    assert told == "A3: 'of 2025' está solo"
