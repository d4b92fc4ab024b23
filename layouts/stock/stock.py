"""A name in, the paper, card size or label sheet of that name out."""

import tomllib
from collections.abc import Mapping
from functools import cache
from importlib.resources import files

from tagend.layouts.stock.entries import Entry
from tagend.layouts.stock.find import find
from tagend.layouts.stock.formats import AnyFormat, CardSize, LabelSheet, Paper, Stock
from tagend.layouts.stock.label_sheets import label_sheet as read_label_sheet
from tagend.layouts.stock.stock_file import read_stock


@cache
def shipped() -> Stock:
    """Return the stock that comes with the program."""
    written = files("tagend.layouts.stock").joinpath("stock.toml").read_text(encoding="utf-8")
    return read_stock(tomllib.loads(written), Stock({}, {}, {}, {}))


def merge(own: Mapping[str, object]) -> Stock:
    """Return our stock with a person's own entries, written in tables like those of stock.toml.

    Raises `Refused` with every fault.
    """
    return read_stock(own, shipped())


def paper(name: str, stock: Stock | None = None) -> Paper:
    """Return the paper of a name, or of a size such as `8x10in`; raises `Refused`."""
    return find("paper", name, (stock or shipped()).papers, Paper)


def card_size(name: str, stock: Stock | None = None) -> CardSize:
    """Return the card size of a name, or of a size such as `85x54mm`; raises `Refused`."""
    return find("card size", name, (stock or shipped()).cards, CardSize)


def label_sheet(name: str, stock: Stock | None = None) -> LabelSheet:
    """Return the label sheet of a name; a size, `62x40mm`, is one label cut from a roll.

    Raises `Refused`.
    """
    return find("label sheet", name, (stock or shipped()).labels, _roll)


def any_stock(name: str, stock: Stock | None = None) -> AnyFormat:
    """Return what has a name, be it label sheet, paper or card; a size is a card's.

    Raises `Refused`.
    """
    known = stock or shipped()
    formats: dict[str, AnyFormat] = {**known.cards, **known.papers, **known.labels}
    return find("stock", name, formats, CardSize)


def _roll(name: str, width: float, height: float) -> LabelSheet:
    return read_label_sheet(Entry(name, {"size": name}), {})
