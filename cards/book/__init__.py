"""The tying book: recipes, spools and what was tied in; one SQLite file that loses nothing out.

Functions take an open database and do their part of one transaction, which `changing` holds; what
they read is the state of that moment. Lengths of line are whole nanometres in the file, of which a
sixteenth of an inch is 1,587,500: so sums are exact, and SQL can make them.
"""
