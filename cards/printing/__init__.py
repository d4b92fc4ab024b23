"""Computed values and wishes for the paper in; the bytes of a PDF out, and recipes back."""
