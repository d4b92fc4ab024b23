"""Sample recipes, a table of more, a rack and a shop file of an invented shop, ready to run."""
