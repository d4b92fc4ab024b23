"""Large files of one slip, equal names and many labels: what is told and done is bounded."""

from collections.abc import Callable
from pathlib import Path

import pytest
from msgspec.structs import replace

from tagend.cards.base import schema_faults
from tagend.cards.cli import recipe_folder
from tagend.cards.printing.label_refusal import Label
from tagend.layouts.base import near_names
from tagend.layouts.paper.face import Face, Symbol
from tests.cards.cli.conftest import Tagend
from tests.written import recipe, section


def test_a_megabyte_of_unknown_keys_is_told_in_twenty_lines(
    tagend: Tagend, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[str] = []
    suggestion: Callable[[str, list[str]], str] = near_names.suggestion

    def noted(found: str, known: list[str]) -> str:
        asked.append(found)
        return suggestion(found, known)

    monkeypatch.setattr(schema_faults, "suggestion", noted)
    file = tmp_path / "keys.toml"
    file.write_text('name = "Keys"\n' + "".join(f"k{k} = 1\n" for k in range(90_000)))
    run = tagend("check", file)
    assert run.status == 2
    *told, more = run.err.splitlines()
    assert len(told) == 20
    assert more == "and 89,981 more"  # with the sections, of which there are none
    assert len(asked) <= 21


def test_wrong_cells_of_a_table_are_told_in_twenty_lines(tagend: Tagend, tmp_path: Path) -> None:
    rows = "".join(f"Alder {k},5,40 in,.021 in,nylin\n" for k in range(100))
    file = tmp_path / "wrong.csv"
    file.write_text("name,line weight,length 1,diameter 1,material 1\n" + rows)
    run = tagend("table", file, "-o", tmp_path / "out")
    assert run.status == 2
    assert run.err.count("nylin") == 20
    assert "and 80 more" in run.err.splitlines()


def test_equal_names_are_numbered_without_trying_each_number(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    tried: list[str] = []
    written: dict[str, bytes] = {}

    class Written(dict[str, bytes]):
        def __contains__(self, name: object) -> bool:
            tried.append(str(name))
            return super().__contains__(name)

    unlike = recipe_folder._unlike
    monkeypatch.setattr(recipe_folder, "_unlike", lambda w, *rest: unlike(Written(w), *rest))
    monkeypatch.setattr(recipe_folder, "write_outputs", lambda files, **_: written.update(files))
    alike = [replace(recipe(section("9 ft", "4X")), name="Alder")] * 300
    recipe_folder.write_each(alike, str(tmp_path), replace=False)
    assert len(written) == 300
    assert {"alder.toml", "alder-2.toml", "alder-300.toml"} <= {Path(name).name for name in written}
    assert len(tried) <= 2 * 300


def test_each_numbered_label_is_set_once_for_each_strength_of_its_code(
    tagend: Tagend, demo: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    set_: list[object] = []
    face = Label.face

    def noted(label: Label, code: Symbol | None) -> Face:
        set_.append(label)
        return face(label, code)

    monkeypatch.setattr(Label, "face", noted)
    file = demo / "sandbar-eight.toml"
    run = tagend("labels", file, "--count", "90", "--numbered", "-o", demo / "labels.pdf")
    assert run.status == 0, run.err
    # Two strengths; and once more, for all labels that leave out the same, what would hold it.
    assert len(set_) <= 2 * 90 + 60
