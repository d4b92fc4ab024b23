"""The name of a shop file in; what it says, and the picture that it names, out."""

import os
from typing import TYPE_CHECKING

from msgspec.structs import replace

from tagend.cards.disk.disk import note_input, read_bytes
from tagend.cards.practice.shop_file import Shop, read_shop
from tagend.layouts.base.faults import refused, under

if TYPE_CHECKING:
    from tagend.layouts.paper.raster import Raster


def shop_file_at(name: str) -> Shop:
    """Return what a shop file says, its font and logo by their whole paths; raises `Refused`."""
    return shop_file_of(read_bytes(name), name)


def shop_file_of(data: bytes, name: str) -> Shop:
    """Return what a shop file of that name says if it holds this; raises `Refused`."""
    shop = read_shop(data)
    folder = os.path.dirname(name)
    font, logo = (path and os.path.join(folder, path) for path in (shop.font, shop.logo))
    for path in filter(None, (font, logo)):  # read elsewhere, or not by each command
        note_input(path)
    return replace(shop, font=font, logo=logo)


def logo_of(shop: Shop) -> "Raster | None":
    """Return the picture that a shop file names; without one, None. Raises `Refused`."""
    if shop.logo is None:
        return None
    with under("logo", ": "), under(shop.logo, ": "):
        return logo_in(read_bytes(shop.logo))


def logo_in(data: bytes) -> "Raster":
    """Return the picture that a file of it holds. Raises `Refused`."""
    from tagend.layouts.logo.logo_file import read_logo
    from tagend.layouts.strangers.unreadable import Unreadable

    try:
        return read_logo(data)
    except Unreadable as bad:
        raise refused(bad.found, bad.instead) from None
