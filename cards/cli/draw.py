"""So many leaders cut from a rack's file: their batch out, and what it takes taken off the file."""

from collections.abc import Sequence
from datetime import date

import click

from tagend.cards.batches.batch import Batch, Order
from tagend.cards.batches.cutting import cut_batch
from tagend.cards.batches.rack_drawing import RECORD, rack_after, record_rows
from tagend.cards.cli.disk import bytes_of, read_bytes, write_both, write_whole
from tagend.cards.cli.file_lock import alone
from tagend.cards.cli.files import naming
from tagend.cards.leader.leader import Leader
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.rack_file import read_rack
from tagend.cards.tables.growing_table import with_rows


def drawn_batch(
    leaders: Sequence[Leader],
    numbers: Sequence[int],
    name: str,
    practice: Practice,
    record: str | None,
    day: date,
) -> Batch:
    """Return the batch; what it takes is off the rack's file, and a day's rows in the record.

    Raises `Refused` where the rack has not line enough, and then nothing is written.
    """
    with alone(name):
        data = read_bytes(name)
        with naming(name):
            rack = read_rack(data, practice)
            batch = cut_batch(list(map(Order, leaders, numbers)), rack)
            after = rack_after(data, rack, batch)
        if record is None:
            write_whole(name, after)
        else:
            with naming(record):
                log = with_rows(bytes_of(record), RECORD, record_rows(batch, day))
            write_both(name, after, record, log)
    click.echo(f"drawn from {name}", err=True)
    return batch
