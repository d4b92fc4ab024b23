"""Loop to loop: two loops joined, before they are drawn together and after."""

from cards.faces.figures.curve import rounded, smooth
from cards.faces.figures.strand import Strand


def loops_laid(): return _loops(2.7, 2.0, 3.6)
def loops_drawn(): return _loops(1.45, 1.35, 3.)

def _loops(s, w, e):
    a = _loop(s, w, e)
    b = [(-x, y, -z) for x, y, z in a]
    k = s + 2.4
    return (Strand(smooth(a),"outline"),Strand(smooth(b),"solid"), Strand(((-k,1.1,2),(-k,-1.1,2)),"solid",1.2), Strand(((k,1.1,2),(k,-1.1,2)),"solid",1.2))

def _loop(s, w, e):
    k = s + 2.4
    return rounded([(-k-e,0,0),(-k-.6,0,0),(-k+.3,.55,.3),(-s,.55,1.),(0,.5+w/2,-1.),(s*.7,w,.2),(s,w,.6),(s,0,1.2),(s,-w,.6),(s*.7,-w,.2),(0,-.5-w/2,-1),(-s,-.55,1.),(-k,-.55,.3)], .9)
