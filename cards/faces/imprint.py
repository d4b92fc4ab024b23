"""The imprint: a shop's name, line and logo in; one block out."""

from collections.abc import Callable
from functools import lru_cache

from msgspec import Struct

from tagend.cards.faces.block import LEADING, Block, Scale, stacked, text_block
from tagend.layouts.paper.face import Picture, shifted
from tagend.layouts.paper.raster import Raster
from tagend.layouts.paper.text import TooWide

_SHARE = 0.3  # of the width, at most, for a logo beside words


class Imprint(Struct, frozen=True):
    """Whose card it is, as far as that is given."""

    name: str | None = None
    line: str | None = None  # of text, below the name
    logo: Raster | None = None
    address: str | None = None  # where it is, on a sheet that is sold by


@lru_cache(maxsize=64)
def imprint_block(imprint: Imprint, scale: Scale, width: float) -> Block:
    """Return the shop's name and its line of text, as far as they are given, and its logo."""

    def words(room: float) -> Block:
        texts = ((imprint.name, scale.bold), (imprint.line, scale.medium))
        return stacked(text_block(text or "", fonts, scale.small, room) for text, fonts in texts)

    return with_logo(words, imprint.logo, scale, width)


def with_logo(
    words: Callable[[float], Block], logo: Raster | None, scale: Scale, width: float
) -> Block:
    """Return words with the logo at their right end, no higher than they or two small lines.

    `words` sets them into a width. The logo stands above them where a word is too wide beside it,
    and alone where there are none.
    """
    if logo is None:
        return words(width)
    least = 2 * LEADING * scale.small
    if not words(width).height:
        return _alone(logo, least, width)
    try:
        low = _beside(words, logo, least, scale, width)
        return _beside(words, logo, low.height, scale, width)
    except TooWide:
        return stacked([_alone(logo, least, width), words(width)], scale.small / 2)


def _beside(
    words: Callable[[float], Block], logo: Raster, height: float, scale: Scale, width: float
) -> Block:
    wide, high = logo.within(_SHARE * width, height)
    text = words(width - wide - scale.small)
    taken = max(text.height, high)
    picture = Picture(width - wide, (taken - high) / 2, wide, high, logo)
    return Block((*shifted(text.items, 0, (taken - text.height) / 2), picture), taken)


def _alone(logo: Raster, height: float, width: float) -> Block:
    wide, high = logo.within(width, height)
    return Block((Picture(0, 0, wide, high, logo),), high)
