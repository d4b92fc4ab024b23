"""Sample recipes, a rack and a shop file of an invented shop, ready to run."""
