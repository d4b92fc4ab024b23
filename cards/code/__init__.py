"""A recipe in, the plain text of a label's code out, and back."""
