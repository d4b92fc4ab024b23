"""What is advised where a label is too small: each way out is taken, and a label comes of it."""

import re
from collections.abc import Callable, Iterator, Mapping
from datetime import date
from functools import cache

import pytest
from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.faces.label_lines import PLAIN, LabelNote
from tagend.cards.leader.leader import work_out
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.printing.labels import LabelWishes, labels_sheets
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.layouts.base.faults import Refused
from tagend.layouts.paper.face import Face
from tagend.layouts.stock.stock import shipped
from tests.told import JOB
from tests.tree import SAMPLES
from tests.written import PRACTICE

STOCKS = list(shipped().labels)
NAMES = ["breakwater-ten", "gravel-five", "hasty-seven", "millrace-three", "reedbed-six"]
NAMES += ["sandbar-eight"]
ASKED = LabelNote(number="3 of 12", first_out="fly", test_box=True)


class Asked(Struct, frozen=True):
    """A label that a person asks for."""

    recipe: Recipe
    note: LabelNote
    stock: str
    code: bool = True

    def face(self) -> Face:
        """Return the label. Raises `Refused`."""
        sheet = Worksheet(work_out(self.recipe, PRACTICE), ())
        wishes = LabelWishes(self.stock, notes=((self.note,),), code=self.code)
        return labels_sheets(JOB, [sheet], wishes)[0].placed[0].face

    def noting(self, **fields: object) -> "Asked":
        return replace(self, note=replace(self.note, **fields))

    def writing(self, **fields: object) -> "Asked":
        return replace(self, recipe=replace(self.recipe, **fields))


LEFT_OUT: Mapping[str, Callable[[Asked], Asked]] = {
    "number": lambda asked: asked.noting(number=None),
    "first end": lambda asked: asked.noting(first_out=None),
    "test box": lambda asked: asked.noting(test_box=False),
    "day": lambda asked: asked.writing(tied=None),
    "note": lambda asked: asked.writing(note=None),
    "use": lambda asked: asked.writing(use=None),
    "strengths": lambda asked: asked.writing(
        sections=tuple(replace(section, strength=None) for section in asked.recipe.sections)
    ),
}


def advised(told: str, asked: Asked) -> list[Asked]:
    """Return each way out that a line tells of."""
    by_sheet = re.search(r"use --stock ([\w.-]+(?: or [\w.-]+)*)", told)
    ways = [replace(asked, stock=name) for name in by_sheet[1].split(" or ")] if by_sheet else []
    if "--no-code" in told:
        ways.append(replace(asked, code=False))
    if spared := re.search(r"leave out its (.*)", told):
        without = asked
        for word in spared[1].split(" and "):
            without = LEFT_OUT[word](without)
        ways.append(without)
    return ways


@cache
def sample(name: str) -> Recipe:
    return read_recipe((SAMPLES / f"{name}.toml").read_bytes(), PRACTICE)


@pytest.mark.parametrize("stock", STOCKS)
@pytest.mark.parametrize("note", [PLAIN, ASKED], ids=["plain", "all asked for"])
def test_what_is_advised_helps(note: LabelNote, stock: str) -> None:
    tied = date(2026, 5, 31) if note == ASKED else None
    for name in NAMES:
        asked = Asked(replace(sample(name), tied=tied), note, stock)
        for told, of, whole in said(asked):
            ways = advised(told, of)
            assert ways, told
            for way in ways:
                missed = way.face().left_out
                assert not (whole and missed), told


def said(asked: Asked) -> Iterator[tuple[str, Asked, bool]]:
    """Yield each line that is told, and whether its advice gives all that the label left out."""
    for way in (asked, replace(asked, code=False)):
        try:
            yield from ((line, way, True) for line in way.face().left_out)
        except Refused as refusal:
            yield str(refusal), way, False
