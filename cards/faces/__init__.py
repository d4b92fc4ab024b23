"""Computed values and words in; cards, labels and bench sheets as faces out."""
