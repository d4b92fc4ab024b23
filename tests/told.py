"""What faces and printing take, in short: leaders as they are told, a scale of type, a job."""

from collections.abc import Mapping

from tagend.cards.faces.block import Scale
from tagend.cards.leader.leader import Leader
from tagend.cards.leader.said import Said
from tagend.cards.practice.shop_file import Shop
from tagend.cards.printing.job import Job, job_of
from tagend.cards.words.language import ENGLISH, Wording
from tagend.cards.words.leader_words import Told
from tagend.cards.words.said_words import in_words
from tagend.fonts import OURS
from tests.written import leader, recipe, section

JOB: Job = job_of(Shop())


def told(of: Leader, wording: Wording = ENGLISH, spools: Mapping[int, str] | None = None) -> Told:
    """Return a leader in which nothing was found, to be told."""
    return Told(of, wording, spools or {})


def in_english(says: Said | None, of: Leader | None = None) -> str:
    """Return what is said of a leader, a fact or a reason, in English; of none, nothing."""
    plain = of or leader(recipe(section("9 ft", "4X")))
    return in_words(says, told(plain)) if says else ""


def scale(factor: float = 1.0) -> Scale:
    return Scale(factor, OURS)
