"""The wave equation on a string of pieces, by finite differences: a pulse in, what arrives out.

mu u_tt = T u_xx with T = 1, where mu, the mass by length, is constant along each piece: leapfrog on
an even grid. The first piece goes on upwards and the last one downwards, so nothing comes back from
either end: what hangs at the fly is left out.
"""

from collections.abc import Sequence

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from tagend.cards.leader.leader import Leader

Vector = NDArray[np.float64]

_CFL = 0.9  # of the lightest piece, where waves are fastest; stable below 1
_LONG = 3.0  # what arrives is waited for so many times as long as the way down takes


class Part(Struct, frozen=True):
    """One piece of string: its length in mm and its mass by length, in any unit."""

    length: float
    mass: float

    @property
    def takes(self) -> float:
        """How long a wave is on its way through it."""
        return self.length * float(np.sqrt(self.mass))


def string_of(leader: Leader) -> list[Part]:
    """Return a leader as a string; density x d^2 without the factors that all pieces share."""
    parts = []
    for piece in leader.pieces:
        density = piece.material.density
        assert density
        assert piece.section.tapers_to is None
        middle = float(sum(density) / 2)
        diameter = float(piece.section.diameter.mm)
        parts.append(Part(float(piece.finished.high_mm), middle * diameter**2))
    return parts


def short_pulse(parts: Sequence[Part]) -> float:
    """Return how long a pulse is in the first piece that is shorter than every piece it is in."""
    return 0.8 * min(part.takes for part in parts) / float(np.sqrt(parts[0].mass))


def arriving(parts: Sequence[Part], pulse: float, points: int = 60) -> float:
    """Return the share of a pulse's energy that passes the lower end of the last piece.

    The pulse is a raised cosine of displacement, `pulse` mm long in the first piece and going down;
    `points` of the grid lie on it.
    """
    step = pulse / points
    speed = 1 / np.sqrt([part.mass for part in parts])
    tick = _CFL * step / speed.max()
    lasts = _LONG * sum(part.takes for part in parts) + 2 * pulse / speed[0]
    above, below = pulse + lasts * speed[0] / 2, lasts * speed[-1] / 2
    length = above + sum(part.length for part in parts) + below
    x = np.arange(0, length, step) - above
    mass = _masses(parts, x, step)

    def shape(at: Vector) -> Vector:
        inside = (at > -pulse) & (at < 0)
        return np.where(inside, np.sin(np.pi * at / pulse) ** 2, 0.0)

    before, now = shape(x + speed[0] * tick), shape(x)
    sent = float(np.sum(np.diff(now) ** 2) / step)  # kinetic and potential energy are alike
    factor = (tick / step) ** 2 / mass[1:-1]
    fly = int(np.searchsorted(x, sum(part.length for part in parts)))
    arrived = 0.0
    for _ in range(int(lasts / tick)):
        after = np.zeros_like(now)
        after[1:-1] = 2 * now[1:-1] - before[1:-1] + factor * np.diff(now, 2)
        arrived += ((after[fly] - before[fly]) / (2 * tick)) ** 2 * tick
        before, now = now, after
    return float(arrived / speed[-1] / sent)  # power of a wave that goes down: Z v^2


def _masses(parts: Sequence[Part], x: Vector, step: float) -> Vector:
    """Return the mass by length round each point, of the half steps on both its sides."""
    ends = np.cumsum([part.length for part in parts])[:-1]
    masses = np.array([part.mass for part in parts])
    fine = x[:, None] + step * (np.arange(10) - 4.5) / 10
    around: Vector = masses[np.searchsorted(ends, fine)].mean(axis=1)
    return around
