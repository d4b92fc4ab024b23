"""A worksheet as one line of JSON; keys say their unit."""

import json
from fractions import Fraction

from tagend.cards.leader.audit import Finding
from tagend.cards.leader.leader import Leader, Piece
from tagend.cards.leader.worksheet import Worksheet


def json_line(sheet: Worksheet, count: int = 1) -> str:
    """Return one JSON object on one line; `count` leaders only change what they take in all."""
    return json.dumps(_whole(sheet, count), ensure_ascii=False)


def _whole(sheet: Worksheet, count: int) -> dict[str, object]:
    leader = sheet.leader
    return {
        "name": leader.recipe.name,
        "butt_end": leader.butt.knot and leader.butt.knot.name,
        "butt_turns": leader.butt.turns.thick,
        "sections": [_section(piece, leader) for piece in leader.pieces],
        "fly_knot": leader.fly.knot and leader.fly.knot.name,
        "fly_turns": leader.fly.turns.thick,
        "total_finished_mm": _mm(leader.finished.high_mm),
        "total_finished_least_mm": _mm(leader.finished.low_mm),
        "base_finished_mm": _mm(leader.base.high_mm),
        "total_cut_mm": _mm(leader.cut_mm),
        "count": count,
        "batch_cut_mm": _mm(count * leader.cut_mm),
        "warnings": [_finding(finding) for finding in sheet.findings],
    }


def _section(piece: Piece, leader: Leader) -> dict[str, object]:
    section = piece.section
    last = piece.place == len(leader.pieces)
    joint = None if last else leader.joints[piece.place - 1]
    return {
        "part": piece.part,
        "finished_mm": _mm(piece.finished.high_mm),
        "finished_least_mm": _mm(piece.finished.low_mm),
        "cut_mm": _mm(piece.cut_mm),
        "diameter_mm": _mm(section.diameter.mm),
        "material": section.material,
        "strength_kg": section.strength and round(float(section.strength.kg), 4),
        "knot": joint and joint.knot.name,
        "knot_reason": joint and joint.reason,
        "turns": joint and [joint.turns.of(side) for side in joint.sides],
    }


def _finding(finding: Finding) -> dict[str, object]:
    return {
        "rule": finding.rule,
        "severity": finding.severity,
        "section": finding.section,
        "message": finding.message,
        "standing": finding.standing,
    }


def _mm(exact: Fraction) -> float:
    return round(float(exact), 4)
