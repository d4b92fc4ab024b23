"""Leaders laid along a line: leaders and their room in; a band for each piece, to scale, out."""

from collections.abc import Iterator, Sequence

from msgspec import Struct

from tagend.cards.faces.band import Band
from tagend.cards.faces.block import Scale
from tagend.cards.leader.leader import Leader
from tagend.cards.leader.parts import fly_end_mm
from tagend.cards.words.leader_words import Told, is_looped

_FACTORS = (1, 2, 3, 5, 10, 15, 20, 25, 30, 40, 50, 60, 80, 100, 120, 150, 200, 250, 300, 400, 500)
_BUTT_LOOP = 9.0  # points at size 1, along the line
_FLY_LOOP = 6.5
_BARE = 1.5  # kept at an end without one, for the signs of the dimension line


class Plot(Struct, frozen=True):
    """The bands of a leader's pieces with their middles at y = 0, and both scales."""

    told: Told
    scale: Scale
    width: float
    bands: tuple[Band, ...]
    per_mm: float  # points
    factor: int  # by which thickness is exaggerated over that

    @property
    def leader(self) -> Leader:
        return self.told.leader

    @property
    def size(self) -> float:
        """Of loops and knots, which are signs and no lengths: 1 for the smallest type."""
        return self.scale.factor

    @property
    def start(self) -> float:
        return self.bands[0].x

    @property
    def end(self) -> float:
        return self.bands[-1].end

    def half(self, x: float) -> float:
        """Return half the thickness at x, and where two pieces meet, of the thicker one."""
        return max(band.half(x) for band in self.bands if band.x <= x <= band.end)


def plot(told: Told, scale: Scale, width: float, room: float) -> Plot:
    """Return the leader from 0 to the width, its thickness within the room as large as it can be.

    A range is drawn as long as its longest.
    """
    return plots_alike([told], scale, width, room)[0]


def plots_alike(
    all_told: Sequence[Told], scale: Scale, width: float, room: float
) -> tuple[Plot, ...]:
    """Return leaders to one scale of length and of thickness, all from the same place on.

    They fill the width and the room no further than the one does that needs most.
    """
    leaders = [told.leader for told in all_told]
    size = scale.factor
    start = size * max(_BUTT_LOOP if is_looped(of.butt) else _BARE for of in leaders)
    ends = [size * (_FLY_LOOP if is_looped(of.fly) else _BARE) for of in leaders]
    per_mm = min(
        (width - start - end) / float(of.finished.high_mm)
        for of, end in zip(leaders, ends, strict=True)
    )
    factor = min(_factor(of, per_mm, room) for of in leaders)
    bands = [tuple(_bands(of, start, per_mm, factor)) for of in leaders]
    return tuple(
        Plot(
            told=told,
            scale=scale,
            width=drawn[-1].end + end,
            bands=drawn,
            per_mm=per_mm,
            factor=factor,
        )
        for told, drawn, end in zip(all_told, bands, ends, strict=True)
    )


def _factor(leader: Leader, per_mm: float, room: float) -> int:
    """Return the largest round factor at which the thickest piece stays within the room."""
    sections = [piece.section for piece in leader.pieces]
    thickest = max(max(section.diameter.mm, fly_end_mm(section)) for section in sections)
    fitting = [factor for factor in _FACTORS if float(thickest) * per_mm * factor <= room]
    return max(fitting, default=1)


def _bands(leader: Leader, x: float, per_mm: float, factor: int) -> Iterator[Band]:
    for piece in leader.pieces:
        length = float(piece.finished.high_mm) * per_mm
        at_butt = float(piece.section.diameter.mm) * per_mm * factor
        at_fly = float(fly_end_mm(piece.section)) * per_mm * factor
        yield Band(x=x, y=0.0, length=length, from_thick=at_butt, to_thick=at_fly)
        x += length
