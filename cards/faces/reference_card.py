"""What a reference card says: practice and words in; scales, knots, line and rules of thumb out."""

from collections.abc import Iterator

from cfractions import Fraction

from tagend.cards.base.shown_lengths import (
    ShownUnit,
    length,
    length_number,
    thickness,
)
from tagend.cards.base.units import DIAMETER_MM
from tagend.cards.faces.deck import Reference
from tagend.cards.leader.allowance import end_allowance, joint_allowances
from tagend.cards.leader.choosing import first_choice
from tagend.cards.leader.joints import end_of, joint_of
from tagend.cards.leader.suitability import Meeting
from tagend.cards.leader.usual_meetings import usual_meeting
from tagend.cards.practice.knots import Knot
from tagend.cards.practice.practice import Meets, Practice
from tagend.cards.practice.rules_of_thumb import RulesOfThumb, rules_of_thumb
from tagend.cards.words.language import Wording
from tagend.layouts.base.quantities import INCH_MM

_THOU = DIAMETER_MM["thou"]
_SHOWN = (8, 12, 17, 23)  # thousandths: a fine tippet, a fine and a stout taper, a butt
_STEP = 2  # thousandths
_MARK_MM = INCH_MM / 4
_TABLED: tuple[Meets, ...] = ("same line", "nylon to fluorocarbon", "butt")


def reference_tables(practice: Practice, wording: Wording) -> tuple[Reference, ...]:
    """Return the tables of the reference card."""
    say = wording.say
    return (
        Reference(say("x_sizes"), tuple(_x_rows(wording))),
        Reference(say("knot_by_job"), tuple(_job_rows(practice, wording))),
        _line_table(practice, wording),
        *_thumb_tables(practice, wording),
        Reference(say("reach"), ((say("reach_sum"), say("reach_is")),)),
    )


def _x_rows(wording: Wording) -> Iterator[tuple[str, ...]]:
    """Thousandths = 11 - X: common in print (tests/outside holds the table)."""
    for x in range(9):
        mm = (11 - x) * _THOU
        yield f"{x}X", wording.number(thickness(mm, "in")), wording.number(thickness(mm, "mm"))


def _job_rows(practice: Practice, wording: Wording) -> Iterator[tuple[str, str]]:
    """Yield the knot that the rule takes for each job, which may have none that can be tied."""
    say = wording.say
    most = wording.number(f"{float(practice.rules['step'].limits[0]):g}")
    jobs = {
        say("job_step", ratio=most): _chosen("same line", practice),
        say("job_mixed"): _chosen("nylon to fluorocarbon", practice),
        say("job_guard"): _chosen("big step", practice),
        say("job_wire"): _chosen("wire", practice),
        say("job_bought"): _chosen("bought butt", practice),
        say("job_butt"): _chosen("butt", practice),
        say("job_level"): _chosen("butt", practice, level=True),
        say("job_fly"): _chosen("fly", practice),
    }
    yield from ((job, wording.knot(knot.name)) for job, knot in jobs.items() if knot is not None)


def _chosen(meets: Meets, practice: Practice, *, level: bool = False) -> Knot | None:
    """Return the knot that the rule takes for a pair of strands that meet so."""
    return first_choice(meets, usual_meeting(meets, practice), practice, level=level).knot


def _line_table(practice: Practice, wording: Wording) -> Reference:
    unit: ShownUnit = practice.unit or "in"
    knots = [knot for meets in _TABLED if (knot := _chosen(meets, practice))]
    shown = [_diameter(thou * _THOU, unit) for thou in _SHOWN]
    rows = [("", *(wording.number(number) for number, _ in shown))]
    for knot in knots:
        taken = (length_number(_takes(knot, thou, practice), unit) for thou in _SHOWN)
        rows.append((wording.knot(knot.name), *map(wording.number, taken)))
    heading = wording.say("line_for_a_side", unit=unit, diameters=shown[0][1])
    return Reference(heading, tuple(rows))


def _thumb_tables(practice: Practice, wording: Wording) -> Iterator[Reference]:
    """Yield the tables of which each says in its heading that it is common practice."""
    say, thumb, unit = wording.say, rules_of_thumb(), practice.unit or "in"
    tables = {
        say("butt_by_line", unit=_diameter(_THOU, unit)[1]): _butt_rows(thumb, wording, unit),
        say("salt_butt"): _salt_rows(thumb, wording),
        say("loop_sizes"): _loop_rows(practice, wording, unit),
        say("tippet_by_hook"): _hook_rows(thumb, wording),
        say("discard"): _discard_rows(wording),
    }
    for heading, rows in tables.items():
        yield Reference(say("common_practice", what=heading), tuple(rows))


def _butt_rows(thumb: RulesOfThumb, wording: Wording, unit: ShownUnit) -> Iterator[tuple[str, ...]]:
    say, butts = wording.say, thumb.butts
    tips = (_whole_thou(thumb.tip_mm(row.diameter)) for row in butts)
    yield say("weight_of_line"), *(row.line for row in butts)
    yield say("line_tip"), *(wording.number(_diameter(mm, unit)[0]) for mm in tips)
    yield say("butt"), *(wording.number(_diameter(row.diameter.mm, unit)[0]) for row in butts)


def _salt_rows(thumb: RulesOfThumb, wording: Wording) -> Iterator[tuple[str, ...]]:
    say = wording.say
    line = say("weight_of_line")
    for row in thumb.salt_butts:
        least, most = row.least.plain, row.most
        strength = (
            say("range", low=least, high=most.plain) if most else say("or_more", amount=least)
        )
        yield f"{line} {row.line}", wording.number(strength)


def _loop_rows(practice: Practice, wording: Wording, unit: ShownUnit) -> Iterator[tuple[str, ...]]:
    say, knots = wording.say, practice.knots
    yield say("butt"), wording.number(length(knots.loop_mm, unit))
    yield say("fly"), wording.number(length(knots.fly_loop_mm, unit))


def _hook_rows(thumb: RulesOfThumb, wording: Wording) -> Iterator[tuple[str, ...]]:
    """The tippet as a range, since the rules that are printed differ."""
    word = wording.say("hook")
    for hook in thumb.hooks:
        stout, fine = thumb.tippet_x(hook)
        yield f"{word} {hook}", f"{stout}X-{fine}X"


def _discard_rows(wording: Wording) -> Iterator[tuple[str]]:
    say = wording.say
    yield (say("discard_nick"),)
    yield (say("discard_curl"),)
    yield (say("discard_knot"),)
    yield (say("discard_age"),)


def _whole_thou(mm: Fraction) -> Fraction:
    """Round to a thousandth of an inch, as line is sold; halves up."""
    return (mm / _THOU + Fraction(1, 2)) // 1 * _THOU


def _diameter(mm: Fraction, unit: ShownUnit) -> tuple[str, str]:
    """Return a diameter's number and its unit, which is mm for metric lengths."""
    number, _, word = thickness(mm, unit).partition(" ")
    return number, word


def _takes(knot: Knot, thou: int, practice: Practice) -> Fraction:
    """Return what the knot takes of a strand, joined to one a usual step finer, rounded up."""
    material = practice.materials.find("nylon")
    if "joint" in knot.places:
        meeting = Meeting(
            upper=material,
            upper_mm=thou * _THOU,
            lower=material,
            lower_mm=(thou - _STEP) * _THOU,
        )
        allowance = joint_allowances(joint_of(knot, meeting, practice), practice, _MARK_MM)[0]
    else:
        strand = Meeting.alone(material, thou * _THOU)
        end = end_of(knot, strand, practice.knots.loop_mm, practice)
        allowance = end_allowance(end, practice, _MARK_MM)
    return allowance.takes_mm
