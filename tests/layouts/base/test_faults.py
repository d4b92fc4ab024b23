import pytest

from tagend.layouts.base.faults import Fault, Refused, noting, refuse_any, refused, under


def test_a_fault_is_one_line_with_its_place_and_what_to_write() -> None:
    assert str(Fault("section 2, knot", "there is none", "write one")) == (
        "section 2, knot: there is none; write one"
    )
    assert str(Fault("", "there is none", "")) == "there is none"


def test_places_are_written_from_the_outermost() -> None:
    with pytest.raises(Refused) as caught, under("shop.toml", ": "), under("stock"), under("A4"):
        raise refused("nothing is written", "write its size", "size")
    assert caught.value.faults[0].where == "shop.toml: stock, A4, size"


def test_faults_of_several_steps_are_told_together() -> None:
    faults: list[Fault] = []
    for place in ("first", "second", "third"):
        with noting(faults), under(place):
            if place != "second":
                raise refused("no", "")
    with pytest.raises(Refused, match=r"^first: no\nthird: no$"):
        refuse_any(faults)


def test_no_fault_refuses_nothing() -> None:
    refuse_any(())


def test_the_first_twenty_faults_are_told_and_how_many_more_there_are() -> None:
    refusal = Refused(*(Fault(f"line {k}", "wrong", "mend it") for k in range(90_000)))
    *first, more = str(refusal).splitlines()
    assert len(first) == 20
    assert more == "and 89,980 more"
    assert str(Refused(*refusal.faults[:20])).splitlines() == first
