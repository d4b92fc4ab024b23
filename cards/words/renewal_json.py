"""New pieces, or a used leader rebuilt, as one line of JSON; keys say their unit."""

import json
from collections.abc import Iterable

from tagend.cards.leader.rebuilding import Mended, Rebuilt
from tagend.cards.leader.renewal import Carried, Renewal, carried, renewals
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.practice.practice import Practice
from tagend.cards.words.worksheet_json import number, warnings


def renewal_json(sheet: Worksheet, count: int, used: Rebuilt | None, practice: Practice) -> str:
    """Return one JSON object on one line: `count` of each new piece, and the used leader."""
    leader = sheet.leader
    whole = {
        "name": leader.recipe.name,
        "count": count,
        "renewals": [
            _renewal(each, carried(leader, each.piece.place, count, practice))
            for each in renewals(leader, practice)
        ],
        "rebuilt": used and _rebuilt(used),
        "warnings": warnings(sheet),
    }
    return json.dumps(whole, ensure_ascii=False)


def _renewal(each: Renewal, carry: Iterable[Carried]) -> dict[str, object]:
    return {
        "section": each.piece.place,
        "part": each.piece.part,
        "above": each.above.place,
        "knot": each.joint.knot.name,
        "takes_above_mm": number(each.cost_mm),
        "number": each.number,
        "rest_mm": number(each.rest_mm),
        "carry": list(map(_carried, carry)),
    }


def _carried(each: Carried) -> dict[str, object]:
    return {
        "section": each.piece.place,
        "count": each.count,
        "cut_mm": number(each.piece.cut_mm),
        "line_mm": number(each.mm),
        "bought": each.piece.bought,
    }


def _rebuilt(used: Rebuilt) -> dict[str, object]:
    return {
        "sections": list(map(_mended, used.sections)),
        "total_finished_mm": number(used.finished_mm),
        "short_mm": number(used.short_mm),
        "start_anew": not used.worth_it,
    }


def _mended(each: Mended) -> dict[str, object]:
    return {
        "section": each.piece.place,
        "left_mm": number(each.left_mm),
        "stays": each.stays,
        "finished_mm": number(each.finished_mm),
        "cut_mm": None if each.stays else number(each.piece.cut_mm),
    }
