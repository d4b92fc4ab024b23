"""A leader's measure as one line of JSON; keys say their unit, and a figure is [least, most]."""

import json
from collections.abc import Iterable

from tagend.cards.leader.leader import Leader
from tagend.cards.leader.passing import Passing, Spread
from tagend.cards.leader.waves import Measure, Strip, measure
from tagend.cards.words.worksheet_json import number


def measure_line(leader: Leader) -> str:
    """Return one JSON object on one line; what is not known is null."""
    return json.dumps(_whole(leader, measure(leader)), ensure_ascii=False)


def _whole(leader: Leader, found: Measure) -> dict[str, object]:
    return {
        "name": leader.recipe.name,
        "total_finished_mm": number(leader.finished.high_mm),
        "energy_passed": _spread(found.passed),
        "worst_joint": found.worst,
        "mass_g": _spread(found.mass_g),
        "thirds_g": _spreads(found.thirds_g),
        "joints": [_passing(joint) for joint in found.joints],
        "line_to_butt": found.line and _passing(found.line),
        "sections": [_strip(strip) for strip in found.strips],
    }


def _passing(joint: Passing) -> dict[str, object]:
    return {
        "reflection": _spread(joint.reflection),
        "energy_passed": _spread(joint.passed),
        "stiffness_ratio": _spread(joint.stiffness),
    }


def _strip(strip: Strip) -> dict[str, object]:
    return {
        "from_fly_mm": [number(strip.from_mm), number(strip.to_mm)],
        "diameters_mm": [number(mm) for mm in strip.diameters_mm],
        "impedances": _spreads(strip.impedance),
        "stiffnesses_nmm2": _spreads(strip.stiffness),
    }


def _spreads(spreads: Iterable[Spread] | None) -> list[list[float] | None] | None:
    return [_spread(each) for each in spreads] if spreads else None


def _spread(spread: Spread | None) -> list[float] | None:
    """Return both ends to three digits, which is all that densities and moduli carry."""
    return [float(f"{each:.3g}") for each in (spread.low, spread.high)] if spread else None
