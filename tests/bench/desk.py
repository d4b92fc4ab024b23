"""The desk in a real browser, against the same work in the process alone.

`python -m tests.bench.desk` prints medians of: a key to the new picture of the card and all
figures; the command to the first page; a folder of 500 recipes opened.
"""

import shutil
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory

from playwright.sync_api import Browser, Page, sync_playwright

from tagend.cards.base.toml_file import read_toml
from tagend.cards.desk.desk import Desk
from tagend.cards.desk.draft import draft_of
from tagend.cards.desk.leader import draw
from tests.tree import SAMPLES

KEYS, STARTS, RECIPES = 25, 5, 500

# A key is pressed; the time is until the drawing and the card are new and the next frame is due.
PRESS = """
async (text) => {
  const input = document.querySelector("#rows [data-field=length]");
  const places = [document.querySelector("#plot"), document.querySelector("#sides > div")];
  const begun = performance.now();
  const shown = places.map((place) => new Promise((done) => {
    new MutationObserver((_, seen) => { seen.disconnect(); done(); })
      .observe(place, { attributes: true, attributeFilter: ["data-id"] });
  }));
  input.value = text;
  input.dispatchEvent(new Event("input", { bubbles: true }));
  await Promise.all(shown);
  await new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
  return performance.now() - begun;
}
"""


def main() -> None:
    """Print a table of medians in milliseconds, with the floor of each."""
    with TemporaryDirectory() as name, sync_playwright() as play:
        folder = Path(name)
        shutil.copy(SAMPLES / "sandbar-eight.toml", folder)
        chromium = shutil.which("chromium")
        browser = play.chromium.launch(executable_path=chromium, args=["--no-sandbox"])
        print(f"{'':<34} {'ms':>6} {'floor':>6} {'ratio':>6}")
        tell("a key to the new picture", keys(browser, folder), alone(folder))
        first = [start(browser, folder) for _ in range(STARTS)]
        tell("the command to the first page", median(first), median(map(imports, range(STARTS))))
        many(folder)
        tell(f"{RECIPES} recipes opened", opened(browser, folder), read(folder))


def tell(what: str, ours: float, floor: float) -> None:
    """Print one row."""
    print(f"{what:<34} {1000 * ours:6.0f} {1000 * floor:6.0f} {ours / floor:6.2f}")


@contextmanager
def served(folder: Path) -> Iterator[str]:
    """Yield the address of a desk in a process of its own."""
    command = [sys.executable, "-m", "tagend.cards", "desk", str(folder), "--no-open"]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as desk:
        assert desk.stdout is not None
        yield desk.stdout.readline().strip()
        desk.terminate()


def page_at(browser: Browser, address: str, path: str) -> Page:
    """Return a new page that has entered the desk and stands at a path."""
    page = browser.new_page()
    page.goto(address)
    page.goto(address.partition("/?")[0] + path)
    return page


def keys(browser: Browser, folder: Path) -> float:
    """Return the median of seconds from a key to what comes of it."""
    with served(folder) as address:
        page = page_at(browser, address, "/leader/sandbar-eight.toml")
        page.wait_for_timeout(3000)
        times = []
        for number in range(KEYS):
            times.append(page.evaluate(PRESS, f"{40 + number} in") / 1000)
            page.wait_for_timeout(700)  # the code comes after a rest, and is no part of this
        page.close()
        return float(median(times[3:]))


def alone(folder: Path) -> float:
    """Return the same for the desk's own work, warm, with no server and no browser."""
    desk = Desk(folder)
    draft = draft_of(read_toml((folder / "sandbar-eight.toml").read_bytes()))
    times, seen = [], set[str]()
    for number in range(KEYS):
        rows = [{**draft["rows"][0], "length": f"{40 + number} in"}, *draft["rows"][1:]]
        begun = time.perf_counter()
        answer = draw(desk, {"draft": {**draft, "rows": rows}, "seen": [*seen]})
        times.append(time.perf_counter() - begun)
        seen |= {picture["id"] for picture in answer["pictures"]}
    return median(times[3:])


def start(browser: Browser, folder: Path) -> float:
    """Return the seconds from the command to its first page."""
    begun = time.perf_counter()
    with served(folder) as address:
        page = browser.new_page()
        page.goto(address)
        page.wait_for_selector("#shelf")
        taken = time.perf_counter() - begun
        page.close()
    return taken


def imports(_: int) -> float:
    """Return the seconds of a process that only loads what serves pages."""
    code = "import click, pydantic_core, starlette.applications, uvicorn, jinja2"
    begun = time.perf_counter()
    subprocess.run([sys.executable, "-c", code], check=True)
    return time.perf_counter() - begun


def many(folder: Path) -> None:
    """Put the same leader into a folder under many names."""
    text = (folder / "sandbar-eight.toml").read_text()
    for number in range(RECIPES - 1):
        named = text.replace("Sandbar eight", f"Leader {number}")
        (folder / f"leader-{number}.toml").write_text(named)


def opened(browser: Browser, folder: Path) -> float:
    """Return the seconds that a desk's first page of many leaders takes."""
    with served(folder) as address:
        page = browser.new_page()
        page.goto(address.partition("?")[0])  # refused, but the browser is ready then
        begun = time.perf_counter()
        page.goto(address, wait_until="commit")
        page.wait_for_selector(f"#shelf li:nth-child({RECIPES})", state="attached")
        taken = time.perf_counter() - begun
        page.close()
    return taken


def read(folder: Path) -> float:
    """Return the seconds of reading these files as TOML."""
    begun = time.perf_counter()
    for path in folder.glob("*.toml"):
        read_toml(path.read_bytes())
    return time.perf_counter() - begun


if __name__ == "__main__":
    main()
