"""What the Tab key offers: what was typed of a word in, the names that begin with it out."""

from collections.abc import Callable, Iterable
from itertools import chain
from typing import TYPE_CHECKING, Literal, TypeAlias

import click

if TYPE_CHECKING:
    from click.shell_completion import CompletionItem

Kind: TypeAlias = Literal["papers", "cards", "labels"]
Completes: TypeAlias = Callable[[click.Context, click.Parameter, str], list[str]]


def files(_context: click.Context, _option: click.Parameter, typed: str) -> "list[CompletionItem]":
    """Leave it to the shell, which knows its files best."""
    from click.shell_completion import CompletionItem

    return [CompletionItem(typed, type="file")]


def stock_names(*kinds: Kind) -> Completes:
    """Return what offers papers, card sizes or label sheets."""

    def complete(_context: click.Context, _option: click.Parameter, typed: str) -> list[str]:
        from tagend.layouts.stock.stock import shipped

        of_kind = (getattr(shipped(), kind).values() for kind in kinds)
        return _beginning(typed, (each.name for each in chain.from_iterable(of_kind)))

    return complete


def knot_names(_context: click.Context, _option: click.Parameter, typed: str) -> list[str]:
    """Offer the knots that everybody has."""
    from tagend.cards.practice.knot_file import load_knots

    return _beginning(typed, load_knots().names)


def _beginning(typed: str, names: Iterable[str]) -> list[str]:
    """Return the names that begin so, in small letters or capitals."""
    return [name for name in names if name.lower().startswith(typed.lower())]
