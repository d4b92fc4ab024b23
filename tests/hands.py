"""Hands at a bench: a cut list as it is printed in; where each knot comes to lie, in mm, out.

Nothing of the product is used here: lengths are read off the page, and pieces are laid on a bench.
"""

import re
from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise

from cfractions import Fraction
from msgspec import Struct
from msgspec.structs import replace

_UNIT_MM = {
    "in": Fraction("25.4"),
    "ft": Fraction("304.8"),
    "mm": Fraction(1),
    "cm": Fraction(10),
    "m": Fraction(1000),
}
_NUMBER = r"\d+ \d+/\d+|\d+/\d+|\d+\.\d+|\d+"
_LENGTH = re.compile(rf"({_NUMBER}) (in|ft|mm|cm|m)\b")
_RANGE = re.compile(rf"({_NUMBER}) to(?= (?:{_NUMBER}) (in|cm|mm)\b)")
_KNOT = re.compile(
    rf"(?:lap|fold) (?:({_NUMBER})\+)?({_NUMBER})(?: \(.+\))? (in|mm|cm)"
    r"(?: and (.+) for the dropper)?$"
)
_FOLD = re.compile(rf", fold ({_NUMBER}) (in|mm|cm)\b")

Split = tuple[Fraction, Fraction]  # of a joint: from the piece above, and from the one below


class Row(Struct, frozen=True, kw_only=True):
    """One line of a cut list as a person reads it."""

    tied: str
    cut_mm: Fraction
    bought: bool
    knot: str = ""  # to the next, without its turns
    lapped: bool = False
    lap_mm: Fraction = Fraction(0)  # of a joint where two ends lie side by side
    folds_mm: Split = (Fraction(0), Fraction(0))  # of one where each end is turned back
    dropper_mm: Fraction = Fraction(0)


class Page(Struct, frozen=True, kw_only=True):
    """A cut list as a person reads it."""

    rows: tuple[Row, ...]
    total: str  # of a range the longest
    butt_mm: Fraction  # the fold at the butt
    fly_mm: Fraction


def number(words: str) -> Fraction:
    """Return what `34 1/4`, `3/4` or `87.5` says."""
    return sum(map(Fraction, words.split()), start=Fraction(0))


def lengths_mm(words: str) -> Iterator[Fraction]:
    """Yield the lengths that stand in words, of a range both ends: `90 to 120 cm`."""
    for found in _LENGTH.finditer(_RANGE.sub(r"\1 \2 to", words)):
        yield number(found[1]) * _UNIT_MM[found[2]]


def length_mm(words: str) -> Fraction:
    """Return a length, of a range the longest: `5 ft 2 in`, `22 to 28 in`, `1.20 m to 1.40 m`."""
    return sum(lengths_mm(words.split(" to ")[-1]), start=Fraction(0))


def read_page(lines: Sequence[str]) -> Page:
    """Return what a cut list says."""
    head = next(place for place, line in enumerate(lines) if " CUT " in line)
    foot = next(place for place, line in enumerate(lines) if line.split()[:2] == ["in", "all"])
    table = [re.split(r"\s{2,}", line.strip()) for line in lines[head + 1 : foot]]
    rows = [_row(cells) for cells in table]
    fly = next(line for line in lines if line.startswith("  at the fly:"))
    return Page(
        rows=tuple(rows),
        total=re.split(r"\s{2,}", lines[foot].strip())[1],
        butt_mm=_fold(lines[head - 1]),
        fly_mm=_fold(fly),
    )


def knots_mm(page: Page, splits: Iterable[Split]) -> list[Fraction]:
    """Return where the knots lie on the bench, from the butt's to the fly's.

    Each piece is laid down from where the one above it ends, back by the lap that is printed; what
    a dropper needs hangs beyond. Folds are turned back. `splits` says of each joint how much of a
    lap lies on either side of its knot; folds say it themselves.
    """
    knots, start = [page.butt_mm], Fraction(0)
    for row, split in zip(page.rows[:-1], splits, strict=True):
        end = start + row.cut_mm - row.dropper_mm
        knots.append(end - (split[0] if row.lapped else row.folds_mm[0]))
        start = end - row.lap_mm if row.lapped else knots[-1] - row.folds_mm[1]
    return [*knots, start + page.rows[-1].cut_mm - page.fly_mm]


def sections_mm(knots: Sequence[Fraction]) -> list[Fraction]:
    """Return what is measured from each knot to the next."""
    return [below - above for above, below in pairwise(knots)]


def middles(page: Page) -> list[Split]:
    """Return each lap in two halves: the knot sits in its middle."""
    return [(row.lap_mm / 2, row.lap_mm / 2) for row in page.rows[:-1]]


def _row(cells: Sequence[str]) -> Row:
    joint = _KNOT.match(cells[-1])
    *_, tied, cut = cells[:-2] if joint else cells
    row = Row(tied=tied, cut_mm=length_mm(cut), bought="bought" in cut)
    if joint is None:
        return row
    above, below = (number(each or "0") * _UNIT_MM[joint[3]] for each in (joint[1], joint[2]))
    return replace(
        row,
        knot=re.sub(r" [0-9+]+$", "", cells[-2]),
        lapped=(lapped := cells[-1].startswith("lap")),
        lap_mm=below if lapped else Fraction(0),
        folds_mm=(above, below),
        dropper_mm=length_mm(joint[4] or ""),
    )


def _fold(line: str) -> Fraction:
    fold = _FOLD.search(line)
    return number(fold[1]) * _UNIT_MM[fold[2]] if fold else Fraction(0)
