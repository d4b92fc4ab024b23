"""What was found in a leader, and why, in words: keys with exact values in, sentences out."""

from collections.abc import Callable, Mapping
from typing import Any, NamedTuple

from cfractions import Fraction

from tagend.cards.base.shown_lengths import hundredths, length, thickness
from tagend.cards.leader.audit.finding import Finding
from tagend.cards.leader.passing import Percent
from tagend.cards.leader.said import Said
from tagend.cards.leader.shown import shown_length
from tagend.cards.words.language import Wording
from tagend.cards.words.leader_words import Told


def message(finding: Finding, told: Told) -> str:
    """Return what was found and the reason in one sentence."""
    return f"{in_words(finding.says, told)}: {in_words(finding.reason, told)}"


def in_words(says: Said, told: Told) -> str:
    """Return what is said of a leader: `it draws up on strands up to 0.015 in, …`, `a big step`."""
    values = dict(says.values)
    form = told.wording.form("said", says.key, values)
    return form.format_map({name: _Blank(value, told) for name, value in says.values})


class _Blank(NamedTuple):
    """An exact value in a sentence, told as what stands behind its colon there says."""

    value: object
    told: Told

    def __format__(self, way: str) -> str:
        value, told = self.value, self.told
        if value is None:
            return ""
        if isinstance(value, Said):
            return in_words(value, told)
        if way in _NAMES:
            return _NAMES[way](told.wording, str(value))
        return told.wording.number(_WAYS[way](told, value))


def _told_apart(lengths: tuple[Fraction, Fraction], told: Told) -> tuple[str, ...]:
    """Return two lengths that differ in words that do, however close they are."""
    unit = told.leader.unit
    for tell in (length, hundredths):
        words = tuple(tell(mm, unit) for mm in lengths)
        if words[0] != words[1]:
            return words
    return tuple(f"{float(mm):.4f} mm" for mm in lengths)


def _times(told: Told, times: tuple[float, float]) -> str:
    low, high = (f"{each:.2f}" for each in times)
    return low if low == high else told.wording.say("range", low=low, high=high)


def _percent(told: Told, share: Any) -> str:
    low, high = Percent.of(share)
    return f"{low if low == high else told.wording.say('range', low=low, high=high)} %"


_NAMES: Mapping[str, Callable[[Wording, str], str]] = {
    "knot": Wording.knot,
    "material": Wording.material,
}

# How a value may be told, by the word for it in the language files.
_WAYS: Mapping[str, Callable[[Told, Any], str]] = {
    "": lambda _, value: str(value),
    "length": lambda told, mm: length(mm, told.leader.unit),
    "span": Told.span,
    "thickness": lambda told, mm: thickness(mm, told.leader.unit),
    "diameter": Told.diameter,
    "strength": Told.strength,
    "long": lambda told, length: shown_length(length, told.leader),
    "as_written": lambda _, quantity: str(quantity.plain),
    "number": lambda _, number: f"{float(number):g}",
    "numbers": lambda told, numbers: told.wording.listed(f"{float(each):g}" for each in numbers),
    "hundredths": lambda _, number: f"{float(number):.2f}",
    "times": _times,
    "percent": _percent,
    "one": lambda told, lengths: _told_apart(lengths, told)[0],
    "other": lambda told, lengths: _told_apart(lengths, told)[1],
}
