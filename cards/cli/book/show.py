"""`tagend book show`: what is left on the spools, and of each recipe in the wallets."""

from collections.abc import Iterable, Iterator
from datetime import date

import click

from tagend.cards.book.leaders import IN_WALLET, STATES, Left, left
from tagend.cards.book.spools import BookSpool, spools
from tagend.cards.cli.book.shared import book_option, json_option, reading, say_json
from tagend.cards.cli.columns import in_columns
from tagend.cards.disk.clock import today


@click.command("show")
@book_option
@json_option
def command(book: str, as_json: bool) -> None:
    """Say what is left: line on each spool, leaders of each recipe and how old the oldest is."""
    with reading(book) as db:
        on_rack, recipes = spools(db), list(left(db))
    if as_json:
        say_json({"spools": list(map(_spool_json, on_rack)), "recipes": list(_recipes(recipes))})
        return
    click.echo("spools")
    click.echo("\n".join(in_columns(list(map(_spool_row, on_rack))) or ["  none"]))
    click.echo("leaders in the wallets")
    click.echo("\n".join(in_columns(list(_recipe_rows(recipes, today()))) or ["  none"]))


def _spool_row(spool: BookSpool) -> tuple[str, ...]:
    strength = f", {spool.strength.plain}" if spool.strength else ""
    line = f"{spool.diameter.plain} {spool.material}{strength}"
    return f"  {spool.told}", line, f"{spool.left.plain} left", _state(spool)


def _state(spool: BookSpool) -> str:
    days = (("bad", spool.bad), ("empty", spool.empty), ("opened", spool.opened))
    told = next((f"{word} {day.isoformat()}" for word, day in days if day), "")
    return ": ".join(filter(None, (told, spool.remark)))


def _recipe_rows(recipes: Iterable[Left], on: date) -> Iterator[tuple[str, ...]]:
    for recipe, states, oldest in recipes:
        here = sum(states[state] for state in IN_WALLET)
        age = f"the oldest of {oldest.isoformat()}, {(on - oldest).days} days" if oldest else ""
        gone = ", ".join(f"{states[state]} {state}" for state in STATES[1:] if states[state])
        yield f"  {here}", recipe, age, gone


def _recipes(recipes: Iterable[Left]) -> Iterator[dict[str, object]]:
    for recipe, states, oldest in recipes:
        yield {"recipe": recipe, **{state: states[state] for state in STATES}, "oldest": oldest}


def _spool_json(spool: BookSpool) -> dict[str, object]:
    return {
        "spool": spool.label,
        "lot": spool.lot,
        "material": spool.material,
        "diameter_mm": spool.diameter.mm,
        "strength_kg": spool.strength and spool.strength.kg,
        "length_mm": spool.length.mm,
        "left_mm": spool.left_mm,
        **{key: getattr(spool, key) for key in ("bought", "opened", "empty", "bad", "remark")},
    }
