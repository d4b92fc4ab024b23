"""Faces: a worksheet set on cards and labels."""
