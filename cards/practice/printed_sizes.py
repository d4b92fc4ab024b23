"""Diameters as they are printed: two in, how they compare out, but for what print rounds off.

Millimetres are printed to the hundredth, so a strand of 0.33 mm may be a 0.013 in one (0.3302): a
printed diameter may be off by half a hundredth, and the step between two by a whole one.
"""

from cfractions import Fraction

PRINTED_MM = Fraction(1, 100)
ROUNDED_MM = PRINTED_MM / 2


def alike(one_mm: Fraction, other_mm: Fraction) -> bool:
    """Whether two diameters may be one, printed in inches and in millimetres."""
    return abs(one_mm - other_mm) < PRINTED_MM


def strand_up_to(diameter_mm: Fraction, most_mm: Fraction) -> bool:
    """Whether a strand may be no thicker than this."""
    return diameter_mm <= most_mm + ROUNDED_MM


def strand_from(diameter_mm: Fraction, least_mm: Fraction) -> bool:
    """Whether a strand may be as thick as this."""
    return thickest_meant(diameter_mm) >= least_mm


def thickest_meant(diameter_mm: Fraction) -> Fraction:
    """Return how thick a strand may be that is printed so."""
    return diameter_mm + ROUNDED_MM


def step_up_to(step_mm: Fraction, most_mm: Fraction) -> bool:
    """Whether a step between two strands may be no bigger than this."""
    return step_mm <= most_mm + PRINTED_MM
