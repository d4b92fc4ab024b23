"""What is wrong with leaders, told where they are used: worksheets in, lines on standard error."""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence

import click

from tagend.cards.cli.spoken import spoken, told_of
from tagend.cards.cli.worksheet_lines import finding_line
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.practice.rules import Severity
from tagend.cards.words.leader_words import Told
from tagend.layouts.base.faults import refused

_SCREEN = 20  # lines
_OF_RULE = 3  # lines of one rule's warnings, where all are more than a screen

anyway_option = click.option(
    "--anyway", is_flag=True, help="Even where `tagend check` finds an error."
)


def heed(sheets: Sequence[Worksheet], *, anyway: bool) -> None:
    """Tell what `check` warns of, and raise `Refused` for an error, unless told to go on anyway."""
    tell(sheets)
    wrong = [sheet.leader.recipe.name for sheet in sheets if "error" in _severities(sheet)]
    if wrong and not anyway:
        raise refused("`tagend check` finds an error", "mend it, or say --anyway", named(wrong))


def tell(sheets: Sequence[Worksheet]) -> None:
    """Say what `check` warns of on standard error, in its words; its notes stay with it."""
    for line in heed_lines(map(told_of, sheets)):
        click.echo(line, err=True)


def _severities(sheet: Worksheet) -> set[str]:
    return {finding.severity for finding in sheet.findings}


def heed_lines(leaders: Iterable[Told]) -> Iterator[str]:
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
            yield f"{named(names)}: {line}"
    for rule, number in counts.items():
        if number > most:
            yield spoken().say("more_of_rule", count=number - most, rule=rule)


def named(names: Sequence[str]) -> str:
    """Return whose card it is: `Sandbar eight and 3 more`."""
    first, *more = names
    if len(more) > 1:
        return spoken().say("and_more", names=first, more=len(more))
    return spoken().say("one_and_other", one=first, other=more[0]) if more else first
