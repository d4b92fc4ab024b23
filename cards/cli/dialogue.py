"""A dialogue: questions that hang on earlier answers in, what is made of all answers out.

It is a generator that yields questions and is sent what their answers mean. After a step back it is
begun anew and sent the answers up to there, so that no question knows of going back.
"""

import sys
from collections.abc import Callable, Generator
from typing import Any, TypeAlias, TypeVar

import click
from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.cli.spoken import refusal_told
from tagend.layouts.base.faults import Refused, refused

T = TypeVar("T")
Dialogue: TypeAlias = Generator["Question", Any, T]

BACK, NOTHING = "<", "-"
HELP = f"Enter takes what stands in [ ], {NOTHING} leaves a thing out, {BACK} goes a step back."


class Question(Struct, frozen=True, kw_only=True):
    """What is asked, and how its answer is read."""

    asked: str
    read: Callable[[str], object]  # raises `Refused`
    usual: str = ""  # what an empty answer means, as it would be typed; "" leaves it out: None
    needed: bool = False  # can it not be left out?
    before: tuple[str, ...] = ()  # lines to show first


class _Answer(Struct, frozen=True):
    question: Question
    typed: str
    value: object


class _Back(Exception):
    """The person wants to answer the question before once more."""


class _Missing(Exception):
    """No more answers come, and this one is needed."""


def hold(begin: Callable[[], Dialogue[T]]) -> T:
    """Ask all questions, and return what the dialogue makes of the answers.

    Whatever was typed stands in brackets when it is asked for again. Where no more answers come,
    all that is left is left out; so is what was begun and lacks something needed. Raises `Refused`
    where then nothing is left.
    """
    click.echo(HELP, err=True)
    given: list[_Answer] = []
    typed: dict[str, str] = {}  # by question
    line: Callable[[str], str] = _line
    while True:
        dialogue = begin()
        try:
            question = next(dialogue)
            for answer in given:
                question = dialogue.send(answer.value)
            while True:
                given.append(_answer(question, typed, line))
                question = dialogue.send(given[-1].value)
        except StopIteration as done:
            value: T = done.value
            return value
        except _Back:
            del given[-1:]
        except EOFError:
            click.echo(err=True)
            line, typed = _no_line, {}
        except _Missing as missing:
            _leave_out(given, str(missing))


def _answer(question: Question, typed: dict[str, str], line: Callable[[str], str]) -> _Answer:
    """Ask until the answer can be read; raises `_Back`, `_Missing`, and EOFError at their end."""
    for shown in question.before:
        click.echo(shown, err=True)
    usual = typed.get(question.asked, question.usual)
    while True:
        text = line(question.asked + (f" [{usual}]" if usual else "")).strip() or usual
        if text == BACK:
            raise _Back
        if text in ("", NOTHING):
            if not question.needed:
                typed.pop(question.asked, None)
                return _Answer(question, "", None)
            if line is _no_line:
                raise _Missing(question.asked)
            click.echo("  this is needed", err=True)
            continue
        try:
            value = question.read(text)
        except Refused as error:
            if line is _no_line:
                raise
            click.echo("\n".join(f"  {fault}" for fault in refusal_told(error).faults), err=True)
            continue
        typed[question.asked] = text
        return _Answer(question, text, value)


def _leave_out(given: list[_Answer], missing: str) -> None:
    """Take answers back to the last that can be left out, and leave that out."""
    while given and (given[-1].question.needed or not given[-1].typed):
        given.pop()
    if not given:
        raise refused(f"the answers end before {missing!r}", "nothing was written")
    given.append(replace(given.pop(), typed="", value=None))


def _line(asked: str) -> str:
    """Return what a person types, or the next line of a pipe. Raises EOFError at its end."""
    if sys.stdin is not None and sys.stdin.isatty() and sys.stdout.isatty():
        return input(f"{asked}: ")
    click.echo(f"{asked}: ", nl=False, err=True)
    line = sys.stdin.readline() if sys.stdin is not None else ""
    if not line:
        raise EOFError
    return line


def _no_line(_: str) -> str:
    return ""
