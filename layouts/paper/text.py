"""Text, its fonts and its room in; lines measured, broken and made to fit out, in points."""

import math
import re
from collections.abc import Iterable, Sequence
from functools import lru_cache
from typing import Literal, TypeAlias

from msgspec import Struct

from tagend.fonts import CAP_HEIGHT, Chain, runs, text_width
from tagend.layouts.paper.face import MM, TextRun
from tagend.layouts.paper.lengths import SLACK
from tagend.layouts.paper.typeset import BREAKING, prepare

__all__ = ["CAP_HEIGHT", "SetLine", "TooWide", "break_lines", "fit_size", "set_line"]

Align: TypeAlias = Literal["left", "centre", "right"]

SIZE_STEP = 0.25  # points between the sizes that a fit tries

_SPACES = re.compile(f"[{BREAKING}]+")
# Within a word, a line may end after a hyphen or dash between two letters: never in 2-3 or 8-lb.
_AFTER_HYPHEN = re.compile(r"(?<=[^\W\d_][-\u2010–—])(?=[^\W\d_])")

# Where a space holds: 7 ft 6 in, 22 to 28 in, 25 lb, 1 1/2. Units are those of length and weight.
_DIGIT = "[0-9¼½¾⅐-⅞]"
_UNIT = r"(?:in|ft|yd|mm|cm|m|thou|lb|oz|kg|g)\b"
_HOLDS = re.compile(
    rf"(?<={_DIGIT}) (?=to[ \u00a0]{_DIGIT}|{_UNIT})|(?<={_DIGIT} (?:ft|to)) (?={_DIGIT})"
)
_WHOLE = re.compile(r"(?<![\w/.,])([0-9]+) (?=[0-9]+/[0-9]+(?![0-9/])|[¼½¾⅐-⅞]|[⁰¹²³⁴-⁹]+⁄)")


class SetLine(Struct, frozen=True):
    """One line of text, ready to be placed: its runs from (0, 0)."""

    runs: tuple[TextRun, ...]
    size: float
    width: float

    @property
    def text(self) -> str:
        return "".join(run.text for run in self.runs)

    def at(self, x: float, y: float, align: Align = "left") -> tuple[TextRun, ...]:
        """Return its runs with the baseline at y and the line's left, centre or right at x."""
        left = x - {"left": 0.0, "centre": self.width / 2, "right": self.width}[align]
        return tuple(
            TextRun(left + run.x, y, run.text, run.font, self.size, run.width) for run in self.runs
        )


class _Unbroken(Struct, frozen=True):
    """What may stand alone on a line, and what joins it to the part before; widths are ems."""

    join: str
    text: str
    space: float  # the width of what joins
    width: float


class TooWide(ValueError):
    """A word, or a number with its unit, is wider than the room it has; both in points."""

    def __init__(self, text: str, available: float, needed: float) -> None:
        self.text = text
        self.available = available
        self.needed = needed
        super().__init__(
            f"{text!r} is {needed / MM:.1f} mm wide, its place only {available / MM:.1f} mm"
        )


@lru_cache(maxsize=4096)
def set_line(text: str, fonts: Chain, size: float) -> SetLine:
    """Return the text measured as one line. Raises NoGlyph."""
    scaled = tuple(
        TextRun(run.x * size, 0, run.text, run.font, size, run.width * size)
        for run in _in_ems(text, fonts)
    )
    return SetLine(scaled, size, _end(scaled))


@lru_cache(maxsize=4096)
def break_lines(text: str, fonts: Chain, size: float, width: float) -> tuple[SetLine, ...]:
    """Return the lines of `broken`, measured. Raises TooWide and NoGlyph."""
    return tuple(set_line(line, fonts, size) for line in broken(text, fonts, size, width))


def broken(text: str, fonts: Chain, size: float, width: float) -> list[str]:
    """Return the text in lines no wider than `width`, each as full as it can be.

    Lines end at spaces and after hyphens, never within a quantity. Raises TooWide and NoGlyph.
    """
    lines: list[str] = []
    ems = 0.0  # of the last line
    room = width + SLACK  # as in `fits`, of which a call for each word takes long
    for part in _parts(text, fonts):
        if part.width * size > room:
            raise TooWide(prepare(part.text), width, part.width * size)
        longer = ems + part.space + part.width
        if lines and longer * size <= room:
            lines[-1] += part.join + part.text
            ems = longer
        else:
            lines.append(part.text)
            ems = part.width
    return lines


def balanced_lines(text: str, fonts: Chain, size: float, width: float) -> tuple[SetLine, ...]:
    """Return as many lines as `break_lines`, as even as their words allow: none ends in an orphan.

    Raises TooWide and NoGlyph.
    """
    lines = break_lines(text, fonts, size, width)
    while len(lines) > 1:
        try:
            narrower = break_lines(text, fonts, size, max(x.width for x in lines) - 2 * SLACK)
        except TooWide:
            break
        if len(narrower) > len(lines):
            break
        lines = narrower
    return lines


def set_below(
    lines: Iterable[SetLine], x: float, top: float, leading: float
) -> tuple[list[TextRun], float]:
    """Return lines one below the other, `leading` type sizes apart, and where they end."""
    runs: list[TextRun] = []
    for line in lines:
        runs += line.at(x, top + CAP_HEIGHT * line.size)
        top += leading * line.size
    return runs, top


def fit_size(
    text: str, fonts: Chain, width: float, preferred: float, smallest: float, lines: int = 1
) -> float | None:
    """Return the largest size, SIZE_STEP by SIZE_STEP down, at which the text fits; else None."""
    for step in range(math.floor((preferred - smallest + SLACK) / SIZE_STEP) + 1):
        size = preferred - step * SIZE_STEP
        try:
            if len(broken(text, fonts, size, width)) <= lines:
                return size
        except TooWide:
            continue
    return None


@lru_cache(maxsize=1024)  # a text is broken again for every size and width that is tried
def _parts(text: str, fonts: Chain) -> tuple[_Unbroken, ...]:
    held = _HOLDS.sub("\u00a0", _SPACES.sub(" ", text))
    held = _WHOLE.sub("\\1\u00a0", held)
    return tuple(
        _Unbroken(join := "" if place else " ", part, _width(join, fonts), _width(part, fonts))
        for word in held.split(" ")
        if word
        for place, part in enumerate(_AFTER_HYPHEN.split(word))
    )


def _width(text: str, fonts: Chain) -> float:
    return _end(_in_ems(text, fonts))


def _end(found: Sequence[TextRun]) -> float:
    return found[-1].x + found[-1].width if found else 0.0


@lru_cache(maxsize=4096)
def _in_ems(text: str, fonts: Chain) -> tuple[TextRun, ...]:
    found: list[TextRun] = []
    start = 0.0
    for run in runs(prepare(text), fonts):
        width = text_width(run.text, run.font, 1.0)
        found.append(TextRun(start, 0, run.text, run.font, 1, width))
        start += width
    return tuple(found)
