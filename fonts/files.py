"""Where each font lies: its name in, the path of its file out."""

from importlib.util import find_spec
from pathlib import Path

from msgspec import Struct


class FontFile(Struct, frozen=True):
    """A file inside an installed distribution that holds nothing but fonts."""

    distribution: str
    file: str


FONTS = {
    "medium": FontFile("fontpkg-ibm-plex-sans-condensed", "IBMPlexSansCondensed-Medium.ttf"),
    "bold": FontFile("fontpkg-ibm-plex-sans-condensed", "IBMPlexSansCondensed-Bold.ttf"),
    "medium-fallback": FontFile("fontpkg-fira-sans-condensed", "FiraSansCondensed-Medium.ttf"),
    "bold-fallback": FontFile("fontpkg-fira-sans-condensed", "FiraSansCondensed-Bold.ttf"),
}

OWN = "own:"  # before the path of a person's own font, in its name here


class FontMissing(RuntimeError):
    """A distribution that should have brought a font is not installed, or not whole."""


def font_path(font: str) -> Path:
    """Return the path of a font's file; FontMissing when it is not there."""
    if font.startswith(OWN):
        return Path(font.removeprefix(OWN))
    wanted = FONTS[font]
    # The package is found, not imported: it brings a file, and importing it runs foreign code.
    spec = find_spec(wanted.distribution.replace("-", "_"))
    for folder in (spec.submodule_search_locations or ()) if spec else ():
        path = Path(folder) / "files" / wanted.file
        if path.is_file():
            return path
    raise FontMissing(f"no font {wanted.file}; run: pip install {wanted.distribution}")
