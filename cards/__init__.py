"""The trade: recipes, what to cut, tie and heed for them, and how cards and labels say it."""
