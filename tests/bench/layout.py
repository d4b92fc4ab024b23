"""How placing boxes and writing sheets grow, and what share of it is the engine's own: a table.

Run as `python -m tests.bench.layout` from the project's folder. The drawing library's share is
measured in the same run: what writing takes less when every call of the library does nothing.
"""

import gc
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from statistics import median
from time import process_time

from reportlab.pdfgen.canvas import Canvas

from tagend.fonts import OURS
from tagend.layouts.paper.face import MM, Face, Item, Path, rectangle
from tagend.layouts.paper.rulers import true_size_rules
from tagend.layouts.paper.text import set_line
from tagend.layouts.pdf import pdf
from tagend.layouts.sheets.cutouts import Card
from tagend.layouts.sheets.imposition import place_cards
from tagend.layouts.sheets.margins import with_rules
from tagend.layouts.sheets.printer import Printer, corrected
from tagend.layouts.sheets.sheet import Sheet
from tagend.layouts.stock.stock import card_size, paper

COUNTS = (1250, 2500, 5000, 10_000)  # of cards of 85 × 55 mm, ten on a sheet of A4
LINES = 8
REPEATS = 3
PRINTER = Printer(front_x=0.5 * MM, rule_y=99.7 * MM)
RULES = true_size_rules("100 % print: this is 50 mm", "and this is 2 in", OURS.medium)


@dataclass(frozen=True, slots=True)
class Times:
    """Seconds of this process that each part took."""

    placing: float
    writing: float
    silent: float  # writing, with nothing drawn

    @property
    def own(self) -> float:
        """The engine's share of the whole."""
        return (self.placing + self.silent) / (self.placing + self.writing)


class Silent:
    """Stands for a canvas, and for what it makes, and does nothing that is asked of it."""

    def __init__(self, canvas: Canvas) -> None:
        self.setViewerPreference = canvas.setViewerPreference
        self.getCatalogEntry = canvas.getCatalogEntry

    def __getattr__(self, name: str) -> Callable[..., "Silent"]:
        setattr(self, name, self._nothing)  # found at once the next time
        return self._nothing

    def _nothing(self, *_: object, **__: object) -> "Silent":
        return self

    def getpdfdata(self) -> bytes:
        return b""


def card(number: int) -> Card:
    """Return a card with a frame and some lines of text that no other card has."""
    size = card_size("business-EU")
    items: list[Item] = [Path(rectangle(9, 9, size.width - 18, size.height - 18), line=0.5)]
    for row in range(LINES):
        items += set_line(f"{number}.{row} section 1 1/2 in", OURS.medium, 9).at(15, 25 + 14 * row)
    return Card(Face(f"{number}", size.width, size.height, tuple(items)))


def placed(cards: Sequence[Card]) -> tuple[Sheet, ...]:
    """Return the cards on sheets with all that a run of cards goes through."""
    return corrected(with_rules(place_cards(cards, paper("A4")), RULES), PRINTER)


def written(sheets: Sequence[Sheet]) -> bytes:
    return pdf.write_pdf(sheets, title="cards", creator="layouts")


def measured(cards: Sequence[Card]) -> Times:
    """Return the medians of some runs."""
    sheets = placed(cards)
    runs = [
        Times(_seconds(lambda: placed(cards)), _seconds(lambda: written(sheets)), _silent(sheets))
        for _ in range(REPEATS)
    ]
    return Times(
        median(run.placing for run in runs),
        median(run.writing for run in runs),
        median(run.silent for run in runs),
    )


def _seconds(work: Callable[[], object]) -> float:
    gc.collect()
    gc.disable()  # what it costs hangs on all that happens to live
    begin = process_time()
    work()
    seconds = process_time() - begin
    gc.enable()
    return seconds


def _silent(sheets: Sequence[Sheet]) -> float:
    make = pdf._canvas
    try:
        pdf._canvas = lambda language: Silent(make(language))
        return _seconds(lambda: written(sheets))
    finally:
        pdf._canvas = make


def main() -> None:
    """Print the tables."""
    unlike = [card(number) for number in range(COUNTS[-1])]
    for title, cards in (("all unlike", unlike), ("all alike", [unlike[0]] * COUNTS[-1])):
        print(title)
        print(f"{'boxes':>8}{'sheets':>8}{'placing':>10}{'writing':>10}{'undrawn':>10}"
              f"{'a box':>10}{'own share':>11}")  # fmt: skip
        for count in COUNTS:
            _print_row(count, measured(cards[:count]))


def _print_row(count: int, times: Times) -> None:
    each = (times.placing + times.writing) / count
    print(
        f"{count:8}{count // 10:8}{times.placing:9.2f}s{times.writing:9.2f}s{times.silent:9.2f}s"
        f"{each * 1e6:8.0f}µs{times.own:11.0%}"
    )


if __name__ == "__main__":
    main()
