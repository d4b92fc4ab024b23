"""The sources in; the texts out that they refuse with, `VALUE` where a value is put in."""

import ast
from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import cache
from itertools import product
from typing import TypeAlias

from tests.tree import ROOT

VALUE = "Zzz9"
# What refuses, and the first of its two texts.
_REFUSING = {"refused": 0, "Unreadable": 0, "TooSmall": 0, "FontMissing": 0, "Fault": 1}
# Where not just any value stands.
_STANDS = {
    "kind": "length",
    "self.word": "knot",
    "what": "lot",
    "key": "paper",
    "noun": "a label",
    "self.way": "across",
    "self.edge": "left",
    "instead": "",
    "days[0]": "2026-04-03",
    "days[1]": "2026-03-04",
    "wish.step.told(unit)": "0.1 mm or less",
}

Given: TypeAlias = Mapping[str, Sequence[ast.expr]]  # what is assigned to each name


@cache
def refusal_texts() -> frozenset[str]:
    """Return the texts of all refusals, and of the pairs of what was found and what to do."""
    rooms = (ROOT / room for room in ("cards", "layouts", "fonts"))
    sources = (path.read_text() for room in rooms for path in room.rglob("*.py"))
    refusing = (source for source in sources if any(name in source for name in _REFUSING))
    found = (text for source in refusing for text in _of_file(ast.parse(source)))
    return frozenset(text for text in found if text.replace(VALUE, "").strip())


def _of_file(tree: ast.Module) -> Iterator[str]:
    above = _given(tree.body)
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef):
            given = {**above, **_given(ast.walk(node))}
            for call in ast.walk(node):
                match call:
                    case ast.Call(func=ast.Name(id=name), args=values) if name in _REFUSING:
                        first = _REFUSING[name]
                        for value in values[first : first + 2]:
                            yield from _texts(value, given)
        elif isinstance(node, ast.Tuple) and len(node.elts) in (2, 3):
            pair = [list(_texts(value, above)) for value in node.elts[-2:]]
            if all(" " in texts[0] and texts[0][0].islower() for texts in pair):
                yield from (text for texts in pair for text in texts)


def _given(nodes: Iterable[ast.AST]) -> Given:
    given: dict[str, list[ast.expr]] = {}
    for node in nodes:
        match node:
            case ast.Assign(targets=[ast.Name(id=name)], value=value):
                given.setdefault(name, []).append(value)
    return given


def _texts(node: ast.expr, given: Given) -> Iterator[str]:
    """Yield each text that an expression may be."""
    match node:
        case ast.Constant(value=str() as text):
            yield text
        case ast.IfExp(body=one, orelse=other):
            yield from (*_texts(one, given), *_texts(other, given))
        case ast.Name(id=name) if name in given:
            others = {other: values for other, values in given.items() if other != name}
            yield from (text for value in given[name] for text in _texts(value, others))
        case ast.FormattedValue(value=value) if (written := ast.unparse(value)) in _STANDS:
            yield from _texts(value, given) if written in given else [_STANDS[written]]
        case ast.FormattedValue(value=value, conversion=-1):
            yield from _texts(value, given)
        case ast.Call(func=ast.Name(id="counted"), args=[_, ast.Constant(value=noun)]):
            yield from (f"3 {noun!s}s", f"1 {noun!s}")
        case ast.JoinedStr(values=parts):
            yield from map("".join, product(*(_texts(part, given) for part in parts)))
        case ast.BinOp(left=left, op=ast.Add(), right=right):
            yield from map("".join, product(_texts(left, given), _texts(right, given)))
        case _:
            yield VALUE
