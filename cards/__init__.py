"""The trade: what a recipe wants, what to cut, tie and heed for it, and how cards say it."""
