"""Everything computed from a recipe: a recipe and the tyer's practice in, one worksheet out."""

from msgspec import Struct

from tagend.cards.leader.audit import Finding, audit
from tagend.cards.leader.leader import Leader, work_out
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Recipe


class Worksheet(Struct, frozen=True):
    """One leader worked out and audited; cards, labels, tables and JSON all read this."""

    leader: Leader
    findings: tuple[Finding, ...]

    @property
    def is_wrong(self) -> bool:
        """Whether it cannot be tied, or cannot do what its recipe says."""
        return any(finding.severity == "error" for finding in self.findings)


def worksheet(recipe: Recipe, practice: Practice) -> Worksheet:
    """Return the worksheet of a recipe under a person's practice."""
    leader = work_out(recipe, practice)
    return Worksheet(leader, audit(leader, practice))
