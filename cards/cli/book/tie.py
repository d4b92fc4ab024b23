"""`tagend book tie`: a batch drawn, numbered and recorded in one."""

from datetime import date

import click

from tagend.cards.book.naming import ranges
from tagend.cards.book.tying import TiedBatch, tie
from tagend.cards.cli.book.orders import (
    again_option,
    load_orders,
    orders_argument,
    orders_of,
    refuse_shortages,
)
from tagend.cards.cli.book.shared import book_option, json_option, recording, say_json, who_option
from tagend.cards.cli.files import load_practice
from tagend.cards.cli.heed import anyway_option
from tagend.cards.cli.options import day_option, shop_option
from tagend.cards.disk.clock import today


@click.command("tie")
@orders_argument
@again_option
@day_option("--tied", help="The day of tying; else today.")
@who_option
@anyway_option
@book_option
@json_option
@shop_option
def command(
    words: tuple[str, ...],
    again: tuple[str, ...],
    tied: date | None,
    who: str | None,
    anyway: bool,
    book: str,
    as_json: bool,
    shop: str | None,
) -> None:
    """Tie so many of each RECIPE: draw their line, number the leaders and record both, or nothing.

    Give it before the scissors; `book print` then prints the batch. What was really used goes in
    with `book correct`.
    """
    practice = load_practice(shop)
    asked = load_orders(words, practice)
    with recording(book, who) as change:
        orders = orders_of(asked, again, change.db, practice, anyway=anyway)
        done = tie(change, orders, tied or today(), who)
        refuse_shortages(done.batch)
        change.tell(done.told)
        _say(done, change.number, as_json=as_json)
    click.echo(f"its sheets: tagend book print {done.number} --bench --labels -o OUT.pdf", err=True)


def _say(done: TiedBatch, entry: int, *, as_json: bool) -> None:
    if as_json:
        from tagend.cards.batches.batch_json import batch_json

        say_json(
            {
                "entry": entry,
                "batch": done.number,
                "tied": done.tied,
                "who": done.who,
                **batch_json(done.batch),
            }
        )
        return
    from tagend.cards.cli.batch_lines import batch_lines

    click.echo(f"batch {done.number}, tied {done.tied.isoformat()}")
    for order in done.batch.orders:
        click.echo(f"  no. {ranges(order.numbers)}  {order.leader.recipe.name}")
    click.echo("\n".join(batch_lines(done.batch)))
