"""Slips of the pen: a text that its check characters don't fit in, what may be meant out."""

from collections.abc import Iterator

from msgspec import Struct

from tagend.cards.code.check_characters import MODULUS, STEP, WEIGHTS, check_characters, error

_LOOK_ALIKES = ("0OQD", "1IL", "5S", "8B", "2Z", "6G", ".:")
_CHAR = {weight: char for char, weight in WEIGHTS.items()}
_BACK = pow(STEP, -1, MODULUS)


class Correction(Struct, frozen=True):
    """One slip put right: `meant` for `found`; `place` counts from 0 and leaves spaces out."""

    place: int
    found: str
    meant: str

    def applied(self, text: str) -> str:
        """Return the text, which may have spaces, with the slip put right."""
        chars = list(text)
        places = [place for place, char in enumerate(text) if char != " "]
        for place, char in zip(places[self.place :], self.meant, strict=False):
            chars[place] = char
        return "".join(chars)


def corrections(text: str) -> list[Correction]:
    """Return every single slip that explains why `text`, without spaces, misses its check.

    First characters that look alike, then neighbours changed, then any one character. Fewer
    neighbours than characters fit by chance, so one that fits is likelier meant.
    """
    return sorted((*_replaced(text), *_swapped(text), *_mischecked(text)), key=_unlikelihood)


def _replaced(text: str) -> Iterator[Correction]:
    """Yield each other character that makes up for the error where it stands."""
    needed = error(text)
    for place in range(len(text) - 3, -1, -1):
        needed = needed * _BACK % MODULUS
        meant = _CHAR.get((WEIGHTS[text[place]] + needed) % MODULUS)
        if meant is not None:
            yield Correction(place, text[place], meant)


def _swapped(text: str) -> Iterator[Correction]:
    """Yield each pair of neighbours that makes up for the error the other way round."""
    needed = error(text)
    for place in range(len(text) - 4, -1, -1):
        needed = needed * _BACK % MODULUS
        pair = text[place : place + 2]
        gained = (WEIGHTS[pair[1]] - WEIGHTS[pair[0]]) * (STEP - 1)
        if (gained - needed) % MODULUS == 0:
            yield Correction(place, pair, pair[::-1])


def _mischecked(text: str) -> Iterator[Correction]:
    """Yield what the check itself may be, where one slip in it explains the error."""
    first, check = len(text) - 2, text[-2:]
    meant = check_characters(text[:-2])
    if check == meant[::-1]:
        yield Correction(first, check, meant)
    elif check[1] == meant[1]:
        yield Correction(first, check[0], meant[0])
    elif check[0] == meant[0]:
        yield Correction(first + 1, check[1], meant[1])


def _unlikelihood(correction: Correction) -> int:
    if len(correction.found) == 2:
        return 1
    pair = {correction.found, correction.meant}
    return 0 if any(pair <= set(row) for row in _LOOK_ALIKES) else 2
