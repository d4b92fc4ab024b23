"""How placing boxes and writing sheets grow, and what share of it is the engine's own: a table.

Run as `python -m tests.bench.layout` from the project's folder. The floor is measured in the same
run: all calls that the writer makes of the drawing library, made again by themselves.
"""

import gc
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from statistics import median
from time import perf_counter

from reportlab.pdfgen.canvas import Canvas

from layouts import pdf
from layouts.face import MM, Face, Item, Path, rectangle
from layouts.imposition import Card, place_cards
from layouts.margins import with_rules
from layouts.printer import Printer, corrected
from layouts.sheet import Sheet
from layouts.stock import card_size, paper
from layouts.text import set_line

COUNTS = (1250, 2500, 5000, 10_000)  # of cards of 85 × 55 mm, ten on a sheet of A4
LINES = 8
REPEATS = 3
PRINTER = Printer(front_x=0.5 * MM, rule_y=99.7 * MM)


@dataclass(frozen=True, slots=True)
class Times:
    """Seconds that each part took."""

    placing: float
    writing: float
    drawing: float  # the floor, a part of writing

    @property
    def own(self) -> float:
        """The engine's share of the whole."""
        whole = self.placing + self.writing
        return (whole - self.drawing) / whole


class Recorder:
    """Stands for a canvas, or for what one makes, and keeps each call to be made again."""

    def __init__(self, target: object, calls: "list[Call]") -> None:
        self.target = target
        self.calls = calls

    def __getattr__(self, name: str) -> object:
        found = getattr(self.target, name)
        if not callable(found):
            return found

        def call(*arguments: object, **named: object) -> object:
            made = found(*(a.target if isinstance(a, Recorder) else a for a in arguments), **named)
            result = Recorder(made, self.calls) if name in ("beginPath", "beginText") else None
            self.calls.append(Call(self, name, arguments, named, result))
            return result or made

        return call


@dataclass(frozen=True, slots=True)
class Call:
    """One call of the drawing library."""

    target: Recorder
    name: str
    arguments: tuple[object, ...]
    named: dict[str, object]
    result: Recorder | None


def replayed(calls: Sequence[Call], canvas: Canvas) -> float:
    """Return the seconds that the calls take on a canvas of their own."""
    stands_for: dict[int, object] = {id(calls[0].target): canvas}
    begin = perf_counter()
    for call in calls:
        arguments = [
            stands_for[id(a)] if isinstance(a, Recorder) else a for a in call.arguments
        ]
        made = getattr(stands_for[id(call.target)], call.name)(*arguments, **call.named)
        if call.result is not None:
            stands_for[id(call.result)] = made
    return perf_counter() - begin


def card(number: int) -> Card:
    """Return a card with a frame and some lines of text that no other card has."""
    size = card_size("business-EU")
    items: list[Item] = [Path(rectangle(9, 9, size.width - 18, size.height - 18), line=0.5)]
    for row in range(LINES):
        items += set_line(f"{number}.{row} section 1 1/2 in", "medium", 9).at(15, 25 + 14 * row)
    return Card(Face(f"{number}", size.width, size.height, tuple(items)))


def placed(cards: Sequence[Card]) -> tuple[Sheet, ...]:
    """Return the cards on sheets with all that a run of cards goes through."""
    return corrected(with_rules(place_cards(cards, paper("A4"))), PRINTER)


def written(sheets: Sequence[Sheet]) -> bytes:
    return pdf.write_pdf(sheets, title="cards", creator="layouts")


def measured(cards: Sequence[Card]) -> Times:
    """Return the medians of some runs."""
    sheets = placed(cards)
    runs = [
        Times(_seconds(lambda: placed(cards)), _seconds(lambda: written(sheets)), _drawing(sheets))
        for _ in range(REPEATS)
    ]
    return Times(
        median(run.placing for run in runs),
        median(run.writing for run in runs),
        median(run.drawing for run in runs),
    )


def _seconds(work: Callable[[], object]) -> float:
    gc.collect()
    begin = perf_counter()
    work()
    return perf_counter() - begin


def _drawing(sheets: Sequence[Sheet]) -> float:
    calls: list[Call] = []
    make = pdf._canvas
    try:
        pdf._canvas = lambda: Recorder(make(), calls)  # type: ignore[assignment, return-value]
        written(sheets)
    finally:
        pdf._canvas = make
    gc.collect()
    return replayed(calls, make())


def main() -> None:
    """Print the tables."""
    unlike = [card(number) for number in range(COUNTS[-1])]
    for title, cards in (("all unlike", unlike), ("all alike", [unlike[0]] * COUNTS[-1])):
        print(title)
        print(f"{'boxes':>8}{'sheets':>8}{'placing':>10}{'writing':>10}{'drawing':>10}"
              f"{'a box':>10}{'own share':>11}")  # fmt: skip
        for count in COUNTS:
            _print_row(count, measured(cards[:count]))


def _print_row(count: int, times: Times) -> None:
    each = (times.placing + times.writing) / count
    print(
        f"{count:8}{count // 10:8}{times.placing:9.2f}s{times.writing:9.2f}s{times.drawing:9.2f}s"
        f"{each * 1e6:8.0f}µs{times.own:11.0%}"
    )


if __name__ == "__main__":
    main()
