from collections.abc import Callable

import pytest
from cfractions import Fraction
from hypothesis import example, given

from tagend.cards.base.units import (
    Diameter,
    Length,
    Quantity,
    Span,
    Strength,
    parse_diameter,
    parse_length,
    parse_line_length,
    parse_span,
    parse_strength,
)
from tagend.layouts.base.faults import Refused
from tests.strategies import diameters, lengths, spans, strengths

LENGTH_HINT = 'write a length with its unit, such as "30 in", "7 1/2 ft" or "76 cm"'
DIAMETER_HINT = 'write a diameter with its unit, such as "0.023 in", "23 thou", "0.58 mm" or "4X"'


def refusal(parse: Callable[[object], object], written: object) -> str:
    with pytest.raises(Refused) as caught:
        parse(written)
    return str(caught.value)


# ---- lengths ---------------------------------------------------------------------------------

SEVEN_AND_A_HALF_FEET = Fraction(2286)  # 7.5 x 304.8 mm


@pytest.mark.parametrize(
    ("written", "mm"),
    [
        ("7 1/2 ft", SEVEN_AND_A_HALF_FEET),
        ("7-1/2 ft", SEVEN_AND_A_HALF_FEET),
        ("7.5 ft", SEVEN_AND_A_HALF_FEET),
        ("7½ ft", SEVEN_AND_A_HALF_FEET),
        ("7 ½ ft", SEVEN_AND_A_HALF_FEET),
        ("15/2 feet", SEVEN_AND_A_HALF_FEET),
        ("7' 6\"", SEVEN_AND_A_HALF_FEET),
        ("7'6\"", SEVEN_AND_A_HALF_FEET),
        ("7′ 6″", SEVEN_AND_A_HALF_FEET),
        ("7’ 6”", SEVEN_AND_A_HALF_FEET),
        ("7 ft 6 in", SEVEN_AND_A_HALF_FEET),
        ("7 ft. 6 in.", SEVEN_AND_A_HALF_FEET),
        ("7ft6in", SEVEN_AND_A_HALF_FEET),
        ("90 inches", SEVEN_AND_A_HALF_FEET),
        ("90\u00a0in", SEVEN_AND_A_HALF_FEET),
        ("９０ ＩＮ", SEVEN_AND_A_HALF_FEET),
        ("2 1/2 yd", SEVEN_AND_A_HALF_FEET),
        ("3/4 in", Fraction("19.05")),
        ("¾ in", Fraction("19.05")),
        ("¾″", Fraction("19.05")),
        ("7⁄8 in", Fraction("22.225")),
        ("⅞ in", Fraction("22.225")),
        ("1-1/2 in", Fraction("38.1")),
        ("1‑1/2 in", Fraction("38.1")),
        ("1½ in", Fraction("38.1")),
        ("3/8 in", Fraction(381, 40)),  # 9.525 mm, exactly
        (".5 in", Fraction("12.7")),
        ("5. in", Fraction(127)),
        ("  30   in ", Fraction(762)),
        ("30in", Fraction(762)),
        ("30 IN", Fraction(762)),
        ("7 ft 3/4 in", Fraction("2152.65")),  # 84.75 x 25.4 mm
        ("76 cm", Fraction(760)),
        ("765 mm", Fraction(765)),
        ("765 millimetres", Fraction(765)),
        ("2.7 m", Fraction(2700)),
        ("1 meter", Fraction(1000)),
    ],
)
def test_a_length_is_exact_however_it_is_spelled(written: str, mm: Fraction) -> None:
    assert parse_length(written).mm == mm


@pytest.mark.parametrize(
    ("written", "plain", "unit"),
    [
        ("7½ ft", "7 1/2 ft", "ft"),
        ("7-1/2 feet", "7 1/2 ft", "ft"),
        ("7′ 6″", "7 ft 6 in", "in"),
        ("  .5  inch", "0.5 in", "in"),
        ("30.0 CM", "30.0 cm", "cm"),
        ("5. mm", "5 mm", "mm"),
        ("７６ cm", "76 cm", "cm"),
    ],
)
def test_a_length_comes_back_as_written_and_in_plain_ascii(
    written: str, plain: str, unit: str
) -> None:
    length = parse_length(written)
    assert str(length) == written.strip()
    assert (length.plain, length.unit) == (plain, unit)


@pytest.mark.parametrize("written", [30, 30.5, 0, -3, float("nan"), float("inf")])
def test_a_bare_number_is_refused(written: float) -> None:
    assert refusal(parse_length, written) == f"{written} has no unit; {LENGTH_HINT}"


@pytest.mark.parametrize("written", ["30", "7 1/2", ".5", "¾"])
def test_a_number_alone_in_quotes_is_refused(written: str) -> None:
    assert refusal(parse_length, written) == f"{written!r} has no unit; {LENGTH_HINT}"


@pytest.mark.parametrize("written", [None, True, ["30 in"], {"in": 30}])
def test_what_is_no_text_is_refused(written: object) -> None:
    assert refusal(parse_length, written) == f"this is not a text in quotes; {LENGTH_HINT}"


@pytest.mark.parametrize("written", ["1,5 m", "1,000 mm", "7,5 ft"])
def test_a_comma_is_refused_since_it_means_two_things(written: str) -> None:
    assert refusal(parse_length, written) == (
        f"{written!r} has a comma; write the decimal mark as a point"
    )


@pytest.mark.parametrize("written", ["-30 in", "−30 in", "-1-1/2 in"])
def test_a_negative_length_is_refused(written: str) -> None:
    assert refusal(parse_length, written) == f"{written!r} is negative; {LENGTH_HINT}"


@pytest.mark.parametrize("written", ["0 in", "1/99 in", "0.9 mm", "61 m", "9999999 yd", "200 ft"])
def test_an_absurd_length_is_refused_with_bounds_in_its_own_unit(written: str) -> None:
    told = refusal(parse_length, written)
    assert told.startswith(f"{written!r} is no likely length; write a length from ")
    low, to, high, unit = told.rsplit(" ", 4)[1:]
    assert (to, unit) == ("to", written.split()[-1])
    for bound, mm in ((low, 1), (high, 60_000)):  # what is told can be written, and is all but it
        assert parse_length(f"{bound} {unit}").mm == pytest.approx(mm, rel=0.1)


@pytest.mark.parametrize("written", ["1 mm", "60 m", "60000 mm"])
def test_the_bounds_themselves_are_lengths(written: str) -> None:
    assert parse_length(written).plain == written


def test_line_on_a_spool_may_be_longer_than_a_leader() -> None:
    assert parse_line_length("1000 yd").mm == 914_400
    assert refusal(parse_line_length, "11000 m") == (
        "'11000 m' is no likely length; write a length from 0.001 to 10000 m"
    )


@pytest.mark.parametrize("written", ["12345678 mm", "0.00000001 in", "1/12345678 in"])
def test_too_many_digits_are_refused(written: str) -> None:
    assert refusal(parse_length, written) == (
        f"{written!r} has too many digits; write at most 7 digits"
    )


def test_a_fraction_over_nought_is_refused() -> None:
    assert refusal(parse_length, "3/0 in") == (
        "'3/0 in' divides by nought; write a fraction such as 3/4"
    )


@pytest.mark.parametrize(
    ("written", "unit"), [("30 furlongs", "furlongs"), ("30 lb", "lb"), ("30 thou", "thou")]
)
def test_an_unknown_unit_is_met_with_the_known_ones(written: str, unit: str) -> None:
    assert refusal(parse_length, written) == (
        f"{written!r}: {unit!r} is not a unit for this; use one of: in, ft, yd, mm, cm, m"
    )


@pytest.mark.parametrize("written", ["6 in 7 ft", "2 m 30 cm", "30 in 76 cm", "1 ft 2 ft"])
def test_two_lengths_in_one_are_refused(written: str) -> None:
    assert refusal(parse_length, written) == (
        f"{written!r} gives more than one length; "
        "write one number and unit (feet and inches may stand together)"
    )


@pytest.mark.parametrize(
    "written",
    ["", "   ", "in", "about 30 in", "30 in!", "7'6", "22-28 in", "30² in", "٣٠ in", "1 2 3/4 in"],
)
def test_what_cannot_be_read_is_refused(written: str) -> None:
    assert refusal(parse_length, written) == f"{written.strip()!r} cannot be read; {LENGTH_HINT}"


def test_a_long_text_is_quoted_in_part() -> None:
    assert refusal(parse_length, "1" * 61) == (
        f"'11111111111111111111'… is too long for a quantity; {LENGTH_HINT}"
    )


@given(lengths)
def test_a_length_comes_back_from_its_text(length: Length) -> None:
    assert parse_length(str(length)) == length
    assert str(parse_length(str(length))) == str(length)


@given(lengths)
def test_a_length_is_the_same_from_its_plain_spelling(length: Length) -> None:
    assert length.plain.isascii()
    assert parse_length(length.plain) == length


# ---- ranges ----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("written", "low", "high", "plain"),
    [
        ("22 to 28 in", "22 in", "28 in", "22 to 28 in"),
        ("22 in to 28 in", "22 in", "28 in", "22 to 28 in"),
        ("22 IN  TO 28 IN", "22 in", "28 in", "22 to 28 in"),
        ("1½ to 2 ft", "1 1/2 ft", "2 ft", "1 1/2 to 2 ft"),
        ("50 cm to 1 m", "50 cm", "1 m", "50 cm to 1 m"),
        ("7 ft to 8 ft 6 in", "7 ft", "8 ft 6 in", "7 ft to 8 ft 6 in"),
        ("7 ft 6 in to 8 ft 6 in", "7 ft 6 in", "8 ft 6 in", "7 ft 6 in to 8 ft 6 in"),
        ("30 in", "30 in", "30 in", "30 in"),
    ],
)
def test_a_range_has_a_low_and_a_high_end(written: str, low: str, high: str, plain: str) -> None:
    span = parse_span(written)
    assert (span.low.plain, span.high.plain, span.plain) == (low, high, plain)
    assert str(span) == written


@pytest.mark.parametrize("written", ["28 to 22 in", "28 to 28 in", "1 m to 50 cm"])
def test_a_range_grows(written: str) -> None:
    assert refusal(parse_span, written) == (
        f"{written!r} does not grow; write the shorter length first"
    )


@pytest.mark.parametrize(
    ("written", "message"),
    [
        ("22 to 28", f"'28' has no unit; {LENGTH_HINT}"),
        ("22 in to 28", f"'28' has no unit; {LENGTH_HINT}"),
        (" to 28 in", f"'to 28 in' cannot be read; {LENGTH_HINT}"),
        (
            "22 to 24 to 28 in",
            "'24 to 28 in': 'to' is not a unit for this; use one of: in, ft, yd, mm, cm, m",
        ),
        ("-2 to 28 in", f"'-2' is negative; {LENGTH_HINT}"),
        (22, f"22 has no unit; {LENGTH_HINT}"),
    ],
)
def test_a_broken_range_is_refused(written: object, message: str) -> None:
    assert refusal(parse_span, written) == message


@given(spans)
def test_a_range_comes_back_from_its_text_and_its_plain_spelling(span: Span) -> None:
    assert parse_span(str(span)) == span
    assert parse_span(span.plain) == span


# ---- diameters -------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("written", "thou", "plain", "unit"),
    [
        ("0.023 in", Fraction(23), "0.023 in", "in"),
        (".023 in", Fraction(23), "0.023 in", "in"),
        ('.023"', Fraction(23), "0.023 in", "in"),
        ("23 thou", Fraction(23), "23 thou", "thou"),
        ("7 1/2 thou", Fraction(15, 2), "7 1/2 thou", "thou"),
        ("1/64 in", Fraction(1000, 64), "1/64 in", "in"),
        ("0.58mm", Fraction(580, 1) / Fraction("25.4"), "0.58 mm", "mm"),
        ("4X", Fraction(7), "4X", "X"),
        ("4x", Fraction(7), "4X", "X"),
        ("4 X", Fraction(7), "4X", "X"),
    ],
)
def test_a_diameter_is_exact_in_every_unit(
    written: str, thou: Fraction, plain: str, unit: str
) -> None:
    diameter = parse_diameter(written)
    assert (diameter.thou, diameter.plain, diameter.unit) == (thou, plain, unit)
    assert str(diameter) == written


@pytest.mark.parametrize("halves", range(17))
def test_x_sizes_run_from_0x_to_8x_in_halves(halves: int) -> None:
    x = Fraction(halves, 2)
    written = f"{halves // 2}X" if halves % 2 == 0 else f"{halves // 2}.5X"
    assert parse_diameter(written).thou == 11 - x


@pytest.mark.parametrize(
    "written", ["01X", "02X", "0/2X", "-1X", "9X", "10X", "8.5X", "3.3X", "X4", "x 4", "4 1/2X"]
)
def test_other_x_sizes_are_refused_with_the_reason(written: str) -> None:
    assert refusal(parse_diameter, written) == (
        f"{written!r} is not a size from 0X to 8X, and above 0X the trade writes two ways; "
        'write the diameter itself, such as "0.013 in"'
    )


def test_an_x_size_is_no_other_diameter_of_the_same_amount() -> None:
    assert parse_diameter("4X").mm == parse_diameter("0.007 in").mm
    assert parse_diameter("4X") != parse_diameter("0.007 in")


@pytest.mark.parametrize(
    ("written", "message"),
    [
        (0.023, f"0.023 has no unit; {DIAMETER_HINT}"),
        ("0.023", f"'0.023' has no unit; {DIAMETER_HINT}"),
        (
            "23 mm",
            "'23 mm' is no likely diameter; write a diameter from 0.03 to 3 mm",
        ),
        (
            "0.02 mm",
            "'0.02 mm' is no likely diameter; write a diameter from 0.03 to 3 mm",
        ),
        ("0,58 mm", "'0,58 mm' has a comma; write the decimal mark as a point"),
        (
            "0.1 cm",
            "'0.1 cm': 'cm' is not a unit for this; use one of: in, thou, mm",
        ),
        (
            "0.02 in 0.5 mm",
            "'0.02 in 0.5 mm' gives more than one diameter; "
            "write one number and unit (feet and inches may stand together)",
        ),
        ("", f"'' cannot be read; {DIAMETER_HINT}"),
    ],
)
def test_a_broken_diameter_is_refused(written: object, message: str) -> None:
    assert refusal(parse_diameter, written) == message


@given(diameters)
@example(parse_diameter("4 X"))
def test_a_diameter_comes_back_from_its_text_and_its_plain_spelling(diameter: Diameter) -> None:
    assert parse_diameter(str(diameter)) == diameter
    assert parse_diameter(diameter.plain) == diameter


# ---- strengths -------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("written", "kg", "plain", "unit"),
    [
        ("25 lb", Fraction(45359237, 4_000_000), "25 lb", "lb"),  # 25 x 0.45359237
        ("25lbs", Fraction(45359237, 4_000_000), "25 lb", "lb"),
        ("25 pounds", Fraction(45359237, 4_000_000), "25 lb", "lb"),
        ("8.5 lb.", Fraction(17, 2) * Fraction("0.45359237"), "8.5 lb", "lb"),
        ("11.3 kg", Fraction("11.3"), "11.3 kg", "kg"),
    ],
)
def test_a_strength_is_exact_in_pounds_and_kilograms(
    written: str, kg: Fraction, plain: str, unit: str
) -> None:
    strength = parse_strength(written)
    assert (strength.kg, strength.plain, strength.unit) == (kg, plain, unit)
    assert str(strength) == written


@pytest.mark.parametrize(
    ("written", "message"),
    [
        (25, '25 has no unit; write a strength with its unit, such as "25 lb" or "11.3 kg"'),
        ("25 g", "'25 g': 'g' is not a unit for this; use one of: lb, kg"),
        ("600 lb", "'600 lb' is no likely strength; write a strength from 0.23 to 551 lb"),
        ("0 lb", "'0 lb' is no likely strength; write a strength from 0.23 to 551 lb"),
    ],
)
def test_a_broken_strength_is_refused(written: object, message: str) -> None:
    assert refusal(parse_strength, written) == message


@given(strengths)
def test_a_strength_comes_back_from_its_text_and_its_plain_spelling(strength: Strength) -> None:
    assert parse_strength(str(strength)) == strength
    assert parse_strength(strength.plain) == strength


def test_quantities_are_equal_by_amount_and_plain_spelling() -> None:
    assert parse_length("7½ ft") == parse_length("7 1/2 feet")
    assert parse_length("7 1/2 ft") != parse_length("90 in")
    assert len({parse_length("7½ ft"), parse_length("7 1/2 feet"), parse_length("90 in")}) == 2
    assert isinstance(parse_length("90 in"), Quantity)
