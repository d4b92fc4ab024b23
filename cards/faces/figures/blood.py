"""The blood knot: the turns of either side in, its two strands laid up or drawn up out."""

from cards.faces.figures.curve import Point, coil, rounded
from cards.faces.figures.strand import Strand, strand, turned

_LAID = 24.0  # of coil on both sides together, at most
_R = 1.3
_GAP = 3.2
_TAG = 1.0  # where the tags cross the gap, from its middle


def blood_laid(thick: int, thin: int) -> tuple[Strand, ...]:
    """Each tag wound outwards round the other strand, brought back and put through the gap."""
    pitch = min(1.9, _LAID / (thick + thin))
    right, left = _GAP + thick * pitch, _GAP + thin * pitch
    ends = max(right, left) + 3.0
    a = _laid(thick, right, ends, 1.3)
    b = _laid(thin, left, ends, -1.3)
    return strand(a, "outline"), strand(turned(b), "solid")


def _laid(turns: int, far: float, ends: float, z: float) -> list[Point]:
    back = _R + 1.5
    return [
        *rounded([(-ends, 0, 0), (-_GAP, 0, 0), (-1.8, _R, 0), (_GAP - 0.3, _R, 0)], 0.8),
        *coil(_GAP, far, turns, 0, _R, _R)[1:-1],
        *rounded(
            [
                (far + 0.5, _R, 0.6),
                (far + 1.3, _R, 0.8),
                (far + 1.3, back, 0.8),
                (far - 0.5, back, z),
                (_TAG, back, z),
                (_TAG, _R, z),
                (_TAG, -_R, -z),
                (_TAG, -_R - 2.4, -z),
            ],
            0.8,
        ),
    ]


def blood_drawn(thick: int, thin: int) -> tuple[Strand, ...]:
    """The turns closed up, over the other strand and the own one, with the tags in the middle."""
    pitch = 1.05
    g=2.2
    right, left = g + thick * pitch, g + thin * pitch
    ends = max(right, left) + 3.0
    a = [
        *rounded([
        (-ends, 0, -0.5),
        (-g, 0, -0.5),
        (-1.0, 0, -1.0),
        (1.0, 0, -1.0),
        (g, 0, -0.5),
        (right + 0.5, 0.0, -0.5),
        (right + 0.5, 0.0, -1.5)],.5),
        *coil(right, g, thick, -90, 1.05, 1.55),
        *rounded([(g-.3, 0.7, -1.2),
        (1.5, 1.3, -0.6),
        (0.7, 1.3, 0),
        (0.7, -2.6, 0)], 0.6),
    ]
    b = [
        *rounded([
        (ends, 0, 0.5),
        (g, 0, 0.5),
        (1.0, 0, 1.0),
        (-1.0, 0, 1.0),
        (-g, 0, 0.5),
        (-left - 0.5, 0, 0.5),
        (-left - 0.5, 0, 1.5)],.5),
        *coil(-left, -g, 0.25 - thin, 90, 1.05, 1.55),
        *rounded([
        (-1.4, -1.3, 0.3),
        (-0.7, -1.3, 0),
        (-0.7, 2.6, 0)],.6)
    ]
    return strand(a, "outline"), strand(b, "solid")
