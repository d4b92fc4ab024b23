"""Every screen for everyone: by axe-core's rules, by the Tab key, with wet fingers, small."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page

from tests.cards.desk.conftest import SAMPLES, Served
from tests.cards.desk.test_guard import routes
from tests.cards.desk.test_leader_screen import Opened

PATHS = [route.path for route in routes("GET") if "{" not in route.path and "." not in route.path]
SCREENS = [*PATHS, "/leader/sandbar-eight.toml", "/leader/none.toml"]
AXE = Axe()
LEAST = 44  # CSS pixels: WCAG 2.2, 2.5.5

# What is pressed with a finger, but for links within sentences and in the cells of tables, which
# 2.5.5 excepts; a box is pressed by its label as well.
TARGETS = """(least) => {
  const sizeOf = (element) => {
    const boxes = [element, ...(element.labels ?? [])].map((each) => each.getBoundingClientRect());
    return ["width", "height"].map((side) => Math.round(Math.max(...boxes.map((b) => b[side]))));
  };
  const isText = (element) => element.matches("a:not(.button)")
    && getComputedStyle(element).display === "inline"
    && element.closest("p, li, td, th, small, span");
  const all = "button, a[href], input, select, textarea, summary, [role=tab]";
  return [...document.querySelectorAll(all)]
    .filter((element) => element.checkVisibility() && !element.matches(".skip, [disabled]"))
    .filter((element) => !isText(element))
    .map((element) => [element.outerHTML.slice(0, 120), ...sizeOf(element)])
    .filter(([, width, height]) => Math.min(width, height) < least);
}"""

# Everything that can be pressed or filled in, in the order of the page.
REACHABLE = """() => {
  const all = "a[href], button, input, select, textarea, summary, [tabindex='0']";
  const seen = [...document.querySelectorAll(all)].filter((element) => {
    const group = element.matches("[type=radio]") && element.name;
    const first = group && document.querySelector(`[name="${element.name}"]:checked`);
    return element.checkVisibility() && !element.disabled && element.tabIndex >= 0
      && (!first || first === element);
  });
  seen.forEach((element, place) => (element.dataset.reached = place));
  return seen.length;
}"""


# Which of them has the focus, and how thick the line around it is.
AT = """() => {
  const at = document.activeElement;
  const { outlineStyle, outlineWidth } = getComputedStyle(at);
  return [at.dataset.reached ?? null, outlineStyle === "none" ? 0 : parseFloat(outlineWidth)];
}"""
SIDEWAYS = "document.documentElement.scrollWidth"


@pytest.fixture
def at(bench_folder: Served, opened: Opened) -> Callable[..., Page]:
    """A way to a screen over a whole bench, settled."""

    def go(path: str, **how: Any) -> Page:
        page = opened(bench_folder, **how)
        return settled(page, bench_folder.origin + path)

    return go


def settled(page: Page, address: str) -> Page:
    page.goto(address)
    page.wait_for_load_state("networkidle")
    return page


def found(page: Page) -> list[str]:
    """Return what axe-core finds that is serious or worse."""
    options = {"resultTypes": ["violations"]}
    violations = AXE.run(page, options=options).response["violations"]
    return [
        f"{each['id']}: {node['html'][:160]} {node['failureSummary'][-200:]}"
        for each in violations
        if each["impact"] in ("serious", "critical")
        for node in each["nodes"]
    ]


@pytest.mark.parametrize("dark", [False, True], ids=["light", "dark"])
@pytest.mark.parametrize("path", SCREENS)
def test_axe_finds_nothing_serious(at: Callable[..., Page], path: str, dark: bool) -> None:
    assert found(at(path, dark=dark)) == []


@pytest.mark.parametrize("path", PATHS)
def test_nor_in_an_empty_folder_in_spanish(served: Served, opened: Opened, path: str) -> None:
    (served.folder / "shop.toml").write_text('language = "es"\n')
    page = settled(opened(served), served.origin + path)
    assert page.locator("html").get_attribute("lang") == "es"
    assert found(page) == []


@pytest.mark.parametrize("path", PATHS)
def test_nor_where_a_file_is_wrong(served: Served, opened: Opened, path: str) -> None:
    (served.folder / "shop.toml").write_text('nmae = "Wrack line"\n')
    (served.folder / "bad.toml").write_text("[[section]]\nlength = 'long'\n")
    assert found(settled(opened(served), served.origin + path)) == []


def test_nor_where_a_leader_has_faults(at: Callable[..., Page]) -> None:
    page = at("/leader/sandbar-eight.toml", width=320)
    page.locator("#rows [data-field=length]").first.fill("long")
    page.locator("[aria-invalid=true]").first.wait_for()
    assert found(page) == []


def test_nor_where_a_table_is_in_doubt(at: Callable[..., Page]) -> None:
    page = at("/bring")
    page.locator("#files").set_input_files([brought("no-units"), brought("wrong-cells")])
    page.get_by_label("Good six").wait_for()
    assert found(page) == []
    assert page.evaluate(TARGETS, LEAST) == []
    page.set_viewport_size({"width": 320, "height": 700})
    assert page.evaluate(SIDEWAYS) <= 320


def brought(name: str) -> Path:
    return SAMPLES.parent / "tests" / "cards" / "tables" / "corpus" / f"{name}.csv"


@pytest.mark.parametrize("path", SCREENS)
def test_a_small_page_has_room_for_it_and_wet_fingers_hit(
    at: Callable[..., Page], path: str
) -> None:
    """At 320 px, and at 200 % of a page of 1280: WCAG 2.2, 1.4.10 and 1.4.4."""
    page = at(path, width=320)
    assert page.evaluate(SIDEWAYS) <= 320
    assert page.evaluate(TARGETS, LEAST) == []
    page.set_viewport_size({"width": 640, "height": 450})
    assert page.evaluate(SIDEWAYS) <= 640


@pytest.mark.parametrize("path", SCREENS)
def test_the_tab_key_reaches_everything_in_order_and_shows_where_it_is(
    at: Callable[..., Page], path: str
) -> None:
    page = at(path)
    count = page.evaluate(REACHABLE)
    reached: list[int] = []
    for _ in range(3 * count):  # a field for a day has three parts
        page.keyboard.press("Tab")
        place, outline = page.evaluate(AT)
        if place is None:
            break
        assert outline >= 2, page.evaluate("document.activeElement.outerHTML.slice(0, 120)")
        if int(place) not in reached[-1:]:
            reached.append(int(place))
    assert reached == list(range(count))
