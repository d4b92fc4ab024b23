"""Papers, cards and label sheets as measurements in points."""

from collections.abc import Mapping
from typing import Literal, TypeAlias

from msgspec import Struct

Shape = Literal["rectangle", "round"]


class Paper(Struct, frozen=True):
    """A sheet of paper, upright."""

    name: str
    width: float
    height: float


class CardSize(Struct, frozen=True):
    """A card as it is read; `corner` is the radius of its corners."""

    name: str
    width: float
    height: float
    corner: float = 0.0


class LabelSheet(Struct, frozen=True):
    """A sheet of equal labels; on a roll, the one label is the sheet.

    `left` and `top` lead to the first label, the pitches from one label to the next; `inset`
    is what a label's design keeps free along its edges, `dpi` the dots to an inch of a roll's
    printer.
    """

    name: str
    paper: Paper
    columns: int
    rows: int
    width: float
    height: float
    left: float
    top: float
    pitch_x: float
    pitch_y: float
    corner: float
    shape: Shape
    inset: float
    dpi: int | None = None

    @property
    def on_roll(self) -> bool:
        """Whether each label is a page of its own."""
        return self.paper.name == self.name

    @property
    def places(self) -> tuple[tuple[float, float], ...]:
        """The top left corners of the labels, row by row."""
        return tuple(
            (self.left + column * self.pitch_x, self.top + row * self.pitch_y)
            for row in range(self.rows)
            for column in range(self.columns)
        )

    @property
    def boxes(self) -> tuple[tuple[float, float, float, float], ...]:
        """Left, top, right and bottom of the labels, row by row."""
        return tuple((x, y, x + self.width, y + self.height) for x, y in self.places)


AnyFormat: TypeAlias = Paper | CardSize | LabelSheet


class Stock(Struct, frozen=True):
    """What is known, by folded name and in the order written; `defaults` is a name per table."""

    papers: Mapping[str, Paper]
    cards: Mapping[str, CardSize]
    labels: Mapping[str, LabelSheet]
    defaults: Mapping[str, str]


def folded(name: str) -> str:
    """Return a name without what doesn't matter in it: capitals, blanks, hyphens."""
    return "".join(name.casefold().replace("-", " ").replace("_", " ").split())
