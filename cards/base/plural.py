"""How many of a thing, in English for the terminal: a number and a word in, `2 knots` out."""


def counted(count: int, word: str) -> str:
    """Return the number with the word, which takes an s unless there is one."""
    return f"{count} {word}" if count == 1 else f"{count} {word}s"
