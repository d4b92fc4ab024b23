"""What `tagend new` asks, in the trade's order: a practice in, a recipe and its file out."""

import sys
from collections.abc import Callable, Iterator

from msgspec.structs import replace

from tagend.cards.base.shown_lengths import ShownUnit, long_length
from tagend.cards.base.units import Length
from tagend.cards.base.value_readers import plain_text
from tagend.cards.cli.dialogue import Dialogue, Question
from tagend.cards.cli.section_typed import (
    TypedSection,
    typed_diameter,
    typed_length,
    typed_section,
)
from tagend.cards.cli.spoken import refusal_told, told_of
from tagend.cards.cli.taper_lines import taper_lines
from tagend.cards.cli.worksheet_lines import cut_lines, finding_lines
from tagend.cards.leader.joints import End, Joint
from tagend.cards.leader.parts import fly_end_mm
from tagend.cards.leader.worksheet import worksheet
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.rack_file import Rack
from tagend.cards.recipe.recipe import (
    NAME_MOST,
    NOTE_MOST,
    SECTIONS_MOST,
    Butt,
    Fly,
    Recipe,
    Section,
)
from tagend.cards.recipe.recipe_file import checked_whole
from tagend.cards.recipe.recipe_text import file_name
from tagend.cards.recipe.strand import StrandByStrength
from tagend.cards.recipe.values import BARE, LINE_WEIGHT, read_knot
from tagend.cards.recipe.vocabulary import EndOf
from tagend.cards.tables.recipe_tables import knot_named, material_named
from tagend.cards.tables.understanding import line_weight
from tagend.cards.variants.by_strength import spool_by_strength
from tagend.cards.words.heed_words import finding_line
from tagend.cards.words.leader_words import Told
from tagend.cards.words.said_words import in_words
from tagend.layouts.base.faults import Refused, refused

_EXAMPLE = "46 in .023 hard nylon 25lb"
_NO_THICKNESS = "  pounds do not give a thickness: read it off the spool, or measure the line"


def ask_new(
    practice: Practice, rack: Rack | None, free: Callable[[str], str], output: str | None
) -> Dialogue[tuple[Recipe, str]]:
    """Ask for a recipe, show it whole, and ask for its file, whose name `free` accepts."""
    recipe = yield from _ask_recipe(practice, rack)
    path = yield Question(
        asked="Write it as",
        read=free,
        usual=output or file_name(recipe.name),
        needed=True,
        before=tuple(_review(recipe, practice)),
    )
    return recipe, path


def _ask_recipe(practice: Practice, rack: Rack | None) -> Dialogue[Recipe]:
    unit: ShownUnit = practice.unit or "in"
    name = yield Question(
        asked="Name of the leader", read=lambda text: plain_text(text, NAME_MOST), needed=True
    )
    use = yield Question(
        asked="What it is for, such as dries at dusk",
        read=lambda text: plain_text(text, NOTE_MOST),
    )
    weight = yield Question(asked="Line weight, such as 5", read=_line_weight)
    long = "ft" if unit == "in" else unit
    total = yield Question(
        asked="Total length, knot to knot, such as 9 ft",
        read=lambda text: typed_length(text, long).high,
    )
    recipe = Recipe(name=name, use=use, line_weight=weight, sections=())
    shown: tuple[str, ...] = ()
    while len(recipe.sections) < SECTIONS_MOST:
        section = yield from _ask_section(recipe, unit, practice, rack, shown)
        if section is None:
            break
        recipe = replace(recipe, sections=(*recipe.sections, section))
        if len(recipe.sections) > 1:
            recipe = yield from _ask_knot(recipe, practice)
        shown = tuple(_so_far(recipe, total, practice))
    told = told_of(worksheet(recipe, practice))
    butt = yield from _ask_end("Loop at the butt", "butt", told, practice)
    fly = yield from _ask_end("Knot to the fly", "fly", told, practice)
    return checked_whole(replace(recipe, total=total, butt=Butt(end=butt), fly=Fly(knot=fly)))


def _line_weight(text: str) -> int:
    number, least, most = line_weight(text), LINE_WEIGHT["ge"], LINE_WEIGHT["le"]
    if number not in map(str, range(least, most + 1)):
        raise refused(f"{text[:20]!r} is no line weight", f"write a number from {least} to {most}")
    return int(number)


def _ask_section(
    recipe: Recipe, unit: ShownUnit, practice: Practice, rack: Rack | None, shown: tuple[str, ...]
) -> Dialogue[Section | None]:
    """Ask for a section in one line, then for what that leaves open; None after the last one."""
    above = recipe.sections[-1] if recipe.sections else None
    first = f"Section 1, the butt, such as {_EXAMPLE}"
    typed: TypedSection | None = yield Question(
        asked=f"Section {len(recipe.sections) + 1} (Enter: no more)" if above else first,
        read=lambda text: typed_section(text, unit, practice),
        needed=above is None,
        before=shown,
    )
    if typed is None:
        return None
    length = typed.length or (
        yield Question(
            asked="  its length, knot to knot, such as 30 in",
            read=lambda text: typed_length(text, unit),
            needed=True,
        )
    )
    material = typed.material or (above.material if above else None)
    if material is None:
        material = yield Question(
            asked="  its material, such as nylon",
            read=lambda text: material_named(text, practice),
            needed=True,
        )
    usual, told = _by_strength(typed, material, rack, practice)
    diameter = typed.diameter or (
        yield Question(
            asked="  its diameter, such as .023 in or 4X",
            read=typed_diameter,
            usual=usual,
            needed=True,
            before=told,
        )
    )
    return Section(length=length, diameter=diameter, material=material, strength=typed.strength)


def _by_strength(
    typed: TypedSection, material: str, rack: Rack | None, practice: Practice
) -> tuple[str, tuple[str, ...]]:
    """Return the diameter of a spool of that strength, and what is to be said of it."""
    if typed.strength is None:
        return "", ()
    if rack is None:
        return "", (_NO_THICKNESS,)
    try:
        spool = spool_by_strength(
            StrandByStrength(typed.strength, material, typed.length), rack, practice
        )
    except Refused as error:
        return "", tuple(f"  {fault}" for fault in refusal_told(error).faults)
    return spool.diameter.plain, (f"  on the rack: {spool.label}, {spool.material}",)


def _ask_knot(recipe: Recipe, practice: Practice) -> Dialogue[Recipe]:
    """Ask for the knot above the last section; the one that the rule takes is left to it."""
    place = len(recipe.sections)
    sheet = worksheet(recipe, practice)
    joint = sheet.leader.joints[-1]
    upper, lower = recipe.sections[-2:]
    step = float(fly_end_mm(upper) / lower.diameter.mm)
    line = f"{lower.length} of {lower.diameter} {lower.material}"
    told = f"  {line}; the one above is {step:.2f} times as thick"
    knot = yield Question(
        asked=f"  knot from {place - 1} to {place}",
        read=_knot("joint", practice),
        usual=joint.knot.name,
        before=(told, _why(joint, told_of(sheet))),
    )
    if knot in (None, joint.knot.name):
        return recipe
    return replace(recipe, sections=(*recipe.sections[:-2], replace(upper, knot=knot), lower))


def _ask_end(asked: str, end: EndOf, told: Told, practice: Practice) -> Dialogue[str | None]:
    """Ask for the knot of an end; the one that the rule takes is left to it."""
    chosen = told.leader.butt if end == "butt" else told.leader.fly
    usual = chosen.knot.name if chosen.knot else BARE
    knot: str | None = yield Question(
        asked=f"{asked}, or {BARE}",
        read=_knot(end, practice),
        usual=usual,
        before=(_why(chosen, told),),
    )
    return None if knot == usual else knot


def _why(chosen: Joint | End, told: Told) -> str:
    """Return the knot that the rule takes, by the name that a recipe has, and why."""
    name = chosen.knot.name if chosen.knot else BARE
    return f"  {name}: {in_words(chosen.reason, told)}" if chosen.reason else f"  {name}"


def _knot(end: EndOf, practice: Practice) -> Callable[[str], str]:
    return lambda text: read_knot(knot_named(text, end, practice), end, practice)


def _so_far(recipe: Recipe, total: Length | None, practice: Practice) -> Iterator[str]:
    """Yield the leader as it stands: its length, a drawing, and what the audit says of the last."""
    sheet, place = worksheet(recipe, practice), len(recipe.sections)
    encoding = getattr(sys.stderr, "encoding", None)
    leader = sheet.leader
    of = f" of {total}" if total else ""
    yield f"  {long_length(leader.finished.high_mm, leader.unit)}{of} so far"
    yield from (f"  {line}" for line in taper_lines(leader, encoding))
    for finding in sheet.findings:
        if finding.section == place:
            yield f"  {finding_line(finding, told_of(sheet))}"


def _review(recipe: Recipe, practice: Practice) -> Iterator[str]:
    """Yield the whole leader as it would be cut, and what the audit says."""
    sheet = worksheet(recipe, practice)
    encoding = getattr(sys.stderr, "encoding", None)
    yield ""
    yield from cut_lines(told_of(sheet), encoding)
    yield from (f"  {line}" for line in finding_lines(told_of(sheet)))
