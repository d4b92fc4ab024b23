"""The language of the running command: what its shop file says in, how it tells a leader out."""

import click

from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.practice.shop_file import Shop
from tagend.cards.words.language import ENGLISH, Wording, wording_of
from tagend.cards.words.leader_words import Told


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


def told_of(sheet: Worksheet) -> Told:
    """Return a leader with what was found in it, told in the language of the running command."""
    return Told(sheet.leader, spoken(), findings=sheet.findings)
