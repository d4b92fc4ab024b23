"""A label sheet's entry in, its measurements out, or what is wrong with them and by how much."""

from collections.abc import Iterator, Mapping

from msgspec import Struct

from tagend.layouts.base.faults import Fault, refuse_any, refused, under
from tagend.layouts.paper.face import MM, POINTS_PER_INCH
from tagend.layouts.paper.lengths import fits, in_mm
from tagend.layouts.stock.entries import Entry, find
from tagend.layouts.stock.formats import LabelSheet, Paper, Shape

_KEYS = ("paper", "columns", "rows", "size", "margin", "pitch", "corner", "shape", "inset", "dpi")

# Dots to an inch of most printers of rolls, and the least and most of any: common practice, no
# source. Modules of whole dots at 203 are nearly so at 300 too.
DPI, DPI_BOUNDS = 203, (150, 1200)

# What an office laser leaves white: .166 in by the Windows 3.1 driver kit, 4.0 mm by two manuals.
BORDER = POINTS_PER_INCH / 6
# Common practice in print for what the feed may shift a label.
INSET, SMALL_INSET, SMALL = 2 * MM, 1.5 * MM, 15 * MM


def label_sheet(entry: Entry, papers: Mapping[str, Paper]) -> LabelSheet:
    """Return the sheet of an entry; without a paper its label is one of a roll.

    Raises `Refused` with every measurement that is off.
    """
    entry.allow(*_KEYS)
    width, height = entry.size(papers)
    on_roll = "paper" not in entry.values
    paper = Paper(entry.name, width, height)
    if not on_roll:
        written = entry.text("paper")
        with under("paper"):
            paper = find("paper", written, papers, Paper)
    left, top = entry.pair("margin", (0.0, 0.0))
    pitch_x, pitch_y = entry.pair("pitch", (width, height))
    across = _LabelRow("across", "left", entry.count("columns"), left, width, pitch_x, paper.width)
    down = _LabelRow("down", "top", entry.count("rows"), top, height, pitch_y, paper.height)
    side = min(width, height)
    margin = BORDER if on_roll else max(0.0, min(left, top, across.rest, down.rest))
    drift = SMALL_INSET if on_roll or height < SMALL else INSET
    inset = entry.length("inset", min(max(drift, BORDER - margin), side / 2))
    corner = entry.length("corner", 0.0)
    refuse_any(
        (
            *across.faults(paper),
            *down.faults(paper),
            *_half("corner", corner, side),
            *_half("inset", inset, side),
        )
    )
    return LabelSheet(
        name=entry.name,
        paper=paper,
        columns=across.count,
        rows=down.count,
        width=width,
        height=height,
        left=left,
        top=top,
        pitch_x=pitch_x,
        pitch_y=pitch_y,
        corner=corner,
        shape=_shape(entry),
        inset=inset,
        dpi=_dpi(entry, on_roll=on_roll),
    )


class _LabelRow(Struct, frozen=True):
    """Labels one after the other along one side of the sheet."""

    way: str
    edge: str
    count: int
    start: float
    size: float
    pitch: float
    room: float

    @property
    def end(self) -> float:
        return self.start + (self.count - 1) * self.pitch + self.size

    @property
    def rest(self) -> float:
        return self.room - self.end

    def faults(self, paper: Paper) -> Iterator[Fault]:
        if self.count > 1 and not fits(self.size, self.pitch):
            yield Fault(
                "pitch",
                f"{in_mm(self.pitch)} {self.way} is {in_mm(self.size - self.pitch)} less than the "
                f"label's {in_mm(self.size)}, so labels overlap",
                "measure from one label's edge to the same edge of the next",
            )
        if not fits(self.end, self.room):
            yield Fault(
                self.way,
                f"{self.edge} margin {in_mm(self.start)} + {self.count - 1} × pitch "
                f"{in_mm(self.pitch)} + label {in_mm(self.size)} is {in_mm(self.end)}, "
                f"{in_mm(-self.rest)} more than the paper's {in_mm(self.room)} ({paper.name})",
                "measure margin, pitch and label again",
            )


def _half(key: str, length: float, side: float) -> Iterator[Fault]:
    if not fits(length, side / 2):
        yield Fault(
            key,
            f"{in_mm(length)} is {in_mm(length - side / 2)} more than half the label's short side",
            f"write at most {in_mm(side / 2)}",
        )


def _dpi(entry: Entry, *, on_roll: bool) -> int | None:
    """Return what a roll's printer sets to an inch; a sheet may lie in any."""
    dpi = entry.values.get("dpi", DPI if on_roll else None)
    if dpi is None and not on_roll:
        return None
    if not on_roll:
        raise refused(f"found {dpi!r} for a sheet", "leave it out: any printer may print it", "dpi")
    least, most = DPI_BOUNDS
    if isinstance(dpi, bool) or not isinstance(dpi, int) or not least <= dpi <= most:
        raise refused(f"found {dpi!r}", f"write a whole number from {least} to {most}", "dpi")
    return dpi


def _shape(entry: Entry) -> Shape:
    shape = entry.values.get("shape", "rectangle")
    if shape == "rectangle":
        return "rectangle"
    if shape == "round":
        return "round"
    raise refused(f"found {shape!r}", 'write "rectangle" or "round"', "shape")
