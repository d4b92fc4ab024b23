"""What comes out of tables as shops keep them: each beside a file of what should."""

import tomllib
from pathlib import Path
from typing import Any

import pytest

from tagend.cards.recipe.recipe import Recipe, Section
from tagend.cards.tables.columns_file import Answers, parse_units
from tagend.cards.tables.open_table import open_table
from tagend.cards.tables.read_recipes import read_table, understood
from tagend.layouts.base.faults import Refused
from tests.cards.tables.books import BOOKS
from tests.tree import ROOT
from tests.written import PRACTICE

CORPUS = ROOT / "tests" / "cards" / "tables" / "corpus"
TABLES = sorted(path.stem for path in CORPUS.glob("*.toml"))


def table(stem: str) -> bytes:
    files = [path for path in CORPUS.glob(f"{stem}.*") if path.suffix != ".toml"]
    return files[0].read_bytes() if files else BOOKS[stem]()


def expected(stem: str) -> dict[str, Any]:
    return tomllib.loads((CORPUS / f"{stem}.toml").read_text())


def told(recipe: Recipe) -> list[str]:
    """Return a recipe as a file of the corpus has it."""
    whole = (recipe.name, recipe.line_weight, recipe.total, recipe.tied, recipe.note)
    return [
        ", ".join(str(each) for each in whole if each is not None),
        *map(_told, recipe.sections),
    ]


def _told(section: Section) -> str:
    said = (
        section.length,
        section.diameter,
        section.material,
        section.strength,
        section.part,
        section.knot,
    )
    return " ".join(str(each) for each in said if each is not None)


@pytest.mark.parametrize("stem", TABLES)
def test_a_table_comes_out_as_it_should(stem: str) -> None:
    should, data = expected(stem), table(stem)
    answers = Answers(
        columns=should.get("answers", {}),
        units=parse_units(should.get("units", "")),
        material=should.get("material"),
    )
    (*sheets,) = understood(open_table(data), answers)
    columns = [column for sheet in sheets for column in sheet.columns]
    assert [c.heading for c in columns if c.doubt] == should.get("doubtful", [])
    left_out = [c.heading for c in columns if c.heading and not c.meaning]
    assert left_out == should.get("left_out", [])
    if refusal := should.get("refused"):
        with pytest.raises(Refused, match=refusal):
            read_table(data, PRACTICE, answers)
        return
    recipes, faults = read_table(data, PRACTICE, answers)
    assert [told(recipe) for recipe in recipes] == should.get("leaders", [])
    assert [str(fault).partition(";")[0] for fault in faults] == should.get("faults", [])


def test_every_table_says_what_should_come_out() -> None:
    files = {path.stem for path in CORPUS.iterdir() if path.suffix in (".csv", ".txt")}
    assert files | BOOKS.keys() == {*TABLES}
    assert len(TABLES) >= 20


def test_tables_are_invented_in_several_encodings() -> None:
    starts = {Path(f"{stem}.csv").stem: table(stem)[:3] for stem in TABLES}
    assert b"\xef\xbb\xbf" in starts.values()
    assert any(start.startswith(b"\xff\xfe") for start in starts.values())
    with pytest.raises(UnicodeDecodeError):
        table("spanish").decode()
