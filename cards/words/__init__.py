"""Computed values in, words for people in one language out."""
