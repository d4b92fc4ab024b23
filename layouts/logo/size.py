"""The size at which logos are read: that of the largest box that a face gives one, on fine print.

A face works out the box from its words when it is set, after the logo is read. The largest ones
are those of a deck's cover: 59 mm wide on 5 × 8 in, 28 mm high on ID-1. A larger one would be
printed coarser.
"""

from tagend.layouts.paper.face import MM, POINTS_PER_INCH

_DPI = 1200  # what office printers set at most: common practice, no source
BOX = (round(60 * MM / POINTS_PER_INCH * _DPI), round(30 * MM / POINTS_PER_INCH * _DPI))  # pixels
