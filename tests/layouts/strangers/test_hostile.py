"""A small file that burdens a parser without end is refused in one line, in seconds."""

import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

import pytest

from tagend.fonts import fonts_with
from tagend.layouts.base.faults import Refused
from tagend.layouts.codes.scan import texts_in_pages, texts_in_picture
from tagend.layouts.logo.logo_file import read_logo
from tagend.layouts.pdf.attached import attached
from tagend.layouts.strangers import apart
from tagend.layouts.strangers.unreadable import Unreadable
from tests.layouts.strangers import hostile

LONG = 3 * apart.SECONDS  # a slow machine is not what is tried here

pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="not held to its memory")


@contextmanager
def refused() -> Iterator[None]:
    begun = time.monotonic()
    with pytest.raises((Unreadable, Refused)) as refusal:
        yield
    assert time.monotonic() - begun < LONG
    assert "\n" not in str(refusal.value)


@pytest.mark.parametrize("case", hostile.SVGS)
def test_an_svg_is_refused(case: str) -> None:
    with refused():
        read_logo(hostile.SVGS[case]())


@pytest.mark.parametrize("read", [read_logo, texts_in_pages])
@pytest.mark.parametrize("case", hostile.PAGES)
def test_a_page_is_refused(case: str, read: Callable[[bytes], object]) -> None:
    with refused():
        read(hostile.PAGES[case]())


@pytest.mark.parametrize("case", hostile.CARRYING)
def test_a_pdf_with_files_in_it_is_refused(case: str) -> None:
    with refused():
        attached(hostile.CARRYING[case]())


def test_empty_pages_take_no_longer() -> None:
    begun = time.monotonic()
    with suppress(Unreadable):  # on a slow machine
        assert texts_in_pages(hostile.page(hostile.stream(b""), pages=40)) == ()
    assert time.monotonic() - begun < LONG


def test_a_picture_full_of_finding_marks_is_refused() -> None:
    with refused():
        texts_in_picture(hostile.finders(7000))


@pytest.mark.parametrize(("groups", "end"), [(1, 0x7FFF_FFFF), (1, 50_000_000), (5000, 0x10FFFF)])
def test_a_font_that_claims_all_characters_is_refused(
    groups: int, end: int, tmp_path: Path
) -> None:
    font = hostile.font_of(groups, end, tmp_path)
    with refused():
        fonts_with(font)
