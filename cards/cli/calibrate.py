"""`tagend calibrate`: a page that measures the printer, and what was measured stored."""

from collections.abc import Callable
from typing import TYPE_CHECKING, TypeVar

import click

from tagend.cards.cli.files import load_job
from tagend.cards.cli.options import paper_option, shop_option
from tagend.cards.cli.output import check_output
from tagend.cards.cli.print_command import write_pdf
from tagend.cards.cli.show import show_option
from tagend.cards.disk.disk import note_input

if TYPE_CHECKING:
    from tagend.cards.printing.calibration import Edge

F = TypeVar("F", bound=Callable[..., object])

_MEASURED = {
    "front_x": "What the scale at the left of the front says; -0.4mm and the like.",
    "front_y": "What the scale at the top of the front says.",
    "back_x": "What the scale at the left of the back says.",
    "back_y": "What the scale at the top of the back says.",
    "rule_x": "How long the level rule of 100 mm is.",
    "rule_y": "How long the upright rule of 100 mm is.",
}


def _measured_options(command: F) -> F:
    for key, told in reversed(_MEASURED.items()):
        option = click.option(f"--{key.replace('_', '-')}", metavar="LENGTH", help=told)
        command = option(command)
    return command


@click.command("calibrate")
@click.option("-o", "--output", metavar="OUT.pdf", help="The page to write.")
@paper_option
@click.option(
    "--backs",
    type=click.Choice(["long-edge", "short-edge"]),
    help="Add a back, for a printer that turns the paper at this edge.",
)
@click.option("--corrected", is_flag=True, help="Draw it as the shop file corrects it, to check.")
@click.option("--store", metavar="SHOP.toml", help="Store what was measured in this shop file.")
@_measured_options
@click.option(
    "--replace",
    is_flag=True,
    help="Replace what is stored already, or a file that tagend did not make.",
)
@show_option
@shop_option
def command(
    output: str | None,
    paper: str | None,
    backs: "Edge | None",
    corrected: bool,
    store: str | None,
    replace: bool,
    shop: str | None,
    **lengths: str | None,
) -> None:
    """Write a page that shows with a ruler what the printer does, or store what it showed.

    Once stored, `cards` and `labels` make up for it; the rest of the shop file stays as it is.
    """
    measured = {key: text.strip() for key, text in lengths.items() if text is not None}
    if output is None and store is None:
        raise click.UsageError("Missing option '-o' / '--output' or '--store'.")
    if store is None and measured:
        raise click.UsageError("Name the shop file to store this in with --store.")
    if store is not None and not measured:
        raise click.UsageError("Give what was measured, such as --front-x 0.4mm.")
    if corrected and shop is None:
        raise click.UsageError("Name the shop file that corrects it with --shop.")
    if store is not None:
        if output is not None:  # before anything is stored
            note_input(store)
            check_output(output, replace=replace)
        _store(store, measured, replace)
    if output is not None:
        from tagend.cards.printing.calibration import calibration_pdf

        page = calibration_pdf(load_job(shop), paper, backs, true=corrected)
        write_pdf(output, page, replace=replace)


def _store(name: str, measured: dict[str, str], replace: bool) -> None:
    from tagend.cards.cli.store import store
    from tagend.layouts.sheets.printer import read_printer

    load_job(name)  # no file is changed that is wrong already
    read_printer(measured)
    store(name, "printer", measured, replace=replace)
