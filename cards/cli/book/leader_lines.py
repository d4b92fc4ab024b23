"""Leaders of the book in; lines for a terminal, and what JSON says of them, out."""

from collections.abc import Sequence

from tagend.cards.book.leaders import BookLeader
from tagend.cards.cli.columns import in_columns


def leader_lines(leaders: Sequence[BookLeader]) -> list[str]:
    """Return a line for each leader: its number, batch, day, recipe, lots and what became of it."""
    return in_columns(
        [
            (
                f"no. {leader.number}",
                f"batch {leader.batch}",
                leader.tied.isoformat(),
                leader.recipe,
                ", ".join(leader.lots),
                state_words(leader),
            )
            for leader in leaders
        ]
    )


def state_words(leader: BookLeader) -> str:
    """Return what became of a leader: `given 2026-06-01: to the boat`."""
    day = f" {leader.state_day.isoformat()}" if leader.state_day else ""
    state = "" if leader.state == "tied" else f"{leader.state}{day}"
    return ": ".join(filter(None, (state, leader.remark)))


def leader_json(leader: BookLeader) -> dict[str, object]:
    """Return what JSON says of a leader."""
    return {
        "number": leader.number,
        "batch": leader.batch,
        "recipe": leader.recipe,
        "tied": leader.tied,
        "state": leader.state,
        "state_day": leader.state_day,
        "remark": leader.remark,
        "sections": [
            {"section": of.section, "spool": of.spool, "lot": of.lot} for of in leader.drawn
        ],
    }
