"""New pieces on the water as lines for a terminal: what each costs, what to carry, what to mend."""

from collections.abc import Iterator

from tagend.cards.base.plural import counted
from tagend.cards.base.shown_lengths import length, line_to_buy, long_length
from tagend.cards.cli.columns import in_columns
from tagend.cards.cli.worksheet_lines import title_line
from tagend.cards.leader.leader import Leader, Piece
from tagend.cards.leader.rebuilding import Mended, Rebuilt
from tagend.cards.leader.renewal import Renewal, carried, renewals
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.rules_of_thumb import rules_of_thumb
from tagend.cards.words.language import ENGLISH
from tagend.cards.words.leader_words import Told


def renewal_lines(leader: Leader, count: int, practice: Practice) -> Iterator[str]:
    """Yield what each new tippet, and each new piece below it, costs, and what to carry."""
    yield title_line(leader)
    each = renewals(leader, practice)
    if not each:
        cut = length(leader.pieces[0].cut_mm, leader.unit)
        yield f"  it is one section: cut it anew, {cut}"
    for new in each:
        yield from _renewal_lines(new, leader)
        yield from _carried_lines(new, leader, count, practice)
    if any(new.cost_mm for new in each):
        yield f"  {_worn(leader)}"


def rebuilt_lines(leader: Leader, used: Rebuilt) -> Iterator[str]:
    """Yield what stays of a used leader, and what to cut anew."""
    yield title_line(leader)
    rows = [_mended_cells(mended, leader) for mended in used.sections]
    yield from (f"  {line}" for line in in_columns(rows, right=(0,)))
    yield f"  {_outcome(used, leader)}"
    if any(mended.left_mm and not mended.stays for mended in used.sections):
        yield f"  {_worn(leader)}"
    if used.staying_mm and not used.worth_it:
        staying = length(used.staying_mm, leader.unit)
        share = rules_of_thumb().staying_share
        yield (
            f"  better start anew: {staying} of it stays, less than {share} of what it comes to "
            "(our choice); `tagend cuts` lists the whole leader"
        )


def _renewal_lines(new: Renewal, leader: Leader) -> Iterator[str]:
    above, knot = new.above.place, new.joint.knot.name
    each = f"  each new section {new.piece.place}, {new.piece.part}:"
    if new.number is None:
        yield f"{each} takes nothing of section {above}, whose side of the {knot} stays tied"
        return
    takes, has, rest = (
        length(mm, leader.unit) for mm in (new.cost_mm, new.above.finished.low_mm, new.rest_mm)
    )
    dropper = " and a dropper" if new.above.dropper_mm else ""
    yield f"{each} takes {takes} of section {above} ({knot}{dropper})"
    if new.number:
        yield f"    section {above} has {has}: good for {new.number}, which leave {rest}"
    else:
        yield f"    section {above} has {has}: spent at once, so tie it anew each time"


def _carried_lines(new: Renewal, leader: Leader, count: int, practice: Practice) -> Iterator[str]:
    told = Told(leader, ENGLISH)
    yield f"    for {count} of them carry"
    rows = [
        (
            f"{each.count} ×",
            _cut(each.piece, leader),
            f"section {each.piece.place}",
            told.strand(each.piece),
            "ready made" if each.piece.bought else f"{line_to_buy(each.mm, leader.unit)} in all",
        )
        for each in carried(leader, new.piece.place, count, practice)
    ]
    yield from (f"      {line}" for line in in_columns(rows, right=(0, 1)))


def _mended_cells(mended: Mended, leader: Leader) -> tuple[str, ...]:
    piece, unit = mended.piece, leader.unit
    place, strand = str(piece.place), Told(leader, ENGLISH).thickness(piece)
    if not mended.stays:
        left = f"{length(mended.left_mm, unit)} left" if mended.left_mm else "lost"
        verb = "buy" if piece.bought else "CUT"
        return place, strand, left, f"{verb} {_cut(piece, leader)}"
    taken = f", new knots take {length(mended.taken_mm, unit)}" if mended.taken_mm else ""
    left = f"{length(mended.left_mm, unit)} left"
    return place, strand, left, f"stays, {length(mended.finished_mm, unit)}{taken}"


def _outcome(used: Rebuilt, leader: Leader) -> str:
    if all(mended.stays for mended in used.sections):
        return "nothing to cut: every section is long enough yet"
    if not used.staying_mm:
        return "nothing of it stays: tie it anew"
    cut = sum(not mended.stays for mended in used.sections)
    short = f", {length(used.short_mm, leader.unit)} short of its recipe" if used.short_mm else ""
    comes_to = long_length(used.finished_mm, leader.unit)
    return f"{counted(cut, 'section')} to cut; it comes to {comes_to}{short}"


def _cut(piece: Piece, leader: Leader) -> str:
    """Return what to cut, or the length that is bought as its recipe says it."""
    if piece.bought:
        return Told(leader, ENGLISH).length(piece.section.length)
    return length(piece.cut_mm, leader.unit)


def _worn(leader: Leader) -> str:
    thumb = rules_of_thumb()
    shortest = length(thumb.worn_length.mm, leader.unit)
    least = f"less than {thumb.worn_share} of its length or than {shortest} left"
    record = "; a class tippet, when too short for a record" if leader.recipe.record_lengths else ""
    return f"spent: with {least} (our choice){record}"
