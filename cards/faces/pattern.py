"""Strands drawn in black alone: a tapering band and its material's pattern in, paths out."""

from collections.abc import Iterator
from dataclasses import dataclass

from tagend.cards.practice.materials import Pattern
from tagend.layouts.paper.face import Path, Step

_LINE = 0.5  # points; thinner lines break up on an office printer
_SPACING = 2.6  # points between the strokes of a pattern
_APART = 0.4  # of half the thickness: where two lines inside a strand lie


@dataclass(frozen=True, slots=True)
class Band:
    """A strand lying along x with its middle at `y`, from one thickness to another."""

    x: float
    y: float
    length: float
    from_thick: float
    to_thick: float

    @property
    def end(self) -> float:
        return self.x + self.length

    @property
    def middle(self) -> float:
        return self.x + self.length / 2

    def half(self, x: float) -> float:
        """Return half the thickness at x."""
        share = (x - self.x) / self.length if self.length else 0.0
        return (self.from_thick + share * (self.to_thick - self.from_thick)) / 2

    @property
    def outline(self) -> tuple[Step, ...]:
        end, near, far = self.end, self.from_thick / 2, self.to_thick / 2
        return (
            ("move", self.x, self.y - near),
            ("line", end, self.y - far),
            ("line", end, self.y + far),
            ("line", self.x, self.y + near),
            ("close",),
        )


def patterned(band: Band, pattern: Pattern) -> tuple[Path, ...]:
    """Return the band filled with its pattern."""
    if pattern == "solid":
        return (Path(band.outline, _LINE, fill=0.0),)
    edge = Path(band.outline, _LINE, fill=1.0)
    if pattern == "outline":
        return (edge,)
    if pattern == "dots":
        steps = tuple(step for x in _places(band, 2 * _SPACING) for step in _dot(band, x))
        marks = Path(steps, 0.9, round_ends=True)
    else:
        marks = Path(tuple(_strokes(band, pattern)), _LINE)
    return (edge, marks) if marks.steps else (edge,)  # a short piece may have room for none


def _strokes(band: Band, pattern: Pattern) -> Iterator[Step]:
    if pattern == "core":
        yield from _along(band, 0.0)
    if pattern == "two cores":
        yield from _along(band, -_APART)
        yield from _along(band, _APART)
    if pattern == "broken core":
        for x in _places(band, 2 * _SPACING):
            yield ("move", x - 0.6 * _SPACING, band.y)
            yield ("line", x + 0.6 * _SPACING, band.y)
    if pattern == "bars":
        for x in _places(band, 2 * _SPACING):
            yield from _stroke(band, x, x)
    if pattern in ("hatch", "cross hatch"):
        for x in _places(band, _SPACING):
            yield from _stroke(band, x, x + 2 * band.half(x))
    if pattern in ("back hatch", "cross hatch"):
        for x in _places(band, _SPACING):
            yield from _stroke(band, x + 2 * band.half(x), x)


def _along(band: Band, share: float) -> Iterator[Step]:
    """A line from end to end, so much of half the thickness off the middle."""
    yield ("move", band.x, band.y + share * band.half(band.x))
    yield ("line", band.end, band.y + share * band.half(band.end))


def _stroke(band: Band, low: float, high: float) -> Iterator[Step]:
    """From the lower edge at one x to the upper at another, where both are on the band."""
    if max(low, high) <= band.end:
        yield ("move", low, band.y + band.half(low))
        yield ("line", high, band.y - band.half(high))


def _dot(band: Band, x: float) -> Iterator[Step]:
    yield ("move", x, band.y)
    yield ("line", x + 0.01, band.y)


def _places(band: Band, spacing: float) -> Iterator[float]:
    count = int(band.length / spacing)
    for step in range(1, count + 1):
        yield band.x + (step - 0.5) * spacing
