"""A leader in; the code that holds it out, proven to read back."""

from tagend.cards.code.notation import write_notation
from tagend.cards.leader.leader import Leader
from tagend.cards.leader.naming import all_named
from tagend.cards.practice.practice import Practice
from tagend.layouts.codes.code import symbol
from tagend.layouts.codes.code_proof import proven
from tagend.layouts.paper.face import Symbol


def code_text(leader: Leader, practice: Practice) -> str:
    """Return a leader's notation. Raises `Refused` for one that is longer than any label's."""
    return write_notation(leader.recipe, practice.knots, practice.materials, all_named(leader))


def code_of(leader: Leader, practice: Practice) -> Symbol:
    """Return the symbol of a leader's notation; raises `NotProven` where it does not read back."""
    return proven(symbol(code_text(leader, practice)))
