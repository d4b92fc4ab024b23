"""What a batch draws from the rack: a batch and the rack's file in; the file after it out."""

from collections.abc import Iterator
from datetime import date
from fractions import Fraction

from tagend.cards.base.shown_lengths import line_to_buy
from tagend.cards.base.toml_edit import with_values
from tagend.cards.batches.batch import Batch, Shortage
from tagend.cards.practice.rack_file import Rack, Spool
from tagend.layouts.base.faults import Fault, Refused
from tagend.layouts.base.quantities import LENGTH_MM

# Decimals that what is left is rounded down to: a hundredth of a yard is 9 mm.
_DECIMALS = {"yd": 2, "m": 2, "ft": 2, "in": 1, "cm": 0, "mm": 0}

RECORD = (
    *("date", "spool", "lot", "diameter", "material"),
    *("recipe", "section", "pieces", "cut_mm", "drawn_mm", "left"),
)


def rack_after(data: bytes, rack: Rack, batch: Batch) -> bytes:
    """Return the rack's file with what the batch leaves; all else in it stays as it was.

    `data` is what the rack was read from. Raises `Refused` where it has not line enough.
    """
    if batch.shortages:
        raise Refused(*map(_lack, batch.shortages))
    places = {spool.label: place for place, spool in enumerate(rack.spools)}
    drawn = {
        places[pull.spool.label]: left_words(pull.spool, pull.spool.left.mm - pull.mm)
        for pull in batch.pulls
        if pull.spool and pull.cuts
    }
    return with_values(data, "spool", "left", drawn)


def _lack(shortage: Shortage) -> Fault:
    first = shortage.cuts[0]
    amount = line_to_buy(shortage.mm, first.leader.unit)
    line = f"{first.piece.section.diameter.plain} {shortage.material}"
    found = f"to buy: {amount} of {line}, from leader {shortage.first_leader} on"
    return Fault("", found, "nothing was drawn")


def left_words(spool: Spool, mm: Fraction) -> str:
    """Return what is left in the unit that the spool is written in, rounded down."""
    unit = spool.left.unit
    parts = 10 ** _DECIMALS[unit]
    number = Fraction(mm * parts // LENGTH_MM[unit], parts)
    decimals = f"{float(number):.{_DECIMALS[unit]}f}"
    return f"{decimals.rstrip('0').rstrip('.') if '.' in decimals else decimals} {unit}"


def record_rows(batch: Batch, day: date) -> Iterator[dict[str, str]]:
    """Yield what was drawn, a row for each kind of piece from each spool, with `RECORD`'s keys."""
    for pull in batch.pulls:
        if pull.spool is None:
            continue
        spool = (pull.spool.label, pull.spool.lot or "", pull.spool.diameter.plain, pull.material)
        left = left_words(pull.spool, pull.spool.left.mm - pull.mm)
        for cut in pull.cuts:
            pieces = (cut.leader.recipe.name, str(cut.piece.place), str(cut.count))
            lengths = (_mm(cut.piece.cut_mm), _mm(cut.mm), left)
            cells = (day.isoformat(), *spool, *pieces, *lengths)
            yield dict(zip(RECORD, cells, strict=True))


def _mm(exact: Fraction) -> str:
    return f"{float(exact):.2f}".rstrip("0").rstrip(".")
