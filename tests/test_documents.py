"""What the documents name is there."""

import re

import pytest

from tests.tree import ROOT

NAMED = sorted(
    set(
        re.findall(
            r"`((?:cards|layouts|fonts|samples|tests)/[\w./-]*)`",
            (ROOT / "DEVELOPERS.md").read_text(),
        )
    )
)


@pytest.mark.parametrize("path", NAMED)
def test_a_path_that_developers_are_told_of_is_there(path: str) -> None:
    assert (ROOT / path).exists()


def test_every_room_is_told_of() -> None:
    text = (ROOT / "DEVELOPERS.md").read_text()
    for folder in ("cards", "layouts"):
        for room in (ROOT / folder).iterdir():
            assert not (room / "__init__.py").exists() or f"`{room.name}/`" in text
