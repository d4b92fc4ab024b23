"""Every module of the tree is installed, below one name that no other distribution has."""

import tomllib
from collections.abc import Iterator
from importlib.util import find_spec
from pathlib import Path

import pytest

from tests.tree import ROOT

FOLDERS = ("cards", "layouts", "fonts", "samples")


def modules() -> Iterator[str]:
    for folder in FOLDERS:
        for path in sorted((ROOT / folder).rglob("*.py")):
            parts = path.relative_to(ROOT).with_suffix("").parts
            yield ".".join(("tagend", *(part for part in parts if part != "__init__")))


@pytest.mark.parametrize("name", list(modules()))
def test_a_module_is_installed(name: str) -> None:
    assert find_spec(name) is not None, "list its folder in pyproject.toml, then install again"


def test_every_folder_of_modules_is_listed() -> None:
    """A folder that is not listed is left out in silence, and only of the wheel."""
    setuptools = tomllib.loads((ROOT / "pyproject.toml").read_text())["tool"]["setuptools"]
    homes = {
        f"tagend.{'.'.join(path.parent.relative_to(ROOT).parts)}"
        for folder in FOLDERS
        for path in (*(ROOT / folder).rglob("*.py"), *(ROOT / folder).rglob("*.toml"))
    }
    assert set(setuptools["packages"]) == homes


@pytest.mark.parametrize("folder", FOLDERS)
def test_data_files_are_installed_too(folder: str) -> None:
    spec = find_spec(f"tagend.{folder}")
    assert spec is not None
    assert spec.submodule_search_locations is not None
    installed = Path(spec.submodule_search_locations[0])
    for path in (ROOT / folder).rglob("*"):
        if path.suffix in (".toml", ".csv", ".md", ".typed"):
            assert (installed / path.relative_to(ROOT / folder)).is_file()
