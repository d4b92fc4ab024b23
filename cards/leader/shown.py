"""A quantity of a recipe and its leader in; how it is shown out: as written, or all in one unit."""

from tagend.cards.base.shown_lengths import diameter_in, length_in, strength_in
from tagend.cards.base.units import Diameter, Length, Strength
from tagend.cards.leader.leader import Leader


def shown_length(of: Length, leader: Leader) -> str:
    """Return a length as written, or in the unit that a person wants all shown in."""
    return length_in(of, leader.unit) if leader.converted else of.plain


def shown_diameter(of: Diameter, leader: Leader) -> str:
    """Return a diameter alike; an X size stays as it is."""
    return diameter_in(of, leader.unit) if leader.converted else of.plain


def shown_strength(of: Strength, leader: Leader) -> str:
    """Return a strength alike: pounds with inches, kilograms with metric lengths."""
    return strength_in(of, leader.unit) if leader.converted else of.plain
