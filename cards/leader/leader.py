"""A leader worked out: a recipe and the tyer's practice in, every piece, knot and length out."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from tagend.cards.base.shown_lengths import ShownUnit, length
from tagend.cards.leader.allowance import (
    BARE,
    Allowance,
    end_allowance,
    joint_allowances,
    with_dropper,
)
from tagend.cards.leader.joints import End, Joint, butt_end, fly_end, joints
from tagend.cards.leader.parts import parts
from tagend.cards.practice.materials import Material
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Part, Recipe, Section
from tagend.layouts.base.faults import Fault, refuse_any


@dataclass(frozen=True, slots=True)
class Extent:
    """Exact lengths in mm from the shortest to the longest; mostly both are the same."""

    low_mm: Fraction
    high_mm: Fraction

    def __add__(self, other: "Extent") -> "Extent":
        return Extent(self.low_mm + other.low_mm, self.high_mm + other.high_mm)

    def longer(self, by_mm: Fraction) -> "Extent":
        """Return the extent with both ends longer by so much."""
        return Extent(self.low_mm + by_mm, self.high_mm + by_mm)


NOTHING = Extent(Fraction(0), Fraction(0))


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """One section as the hands meet it."""

    place: int  # from the butt, the first is 1
    section: Section
    material: Material
    part: Part
    at_butt: Allowance
    at_fly: Allowance
    finished: Extent  # knot to knot
    cut_mm: Fraction  # enough for the longest; what to buy, for a piece bought ready made

    @property
    def allowance_mm(self) -> Fraction:
        return self.at_butt.mm + self.at_fly.mm


@dataclass(frozen=True, slots=True, kw_only=True)
class Leader:
    """Every piece and knot of one leader, from the butt to the fly."""

    recipe: Recipe
    pieces: tuple[Piece, ...]
    butt: End
    joints: tuple[Joint, ...]  # one fewer than pieces
    fly: End
    unit: ShownUnit  # what computed lengths are shown in
    second_unit: ShownUnit | None = None  # and beside that, where a person wants both
    converted: bool = False  # are diameters too, or are they shown as they were written?

    @property
    def finished(self) -> Extent:
        return sum((piece.finished for piece in self.pieces), start=NOTHING)

    @property
    def base(self) -> Extent:
        """The finished length without the tippet and what hangs below it: those get replaced."""
        above = self.pieces[: self.pieces.index(self.tippet)]
        return sum((piece.finished for piece in above), start=NOTHING)

    @property
    def cut_mm(self) -> Fraction:
        """Line to cut for the whole leader, which leaves out what is bought ready made."""
        return sum((p.cut_mm for p in self.pieces if not p.section.bought), start=Fraction(0))

    @property
    def tippet(self) -> Piece:
        """The piece that is meant to break first, or the last where no part is a tippet."""
        tippets = [piece for piece in self.pieces if piece.part == "tippet"]
        return tippets[-1] if tippets else self.pieces[-1]


def work_out(recipe: Recipe, practice: Practice) -> Leader:
    """Return the leader that the recipe asks for, each knot chosen and each length computed."""
    leader = Leader(
        recipe=recipe,
        pieces=(),
        butt=butt_end(recipe, practice),
        joints=joints(recipe, practice),
        fly=fly_end(recipe, practice),
        unit=practice.unit or _written_unit(recipe),
        second_unit=practice.second_unit,
        converted=practice.unit is not None,
    )
    return replace(leader, pieces=tuple(_pieces(leader, practice)))


def check_tieable(leader: Leader) -> None:
    """Raise `Refused` for each piece that its own knots take up: there is nothing to print of it.

    Only cut lengths can be so short.
    """
    faults = [
        Fault(
            f"{leader.recipe.name}, section {piece.place}",
            f"its knots take {length(piece.allowance_mm, leader.unit)}, all of the "
            f"{piece.section.length.plain} that it is cut",
            'cut it longer, or write lengths = "finished"',
        )
        for piece in leader.pieces
        if piece.finished.low_mm <= 0
    ]
    refuse_any(faults)


def round_up(mm: Fraction, mark_mm: Fraction) -> Fraction:
    """Return the first mark of a tape at or beyond a length."""
    return -(-mm // mark_mm) * mark_mm


def _written_unit(recipe: Recipe) -> ShownUnit:
    longest = recipe.sections[0].length.high
    if longest.in_inches:
        return "in"
    return "mm" if longest.unit == "mm" else "cm"


def _pieces(leader: Leader, practice: Practice) -> Iterator[Piece]:
    """Yield each section of a leader whose knots are chosen, with what they take of it."""
    across = [joint_allowances(joint, practice) for joint in leader.joints]
    at_butt = (end_allowance(leader.butt, practice), *(lower for _, lower in across))
    at_fly = (*(upper for upper, _ in across), end_allowance(leader.fly, practice))
    sections, materials = leader.recipe.sections, practice.materials
    rows = zip(sections, parts(leader.recipe, materials), at_butt, at_fly, strict=True)
    mark_mm = practice.tape_mm(leader.unit)
    for place, (section, part, above, below) in enumerate(rows, start=1):
        ends = (BARE, BARE) if section.bought else (above, with_dropper(below, section.dropper))
        takes = ends[0].mm + ends[1].mm
        written = Extent(section.length.low.mm, section.length.high.mm)
        as_cut = section.bought or leader.recipe.lengths == "cut"
        yield Piece(
            place=place,
            section=section,
            material=materials.find(section.material),
            part=part,
            at_butt=ends[0],
            at_fly=ends[1],
            finished=written.longer(-takes) if as_cut else written,
            cut_mm=written.high_mm if as_cut else round_up(written.high_mm + takes, mark_mm),
        )
