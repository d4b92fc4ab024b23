"""A code's modules and what befell its label in, the grey picture that a phone takes of it out.

A simulation: nobody measured it against worn labels, and its figures are likely ones, no more.
The same label, wear and seed give the same picture.
"""

import math
from collections.abc import Sequence
from functools import lru_cache

import cv2
import numpy as np
from msgspec import Struct
from numpy.random import Generator
from numpy.typing import NDArray

from tagend.layouts.codes.code import QUIET

Rows = Sequence[Sequence[bool]]  # a row of modules after the other; dark is true
Grey = NDArray[np.float32]  # share of light that a point sends back, 0 to 1

FINE = 1200  # points to an inch where ink is laid: whole ones for each printer's dots
MM = 600 / 25.4  # of paper, in points of the picture of it
ROUND = 3.0  # mm of table that are seen around the quiet zone
PAPER, INK = 0.85, 0.06
# 1,920 points across 65 degrees, as the frames of many phones' cameras: 1510 / distance to a mm.
POINTS_AT_A_MM = 1510


class Label(Struct, frozen=True):
    """A printed code: its modules, their size in mm, and the printer's dots to an inch."""

    rows: Rows
    module: float
    dpi: int


class Wear(Struct, frozen=True):
    """What befalls a label, and how its picture is taken; lengths are in mm."""

    name: str
    gain: float = 0.0  # by which ink spreads over each edge, besides a fifth of a printer's dot
    ink: float = INK
    creases: int = 0
    corner: float = 0.0  # along each side of what is torn off
    stain: float = 0.0  # share of the code that is covered
    curl: float = 0.0  # radius; 0 is flat
    tilt: float = 6.0  # degrees
    distance: float = 150.0
    blur: float = 0.03  # sigma, on the paper
    glare: float = 0.0  # diameter of a lamp's image


def picture(label: Label, wear: Wear, seed: tuple[int, ...]) -> NDArray[np.uint8]:
    """Return what the phone sees, upright in no way."""
    random = np.random.default_rng(seed)
    paper = _printed(label, wear, random)
    quiet = QUIET * label.module
    for _ in range(wear.creases):
        _crease(paper, random)
    if wear.stain:
        _stain(paper, wear.stain, quiet, random)
    _lay_on_table(paper, wear.corner, random)
    return _taken(paper, wear, random)


def _printed(label: Label, wear: Wear, random: Generator) -> Grey:
    """Return a label with a code; ink spreads less or more from place to place."""
    away = _away(label)
    spread = 0.2 * 25.4 / label.dpi + wear.gain
    inked = away < np.maximum(spread * (1 + 0.6 * _mottle(away.shape, 3, random)), 0.001)
    shape = (away.shape[0] // 2, away.shape[1] // 2)
    share = cv2.resize(inked.astype(np.float32), shape[::-1], interpolation=cv2.INTER_AREA)
    paper = PAPER + 0.02 * _mottle(shape, 7, random)
    ink = wear.ink + (0.02 + 0.15 * wear.ink) * _mottle(shape, 4, random)
    return np.asarray(paper + (ink - paper) * share, np.float32)


@lru_cache(maxsize=1)
def _away(label: Label) -> Grey:
    """Return how far each point is from the nearest dot that the printer sets, in mm."""
    dot = 25.4 / label.dpi
    edges = np.round(np.arange(len(label.rows) + 1) * label.module / dot).astype(int)
    wide = np.diff(edges) * (FINE // label.dpi)
    light = 1 - np.array(label.rows, dtype=np.uint8).repeat(wide, axis=0).repeat(wide, axis=1)
    border = 2 * round((QUIET * label.module + ROUND) * MM)
    light = np.pad(light, border, constant_values=1)
    return np.asarray(cv2.distanceTransform(light, cv2.DIST_L2, 5) * 25.4 / FINE, np.float32)


def _mottle(shape: tuple[int, ...], step: int, random: Generator) -> Grey:
    """Return noise of unit strength whose blotches are `step` points wide."""
    small = random.standard_normal((shape[0] // step + 2, shape[1] // step + 2), dtype=np.float32)
    return np.asarray(cv2.resize(small, shape[::-1], interpolation=cv2.INTER_LINEAR), np.float32)


def _crease(paper: Grey, random: Generator) -> None:
    """Break the ink along a fold, and shade one side of it."""
    height, width = paper.shape
    centre = np.array([width, height]) * random.uniform(0.25, 0.75, 2)
    angle = random.uniform(0, np.pi)
    y, x = np.ogrid[:height, :width]
    off = ((x - centre[0]) * np.sin(angle) - (y - centre[1]) * np.cos(angle)).astype(np.float32)
    half = random.uniform(0.1, 0.25) * MM * (1 + 0.5 * _mottle(paper.shape, 9, random))
    paper[np.abs(off) < half] = PAPER - 0.1
    paper[off > 0] *= random.uniform(0.75, 0.95)


def _stain(paper: Grey, share: float, quiet: float, random: Generator) -> None:
    """Cover a share of the code with drops: as many that dim it as such that hide it."""
    edge = round((quiet + ROUND) * MM)
    side = paper.shape[0] - 2 * edge
    covered = np.zeros(paper.shape, np.uint8)
    hides = random.random() < 0.5
    while covered[edge:-edge, edge:-edge].mean() < share:
        middle = edge + random.uniform(0, side, 2)
        axes = side * np.sqrt(share) * random.uniform(0.1, 0.35, 2)
        cv2.ellipse(
            covered,
            (round(middle[0]), round(middle[1])),
            (round(axes[0]) + 1, round(axes[1]) + 1),
            random.uniform(0, 180),
            0,
            360,
            1,
            -1,
        )
    drops = covered > 0
    paper[drops] = 0.25 if hides else paper[drops] * 0.5


def _lay_on_table(paper: Grey, corner: float, random: Generator) -> None:
    """Show the table around the label, and where a corner is torn off."""
    height, width = paper.shape
    table = 0.35 + 0.1 * _mottle(paper.shape, 24, random)
    edge = round(ROUND * MM)
    bare = np.ones(paper.shape, bool)
    bare[edge:-edge, edge:-edge] = False
    if corner:
        # The code stands at the label's right end, where its free corners are.
        y, x = np.ogrid[:height, :width]
        down = y - edge if random.random() < 0.5 else height - edge - y
        bare |= down + (width - edge - x) < corner * MM
    paper[bare] = table[bare]


def _taken(paper: Grey, wear: Wear, random: Generator) -> NDArray[np.uint8]:
    """Return the picture that a camera takes of a label from above."""
    points = POINTS_AT_A_MM / wear.distance
    # What a point of the sensor sees is a blur too, of its own width.
    sharp = cv2.GaussianBlur(paper, (0, 0), float(np.hypot(wear.blur, 0.35 / points)) * MM)
    side = round(paper.shape[0] / MM * points * 1.5)
    x, y = (at * MM + paper.shape[0] / 2 for at in _on_paper(side, points, wear, random))
    seen = cv2.remap(
        sharp, x, y, cv2.INTER_LINEAR, borderMode=cv2.BORDER_CONSTANT, borderValue=(0.35,)
    )
    return _exposed(np.asarray(seen, np.float32), wear.glare * points, random)


def _on_paper(side: int, points: float, wear: Wear, random: Generator) -> tuple[Grey, Grey]:
    """Return where on the paper, in mm from its middle, each ray of the camera ends."""
    turn, way = (math.tau * random.random() for _ in range(2))
    at = np.asarray((np.arange(side) - (side - 1) / 2) / points, np.float32)
    u, v = _turned(at.reshape(1, -1), at.reshape(-1, 1), way)
    # The paper is tilted about a line through its middle.
    tilt = math.radians(wear.tilt)
    depth = np.asarray(1 / (1 - u * math.tan(tilt) / wear.distance), np.float32)
    u, v = _turned(u * depth / math.cos(tilt), v * depth, turn)
    if not wear.curl:
        return u, v
    # A ray meets the cylinder x = r sin t, z = r (1 - cos t), which bends away from the camera,
    # where sin t + k cos t = k (d + r) / r, k being its slope.
    k = u / wear.distance
    sine = k * (wear.distance + wear.curl) / (wear.curl * np.sqrt(1 + k * k))
    t = np.arcsin(np.clip(sine, -1, 1)) - np.arctan(k)
    t[np.abs(sine) > 1] = 1e6  # past the cylinder
    return wear.curl * t, v * (1 + wear.curl * (1 - np.cos(t)) / wear.distance)


def _turned(x: Grey, y: Grey, angle: float) -> tuple[Grey, Grey]:
    cos, sin = math.cos(angle), math.sin(angle)
    return x * cos - y * sin, x * sin + y * cos


def _exposed(seen: Grey, glare: float, random: Generator) -> NDArray[np.uint8]:
    """Return the picture as the sensor has it: uneven light, a lamp's image, noise, sRGB."""
    side = seen.shape[0]
    y, x = (at / side - 0.5 for at in np.ogrid[:side, :side])
    angle = random.uniform(0, 2 * np.pi)
    light = 1 + 0.3 * (x * np.cos(angle) + y * np.sin(angle))
    if glare:
        # Somewhere over the code, which fills the middle half.
        at = random.uniform(-0.22, 0.22, 2)
        away = np.hypot(x - at[0], y - at[1]) * side / (glare / 2)
        seen = np.asarray(seen + 1.5 * np.exp(-(away**4)), np.float32)
    noisy = seen * light + random.normal(0, 0.012, seen.shape)
    return np.asarray(255 * np.clip(noisy, 0, 1) ** (1 / 2.2), np.uint8)
