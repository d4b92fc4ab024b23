"""A recipe and a practice in; the leader worked out, every piece, knot and finding, out."""
