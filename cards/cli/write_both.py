"""Two files written both or neither: names and bytes in; a failure leaves what was there."""

from pathlib import Path

from tagend.cards.cli.files import read_bytes, write_whole


def bytes_of(name: str) -> bytes | None:
    """Return what a file holds, or None where there is none yet."""
    return read_bytes(name) if Path(name).exists() else None


def write_both(first: str, first_data: bytes, second: str, second_data: bytes) -> None:
    """Write two files whole. Raises `Refused` where one cannot be, with both as they were."""
    was = bytes_of(first)
    write_whole(first, first_data)
    try:
        write_whole(second, second_data)
    except BaseException:
        if was is None:
            Path(first).unlink()
        else:
            write_whole(first, was)
        raise
