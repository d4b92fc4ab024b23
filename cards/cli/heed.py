"""What is wrong with leaders, told where they are used: worksheets in, lines on standard error."""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence

import click

from tagend.cards.cli.worksheet_lines import finding_line
from tagend.cards.leader.audit import Finding
from tagend.cards.leader.worksheet import Worksheet
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
    for line in heed_lines(sheets):
        click.echo(line, err=True)


def _severities(sheet: Worksheet) -> set[str]:
    return {finding.severity for finding in sheet.findings}


def heed_lines(sheets: Iterable[Worksheet]) -> Iterator[str]:
    """Yield errors, then warnings, a line each with the names of all leaders that have it.

    Where they would fill more than a screen, a rule's warnings are the first few and their number.
    """
    leaders: dict[Finding, list[str]] = {}
    for sheet in sheets:
        for finding in sheet.findings:
            if finding.severity != "note":
                leaders.setdefault(finding, []).append(sheet.leader.recipe.name)
    most = len(leaders) if len(leaders) <= _SCREEN else _OF_RULE
    told = Counter[str]()
    by_severity = sorted(leaders.items(), key=lambda item: item[0].severity)  # as in the alphabet
    for finding, names in by_severity:
        is_error = finding.severity == "error"
        told[finding.rule] += not is_error
        if is_error or told[finding.rule] <= most:
            yield f"{named(names)}: {finding_line(finding)}"
    for rule, number in told.items():
        if number > most:
            yield f"{number - most} more of [{rule}]; `tagend check` tells them all"


def named(names: Sequence[str]) -> str:
    """Return whose card it is: `Sandbar eight and 3 more`."""
    return " and ".join(names) if len(names) <= 2 else f"{names[0]} and {len(names) - 1} more"
