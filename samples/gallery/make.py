"""The gallery: the sample files in, a picture of every kind of page out, as the program makes it.

    python -m tagend.samples.gallery.make

It is run from the top of the tree.

Each picture carries the text of its page; by that and by its looks a test tells that it is out of
date.
"""

import io
import shlex
import tempfile
from collections.abc import Iterator
from contextlib import redirect_stdout
from pathlib import Path

from msgspec import Struct
from PIL import Image
from PIL.PngImagePlugin import PngInfo
from pypdfium2 import PdfDocument

from tagend.cards.cli import commands

FOLDER = Path("samples/gallery")
TEXT = "Page text"  # the keyword under which a picture carries it

_BORDER = 12  # pixels of white around what is printed
_DARK = 128  # greys below this are printed
_GREYS = 16  # tell lines from their soft edges, in a third of the bytes


class Sample(Struct, frozen=True):
    """One picture: a command, where `demo/` stands for the samples, and a page of its PDF."""

    name: str
    command: str
    page: int = 1
    dpi: int = 200


PICTURES = (
    Sample("card", "cards demo/sandbar-eight.toml --shop demo/shop.toml"),
    Sample("card-eight-sections", "cards demo/reedbed-six.toml --shop demo/shop.toml"),
    Sample("card-a6", "cards demo/gravel-five.toml --size A6 --shop demo/shop.toml", dpi=120),
    Sample("card-spools", "cards demo/sandbar-eight.toml --rack demo/rack.toml --brief"),
    Sample("card-large-type", "cards demo/breakwater-ten.toml --type large --brief", dpi=150),
    Sample("card-spanish", "cards demo/millrace-three.toml --shop demo/taller.toml", dpi=120),
    Sample("knots", "cards demo/sandbar-eight.toml demo/reedbed-six.toml --knots"),
    Sample("press", "cards demo/millrace-three.toml --size business-EU --brief --press", dpi=150),
    Sample(
        "labels",
        "labels demo/sandbar-eight.toml --count 6 --start 4 --numbered --tied 2026-05-31 "
        "--first butt --test-box",
    ),
    Sample(
        "labels-large",
        "labels demo/gravel-five.toml --stock letter-2x5-101.6x50.8 --first fly --test-box",
    ),
    Sample("labels-square", "labels demo/millrace-three.toml --stock letter-3x4-50.8sq"),
    Sample("labels-roll", "labels demo/millrace-three.toml --stock roll-29x90 --numbered"),
    Sample(
        "bench",
        "bench demo/sandbar-eight.toml --count 12 --rack demo/rack.toml --shop demo/shop.toml",
        dpi=90,
    ),
    Sample(
        "bench-batch",
        "book print 1 --bench --book demo/season.db --shop demo/shop.toml",
        dpi=90,
    ),
    Sample(
        "pull",
        "book recall --lot 'K 114' --on 2026-06-20 --book demo/season.db --shop demo/shop.toml",
        dpi=90,
    ),
    Sample(
        "compare",
        "compare demo/sandbar-eight.toml demo/reedbed-six.toml --shop demo/shop.toml",
        dpi=90,
    ),
    Sample("counter", "counter demo/*-*.toml --anyway --shop demo/shop.toml", dpi=90),
    Sample(
        "deck",
        "cards demo/sandbar-eight.toml demo/gravel-five.toml --deck --hole --size A7 "
        "--shop demo/shop.toml",
        dpi=110,
    ),
    Sample(
        "deck-reference",
        "cards demo/millrace-three.toml --brief --deck --size A7 --shop demo/shop.toml",
        dpi=110,
    ),
    Sample("pouch", "cards demo/millrace-three.toml --brief --wet", page=2, dpi=110),
    Sample("stock", "stock letter-3x10-66.7x25.4", dpi=70),
    Sample("calibrate", "calibrate --backs long-edge", dpi=70),
)


# What the book of the gallery knows.
SEASON = (
    "book start --rack demo/rack.toml",
    "book tie demo/sandbar-eight.toml=12 demo/breakwater-ten.toml=6 --tied 2026-03-14 "
    "--shop demo/shop.toml",
    "book mark 3-4 fished --on 2026-05-02",
    "book mark 7-8 given --on 2026-05-30 --remark 'to the man with the blue skiff'",
    "book mark 11 discarded --on 2026-06-01 --remark 'wind knots'",
)


def drawn(picture: Sample, folder: Path) -> tuple[bytes, str]:
    """Return the PDF of a picture's command and the text of its page; `folder` is for its files."""
    pdf = folder / f"{picture.name}.pdf"
    commands.main([*_words(picture.command, folder), "-o", str(pdf)], standalone_mode=False)
    return pdf.read_bytes(), _page_text(pdf.read_bytes(), picture.page)


def rendered(pdf: bytes, picture: Sample) -> Image.Image:
    """Return a page in greys, cropped to what is printed."""
    with PdfDocument(pdf) as document:
        page = document[picture.page - 1].render(scale=picture.dpi / 72, grayscale=True)
    image: Image.Image = page.to_pil()
    # The soft edges of what is printed differ from one renderer to the next.
    dark = image.point(lambda grey: 255 * (grey < _DARK))
    left, top, right, bottom = dark.getbbox() or (0, 0, *image.size)
    return image.crop((left - _BORDER, top - _BORDER, right + _BORDER, bottom + _BORDER))


def png(image: Image.Image, text: str) -> bytes:
    """Return a picture's file, which carries the text of its page."""
    info = PngInfo()
    info.add_itxt(TEXT, text)
    data = io.BytesIO()
    image.quantize(_GREYS).save(data, "PNG", optimize=True, pnginfo=info)
    return data.getvalue()


def with_samples() -> tempfile.TemporaryDirectory[str]:
    """Return a folder that holds the samples in `demo`, and a book of a season there."""
    folder = tempfile.TemporaryDirectory()
    commands.main(["samples", str(Path(folder.name) / "demo")], standalone_mode=False)
    for command in SEASON:
        words = [*_words(f"{command} --book demo/season.db", Path(folder.name))]
        with redirect_stdout(io.StringIO()):
            commands.main(words, standalone_mode=False)
    return folder


def _words(command: str, folder: Path) -> Iterator[str]:
    """Yield the words of a command, its samples found in the folder."""
    for word in shlex.split(command):
        if not word.startswith("demo/"):
            yield word
        elif "*" in word:
            yield from sorted(map(str, folder.glob(word)))
        else:
            yield str(folder / word)


def _page_text(pdf: bytes, number: int) -> str:
    with PdfDocument(pdf) as document:
        text: str = document[number - 1].get_textpage().get_text_bounded()
    return text


def _make() -> None:
    with with_samples() as folder:
        for picture in PICTURES:
            pdf, text = drawn(picture, Path(folder))
            (FOLDER / f"{picture.name}.png").write_bytes(png(rendered(pdf, picture), text))
    for old in set(FOLDER.glob("*.png")) - {FOLDER / f"{p.name}.png" for p in PICTURES}:
        if not old.name.startswith("desk-"):  # the screens are made elsewhere, by a browser
            old.unlink()


if __name__ == "__main__":
    _make()
