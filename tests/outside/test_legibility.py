"""Type sizes against published limits of legibility.

Character height by visual angle: ISO 9241-3 (16 minutes of arc at least, 20 to 22 preferred) and
NUREG-0700 rev. 2, guideline 1.3.1-4 (16 at least, 20 to 22 preferred for reading). Heights and
sizes below follow from h = 2 d tan(θ/2) and were worked out apart from this program; capitals of
the first font are 0.698 em high.
"""

import math

import pytest

from tagend import fonts
from tagend.layouts.paper.face import MM
from tagend.layouts.paper.legible import FLOOR, LEAST_ARC, READING_ARC, height_at, size_for

# distance in mm, minutes of arc, height in mm, size in points
VISUAL_ANGLE = [
    (350, 16, 1.63, 6.6),
    (350, 20, 2.04, 8.3),
    (350, 22, 2.24, 9.1),
    (400, 16, 1.86, 7.6),
    (400, 20, 2.33, 9.5),
    (400, 22, 2.56, 10.4),
    (450, 16, 2.09, 8.5),
    (500, 20, 2.91, 11.8),
    (600, 16, 2.79, 11.3),
    (600, 20, 3.49, 14.2),
    (700, 16, 3.26, 13.2),
    (700, 22, 4.48, 18.2),
]


@pytest.mark.parametrize(("distance", "arc", "height", "size"), VISUAL_ANGLE)
def test_sizes_subtend_their_angle(distance: float, arc: float, height: float, size: float) -> None:
    assert height_at(arc, distance) == pytest.approx(height, abs=0.006)
    assert size_for(arc, distance) == pytest.approx(size, abs=0.06)


def test_the_limits_are_the_published_ones() -> None:
    assert LEAST_ARC == 16
    assert 20 <= READING_ARC <= 22


def test_capitals_at_the_floor_subtend_16_minutes_at_400_mm() -> None:
    capital_mm = FLOOR * fonts.CAP_HEIGHT / MM
    arc = math.degrees(2 * math.atan(capital_mm / 2 / 400)) * 60
    assert round(arc) == LEAST_ARC  # 1.847 mm: 15.87


def test_small_letters_at_the_floor_pass_the_food_labels_limit() -> None:
    # Regulation (EU) 1169/2011, article 13(3): x-height of 0.9 mm on faces under 80 cm² (ID-1: 46)
    assert FLOOR * fonts.X_HEIGHT / MM >= 0.9
    # and article 13(2): 1.2 mm on larger ones
    assert FLOOR * fonts.X_HEIGHT / MM >= 1.2
