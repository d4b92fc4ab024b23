"""`tagend shop`: what a person prints under and on, asked for step by step, and kept in a file."""

import json
from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path

import click

from tagend.cards.base.toml_edit import with_keys
from tagend.cards.base.toml_file import read_toml
from tagend.cards.cli.command_line import command_line
from tagend.cards.cli.dialogue import Dialogue, Question, hold
from tagend.cards.cli.disk import mode_of, read_bytes, write_whole
from tagend.cards.cli.file_lock import alone
from tagend.cards.cli.files import load_logo, naming
from tagend.cards.cli.output import tell_written
from tagend.cards.practice.shop_file import Shop, read_shop
from tagend.layouts.base.faults import refused

_HEAD = "# What belongs to the person, not to the recipe. Name it with --shop, or in TAGEND_SHOP."
_MORE = """
# Your own hands and habits, instead of what is computed; `tagend learn` measures a lap.
# [lap]
# blood = "8 in"
# [choice]
# fly = "non-slip loop"
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Key:
    key: str
    asked: str
    example: str
    told: str = ""  # beside it in the file, beyond what was asked


_KEYS = (
    _Key(key="name", asked="Name of the shop, or your own", example="The Low Tide Bench"),
    _Key(key="line", asked="A line of text under the name", example="Leaders tied by hand"),
    _Key(
        key="address",
        asked="Address, for the counter sheet",
        example="3 Wrack Lane, Nowhere-on-Sea",
    ),
    _Key(
        key="logo",
        asked="Logo, a picture beside this file",
        example="logo.png",
        told="PNG, JPEG, SVG or PDF",
    ),
    _Key(key="language", asked="Language of all that is printed", example="es", told="en or es"),
    _Key(
        key="units",
        asked="Units of all that is printed",
        example="cm and in",
        told="in, cm, mm, or two of them",
    ),
    _Key(key="paper", asked="Paper", example="A4", told="`tagend stock` lists all"),
    _Key(key="card", asked="Size of a card", example="A7"),
    _Key(key="labels", asked="Sheet of labels", example="a4-3x8-70x37"),
    _Key(
        key="tape", asked="Marks of your tape", example="1/4 in", told="what cuts are rounded up to"
    ),
)


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
        write_whole(path, with_keys(was, answers) if was else _new(answers))
    next_line = command_line("cards", "RECIPE.toml", "--shop", path, "-o", "cards.pdf")
    tell_written(f"{path}; next: {next_line}")


def _read(path: str) -> bytes:
    """Return what a file holds; where there is none, nothing."""
    return b"" if mode_of(path) is None else read_bytes(path)


def _ask(shop: Shop, said: Mapping[str, object], folder: Path) -> Dialogue[dict[str, str | None]]:
    """Ask for each key; what is left out is None."""
    answers: dict[str, str | None] = {}
    for each in _KEYS:
        told = f" ({each.told})" if each.told else ""
        answers[each.key] = yield Question(
            asked=f"{each.asked}{told}, such as {each.example}",
            read=partial(_checked, each.key, shop, folder),
            usual=str(said.get(each.key, "")),
        )
    return answers


def _checked(key: str, shop: Shop, folder: Path, text: str) -> str:
    """Return a text that a shop file may say under a key; raises `Refused` for any other."""
    from tagend.cards.printing.job import job_of

    said = getattr(read_shop(f"{key} = {json.dumps(text)}".encode()), key)
    job = job_of(replace(shop, font=None, **{key: said}))
    match key:
        case "logo":
            load_logo(Shop(logo=str(folder / text)))
        case "paper":
            job.paper(None)
        case "card":
            job.card_size(None)
        case "labels":
            job.label_sheet(None)
    return text


def _new(answers: Mapping[str, str | None]) -> bytes:
    """Return a shop file of the answers; what is left out is an example, in a comment."""
    lines = (_line(each, answers[each.key]) for each in _KEYS)
    return "\n".join((_HEAD, *lines, _MORE)).encode()


def _line(each: _Key, value: str | None) -> str:
    line = f"{each.key} = {json.dumps(value or each.example, ensure_ascii=False)}"
    told = f"  # {each.told}" if each.told else ""
    return f"{line}{told}" if value else f"# {line}{told}"
