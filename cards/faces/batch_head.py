"""What heads the papers of a batch, besides its leaders."""

from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True, slots=True)
class BatchHead:
    """What a book knows of a batch; of one that is only planned, nothing."""

    number: int | None = None
    day: date | None = None  # on which it is tied
    who: str | None = None  # ties it


NEW = BatchHead()
