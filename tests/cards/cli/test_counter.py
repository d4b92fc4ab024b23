"""`tagend counter`: every recipe of a shop at a glance, from the files to the page."""

from pathlib import Path

from tests.cards.cli.conftest import Tagend
from tests.layouts.drawn import text


def test_every_recipe_stands_on_the_page_with_the_shops_name(tagend: Tagend, demo: Path) -> None:
    out = demo / "counter.pdf"
    recipes = [demo / "sandbar-eight.toml", demo / "reedbed-six.toml"]
    (demo / "own.toml").write_text('name = "Gable and Reel"\n', encoding="utf-8")
    run = tagend("counter", *recipes, "--shop", demo / "own.toml", "-o", out)
    assert (run.status, run.out) == (0, "")
    page = text(out.read_bytes())
    for words in ("Gable and Reel", "Sandbar eight", "Reedbed six"):
        assert words in page


def test_a_wrong_recipe_is_told_and_nothing_is_written(tagend: Tagend, demo: Path) -> None:
    wrong = demo / "wrong.toml"
    wrong.write_text('name = "Short"\n[[section]]\nlength = "30"\n', encoding="utf-8")
    run = tagend("counter", demo / "sandbar-eight.toml", wrong, "-o", demo / "counter.pdf")
    assert run.status == 2
    assert any(str(wrong) in fault for fault in run.faults)
    assert not (demo / "counter.pdf").exists()
