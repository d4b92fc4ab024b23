"""The non-slip loop."""

from cards.faces.figures.clinch import eye
from cards.faces.figures.curve import coil, rounded
from cards.faces.figures.strand import strand


def nonslip_laid(turns):
    """The overhand, the eye and the way back through the overhand."""
    p = min(1.7, 9/turns)
    far = -3.6 - turns*p
    a = [*rounded(_begin(far - 3.), 1.0)[:-1],
      *rounded([(.2,1.8,-0.),(.2,0,-1.2),(.2,-2.3,-.6),(-5.5,-2.3,-.6)],1.0)[1:]]
    return strand(a,"outline"), eye(11.2)

def _begin(start):
    return [(start,0,0),(3,0,0),(3.,3.9,0),(-2.2,3.9,0),(-2.2,0,1.1),(-2.2,-1.4,.6),(-.9,-1.4,-.6),(-.9,0,-1.2),(-.9,2.7,0),(3,2.7,1.2),
      (5,2.7,.8),(7,3.8,.2),(9.4,2.9,.8),(11,2.9,.6),(11,1.6,-.6),(9.4,1.6,-.8),(7,.6,.2),(5,1.8,.8),(3,1.8,1.2),(.2,1.8,0)]

def nonslip_drawn(turns):
    p = min(1.7, 9/turns)
    far = -3.6 - turns*p
    a = [*rounded(_begin(far - 3.) + [(.2,0,-1.2),(.2,-2.3,-.6),(-2.9,-2.3,-.3),(-3,-1.3,.0)], 1.0)[:-1],
      *coil(-3.6,far,-turns,180,1.3,1.3)[1:-1],
      *rounded([(far-.5,-1.3,-.6),(far-1.3,-1.3,-.8),(far-1.3,-3.3,-.8),(far+.5,-3.3,-.6),(1.3,-3.3,-.6),(1.3,0,-1.2),(1.3,.9,0),(3,.9,1.2),(4.8,.9,1.2)],.9)]
    return strand(a,"outline"), eye(11.2)
