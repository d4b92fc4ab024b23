"""A piece whose length is asked for, such as a sighter: a text in, the checked piece out."""

from collections.abc import Iterator

from msgspec import Struct

from tagend.cards.base.units import Diameter, Length, Strength, parse_diameter, parse_length
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Part
from tagend.cards.recipe.strand import parse_strand
from tagend.layouts.base.faults import Refused, refused
from tagend.layouts.base.quantities import with_unit

_SIGHTER = "sighter"  # a name of the materials file


class AskedPiece(Struct, frozen=True, kw_only=True):
    """A piece that is not shared out; what is None may be as the rack has it."""

    part: Part
    length: Length
    material: str
    diameter: Diameter | None = None
    strength: Strength | None = None
    tapers_to: Diameter | None = None


def read_sighter(text: str, practice: Practice) -> AskedPiece:
    """Read `18 in`, or with its strand `18 in 0.010 in sighter nylon`; raises `Refused`."""
    try:
        return AskedPiece(
            part="sighter", length=parse_length(text), material=practice.material(_SIGHTER)
        )
    except Refused:
        return _read(text, "sighter", practice)


def read_guard(text: str, practice: Practice) -> AskedPiece:
    """Read `12 in wire`, or with its diameter `12 in 0.012 in wire`; raises `Refused`."""
    return _read(text, "bite guard", practice)


def read_bought(text: str, practice: Practice) -> AskedPiece:
    """Read `5 ft 0.021 in to 0.012 in nylon`; raises `Refused`."""
    piece = _read(text, "butt", practice)
    if piece.diameter is None:
        raise refused(
            f"{text!r} has no diameter", 'write such as "5 ft 0.021 in to 0.012 in nylon"'
        )
    return piece


def _read(text: str, part: Part, practice: Practice) -> AskedPiece:
    """Read a length and a strand in either order, at the first place where both can be read."""
    no_length = refused(
        f"{text!r} gives no length", 'write length and material, such as "12 in wire"'
    )
    faults: list[Refused] = []
    for length_text, strand in _splits(text.split()):
        try:
            length = parse_length(length_text)
        except Refused:
            continue
        try:
            return _strand(strand, part, length, practice)
        except Refused as refusal:
            faults.append(refusal)
    raise faults[0] if faults else no_length


def _splits(words: list[str]) -> Iterator[tuple[str, str]]:
    """Yield each way to part a text: first the length at its end, then at its beginning."""
    for place in range(1, len(words)):
        yield " ".join(words[place:]), " ".join(words[:place])
    for place in range(1, len(words)):
        yield " ".join(words[:place]), " ".join(words[place:])


def _strand(text: str, part: Part, length: Length, practice: Practice) -> AskedPiece:
    """Read `wire`, `0.012 in wire 30 lb` or `0.021 in to 0.012 in nylon`."""
    if not text[0].isdigit() and text[0] != ".":
        return AskedPiece(part=part, length=length, material=practice.material(text))
    first, to, after = text.partition(" to ")
    strand = parse_strand(after if to else text, practice)
    if strand.length is not None:
        raise refused(f"{text!r} gives a second length", "write one")
    thick = parse_diameter(with_unit(first, strand.diameter.unit)) if to else strand.diameter
    if to and thick.mm <= strand.diameter.mm:
        raise refused(f"{text!r} does not taper", "write the thicker diameter first")
    return AskedPiece(
        part=part,
        length=length,
        material=strand.material,
        diameter=thick,
        strength=strand.strength,
        tapers_to=strand.diameter if to else None,
    )
