"""What heads the papers of a batch, besides its leaders."""

from datetime import date

from msgspec import Struct


class BatchHead(Struct, frozen=True):
    """What a book knows of a batch; of one that is only planned, nothing."""

    number: int | None = None
    day: date | None = None  # on which it is tied
    who: str | None = None  # ties it


NEW = BatchHead()
