"""The text of a code as a person reads it with the program shut: text and key in, what to tie out.

Written from the words of NOTATION.md; the key is the label's own or, where it has no room for one,
the codes of our knots and materials. It knows no module of the reader under test, and no rule of
choice.
"""

import re
import tomllib

from cfractions import Fraction
from msgspec import Struct

from tests.tree import ROOT

_IN_MM = {
    "IN": "25.4",
    "FT": "304.8",
    "YD": "914.4",
    "M": "1000",
    "CM": "10",
    "MM": "1",
    "THOU": "0.0254",
}
_NUMBER = r"\d+\+\d+/\d+|\d+/\d+|\d*\.\d+|\d+"
_FIRST = re.compile(r"[0-9.]")
_SECTION = re.compile(
    r"(?P<low>[^-*]+)(-(?P<high>[^*]+))?\*(?P<thick>[^-*/+]+)(-(?P<thin>[0-9.][^-*/+]*))?"
    r"(\*(?P<material>[A-Z]\w*|%[^%]*%))?(\*(?P<strength>[^-+/A-Z*]+(\+\d+/\d+)?[A-Z]*))?"
    r"([-+](?P<knot>[A-Z]\w*|%[^%]*%))?(?P<marks>(/.*)?)"
)


class Tied(Struct, frozen=True):
    """What hands take from a text: lengths and diameters in mm, knots and materials by name."""

    butt: str | None
    loop_mm: Fraction | None
    lengths_mm: list[tuple[Fraction, Fraction]]
    diameters_mm: list[Fraction]
    materials: list[str]
    knots: list[str | None]  # below each section, the last at the fly
    strengths: list[str | None]  # as written, and the parts and droppers too
    marks: list[str]


def key_on_label(words: str) -> dict[str, str]:
    """Return the names that a label's words give to codes: `PL perfection loop 3/4 in, N nylon`."""
    _, _, key = words.replace("’", "'").rpartition("chosen by rule")
    listed = key.replace("; CUT: lengths as cut", "").rpartition(" tied")[0].split(", ")
    pairs = (re.fullmatch(r"([A-Z]\w*) (\D+?)(?: [0-9].*)?", each.strip()) for each in listed)
    return {pair[1]: pair[2] for pair in pairs if pair}


def codes_of_ours() -> dict[str, str]:
    """Return every code with the knot or material that it stands for."""
    return {
        row["code"]: name
        for shelf in ("knots", "materials")
        for name, row in tomllib.loads(
            (ROOT / "cards" / "practice" / f"{shelf}.toml").read_text()
        ).items()
        if isinstance(row, dict)
    }


def read_by_hand(text: str, key: dict[str, str]) -> Tied:
    """Return what a text tells hands to tie."""
    _, _, *fields, _ = text.split(":")
    units = next((f.split("/") for f in fields if re.fullmatch("[A-Z]+/[A-Z]+/[A-Z]+", f)), None)
    length_unit, diameter_unit = (units or ["IN", "IN"])[:2]
    butt, _, loop = _butt(next((f[5:] for f in fields if f.startswith("BUTT ")), ""))
    tied = Tied(
        butt=_knot(butt, key),
        loop_mm=_mm(loop, length_unit) if loop else None,
        lengths_mm=[],
        diameters_mm=[],
        materials=[],
        knots=[],
        strengths=[],
        marks=[],
    )
    sections = [field for field in fields if _FIRST.match(field)]
    for field in sections:
        match = _SECTION.fullmatch(field)
        assert match, field
        low = _mm(match["low"], length_unit)
        tied.lengths_mm.append((low, _mm(match["high"], length_unit) if match["high"] else low))
        tied.diameters_mm.append(_diameter(match["thick"], diameter_unit))
        written = match["material"]
        tied.materials.append(key[written] if written else tied.materials[-1])
        tied.strengths.append(match["strength"])
        tied.marks.append(match["marks"])
        as_above = tied.knots[-1] if tied.knots and field is not sections[-1] else None
        tied.knots.append(_knot(match["knot"], key) if match["knot"] else as_above)
    return tied


def _butt(value: str) -> tuple[str, str, str]:
    """Return the code of the end, and the size of its loop behind `*` or `+`."""
    match = re.fullmatch(r"\+?(?P<end>[A-Z]\w*)?(?:([*+])(?P<loop>.*))?", value)
    assert match, value
    return match["end"] or "", "", match["loop"] or ""


def _knot(code: str | None, key: dict[str, str]) -> str | None:
    return None if code in (None, "", "NONE") else key[code]


def _diameter(written: str, unit: str) -> Fraction:
    """Return a diameter in mm: in inches, a number without a point is of thousandths."""
    return _mm(written, "THOU" if unit == "IN" and written.isdigit() else unit)


def _mm(written: str, unit: str) -> Fraction:
    """Return a length or diameter; `4X` is 0.011 in less four thousandths, in steps of one."""
    if written.endswith("X"):
        return (11 - Fraction(written[:-1])) * Fraction("0.0254")
    parts = re.findall(rf"({_NUMBER})([A-Z]*)", written)
    assert "".join(number + named for number, named in parts) == written
    return sum(
        (_number(number) * Fraction(_IN_MM[named or unit]) for number, named in parts), Fraction(0)
    )


def _number(written: str) -> Fraction:
    return sum((Fraction(part) for part in written.split("+")), Fraction(0))
