"""What a reference card says: a person's practice in; scales, knots by job and allowances out."""

from collections.abc import Iterator
from fractions import Fraction

from tagend.cards.base.shown_lengths import ShownUnit, inches, length_number, thickness
from tagend.cards.base.units import DIAMETER_MM, INCH_MM
from tagend.cards.faces.deck import Reference
from tagend.cards.leader.allowance import Allowance, end_allowance, joint_allowances
from tagend.cards.leader.joints import End, Joint
from tagend.cards.leader.suitability import Meeting
from tagend.cards.practice.knots import Knot
from tagend.cards.practice.practice import Practice
from tagend.cards.words.language import Wording

_THOU = DIAMETER_MM["thou"]
_SHOWN = (8, 12, 17, 23)  # thousandths: a fine tippet, a fine and a stout taper, a butt
_STEP = 2  # thousandths


def reference_tables(practice: Practice, wording: Wording) -> tuple[Reference, ...]:
    """Return the tables of the reference card."""
    say = wording.say
    return (
        Reference(say("x_sizes"), tuple(_x_rows(wording))),
        Reference(say("knot_by_job"), tuple(_job_rows(practice, wording))),
        _line_table(practice, wording),
        Reference(say("reach"), ((say("reach_sum"), say("reach_is")),)),
    )


def _x_rows(wording: Wording) -> Iterator[tuple[str, ...]]:
    """Thousandths = 11 - X: common in print (tests/outside holds the table)."""
    for x in range(9):
        mm = (11 - x) * _THOU
        yield f"{x}X", wording.number(thickness(mm, "in")), wording.number(thickness(mm, "mm"))


def _job_rows(practice: Practice, wording: Wording) -> Iterator[tuple[str, str]]:
    choice, say = practice.choice, wording.say
    joints = choice["joint"]
    step = joints[0].largest_step_mm
    two = say("job_step", step=wording.number(inches(step))) if step else say("job_two")
    chosen = {
        two: joints[0],
        say("job_mixed"): next(knot for knot in joints if knot.mixed == "yes"),
        say("job_guard"): next(knot for knot in joints if knot.shock),
        say("job_butt"): choice["butt"][0],
        say("job_level"): next(knot for knot in choice["butt"] if not knot.tapered_only),
        say("job_fly"): choice["fly"][0],
    }
    yield from ((job, wording.knot(knot.name)) for job, knot in chosen.items())


def _line_table(practice: Practice, wording: Wording) -> Reference:
    unit: ShownUnit = practice.unit or "in"
    knots: list[Knot] = [*practice.choice["joint"][:2], practice.choice["butt"][0]]
    shown = [_diameter(thou * _THOU, unit) for thou in _SHOWN]
    rows = [("", *(wording.number(number) for number, _ in shown))]
    for knot in knots:
        taken = (length_number(_takes(knot, thou, practice), unit) for thou in _SHOWN)
        rows.append((wording.knot(knot.name), *map(wording.number, taken)))
    heading = wording.say("line_for_a_side", unit=unit, diameters=shown[0][1])
    return Reference(heading, tuple(rows))


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
        allowance: Allowance = joint_allowances(Joint(meeting, knot, None), practice)[0]
    else:
        strand = Meeting.alone(material, thou * _THOU)
        end = End(knot=knot, meeting=strand, loop_mm=practice.knots.loop_mm)
        allowance = end_allowance(end, practice)
    mark = INCH_MM / 4
    return -(-allowance.mm // mark) * mark
