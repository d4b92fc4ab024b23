"""A face: a size and the items placed on it, in points from its top left corner, y downwards.

An item only says what stands where. Nothing here measures, fits or draws.
"""

from collections.abc import Callable, Iterable
from typing import Literal, NamedTuple, TypeAlias

from msgspec import Struct

from tagend.layouts.paper.raster import Raster

POINTS_PER_INCH = 72.0
MM = POINTS_PER_INCH / 25.4  # points in a millimetre

Box: TypeAlias = tuple[float, float, float, float]  # left, top, right, bottom
Turn = Literal[0, 90, 180, 270]  # degrees, anticlockwise as seen on the paper

MoveTo: TypeAlias = tuple[Literal["move"], float, float]
LineTo: TypeAlias = tuple[Literal["line"], float, float]
CurveTo: TypeAlias = tuple[Literal["curve"], float, float, float, float, float, float]
ClosePath: TypeAlias = tuple[Literal["close"]]
Step: TypeAlias = MoveTo | LineTo | CurveTo | ClosePath


class TextRun(NamedTuple):
    """Text of one font on one baseline; `x` is where it starts, `width` what it takes."""

    x: float
    y: float
    text: str
    font: str  # a name that `fonts` knows
    size: float
    width: float


class Path(NamedTuple):
    """Lines and curves, stroked when `line` (the pen's width) is over 0, filled when asked.

    Greys go from 0, black, to 1, the paper's white. The shape stands at a place, so that it is not
    written anew where it is moved: a knot's is large.
    """

    shape: tuple[Step, ...]
    line: float = 0.0
    grey: float = 0.0
    fill: float | None = None
    dash: tuple[float, ...] = ()
    round_ends: bool = False
    x: float = 0.0
    y: float = 0.0

    @property
    def steps(self) -> tuple[Step, ...]:
        """The steps of its shape where they stand."""
        dx, dy = self.x, self.y
        return mapped(self.shape, lambda x, y: (x + dx, y + dy)) if dx or dy else self.shape


_BITS = bytes.maketrans(b"01", b"\x00\x01")


class Symbol(Struct, frozen=True):
    """A QR code without its quiet zone."""

    text: str
    version: int
    level: Literal["L", "M", "Q", "H"]
    dark: int  # its modules, a bit each, row by row with a light one after each row

    @property
    def side(self) -> int:
        """Modules along one side: ISO/IEC 18004."""
        return 17 + 4 * self.version

    @property
    def rows(self) -> tuple[bytes, ...]:
        """Its modules, row by row; dark ones are 1."""
        side = self.side
        bits = f"{self.dark:0{side * (side + 1)}b}".encode().translate(_BITS)
        return tuple(bits[start : start + side] for start in range(0, len(bits), side + 1))


class Code(NamedTuple):
    """A symbol at its place; x and y are the corner of its first module."""

    x: float
    y: float
    module: float
    symbol: Symbol


class Picture(NamedTuple):
    """A raster in its box; x and y are the box's corner."""

    x: float
    y: float
    width: float
    height: float
    raster: Raster


Item: TypeAlias = TextRun | Path | Code | Picture


class Face(Struct, frozen=True):
    """One side of a card, or one label."""

    name: str
    width: float
    height: float
    items: tuple[Item, ...]
    left_out: tuple[str, ...] = ()  # what found no room on it, for whoever made it to tell

    def __hash__(self) -> int:
        """Return the hash of the words alone, by which faces differ: all shapes take 1 ms."""
        return hash((self.name, *(item for item in self.items if isinstance(item, TextRun))))


def lowest(face: Face) -> float:
    """Return how far down a face has anything; of a line of text its baseline."""
    return max((_lowest(item) for item in face.items), default=0.0)


def _lowest(item: Item) -> float:
    match item:
        case Path():
            return max((step[-1] for step in item.steps if len(step) > 1), default=0.0)
        case Code():
            return item.y + item.module * item.symbol.side
        case Picture():
            return item.y + item.height
    return item.y


def rectangle(x: float, y: float, width: float, height: float) -> tuple[Step, ...]:
    """Return the closed outline of a box."""
    return (
        ("move", x, y),
        ("line", x + width, y),
        ("line", x + width, y + height),
        ("line", x, y + height),
        ("close",),
    )


def segment(x1: float, y1: float, x2: float, y2: float) -> tuple[Step, ...]:
    """Return one straight line."""
    return (("move", x1, y1), ("line", x2, y2))


def shifted(items: Iterable[Item], dx: float, dy: float) -> tuple[Item, ...]:
    """Return the items moved to the right by `dx` and down by `dy`."""
    if not dx and not dy:
        return tuple(items)
    return tuple(_shifted(item, dx, dy) for item in items)


def mapped(
    steps: Iterable[Step], at: Callable[[float, float], tuple[float, float]]
) -> tuple[Step, ...]:
    """Return the steps with every place taken to where `at` says."""
    return tuple(_mapped(step, at) for step in steps)


def _shifted(item: Item, dx: float, dy: float) -> Item:
    if isinstance(item, Path):
        shape, line, grey, fill, dash, round_ends, x, y = item
        return Path(shape, line, grey, fill, dash, round_ends, x + dx, y + dy)
    if isinstance(item, TextRun):  # as with paths, `_replace` takes three times as long
        return TextRun(item.x + dx, item.y + dy, item.text, item.font, item.size, item.width)
    return item._replace(x=item.x + dx, y=item.y + dy)


def _mapped(step: Step, at: Callable[[float, float], tuple[float, float]]) -> Step:
    match step:
        case ("move", x, y):
            return ("move", *at(x, y))
        case ("line", x, y):
            return ("line", *at(x, y))
        case ("curve", x1, y1, x2, y2, x3, y3):
            return ("curve", *at(x1, y1), *at(x2, y2), *at(x3, y3))
    return step
