"""Leaders with what was found in them in; lines of what whoever uses them has to heed out."""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence

from tagend.cards.leader.audit import Finding
from tagend.cards.practice.rules import Severity
from tagend.cards.words.language import Wording
from tagend.cards.words.leader_words import Told
from tagend.cards.words.said_words import message

_SCREEN = 20  # lines
_OF_RULE = 3  # lines of one rule's warnings, where all are more than a screen


def heed_lines(leaders: Iterable[Told], wording: Wording) -> Iterator[str]:
    """Yield errors, then warnings, a line each with the names of all leaders that have it.

    Where they would fill more than a screen, a rule's warnings are the first few and their number.
    """
    found: dict[tuple[Severity, str, str], list[str]] = {}
    for told in leaders:
        for finding in told.findings:
            if finding.severity != "note":
                key = finding.severity, finding.rule, finding_line(finding, told)
                found.setdefault(key, []).append(told.leader.recipe.name)
    most = len(found) if len(found) <= _SCREEN else _OF_RULE
    counts = Counter[str]()
    # Errors stand before warnings, as in the alphabet.
    for (severity, rule, line), names in sorted(found.items(), key=lambda item: item[0][0]):
        counts[rule] += severity != "error"
        if severity == "error" or counts[rule] <= most:
            yield f"{named(names, wording)}: {line}"
    for rule, number in counts.items():
        if number > most:
            yield wording.say("more_of_rule", count=number - most, rule=rule)


def finding_line(finding: Finding, told: Told) -> str:
    """Return one finding in words, with its rule and how well that stands."""
    term = told.wording.term
    standing = f"[{finding.rule}; {term(finding.standing)}]"
    return f"{term(finding.severity)}: {message(finding, told)} {standing}"


def named(names: Sequence[str], wording: Wording) -> str:
    """Return whose card it is: `Sandbar eight and 3 more`."""
    first, *more = names
    if len(more) > 1:
        return wording.say("and_more", names=first, more=len(more))
    return wording.say("one_and_other", one=first, other=more[0]) if more else first
