"""One leader as faces tell it: its worksheet, the words and its spools' names, in one value."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from tagend.cards.leader.leader import Leader
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.words.language import Wording


@dataclass(frozen=True, slots=True)
class Told:
    """A worksheet, and how it is told."""

    worksheet: Worksheet
    wording: Wording
    spools: Mapping[int, str] = field(default_factory=dict)  # a person's own, by their section

    @property
    def leader(self) -> Leader:
        return self.worksheet.leader
