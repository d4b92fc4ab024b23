"""The gallery shows what the program prints today: the text of each page is compared."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from tagend.samples.gallery.make import FOLDER, PICTURES, Sample, carried, drawn, with_samples
from tests.tree import ROOT


@pytest.fixture(scope="module")
def folder() -> Iterator[Path]:
    with with_samples() as name:
        yield Path(name)


@pytest.mark.parametrize("picture", PICTURES, ids=lambda picture: picture.name)
def test_a_picture_is_up_to_date(picture: Sample, folder: Path) -> None:
    _, text = drawn(picture, folder)
    assert _letters(carried(picture, ROOT / FOLDER)) == _letters(text), STALE


STALE = "write: python -m tagend.samples.gallery.make"


def _letters(text: str) -> str:
    """Return a text without its spaces, of which readers of PDFs find now more, now fewer."""
    return "".join(text.split())


def test_no_picture_is_left_over() -> None:
    assert {file.stem for file in (ROOT / FOLDER).glob("*.png")} == {
        picture.name for picture in PICTURES
    }


def test_the_readme_shows_pictures_that_there_are() -> None:
    readme = (ROOT / "README.md").read_text()
    shown = re.findall(r"\((samples/gallery/[^)]+)\)", readme)
    assert shown
    for picture in shown:
        assert (ROOT / picture).is_file()
