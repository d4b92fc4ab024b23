"""A leader worked out: a recipe and the tyer's practice in, every piece, knot and length out."""

from collections.abc import Iterator, Sequence

from cfractions import Fraction
from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.base.shown_lengths import FINEST_MM, ShownUnit, length
from tagend.cards.leader.allowance import (
    Allowance,
    end_allowance,
    joint_allowances,
    round_up,
)
from tagend.cards.leader.choosing import butt_end, fly_end, joints
from tagend.cards.leader.joints import End, Joint
from tagend.cards.leader.parts import is_bought, parts
from tagend.cards.practice.materials import Material
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Part, Recipe, Section
from tagend.layouts.base.faults import Fault, refuse_any


class Extent(Struct, frozen=True):
    """Exact lengths in mm from the shortest to the longest; mostly both are the same."""

    low_mm: Fraction
    high_mm: Fraction

    def __add__(self, other: "Extent") -> "Extent":
        return Extent(self.low_mm + other.low_mm, self.high_mm + other.high_mm)

    def longer(self, by_mm: Fraction) -> "Extent":
        """Return the extent with both ends longer by so much."""
        return Extent(self.low_mm + by_mm, self.high_mm + by_mm)


NOTHING = Extent(Fraction(0), Fraction(0))


class Piece(Struct, frozen=True, kw_only=True):
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
    def bought(self) -> bool:
        """Whether it is bought ready made."""
        return is_bought(self.section, self.material)

    @property
    def dropper_mm(self) -> Fraction:
        """The tag left long for a fly at its lower end, beyond what the knot takes."""
        return self.section.dropper.mm if self.section.dropper else Fraction(0)

    @property
    def taken_mm(self) -> Fraction:
        """All that is cut beyond the finished length."""
        return self.at_butt.takes_mm + self.at_fly.takes_mm + self.dropper_mm

    @property
    def barrels_mm(self) -> Fraction:
        """How much of its finished length the knots at both ends cover."""
        return self.at_butt.barrel_mm + self.at_fly.barrel_mm


class Leader(Struct, frozen=True, kw_only=True):
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
        return _in_a_row(self.pieces)

    @property
    def base(self) -> Extent:
        """The finished length without the tippet and what hangs below it: those get replaced."""
        return _in_a_row(self.pieces[: self.tippet.place - 1])

    @property
    def cut_mm(self) -> Fraction:
        """Line to cut for the whole leader, which leaves out what is bought ready made."""
        return sum((p.cut_mm for p in self.pieces if not p.bought), start=Fraction(0))

    @property
    def loops_mm(self) -> Fraction:
        """The loops of the knots, which stand outside the finished lengths."""
        ends = (end for piece in self.pieces for end in (piece.at_butt, piece.at_fly))
        return sum((end.loop_mm for end in ends), start=Fraction(0))

    @property
    def folds_mm(self) -> tuple[Fraction, Fraction]:
        """What the ends at the butt and at the fly take; 0 of a bare one."""
        return self.pieces[0].at_butt.takes_mm, self.pieces[-1].at_fly.takes_mm

    def takes(self, place: int) -> tuple[Fraction, Fraction]:
        """Return what the joint below a section takes of it and of the next, in mm."""
        return self.pieces[place - 1].at_fly.takes_mm, self.pieces[place].at_butt.takes_mm

    def lap_mm(self, place: int) -> Fraction:
        """Return what the joint below a section takes of both sides; a dropper is not of it."""
        return sum(self.takes(place), start=Fraction(0))

    @property
    def tippet(self) -> Piece:
        """The piece that is meant to break first, or the last where no part is a tippet."""
        tippets = [piece for piece in self.pieces if piece.part == "tippet"]
        return tippets[-1] if tippets else self.pieces[-1]


def _in_a_row(pieces: Sequence[Piece]) -> Extent:
    return Extent(
        sum((piece.finished.low_mm for piece in pieces), start=Fraction(0)),
        sum((piece.finished.high_mm for piece in pieces), start=Fraction(0)),
    )


def work_out(recipe: Recipe, practice: Practice) -> Leader:
    """Return the leader that the recipe asks for, each knot chosen and each length computed."""
    leader = Leader(
        recipe=recipe,
        pieces=(),
        butt=butt_end(recipe, practice),
        joints=joints(recipe, practice),
        fly=fly_end(recipe, practice),
        unit=practice.unit_of(recipe),
        second_unit=practice.second_unit,
        converted=practice.unit is not None,
    )
    leader = replace(leader, pieces=tuple(_pieces(leader, practice)))
    refuse_any(_too_little(leader))
    return leader


def check_tieable(leader: Leader) -> None:
    """Raise `Refused` for each piece that its own knots take up: there is nothing to print of it.

    Only what is cut or bought at its length can be so short.
    """
    faults = [
        Fault(
            f"{leader.recipe.name}, section {piece.place}",
            f"its knots take {length(piece.taken_mm, leader.unit)}, all of the "
            f"{length(piece.cut_mm, leader.unit)} that it is {'bought' if piece.bought else 'cut'}",
            "buy a longer one" if piece.bought else 'cut it longer, or write lengths = "finished"',
        )
        for piece in leader.pieces
        if piece.finished.low_mm <= 0
    ]
    refuse_any(faults)


def _too_little(leader: Leader) -> list[Fault]:
    """Return each side of a knot for which a person's own lap has not line enough."""
    return [
        Fault(
            f"{leader.recipe.name}, section {piece.place}",
            f"the lap of your shop file leaves {length(end.takes_mm, leader.unit)} of it "
            f"for the {end.knot}",
            f"write at least {length(round_up(end.least_mm, FINEST_MM[leader.unit]), leader.unit)}"
            " a side, and what your hands hold",
        )
        for piece in leader.pieces
        for end in (piece.at_butt, piece.at_fly)
        if end.takes_mm < end.least_mm
    ]


def _pieces(leader: Leader, practice: Practice) -> Iterator[Piece]:
    """Yield each section of a leader whose knots are chosen, with what they take of it.

    What a side of a knot takes is rounded up to the tape's mark; in a recipe of cut lengths, which
    are given, it stays as it is.
    """
    recipe, materials = leader.recipe, practice.materials
    as_cut = recipe.lengths == "cut"
    mark_mm = None if as_cut else practice.tape_mm(leader.unit)
    across = [joint_allowances(joint, practice, mark_mm) for joint in leader.joints]
    at_butt = (end_allowance(leader.butt, practice, mark_mm), *(lower for _, lower in across))
    at_fly = (*(upper for upper, _ in across), end_allowance(leader.fly, practice, mark_mm))
    rows = zip(recipe.sections, parts(recipe, materials), at_butt, at_fly, strict=True)
    for place, (section, part, above, below) in enumerate(rows):
        piece = Piece(
            place=place + 1,
            section=section,
            material=materials.find(section.material),
            part=part,
            at_butt=above,
            at_fly=below,
            finished=(written := Extent(section.length.low.mm, section.length.high.mm)),
            cut_mm=written.high_mm,
        )
        if as_cut or piece.bought:
            yield replace(piece, finished=written.longer(-piece.taken_mm))
        else:
            yield replace(piece, cut_mm=written.high_mm + piece.taken_mm)
