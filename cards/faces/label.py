"""The wallet label: one leader in; a label with its name, measure, date and code out."""

from collections.abc import Iterator, Sequence
from functools import cache, lru_cache, partial
from itertools import repeat
from math import ceil, floor

from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.faces.block import DROP, LEADING, Block, TooSmall, line_block, stacked
from tagend.cards.faces.label_lines import (
    EXTRA,
    GIVING_WAY,
    PLAIN,
    Form,
    LabelLine,
    LabelNote,
    label_lines,
    left_out,
)
from tagend.cards.words.leader_words import Told
from tagend.fonts import Fonts
from tagend.layouts.codes.code import DESIGN_MODULE, LASTING_MODULE, QUIET, modules_at
from tagend.layouts.paper.face import (
    POINTS_PER_INCH,
    Code,
    Face,
    Path,
    Symbol,
    rectangle,
    segment,
    shifted,
)
from tagend.layouts.paper.legible import FLOOR
from tagend.layouts.paper.lengths import SLACK, fits
from tagend.layouts.paper.text import TooWide, balanced_lines, set_line
from tagend.layouts.stock.formats import LabelSheet

# The type sizes to try, in points: the name's, and the other lines'.
_SIZES = (
    *((26.0, 18.0), (24.0, 17.0), (22.0, 16.0), (20.0, 15.0), (18.0, 14.0), (16.0, 13.0)),
    *((14.0, 12.5), (12.0, 10.5), (11.0, 9.5), (10.0, 8.5), (9.0, FLOOR), (8.0, FLOOR)),
)
_WHOLE = 16.0  # a name as large as this is worth no broken line
_BROKEN, _BREAK = 10.5, 0.45  # points: at most so much are broken lines worth, less for each break
_CORNER_OF_ROUND = 0.1464  # 1/2 - 1/sqrt(8): how far the square in a circle stands off its box
_LASTING = 1.5  # points: what a module that lasts is worth
_PEN = 0.5
_SPACE = 0.4  # type sizes: no space is wider, which goes where a line is broken
_NEARLY = 0.85  # of the name's size stays where extra lines come


class _Inside(Struct, frozen=True):
    """The room inside a label's edge."""

    width: float
    height: float
    inset: float
    dot: float  # of the printer of a roll, on whole ones of which the code stands; else 0


class _Arrangement(Struct, frozen=True):
    """A way to set a label or its words, and what that is worth: a type size of the name."""

    block: Block
    worth: float
    size: float  # of the name, in points
    module: float = 0.0  # of the code


def wallet_label(
    told: Told, symbol: Symbol | None, stock: LabelSheet, fonts: Fonts, note: LabelNote = PLAIN
) -> Face:
    """Return the label in the largest type and code that fit, and what it leaves out.

    Two lines to tie by, the lots, then a line to write the day on give way before the code falls
    below its design size; what was asked for stays, and the material only where nothing else
    helps. Guard, use and the key of the code come where they leave the name nearly as large.
    Without a symbol it is all words. Raises `TooSmall` where what must stand does not fit, and
    `NoGlyph`.
    """
    inset = stock.inset + (_CORNER_OF_ROUND * stock.width if stock.shape == "round" else 0.0)
    width, height = stock.width - 2 * inset, stock.height - 2 * inset
    dot = POINTS_PER_INCH / stock.dpi if stock.dpi else 0.0
    room = _Inside(width=width, height=height, inset=inset, dot=dot)
    lines = cache(partial(label_lines, told, fonts, note))  # most labels try one form
    for modules, form, most in _ways(symbol, stock):
        kept = [line for line in lines(form) if line.spare <= most]
        best = _best(kept, symbol, modules, room)
        if best is not None:
            block = _richest(lines(form), kept, best, symbol, room).block
            return Face(
                name=told.leader.recipe.name,
                width=stock.width,
                height=stock.height,
                items=block.items,
                left_out=left_out(lines(form), form, most),
            )
    what = f"its code of {symbol.side} modules and its words" if symbol else "its words"
    raise TooSmall(f"{what} need more room")


def _ways(symbol: Symbol | None, stock: LabelSheet) -> Iterator[tuple[Sequence[float], Form, int]]:
    """Yield the modules, the form and the last line to give way that are tried, the best first."""
    known = modules_at(stock.dpi) if symbol else (0.0,)
    well = [module for module in known if fits(DESIGN_MODULE, module)] if symbol else known
    for modules in (well, known[len(well) :]):
        yield from ((modules, form, most) for most in GIVING_WAY for form in ("whole", "tight"))
    yield from ((known, "brief", most) for most in GIVING_WAY)


def _best(
    lines: list[LabelLine], symbol: Symbol | None, modules: Sequence[float], room: _Inside
) -> _Arrangement | None:
    """Return the best way to set these lines; of equals the one with the largest code."""
    if symbol is None:
        return _all_words(lines, room)
    placed = (
        _placed(lines, symbol, module, room, beside=beside)
        for module in modules
        for beside in (True, False)
    )
    ways = (way for way in placed if way is not None)
    return max(ways, key=_worth, default=None)


def _richest(
    lines: list[LabelLine],
    kept: list[LabelLine],
    best: _Arrangement,
    symbol: Symbol | None,
    room: _Inside,
) -> _Arrangement:
    """Return the lines with the extra ones that leave the name nearly as large, and the code."""
    least = _NEARLY * best.size
    for extra in EXTRA:
        more = [line for line in lines if line in kept or line.spare == extra]
        way = _best(more, symbol, (best.module,), room)
        if way is not None and way.size >= least:
            best, kept = way, more
    return best


def _worth(way: _Arrangement) -> float:
    return way.worth + _LASTING * (way.module >= LASTING_MODULE)


def _all_words(lines: list[LabelLine], room: _Inside) -> _Arrangement | None:
    """Return words alone, in the middle of the height; None where they do not fit."""
    words = _words(lines, room.width, room.height)
    if words is None:
        return None
    top = room.inset + (room.height - words.block.height) / 2
    return replace(words, block=Block(shifted(words.block.items, room.inset, top), room.height))


def _placed(
    lines: list[LabelLine], symbol: Symbol, module: float, room: _Inside, *, beside: bool
) -> _Arrangement | None:
    """Return words with the code beside or below them; None where they do not fit so."""
    side, inset = symbol.side * module, room.inset
    quiet = QUIET * module
    beyond = max(quiet - inset, 0.0)  # what the quiet zone needs besides the plain edge
    across = room.height if beside else room.width
    if side + 2 * beyond + room.dot > across:
        return None
    taken = side + quiet + beyond + room.dot
    width, height = (taken, 0.0) if beside else (0.0, taken)
    words = _words(lines, room.width - width, room.height - height)
    if words is None:
        return None
    middle, top = inset + (across - side + room.dot) / 2, inset
    if beside:
        x, y = inset + room.width - beyond - side, middle
        top += (room.height - words.block.height) / 2
    else:
        x, y = middle, inset + room.height - beyond - side
    if room.dot:
        x, y = (floor(place / room.dot) * room.dot for place in (x, y))
    items = (*shifted(words.block.items, inset, top), Code(x, y, module, symbol))
    return replace(words, block=Block(items, room.height), module=module)


def _words(lines: list[LabelLine], width: float, height: float) -> _Arrangement | None:
    """Return the lines in the largest type that fits, sooner whole than broken, or None."""
    found: list[_Arrangement] = []
    ems = [set_line(line.text, line.fonts, 1.0).width for line in lines]
    for size, other in _SIZES:
        if LEADING * (size + other * (len(lines) - 1)) > height:
            continue  # not even unbroken
        sizes = (size, *repeat(other, len(lines) - 1))
        if not fits(LEADING * sum(map(_least, ems, sizes, repeat(width))), height):
            continue
        rows = [(line, _set(line, of, width)) for line, of in zip(lines, sizes, strict=True)]
        if not all(blocks for _, blocks in rows):
            continue
        block = stacked([block for _, blocks in rows for block in blocks])
        if block.height > height:
            continue
        breaks = sum(len(blocks) - 1 for line, blocks in rows if line.spare not in EXTRA)
        if not breaks:
            found.append(_Arrangement(block, size, size))
            break  # smaller ones are worth less
        if size < _WHOLE:
            found.append(_Arrangement(block, min(size, _BROKEN) - _BREAK * breaks, size))
    return max(found, key=lambda way: way.worth, default=None)


def _least(ems: float, size: float, width: float) -> float:
    """Return the least height that the rows of so wide a line can take, in points."""
    return size * max(1, ceil(ems * size / (width + SLACK + _SPACE * size)))


@lru_cache(maxsize=512)  # the same lines are tried with and without others, on many labels
def _set(line: LabelLine, size: float, width: float) -> tuple[Block, ...]:
    """Return the line set, broken where it has to be; nothing where a word is too wide."""
    try:
        if line.place == "none":
            return tuple(map(line_block, balanced_lines(line.text, line.fonts, size, width)))
    except TooWide:
        return ()
    words = set_line(line.text, line.fonts, size)
    start, baseline = words.width + 0.4 * size, DROP * size
    if line.place == "box":
        box = 0.75 * size
        end, steps = start + box, rectangle(start, baseline - box, box, box)
    else:
        below = baseline + 0.1 * size
        end, steps = start + 3.0 * size, segment(start, below, width, below)
    block = line_block(words)
    return (Block((*block.items, Path(steps, _PEN)), block.height),) if end <= width else ()
