"""The perfection loop: its strand with the loops laid up, and with one drawn through the other."""

from cards.faces.figures.curve import Point, rounded
from cards.faces.figures.strand import Strand, strand


def perfection_laid() -> tuple[Strand, ...]:
    return (strand(_lying([
        (0, -6.5, 0), (0, 7.2, 0), (-3.5, 7.2, 0), (-3.5, 0.6, 0), (-1.2,.6,-1.1),(0, 0.6, -1.1), (1.2, 0.6, 0),
        (1.2,2,2.3),(1.2, 5.2, 2.3), (-2.3, 5.2, 2.3), (-2.3, 0.6, 1.5),(-2.3,-1.8,0), (-1,-1.8,-1), (1,-1.8,-1),(2.5, -1.8, 0),
        (2.5, 3, 1.1), (-5.2, 3, 1.1)])),)

def _lying(corners) -> list[Point]:
    return rounded([(-y, x, z) for x, y, z in corners],1.3)

def strand(places):
    from cards.faces.figures.curve import smooth
    return Strand(smooth(places),"outline")

def perfection_drawn() -> tuple[Strand, ...]:
    return (strand(_lying([
        (0, -5.5, 0), (0, 6.4, 0), (-3.5, 6.4, 0), (-3.5, 0.6, 0), (-1.2,.6,-1.1),(0, 0.6, -1.1), (1.2, 0.6, 0),
        (1.2, 2.4, 1.3), (-1.2,2.4,2), (-1.2,4.4,2.2),(-1.2,6.4,-1.2),(-1.1,8,-1),(0.1,12,0),(-3.6,12,0),(-2.4,8,-1),(-2.3,6.4,-1.2),(-2.3,4.4,2.2),(-2.3, 0.6, 1.5),(-2.3,-1.4,0), (-1,-1.4,-1.1), (1,-1.4,-1.1),(2.4, -1.4, 0),
        (2.4, 4.4, 1.1), (-5., 4.4, 1.1)])),)
