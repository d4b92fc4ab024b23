"""Pictures of the desk's screens for the gallery: `python -m tests.screens`, with chromium.

They are of one machine's browser, so no test compares them.
"""

import shutil
from collections.abc import Callable
from io import BytesIO
from pathlib import Path
from tempfile import TemporaryDirectory

from msgspec import Struct
from PIL import Image
from playwright.sync_api import Page, sync_playwright

from tagend.cards.cli import commands
from tests.bench.desk import served
from tests.tree import SAMPLES

GALLERY = SAMPLES / "gallery"


def as_it_is(page: Page) -> None:
    """Do nothing: the screen is looked at as it opens."""


def plan(page: Page) -> None:
    page.get_by_label("Sandbar eight").first.fill("6")


def bring(page: Page) -> None:
    with page.expect_file_chooser() as chooser:
        page.locator("input[type=file]").first.click()
    chooser.value.set_files(SAMPLES / "formulas.csv")


def labels(page: Page) -> None:
    page.get_by_role("radio", name="Labels").check()


class Screen(Struct, frozen=True, kw_only=True):
    """One picture: its name, where it is, and what is done there before."""

    name: str
    path: str
    do: Callable[[Page], None] = as_it_is
    width: int = 1280
    height: int = 860
    dark: bool = False


SCREENS = (
    Screen(name="desk-leaders", path="/"),
    Screen(name="desk-leader", path="/leader/sandbar-eight.toml", height=940),
    Screen(name="desk-phone", path="/leader/reedbed-six.toml", width=390, height=844, dark=True),
    Screen(name="desk-rack", path="/rack"),
    Screen(name="desk-taper", path="/rack/taper"),
    Screen(name="desk-print", path="/print?leader=sandbar-eight.toml", do=labels),
    Screen(name="desk-book", path="/book", do=plan),
    Screen(name="desk-bring", path="/bring", do=bring),
    Screen(name="desk-shop", path="/shop"),
)


def main() -> None:
    """Make all pictures anew."""
    with TemporaryDirectory() as name, sync_playwright() as play:
        folder = Path(name) / "bench"
        commands.main(["samples", str(folder)], standalone_mode=False)
        book = str(folder / "book.db")
        rack, recipe = str(folder / "rack.toml"), str(folder / "sandbar-eight.toml")
        for words in (["start", "--rack", rack], ["tie", f"{recipe}=4", "--tied", "2026-03-14"]):
            commands.main(["book", *words, "--book", book], standalone_mode=False)
        browser = play.chromium.launch(
            executable_path=shutil.which("chromium"), args=["--no-sandbox"]
        )
        with served(folder) as address:
            for screen in SCREENS:
                page = browser.new_page(
                    viewport={"width": screen.width, "height": screen.height},
                    color_scheme="dark" if screen.dark else "light",
                )
                page.goto(address)
                page.goto(address.partition("/?")[0] + screen.path)
                screen.do(page)
                page.wait_for_timeout(2500)
                keep(page.screenshot(), GALLERY / f"{screen.name}.png")
                page.close()


def keep(png: bytes, path: Path) -> None:
    """Keep a picture in as few colours as a screen has."""
    with Image.open(BytesIO(png)) as picture:
        picture.convert("RGB").quantize(64).save(path, optimize=True)


if __name__ == "__main__":
    main()
