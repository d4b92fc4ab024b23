"""Figures: a knot and its turns drawn as strands that pass over and under one another."""
