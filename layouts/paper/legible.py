"""How large type must be to be read."""

# Points. Capitals of 1.87 mm, 16 minutes of arc at 400 mm: the least that ISO 9241-3 and
# NUREG-0700 rev. 2 (guideline 1.3.1-4) allow, at the distance of a card held to tie from.
FLOOR = 7.6
