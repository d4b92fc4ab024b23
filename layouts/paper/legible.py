"""How large type must be: a visual angle and a reading distance in, a size in points out."""

import math

from tagend.fonts import CAP_HEIGHT
from tagend.layouts.paper.face import MM

# Capitals of 1.85 mm, 16 minutes of arc at 400 mm: the least that ISO 9241-3 and NUREG-0700
# rev. 2 (guideline 1.3.1-4) allow, at the distance of a card held to tie from.
FLOOR = 7.5

LEAST_ARC = 16.0  # minutes, the same two sources
READING_ARC = 20.0  # minutes; both prefer 20 to 22


def height_at(arc: float, distance: float) -> float:
    """Return the height that subtends `arc` minutes at a distance, in the distance's unit.

    h = 2 d tan(θ/2), the definition of the visual angle.
    """
    return 2 * distance * math.tan(math.radians(arc / 60) / 2)


def size_for(arc: float, distance_mm: float) -> float:
    """Return the type size in points whose capitals subtend `arc` minutes at the distance."""
    return height_at(arc, distance_mm) * MM / CAP_HEIGHT
