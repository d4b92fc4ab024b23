"""`tagend propose`: a taper worked out from what the rack holds."""

from collections.abc import Sequence

import click

from tagend.cards.base.units import Diameter, Length, parse_diameter, parse_length
from tagend.cards.base.value_readers import plain_text
from tagend.cards.cli.files import load_practice, load_rack
from tagend.cards.cli.heed import anyway_option, heed
from tagend.cards.cli.options import rack_option, reading, replace_option, shop_option
from tagend.cards.cli.output import check_output, named_file, tell_written, write_output
from tagend.cards.cli.spoken import spoken, told_of
from tagend.cards.propose.asking import AskedTaper, wish_of
from tagend.cards.propose.proposal import propose
from tagend.cards.propose.wish import Shares, read_shares
from tagend.cards.recipe.recipe import NAME_MOST

_DIAMETERS = 'Instead of a rack, sizes that can be had: "0.021 in, 0.019 in, 4X".'
_LINE_TIP = "Instead of the butt, the fly line's tip: the butt is near two thirds of it."
_TIPPET = 'Its diameter, and material and strength if you like: "4X fluorocarbon 5 lb".'

_BOUGHT = 'A bought butt instead: "5 ft 0.021 in to 0.012 in nylon".'
_SIGHTER = 'A sighter above the tippet, from the rack: "18 in", or with its strand.'
_GUARD = 'A bite guard below the tippet, from the rack: "12 in wire", or with its diameter.'

_diameter = reading(parse_diameter)
_diameters = reading(lambda text: [parse_diameter(size) for size in text.split(",")])
_name = reading(lambda text: plain_text(text, NAME_MOST))


@click.command("propose")
@rack_option
@click.option("--diameters", metavar="LIST", callback=_diameters, help=_DIAMETERS)
@click.option("--total", metavar="LENGTH", required=True, callback=reading(parse_length),
              help="The finished length.")  # fmt: skip
@click.option("--butt", metavar="DIAMETER", callback=_diameter, help="The butt's diameter.")
@click.option("--line-tip", metavar="DIAMETER", callback=_diameter, help=_LINE_TIP)
@click.option("--tippet", metavar="DIAMETER", required=True, help=_TIPPET)
@click.option("--step", metavar="DIAMETER", callback=_diameter,
              help="The largest step; else the audit's limit, a ratio.")  # fmt: skip
@click.option("--shares", default="60/20/20", show_default=True, callback=reading(read_shares),
              help="Percent of the length in butt, taper and tippet.")  # fmt: skip
@click.option("--bought", metavar="PIECE", help=_BOUGHT)
@click.option("--sighter", metavar="PIECE", help=_SIGHTER)
@click.option("--guard", metavar="PIECE", help=_GUARD)
@click.option("--material", help="The only one above the tippet; of --diameters, else nylon.")
@click.option("--name", callback=_name, help="What the leader is called; else by its measures.")
@click.option("-o", "--output", metavar="OUT.toml", required=True, help="The recipe file to write.")
@anyway_option
@replace_option
@shop_option
def command(
    rack: str | None,
    diameters: Sequence[Diameter] | None,
    total: Length,
    butt: Diameter | None,
    line_tip: Diameter | None,
    tippet: str,
    step: Diameter | None,
    shares: Shares,
    bought: str | None,
    sighter: str | None,
    guard: str | None,
    material: str | None,
    name: str | None,
    output: str,
    anyway: bool,
    replace: bool,
    shop: str | None,
) -> None:
    """Work out the taper of the fewest knots without a big step from the spools of a rack.

    Prints the best few with their audit and writes the best. Exits with 2 when none fits, and
    says which spool is missing.
    """
    from tagend.cards.cli.proposal_lines import proposal_lines
    from tagend.cards.leader.worksheet import worksheet
    from tagend.cards.recipe.recipe_text import recipe_text
    from tagend.cards.words.taper_words import taper_name

    practice = load_practice(shop)
    if (rack is None) == (diameters is None):
        raise click.UsageError("Give either --rack or --diameters.")
    if not (butt or line_tip or bought) or (butt and (line_tip or bought)):
        raise click.UsageError("Give one of --butt, --line-tip and --bought.")
    spools = load_rack(rack, practice)
    named_file(output)
    check_output(output, replace=replace)
    asked = AskedTaper(
        total=total,
        tippet=tippet,
        butt=butt,
        line_tip=line_tip,
        step=step,
        shares=shares,
        material=material,
        bought=bought,
        sighter=sighter,
        guard=guard,
    )
    wish, strands = wish_of(asked, spools or diameters or (), practice)
    named = name or taper_name(wish.total, wish.thickest, wish.tippet.diameter, spoken())
    proposals = propose(wish, strands, practice, named)
    sheets = [worksheet(proposal.recipe, practice) for proposal in proposals]
    blocks = (
        "\n".join(proposal_lines(place, proposal, told_of(sheet)))
        for place, (proposal, sheet) in enumerate(zip(proposals, sheets, strict=True), start=1)
    )
    click.echo("\n\n".join(blocks))
    heed(sheets[:1], anyway=anyway)
    write_output(output, recipe_text(proposals[0].recipe).encode(), replace=replace)
    tell_written(f"the first into {output}")
