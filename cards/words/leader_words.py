"""A leader's facts as words for people: shared by tables, cards and labels."""

from collections.abc import Callable, Iterator, Mapping

from cfractions import Fraction
from msgspec import Struct, field

from tagend.cards.base.shown_lengths import (
    ShownUnit,
    length,
    length_number,
    long_length,
)
from tagend.cards.base.units import Diameter, Length, Span, Strength
from tagend.cards.leader.audit.finding import Finding
from tagend.cards.leader.joints import End, Joint
from tagend.cards.leader.leader import Extent, Leader, Piece
from tagend.cards.leader.shown import shown_diameter, shown_strength
from tagend.cards.words.knot_words import knot_in
from tagend.cards.words.language import Wording


class Told(Struct, frozen=True):
    """A leader with what was found in it, and how it is told."""

    leader: Leader
    wording: Wording
    spools: Mapping[int, str] = field(default_factory=dict)  # a person's own, by their section
    findings: tuple[Finding, ...] = ()

    def __hash__(self) -> int:
        """Return the name's: what is set of a leader in one type is asked for many times."""
        return hash(self.leader.recipe.name)

    def span(self, lengths: Extent) -> str:
        """Return a length, or a range of lengths, as people say it: `11 ft`."""
        return self._span(lengths, self.leader.unit)

    def second_span(self, lengths: Extent) -> str:
        """Return the same in the second unit, or nothing where a person wants only one."""
        second = self.leader.second_unit
        return self._span(lengths, second) if second else ""

    def spans(self, lengths: Extent) -> str:
        """Return a length in each unit that a person wants: `11 ft · 3.35 m`."""
        return " · ".join(filter(None, (self.span(lengths), self.second_span(lengths))))

    def span_number(self, lengths: Extent) -> str:
        """Return a length, or a range, for a column that says its unit above: `22–28`."""
        unit = self.leader.unit
        low, high = (length_number(mm, unit) for mm in (lengths.low_mm, lengths.high_mm))
        return self.wording.number(high if low == high else f"{low}–{high}")

    def diameter(self, thick: Diameter) -> str:
        """Return a diameter as it was written, or in the unit that a person wants all shown in."""
        return self.wording.number(shown_diameter(thick, self.leader))

    def strength(self, bears: Strength) -> str:
        """Return a strength alike: `25 lb`, or `11.3 kg` where a person wants metric units."""
        return self.wording.number(shown_strength(bears, self.leader))

    def length(self, of: Length | Span) -> str:
        """Return a length, or a range, as written, or in the metric or inches all are in."""
        low, _, high = map(self.wording.number, self._plain(of).partition(" to "))
        return self.wording.say("range", low=low, high=high) if high else low

    def thickness(self, piece: Piece) -> str:
        """Return how thick a piece is and of what: `0.010 in fluorocarbon`."""
        return self.kind(self.along(piece), piece.section.material)

    def kind(self, diameter: str, material: str) -> str:
        """Return a diameter in words with its material: `0.010 in fluorocarbon`."""
        name = self.wording.material(material)
        return self.wording.say("strand", diameter=diameter, material=name)

    def strand(self, piece: Piece) -> str:
        """Return all that a spool says of a piece: `0.010 in fluorocarbon, 8.5 lb`."""
        strength = piece.section.strength
        more = f", {self.strength(strength)}" if strength else ""
        return self.thickness(piece) + more

    def tippet(self) -> str:
        """Return what the leader ends in: `tippet 0.010 in fluorocarbon`."""
        return self.wording.say("tippet", strand=self.thickness(self.leader.tippet))

    def sections(self) -> str:
        """Return how many sections it has and its tippet as written: `6 sections, tippet 5X …`."""
        tippet = self.leader.tippet.section
        strand = self.kind(self.diameter(tippet.diameter), tippet.material)
        count = len(self.leader.pieces)
        return self.wording.say("sections_and_tippet", count=count, strand=strand)

    def end(self, end: End) -> str:
        """Return the end at the butt or at the fly: `perfection loop, 3/4 in`."""
        name = self.end_name(end)
        return f"{name}, {self.loop(end.loop_mm)}" if is_looped(end) else name

    def loop(self, mm: Fraction) -> str:
        """Return the size of a loop, which is too small for cm: `3/4 in`, `19 mm`."""
        return length(mm, "in" if self.leader.unit == "in" else "mm")

    def fold(self, end: End) -> str:
        """Return how far an end's tag is turned back, or nothing: `fold 2 1/2 in`."""
        butt, fly = self.leader.folds_mm
        mm = butt if end is self.leader.butt else fly
        return self.wording.say("fold_of", length=self.taken(mm)) if mm else ""

    def end_and_loop(self, end: End) -> str:
        """Return the same where there is little room: `perfection loop 3/4 in`."""
        name = self.end_name(end)
        return f"{name} {self.loop(end.loop_mm)}" if is_looped(end) else name

    def end_name(self, end: End) -> str:
        """Return the end's knot without the size of its loop: `perfection loop`."""
        if end.knot is not None:
            return self.wording.knot(end.knot.name)
        bought = end is self.leader.butt and self.leader.pieces[0].bought
        return self.wording.say("as_bought" if bought else "bare_end")

    def joint(self, joint: Joint) -> str:
        """Return a knot between two sections, the turns above and below: `blood 4+6`.

        The turns are told where they depend on the strands; of a knot that has one on each side
        the lessons of those tell them.
        """
        name = self.wording.knot(joint.knot.name)
        if not joint.knot.counted:
            return name
        turns = (joint.above.turns, joint.below.turns)
        return f"{name} {'+'.join(str(count) for count in turns if count)}"

    def tied(self, place: int) -> str:
        """Return the knot below a section, each side's turns in words, and the dropper it leaves.

        `blood 4 thick, 6 thin`; `uni to uni 5 each`; `tippet ring, leave 6 in of tag`.
        """
        joint = self.leader.joints[place - 1]
        words = " ".join((self.wording.knot(joint.knot.name), *self._turns(joint)))
        dropper = self.leader.pieces[place - 1].section.dropper
        if dropper is None:
            return words
        left = self.wording.say("leave_tag", length=self.length(dropper))
        return f"{words}, {left}"

    def _turns(self, joint: Joint) -> Iterator[str]:
        """Yield how often either side is wound, where that depends on the strands."""
        if not joint.knot.counted:
            return
        heavy, light = joint.turns.heavy, joint.turns.light
        if heavy == light:
            yield self.wording.say("turns_each", count=heavy)
            return
        roles = knot_in(self.wording, joint.knot).roles
        sides = zip((heavy, light), roles, strict=True)
        yield ", ".join(f"{count} {role}" for count, role in sides if count)

    def lap(self, place: int) -> str:
        """Return how to lay the joint below a section: `lap 9 3/4 in`, `fold 3+2 1/2 in`.

        A dropper's tag is of the section above, and told apart.
        """
        number, leader = self.lap_number(place), self.leader
        lapped = leader.joints[place - 1].knot.lapped
        lap = self.wording.say("lap_of" if lapped else "fold_of", length=f"{number} {leader.unit}")
        dropper = leader.pieces[place - 1].section.dropper
        if dropper is None:
            return lap
        return self.wording.say("lap_and_dropper", lap=lap, dropper=self.length(dropper))

    def lap_numbers(self) -> list[str]:
        """Return the fold at the butt, each joint's lap or folds, and the fold at the fly."""
        butt, fly = (self.taken_number(mm) if mm else "" for mm in self.leader.folds_mm)
        return [butt, *map(self.lap_number, range(1, len(self.leader.pieces))), fly]

    def lap_number(self, place: int) -> str:
        """Return what a joint's lap is, or the fold above and the one below: `9 3/4`, `3+2 1/2`.

        A lap whose middle is not the knot says both sides too: `9 (5+4)`.
        """
        takes = self.leader.takes(place)
        both = "+".join(map(self.taken_number, takes))
        if not self.leader.joints[place - 1].knot.lapped:
            return both
        lap = self.taken_number(self.leader.lap_mm(place))
        return lap if len({*takes}) == 1 else f"{lap} ({both})"

    def taken_number(self, mm: Fraction) -> str:
        """Return what a knot takes, for a column that says its unit; `0` for a ready-made loop."""
        return self.wording.number(length_number(mm, self.leader.unit))

    def taken(self, mm: Fraction) -> str:
        """Return what a knot takes: `3 1/4 in`."""
        return self.wording.number(length(mm, self.leader.unit))

    def droppers(self) -> str:
        """Return the droppers, or nothing: `dropper of 6 in left above section 4`."""
        say = self.wording.say
        return "; ".join(
            say("dropper", length=self.length(piece.section.dropper), section=piece.place + 1)
            for piece in self.leader.pieces
            if piece.section.dropper is not None
        )

    def tapers(self) -> str:
        """Return the knotless tapers and what is bought, or nothing.

        `section 1 tapers, 0.021–0.012 in; section 1 is bought at 5 ft`.
        """
        say = self.wording.say
        tapers = [
            say("tapers", section=piece.place, diameters=self.along(piece))
            for piece in self.leader.pieces
            if piece.section.tapers_to is not None
        ]
        bought = [
            say("bought_at", section=piece.place, length=self.length(piece.section.length))
            for piece in self.leader.pieces
            if piece.bought
        ]
        return "; ".join((*tapers, *bought))

    def _span(self, lengths: Extent, unit: ShownUnit) -> str:
        high = self.wording.number(long_length(lengths.high_mm, unit))
        if lengths.low_mm == lengths.high_mm:
            return high
        low = self.wording.number(long_length(lengths.low_mm, unit))
        return high if low == high else self.wording.say("range", low=low, high=high)

    def _plain(self, of: Length | Span) -> str:
        low, high = (of, of) if isinstance(of, Length) else (of.low, of.high)
        unit = self.leader.unit
        if not self.leader.converted or high.in_inches == (unit == "in"):
            return of.plain
        longest = length(high.mm, unit)
        return longest if low == high else f"{length_number(low.mm, unit)} to {longest}"

    def along(self, piece: Piece) -> str:
        """Return the diameter; of a knotless taper, from its butt to its fly: `0.021–0.012 in`."""
        return along(piece, self.diameter)


def along(piece: Piece, spell: Callable[[Diameter], str]) -> str:
    """Return a piece's diameter as it is said; of a knotless taper, a unit that both have once."""
    section = piece.section
    thick = spell(section.diameter)
    if section.tapers_to is None:
        return thick
    thin = spell(section.tapers_to)
    unit = thin.rpartition(" ")[2]
    return f"{thick.removesuffix(f' {unit}')}–{thin}"


def is_looped(end: End) -> bool:
    """Whether an end of a leader is a loop."""
    return end.loop_mm > 0
