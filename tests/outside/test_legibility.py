"""Type sizes against published limits of legibility.

Character height by visual angle: ISO 9241-3 (16 minutes of arc at least, 20 to 22 preferred) and
NUREG-0700 rev. 2, guideline 1.3.1-4 (16 at least, 20 to 22 preferred for reading).
"""

import math

from tagend import fonts
from tagend.layouts.paper.face import MM
from tagend.layouts.paper.legible import FLOOR


def test_capitals_at_the_floor_subtend_16_minutes_at_400_mm() -> None:
    capital_mm = FLOOR * fonts.CAP_HEIGHT / MM
    arc = math.degrees(2 * math.atan(capital_mm / 2 / 400)) * 60
    assert round(arc) == 16  # 1.847 mm: 15.87


def test_small_letters_at_the_floor_pass_the_food_labels_limit() -> None:
    # Regulation (EU) 1169/2011, article 13(3): x-height of 0.9 mm on faces under 80 cm² (ID-1: 46)
    assert FLOOR * fonts.X_HEIGHT / MM >= 0.9
    # and article 13(2): 1.2 mm on larger ones
    assert FLOOR * fonts.X_HEIGHT / MM >= 1.2
