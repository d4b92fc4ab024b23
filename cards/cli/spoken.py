"""The language of the running command: its shop file in, how leaders and refusals are told out."""

import re
from contextlib import suppress

import click

from tagend.cards.disk.disk import read_bytes
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.practice.shop_file import Shop
from tagend.cards.words.language import ENGLISH, Wording, languages, wording_of
from tagend.cards.words.leader_words import Told
from tagend.layouts.base.faults import Refused

_FILE = f"{__name__} file"


def note_language(shop: Shop) -> None:
    """Have all that follows said in a shop's language; raises `Refused` for one not known."""
    context = click.get_current_context(silent=True)
    if context and (shop.language or shop.decimal):
        context.meta[__name__] = wording_of(shop)


def spoken() -> Wording:
    """Return the wording of the running command; without a shop file's, English."""
    context = click.get_current_context(silent=True)
    wording: Wording = context.meta.get(__name__, ENGLISH) if context else ENGLISH
    return wording


def note_shop_file(
    context: click.Context, _option: click.Parameter, name: str | None
) -> str | None:
    """Note the shop file that is given, in whose language refusals are told, its own too."""
    context.meta[_FILE] = name
    return name


def refusal_told(error: Refused) -> Refused:
    """Return a refusal in the language of the shop file, as far as there are words for it."""
    language = _language_given()
    if not language or language not in languages():
        return error
    from tagend.cards.words.refusal_words import told_in

    return Refused(*(told_in(language, fault) for fault in error.faults))


def _language_given() -> str:
    """Return the language that the shop file names, however wrong the rest of it may be."""
    context = click.get_current_context(silent=True)
    name = context.meta.get(_FILE) if context else None
    text = ""
    with suppress(Refused):  # which is told of where the file is used
        text = read_bytes(name).decode("utf-8", "replace") if name and name != "-" else ""
    found = re.search(r"""^language\s*=\s*["'](\w+)["']""", text, re.MULTILINE)
    return found[1] if found else ""


def told_of(sheet: Worksheet) -> Told:
    """Return a leader with what was found in it, told in the language of the running command."""
    return Told(sheet.leader, spoken(), findings=sheet.findings)
