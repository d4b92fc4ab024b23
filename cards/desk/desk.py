"""A folder in; what its files say, read again whenever one has changed, out.

The state is the files alone, so that the page and the commands can be used in turns.
"""

import os
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeVar

from msgspec import Struct

from tagend.cards.disk.disk import read_bytes
from tagend.cards.disk.shop_file_at import logo_of, shop_file_at
from tagend.cards.leader.leader import Leader, work_out
from tagend.cards.practice.rack_file import Rack, read_rack
from tagend.cards.practice.shop_file import Shop
from tagend.cards.printing.job import Job, Printed, job_of
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.layouts.base.faults import Refused, refused, under

T = TypeVar("T")

_PLAIN = re.compile(r"[^.\\/\x00-\x1f\ud800-\udfff][^\\/\x00-\x1f\ud800-\udfff]*")

SHOP, RACK, BOOK = "shop.toml", "rack.toml", "book.db"
COLUMNS = ".columns.toml"  # ends the names of files that say what a table's columns mean
_MOST = 5000  # files that are looked at

Stamp = tuple[int, int, int]  # that changes with a file


class Kept(Struct, frozen=True):
    """A leader's file in the folder: its recipe, or why it cannot be read."""

    name: str  # of the file
    stamp: Stamp
    recipe: Recipe | None
    refusal: Refused | None = None


class Desk:
    """The folder that is worked in; what is read of it is kept until it changes."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder.resolve()
        self.end: Callable[[], None] = lambda: None  # what the page's own button does
        self.prints: dict[str, Printed] = {}  # the last ones, by what they hold
        self._read: dict[tuple[str, ...], tuple[object, Any]] = {}

    def path(self, name: str) -> Path:
        """Return the path of a file in the folder. Raises `Refused` for what is not one there.

        Neither what lies elsewhere nor a link that leads there is.
        """
        plain = _PLAIN.fullmatch(name) and Path(name).name == name
        if not plain or not self._holds(path := self.folder / name):
            raise refused("this is no file in the folder of the desk", "name one", name[:80])
        return path

    def _holds(self, path: Path) -> bool:
        """Whether a file, or what a link leads to, lies in the folder."""
        return Path(os.path.realpath(path)).is_relative_to(self.folder)

    def stamp(self, name: str) -> Stamp | None:
        """Return what changes with a file, or None where there is none."""
        return _stamp(self.path(name))

    def shop(self) -> Shop:
        """Return what the shop's file says; nothing where there is none. Raises `Refused`."""
        if self.stamp(SHOP) is None:
            return Shop()
        return self._kept("shop", [SHOP], self._shop)

    def _shop(self) -> Shop:
        shop = shop_file_at(str(self.path(SHOP)))
        for key, path in (("logo", shop.logo), ("font", shop.font)):
            if path is not None and not self._holds(Path(path)):
                raise refused("this is no file in the folder of the desk", "put it there", key)
        return shop

    def job(self) -> Job:
        """Return the shop's job, with its logo. Raises `Refused`, naming the file."""
        with under(SHOP, ": "):
            shop = self.shop()
            files = [SHOP, *filter(None, (shop.logo, shop.font))]
            return self._kept("job", files, lambda: job_of(shop, logo_of(shop)))

    def rack(self) -> Rack | None:
        """Return the spools of the rack's file; None where there is none. Raises `Refused`."""
        if self.stamp(RACK) is None:
            return None
        practice = self.job().practice
        with under(RACK, ": "):
            return self._kept(
                "rack", [SHOP, RACK], lambda: read_rack(read_bytes(str(self.path(RACK))), practice)
            )

    def leaders(self) -> list[Kept]:
        """Return the folder's leaders by the names of their files; raises `Refused`."""
        self.job()
        names = sorted(each.name for each in os.scandir(self.folder) if _may_hold(each))
        if len(names) > _MOST:
            raise refused(f"there are more than {_MOST} files here", "open a folder of fewer")
        found = [self.leader(name) for name in names]
        return [kept for kept in found if kept is not None]

    def leader(self, name: str) -> Kept | None:
        """Return the leader in a file; None where it is none, or there is no such file."""
        stamp = self.stamp(name)
        return stamp and self._kept(name, [SHOP, name], lambda: self._leader(name, stamp))

    def worked_out(self, kept: Kept) -> Leader:
        """Return a leader that can be read, worked out again only after its file has changed."""
        recipe, practice = kept.recipe, self.job().practice
        assert recipe is not None
        files = [SHOP, kept.name]
        return self._kept("worked out", files, lambda: work_out(recipe, practice))

    def _leader(self, name: str, stamp: Stamp) -> Kept | None:
        data = read_bytes(str(self.path(name)))
        if b"section" not in data:
            return None
        try:
            return Kept(name, stamp, read_recipe(data, self.job().practice))
        except Refused as refusal:
            return Kept(name, stamp, None, refusal)

    def _kept(self, what: str, files: list[str], read: Callable[[], T]) -> T:
        """Return what is read of these files, again only after one of them has changed."""
        stamps = [_stamp(self.folder / name) for name in files]
        there = self._read.get((what, *files))
        if there is None or there[0] != stamps:
            there = self._read[what, *files] = stamps, read()
        value: T = there[1]
        return value


def _stamp(path: Path) -> Stamp | None:
    try:
        found = os.stat(path)
    except OSError:
        return None
    return found.st_mtime_ns, found.st_size, found.st_ino


def _may_hold(entry: "os.DirEntry[str]") -> bool:
    plain = entry.name.endswith(".toml") and _PLAIN.fullmatch(entry.name) is not None
    other = entry.name in (SHOP, RACK) or entry.name.endswith(COLUMNS)
    return plain and not other and not entry.is_symlink() and entry.is_file()
