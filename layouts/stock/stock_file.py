"""The tables of a stock file in, what they add to a stock out, or all their faults at once."""

from collections.abc import Callable, Mapping
from typing import TypeVar

from tagend.layouts.base.faults import Fault, noting, refuse_any, refused, under
from tagend.layouts.base.near_names import suggestion
from tagend.layouts.stock.entries import Entry, read_entry
from tagend.layouts.stock.formats import AnyFormat, CardSize, Paper, Stock, folded
from tagend.layouts.stock.label_sheets import label_sheet

Format = TypeVar("Format", bound=AnyFormat)

_TABLES = ("defaults", "paper", "card", "labels")


def read_stock(tables: Mapping[str, object], base: Stock) -> Stock:
    """Return `base` with the entries of the tables added; raises `Refused`."""
    faults = [
        Fault(name, "no such table", suggestion(name, _TABLES))
        for name in tables
        if name not in _TABLES
    ]
    papers = {**base.papers, **_read("paper", tables, _paper, faults)}
    cards = {**base.cards, **_read("card", tables, lambda entry: _card(entry, papers), faults)}
    labels = {
        **base.labels,
        **_read("labels", tables, lambda entry: label_sheet(entry, papers), faults),
    }
    defaults = dict(base.defaults)
    with noting(faults), under("defaults"):
        table = tables.get("defaults", {})
        defaults |= _defaults(table, {"paper": papers, "card": cards, "labels": labels})
    refuse_any(faults)
    return Stock(papers, cards, labels, defaults)


def _read(
    group: str,
    tables: Mapping[str, object],
    read: Callable[[Entry], Format],
    faults: list[Fault],
) -> dict[str, Format]:
    table = tables.get(group, {})
    if not isinstance(table, Mapping):
        faults.append(Fault(group, f"found {table!r}", f"write a table [{group}]"))
        return {}
    found = {}
    for name, value in table.items():
        with noting(faults), under(f"{group} {name!r}"):
            found[folded(name)] = read(read_entry(name, value))
    return found


def _paper(entry: Entry) -> Paper:
    entry.allow("size")
    return Paper(entry.name, *entry.size({}))


def _card(entry: Entry, papers: Mapping[str, Paper]) -> CardSize:
    entry.allow("size", "corner")
    return CardSize(entry.name, *entry.size(papers), entry.length("corner", 0.0))


def _defaults(table: object, known: Mapping[str, Mapping[str, AnyFormat]]) -> dict[str, str]:
    if not isinstance(table, Mapping):
        raise refused(f"found {table!r}", "write a table [defaults]")
    entry = Entry("defaults", table)
    entry.allow(*known)
    names = {key: entry.text(key) for key in entry.values}
    refuse_any(
        Fault(key, f"no {key} is called {name!r}", f"write a name of the table [{key}]")
        for key, name in names.items()
        if folded(name) not in known[key]
    )
    return names
