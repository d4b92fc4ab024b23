"""Batches: orders in; line drawn, leaders numbered and recorded at once; and batches read back."""

import sqlite3
from collections import defaultdict
from collections.abc import Callable, Sequence
from datetime import date
from itertools import groupby

from cfractions import Fraction
from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.batches.batch import Batch, Cut, Order, Pull
from tagend.cards.batches.cutting import cut_batch
from tagend.cards.book.changes import Change
from tagend.cards.book.leaders import leaders
from tagend.cards.book.naming import ranges
from tagend.cards.book.spools import BookSpool, open_spool, spools, usable
from tagend.cards.book.stored import millimetres, nanometres, read_day
from tagend.cards.leader.leader import Leader
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_text import recipe_text
from tagend.layouts.base.faults import Refused, refused
from tagend.layouts.base.near_names import suggestion


class TiedBatch(Struct, frozen=True):
    """A batch that is in the book."""

    number: int
    tied: date
    who: str | None
    batch: Batch  # whose orders have their numbers

    @property
    def told(self) -> str:
        """What the history says of it."""
        what = ", ".join(
            f"{order.count} {order.leader.recipe.name} (no. {ranges(order.numbers)})"
            for order in self.batch.orders
        )
        return f"tied batch {self.number}: {what}"


def tie(change: Change, orders: Sequence[Order], tied: date, who: str | None) -> TiedBatch:
    """Draw the line of a batch, give its leaders their numbers and record both.

    Its `batch` has shortages where the spools lack line, and then nothing is done.
    """
    db = change.db
    known = spools(db)
    planned = cut_batch(orders, usable(known))
    if planned.shortages:
        return TiedBatch(0, tied, who, planned)
    batch = _inserted(db, "INSERT INTO batch (tied, who) VALUES (?, ?)", tied.isoformat(), who)
    numbered = [_numbered(db, order, batch, tied) for order in orders]
    by_label = {spool.label: spool for spool in known}
    pulls = []
    for pull in planned.pulls:
        if pull.spool is not None and pull.cuts:
            cuts = [replace(cut, order=numbered[_place(cut.order, orders)]) for cut in pull.cuts]
            _draw(db, by_label[pull.spool.label], cuts, tied)
            pulls.append(replace(pull, cuts=tuple(cuts), runs_out_at=None))
    return TiedBatch(batch, tied, who, replace(planned, orders=tuple(numbered), pulls=tuple(pulls)))


def _place(order: Order, orders: Sequence[Order]) -> int:
    return next(place for place, one in enumerate(orders) if one is order)


def _numbered(db: sqlite3.Connection, order: Order, batch: int, tied: date) -> Order:
    row = (batch, _recipe_key(db, order.leader.recipe), tied.isoformat())
    words = "INSERT INTO leader (batch, recipe, tied) VALUES (?, ?, ?)"
    first = _inserted(db, words, *row)
    db.executemany(words, [row] * (order.count - 1))
    return replace(order, numbers=range(first, first + order.count))


def _recipe_key(db: sqlite3.Connection, recipe: Recipe) -> int:
    text = recipe_text(replace(recipe, tied=None))
    found = db.execute("SELECT id FROM recipe WHERE text = ?", (text,)).fetchone()
    if found:
        return int(found["id"])
    return _inserted(db, "INSERT INTO recipe (name, text) VALUES (?, ?)", recipe.name, text)


def _draw(db: sqlite3.Connection, spool: BookSpool, cuts: Sequence[Cut], tied: date) -> None:
    db.executemany(
        "INSERT INTO draw (spool, nm, kind, leader, section) VALUES (?, ?, 'tied', ?, ?)",
        (
            (spool.id, nanometres(cut.piece.cut_mm), number, cut.piece.place)
            for cut in cuts
            for number in cut.numbers
        ),
    )
    open_spool(db, spool, tied)


def _inserted(db: sqlite3.Connection, words: str, *values: str | int | None) -> int:
    return int(db.execute(words, values).lastrowid or 0)


def tied_orders(
    db: sqlite3.Connection, number: int, leader_of: Callable[[str], Leader]
) -> TiedBatch:
    """Return a batch with its orders, and no pulls; `leader_of` works out a recipe's text.

    Raises `Refused` for a batch that is not in the book.
    """
    head = db.execute("SELECT tied, who FROM batch WHERE id = ?", (number,)).fetchone()
    rows = db.execute(
        "SELECT leader.id, recipe.text FROM leader JOIN recipe ON recipe.id = recipe "
        "WHERE batch = ? ORDER BY leader.id",
        (number,),
    ).fetchall()
    if head is None or not rows:
        raise _no_batch(db, number)
    orders = tuple(
        Order(leader_of(text), len(numbers), numbers)
        for text, of_text in groupby(rows, lambda row: str(row["text"]))
        for numbers in [tuple(int(row["id"]) for row in of_text)]
    )
    return TiedBatch(number, read_day(head["tied"]), head["who"], Batch(orders, ()))


def recipe_texts(db: sqlite3.Connection, numbers: Sequence[int]) -> list[str]:
    """Return the recipes of leaders. Raises `Refused` for a number that is not in the book."""
    leaders(db, numbers)
    words = "SELECT text FROM recipe JOIN leader ON leader.recipe = recipe.id WHERE leader.id = ?"
    return [str(db.execute(words, (number,)).fetchone()["text"]) for number in numbers]


def with_draws(db: sqlite3.Connection, tied: TiedBatch) -> TiedBatch:
    """Return a batch with what its leaders were cut from, spool by spool.

    Raises `Refused` where what was cut is not what its recipes ask for now.
    """
    places = {
        number: (order, place)
        for order, one in enumerate(tied.batch.orders)
        for place, number in enumerate(one.numbers)
    }
    pieces = [{piece.place: piece for piece in one.leader.pieces} for one in tied.batch.orders]
    cut: defaultdict[int, defaultdict[tuple[int, int], list[int]]] = defaultdict(
        lambda: defaultdict(list)
    )
    rows = db.execute(
        "SELECT draw.*, leader.id AS number FROM leader JOIN draw ON draw.leader = leader.id "
        "WHERE batch = ? AND kind = 'tied' ORDER BY leader.id, section",
        (tied.number,),
    ).fetchall()
    for row in rows:
        order, place = places[row["number"]]
        piece = pieces[order].get(row["section"])
        if piece is None or nanometres(piece.cut_mm) != row["nm"]:
            raise _cut_otherwise(tied, order)
        cut[row["spool"]][order, row["section"]].append(place)
    after = _left_after(db, max(row["id"] for row in rows)) if rows else {}
    used = sorted((one for one in spools(db) if one.id in cut), key=lambda one: min(cut[one.id]))
    pulls = tuple(
        _pull(
            spool,
            after[spool.id],
            [
                Cut(tied.batch.orders[order], pieces[order][section], tuple(of))
                for (order, section), of in cut[spool.id].items()
            ],
        )
        for spool in used
    )
    return replace(tied, batch=Batch(tied.batch.orders, pulls))


def _pull(spool: BookSpool, after_nm: int, cuts: Sequence[Cut]) -> Pull:
    before_mm = millimetres(after_nm) + sum((cut.mm for cut in cuts), start=Fraction(0))
    return Pull(
        material=spool.material,
        diameter_mm=spool.diameter.mm,
        cuts=tuple(sorted(cuts, key=lambda cut: -cut.piece.cut_mm)),
        spool=replace(spool, left_mm=before_mm).on_rack,
    )


def _left_after(db: sqlite3.Connection, draw: int) -> dict[int, int]:
    """Return what was left on each spool once a draw was made, in nm."""
    rows = db.execute(
        "SELECT spool.id, length_nm - coalesce("
        "  (SELECT sum(nm) FROM draw WHERE spool = spool.id AND draw.id <= ?), 0) AS left_nm "
        "FROM spool",
        (draw,),
    )
    return {row["id"]: row["left_nm"] for row in rows}


def _no_batch(db: sqlite3.Connection, number: int) -> Refused:
    known = [str(row["id"]) for row in db.execute("SELECT DISTINCT batch AS id FROM leader")]
    given = db.execute("SELECT seq FROM sqlite_sequence WHERE name = 'batch'").fetchone()
    undone = given is not None and 1 <= number <= given["seq"]
    found = f"batch {number} was undone" if undone else f"there is no batch {number}"
    return refused(found, suggestion(str(number), known) if known else "tie one first")


def _cut_otherwise(tied: TiedBatch, order: int) -> Refused:
    name = tied.batch.orders[order].leader.recipe.name
    return refused(
        f"{name} would be cut otherwise now than when batch {tied.number} was",
        "name the shop file with --shop that it was tied with",
    )
