"""A knot and its turns in; the knot drawn, stage by stage, out."""
