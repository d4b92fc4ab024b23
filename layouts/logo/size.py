"""The size at which logos are read: that of the largest box that a face gives one, on fine print.

A face works out the box from its words when it is set, after the logo is read. A larger print
than this, as on a sheet beyond A4, comes out coarser.
"""

from tagend.layouts.paper.face import MM, POINTS_PER_INCH

_DPI = 1200  # what office printers set at most: common practice, no source
BOX = (round(60 * MM / POINTS_PER_INCH * _DPI), round(25 * MM / POINTS_PER_INCH * _DPI))  # pixels
