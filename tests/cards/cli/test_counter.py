"""`tagend counter`: every recipe of a shop at a glance, from the files to the page."""

from pathlib import Path

import zxingcpp

from tests.cards.cli.conftest import Tagend
from tests.layouts.drawn import page_image, text


def test_every_recipe_stands_on_the_page_with_the_shops_name(tagend: Tagend, demo: Path) -> None:
    out = demo / "counter.pdf"
    recipes = [demo / "sandbar-eight.toml", demo / "reedbed-six.toml"]
    own = 'name = "Gable and Reel"\naddress = "2 No Such Street"\nline = "Tied to order"\n'
    (demo / "own.toml").write_text(own, encoding="utf-8")
    run = tagend("counter", *recipes, "--shop", demo / "own.toml", "-o", out)
    assert (run.status, run.out) == (0, "")
    page = text(out.read_bytes())
    for words in ("Gable and Reel", "2 No Such Street", "Tied to order"):
        assert words in page
    for words in ("Sandbar eight", "Reedbed six"):
        assert words in page


def test_codes_are_left_out_where_nobody_wants_them(tagend: Tagend, demo: Path) -> None:
    found = {}
    for options in ((), ("--no-codes",)):
        out = demo / "counter.pdf"
        tagend("counter", demo / "sandbar-eight.toml", *options, "-o", out)
        found[options] = len(zxingcpp.read_barcodes(page_image(out.read_bytes(), 150)))
    assert found == {(): 1, ("--no-codes",): 0}


def test_a_wrong_recipe_is_told_and_nothing_is_written(tagend: Tagend, demo: Path) -> None:
    wrong = demo / "wrong.toml"
    wrong.write_text('name = "Short"\n[[section]]\nlength = "30"\n', encoding="utf-8")
    run = tagend("counter", demo / "sandbar-eight.toml", wrong, "-o", demo / "counter.pdf")
    assert run.status == 2
    assert any(str(wrong) in fault for fault in run.faults)
    assert not (demo / "counter.pdf").exists()
