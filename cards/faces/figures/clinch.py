"""The clinch and the improved clinch: the turns in, the strand and the eye out."""

from cards.faces.figures.curve import Point, coil, rounded, smooth
from cards.faces.figures.strand import Strand, strand
from math import cos, pi, sin

_R = 1.3


def eye(x: float) -> Strand:
    """Return a hook's eye whose middle is at x, with the beginning of its shank."""
    ring = [(x - 1.5 * cos(k * pi / 6), 1.5 * sin(k * pi / 6), 0.0) for k in range(-6, 6)]
    return Strand(smooth([(x + 4, 0, 0), (x + 2.0, 0, 0), *ring[0:], (x+1.4,-.1,0)]), "solid", 0.8)

def clinch_laid(turns: int, improved: bool = False) -> tuple[Strand, ...]:
    pitch = min(1.9, 20 / turns)
    g = 5.4 if improved else 4.6
    wound = turns if improved else turns + 0.5
    far = -g - wound * pitch
    side = -1.0 if improved else 1.0
    back = side * (_R + 1.5)
    line = [
        *rounded([(far - 3.5, 0, 0), (-g - 0.3, 0, 0), (-g + 0.9, _R, 0), (-3, _R, 0), (-2.2, 0.6, 0.8), (-0.2, 0.6, 0.6), (-.2, -0.6, -0.6), (-2.2, -0.6, -0.8), (-3, -_R, -0.3),(-g+.3,-_R,0)], 0.7),
        *coil(-g, far, -wound, 180, _R, _R)[1:-1] ,
        ]
    line = [*line[:],]
    tip=[ (far - 0.5, side*_R, .6*side), (far - 1.3, side*_R, .8*side), (far - 1.3, back, .8*side), (far + 0.5, back, 0)]
    if improved:
        tip += [(-2.7, back, 0.2), (-2.7, -_R, 1.2), (-2.7, 0.3, 0.0), (-4, 0.3, 0.0), (-4, -_R, -1.2), (-4, back, 1.2), (-4, back - 1.8, 1)]
    else:
        tip += [(-3, back, -1), (-3, _R, -1.2), (-3, -_R, 1.2), (-3, -_R - 1.8, 1.2)]
    return strand([*line, *rounded(tip, 0.7)], "outline"), eye(0)


def improved_laid(turns: int) -> tuple[Strand, ...]:
    return clinch_laid(turns, True)

def clinch_drawn(turns: int, improved: bool = False) -> tuple[Strand, ...]:
    pitch = 1.05
    g = 5.0 if improved else 4.2
    wound = turns if improved else turns + 0.5
    far = -g - wound * pitch
    line = [ *rounded([(far - 3.5, 0, -0.5), (-3.2, 0, -0.5), (-2.0, -0.6, -0.8), (-0.2, -0.6, -0.6), (-.2, 0.6, 0.6), (-2., 0.6, 0.8), (-3.2, 0, 0.5), (far-.5, 0, 0.5),(far-.5,0,1.55)],.5),
      *coil(far, -g, -wound, 90, 1.05, 1.55)]
    if improved:
        tip=[(-g+.9,.8,1.4), (-3.2, 1.3,.7),(-3.2,0,0),(-3.2,-1.3,0.5),(-4.2,-1.3,1.2),(-4.2,0,1.4),(-4.4,2.6,1.3)]
        line += rounded(tip,.5)
    else:
        line += rounded([(-g+.8,-1.2,-1.2),(-3.2,-1.2,-.3),(-3.2,0,0),(-3.2,2.6,0)],.6)
    return strand(line,"outline"), eye(0)

def improved_drawn(turns): return clinch_drawn(turns, True)
