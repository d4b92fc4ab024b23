'''The trade: recipes, what to cut, tie and heed for them, and how cards and labels say it.

What a program needs of it is imported from here, and is loaded only when it is asked for.

A recipe is read with a person's practice, which says what knots and materials there are:

>>> from tagend.cards import common_practice, read_recipe
>>> practice = common_practice()
>>> recipe = read_recipe(b"""
... name = "Short five"
... [[section]]
... length = "30 in"
... diameter = "0.017 in"
... material = "nylon"
... [[section]]
... length = "22 in"
... diameter = "1X"
... material = "nylon"
... """, practice)

All that is wrong is raised together: where, what was found, what to write instead.

>>> from tagend.cards import Refused
>>> try:
...     read_recipe(b'name = "Short five"', practice)
... except Refused as refused:
...     [fault.where for fault in refused.faults]
['section']

A worksheet is the leader worked out, and what the audit says of it. Lengths are exact fractions of
a millimetre:

>>> from tagend.cards import worksheet
>>> sheet = worksheet(recipe, practice)
>>> [float(piece.cut_mm / 25.4) for piece in sheet.leader.pieces]
[39.0, 28.75]
>>> [joint.knot.name for joint in sheet.leader.joints]
["triple surgeon's"]
>>> [(finding.rule, finding.severity) for finding in sheet.findings]
[('step', 'warning')]

So many of them from the spools on a rack:

>>> from tagend.cards import Order, cut_batch, read_rack
>>> rack = read_rack(b"""
... [[spool]]
... label = "Clear 17"
... material = "nylon"
... diameter = "0.017 in"
... left = "30 yd"
... """, practice)
>>> batch = cut_batch([Order(sheet.leader, 12)], rack)
>>> [(pull.spool.label, float(pull.left_mm / 25.4)) for pull in batch.pulls if pull.spool]
[('Clear 17', 612.0)]
>>> [float(shortage.mm / 25.4) for shortage in batch.shortages]
[345.0]

The text of a label's code, and the recipe that stands in it:

>>> from tagend.cards import read_notation, write_notation
>>> text = write_notation(recipe, practice.knots, practice.materials)
>>> read_notation(text, practice.knots, practice.materials) == recipe
True

A job is what a shop file says of all that is printed. A PDF is its bytes:

>>> from tagend.cards import CardWishes, Shop, cards_pdf, job_of
>>> pdf = cards_pdf(job_of(Shop(language="es")), [sheet], CardWishes(size="A7"))
>>> pdf[:5], len(pdf.sheets)
(b'%PDF-', 1)
'''

from importlib import import_module

TYPE_CHECKING = False  # typing is long to load, and Ctrl-C is met only once this is

if TYPE_CHECKING:
    from tagend.cards.batches.batch import Order as Order
    from tagend.cards.batches.cutting import cut_batch as cut_batch
    from tagend.cards.code.notation import read_notation as read_notation
    from tagend.cards.code.notation import write_notation as write_notation
    from tagend.cards.leader.worksheet import worksheet as worksheet
    from tagend.cards.practice.rack_file import read_rack as read_rack
    from tagend.cards.practice.shop_file import Shop as Shop
    from tagend.cards.practice.shop_file import common_practice as common_practice
    from tagend.cards.practice.shop_file import practice_of as practice_of
    from tagend.cards.practice.shop_file import read_shop as read_shop
    from tagend.cards.printing.cards import CardWishes as CardWishes
    from tagend.cards.printing.cards import cards_pdf as cards_pdf
    from tagend.cards.printing.job import job_of as job_of
    from tagend.cards.printing.labels import LabelWishes as LabelWishes
    from tagend.cards.printing.labels import labels_pdf as labels_pdf
    from tagend.cards.recipe.recipe_file import read_recipe as read_recipe
    from tagend.cards.recipe.recipe_text import recipe_text as recipe_text
    from tagend.layouts.base.faults import Refused as Refused

# Where each of them is made; a test holds that these are the imports above.
_MODULES = {
    "Order": "tagend.cards.batches.batch",
    "cut_batch": "tagend.cards.batches.cutting",
    "read_notation": "tagend.cards.code.notation",
    "write_notation": "tagend.cards.code.notation",
    "worksheet": "tagend.cards.leader.worksheet",
    "read_rack": "tagend.cards.practice.rack_file",
    "Shop": "tagend.cards.practice.shop_file",
    "common_practice": "tagend.cards.practice.shop_file",
    "practice_of": "tagend.cards.practice.shop_file",
    "read_shop": "tagend.cards.practice.shop_file",
    "CardWishes": "tagend.cards.printing.cards",
    "cards_pdf": "tagend.cards.printing.cards",
    "job_of": "tagend.cards.printing.job",
    "LabelWishes": "tagend.cards.printing.labels",
    "labels_pdf": "tagend.cards.printing.labels",
    "read_recipe": "tagend.cards.recipe.recipe_file",
    "recipe_text": "tagend.cards.recipe.recipe_text",
    "Refused": "tagend.layouts.base.faults",
}
__all__ = tuple(_MODULES)


def __getattr__(name: str) -> object:
    """Load what is asked for: a command that needs little of it starts as fast as ever."""
    if name not in _MODULES:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    return getattr(import_module(_MODULES[name]), name)
