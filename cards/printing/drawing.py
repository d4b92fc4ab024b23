"""One sheet made under a job in, a drawing of it out: the bytes of an SVG."""

from collections.abc import Callable, Sequence

from tagend.cards.leader.leader import check_tieable
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.printing.job import Job, Printed, paper_faults
from tagend.layouts.sheets.sheet import Sheet
from tagend.layouts.svg.svg import sheet_svg


def svg_of(
    job: Job, make: Callable[[], Sheet], worksheets: Sequence[Worksheet], *, title: str
) -> Printed:
    """Return an SVG of the sheet that is made, as it is: for a screen, not for one's printer.

    Raises `Refused` as `pdf_of` does.
    """
    for worksheet in worksheets:
        check_tieable(worksheet.leader)
    with paper_faults():
        sheet = make()
        printed = Printed(sheet_svg(sheet, title=title, language=job.wording.language))
    printed.sheets = (sheet,)
    return printed
