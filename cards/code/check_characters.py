"""Check characters: the text of a code in, the two characters that catch a mistyped one out."""

# The alphanumeric mode of a QR code, in the order of its table (ISO/IEC 18004).
CHARACTERS = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:"

# ISO/IEC 7064 MOD 1271-36: as a number to the base 36, text and check together leave 1 over 1271.
MODULUS = 1271
_RADIX = 36
_SIGNS = CHARACTERS[:_RADIX]

# Each character counts as two digits: its place in the table without the space, 00 to 43. So all
# weigh alike, and any one of them replaced, or changed with its neighbour, is always caught.
WEIGHTS = {
    char: place // 10 * _RADIX + place % 10
    for place, char in enumerate(CHARACTERS.replace(" ", ""))
}
STEP = _RADIX * _RADIX % MODULUS  # what one character further left weighs more


def check_characters(text: str) -> str:
    """Return the check characters of a text of capitals; spaces don't count."""
    needed = (1 - _remainder(text) * STEP) % MODULUS
    return _SIGNS[needed // _RADIX] + _SIGNS[needed % _RADIX]


def error(text: str) -> int:
    """Return how far a text is off that ends in its check characters: 0 when they fit.

    The change of any one weight by `d`, `n` characters from the check, alters it by
    `-d * STEP ** (n + 1)`, all modulo 1271. Raises `ValueError` where the check cannot be one.
    """
    check = text[-2:]
    return (1 - _remainder(text[:-2]) * STEP - int(check, _RADIX)) % MODULUS


def _remainder(text: str) -> int:
    remainder = 0
    for char in text:
        if char != " ":
            remainder = (remainder * STEP + WEIGHTS[char]) % MODULUS
    return remainder
