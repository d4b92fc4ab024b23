"""The clock: what day it is for the person at the bench. Nothing but a command may look at it."""

from datetime import UTC, date, datetime


def today() -> date:
    """Return the day where this computer is."""
    return datetime.now(UTC).astimezone().date()
