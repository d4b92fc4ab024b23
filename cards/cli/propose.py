"""`tagend propose`: a taper worked out from what the rack holds."""

from collections.abc import Callable, Sequence

import click

from tagend.cards.base.units import Diameter, Length, parse_diameter, parse_length
from tagend.cards.base.value_readers import plain_text
from tagend.cards.cli.files import load_practice, load_rack
from tagend.cards.cli.heed import anyway_option, heed
from tagend.cards.cli.options import rack_option, reading, replace_option, shop_option
from tagend.cards.cli.output import check_output, named_file, tell_written, write_output
from tagend.cards.cli.spoken import told_of
from tagend.cards.practice.practice import Practice
from tagend.cards.propose.asked_piece import AskedPiece, read_bought, read_guard, read_sighter
from tagend.cards.propose.proposal import propose
from tagend.cards.propose.step_limit import StepLimit
from tagend.cards.propose.supplies import (
    butt_for_line,
    supplies_of_diameters,
    supplies_of_rack,
)
from tagend.cards.propose.wish import Shares, Wish, read_shares, read_tippet
from tagend.cards.recipe.recipe import NAME_MOST
from tagend.layouts.base.faults import under

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

    practice = load_practice(shop)
    with under("material"):
        only = practice.materials.find(material).name if material else None
    with under("tippet"):
        ending = read_tippet(tippet, practice)
    if (rack is None) == (diameters is None):
        raise click.UsageError("Give either --rack or --diameters.")
    if spools := load_rack(rack, practice):
        supplies = supplies_of_rack(spools)
    else:
        supplies = supplies_of_diameters(diameters or (), only or "nylon", ending)
    named_file(output)
    check_output(output, replace=replace)
    pieces = {
        name: _read(name, text, reader, practice)
        for name, text, reader in (
            ("bought", bought, read_bought),
            ("sighter", sighter, read_sighter),
            ("guard", guard, read_guard),
        )
    }
    ready_made = pieces["bought"]
    if (butt, line_tip, ready_made).count(None) > 2 or (butt and (line_tip or ready_made)):
        raise click.UsageError("Give one of --butt, --line-tip and --bought.")
    if ready_made is not None:
        butt = ready_made.tapers_to or ready_made.diameter
    elif line_tip is not None:
        butt = butt_for_line(line_tip, supplies, practice)
    assert butt is not None
    wish = Wish(
        total=total,
        butt=butt,
        tippet=ending,
        step=StepLimit(practice.rules["step"].limits, step.mm if step else None),
        shares=shares,
        material=only,
        line_tip=line_tip,
        **pieces,
    )
    proposals = propose(wish, supplies, practice, name)
    sheets = [worksheet(proposal.recipe, practice) for proposal in proposals]
    blocks = (
        "\n".join(proposal_lines(place, proposal, told_of(sheet)))
        for place, (proposal, sheet) in enumerate(zip(proposals, sheets, strict=True), start=1)
    )
    click.echo("\n\n".join(blocks))
    heed(sheets[:1], anyway=anyway)
    write_output(output, recipe_text(proposals[0].recipe).encode(), replace=replace)
    tell_written(f"the first into {output}")


def _read(
    option: str,
    text: str | None,
    read: Callable[[str, Practice], AskedPiece],
    practice: Practice,
) -> AskedPiece | None:
    """Read a piece that is asked for, or None where the option is not given."""
    with under(option):
        return read(text, practice) if text is not None else None
