import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from msgspec.structs import replace

from tagend.cards.code.check_characters import CHARACTERS, check_characters
from tagend.cards.code.notation import LONGEST
from tagend.layouts.base.faults import Refused
from tests.leaders import PLAIN, SANDBAR_TEXT, checked, read, write

LOOPED = (
    "TAG3:CAFE$1 +BAR:CM/MM/KG:USE GUIDE*S:CUT:TIED 2026-05-31:BUTT *2:"
    "90-95*.58-.30*FC*8.2-S3/BOUGHT/DROP15:"
    "7FT6+1/2IN*4X*%HARD NYLON%*5LB-C/TIPPET:OUT 9M:ROD 9FT:NOTE $U044F/:"
)


def fault(text: str) -> str:
    with pytest.raises(Refused) as refusal:
        read(text)
    (only,) = refusal.value.faults
    return str(only)


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("PLAIN:30*.023*HN:Z9", "character 23: 'Z9' is no field; the fields are: W, USE, TIP"),
        ("PLAIN:30*.023*HN:W8:W9", "character 26: W is written twice; leave one out"),
        ("PLAIN:30*.023*HN:W16", "W, character 24: this is no line weight; write W and 1 to 15"),
        ("PLAIN:30*.023*HN:CUTS", "CUT, character 26: 'S' has no place here"),
        ("PLAIN:30*.023", "section 1, character 19: the first section names no material"),
        ("PLAIN:30.023*HN", "section 1, character 19: 'HN' is no diameter"),
        ("PLAIN:30", "section 1, character 14: '' follows the length; write * and the diameter"),
        ("PLAIN:28-22*.023*HN", "section 1, character 17: 28 in-22 in does not grow"),
        ("PLAIN:300M*.023*HN", "section 1, character 12: '300M' is no likely length"),
        ("PLAIN:30*230THOU*HN", "section 1, character 15: '230THOU' is no likely diameter"),
        ("PLAIN:30*.023*HN*900", "section 1, character 23: '900 lb' is no likely strength"),
        ("PLAIN:30*.023*QQ", "section 1, character 20: no material has the code 'QQ'"),
        ("PLAIN:30*.023*HN-NONE:9*.020", "section 1, character 23: no knot has the code 'NONE'"),
        (
            "PLAIN:30*.023*HN-B",
            "section 1, character 23: 'blood' is for the joint and does not serve here",
        ),
        ("PLAIN:30*.023*HN/DROP6", "section 1, dropper: the last section has no joint"),
        ("PLAIN:30*.023*HN/LOOP", "section 1, character 23: 'LOOP' is no further mark"),
        ("PLAIN:30*.023*HN/BUTT/BUTT", "section 1, character 28: 'BUTT' is no further mark"),
        ("PLAIN:30*.023*HN-%BLO", "section 1, character 23: '%BLO' is no knot"),
        ("PLAIN:BUTT NONE*1:30*.023*HN", "butt, loop: a bare end has no loop"),
        ("PLAIN:30*.023*HN+QQ", "section 1, character 23: no knot has the code 'QQ'"),
        ("PLAIN:30*.023*HN+1", "section 1, character 23: '1' has no place here"),
        ("PLAIN:30*.023*HN//", "section 1, character 24: '' is no further mark"),
        ("PLAIN:TOTAL:61M*.023*HN", "section 1, character 18: '61M' is no likely length"),
        ("PLAIN:BUTT:30*.023*HN", "BUTT, character 16: '' is no knot"),
        ("PLAIN:TIED 2026-02-31:30*.023*HN", "TIED, character 27: this is no date"),
        ("PLAIN:OUT 30FT:30*.023*HN", "OUT, ROD: OUT and ROD stand together"),
        ("PLAIN:N OTE HM:30*.023*HN", "character 12: spaces part the letters of NOTE"),
        ("PLAIN:W8", "there are 0 sections; write 1 to 30"),
        ("PLAIN" + 31 * ":30*.023*HN", "there are 31 sections; write 1 to 30"),
        ("PL+5AIN:30*.023*HN", "name, character 8: '+5' writes nothing; compare it"),
        ("PL$UD800/N:30*.023*HN", "name, character 8: '$UD800/' numbers no character"),
        ("$U202E/N:30*.023*HN", "name: U+202E (right-to-left override) cannot be printed"),
        ("$U0007/N:30*.023*HN", "name: U+0007 (a control character) cannot be printed"),
        (61 * "A" + ":30*.023*HN", "name: this text has 61 characters; write at most 60"),
        (":30*.023*HN", "name: this text is empty; write 1 to 60 characters"),
    ],
)
def test_what_cannot_be_read_is_pointed_at(written: str, said: str) -> None:
    assert fault(checked(written)).startswith(said)


def test_a_newer_version_says_so() -> None:
    assert fault(SANDBAR_TEXT.replace("TAG3", "TAG4")) == (
        "this code is of version 4 of the notation, made by a newer program; "
        "update this one to read it"
    )


@pytest.mark.parametrize("text", ["", "H", "hello", "HTTPS://EXAMPLE.ORG/R/30.023", "0" * LONGEST])
def test_other_texts_are_told_apart(text: str) -> None:
    assert fault(text) == "this is not the text of a code; give one that begins with TAG3:"


def test_a_text_cut_short_is_told() -> None:
    assert fault(SANDBAR_TEXT[:40]) == (
        "the two check characters are missing; give the text to its very end"
    )


def test_a_text_longer_than_any_code_is_refused_unread() -> None:
    assert fault("A" * (LONGEST + 1)) == (
        "this text has 2001 characters; give the text of one code, at most 2000"
    )


def test_a_recipe_longer_than_any_code_is_refused() -> None:
    verbose = replace(PLAIN, use="あ" * 200, note="語+" * 100, name="あ" * 60)
    many = replace(verbose, sections=30 * PLAIN.sections)
    with pytest.raises(Refused, match="characters; shorten its note or use: a code holds"):
        write(many)


def test_foreign_characters_are_named_with_their_place() -> None:
    assert fault("TAG3:CAFÉ") == (
        "character 9: U+00C9 (latin capital letter e with acute) is no character of a code; "
        "write A-Z, 0-9, spaces and $%*+-./: only"
    )


@pytest.mark.parametrize(
    ("right", "wrong", "hint"),
    [
        ("30*23", "3O*23", "section 1, character 36 (O may be 0)"),
        ("24*20*20", "24*20*2O", "section 2, character 56 (O may be 0)"),
        ("12*15*12", "l2*15*12", "section 4, character 67 (L may be 1)"),
        ("SANDBAR", "SANOBAR", "the name, character 9 (O may be D)"),
        ("PL*3/4", "P1*3/4", "the field BUTT, character 29 (1 may be L)"),
        ("W8", "WB", "the field W, character 21 (B may be 8)"),
        ("TAG3:", "TAGZ:", "the beginning, character 4 (Z may be 3)"),
        (":OD", ":OO", "the check characters, character 104 (O may be D)"),
        ("20*17*16", "20*71*16", "section 3, character 61 (71 may be 17)"),
    ],
)
def test_a_single_slip_is_pointed_at(right: str, wrong: str, hint: str) -> None:
    told = fault(SANDBAR_TEXT.replace(right, wrong, 1))
    assert hint in told.partition("; compare it with the label at ")[2].split(" or ")


@given(st.data())
def test_any_single_slip_is_caught(data: st.DataObject) -> None:
    place = data.draw(st.integers(4, len(SANDBAR_TEXT) - 1))
    char = data.draw(st.sampled_from(CHARACTERS.replace(" ", "")))
    slipped = SANDBAR_TEXT[:place] + char + SANDBAR_TEXT[place + 1 :]
    if SANDBAR_TEXT[place] not in (" ", char):
        fault(slipped)


def test_every_lost_character_of_a_sample_is_caught() -> None:
    for place, char in enumerate(SANDBAR_TEXT):
        if char != " ":
            fault(SANDBAR_TEXT[:place] + SANDBAR_TEXT[place + 1 :])


def test_more_than_one_slip_is_refused_without_a_guess() -> None:
    assert fault(SANDBAR_TEXT.replace("30*", "31*").replace("W8", "W9")) == (
        "the text and the two check characters at its end do not agree; "
        "compare it with the label, character by character"
    )


def _mutated(data: st.DataObject, text: str) -> str:
    for _ in range(data.draw(st.integers(1, 4))):
        start = data.draw(st.integers(0, len(text)))
        end = start + data.draw(st.integers(0, 3))
        text = text[:start] + data.draw(st.text(CHARACTERS, max_size=3)) + text[end:]
    return text[: data.draw(st.integers(0, len(text)))] if data.draw(st.booleans()) else text


def refusal_of(text: str) -> Refused | None:
    try:
        recipe = read(text)
    except Refused as refusal:
        return refusal
    assert read(write(recipe)) == recipe
    return None


def assert_read_or_refused(text: str) -> None:
    if refusal := refusal_of(text):
        assert all(str(fault).isprintable() for fault in refusal.faults)
        assert 10 < len(str(refusal)) < 600


@given(st.binary(max_size=300).map(lambda raw: raw.decode("latin-1")))
@example("A" * 100_000)
@example("TAG3:" + ":" * 100_000)
def test_any_bytes_are_read_or_refused(text: str) -> None:
    assert_read_or_refused(text)


def test_a_text_with_every_field_is_read() -> None:
    assert refusal_of(LOOPED + check_characters(LOOPED)) is None


@given(st.data(), st.sampled_from([SANDBAR_TEXT, LOOPED + check_characters(LOOPED)]))
def test_changed_texts_are_read_or_refused(data: st.DataObject, text: str) -> None:
    changed = _mutated(data, text)
    assert_read_or_refused(changed)
    body = changed[:-2]
    assert_read_or_refused(body + check_characters(body))


@given(st.lists(st.text(CHARACTERS.replace(":", ""), max_size=20), max_size=12))
def test_any_fields_with_a_right_check_are_read_or_refused(written: list[str]) -> None:
    assert_read_or_refused(checked(":".join(written)))
