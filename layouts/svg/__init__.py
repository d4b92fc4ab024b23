"""The writer of drawings: a face or a sheet in, the bytes of an SVG file out, or of a picture."""
