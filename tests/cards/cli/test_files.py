import os
from pathlib import Path

import pytest

from tests.cards.cli.conftest import Tagend
from tests.tree import BROKEN

BINARY = b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR\xff\xfe"


@pytest.mark.parametrize("command", ["check", "cuts"])
def test_a_file_that_is_not_there(tagend: Tagend, tmp_path: Path, command: str) -> None:
    name = tmp_path / "none.toml"
    run = tagend(command, name)
    assert run.status == 2
    assert run.faults == [f"{name}: there is no such file; check its name and folder"]


def test_a_folder_is_no_recipe(tagend: Tagend, tmp_path: Path) -> None:
    run = tagend("check", tmp_path)
    assert run.status == 2
    assert run.faults == [f"{tmp_path}: this is a folder; name a file in it"]


def test_a_binary_file_is_no_recipe(tagend: Tagend, tmp_path: Path) -> None:
    name = tmp_path / "picture.png"
    name.write_bytes(BINARY)
    run = tagend("check", name)
    assert run.status == 2
    assert run.faults == [f"{name}: this is not a text file in UTF-8; save it as UTF-8"]


@pytest.mark.parametrize("name", ["a" * 300, "nul\0byte"])
def test_a_name_that_no_file_can_have(tagend: Tagend, name: str) -> None:
    run = tagend("check", name)
    assert run.status == 2
    assert len(run.faults) == 1
    assert "cannot be read" in run.err


def test_the_faults_of_all_files_are_told_and_the_good_ones_not_worked_on(
    tagend: Tagend, demo: Path
) -> None:
    good, bad, worse = (
        demo / "reedbed-six.toml",
        BROKEN / "misspelt-key.toml",
        BROKEN / "empty.toml",
    )
    run = tagend("check", good, bad, worse, demo / "none.toml")
    assert run.status == 2
    assert run.faults == [
        f"{bad}: section 1, length: this key is missing; write length = …",
        f"{bad}: section 1: no key is called 'lenght'; did you mean length?",
        f"{worse}: this file is empty; start from one that `tagend samples` writes",
        f"{demo / 'none.toml'}: there is no such file; check its name and folder",
    ]


def test_the_line_of_a_slip_is_named(tagend: Tagend) -> None:
    name = BROKEN / "syntax-error.toml"
    assert tagend("check", name).faults == [
        f"{name}: line 4, column 8: expected '=' after a key in a key/value pair; "
        'write keys as name = "text", and headings as [butt] or [[section]]'
    ]


def test_standard_input_is_named_in_words(tagend: Tagend) -> None:
    assert tagend("check", "-", stdin=b"\n").faults == [
        "standard input: this file is empty; start from one that `tagend samples` writes"
    ]


@pytest.mark.parametrize("content", [BINARY, b"", b'[rules.steep]\nlimit = "1 in"\n'])
def test_a_broken_shop_file_is_refused_by_name(tagend: Tagend, demo: Path, content: bytes) -> None:
    shop = demo / "own.toml"
    shop.write_bytes(content)
    run = tagend("check", demo / "reedbed-six.toml", "--shop", shop)
    assert run.status == 2
    assert run.err.startswith(f"{shop}: ")


@pytest.mark.parametrize("command", ["cards", "labels"])
def test_what_cannot_be_written_leaves_nothing(tagend: Tagend, demo: Path, command: str) -> None:
    recipe = demo / "reedbed-six.toml"
    before = sorted(os.listdir(demo))
    for output in (demo / "no-folder" / "out.pdf", demo, recipe / "out.pdf"):
        run = tagend(command, recipe, "-o", output)
        assert run.status == 2
        assert len(run.faults) == 1
        assert run.err.startswith(f"{output}: cannot be written: ")
    assert sorted(os.listdir(demo)) == before


@pytest.mark.parametrize("command", ["cards", "labels"])
def test_a_broken_recipe_writes_nothing_and_leaves_what_was_there(
    tagend: Tagend, tmp_path: Path, command: str
) -> None:
    output = tmp_path / "out.pdf"
    assert tagend(command, BROKEN / "bare-number.toml", "-o", output).status == 2
    assert not output.exists()
    output.write_bytes(b"kept")
    assert tagend(command, BROKEN / "bare-number.toml", "-o", output).status == 2
    assert output.read_bytes() == b"kept"
    assert os.listdir(tmp_path) == ["out.pdf"]
