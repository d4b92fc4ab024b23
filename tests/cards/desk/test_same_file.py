"""A person's recipe file after the page has changed it: what was changed, and nothing else."""

from collections.abc import Mapping
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.base.toml_file import read_toml
from tagend.cards.desk.draft import draft_of, recipe_in, tables_of
from tagend.cards.desk.same_file import with_draft
from tagend.cards.practice.shop_file import Shop, practice_of
from tagend.cards.recipe.recipe_file import read_recipe
from tests.tree import SAMPLES

PRACTICE = practice_of(Shop())
RECIPES = sorted(path for path in SAMPLES.glob("*.toml") if b"[[section]]" in path.read_bytes())
SANDBAR = (SAMPLES / "sandbar-eight.toml").read_bytes()

NOTED = b"""\
# Tied for the pale sand.
name = "Noted"   # of long ago
line_weight = 8

# The butt: stiff, from the old spool.
[[section]]
length = "40 in"      # not an inch less
diameter = "0.021 in"
material = "hard nylon"

# The middle.
[[section]]
length = "20 in"
diameter = "0.015 in"   # measured
material = "hard nylon"

# The tippet.
[[section]]
length = "24 in"
diameter = "0.010 in"
material = "fluorocarbon"

[fly]
# what the fish like
knot = "non-slip loop"
"""


def changed(data: bytes, draft: Mapping[str, Any]) -> bytes:
    was = {
        key: [row.get("was") for row in draft[rows]]
        for key, rows in (("section", "rows"), ("variant", "variants"))
    }
    after = with_draft(data, tables_of(draft, PRACTICE, "in"), was)
    assert read_recipe(after, PRACTICE) == recipe_in(draft, PRACTICE, "in")
    return after


@pytest.mark.parametrize("path", RECIPES, ids=lambda path: path.name)
@pytest.mark.parametrize("ends", [b"\n", b"\r\n"])
def test_what_is_not_changed_stays_byte_for_byte(path: Any, ends: bytes) -> None:
    data = path.read_bytes().replace(b"\n", ends)
    assert changed(data, draft_of(read_toml(data))) == data


def test_a_changed_value_changes_its_line_alone() -> None:
    draft = draft_of(read_toml(NOTED))
    draft["rows"][1]["diameter"] = ".016"
    after = changed(NOTED, draft)
    before_lines, after_lines = NOTED.splitlines(), after.splitlines()
    assert len(before_lines) == len(after_lines)
    differ = [(a, b) for a, b in zip(before_lines, after_lines, strict=True) if a != b]
    assert differ == [(b'diameter = "0.015 in"   # measured', b'diameter = ".016 in"   # measured')]


def test_a_moved_section_takes_its_comments_along() -> None:
    draft = draft_of(read_toml(NOTED))
    first, second, third = draft["rows"]
    after = changed(NOTED, {**draft, "rows": [second, first, third]}).decode()
    assert after.index("# The middle.") < after.index("# The butt:") < after.index("not an inch")
    assert after.index("not an inch") < after.index("# The tippet.")
    assert sorted(after.splitlines()) == sorted(NOTED.decode().splitlines())


def test_what_is_emptied_goes_and_what_is_new_comes_where_it_belongs() -> None:
    draft = draft_of(read_toml(NOTED))
    del draft["head"]["fly_knot"]
    draft["head"] |= {"butt_end": "perfection loop", "use": "Sand"}
    rows = [*draft["rows"], {"length": "12 in", "diameter": ".018", "material": "fluorocarbon"}]
    after = changed(NOTED, {**draft, "rows": rows}).decode()
    assert after.index('use = "Sand"') < after.index("[butt]") < after.index("[[section]]")
    assert after.index("# The tippet.") < after.index(".018")
    assert "non-slip" not in after


def test_a_new_variant_stands_behind_all_else() -> None:
    draft = draft_of(read_toml(NOTED))
    variants = [{"name": "in wind", "butt": "50 in", "replace": {"3": "0.012 in fluorocarbon"}}]
    after = changed(NOTED, {**draft, "variants": variants}).decode()
    assert after.index("[fly]") < after.index("[[variant]]")


@given(st.data())
def test_however_the_rows_are_moved_the_file_says_what_was_typed(data: st.DataObject) -> None:
    draft = draft_of(read_toml(SANDBAR))
    rows = data.draw(st.permutations(draft["rows"]))
    rows = rows[: data.draw(st.integers(1, len(rows)))]
    new = {"length": "11 in", "diameter": ".012", "material": "nylon"}
    rows.insert(data.draw(st.integers(0, len(rows))), new)
    rows = [{key: value for key, value in row.items() if key != "knot"} for row in rows]
    after = changed(SANDBAR, {**draft, "rows": rows, "variants": []})
    assert after.startswith(SANDBAR.partition(b"name =")[0])
