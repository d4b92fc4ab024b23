"""What is wrong with leaders, told where they are used: worksheets in, lines on standard error."""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence

import click

from tagend.cards.base.plural import counted
from tagend.cards.cli.worksheet_lines import finding_line
from tagend.cards.leader.audit import Finding
from tagend.cards.leader.worksheet import Worksheet
from tagend.layouts.base.faults import Fault, Refused

_NAMED = 2  # leaders in one line
_SCREEN = 20  # lines
_OF_RULE = 3  # lines of one rule's warnings, where all are more than a screen

anyway_option = click.option(
    "--anyway", is_flag=True, help="Even where `tagend check` finds an error."
)


def heed(sheets: Sequence[Worksheet], *, anyway: bool) -> None:
    """Tell what `check` warns of, and raise `Refused` for an error, unless told to go on anyway."""
    tell(sheets)
    faults = [] if anyway else list(_refusals(sheets))
    if faults:
        raise Refused(*faults)


def tell(sheets: Sequence[Worksheet]) -> None:
    """Say what `check` warns of on standard error, in its words; its notes stay with it."""
    for line in heed_lines(sheets):
        click.echo(line, err=True)


def heed_lines(sheets: Iterable[Worksheet]) -> Iterator[str]:
    """Yield errors and warnings, a line each with the names of all leaders that have it.

    Where they would fill more than a screen, a rule's warnings are the first few and their number.
    """
    leaders: dict[Finding, list[str]] = {}
    for sheet in sheets:
        for finding in sheet.findings:
            if finding.severity != "note":
                leaders.setdefault(finding, []).append(sheet.leader.recipe.name)
    most = len(leaders) if len(leaders) <= _SCREEN else _OF_RULE
    told = Counter[str]()
    for finding, names in leaders.items():
        is_error = finding.severity == "error"
        told[finding.rule] += not is_error
        if is_error or told[finding.rule] <= most:
            yield f"{_named(names)}: {finding_line(finding)}"
    for rule, number in told.items():
        if number > most:
            yield f"{number - most} more of [{rule}]; `tagend check` tells them all"


def _named(names: Sequence[str]) -> str:
    shown = ", ".join(names[:_NAMED])
    return shown if len(names) <= _NAMED else f"{shown} and {len(names) - _NAMED} more"


def _refusals(sheets: Iterable[Worksheet]) -> Iterator[Fault]:
    for sheet in sheets:
        if errors := sum(finding.severity == "error" for finding in sheet.findings):
            found = f"this leader has {counted(errors, 'error')}"
            yield Fault(sheet.leader.recipe.name, found, "mend it, or say --anyway")
