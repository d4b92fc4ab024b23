"""The machine's clock: nothing in; the moment and the day where this machine is, out.

Only the two ends, the commands and the desk, may look at it.
"""

from datetime import UTC, date, datetime


def now() -> str:
    """Return the moment to a second, with the zone, as ISO 8601 has it."""
    return _here().isoformat(timespec="seconds")


def today() -> date:
    """Return the day."""
    return _here().date()


def _here() -> datetime:
    return datetime.now(UTC).astimezone()
