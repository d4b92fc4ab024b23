"""What a variant changed beyond what was asked: a recipe before and after in, lines out."""

from collections.abc import Iterator

from msgspec.structs import replace

from tagend.cards.leader.leader import Leader, work_out
from tagend.cards.leader.parts import parts
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Recipe, Section, Variant
from tagend.cards.variants.variant_strands import restrung


def beyond_lines(
    before: Recipe, change: Variant, after: Recipe, practice: Practice
) -> Iterator[str]:
    """Yield sections left out, strands off the rack, lengths scaled, and knots left to the rule."""
    strung = restrung(before, change, practice)  # as it was before rack and lengths
    yield from _left_out(before, change, practice)
    for place, (was, now) in enumerate(zip(strung.sections, after.sections, strict=True), start=1):
        if _strand(was) != _strand(now):
            yield f"section {place}: {_strand(now)}, was {_strand(was)}"
        if was.length != now.length and now.length.high != change.butt:
            yield f"section {place}: {now.length.plain} long, was {was.length.plain}"
    kept = replace(before, sections=before.sections[: change.stop_after])
    yield from _knots(kept, work_out(after, practice))
    if before.total and not after.total:
        yield f"the total of {before.total.plain} that it stated no longer holds: left out"


def _strand(section: Section) -> str:
    strength = f" {section.strength.plain}" if section.strength else ""
    return f"{section.diameter.plain} {section.material}{strength}"


def _left_out(before: Recipe, change: Variant, practice: Practice) -> Iterator[str]:
    """Yield the sections below the last that is kept, but for a tippet that is tied on again."""
    if change.stop_after is None:
        return
    found = parts(before, practice.materials)
    rows = list(enumerate(zip(before.sections, found, strict=True), start=1))
    left_out = [
        f"section {place}, {_strand(section)}, {part}"
        for place, (section, part) in rows[change.stop_after :]
        if not (change.tippet and part == "tippet")
    ]
    if left_out:
        yield f"left out: {'; '.join(left_out)}"


def _knots(before: Recipe, leader: Leader) -> Iterator[str]:
    """Yield the droppers that are gone, and the named knots that do not suit the strands now."""
    after = leader.recipe
    for place, (was, now) in enumerate(zip(before.sections, after.sections, strict=False), start=1):
        if was.dropper and not now.dropper:
            yield f"section {place}: no dropper, nothing is joined there any more"
    joints = zip(before.sections, after.sections, leader.joints, strict=False)
    for place, (was, now, joint) in enumerate(joints, start=1):
        if was.knot and not now.knot:
            yield _by_rule(f"knot below section {place}", was.knot, joint.knot.name)
    if before.butt.end and not after.butt.end and leader.butt.knot:
        yield _by_rule("end at the butt", before.butt.end, leader.butt.knot.name)
    if before.fly.knot and not after.fly.knot and leader.fly.knot:
        yield _by_rule("knot to the fly", before.fly.knot, leader.fly.knot.name)


def _by_rule(where: str, was: str, now: str) -> str:
    return f"{where}: {now}, chosen by rule; {was} does not suit these strands"
