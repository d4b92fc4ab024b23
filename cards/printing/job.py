"""One print job: what a shop file says in one value; sheets made under it in, a PDF out."""

from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path

from msgspec import Struct

from tagend.cards.faces.block import TooSmall
from tagend.cards.faces.imprint import Imprint
from tagend.cards.leader.leader import check_tieable
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.shop_file import Shop, practice_of
from tagend.cards.printing.own_stock import own_stock
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_text import file_name, recipe_text
from tagend.cards.words.cautions import Caution, cautions_for
from tagend.cards.words.language import Wording, wording_of
from tagend.cards.words.leader_words import Told
from tagend.fonts import FontMissing, Fonts, NoGlyph, fonts_with
from tagend.layouts.base.faults import refused, under
from tagend.layouts.codes.code import TextTooLong
from tagend.layouts.codes.code_proof import NotProven
from tagend.layouts.paper.face import Face
from tagend.layouts.paper.raster import Raster
from tagend.layouts.paper.rulers import TrueSizeRules, true_size_rules
from tagend.layouts.paper.text import TooWide
from tagend.layouts.pdf.attach import AttachedFile
from tagend.layouts.pdf.pdf import Duplex, write_pdf
from tagend.layouts.sheets.printer import Printer, corrected
from tagend.layouts.sheets.sheet import Placed, Sheet
from tagend.layouts.stock.formats import CardSize, LabelSheet, Paper, Stock
from tagend.layouts.stock.stock import card_size, label_sheet, paper

CREATOR = "tagend"
DUPLEX: Mapping[str, Duplex] = {"long-edge": "long edge", "short-edge": "short edge"}
# Their messages say already what to do.
_TOLD = (TextTooLong, FontMissing, NotProven)


class Job(Struct, frozen=True):
    """What all that a shop prints has in common."""

    practice: Practice
    wording: Wording
    imprint: Imprint
    fonts: Fonts
    stock: Stock
    usual: Mapping[str, str]  # the names of paper, card and labels, where none is asked for
    printer: Printer

    def paper(self, name: str | None) -> Paper:
        """Return the paper of a name, or the usual one. Raises `Refused`."""
        return paper(name or self.usual["paper"], self.stock)

    def card_size(self, name: str | None) -> CardSize:
        """Return the card size of a name, or the usual one. Raises `Refused`."""
        return card_size(name or self.usual["card"], self.stock)

    def label_sheet(self, name: str | None) -> LabelSheet:
        """Return the label sheet of a name, or the usual one. Raises `Refused`."""
        return label_sheet(name or self.usual["labels"], self.stock)

    def rules(self) -> TrueSizeRules:
        """Return the rules of true size that sheets have in a margin."""
        say = self.wording.say
        return true_size_rules(say("true_size_mm"), say("true_size_inches"), self.fonts.medium)

    def told(self, worksheets: Sequence[Worksheet]) -> list[Told]:
        """Return worksheets as faces tell them, in the shop's words."""
        return [
            Told(worksheet.leader, self.wording, findings=worksheet.findings)
            for worksheet in worksheets
        ]

    def cautions(self, worksheets: Sequence[Worksheet]) -> tuple[Caution, ...]:
        """Return the cautions for tying these leaders and fishing them."""
        return cautions_for([worksheet.leader for worksheet in worksheets], self.wording)

    def title(self, what: str, worksheets: Sequence[Worksheet]) -> str:
        """Return the title of a PDF, such as `cards`, of one leader or of so many."""
        names = [worksheet.leader.recipe.name for worksheet in worksheets]
        many = self.wording.say("so_many_leaders", count=len(names))
        return self.wording.say(f"{what}_of", leaders=names[0] if len(names) == 1 else many)


def job_of(shop: Shop, logo: Raster | None = None) -> Job:
    """Return a shop's job.

    Raises `Refused` for what a shop file says of stock, printer or font and cannot be.
    """
    stock, printer = own_stock(shop)
    with under("font", ": "):
        fonts = fonts_with(Path(shop.font) if shop.font else None)
    own = {"paper": shop.paper, "card": shop.card, "labels": shop.labels}
    return Job(
        practice=practice_of(shop),
        wording=wording_of(shop),
        imprint=Imprint(name=shop.name, line=shop.line, logo=logo, address=shop.address),
        fonts=fonts,
        stock=stock,
        usual={**stock.defaults, **{key: name for key, name in own.items() if name}},
        printer=printer,
    )


class LeftOut(Struct, frozen=True):
    """What a leader's card has no room for, and the size of card that holds it."""

    name: str
    missing: tuple[str, ...]
    size: str | None


class Printed(bytes):
    """The bytes of a PDF, the sheets that it is made of, and what found no room on them."""

    sheets: tuple[Sheet, ...] = ()
    left_out: tuple[LeftOut, ...] = ()
    pages_apart: int | None = None  # with the knots on cards of their own, where that saves pages


def pdf_of(
    job: Job,
    make: Callable[[], Sequence[Sheet]],
    worksheets: Sequence[Worksheet] = (),
    *,
    title: str,
    duplex: Duplex | None = None,
    true: bool = True,
) -> Printed:
    """Return a PDF of the sheets that are made, with the recipes of all leaders as files.

    A `true` one is corrected for the printer. Raises `Refused` for a leader that cannot be tied
    and for whatever cannot be set, does not fit or is not known.
    """
    for worksheet in worksheets:
        check_tieable(worksheet.leader)
    with paper_faults():
        sheets = tuple(make())
        printed = Printed(
            write_pdf(
                corrected(sheets, job.printer) if true else sheets,
                title=title,
                creator=CREATOR,
                author=job.imprint.name or "",
                language=job.wording.language,
                files=recipe_files([worksheet.leader.recipe for worksheet in worksheets]),
                duplex=duplex,
            )
        )
    printed.sheets = sheets
    return printed


def whole_pages(faces: Sequence[Face]) -> list[Sheet]:
    """Return faces that are as large as their paper as sheets."""
    return [Sheet(face.width, face.height, (Placed(face, 0, 0),)) for face in faces]


def recipe_files(recipes: Sequence[Recipe]) -> tuple[AttachedFile, ...]:
    """Return recipes as files for a PDF to carry, each under a name of its own."""
    seen: Counter[str] = Counter()
    files = []
    for recipe in recipes:
        name = file_name(recipe.name)
        seen[name] += 1
        if seen[name] > 1:
            name = f"{seen[name]}-{name}"
        files.append(AttachedFile(name, "application/toml", recipe_text(recipe).encode()))
    return tuple(files)


@contextmanager
def paper_faults(where: str = "") -> Iterator[None]:
    """Turn what paper and fonts refuse into what a person reads."""
    try:
        yield
    except NoGlyph as error:
        raise refused(str(error), "write it with letters and common signs", where) from None
    except (TooSmall, TooWide) as error:
        raise refused(str(error), "choose a larger size; see `tagend stock`", where) from None
    except _TOLD as error:
        raise refused(str(error), "", where) from None
