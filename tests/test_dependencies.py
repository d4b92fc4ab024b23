"""The libraries that are asked for in pyproject.toml, against those that the code imports."""

import ast
import re
import sys
import tomllib
from collections.abc import Iterator
from importlib.metadata import packages_distributions

from tests.tree import ROOT

FOLDERS = ("cards", "layouts", "fonts", "samples")
FONTS = {"fontpkg-ibm-plex-sans-condensed", "fontpkg-fira-sans-condensed"}  # data, found by name
# pydantic's core is a distribution that pydantic brings along, of the version that it needs.
BROUGHT = {"pydantic-core": "pydantic"}
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]


def called(requirements: list[str]) -> set[str]:
    """Return the distributions' names, without versions and extras."""
    return {one_way(re.split(r"[\s<>=!~;\[]", each)[0]) for each in requirements}


def one_way(name: str) -> str:
    """Return a distribution's name as PEP 503 (packaging.python.org) compares it."""
    return re.sub(r"[-_.]+", "-", name).lower()


def imports() -> Iterator[str]:
    for folder in FOLDERS:
        for path in (ROOT / folder).rglob("*.py"):
            for node in ast.walk(ast.parse(path.read_text())):
                if isinstance(node, ast.Import):
                    yield from (name.name for name in node.names)
                elif isinstance(node, ast.ImportFrom) and node.module:
                    yield node.module


def used() -> set[str]:
    """Return the distributions of other people's modules that the program imports."""
    tops = {name.split(".")[0] for name in imports()} - {*sys.stdlib_module_names, "tagend"}
    of_modules = packages_distributions()
    found = {one_way(of_modules[top][0]) for top in tops}
    return {BROUGHT.get(name, name) for name in found}


def test_each_required_library_is_used() -> None:
    assert called(PROJECT["dependencies"]) - FONTS <= used()


def test_each_library_in_use_is_asked_for() -> None:
    extras = PROJECT["optional-dependencies"]
    offered = {
        name for extra in ("logo", "scan", "desk", "sheets") for name in called(extras[extra])
    }
    assert used() <= called(PROJECT["dependencies"]) | offered
