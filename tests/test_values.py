"""What holds of every class: values are frozen, named tuples small, and a name means one thing."""

import ast
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.tree import ROOT

FOLDERS = ("cards", "layouts", "fonts", "samples")
# A sheet has thousands of a face's items, and a refusal its faults: these stay named tuples.
MANY = {"layouts/paper/face.py", "layouts/base/faults.py"}
# What is changed while one function works, and seen by nothing else.
WORKING = {"Cursor", "_Bit"}
FEW = 3  # parts that are taken apart where they come out


def classes() -> Iterator[tuple[str, ast.ClassDef]]:
    for folder in FOLDERS:
        for path in sorted((ROOT / folder).rglob("*.py")):
            for node in ast.walk(ast.parse(path.read_text())):
                if isinstance(node, ast.ClassDef):
                    yield str(path.relative_to(ROOT)), node


def decorators(node: ast.ClassDef) -> Iterator[str]:
    yield from (ast.unparse(each) for each in node.decorator_list)


def is_named_tuple(node: ast.ClassDef) -> bool:
    return any(ast.unparse(base).startswith("NamedTuple") for base in node.bases)


ALL = list(classes())
every_class = pytest.mark.parametrize(
    ("path", "node"), ALL, ids=[f"{Path(path).stem}.{node.name}" for path, node in ALL]
)


@every_class
def test_a_struct_is_frozen(path: str, node: ast.ClassDef) -> None:
    if any(ast.unparse(base).startswith("Struct") for base in node.bases):
        frozen = any(key.arg == "frozen" for key in node.keywords)
        assert frozen or node.name in WORKING, path
    assert not any(each.startswith("dataclass") for each in decorators(node)), path


@every_class
def test_a_named_tuple_is_small(path: str, node: ast.ClassDef) -> None:
    if is_named_tuple(node) and path not in MANY:
        assert sum(isinstance(part, ast.AnnAssign) for part in node.body) <= FEW, path


def test_a_class_name_means_one_thing() -> None:
    counted = Counter(node.name.lstrip("_") for _, node in ALL)
    assert [name for name, count in counted.items() if count > 1] == []
