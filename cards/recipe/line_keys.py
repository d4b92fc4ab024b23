"""The keys that say what a piece of line is: shared by recipe files and rack files."""

from pydantic_core.core_schema import ValidationInfo

from tagend.cards.base.file_schema import parsed
from tagend.cards.base.units import parse_diameter, parse_strength
from tagend.cards.practice.practice import Practice
from tagend.layouts.base.faults import refused


def practice_of(info: ValidationInfo) -> Practice:
    """Return the practice that a file is read by."""
    assert isinstance(info.context, Practice)
    return info.context


def _material(value: object, info: ValidationInfo) -> str:
    if not isinstance(value, str):
        raise refused("this is not a text in quotes", 'write a material, such as "nylon"')
    return practice_of(info).materials.find(value).name


MATERIAL = parsed(_material, "What the line is.", ["nylon", "fluorocarbon"], with_context=True)
DIAMETER = parsed(
    parse_diameter, "A diameter with its unit, or 0X to 8X.", ["0.023 in", "0.58 mm", "4X"]
)
STRENGTH = parsed(parse_strength, "A strength, as the spool says.", ["25 lb", "11.3 kg"])
