"""New pieces on the water as lines for a terminal: what each costs, what to carry, what to mend."""

from collections.abc import Iterator

from tagend.cards.base.shown_lengths import line_to_buy
from tagend.cards.cli.columns import in_columns
from tagend.cards.cli.worksheet_lines import title_line
from tagend.cards.leader.leader import NOTHING, Piece
from tagend.cards.leader.rebuilding import Mended, Rebuilt
from tagend.cards.leader.renewal import Renewal, carried, renewals
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.rules_of_thumb import rules_of_thumb
from tagend.cards.words.leader_words import Told


def renewal_lines(told: Told, count: int, practice: Practice) -> Iterator[str]:
    """Yield what each new tippet, and each new piece below it, costs, and what to carry."""
    leader = told.leader
    yield title_line(told)
    each = renewals(leader, practice)
    if not each:
        yield f"  {told.wording.say('one_section', length=told.taken(leader.pieces[0].cut_mm))}"
    for new in each:
        yield from _renewal_lines(new, told)
        yield from _carried_lines(new, told, count, practice)
    if any(new.cost_mm for new in each):
        yield f"  {_worn(told)}"


def rebuilt_lines(told: Told, used: Rebuilt) -> Iterator[str]:
    """Yield what stays of a used leader, and what to cut anew."""
    yield title_line(told)
    rows = [_mended_cells(mended, told) for mended in used.sections]
    yield from (f"  {line}" for line in in_columns(rows, right=(0,)))
    yield f"  {_outcome(used, told)}"
    if any(mended.left_mm and not mended.stays for mended in used.sections):
        yield f"  {_worn(told)}"
    if used.staying_mm and not used.worth_it:
        share = rules_of_thumb().staying_share
        anew = told.wording.say("start_anew", length=told.taken(used.staying_mm), share=share)
        yield f"  {anew}"


def _renewal_lines(new: Renewal, told: Told) -> Iterator[str]:
    say, above = told.wording.say, new.above.place
    knot = told.wording.knot(new.joint.knot.name)
    part = told.wording.term(new.piece.part)
    each = f"  {say('each_new', section=new.piece.place, part=part)}"
    if new.number is None:
        yield f"{each} {say('takes_nothing', section=above, knot=knot)}"
        return
    takes, has, rest = map(told.taken, (new.cost_mm, new.above.finished.low_mm, new.rest_mm))
    costs = say(
        "takes_and_dropper" if new.above.dropper_mm else "takes",
        length=takes,
        section=above,
        knot=knot,
    )
    yield f"{each} {costs}"
    if new.number:
        good = say("good_for", section=above, length=has, count=new.number, rest=rest)
        yield f"    {good}"
    else:
        yield f"    {say('spent_at_once', section=above, length=has)}"


def _carried_lines(new: Renewal, told: Told, count: int, practice: Practice) -> Iterator[str]:
    leader, say = told.leader, told.wording.say
    yield f"    {say('carry_for', count=count)}"
    rows = [
        (
            f"{each.count} ×",
            _cut(each.piece, told),
            say("section", section=each.piece.place),
            told.strand(each.piece),
            say("bought_so")
            if each.piece.bought
            else say("in_all", length=told.wording.number(line_to_buy(each.mm, leader.unit))),
        )
        for each in carried(leader, new.piece.place, count, practice)
    ]
    yield from (f"      {line}" for line in in_columns(rows, right=(0, 1)))


def _mended_cells(mended: Mended, told: Told) -> tuple[str, ...]:
    piece, say = mended.piece, told.wording.say
    place, strand = str(piece.place), told.thickness(piece)
    left = say("so_much_left", length=told.taken(mended.left_mm))
    if not mended.stays:
        todo = say("buy_so_much" if piece.bought else "cut_so_much", length=_cut(piece, told))
        return place, strand, left if mended.left_mm else say("lost"), todo
    stays = say("so_much_stays", length=told.taken(mended.finished_mm))
    if mended.taken_mm:
        stays += f", {say('new_knots_take', length=told.taken(mended.taken_mm))}"
    return place, strand, left, stays


def _outcome(used: Rebuilt, told: Told) -> str:
    say = told.wording.say
    if all(mended.stays for mended in used.sections):
        return say("nothing_to_cut")
    if not used.staying_mm:
        return say("nothing_stays")
    cut = sum(not mended.stays for mended in used.sections)
    comes_to = told.span(NOTHING.longer(used.finished_mm))
    outcome = say("comes_to", count=cut, length=comes_to)
    short = say("short_of_recipe", length=told.taken(used.short_mm)) if used.short_mm else ""
    return ", ".join(filter(None, (outcome, short)))


def _cut(piece: Piece, told: Told) -> str:
    """Return what to cut, or the length that is bought as its recipe says it."""
    return told.length(piece.section.length) if piece.bought else told.taken(piece.cut_mm)


def _worn(told: Told) -> str:
    thumb = rules_of_thumb()
    return told.wording.say(
        "spent_for_record" if told.leader.recipe.record_lengths else "spent",
        share=thumb.worn_share,
        length=told.taken(thumb.worn_length.mm),
    )
