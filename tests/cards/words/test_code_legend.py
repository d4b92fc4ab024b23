from tagend.cards.words.code_legend import legend
from tagend.cards.words.language import ENGLISH
from tests.leaders import PLAIN, SANDBAR


def test_a_legend_says_how_a_section_is_written_in_few_lines() -> None:
    lines = list(legend(SANDBAR, ENGLISH))
    assert len(lines) <= 4
    order = [lines[1].index(word) for word in ("length", "diameter", "strength", "knot")]
    assert order == sorted(order)


def test_every_code_of_the_text_is_explained() -> None:
    *_, codes, _ = legend(SANDBAR, ENGLISH)
    for code in ("HN hard nylon", "FC fluorocarbon", "B blood", "S3 triple surgeon's",
                 "NS non-slip loop", "PL perfection loop"):  # fmt: skip
        assert code in codes


def test_what_is_not_in_the_text_is_not_explained() -> None:
    assert "fluorocarbon" not in " ".join(legend(PLAIN, ENGLISH))
