"""A printed QR code graded from its pixels after ISO/IEC 15415: computed, not certified.

Every figure of the standard stands here from memory. What differs from it: the aperture is a
square of the circle's area, and nonuniformity is that of whole grid lines, not of single crossings.
How a printer lays ink is a likely model, no source: each dot is set or not, and grows by a share of
itself and by what paper takes.
"""

from collections.abc import Callable, Sequence

import numpy as np
from msgspec import Struct
from msgspec.structs import fields
from numpy.typing import NDArray
from PIL import Image

from tagend.layouts.codes.code import QUIET
from tagend.layouts.paper.face import Symbol
from tests.qr_layout import blocks, codewords, corrected_at_most, function_modules

Grey = NDArray[np.floating]
Rows = NDArray[np.bool_]

PAPER, INK = 0.85, 0.06  # reflectance
GROWTH, SOAK = 0.2, 0.02  # of a dot, and in mm
FINE = 0.012  # mm: a pixel in which grown dots are seen, or less
APERTURE = 0.8  # of a module: the circle that a grader looks through

# From A to D, as points 4 to 1: the least contrast, modulation and unused correction, and the most
# that axes and grid lines may be off. ISO/IEC 15415, from memory.
CONTRAST = (0.70, 0.55, 0.40, 0.20)
MODULATION = (0.50, 0.40, 0.30, 0.20)
UNUSED = (0.62, 0.50, 0.37, 0.25)
AXIAL = (0.06, 0.08, 0.10, 0.12)
GRID = (0.38, 0.50, 0.63, 0.75)


class Grade(Struct, frozen=True):
    """Points from 4 (A) to 0 (F) for each measure."""

    contrast: int
    modulation: int
    fixed_pattern: int
    axial: int
    grid: int
    unused_correction: int

    @property
    def overall(self) -> str:
        return "FDCBA"[min(getattr(self, field.name) for field in fields(self))]


def printed(picture: Image.Image, dpi: int) -> Grey:
    """Return what a printer makes of a picture of its dots, as reflectance."""
    dot = 25.4 / dpi
    times = int(np.ceil(dot / FINE))
    inked = (np.asarray(picture.convert("L")) < 128).repeat(times, axis=0).repeat(times, axis=1)
    for _ in range(round((GROWTH * dot + SOAK) / (dot / times))):
        inked = _grown(inked)
    return np.where(inked, INK, PAPER)


def _grown(inked: Rows) -> Rows:
    """Return ink that spreads by a pixel to all sides."""
    grown = inked.copy()
    grown[1:] |= inked[:-1]
    grown[:-1] |= inked[1:]
    across = grown.copy()
    across[:, 1:] |= grown[:, :-1]
    across[:, :-1] |= grown[:, 1:]
    return across


def modules(symbol: Symbol) -> Rows:
    """Return which modules of a symbol are dark, row by row."""
    return np.array([[*row] for row in symbol.rows], dtype=bool)


def grade(seen: Grey, symbol: Symbol) -> Grade:
    """Return the grades of a picture that shows this symbol, upright, and nothing else dark."""
    dark = modules(symbol)
    middle = (seen.max() + seen.min()) / 2
    inked = seen < middle
    down, across = _grid(inked, dark), _grid(inked.T, dark.T)
    light = _through_aperture(seen, down, across, symbol.side)
    contrast = float(light.max() - light.min())
    inner = light[QUIET:-QUIET, QUIET:-QUIET]
    threshold = (light.max() + light.min()) / 2
    modulation = 2 * np.abs(inner - threshold) / contrast
    modulation[(inner < threshold) != dark] = -1.0  # read wrong, at any level
    fixed = function_modules(symbol.version)
    axial = abs(across.pitch - down.pitch) / ((across.pitch + down.pitch) / 2)
    wrong = modulation < 0
    return Grade(
        contrast=_least(contrast, CONTRAST),
        modulation=_overlaid(modulation, lambda low: unused_correction(low, symbol)),
        fixed_pattern=_overlaid(modulation, lambda low: 4 - min(4, int((low & fixed).sum()))),
        axial=_most(axial, AXIAL),
        grid=_most(float(np.hypot(across.off, down.off)), GRID),
        unused_correction=unused_correction(wrong, symbol),
    )


def _least(found: float, limits: Sequence[float]) -> int:
    return sum(found >= limit for limit in limits)


def _most(found: float, limits: Sequence[float]) -> int:
    return sum(found <= limit for limit in limits)


def _overlaid(modulation: Grey, points: Callable[[Rows], int]) -> int:
    """Return the best level at which what is below it still leaves as many points."""
    levels = zip((4, 3, 2, 1), MODULATION, strict=True)
    return max(min(level, points(modulation < limit)) for level, limit in levels)


class _Grid(Struct, frozen=True):
    """The lines between the modules' rows: where the first is, in pixels, and how far apart."""

    start: float
    pitch: float
    off: float  # at most, as a share of a module


def _grid(inked: Rows, dark: Rows) -> _Grid:
    """Return the grid lines down a picture, from where dark and light meet."""
    rows, columns = np.flatnonzero(inked.any(axis=1)), np.flatnonzero(inked.any(axis=0))
    side = len(dark)
    rough, wide = (rows[-1] + 1 - rows[0]) / side, (columns[-1] + 1 - columns[0]) / side
    lines = range(1, side)
    found = np.array(
        [_line(inked, dark, line, int(rows[0]), rough, int(columns[0]), wide) for line in lines]
    )
    pitch, start = np.polyfit(lines, found, 1)
    off = np.abs(found - (start + pitch * np.array(lines))).max() / pitch
    return _Grid(start=float(start), pitch=float(pitch), off=float(off))


def _line(
    inked: Rows, dark: Rows, line: int, top: float, pitch: float, left: float, wide: float
) -> float:
    """Return where a line is: ink grows over it from above as far as from below elsewhere."""
    begin, end = (round(top + (line + step) * pitch) for step in (-0.5, 0.5))
    ends: dict[bool, list[float]] = {True: [], False: []}
    for column in np.flatnonzero(dark[line - 1] != dark[line]):
        above = bool(dark[line - 1, column])
        ink = inked[begin:end, round(left + (column + 0.5) * wide)].sum()
        ends[above].append(begin + ink if above else end - ink)
    return float(np.mean([np.mean(each) for each in ends.values() if each]))


def _through_aperture(seen: Grey, down: _Grid, across: _Grid, side: int) -> Grey:
    """Return the light of each module and of the quiet zone through the aperture."""
    half = APERTURE * np.sqrt(np.pi) / 4 * (down.pitch + across.pitch) / 2
    sums = np.pad(seen.cumsum(axis=0).cumsum(axis=1), ((1, 0), (1, 0)))
    places = np.arange(-QUIET, side + QUIET) + 0.5
    top, bottom = (_ends(down, places, way * half, seen.shape[0]) for way in (-1, 1))
    left, right = (_ends(across, places, way * half, seen.shape[1]) for way in (-1, 1))
    whole = sums[np.ix_(bottom, right)] - sums[np.ix_(top, right)]
    whole -= sums[np.ix_(bottom, left)] - sums[np.ix_(top, left)]
    return np.asarray(whole / np.outer(bottom - top, right - left))


def _ends(grid: _Grid, places: Grey, by: float, most: int) -> NDArray[np.int_]:
    found = np.round(grid.start + grid.pitch * places + by).astype(int)
    assert found.min() >= 0, "the picture does not show the quiet zone"
    assert found.max() <= most, "the picture does not show the quiet zone"
    return found


def unused_correction(wrong: Rows, symbol: Symbol) -> int:
    """Return the points for the correction that wrong modules leave, of the worst block."""
    of_module = codewords(symbol.version)
    bad = {int(place) for place in of_module[wrong & (of_module >= 0)]}
    of = blocks(symbol)
    used = [sum(of[place] == block for place in bad) for block in range(max(of) + 1)]
    shares = zip(used, corrected_at_most(symbol), strict=True)
    return min(_least(1 - count / most, UNUSED) for count, most in shares)
