"""A recipe file or a table like one in; the recipe as it was written, checked, out, and back."""
