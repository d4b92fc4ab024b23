"""Whatever is wrong in a file, it is refused in words; no reader ever fails.

Each reader is tried for a moment; for longer where TAGEND_TRY says how many seconds.
"""

import os
import time
from collections.abc import Callable
from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image

from tagend.cards import common_practice, job_of, worksheet
from tagend.cards.code.notation import read_notation, write_notation
from tagend.cards.practice.rack_file import read_rack
from tagend.cards.practice.shop_file import practice_of, read_shop
from tagend.cards.printing.recover import recipes_in
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.cards.recipe.recipe_text import recipe_text
from tagend.cards.tables.columns_file import read_columns_file
from tagend.cards.tables.open_table import open_table
from tagend.cards.tables.read_recipes import read_table
from tagend.cards.tables.read_spools import read_spool_table
from tagend.cards.tables.write_recipes import xlsx_table
from tagend.fonts import fonts_with
from tagend.layouts.base.faults import Refused
from tagend.layouts.logo.logo_file import read_logo
from tagend.layouts.strangers.unreadable import Unreadable
from tests.fonts.made import truetype
from tests.mutations import mutations
from tests.pictures import code_picture, file_of
from tests.tree import BROKEN, SAMPLES

SECONDS = float(os.environ.get("TAGEND_TRY", "0.5"))

PRACTICE = common_practice()


def recipe(data: bytes) -> None:
    """Read a recipe, and what becomes of it: it comes back the same from its text and its code."""
    read = read_recipe(data, PRACTICE)
    assert recipe_text(read_recipe(recipe_text(read).encode(), PRACTICE)) == recipe_text(read)
    worksheet(read, PRACTICE)
    text = write_notation(read, PRACTICE.knots, PRACTICE.materials)
    assert read_notation(text, PRACTICE.knots, PRACTICE.materials).name == read.name


def shop(data: bytes) -> None:
    said = read_shop(data)
    practice_of(said)
    if said.font is None:
        job_of(said)


def samples(pattern: str) -> list[bytes]:
    return [path.read_bytes() for path in sorted((*SAMPLES.glob(pattern), *BROKEN.glob(pattern)))]


def recipes() -> list[Recipe]:
    names = ("sandbar-eight", "reedbed-six", "gravel-five")
    return [read_recipe((SAMPLES / f"{name}.toml").read_bytes(), PRACTICE) for name in names]


def codes() -> list[bytes]:
    written = (write_notation(one, PRACTICE.knots, PRACTICE.materials) for one in recipes())
    return [text.encode() for text in written]


SVG = b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path d="M0 0h9v9z"/></svg>'


def pdfs() -> list[bytes]:
    return [file_of(Image.new("L", (60, 40)), "PDF")]


def turned() -> bytes:
    out, exif = BytesIO(), Image.Exif()
    exif[0x0112] = 6
    Image.new("RGB", (60, 40)).save(out, "JPEG", exif=exif)
    return out.getvalue()


CASES: dict[str, tuple[Callable[[bytes], object], Callable[[], list[bytes]]]] = {
    "recipe": (recipe, lambda: samples("*.toml")),
    "rack": (
        lambda data: read_rack(data, PRACTICE),
        lambda: [(SAMPLES / "rack.toml").read_bytes()],
    ),
    "shop": (shop, lambda: [(SAMPLES / name).read_bytes() for name in ("shop.toml", "hands.toml")]),
    "table": (lambda data: read_table(data, PRACTICE), lambda: samples("*.csv")),
    "columns": (
        read_columns_file,
        lambda: [b'[missing]\nunits = "in, lb"\n\n[columns]\n"Butt dia" = "diameter"\n'],
    ),
    "spools": (
        lambda data: read_spool_table(data, PRACTICE),
        lambda: [b"label,material,diameter,left,lot\nStiff,nylon,0.017 in,30 yd,K 1\n"],
    ),
    "code": (lambda data: recipes_in(data, PRACTICE), codes),
    "workbook": (open_table, lambda: [xlsx_table(recipes())]),
    "picture of a code": (
        lambda data: recipes_in(data, PRACTICE),
        lambda: [file_of(code_picture("TAG"), kind) for kind in ("PNG", "JPEG", "WEBP")],
    ),
    "pages": (lambda data: recipes_in(data, PRACTICE), pdfs),
    "logo": (read_logo, lambda: [SVG, turned(), file_of(Image.new("L", (60, 40))), *pdfs()]),
}


def tried(read: Callable[[bytes], object], valid: list[bytes]) -> None:
    end = time.monotonic() + SECONDS
    for data in mutations(valid):
        try:
            read(data)
        except (Refused, Unreadable):
            pass
        except Exception as error:
            raise AssertionError(f"over {data!r}") from error
        if time.monotonic() > end:
            return


@pytest.mark.parametrize("case", CASES)
def test_a_broken_file_is_refused_in_words(case: str) -> None:
    read, valid = CASES[case]
    tried(read, valid())


def test_a_broken_font_is_refused_in_words(tmp_path: Path) -> None:
    path = truetype(tmp_path / "own.ttf", "Жук", "Own")
    valid = path.read_bytes()

    def font(data: bytes) -> None:
        path.write_bytes(data)
        fonts_with(path)

    tried(font, [valid])
