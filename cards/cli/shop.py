"""`tagend shop`: what a person prints under and on, asked for step by step, and kept in a file."""

import json
from collections.abc import Mapping
from functools import partial
from pathlib import Path

import click
from msgspec.structs import replace

from tagend.cards.base.toml_edit import with_keys
from tagend.cards.base.toml_file import read_toml
from tagend.cards.cli.command_line import command_line
from tagend.cards.cli.dialogue import Dialogue, Question, hold
from tagend.cards.cli.files import naming
from tagend.cards.cli.output import tell_written
from tagend.cards.disk.disk import mode_of, read_bytes, write_whole
from tagend.cards.disk.file_lock import alone
from tagend.cards.disk.shop_file_at import logo_of
from tagend.cards.practice.shop_file import Shop, read_shop
from tagend.cards.practice.shop_keys import SHOP_KEYS, new_shop_file
from tagend.layouts.base.faults import refused


@click.command("shop")
@click.argument("file", metavar="FILE")
def command(file: str) -> None:
    """Ask what is printed under and on, and keep it in FILE for --shop.

    In a file that is there already only what you answer otherwise is changed.
    """
    path = file if Path(file).suffix else f"{file}.toml"
    was = _read(path)
    with naming(path):
        shop, said = (read_shop(was), read_toml(was)) if was else (Shop(), {})
    answers = hold(partial(_ask, shop, said, Path(path).parent))
    if not was and not any(answers.values()):
        raise refused("nothing was answered", "nothing was written")
    with alone(path), naming(path):
        if _read(path) != was:
            raise refused("this file was changed meanwhile", "run this again")
        write_whole(path, with_keys(was, answers) if was else new_shop_file(answers))
    next_line = command_line("cards", "RECIPE.toml", "--shop", path, "-o", "cards.pdf")
    tell_written(f"{path}; next: {next_line}")


def _read(path: str) -> bytes:
    """Return what a file holds; where there is none, nothing."""
    return b"" if mode_of(path) is None else read_bytes(path)


def _ask(shop: Shop, said: Mapping[str, object], folder: Path) -> Dialogue[dict[str, str | None]]:
    """Ask for each key; what is left out is None."""
    answers: dict[str, str | None] = {}
    for each in SHOP_KEYS:
        told = f" ({each.told})" if each.told else ""
        answers[each.key] = yield Question(
            asked=f"{each.asked}{told}, such as {each.example}",
            read=partial(_checked, each.key, shop, folder),
            usual=str(said.get(each.key, "")),
        )
    return answers


def _checked(key: str, shop: Shop, folder: Path, text: str) -> str:
    """Return a text that a shop file may say under a key; raises `Refused` for any other."""
    from tagend.cards.printing.shop_check import STOCKED, check_shop

    said = getattr(read_shop(f"{key} = {json.dumps(text)}".encode()), key)
    check_shop(replace(shop, font=None, **{key: said}), [key] if key in STOCKED else [])
    if key == "logo":
        logo_of(Shop(logo=str(folder / text)))
    return text
