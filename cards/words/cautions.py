"""Cautions for cards: what a leader's tying involves in, what to heed out, most important first."""

from collections.abc import Iterable
from functools import cache
from typing import Literal, get_args

from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.base.file_schema import TableReader, by, table
from tagend.cards.base.named_table import SOURCE_MOST, read_our_file
from tagend.cards.base.value_readers import list_of, one_of, text_line
from tagend.cards.leader.leader import Leader
from tagend.cards.words.language import Wording, language_file

When = Literal["always", "fly", "wire", "pull test"]

SHORT_MOST = 60  # one line of a card
LONG_MOST = 200


class Caution(Struct, frozen=True):
    """One caution of the cautions file, in a line and in full."""

    name: str
    short: str
    long: str
    when: When
    source: str


def cautions(wording: Wording, *involved: When) -> tuple[Caution, ...]:
    """Return the cautions that always hold and those of the work `involved`, in their order."""
    rows = _load(wording.language)
    return tuple(row for row in rows if row.when in ("always", *involved))


def cautions_for(leaders: Iterable[Leader], wording: Wording) -> tuple[Caution, ...]:
    """Return the cautions for tying these leaders and fishing them."""
    kinds = {piece.material.kind for leader in leaders for piece in leader.pieces}
    return cautions(wording, "fly", "wire") if "wire" in kinds else cautions(wording, "fly")


@cache
def _load(language: str) -> tuple[Caution, ...]:
    ours = list_of(_read_caution, "caution", 1, 40)(read_our_file("words/cautions.toml")["caution"])
    words = language_file(language)["cautions"]
    return tuple(replace(row, **words.get(row.name, {})) for row in ours)


_read_caution: TableReader[Caution] = TableReader(
    table(
        Caution,
        {
            "name": by(text_line(SHORT_MOST)),
            "short": by(text_line(SHORT_MOST)),
            "long": by(text_line(LONG_MOST)),
            "when": by(one_of(*get_args(When))),
            "source": by(text_line(SOURCE_MOST)),
        },
    )
)
