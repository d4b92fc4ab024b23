"""The text of a label's code: a recipe in, plain text that a person can tie from out, and back.

NOTATION.md describes the text; the functions that read a part of it quote its grammar.
"""

import re
from typing import TYPE_CHECKING

from tagend.cards.base.value_readers import called
from tagend.cards.code.check_characters import CHARACTERS, check_characters, error
from tagend.cards.code.cursor import Cursor
from tagend.cards.code.fields_code import SECTION_START, WORD, read_fields, write_fields
from tagend.cards.code.quantity_code import SILENT, common_units
from tagend.cards.code.section_code import Terms
from tagend.cards.practice.knot_file import load_knots
from tagend.cards.practice.knots import Knots
from tagend.cards.practice.materials import Materials, load_materials
from tagend.cards.recipe.recipe import Recipe
from tagend.layouts.base.faults import Refused, refused

if TYPE_CHECKING:
    from tagend.cards.code.code_typos import Correction

MARK = "TAG3"  # this notation and its version
_FIRST = "TAG1"
_READ = (MARK, "TAG2", _FIRST)
LONGEST = 2000  # characters; a label's code has some hundred

_VERSION = re.compile(r"TAG(\d+):")
_CHECKED = re.compile(r".*[0-9A-Z]{2}")
_NOT_SPACE = re.compile("[^ ]")
_READ_AGAIN = 6000  # characters in search of a slip, so that long texts are refused quickly too
_SLIPS_TOLD = 3


def write_notation(
    recipe: Recipe, knots: Knots, materials: Materials, tied: Recipe | None = None
) -> str:
    """Return the text of a recipe's code, in the 45 characters of the alphanumeric mode.

    `tied` is the recipe with every knot named that its leader is tied with; without it the text
    says the knots of the recipe only. Its variants are not in it: each has a code of its own.
    Raises `Refused` for a recipe whose text is longer than any label's.
    """
    texts = (
        ":".join((MARK, *write_fields(recipe, tied or recipe, Terms(units, knots, materials)), ""))
        for units in (SILENT, common_units(recipe))
    )
    shortest = min(texts, key=len)
    whole = shortest + check_characters(shortest)
    if len(whole) > LONGEST:
        found = f"this recipe takes {len(whole)} characters"
        raise refused(found, f"shorten its note or use: a code holds at most {LONGEST}")
    return whole


def read_notation(
    text: str, knots: Knots, materials: Materials, *, as_tied: bool = False
) -> Recipe:
    """Read `text = "TAG3:" fields ":" check`; small letters and other spacing make no difference.

    `as_tied` also names the knots that were chosen for the leader and only told in its text.
    Raises `Refused` with one fault: where in the text it is, what stands there and what to do.
    """
    whole = _cleaned(text)
    bare = whole.only(_NOT_SPACE)
    version = _VERSION.match(bare.text)
    if version and int(version[1]) > int(MARK[-1]):
        found = f"this code is of version {version[1][:9]} of the notation, made by a newer program"
        raise refused(found, "update this one to read it")
    if not _CHECKED.fullmatch(bare.text):
        raise _no_code(bare)
    if error(bare.text):
        raise _mistyped(whole, bare, knots, materials)
    return _read(whole, knots, materials, as_tied=as_tied)


def codes_used(recipe: Recipe) -> tuple[tuple[str, str], ...]:
    """Return each code in a recipe's text with the knot or material that it stands for."""
    names = [recipe.butt.end]
    for section in recipe.sections:
        names += [section.material, section.knot]
    codes = {row.name: row.code for shelf in (load_knots(), load_materials()) for row in shelf}
    used = dict.fromkeys(name for name in (*names, recipe.fly.knot) if name in codes)
    return tuple((codes[name], name) for name in used if name)


def _cleaned(text: str) -> Cursor:
    """Return the text in capitals with single spaces; raises `Refused` for foreign characters."""
    if len(text) > LONGEST:
        found = f"this text has {len(text)} characters"
        raise refused(found, f"give the text of one code, at most {LONGEST}")
    chars: list[str] = []
    places: list[int] = []
    for place, written in enumerate(text, start=1):
        char = " " if written.isspace() else written.upper() if written.isascii() else written
        if char not in CHARACTERS:
            raise refused(
                f"{called(written)} is no character of a code",
                f"write A-Z, 0-9, spaces and {CHARACTERS[37:]} only",
                f"character {place}",
            )
        if char != " " or chars[-1:] != [" "]:
            chars.append(char)
            places.append(place)
    return Cursor("".join(chars), [*places, len(text) + 1])


def _read(whole: Cursor, knots: Knots, materials: Materials, *, as_tied: bool = False) -> Recipe:
    mark, *fields = whole.split(":")
    check = fields.pop().only(_NOT_SPACE) if fields else mark
    if mark.only(_NOT_SPACE).text not in _READ or not fields or len(check.text) != 2:
        raise _no_code(whole)
    as_above = mark.only(_NOT_SPACE).text != _FIRST
    return read_fields(fields, knots, materials, as_above=as_above, as_tied=as_tied)


def _no_code(whole: Cursor) -> Refused:
    if whole.text.startswith(_READ):
        return refused("the two check characters are missing", "give the text to its very end")
    return refused("this is not the text of a code", f"give one that begins with {MARK}:")


def _mistyped(whole: Cursor, bare: Cursor, knots: Knots, materials: Materials) -> Refused:
    """Return the refusal of a text that its check doesn't fit, with the slips that explain it."""
    from tagend.cards.code.code_typos import corrections

    hints = []
    for slip in corrections(bare.text)[: _READ_AGAIN // len(bare.text)]:
        try:
            _read(Cursor(slip.applied(whole.text), whole.places), knots, materials)
        except Refused:
            continue
        hints.append(_hint(slip, bare))
    if not hints and not (bare.text.startswith(_READ) and bare.text[-3:-2] == ":"):
        return _no_code(bare)
    where = f" at {' or '.join(hints[:_SLIPS_TOLD])}" if hints else ", character by character"
    found = "the text and the two check characters at its end do not agree"
    return refused(found, f"compare it with the label{where}")


def _hint(slip: "Correction", bare: Cursor) -> str:
    place = _field_name(slip.applied(bare.text), slip.place)
    return f"{place}, character {bare.places[slip.place]} ({slip.found} may be {slip.meant})"


def _field_name(text: str, at: int) -> str:
    """Return in words the field that holds the character at `at`."""
    fields = text.split(":")
    field = text.count(":", 0, at)
    names = {0: "the beginning", 1: "the name", len(fields) - 1: "the check characters"}
    if field in names:
        return names[field]
    sections = [place for place in range(2, field + 1) if SECTION_START.match(fields[place])]
    if field in sections:
        return f"section {len(sections)}"
    word = WORD.match(fields[field])
    return f"the field {word[0]}" if word else "the units"
