"""What a reference card says: a person's practice in; scales, knots by job and allowances out."""

from collections.abc import Iterator
from fractions import Fraction

from cards.allowance import Allowance, end_allowance, joint_allowances
from cards.faces.deck import Reference
from cards.fitness import Meeting, inches
from cards.joints import End, Joint
from cards.knots import Knot
from cards.practice import Practice
from cards.spell import ShownUnit, length_number
from cards.units import DIAMETER_MM, INCH_MM

_THOU = DIAMETER_MM["thou"]
_SHOWN = (8, 12, 17, 23)  # thousandths: a fine tippet, a fine and a stout taper, a butt
_STEP = 2  # thousandths


def reference_tables(practice: Practice) -> tuple[Reference, ...]:
    """Return the tables of the reference card."""
    unit: ShownUnit = practice.unit or "in"
    shown = ", ".join(inches(thou * _THOU).removesuffix(" in") for thou in _SHOWN)
    return (
        Reference("X sizes", tuple(_x_rows())),
        Reference("Knot by job", tuple(_job_rows(practice))),
        Reference(f"Line for one side of a knot, at {shown} in", tuple(_line_rows(practice, unit))),
        Reference("Reach, all straight", (("line out + leader + rod", "hand to fly"),)),
    )


def _x_rows() -> Iterator[tuple[str, str]]:
    """Thousandths = 11 - X: common in print (tests/outside holds the table)."""
    words = []
    for x in range(9):
        mm = (11 - x) * _THOU
        words.append(f"{x}X: {inches(mm)}, {float(mm):.2f} mm")
    left, right = words[:5], [*words[5:], ""]
    yield from zip(left, right, strict=True)


def _job_rows(practice: Practice) -> Iterator[tuple[str, str]]:
    choice = practice.choice
    joints = choice["joint"]
    step = joints[0].largest_step_mm
    yield f"two strands, a step up to {inches(step)}" if step else "two strands", joints[0].name
    mixed = next(knot for knot in joints if knot.mixed == "yes")
    yield "nylon to fluorocarbon, or a bigger step", mixed.name
    yield "a bite guard, a very big step", next(k for k in joints if k.shock).name
    yield "loop on a tapered butt", choice["butt"][0].name
    yield "loop on a level leader", next(k for k in choice["butt"] if not k.tapered_only).name
    yield "fly, fine strand", choice["fly"][0].name


def _line_rows(practice: Practice, unit: ShownUnit) -> Iterator[tuple[str, str]]:
    knots: list[Knot] = [*practice.choice["joint"][:2], practice.choice["butt"][0]]
    for knot in knots:
        taken = [length_number(_takes(knot, thou, practice), unit) for thou in _SHOWN]
        yield knot.name, f"{', '.join(taken)} {unit}"


def _takes(knot: Knot, thou: int, practice: Practice) -> Fraction:
    """Return what the knot takes of a strand, joined to one a usual step finer, rounded up."""
    material = practice.materials.find("nylon")
    if "joint" in knot.places:
        meeting = Meeting(material, thou * _THOU, material, (thou - _STEP) * _THOU)
        allowance: Allowance = joint_allowances(Joint(meeting, knot, None), practice)[0]
    else:
        allowance = end_allowance(End(knot, practice.knots.loop_mm, None), thou * _THOU, practice)
    mark = INCH_MM / 4
    return -(-allowance.mm // mark) * mark
