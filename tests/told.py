"""What faces and printing take, in short: leaders as they are told, a scale of type, a job."""

from collections.abc import Mapping

from tagend.cards.faces.block import Scale
from tagend.cards.leader.leader import Leader
from tagend.cards.practice.shop_file import Shop
from tagend.cards.printing.job import Job, job_of
from tagend.cards.words.language import ENGLISH, Wording
from tagend.cards.words.leader_words import Told
from tagend.fonts import OURS

JOB: Job = job_of(Shop())


def told(
    leader: Leader, wording: Wording = ENGLISH, spools: Mapping[int, str] | None = None
) -> Told:
    """Return a leader in which nothing was found, to be told."""
    return Told(leader, wording, spools or {})


def scale(factor: float = 1.0) -> Scale:
    return Scale(factor, OURS)
