"""A worksheet as one line of JSON; keys say their unit."""

import json
from collections.abc import Mapping
from datetime import date

from cfractions import Fraction

from tagend.cards.base.units import Quantity
from tagend.cards.leader.leader import Leader, Piece
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.recipe.fields import OF_RECIPE, OF_SECTION, Field
from tagend.cards.recipe.values import DIAMETER, LENGTH, SHORT_LENGTH, SPAN, STRENGTH
from tagend.cards.words.language import ENGLISH
from tagend.cards.words.leader_words import Told
from tagend.cards.words.said_words import in_words, message


def json_line(sheet: Worksheet, count: int = 1) -> str:
    """Return one JSON object on one line; `count` leaders only change what they take in all."""
    return json.dumps(_whole(sheet, count), ensure_ascii=False)


def _whole(sheet: Worksheet, count: int) -> dict[str, object]:
    leader = sheet.leader
    return {
        **_written(leader.recipe, OF_RECIPE),
        "butt_end": leader.butt.knot and leader.butt.knot.name,
        "butt_turns": leader.butt.turns.heavy,
        "butt_fold_mm": number(leader.folds_mm[0]),
        "sections": [_section(piece, leader) for piece in leader.pieces],
        "fly_knot": leader.fly.knot and leader.fly.knot.name,
        "fly_turns": leader.fly.turns.heavy,
        "fly_fold_mm": number(leader.folds_mm[1]),
        "loops_mm": number(leader.loops_mm),
        "total_finished_mm": number(leader.finished.high_mm),
        "total_finished_least_mm": number(leader.finished.low_mm),
        "base_finished_mm": number(leader.base.high_mm),
        "total_cut_mm": number(leader.cut_mm),
        "count": count,
        "batch_cut_mm": number(count * leader.cut_mm),
        "warnings": warnings(sheet),
    }


def warnings(sheet: Worksheet) -> list[dict[str, object]]:
    """Return what was found in a leader, in English whatever the language is."""
    told = Told(sheet.leader, ENGLISH)
    return [
        {
            "rule": finding.rule,
            "severity": finding.severity,
            "section": finding.section,
            "message": message(finding, told),
            "standing": finding.standing,
        }
        for finding in sheet.findings
    ]


def _section(piece: Piece, leader: Leader) -> dict[str, object]:
    last = piece.place == len(leader.pieces)
    joint = None if last else leader.joints[piece.place - 1]
    return {
        **_written(piece.section, OF_SECTION),
        "part": piece.part,
        "part_assumed": piece.section.part is None,
        "finished_mm": number(piece.finished.high_mm),
        "finished_least_mm": number(piece.finished.low_mm),
        "cut_mm": number(piece.cut_mm),
        "knot": joint and joint.knot.name,
        "knot_reason": joint and joint.reason and in_words(joint.reason, Told(leader, ENGLISH)),
        "turns": joint and [joint.above.turns, joint.below.turns],
        "winds": joint and joint.winds,
        "lap_mm": joint and number(leader.lap_mm(piece.place)),
        "takes_mm": joint and [number(mm) for mm in leader.takes(piece.place)],
    }


def _written(whole: object, fields: Mapping[str, Field]) -> dict[str, object]:
    """Return what a person wrote, but for lengths that may be a range: they are worked out."""
    return {
        name + _unit(field): _plain(field.value(whole))
        for name, field in fields.items()
        if field.reads is not SPAN
    }


def _unit(field: Field) -> str:
    if field.reads is STRENGTH:
        return "_kg"
    return "_mm" if any(field.reads is each for each in (DIAMETER, LENGTH, SHORT_LENGTH)) else ""


def _plain(value: object) -> object:
    if isinstance(value, Quantity):
        return number(value.amount)
    return value.isoformat() if isinstance(value, date) else value


def number(exact: Fraction) -> float:
    """Return an exact amount as JSON has it, to four places."""
    return round(float(exact), 4)
