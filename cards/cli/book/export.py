"""`tagend book export`: the book as tables, for reading in a spreadsheet."""

import click

from tagend.cards.book.tables import TABLES, book_table
from tagend.cards.cli.book.shared import book_option, reading
from tagend.cards.cli.options import replace_option
from tagend.cards.cli.output import check_output, tell_written, write_output


@click.command("export")
@click.option(
    "-o", "--output", metavar="OUT.csv", required=True, help="One table, or all as OUT.xlsx."
)
@click.option(
    "--table",
    type=click.Choice(list(TABLES)),
    default="leaders",
    show_default=True,
    help="Which one a .csv holds.",
)
@replace_option
@book_option
def command(output: str, table: str, replace: bool, book: str) -> None:
    """Write the leaders, their draws, the spools or the history as a table.

    Tables are for reading: what is changed in them does not come back. The book is the truth.
    """
    check_output(output, replace=replace)
    whole = output.lower().endswith(".xlsx")
    with reading(book) as db:
        tables = {name: book_table(db, name) for name in (TABLES if whole else (table,))}
    if whole:
        from tagend.cards.tables.workbook import workbook

        data = workbook({name: (one.columns, *one.rows) for name, one in tables.items()})
    else:
        from tagend.cards.tables.dialect import written_table

        one = tables[table]
        rows = (["" if cell is None else str(cell) for cell in row] for row in one.rows)
        data = written_table(one.columns, (dict(zip(one.columns, r, strict=True)) for r in rows))
    write_output(output, data, replace=replace)
    tell_written(f"{output}")
