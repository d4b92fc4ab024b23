"""A taper as a person asks for it in; the wish, and the strands that there are for it, out."""

from collections.abc import Callable, Sequence

from msgspec import Struct

from tagend.cards.base.units import Diameter, Length
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.rack_file import Rack
from tagend.cards.propose.asked_piece import AskedPiece, read_bought, read_guard, read_sighter
from tagend.cards.propose.step_limit import StepLimit
from tagend.cards.propose.supplies import (
    Supply,
    butt_for_line,
    supplies_of_diameters,
    supplies_of_rack,
)
from tagend.cards.propose.wish import USUAL_SHARES, Shares, Wish, read_tippet
from tagend.layouts.base.faults import refused, under


class AskedTaper(Struct, frozen=True, kw_only=True):
    """What is asked for; strands and pieces in words, which depend on the materials there are."""

    total: Length
    tippet: str
    butt: Diameter | None = None  # or it follows from the line's tip, or from what is bought
    line_tip: Diameter | None = None
    step: Diameter | None = None
    shares: Shares = USUAL_SHARES
    material: str | None = None
    bought: str | None = None
    sighter: str | None = None
    guard: str | None = None


def wish_of(
    asked: AskedTaper, line: Rack | Sequence[Diameter], practice: Practice
) -> tuple[Wish, tuple[Supply, ...]]:
    """Return the wish, and the strands of a rack or of sizes that can be had; raises `Refused`."""
    with under("material"):
        only = practice.materials.find(asked.material).name if asked.material else None
    with under("tippet"):
        tippet = read_tippet(asked.tippet, practice)
    if isinstance(line, Rack):
        strands = supplies_of_rack(line)
    else:
        strands = supplies_of_diameters(line, only or "nylon", tippet)
    bought = _read("bought", asked.bought, read_bought, practice)
    wish = Wish(
        total=asked.total,
        butt=_butt(asked, bought, strands, practice),
        tippet=tippet,
        step=StepLimit(practice.rules["step"].limits, asked.step.mm if asked.step else None),
        shares=asked.shares,
        material=only,
        line_tip=asked.line_tip,
        bought=bought,
        sighter=_read("sighter", asked.sighter, read_sighter, practice),
        guard=_read("guard", asked.guard, read_guard, practice),
    )
    return wish, strands


def _butt(
    asked: AskedTaper, bought: AskedPiece | None, strands: Sequence[Supply], practice: Practice
) -> Diameter:
    if bought is not None and bought.diameter is not None:
        return bought.tapers_to or bought.diameter
    if asked.line_tip is not None:
        return butt_for_line(asked.line_tip, strands, practice)
    if asked.butt is None:
        raise refused("there is no butt to begin with", "write its diameter", "butt")
    return asked.butt


def _read(
    name: str,
    text: str | None,
    read: Callable[[str, Practice], AskedPiece],
    practice: Practice,
) -> AskedPiece | None:
    """Read a piece that is asked for, or None where it is not."""
    with under(name):
        return read(text, practice) if text is not None else None
