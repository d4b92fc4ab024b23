"""The nail knot: the turns in, line and butt laid up or drawn up out."""

from cards.faces.figures.curve import coil, rounded, smooth
from cards.faces.figures.strand import Strand, strand


def nail_laid(turns):
    return _nail(turns, 1.7, 1.5, 0, 2.6, 2.0)
def nail_drawn(turns):
    return _nail(turns, 1.05, 0, 1.5, 1.55, 2.6)

def _nail(turns, pitch, y, z, high, deep):
    far = turns*pitch
    line = Strand(smooth([(-5,0,0),(0,0,0),(far+2.2,0,0)]),"outline",1.8,last_cut=True)
    e=0.6
    butt = [
      *rounded([(far+6,-y,z),(far-.5,-y,z),(-.8,-y,z),(-.8,-y*.5,deep)],.5),
      *coil(0,far,-turns+.0,90 ,high,deep)[1:],
      *rounded([(far+.8,high*.5,deep*.8),(far+.8,y,-z),(far-.5,y,-z),(-4,y,-z)],.5),
    ]
    return line, strand(butt,"solid")
