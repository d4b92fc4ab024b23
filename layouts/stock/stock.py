"""A name in, the paper, card size or label sheet of that name out."""

import tomllib
from collections.abc import Callable, Mapping
from functools import cache
from importlib.resources import files
from typing import TypeVar

from tagend.layouts.paper.lengths import parse_pair
from tagend.layouts.stock.entries import read_entry
from tagend.layouts.stock.formats import CardSize as CardSize
from tagend.layouts.stock.formats import LabelSheet as LabelSheet
from tagend.layouts.stock.formats import Paper as Paper
from tagend.layouts.stock.formats import Stock as Stock
from tagend.layouts.stock.label_sheets import label_sheet as read_label_sheet
from tagend.layouts.stock.names import folded, listed, nearest
from tagend.layouts.stock.stock_file import read_stock

Kind = TypeVar("Kind", Paper, CardSize, LabelSheet)


class UnknownStock(ValueError):
    """No stock has this name; holds what was found and the nearest names known."""

    def __init__(self, kind: str, found: str, known: list[str]) -> None:
        self.kind = kind
        self.found = found
        self.near = nearest(found, known)
        names = listed(self.near or known)
        instead = f"write one of: {names}; or a size with its unit, such as 85x54mm"
        super().__init__(f"no {kind} is called {found!r}; {instead}")


@cache
def shipped() -> Stock:
    """Return the stock that comes with the program."""
    written = files("tagend.layouts.stock").joinpath("stock.toml").read_text(encoding="utf-8")
    return read_stock(tomllib.loads(written), Stock({}, {}, {}, {}))


def merge(own: Mapping[str, object], stock: Stock | None = None) -> Stock:
    """Return a stock with a person's own entries, written in tables like those of stock.toml.

    Raises `Refused`, which holds every fault found.
    """
    return read_stock(own, stock or shipped())


def paper(name: str, stock: Stock | None = None) -> Paper:
    """Return the paper of a name, or of a size such as `8x10in`; raises `UnknownStock`."""
    return _find("paper", name, (stock or shipped()).papers, Paper)


def card_size(name: str, stock: Stock | None = None) -> CardSize:
    """Return the card size of a name, or of a size such as `85x54mm`; raises `UnknownStock`."""
    return _find("card size", name, (stock or shipped()).cards, CardSize)


def label_sheet(name: str, stock: Stock | None = None) -> LabelSheet:
    """Return the label sheet of a name; a size, `62x40mm`, is one label cut from a roll.

    Raises `UnknownStock`.
    """
    return _find("label sheet", name, (stock or shipped()).labels, _roll)


def any_stock(name: str, stock: Stock | None = None) -> LabelSheet | Paper | CardSize:
    """Return what has a name, be it label sheet, paper or card; a size is a card's.

    Raises `UnknownStock`.
    """
    known = stock or shipped()
    for shelf in (known.labels, known.papers, known.cards):
        if (found := shelf.get(folded(name))) is not None:
            return found
    names = [
        item.name for shelf in (known.labels, known.papers, known.cards) for item in shelf.values()
    ]
    return _measured("stock", name, names, CardSize)


def _find(
    kind: str, name: str, known: Mapping[str, Kind], custom: Callable[[str, float, float], Kind]
) -> Kind:
    if (found := known.get(folded(name))) is not None:
        return found
    return _measured(kind, name, [entry.name for entry in known.values()], custom)


def _measured(
    kind: str, name: str, known: list[str], custom: Callable[[str, float, float], Kind]
) -> Kind:
    try:
        width, height = parse_pair(name)
    except ValueError:
        width = height = 0.0
    if width <= 0 or height <= 0:
        raise UnknownStock(kind, name, known)
    return custom(name, width, height)


def _roll(name: str, width: float, height: float) -> LabelSheet:
    entry = read_entry("labels", name, name)
    return read_label_sheet(entry, Paper(name, width, height), width, height, on_roll=True)
