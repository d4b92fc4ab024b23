"""The columns of a table of recipes, from the fields of a recipe: a row is a section.

What is said of the whole leader stands in its first row.
"""

from tagend.cards.base.file_schema import examples_of
from tagend.cards.recipe.fields import OF_RECIPE, OF_SECTION

NUMBER = "section"
_NUMBER_TOLD = (
    "1 at the butt, then 2, 3, …; may be left empty; 1 begins another leader, as another name does"
)


COLUMNS = (*OF_RECIPE, NUMBER, *OF_SECTION)
NEEDED = tuple(
    name
    for name, field in (*OF_RECIPE.items(), *OF_SECTION.items())
    if field.needed and not field.heading
)


def told(name: str) -> str:
    """Return what a person is told of a column."""
    if name == NUMBER:
        return _NUMBER_TOLD
    field = {**OF_RECIPE, **OF_SECTION}[name]
    assert field.reads is not None
    *most, last = map(str, examples_of(field.reads))
    either = f"{', '.join(most)} or {last}" if most else last
    match field.reads:
        case {"type": "bool"}:
            return f"yes {field.told}"
        case {"type": "literal"}:
            return f"{either}; {field.told}"
        case {"type": "int"}:
            return field.told
    return f"{field.told}, such as {either}"
