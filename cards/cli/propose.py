"""`tagend propose`: a taper worked out from what the rack holds."""

from collections.abc import Callable, Sequence
from fractions import Fraction
from typing import TypeVar

import click

from tagend.cards.base.units import Diameter, parse_diameter, parse_length
from tagend.cards.base.value_readers import plain_text
from tagend.cards.cli.disk import write_whole
from tagend.cards.cli.files import load_rack, load_shop
from tagend.cards.cli.options import rack_option, shop_option
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.shop_file import practice_of
from tagend.cards.propose.proposal import propose
from tagend.cards.propose.supplies import (
    Supply,
    butt_for_line,
    supplies_of_diameters,
    supplies_of_rack,
)
from tagend.cards.propose.wish import Tippet, Wish, read_shares, read_tippet
from tagend.cards.recipe.recipe import NAME_MOST
from tagend.layouts.base.faults import under

T = TypeVar("T")

_DIAMETERS = 'Instead of a rack, sizes that can be had: "0.021 in, 0.019 in, 4X".'
_LINE_TIP = "Instead of the butt, the fly line's tip: the butt is near two thirds of it."
_TIPPET = 'Its diameter, and material and strength if you like: "4X fluorocarbon 5 lb".'


@click.command("propose")
@rack_option
@click.option("--diameters", metavar="LIST", help=_DIAMETERS)
@click.option("--total", metavar="LENGTH", required=True, help="The finished length.")
@click.option("--butt", metavar="DIAMETER", help="The butt's diameter.")
@click.option("--line-tip", metavar="DIAMETER", help=_LINE_TIP)
@click.option("--tippet", metavar="DIAMETER", required=True, help=_TIPPET)
@click.option("--step", metavar="DIAMETER", help="The largest step; else the audit's limit.")
@click.option(
    "--shares",
    default="60/20/20",
    show_default=True,
    help="Percent of the length in butt, taper and tippet.",
)
@click.option("--material", help="The only one above the tippet; of --diameters, else nylon.")
@click.option("--name", help="What the leader is called; else by its measures.")
@click.option("-o", "--output", metavar="OUT.toml", required=True, help="The recipe file to write.")
@shop_option
def command(
    rack: str | None,
    diameters: str | None,
    total: str,
    butt: str | None,
    line_tip: str | None,
    tippet: str,
    step: str | None,
    shares: str,
    material: str | None,
    name: str | None,
    output: str,
    shop: str | None,
) -> None:
    """Work out the taper that steps down most evenly from the spools of a rack.

    Prints the best few with their audit and writes the best. Exits with 2 when none fits, and
    says which spool is missing.
    """
    from tagend.cards.cli.proposal_lines import proposal_lines
    from tagend.cards.leader.worksheet import worksheet
    from tagend.cards.recipe.recipe_text import recipe_text

    practice = practice_of(load_shop(shop))
    only = _read("material", practice.materials.find, material).name if material else None
    ending = _read("tippet", lambda text: read_tippet(text, practice), tippet)
    supplies = _supplies(rack, diameters, only, ending, practice)
    tip = _read("line tip", parse_diameter, line_tip) if line_tip else None
    wish = Wish(
        total=_read("total", parse_length, total),
        butt=_butt(butt, tip, supplies, practice),
        tippet=ending,
        step_mm=_read("step", parse_diameter, step).mm if step else _usual_step(practice),
        shares=_read("shares", read_shares, shares),
        material=only,
        line_tip=tip,
    )
    called = _read("name", lambda text: plain_text(text, NAME_MOST), name) if name else None
    proposals = propose(wish, supplies, practice, called)
    blocks = [
        "\n".join(proposal_lines(place, proposal, worksheet(proposal.recipe, practice)))
        for place, proposal in enumerate(proposals, start=1)
    ]
    click.echo("\n\n".join(blocks))
    write_whole(output, recipe_text(proposals[0].recipe).encode())
    click.echo(f"wrote the first into {output}", err=True)


def _read(what: str, read: Callable[[str], T], text: str) -> T:
    with under(what):
        return read(text)


def _usual_step(practice: Practice) -> Fraction:
    (limit,) = practice.rules["step"].limits
    return limit


def _supplies(
    rack: str | None,
    diameters: str | None,
    material: str | None,
    tippet: Tippet,
    practice: Practice,
) -> tuple[Supply, ...]:
    if (rack is None) == (diameters is None):
        raise click.UsageError("Give either --rack or --diameters.")
    loaded = load_rack(rack, practice)
    if loaded is not None:
        return supplies_of_rack(loaded, practice)
    sizes = [_read("diameters", parse_diameter, text) for text in (diameters or "").split(",")]
    return supplies_of_diameters(sizes, material or "nylon", tippet)


def _butt(
    butt: str | None, tip: Diameter | None, supplies: Sequence[Supply], practice: Practice
) -> Diameter:
    if (butt is None) == (tip is None):
        raise click.UsageError("Give either --butt or --line-tip.")
    if tip is not None:
        return butt_for_line(tip, supplies, practice)
    return _read("butt", parse_diameter, butt or "")
