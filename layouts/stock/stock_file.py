"""The tables of a stock file in, what they add to a stock out, or all their faults at once."""

from collections.abc import Callable, Mapping
from functools import partial
from typing import TypeVar

from tagend.layouts.base.faults import Fault, Refused, noting, refuse
from tagend.layouts.stock.entries import Entry, read_entry
from tagend.layouts.stock.formats import CardSize, LabelSheet, Paper, Stock
from tagend.layouts.stock.label_sheets import KEYS, label_sheet
from tagend.layouts.stock.names import folded, listed, nearest

Kind = TypeVar("Kind", Paper, CardSize, LabelSheet)

_TABLES = ("defaults", "paper", "card", "labels")


def read_stock(tables: Mapping[str, object], base: Stock) -> Stock:
    """Return `base` with the entries of the tables added; raises `Refused`."""
    faults = [
        Fault(name, "no such table", "write one of: " + ", ".join(_TABLES))
        for name in tables
        if name not in _TABLES
    ]
    papers = {**base.papers, **_read("paper", tables, _paper, faults)}
    cards = {**base.cards, **_read("card", tables, partial(_card, papers), faults)}
    labels = {**base.labels, **_read("labels", tables, partial(_labels, papers), faults)}
    known = {"paper": set(papers), "card": set(cards), "labels": set(labels)}
    defaults = {**base.defaults, **_defaults(tables, known, faults)}
    refuse(faults)
    return Stock(papers, cards, labels, defaults)


def _read(
    group: str,
    tables: Mapping[str, object],
    read: Callable[[Entry], Kind],
    faults: list[Fault],
) -> dict[str, Kind]:
    table = tables.get(group, {})
    if not isinstance(table, Mapping):
        faults.append(Fault(group, f"found {table!r}", f"write a table [{group}]"))
        return {}
    found = {}
    for name, value in table.items():
        with noting(faults):
            found[folded(name)] = read(read_entry(group, name, value))
    return found


def _paper(entry: Entry) -> Paper:
    entry.allow("size")
    return Paper(entry.name, *_size(entry, {}))


def _card(papers: Mapping[str, Paper], entry: Entry) -> CardSize:
    entry.allow("size", "corner")
    width, height = _size(entry, papers)
    return CardSize(entry.name, width, height, entry.length("corner", 0.0))


def _labels(papers: Mapping[str, Paper], entry: Entry) -> LabelSheet:
    entry.allow(*KEYS)
    width, height = _size(entry, papers)
    if "paper" in entry.values:
        return label_sheet(entry, _sheet(entry, papers), width, height, on_roll=False)
    return label_sheet(entry, Paper(entry.name, width, height), width, height, on_roll=True)


def _size(entry: Entry, papers: Mapping[str, Paper]) -> tuple[float, float]:
    named = papers.get(folded(entry.text("size")))
    return (named.width, named.height) if named else _measured(entry, "size")


def _sheet(entry: Entry, papers: Mapping[str, Paper]) -> Paper:
    written = entry.text("paper")
    if (named := papers.get(folded(written))) is not None:
        return named
    try:
        return Paper(written, *_measured(entry, "paper"))
    except Refused:
        names = [paper.name for paper in papers.values()]
        instead = f"write one of: {listed(nearest(written, names) or names)}; or a size"
        raise Refused(entry.fault("paper", f"{written!r} is no paper", instead)) from None


def _measured(entry: Entry, key: str) -> tuple[float, float]:
    width, height = entry.pair(key, (0.0, 0.0))
    if width <= 0 or height <= 0:
        raise Refused(entry.fault(key, f"found {entry.text(key)!r}", "write lengths above 0"))
    return width, height


def _defaults(
    tables: Mapping[str, object], known: Mapping[str, set[str]], faults: list[Fault]
) -> dict[str, str]:
    try:
        entry = read_entry("stock", "defaults", tables.get("defaults", {}))
        entry.allow(*known)
        names = {key: entry.text(key) for key in entry.values}
    except Refused as bad:
        faults.extend(bad.faults)
        return {}
    faults.extend(
        entry.fault(key, f"no {key} is called {name!r}", f"write a name of the table [{key}]")
        for key, name in names.items()
        if folded(name) not in known[key]
    )
    return names
