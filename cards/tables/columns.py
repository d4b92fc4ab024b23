"""The columns of a table of recipes: a row is a section, from the butt to the fly."""

import re
from collections.abc import Mapping

NUMBER = "section"

# Of the whole leader, written in its first row: the column, and what stands in it.
OF_RECIPE: Mapping[str, str] = {
    "name": "the leader's name; rows without one belong to the leader above",
    "use": "the fish, the water, the wind",
    "line_weight": "1 to 15",
    "line_tip": "diameter of the fly line's tip, such as 0.036 in",
    "total": "the finished length that the recipe states",
    "lengths": "finished (knot to knot; the same when left empty) or cut",
    "note": "anything else to know",
    "tied": "the day it was tied, as 2026-05-31",
    "record_lengths": "yes to hold it against the published lengths",
    "butt_end": "the loop at the fly line, or none",
    "butt_loop": "the finished loop, such as 3/4 in",
    "fly_knot": "the knot to the fly, or none",
    "line_out": "fly line outside the tip ring",
    "rod": "the rod's length",
}
# Of one section.
OF_SECTION: Mapping[str, str] = {
    "length": "with its unit, such as 30 in or 22 to 28 in",
    "diameter": "with its unit, such as 0.023 in, 0.58 mm or 4X",
    "tapers_to": "the diameter at the fly end of a knotless taper",
    "material": "nylon, hard nylon, fluorocarbon, wire, …",
    "strength": "as the spool says, such as 25 lb or 11.3 kg",
    "part": "butt, taper, tippet, bite guard or sighter",
    "knot": "the knot to the next section",
    "dropper": "the tag left long at that knot",
    "bought": "yes for what is bought at its length",
}
COLUMNS: Mapping[str, str] = {
    **OF_RECIPE,
    NUMBER: "1 at the butt, then 2, 3, …; may be left empty; 1 begins another leader",
    **OF_SECTION,
}
NEEDED = ("name", "length", "diameter", "material")

# Where a column of the whole leader stands in the tables of a recipe file, if not at the top.
IN_TABLE: Mapping[str, tuple[str, str]] = {
    "butt_end": ("butt", "end"),
    "butt_loop": ("butt", "loop"),
    "fly_knot": ("fly", "knot"),
    "line_out": ("reach", "line_out"),
    "rod": ("reach", "rod"),
}

_FORMULA = re.compile(r"'*[=+\-@]")


def harmless(text: str) -> str:
    """Return the text of a cell that no spreadsheet takes for a formula."""
    return f"'{text}" if _FORMULA.match(text) else text


def as_meant(cell: str) -> str:
    """Return the text that `harmless` was given."""
    return cell[1:] if cell[:1] == "'" and _FORMULA.match(cell) else cell
