"""Text of any words, size and width stays in its box, also as the finished page has it."""

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from tagend.fonts import ASCENT, DESCENT, OURS, Chain
from tagend.layouts.paper.face import MM, Face, TextRun
from tagend.layouts.paper.text import TooWide, break_lines, fit_size
from tagend.layouts.pdf.pdf import write_pdf
from tagend.layouts.sheets.ink import ink
from tagend.layouts.sheets.sheet import Placed, Sheet
from tests.layouts.drawn import page_image, text

LEFT, TOP = 40.0, 30.0
LEADING = 1.25

ANY = (
    st.lists(
        st.text("abgjpqyÅÉéñßŁžЖщΩ0123456789½⅞′″×–-/.,()\u00a0", max_size=9)
        | st.sampled_from(["3/4 in", "22 to 28 in", "1 1/2"]),
        min_size=1,
        max_size=12,
    )
    .map(" ".join)
    .filter(lambda written: written.strip() != "")
)
FONTS: st.SearchStrategy[Chain] = st.sampled_from((OURS.medium, OURS.bold))


def in_box(words: str, fonts: Chain, size: float, width: float) -> tuple[list[TextRun], float]:
    """Return the runs of the text in lines from LEFT, TOP, and where the box ends below."""
    runs: list[TextRun] = []
    y = TOP
    for line in break_lines(words, fonts, size, width):
        runs += line.at(LEFT, y + ASCENT * size)
        y += LEADING * size
    return runs, y + (ASCENT + DESCENT - LEADING) * size


@given(words=ANY, fonts=FONTS, size=st.floats(7.5, 30), width=st.floats(30, 500))
def test_every_run_stands_inside_the_box(
    words: str, fonts: Chain, size: float, width: float
) -> None:
    try:
        runs, bottom = in_box(words, fonts, size, width)
    except TooWide:
        assume(False)
    for run in runs:
        box = ink([run])
        assert box is not None
        assert box[0] >= LEFT - 1e-6
        assert box[2] <= LEFT + width + 0.01 * MM + 1e-4
        assert box[1] >= TOP
        assert box[3] <= bottom + 1e-6


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.filter_too_much])
@given(words=ANY, fonts=FONTS, size=st.floats(7.5, 24), width=st.floats(60, 400))
def test_no_ink_of_the_rendered_page_lies_outside_the_box(
    words: str, fonts: Chain, size: float, width: float
) -> None:
    try:
        runs, bottom = in_box(words, fonts, size, width)
    except TooWide:
        assume(False)
    page = Sheet(500, bottom + 40, (Placed(Face("face", 500, bottom + 40, tuple(runs)), 0, 0),))
    pdf = write_pdf([page], title="", creator="")
    image = page_image(pdf, 144).point(lambda value: 255 * (value < 128))
    box = image.getbbox()
    if box is None:  # nothing but spaces
        return
    left, top, right, end = (edge / 2 for edge in box)
    # A side bearing may be below 0: j hangs to the left by up to 0.06 em.
    assert left >= LEFT - 0.08 * size
    assert right <= LEFT + width + 0.08 * size
    assert top >= TOP - 0.5
    assert end <= bottom + 0.5


@given(words=ANY, width=st.floats(60, 400), lines=st.integers(1, 5))
def test_a_size_that_fits_keeps_to_width_and_lines(words: str, width: float, lines: int) -> None:
    size = fit_size(words, OURS.medium, width, 20, 7.5, lines)
    if size is None:
        return
    assert 7.5 <= size <= 20
    runs, _ = in_box(words, OURS.medium, size, width)
    assert len({run.y for run in runs}) <= lines
    assert max((run.x + run.width for run in runs), default=0) <= LEFT + width + 0.01 * MM + 1e-4


@pytest.mark.parametrize("size", [7.5, 9, 14])
def test_words_of_two_scripts_and_fractions_are_read_back_whole(size: float) -> None:
    runs, bottom = in_box("Жук 1 1/2 in Łódź 5/16", OURS.medium, size, 400)
    page = Sheet(500, bottom, (Placed(Face("face", 500, bottom, tuple(runs)), 0, 0),))
    read = text(write_pdf([page], title="", creator=""))
    assert "".join(read.split()) == "Жук11/2inŁódź5/16"
