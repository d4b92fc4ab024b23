"""The tying book: recipes, spools and what was tied in; one SQLite file that loses nothing out."""
