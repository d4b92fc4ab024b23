"""Rules of thumb: the file of them in; butts and tippets by their use, wear too, out."""

from functools import cache

from cfractions import Fraction
from msgspec import Struct

from tagend.cards.base.file_schema import TableReader, by, table, tables, whole_number
from tagend.cards.base.named_table import read_our_file
from tagend.cards.base.units import (
    Diameter,
    Length,
    Strength,
    parse_diameter,
    parse_length,
    parse_strength,
)
from tagend.cards.base.value_readers import list_of, text_line
from tagend.cards.practice.materials import Range


class ButtFor(Struct, frozen=True):
    """The butt for line weights."""

    line: str
    diameter: Diameter


class SaltButtFor(Struct, frozen=True):
    """The butt for line weights in salt water, which is told by strength."""

    line: str
    least: Strength
    most: Strength | None = None


class RulesOfThumb(Struct, frozen=True, kw_only=True):
    """What the file says; its head explains every key and names the sources."""

    butt_of_tip: Fraction
    tip_density: Range
    butts: tuple[ButtFor, ...]
    salt_butts: tuple[SaltButtFor, ...]
    hooks: tuple[int, ...]
    tippet_of_hook: tuple[Fraction, Fraction]
    worn_share: Fraction
    worn_length: Length
    staying_share: Fraction

    def tip_mm(self, butt: Diameter) -> Fraction:
        """Return the diameter of the line's tip that a butt suits."""
        return butt.mm / self.butt_of_tip

    def tippet_x(self, hook: int) -> tuple[int, int]:
        """Return the stoutest and the finest tippet for a hook, as whole X numbers."""
        stout, fine = (round(hook * share) for share in self.tippet_of_hook)
        return stout, fine


@cache
def rules_of_thumb() -> RulesOfThumb:
    """Return the rules of our file."""
    return _read(read_our_file("practice/rules_of_thumb.toml"))


def _share(value: object) -> Fraction:
    return Fraction(str(value))


_LINE = by(text_line(10))
_STRENGTH = by(parse_strength)
_read: TableReader[RulesOfThumb] = TableReader(
    table(
        RulesOfThumb,
        {
            "butt_of_tip": by(_share),
            "tip_density": by(list_of(_share, "figure", 2, 2)),
            "butt": tables(table(ButtFor, {"line": _LINE, "diameter": by(parse_diameter)}), 1, 6),
            "salt_butt": tables(
                table(SaltButtFor, {"line": _LINE, "least": _STRENGTH, "most": _STRENGTH}), 1, 6
            ),
            "hook": tables(whole_number(1, 32), 1, 6),
            "tippet_of_hook": by(list_of(_share, "share", 2, 2)),
            "worn_share": by(_share),
            "worn_length": by(parse_length),
            "staying_share": by(_share),
        },
    )
)
