"""What was printed in; how much it is, and what found no room on it, in words out."""

from collections import Counter
from collections.abc import Iterator, Sequence

from tagend.cards.printing.job import LeftOut, Printed
from tagend.cards.words.heed_words import named
from tagend.cards.words.language import Wording
from tagend.layouts.sheets.sheet import Sheet

_TAUGHT = {"frames", "seats"}  # on the cards of the knots


def pages_told(printed: Printed, wording: Wording) -> str:
    """Return how much it is, and where the knots on cards of their own save pages, how many."""
    told, apart = sheets_told(printed.sheets, wording), printed.pages_apart
    if not apart:
        return told
    return wording.say("pages_apart", told=told, pages=wording.say("so_many_pages", count=apart))


def sheets_told(sheets: Sequence[Sheet], wording: Wording) -> str:
    """Return how much sheets are: `24 pages on 12 sheets, 48 cards on 96 sides`."""
    say = wording.say
    fronts = sum(sheet.side == "front" or sheet.trim is not None for sheet in sheets)
    pages = say("so_many_pages", count=len(sheets))
    if fronts != len(sheets):
        pages = say("so_many_on", what=pages, others=say("so_many_sheets", count=fronts))
    return ", ".join((pages, *_cut(sheets, wording)))


def _cut(sheets: Sequence[Sheet], wording: Wording) -> Iterator[str]:
    """Yield how many cards come of them, and how many labels."""
    say = wording.say
    pieces, sides = Counter[str](), Counter[str]()
    for cut in (sheet.cut for sheet in sheets if sheet.cut):
        pieces[cut.noun] += cut.count
        sides[cut.noun] += cut.sides
    for noun, count in pieces.items():
        told = say("so_many_labels" if noun == "label" else "so_many_cards", count=count)
        printed = say("so_many_sides", count=sides[noun])
        yield told if sides[noun] == count else say("so_many_on", what=told, others=printed)


def left_out_lines(printed: Printed, wording: Wording) -> Iterator[str]:
    """Yield what labels and cards have no room for, and what has; a line for all alike."""
    faces = (placed.face for sheet in printed.sheets for placed in sheet.placed)
    yield from dict.fromkeys(line for face in faces for line in face.left_out)
    alike: dict[tuple[tuple[str, ...], str | None], list[str]] = {}
    for each in printed.left_out:
        alike.setdefault((each.missing, each.size), []).append(each.name)
    for (missing, size), names in alike.items():
        yield "; ".join(_lacking(LeftOut(named(names, wording), missing, size), wording))


def _lacking(left_out: LeftOut, wording: Wording) -> Iterator[str]:
    say = wording.say
    *first, last = (say(f"lack_{what}") for what in left_out.missing)
    what = say("one_and_other", one=", ".join(first), other=last) if first else last
    yield say("no_room_for", names=left_out.name, what=what)
    if left_out.size:
        yield say("holds_all", size=left_out.size)
    if _TAUGHT.intersection(left_out.missing):
        yield say("knots_in_full")
