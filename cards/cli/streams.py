"""The standard streams as they were given in; ones that every command can use safely out."""

import os
import sys
from typing import Any, TextIO, cast

# What a terminal would obey (ISO/IEC 6429 controls), or show in another order (Unicode UAX #9).
_OBEYED = (
    *(*range(0x09), *range(0x0B, 0x20), *range(0x7F, 0xA0)),
    *(0x61C, 0x200E, 0x200F, *range(0x2028, 0x202F), *range(0x2066, 0x206A)),
)
_SHOWN = {code: ascii(chr(code))[1:-1] for code in _OBEYED}


def settle() -> None:
    """Open what was closed, and choose how text is written.

    What was closed reads as nothing, and takes nothing; but whoever closes standard error wants no
    words. A program reads UTF-8, whatever the terminal; a terminal that lacks a letter shows
    another for it.
    """
    for number, name, mode in ((0, "stdin", "r"), (1, "stdout", "w"), (2, "stderr", "w")):
        try:
            os.fstat(number)
        except OSError:  # the lowest number that is free is taken, which is this one
            os.open(os.devnull, os.O_WRONLY if number == 2 else os.O_RDONLY)
        if getattr(sys, name) is None:
            setattr(sys, name, os.fdopen(number, mode, encoding="utf-8", closefd=False))
    for name in ("stdout", "stderr"):
        stream = getattr(sys, name)
        terminal = stream.isatty()
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(encoding=None if terminal else "utf-8", errors="replace")
        if (terminal or name == "stderr") and not isinstance(stream, _Unobeyed):
            setattr(sys, name, cast(TextIO, _Unobeyed(stream)))


def unobeyed(text: str) -> str:
    """Return a text in which nothing stands that a terminal would obey, but line breaks."""
    return text.translate(_SHOWN)


class _Unobeyed:
    """A stream that only shows what is written, whoever it comes from."""

    def __init__(self, stream: TextIO) -> None:
        self._stream = stream

    def write(self, text: str) -> int:
        return self._stream.write(unobeyed(text))

    def __getattr__(self, name: str) -> Any:
        if name == "buffer":  # into which click would write past all this
            raise AttributeError(name)
        return getattr(self._stream, name)
