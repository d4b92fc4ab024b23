"""The keys of a shop file that a person is asked for; answers in, a new file of them out."""

import json
from collections.abc import Mapping

from msgspec import Struct

_HEAD = "# What belongs to the person, not to the recipe. Name it with --shop, or in TAGEND_SHOP."
_MORE = """
# Your own hands and habits, instead of what is computed; `tagend learn` measures a lap.
# [lap]
# blood = "8 in"
# [choice]
# fly = "non-slip loop"
"""


class ShopKey(Struct, frozen=True, kw_only=True):
    """A key whose value is a text."""

    key: str
    asked: str
    example: str
    told: str = ""  # beside it in the file, beyond what was asked


SHOP_KEYS = (
    ShopKey(key="name", asked="Name of the shop, or your own", example="The Low Tide Bench"),
    ShopKey(key="line", asked="A line of text under the name", example="Leaders tied by hand"),
    ShopKey(
        key="address",
        asked="Address, for the counter sheet",
        example="3 Wrack Lane, Nowhere-on-Sea",
    ),
    ShopKey(
        key="logo",
        asked="Logo, a picture beside this file",
        example="logo.png",
        told="PNG, JPEG, SVG or PDF",
    ),
    ShopKey(key="language", asked="Language of all that is printed", example="es", told="en or es"),
    ShopKey(
        key="units",
        asked="Units of all that is printed",
        example="cm and in",
        told="in, cm, mm, or two of them",
    ),
    ShopKey(key="paper", asked="Paper", example="A4", told="`tagend stock` lists all"),
    ShopKey(key="card", asked="Size of a card", example="A7"),
    ShopKey(key="labels", asked="Sheet of labels", example="a4-3x8-70x37"),
    ShopKey(
        key="tape", asked="Marks of your tape", example="1/4 in", told="what cuts are rounded up to"
    ),
)


def new_shop_file(answers: Mapping[str, str | None]) -> bytes:
    """Return a shop file of the answers; what is left out is an example, in a comment."""
    lines = (_line(each, answers.get(each.key)) for each in SHOP_KEYS)
    return "\n".join((_HEAD, *lines, _MORE)).encode()


def _line(each: ShopKey, value: str | None) -> str:
    line = f"{each.key} = {json.dumps(value or each.example, ensure_ascii=False)}"
    told = f"  # {each.told}" if each.told else ""
    return f"{line}{told}" if value else f"# {line}{told}"
