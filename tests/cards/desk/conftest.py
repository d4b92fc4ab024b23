"""A desk over a folder of the test's own, and a real browser on it.

Debian's chromium is driven by playwright. Where there is none, tests that need it are skipped; with
TAGEND_BROWSER=needed they fail.
"""

import os
import shutil
import threading
from collections.abc import Callable, Iterator
from pathlib import Path
from queue import Queue

import pytest
from msgspec import Struct
from playwright.sync_api import Browser, ConsoleMessage, Page, Request, expect, sync_playwright

from tagend.cards.desk.desk import Desk
from tagend.cards.desk.server import serve
from tagend.cards.desk.tying import plan, start, tie_these
from tests.tree import ROOT

SAMPLES = ROOT / "samples"
CHROMIUM = shutil.which("chromium")
expect.set_options(timeout=20_000)  # milliseconds, on a machine that is busy


class Served(Struct, frozen=True):
    """A desk that is being served: its folder, the address with its secret and that without."""

    folder: Path
    address: str

    @property
    def origin(self) -> str:
        return self.address.partition("/?")[0]


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    if CHROMIUM is None:
        if os.environ.get("TAGEND_BROWSER") == "needed":
            pytest.fail("there is no chromium: apt-get install chromium")
        pytest.skip("there is no chromium")
    with sync_playwright() as play:
        yield play.chromium.launch(executable_path=CHROMIUM, args=["--no-sandbox"])


@pytest.fixture
def served(tmp_path: Path) -> Iterator[Served]:
    """A desk over an empty folder; a test puts into it what it needs."""
    folder = tmp_path / "bench"
    folder.mkdir()
    desk, addresses = Desk(folder), Queue[str]()
    thread = threading.Thread(target=serve, args=(desk, 0, addresses.put), kwargs={"browse": False})
    thread.start()
    yield Served(folder, addresses.get(timeout=20))
    desk.end()
    thread.join(timeout=20)


@pytest.fixture
def shop_folder(served: Served) -> Served:
    """A desk over the samples."""
    for source in SAMPLES.iterdir():
        if source.suffix in (".toml", ".png", ".csv"):
            shutil.copy(source, served.folder)
    return served


@pytest.fixture(scope="session")
def bench(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with all that a shop may have: a book too, and a leader tied in it."""
    folder = tmp_path_factory.mktemp("bench")
    for source in SAMPLES.iterdir():
        if source.suffix in (".toml", ".png", ".csv"):
            shutil.copy(source, folder)
    desk = Desk(folder)
    start(desk, {"rack": True})
    asked = {"counts": {"sandbar-eight.toml": 1}, "anyway": True}
    planned = plan(desk, asked)
    assert isinstance(planned, dict)
    tie_these(desk, {**asked, "seen": planned["seen"]})
    return folder


@pytest.fixture
def bench_folder(served: Served, bench: Path) -> Served:
    """A desk over a shop's whole bench."""
    shutil.copytree(bench, served.folder, dirs_exist_ok=True)
    return served


@pytest.fixture
def opened(browser: Browser, caplog: pytest.LogCaptureFixture) -> Iterator[Callable[..., Page]]:
    """A way to open a screen of a desk: `opened(served, "/print", width=320)`.

    At the end nothing may have been said on the console or asked of another machine, nor may the
    desk have stumbled over what its own page sends.
    """
    complaints: list[str] = []
    contexts = []

    def note(message: ConsoleMessage) -> None:
        if message.type in ("error", "warning") and "422" not in message.text:
            complaints.append(message.text)

    def open_screen(
        served: Served, path: str = "/", *, width: int = 1280, dark: bool = False
    ) -> Page:
        context = browser.new_context(
            viewport={"width": width, "height": 900},
            color_scheme="dark" if dark else "light",
            accept_downloads=True,
        )
        contexts.append(context)
        page = context.new_page()
        page.set_default_timeout(15_000)

        def told(request: Request) -> None:
            if not request.url.startswith((served.origin, "blob:", "data:")):
                complaints.append(f"asked of another machine: {request.url}")

        page.on("console", note)
        page.on("pageerror", lambda error: complaints.append(str(error)))
        page.on("request", told)
        page.goto(served.address)
        if path != "/":
            page.goto(served.origin + path)
        return page

    yield open_screen
    for context in contexts:
        context.close()
    complaints += (record.getMessage() for record in caplog.get_records("call"))
    assert complaints == []
