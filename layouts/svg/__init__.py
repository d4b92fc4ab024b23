"""The writer of single pictures: a face in, the bytes of an SVG file out."""
