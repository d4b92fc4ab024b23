"""A batch in; what JSON says of it, with units in the keys, out."""

from collections.abc import Iterable

from tagend.cards.batches.batch import Batch, Cut, LeaderAt

Json = dict[str, object]


def batch_json(batch: Batch) -> Json:
    """Return what is tied, what each spool gives and what is to buy."""
    return {
        "leaders": [
            {
                "recipe": order.leader.recipe.name,
                "count": order.count,
                "numbers": list(order.numbers),
            }
            for order in batch.orders
        ],
        "spools": [
            {
                "spool": pull.spool and pull.spool.label,
                "lot": pull.spool and pull.spool.lot,
                "material": pull.material,
                "diameter_mm": pull.diameter_mm,
                "drawn_mm": pull.mm,
                "left_mm": pull.left_mm,
                "runs_out_at": _at(pull.runs_out_at),
                "cuts": _cuts(pull.cuts),
            }
            for pull in batch.pulls
        ],
        "to_buy": [
            {
                "material": lack.material,
                "diameter_mm": lack.diameter_mm,
                "length_mm": lack.mm,
                "from": _at(lack.first),
                "cuts": _cuts(lack.cuts),
            }
            for lack in batch.shortages
        ],
        "spare_mm": batch.spare_mm,
    }


def _cuts(cuts: Iterable[Cut]) -> list[Json]:
    return [
        {
            "recipe": cut.leader.recipe.name,
            "section": cut.piece.place,
            "cut_mm": cut.piece.cut_mm,
            "count": cut.count,
            "numbers": list(cut.numbers),
        }
        for cut in cuts
    ]


def _at(found: LeaderAt | None) -> Json | None:
    return found and {"recipe": found.order.leader.recipe.name, "leader": found.number}
