"""A whole season in a book: 2,000 leaders of 200 spools, with marks and corrections."""

from datetime import timedelta
from itertools import cycle
from pathlib import Path
from random import Random

from msgspec.structs import replace

from tagend.cards.batches.batch import Order
from tagend.cards.book.changes import changing
from tagend.cards.book.correcting import Used, correct_use
from tagend.cards.book.file import opened
from tagend.cards.book.history import undo
from tagend.cards.book.leaders import STATES, mark
from tagend.cards.book.tying import tie
from tagend.cards.practice.line_kind import Line
from tagend.cards.practice.rack_file import Spool, read_left
from tagend.cards.recipe.recipe import Section
from tests.bookkeeping import NOW, TODAY, new_book
from tests.plausible import plausible_recipes
from tests.written import leader

LEADERS = 2_000
SPOOLS = 200
IN_BATCH = 20
MARKS = 2_000  # changes besides the batches, each an entry of the history


def season(file: Path, *, leaders: int = LEADERS, marks: int = MARKS) -> Path:
    """Return a book of a season, the same for the same numbers."""
    random = Random(1)
    tieable = [leader(replace(one, tied=None)) for one in plausible_recipes(20)]
    strands: dict[Line, Section] = {}
    for of in tieable:
        for piece in of.pieces:
            strands.setdefault(Line.of(piece.section), piece.section)
    spools = [
        Spool(
            label=f"Spool {place}",
            material=strand.material,
            diameter=strand.diameter,
            left=read_left("5000 m"),
            strength=strand.strength,
            lot=f"L {place // 3}",
        )
        for place, strand in zip(range(SPOOLS), cycle(strands.values()), strict=False)
    ]
    new_book(file, spools)
    with opened(str(file)) as db:
        for place in range(leaders // IN_BATCH):
            with changing(db, NOW) as change:
                order = Order(tieable[place % len(tieable)], IN_BATCH)
                done = tie(change, [order], TODAY - timedelta(365 - place), "Ada")
                assert not done.batch.shortages
                change.tell(f"tied batch {done.number}")
        db.execute("PRAGMA synchronous = OFF")  # seconds, where it is only a test
        for place in range(marks):
            with changing(db, NOW) as change:
                number = random.randint(1, leaders)
                if place % 10 == 9:
                    undo(change)
                elif place % 10 == 5:
                    correct_use(change, (number,), Used(section=1, spoiled=True))
                else:
                    mark(change, (number,), random.choice(STATES), TODAY, "to the boat")
    return file
