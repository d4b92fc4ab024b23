"""Faces in, sheets out: every face at its place on real paper, with the marks to cut it out."""

from collections.abc import Collection, Iterator, Sequence

from msgspec.structs import replace

from tagend.layouts.base.faults import Fault, Refused, refused
from tagend.layouts.paper.face import MM, Face
from tagend.layouts.paper.lengths import fits, size_in_mm
from tagend.layouts.sheets.cutouts import Axis, Backs, Card, cutouts, mirrored, turning_axis
from tagend.layouts.sheets.marks import corner_guides, sheet_marks
from tagend.layouts.sheets.sheet import Pieces, Placed, Sheet
from tagend.layouts.sheets.shelves import Options, Room, RunOrder, Slot, grid_sheets, row_sheets
from tagend.layouts.stock.formats import LabelSheet, Paper
from tagend.layouts.stock.stock import shipped

MARGIN = 5 * MM  # most home printers reach this far (common practice in print)
_NAMED = 3  # papers or label sheets that would do, in one message


class DoesNotFit(Refused):
    """A face finds no place; holds its size, the room there is, and the stock that would do."""

    def __init__(
        self, noun: str, face: Face, place: str, room: Room, near: Sequence[Paper | LabelSheet]
    ) -> None:
        self.size = (face.width, face.height)
        self.room = (max(room.width, 0.0), max(room.height, 0.0))
        self.would_do = tuple(stock.name for stock in near[:_NAMED])
        found = (
            f"{noun} of {size_in_mm(*self.size)} does not fit {place}, which has room for "
            f"{size_in_mm(*self.room)}"
        )
        instead = " or ".join(self.would_do)
        none = "nothing known here is large enough"
        super().__init__(Fault("", found, f"use {instead}" if instead else none))


def place_labels(
    faces: Sequence[Face], stock: LabelSheet, start: int = 1, skip: Collection[int] = ()
) -> tuple[Sheet, ...]:
    """Return sheets with one face a label, row by row.

    Labels are counted from 1. On the first sheet those before `start` are gone and those in
    `skip` spoiled. Raises `DoesNotFit`, and `Refused` for a label the sheet does not have.
    """
    places = stock.places
    for where, number in (("start", start), *(("skip", each) for each in skip)):
        if not 1 <= number <= len(places):
            found = f"{stock.name} has no label {number}"
            raise refused(found, f"write 1 to {len(places)}", where)
    for face in faces:
        _check_label(face, stock)
    free = [place for k, place in enumerate(places, 1) if k >= start and k not in skip]
    full = range(len(free), len(faces), len(places))
    sheets = [(faces[: len(free)], free), *((faces[k : k + len(places)], places) for k in full)]
    return tuple(
        Sheet(
            stock.paper.width,
            stock.paper.height,
            tuple(Placed(face, *place) for face, place in zip(of_one, at, strict=False)),
            cut=Pieces("label", len(of_one), len(of_one)),
        )
        for of_one, at in sheets
        if of_one
    )


def place_cards(
    cards: Sequence[Card],
    paper: Paper,
    *,
    margin: float = MARGIN,
    gutter: float = 0.0,
    backs: Backs = "fold",
    order: RunOrder = "sheet",
    corner: float = 0.0,
    noun: str = "card",
) -> tuple[Sheet, ...]:
    """Return the fewest sheets of one grid, or of rows when the cards are of several sizes.

    Backs stand beside their fronts, to fold; or each sheet is followed by one with the backs,
    for a printer that turns the paper at its long or short edge; or they are cards of their
    own. With a `corner` radius its arcs are drawn. All lengths are points.
    Raises `DoesNotFit`, which calls a card by the noun, and `Refused` for the order "stack".
    """
    if backs == "separate":
        cards = [Card(face) for card in cards for face in (card.front, card.back) if face]
    room = _room(paper, margin, gutter)
    several = {id(card): card for card in cards}  # of a run, most are one card again and again
    options = {key: cutouts(card, backs) for key, card in several.items()}
    for key, card in several.items():
        _check_card(card, options[key], paper, margin, noun)
    sheets = _arranged([options[id(card)] for card in cards], room, order)
    moved = [[Slot(slot.cutout, slot.x + margin, slot.y + margin) for slot in s] for s in sheets]
    fronts = [_front(slots, paper, corner, noun) for slots in moved]
    if backs == "fold" or backs == "separate" or not any(card.back for card in cards):
        return tuple(fronts)
    axis = turning_axis(paper.width, paper.height, backs)
    behind = [_back(slots, paper, axis, noun) for slots in moved]
    return tuple(sheet for both in zip(fronts, behind, strict=True) for sheet in both)


def _check_label(face: Face, stock: LabelSheet) -> None:
    def holds(sheet: LabelSheet) -> bool:
        return fits(face.width, sheet.width) and fits(face.height, sheet.height)

    if not holds(stock):
        others = [s for s in shipped().labels.values() if s.on_roll == stock.on_roll and holds(s)]
        near = sorted(others, key=lambda s: (s.paper != stock.paper, s.width * s.height))
        raise DoesNotFit("a label", face, stock.name, Room(stock.width, stock.height), near)


def _check_card(card: Card, options: Options, paper: Paper, margin: float, noun: str) -> None:
    def holds(sheet: Paper) -> bool:
        return any(_room(sheet, margin).holds(cutout) for cutout in options)

    if not holds(paper):
        others = filter(holds, shipped().papers.values())
        near = sorted(others, key=lambda sheet: sheet.width * sheet.height)
        named = f"a folded {noun}" if options[0].fold else f"a {noun}"
        room = _room(paper, margin)
        raise DoesNotFit(named, card.front, paper.name, room, near)


def _room(paper: Paper, margin: float, gutter: float = 0.0) -> Room:
    return Room(paper.width - 2 * margin, paper.height - 2 * margin, gutter)


def _arranged(ways: Sequence[Options], room: Room, order: RunOrder) -> Sequence[Sequence[Slot]]:
    if not ways:
        return ()
    if len({(cutout.width, cutout.height, cutout.fold) for cutout, *_ in ways}) == 1:
        return grid_sheets(ways, room, order)
    if order == "stack":
        # Several sizes, or folded cards and plain ones, have no cells to stack by.
        raise refused("only cards of one size can be stacked", "print each size by itself")
    return row_sheets(ways, room)


def _front(slots: Sequence[Slot], paper: Paper, corner: float, noun: str) -> Sheet:
    placed = tuple(face for slot in slots for face in _faces(slot))
    marks = sheet_marks(slots, paper.width, paper.height)
    arcs = (corner_guides(slot, corner) for slot in slots if corner > 0)
    return Sheet(
        width=paper.width,
        height=paper.height,
        placed=placed,
        marks=(*marks, *arcs),
        cut=Pieces(noun, len(slots), len(placed)),
    )


def _back(slots: Sequence[Slot], paper: Paper, axis: Axis, noun: str) -> Sheet:
    placed = tuple(
        mirrored(replace(front, face=slot.cutout.back), paper.width, paper.height, axis)
        for slot in slots
        for front in _faces(slot)
        if slot.cutout.back
    )
    cut = Pieces(noun, 0, len(placed))
    return Sheet(width=paper.width, height=paper.height, placed=placed, side="back", cut=cut)


def _faces(slot: Slot) -> Iterator[Placed]:
    for face in slot.cutout.placed:
        yield replace(face, x=slot.x + face.x, y=slot.y + face.y)
