"""What the terminal says of a leader follows the shop's language; JSON and help do not."""

import json
from pathlib import Path

import pytest

from tests.cards.cli.conftest import Tagend


def test_the_audit_is_told_in_the_shops_language(tagend: Tagend, demo: Path) -> None:
    hasty, shop = demo / "hasty-seven.toml", demo / "taller.toml"
    told, english = (tagend("check", hasty, *more).out for more in (("--shop", shop), ()))
    assert "  error: la receta dice 2,74 m" in told
    assert "[step; calculado para una cuerda ideal]" in told
    assert "4 tramos" in told
    assert len(told.splitlines()) == len(english.splitlines())
    assert "the recipe says 9 ft" in english


def test_a_leader_without_a_fault_is_told_so(tagend: Tagend, demo: Path) -> None:
    run = tagend("check", demo / "millrace-three.toml", "--shop", demo / "taller.toml")
    assert "nada que objetar" in run.out


def test_cuts_are_listed_in_the_shops_language(tagend: Tagend, demo: Path) -> None:
    shop = ("--shop", demo / "taller.toml")
    run = tagend("cuts", demo / "sandbar-eight.toml", "--explain", *shop)
    for words in ("CORTE", "en el talón: lazo perfecto", "nailon duro", "nudo al siguiente"):
        assert words in run.out
    assert " 4 vueltas a 2 hilos de 0,51 mm" in run.out  # 0.020 in
    assert not {"section", "butt", "blood", "nylon", "knot", "the"} & set(run.out.split())


def test_what_is_heeded_beside_the_cuts_is_told_alike(tagend: Tagend, demo: Path) -> None:
    hasty, shop = demo / "hasty-seven.toml", demo / "taller.toml"
    run = tagend("cuts", hasty, "--shop", shop)
    assert run.err.splitlines()[0].startswith("Hasty seven: error: la receta dice")


def test_renewals_are_told_in_the_shops_language(tagend: Tagend, demo: Path) -> None:
    recipe, shop = demo / "gravel-five.toml", ("--shop", demo / "taller.toml")
    assert "da para 1 y quedan 29,1 cm" in tagend("renew", recipe, *shop).out
    used = tagend("renew", recipe, "--left", "1: 40 in, 3: 5 in", *shop).out
    assert "1 tramo que cortar" in used


def test_leaders_are_compared_in_the_shops_language(tagend: Tagend, demo: Path) -> None:
    recipes = (demo / "sandbar-eight.toml", demo / "millrace-three.toml")
    run = tagend("compare", *recipes, "--shop", demo / "taller.toml")
    assert "peor unión" in run.out
    assert "worst joint" in tagend("compare", *recipes).out


def test_a_shop_file_in_the_environment_counts_too(
    tagend: Tagend, demo: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("TAGEND_SHOP", str(demo / "taller.toml"))
    assert "nada que objetar" in tagend("check", demo / "millrace-three.toml").out


@pytest.mark.parametrize("command", ["check", "cuts", "renew"])
def test_json_stays_english(tagend: Tagend, demo: Path, command: str) -> None:
    hasty, shop = demo / "hasty-seven.toml", demo / "metric.toml"
    shop.write_text('units = "cm"\n', encoding="utf-8")
    metric = tagend(command, hasty, "--json", "--shop", shop).out
    shop.write_text('units = "cm"\nlanguage = "es"\n', encoding="utf-8")
    assert tagend(command, hasty, "--json", "--shop", shop).out == metric
    assert {each["standing"] for each in json.loads(metric)["warnings"]} >= {"arithmetic"}


def test_help_stays_english(tagend: Tagend, demo: Path) -> None:
    shop = ("--shop", demo / "taller.toml")
    assert tagend("check", *shop, "--help").out == tagend("check", "--help").out


def test_what_a_person_wrote_is_refused_in_the_shops_language(tagend: Tagend, demo: Path) -> None:
    recipe, shop = demo / "millrace-three.toml", ("--shop", demo / "taller.toml")
    recipe.write_text(recipe.read_text("utf-8").replace("length", "lenght", 1), encoding="utf-8")
    run = tagend("check", recipe, *shop)
    assert run.status == 2
    assert any("falta esta clave; escribir length = …" in fault for fault in run.faults)
    assert "this key is missing" in tagend("check", recipe).err
    assert "no existe ese archivo" in tagend("check", demo / "nowhere.toml", *shop).err


def test_a_broken_shop_file_is_told_in_the_language_that_it_names(
    tagend: Tagend, demo: Path
) -> None:
    shop = demo / "taller.toml"
    shop.write_text(shop.read_text("utf-8") + 'tapes = "5 mm"\n', encoding="utf-8")
    run = tagend("check", demo / "millrace-three.toml", "--shop", shop)
    (fault,) = run.faults
    assert fault.startswith(f"{shop}: ninguna clave se llama 'tapes'; ¿se quería decir tape o ")


def test_an_option_is_refused_in_the_shops_language(tagend: Tagend, demo: Path) -> None:
    asked = ("propose", "--rack", demo / "rack.toml", "--tippet", "4X nylon", "--butt", "0.023 in")
    run = tagend(*asked, "--total", "9", "--shop", demo / "taller.toml", "-o", demo / "out.toml")
    assert run.faults[0].startswith("total: '9' no lleva unidad; escribir una longitud")


def test_a_language_that_is_none_is_refused_in_english(tagend: Tagend, demo: Path) -> None:
    shop = demo / "taller.toml"
    shop.write_text('language = "xx"\n', encoding="utf-8")
    run = tagend("check", demo / "millrace-three.toml", "--shop", shop)
    assert run.status == 2
    assert "no language is called 'xx'" in run.err
