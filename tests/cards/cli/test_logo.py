"""A shop's logo is read from beside the shop file and shown, or told of in one line."""

import os
import subprocess
import sys
from pathlib import Path

import pytest
from PIL import Image

from tests.cards.cli.conftest import Tagend
from tests.layouts.drawn import page_image
from tests.pictures import file_of
from tests.tree import ROOT


def shop_with(demo: Path, logo: str) -> Path:
    shop = demo / "own.toml"
    shop.write_text(f'name = "The Wrack Line Bench"\nlogo = "{logo}"\n')
    return shop


@pytest.mark.parametrize(
    "command", [("cards",), ("cards", "--deck"), ("counter",)], ids=["cards", "deck", "counter"]
)
def test_a_logo_beside_the_shop_file_is_shown(
    tagend: Tagend, demo: Path, command: tuple[str, ...]
) -> None:
    (demo / "marks").mkdir()
    (demo / "marks" / "logo.png").write_bytes(file_of(Image.new("L", (50, 40), 136)))
    recipe, out = demo / "sandbar-eight.toml", demo / "out.pdf"

    def grey_dots(*more: str | Path) -> int:
        """Return how many dots have the logo's grey, which no other ink has."""
        assert tagend(*command, recipe, *more, "-o", out).status == 0
        return page_image(out.read_bytes(), 144).histogram()[136]

    shop = shop_with(demo, "marks/logo.png")
    # Two lines of 7.5 pt are 17 pt high; at 144 dpi 34 dots, by 43 across.
    assert grey_dots("--shop", shop) > 1200 + grey_dots()


def test_a_shop_of_another_command_need_not_have_its_logo(tagend: Tagend, demo: Path) -> None:
    shop = shop_with(demo, "gone.png")
    recipe, out = demo / "sandbar-eight.toml", demo / "out.pdf"
    assert tagend("labels", recipe, "--shop", shop, "-o", out).status == 0
    assert tagend("check", recipe, "--shop", shop).status == 0


@pytest.mark.parametrize(
    ("name", "data", "told"),
    [
        ("gone.png", None, "there is no such file; check its name and folder"),
        (
            "a.gif",
            b"GIF89a",
            "this is no picture of a kind known here; give a PNG, JPEG, SVG or PDF file",
        ),
        (
            "a.svg",
            b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><text>Wrack</text></svg>',
            "this SVG holds text, which is not drawn; convert its text to paths",
        ),
    ],
)
def test_a_logo_that_cannot_serve_is_told_with_its_file(
    tagend: Tagend, demo: Path, name: str, data: bytes | None, told: str
) -> None:
    if data is not None:
        (demo / name).write_bytes(data)
    shop, out = shop_with(demo, name), demo / "x.pdf"
    run = tagend("cards", demo / "sandbar-eight.toml", "--shop", shop, "-o", out)
    assert run.status == 2
    assert run.faults == [f"{shop}: logo: {demo / name}: {told}"]
    assert not out.exists()


def test_the_same_logo_gives_the_same_bytes_in_any_process(demo: Path) -> None:
    made = []
    for seed in ("1", "2"):
        out = demo / f"{seed}.pdf"
        arguments = ["cards", demo / "sandbar-eight.toml", "--shop", demo / "shop.toml", "-o", out]
        subprocess.run(
            [sys.executable, "-m", "tagend.cards"] + [str(argument) for argument in arguments],
            cwd=ROOT,
            env={**os.environ, "PYTHONHASHSEED": seed},
            check=True,
            capture_output=True,
        )
        made.append(out.read_bytes())
    assert made[0] == made[1]
