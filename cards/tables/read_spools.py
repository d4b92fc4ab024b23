"""A rack file or a table of spools in; the spools out, or the faults by row."""

from tagend.cards.practice.rack_file import SPOOLS_MOST, Rack, rack_of, read_rack
from tagend.cards.recipe.vocabulary import Vocabulary
from tagend.cards.tables.dialect import named_cells, read_lines
from tagend.layouts.base.faults import Refused, refused

_TABLES = (".csv", ".tsv", ".txt")


def read_spools(name: str, data: bytes, words: Vocabulary) -> Rack:
    """Return the spools of a rack file or, where it is called so, of a table of text."""
    read = read_spool_table if name.lower().endswith(_TABLES) else read_rack
    return read(data, words)


def read_spool_table(data: bytes, words: Vocabulary) -> Rack:
    """Return the spools, a row each, whose columns are the keys of a rack file."""
    lines = read_lines(data)
    if lines is None or not lines.rows:
        raise refused("this table has no spool", "write a row for each below label, material, …")
    if len(lines.rows) > SPOOLS_MOST:  # before each of them is found fault with
        raise refused(f"there are {len(lines.rows)} spools", f"write at most {SPOOLS_MOST}")
    rows = [
        {key: cell for key, cell in named_cells(lines.header, row).items() if cell}
        for _, row in lines.rows
    ]
    try:
        return rack_of({"spool": rows}, words)
    except Refused as refusal:
        at = {f"spool {place}": f"row {number}" for place, (number, _) in enumerate(lines.rows, 1)}
        places = (fault.where.partition(",") for fault in refusal.faults)
        raise Refused(
            *(
                fault._replace(where=at.get(spool, spool) + mark + key)
                for fault, (spool, mark, key) in zip(refusal.faults, places, strict=True)
            )
        ) from None
