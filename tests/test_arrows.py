"""Who may import whom: each room only what stands before it, seen in the source of every module."""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.tree import ROOT

_BEFORE_LEADER = ("base", "recipe", "practice")
_BEFORE_WORDS = (*_BEFORE_LEADER, "leader")
_SIDE_BY_SIDE = ("variants", "batches", "propose", "code", "tables", "book")

# By room: the rooms that its modules may import besides their own, in the order of the flow.
CARDS = {
    "base": (),
    "recipe": ("base",),
    "practice": ("base", "recipe"),
    "leader": _BEFORE_LEADER,
    "variants": _BEFORE_WORDS,
    "batches": _BEFORE_WORDS,
    "propose": _BEFORE_WORDS,
    "code": _BEFORE_LEADER,
    "tables": _BEFORE_LEADER,
    "book": (*_BEFORE_WORDS, "batches", "code", "tables"),
    "words": (*_BEFORE_WORDS, "variants", "batches", "code"),
    "figures": (*_BEFORE_LEADER,),
    "faces": (*_BEFORE_WORDS, "batches", "book", "words", "figures"),
    "printing": (*_BEFORE_WORDS, *_SIDE_BY_SIDE, "words", "faces"),
    "disk": ("practice",),
    "desk": (*_BEFORE_WORDS, *_SIDE_BY_SIDE, "words", "faces", "printing", "disk"),
    "cli": (*_BEFORE_WORDS, *_SIDE_BY_SIDE, "words", "printing", "disk", "desk"),
}
LAYOUTS = {
    "base": (),
    "paper": ("base",),
    "strangers": (),
    "stock": ("base", "paper"),
    "codes": ("base", "paper", "strangers"),
    "logo": ("base", "paper", "strangers"),
    "sheets": ("base", "paper", "stock"),
    "pdf": ("base", "paper", "strangers", "codes", "sheets"),
    "svg": ("base", "paper", "codes", "sheets"),
}
# What reads a person's writing, in any room.
_WRITING = "layouts.base"
# Of the rooms that set something on paper: what they may import beyond `cards`.
_PAPER = ("layouts.paper", "layouts.stock", "layouts.codes", "fonts")
BEYOND = {
    "cards.figures": ("layouts.paper",),
    "cards.tables": ("layouts.strangers",),
    "cards.faces": _PAPER,
    "cards.printing": (
        *_PAPER,
        "layouts.strangers",
        "layouts.sheets",
        "layouts.pdf",
        "layouts.svg",
    ),
    "cards.disk": ("layouts.strangers", "layouts.logo", "layouts.paper"),
    "cards.desk": (*_PAPER, "layouts.strangers", "layouts.logo", "layouts.sheets", "layouts.svg"),
    "cards.cli": (*_PAPER, "layouts.strangers", "layouts.logo", "layouts.sheets"),
    **{f"layouts.{room}": ("fonts",) for room in LAYOUTS if room != "base"},
}


def rooms() -> dict[str, set[str]]:
    """Return, by room, all rooms that it may import."""
    allowed = {
        f"cards.{room}": {_WRITING, *(f"cards.{other}" for other in CARDS[room])} for room in CARDS
    }
    allowed |= {
        f"layouts.{room}": {f"layouts.{other}" for other in LAYOUTS[room]} for room in LAYOUTS
    }
    for room, others in BEYOND.items():
        allowed[room] |= set(others)
    front = {
        _WRITING,
        "cards.start",
        *(f"cards.{room}" for room in CARDS),
    }  # what a program imports
    return allowed | {
        "fonts": {_WRITING, "layouts.strangers"},
        "samples": {"cards.cli"},
        "cards": front,
    }


def room_of(module: str) -> str:
    """Return the room of a module: `cards.leader` for `tagend.cards.leader.audit.taper`."""
    parts = module.removeprefix("tagend.").split(".")
    return ".".join(parts[:2]) if parts[0] in ("cards", "layouts") else parts[0]


def imported(path: Path) -> Iterator[tuple[int, str]]:
    """Yield the line and the name of every module of ours that a file imports, wherever."""
    for node in ast.walk(ast.parse(path.read_text())):
        if isinstance(node, ast.ImportFrom) and node.module and node.module.startswith("tagend."):
            yield node.lineno, node.module
        if isinstance(node, ast.Import):
            yield from ((node.lineno, each.name) for each in node.names if "tagend" in each.name)


def files() -> list[Path]:
    return [
        path
        for folder in ("cards", "layouts", "fonts", "samples")
        for path in sorted((ROOT / folder).rglob("*.py"))
    ]


def home(path: Path) -> str:
    """Return the room that a file stands in; the top of `cards` is a room of its own."""
    parts = path.relative_to(ROOT).parts
    return ".".join(parts[:2]) if parts[0] in ("cards", "layouts") and len(parts) > 2 else parts[0]


@pytest.mark.parametrize("path", files(), ids=lambda path: str(path.relative_to(ROOT)))
def test_a_module_imports_only_what_stands_before_it(path: Path) -> None:
    here = home(path)
    broken = [
        f"{path.relative_to(ROOT)}:{line} imports {module}, and {here} may not"
        for line, module in imported(path)
        if room_of(module) not in {here, *rooms().get(here, set())}
    ]
    assert broken == []


def test_every_room_has_its_arrows_and_says_what_goes_in_and_out() -> None:
    found = {home(path) for path in files()}
    assert found - {"layouts"} == rooms().keys()
    for room in found:
        opening = ast.get_docstring(
            ast.parse((ROOT / room.replace(".", "/") / "__init__.py").read_text())
        )
        assert opening
