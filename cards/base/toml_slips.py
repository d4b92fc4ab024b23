"""What a hand most likely did where TOML cannot be read: the text and its error in, a fault out."""

import re

import tomli

from tagend.layouts.base.faults import Fault

_OTHER = 'write keys as name = "text", and headings as [butt] or [[section]]'

_KEY = r"^\s*(?P<key>[\w-]+)\s*"
_TEXT = "write one text, without such a quote in it"
# By what the line looks like, the first that fits: what is said of it, and what to write instead.
_SLIPS = (
    ("[“”„«»‘’]", "curly quotes", "write straight ones, \" or '"),
    (r"\"[^\"]*\\", "a back slash between quotes", "write / for it, or use 'single quotes'"),
    (
        r"^\s*\[[^\]]*$|^\s*\[\[[^\]]*\]$",
        "a heading that is not closed",
        "write [butt] or [[section]]",
    ),
    (r"^\s*\[", "a heading that is there already", "of several each is written as [[section]]"),
    (rf"{_KEY}:", "a colon behind {key}", "write {key} = instead"),
    (r"^\s*(?P<key>\w+(?: +\w+)+)\s*=", "{key} is more than one word", "join them with _"),
    (rf"{_KEY}=\s*(?:#.*)?$", "nothing stands behind {key} =", "write a text in quotes there"),
    (
        rf"{_KEY}=\s*(?P<value>[^\s\"'\[{{][^#\"]*?)\s*(?:#.*)?$",
        "a text without quotes",
        'write {key} = "{value}"',
    ),
    (rf"{_KEY}=\s*(?P<value>[\d.][\d./ ]*\")", "a text without quotes", "write {key} = '{value}'"),
    (rf"{_KEY}=\s*([\"'])(?!.*\2)", "a text whose quotes are not closed", "close it as it begins"),
    (rf"{_KEY}=\s*[\"']", "something stands behind a text in quotes", _TEXT),
)


def slip(text: str, error: tomli.TOMLDecodeError) -> Fault:
    """Return what to say of a text that is no TOML."""
    says, _, at = str(error).removesuffix(")").rpartition(" (at ")
    number = re.match(r"line (\d+)", at)
    line = text.split("\n")[int(number[1]) - 1] if number else ""
    if "overwrite" in says:
        return Fault(at, "this key is there already", "keep one of the two")
    for pattern, found, instead in () if "Unclosed" in says else _SLIPS:
        if match := re.search(pattern, line):
            words = match.groupdict()
            return Fault(at.partition(",")[0], found.format(**words), instead.format(**words))
    return Fault(at, says[:1].lower() + says[1:], _OTHER)
