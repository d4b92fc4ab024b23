"""The fonts that text is set with: ours, or with the file of a person's own font as the last."""

from pathlib import Path
from typing import TypeAlias

from msgspec import Struct

Chain: TypeAlias = tuple[str, ...]  # names of fonts, in the order in which they are tried


class Fonts(Struct, frozen=True):
    """The fonts of one job, a chain for each weight."""

    medium: Chain
    bold: Chain


# The first has tabular digits and the primes, the second Greek and Cyrillic.
OURS = Fonts(("medium", "medium-fallback"), ("bold", "bold-fallback"))


def fonts_with(path: Path | None) -> Fonts:
    """Return our fonts, after which that of a file is tried; None adds none. Raises `Refused`."""
    if path is None:
        return OURS
    from tagend.fonts.own_font import own_font

    own = own_font(path)
    return Fonts((*OURS.medium, own), (*OURS.bold, own))
