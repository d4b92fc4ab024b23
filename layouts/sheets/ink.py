"""Items in, the box that their ink covers out; a box of a face in, where it lies on its sheet."""

from collections.abc import Iterable, Iterator

from tagend.fonts import CAP_HEIGHT, DESCENT
from tagend.layouts.paper.face import Box, Code, Item, Path, Picture, TextRun
from tagend.layouts.sheets.sheet import Placed


def ink(items: Iterable[Item]) -> Box | None:
    """Return the box around all items, None where there are none.

    Curves count as far as their control points, text from its capitals to its descenders.
    """
    return around(box for item in items for box in _boxes(item))


def around(boxes: Iterable[Box]) -> Box | None:
    """Return the box around boxes, None where there are none."""
    corners = list(zip(*boxes, strict=True))
    if not corners:
        return None
    lefts, tops, rights, bottoms = corners
    return min(lefts), min(tops), max(rights), max(bottoms)


def on_sheet(box: Box, placed: Placed) -> Box:
    """Return where a box of the placed face lies on the sheet."""
    xs, ys = zip(placed.at(*box[:2]), placed.at(*box[2:]), strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def apart(one: Box, other: Box, gap: float = 0.0) -> bool:
    """Say whether two boxes are at least `gap` from each other, across or down."""
    across = max(one[0] - other[2], other[0] - one[2])
    down = max(one[1] - other[3], other[1] - one[3])
    return max(across, down) >= gap


def _boxes(item: Item) -> Iterator[Box]:
    match item:
        case TextRun(x, y, _, _, size, width):
            yield x, y - CAP_HEIGHT * size, x + width, y + DESCENT * size
        case Code(x, y, module, symbol):
            yield x, y, x + symbol.side * module, y + symbol.side * module
        case Picture(x, y, width, height):
            yield x, y, x + width, y + height
        case Path(shape, line, x=x, y=y):
            places = [at for step in shape for at in step[1:]]
            xs, ys = places[::2], places[1::2]
            half = line / 2
            if xs:
                yield x + min(xs) - half, y + min(ys) - half, x + max(xs) + half, y + max(ys) + half
