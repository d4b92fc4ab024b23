"""A recipe and what shall change in it in; the whole changed recipe out."""
