"""What stock there is: ours and a person's tables in; the stock of a name, or all faults, out."""

import os
from collections.abc import Callable, Iterator, Mapping
from functools import cache

import tomli

from tagend.layouts.base.faults import Fault, noting, refuse_any, refused, under
from tagend.layouts.base.near_names import suggestion
from tagend.layouts.stock.entries import Entry, Format, find, read_entry
from tagend.layouts.stock.formats import AnyFormat, CardSize, LabelSheet, Paper, Stock, folded

_TABLES = ("defaults", "paper", "card", "labels")


@cache
def shipped() -> Stock:
    """Return the stock that comes with the program."""
    with open(os.path.join(os.path.dirname(__file__), "stock.toml"), "rb") as file:
        tables = tomli.load(file)
    papers = _Unread(tables["paper"], _paper)
    return Stock(
        papers=papers,
        cards=_Unread(tables["card"], lambda entry: _card(entry, papers)),
        labels=_Unread(tables["labels"], lambda entry: _labels(entry, papers)),
        defaults=tables["defaults"],
    )


class _Unread(Mapping[str, Format]):
    """Entries of ours, each read when it is asked for: a command wants three of a hundred."""

    def __init__(self, table: Mapping[str, object], read: Callable[[Entry], Format]) -> None:
        self._entries = {folded(name): read_entry(name, value) for name, value in table.items()}
        self._read = cache(lambda key: read(self._entries[key]))

    def __getitem__(self, key: str) -> Format:
        return self._read(key)

    def __iter__(self) -> Iterator[str]:
        return iter(self._entries)

    def __len__(self) -> int:
        return len(self._entries)


def merge(own: Mapping[str, object]) -> Stock:
    """Return our stock with a person's own entries, written in tables like those of stock.toml.

    Raises `Refused` with every fault.
    """
    return _added(own, shipped()) if own else shipped()


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
    return _labels(Entry(name, {"size": name}), {})


def _labels(entry: Entry, papers: Mapping[str, Paper]) -> LabelSheet:
    from tagend.layouts.stock.label_sheets import label_sheet

    return label_sheet(entry, papers)


def _added(tables: Mapping[str, object], base: Stock) -> Stock:
    """Return `base` with the entries of the tables added; raises `Refused`."""
    faults = [
        Fault(name, "no such table", suggestion(name, _TABLES))
        for name in tables
        if name not in _TABLES
    ]
    papers = {**base.papers, **_read("paper", tables, _paper, faults)}
    cards = {**base.cards, **_read("card", tables, lambda entry: _card(entry, papers), faults)}
    sheets = _read("labels", tables, lambda entry: _labels(entry, papers), faults)
    labels = {**base.labels, **sheets}
    defaults = dict(base.defaults)
    with noting(faults):
        defaults |= _defaults(tables, {"paper": papers, "card": cards, "labels": labels})
    refuse_any(faults)
    return Stock(papers=papers, cards=cards, labels=labels, defaults=defaults)


def _read(
    group: str,
    tables: Mapping[str, object],
    read: Callable[[Entry], Format],
    faults: list[Fault],
) -> dict[str, Format]:
    found: dict[str, Format] = {}
    with noting(faults):
        for name, value in _table(group, tables).items():
            with noting(faults), under(f"{group} {name!r}"):
                if (other := found.get(folded(name))) is not None:
                    raise refused(f"{other.name!r} is the same name", "give it another one")
                found[folded(name)] = read(read_entry(name, value))
    return found


def _table(name: str, tables: Mapping[str, object]) -> Mapping[str, object]:
    table = tables.get(name, {})
    if not isinstance(table, Mapping):
        raise refused(f"found {table!r}", f"write a table [{name}]", name)
    return table


def _paper(entry: Entry) -> Paper:
    entry.allow("size")
    return Paper(entry.name, *entry.size({}))


def _card(entry: Entry, papers: Mapping[str, Paper]) -> CardSize:
    entry.allow("size", "corner")
    width, height = entry.size(papers)
    corner = entry.length("corner", 0.0)
    return CardSize(name=entry.name, width=width, height=height, corner=corner)


def _defaults(
    tables: Mapping[str, object], known: Mapping[str, Mapping[str, AnyFormat]]
) -> dict[str, str]:
    entry = Entry("defaults", _table("defaults", tables))
    with under("defaults"):
        entry.allow(*known)
        names = {key: entry.text(key) for key in entry.values}
        refuse_any(
            Fault(key, f"{name!r} is not in the table [{key}]", "write a name that is")
            for key, name in names.items()
            if folded(name) not in known[key]
        )
    return names
