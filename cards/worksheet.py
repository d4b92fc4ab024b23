"""Everything computed from a recipe: a recipe and the tyer's practice in, one worksheet out."""

from typing import NamedTuple

from cards.audit import Finding, audit
from cards.leader import Leader, work_out
from cards.practice import Practice
from cards.recipe import Recipe


class Worksheet(NamedTuple):
    """One leader worked out and audited; cards, labels, tables and JSON all read this."""

    leader: Leader
    findings: tuple[Finding, ...]


def worksheet(recipe: Recipe, practice: Practice) -> Worksheet:
    """Return the worksheet of a recipe under a person's practice."""
    leader = work_out(recipe, practice)
    return Worksheet(leader, audit(leader, practice))
