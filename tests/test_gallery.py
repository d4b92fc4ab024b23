"""The gallery shows what the program prints today: each page's text and drawing are compared."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from PIL import Image

from tagend.cards.figures.frames import knot_frames
from tagend.cards.figures.ink import inked
from tagend.cards.practice.knot_file import load_knots
from tagend.layouts.paper.face import Face, Item, segment, shifted
from tagend.layouts.paper.face import Path as Line
from tagend.layouts.pdf.pdf import write_pdf
from tagend.layouts.sheets.sheet import Placed, Sheet
from tagend.samples.gallery.make import (
    FOLDER,
    PICTURES,
    TEXT,
    Sample,
    drawn,
    rendered,
    with_samples,
)
from tests.layouts.drawn import page_image
from tests.pictures import code_picture, differ
from tests.screens import SCREENS
from tests.tree import ROOT

STALE = "write: python -m tagend.samples.gallery.make"
# Of 255, in squares of 4 pixels: sixteen greys and another renderer make 7, by three versions of
# PDFium from 2023 to 2026; the finest rule that we print, on the coarsest picture, makes 29.
ALIKE = 16


@pytest.fixture(scope="module")
def folder() -> Iterator[Path]:
    with with_samples() as name:
        yield Path(name)


@pytest.mark.parametrize("picture", PICTURES, ids=lambda picture: picture.name)
def test_a_picture_is_up_to_date(picture: Sample, folder: Path) -> None:
    pdf, text = drawn(picture, folder)
    with Image.open(ROOT / FOLDER / f"{picture.name}.png") as shown:
        assert _letters(shown.info[TEXT]) == _letters(text), STALE
        assert differ(shown, rendered(pdf, picture)) <= ALIKE, STALE


def _letters(text: str) -> str:
    """Return a text without its spaces, of which readers of PDFs find now more, now fewer."""
    return "".join(text.split())


STRIP = knot_frames(load_knots().find("blood"), 4, 5)
STRAND = 1.3  # points, as thin as any is drawn
MOVED = 1 / 25.4 * 72  # a millimetre


def page(*items: Item) -> Image.Image:
    """Return things as the coarsest picture of the gallery shows them."""
    face = Face("page", 400, 100, items)
    pdf = write_pdf([Sheet(400, 100, (Placed(face, 0, 0),))], title="", creator="")
    return page_image(pdf, min(picture.dpi for picture in PICTURES)).convert("L")


def figure(number: int, moved: float = 0.0) -> tuple[Item, ...]:
    frame = STRIP[number]
    return shifted(inked(frame.strands, STRAND, frame.arrows), 20 + 80 * number + moved, 20)


def test_a_figure_that_moves_by_a_millimetre_is_seen() -> None:
    for number in range(len(STRIP)):
        assert differ(page(*figure(number)), page(*figure(number, MOVED))) > 2 * ALIKE


def test_a_frame_that_is_missing_is_seen() -> None:
    frames = [item for number in range(len(STRIP)) for item in figure(number)]
    assert differ(page(*frames), page(*frames[: -len(figure(len(STRIP) - 1))])) > 2 * ALIKE


def test_a_rule_that_is_missing_is_seen() -> None:
    for y in (50.0, 50.3, 50.6, 50.9):
        assert differ(page(Line(segment(20, y, 380, y), 0.35)), page()) > ALIKE


def test_another_code_is_seen() -> None:
    assert differ(code_picture("A: 46 in"), code_picture("A: 47 in")) > 2 * ALIKE


def test_no_picture_is_left_over() -> None:
    shown = {*(picture.name for picture in PICTURES), *(screen.name for screen in SCREENS)}
    assert {file.stem for file in (ROOT / FOLDER).glob("*.png")} == shown


def test_the_readme_shows_pictures_that_there_are() -> None:
    readme = (ROOT / "README.md").read_text()
    shown = re.findall(r"\((samples/gallery/[^)]+)\)", readme)
    assert shown
    for picture in shown:
        assert (ROOT / picture).is_file()
