from typing import get_args

import pytest
from cfractions import Fraction

from tagend.cards.practice.knot_file import load_knots
from tagend.cards.practice.materials import (
    Material,
    MaterialKind,
    load_materials,
    materials_with_own,
)
from tagend.layouts.base.faults import Refused

MATERIALS = load_materials()


@pytest.mark.parametrize("material", MATERIALS.rows, ids=lambda material: material.name)
def test_every_material_names_its_source(material: Material) -> None:
    assert material.source
    assert material.density or any("no density" in line for line in material.source)


def test_every_kind_has_a_material() -> None:
    assert {m.kind for m in MATERIALS} == {*get_args(MaterialKind)}


@pytest.mark.parametrize("name", ["7-strand wire", "49-strand wire", "stranded wire"])
def test_stranded_wire_is_not_answered_with_a_single_strand(name: str) -> None:
    assert MATERIALS.find(name).kind == "stranded wire"


def test_no_material_has_the_code_of_a_knot() -> None:
    assert not MATERIALS.codes.keys() & load_knots().codes.keys()


@pytest.mark.parametrize(
    ("written", "name"),
    [("Fluoro", "fluorocarbon"), ("hard-nylon", "hard nylon"), ("MONO", "nylon")],
)
def test_a_material_is_found_however_it_is_written(written: str, name: str) -> None:
    assert MATERIALS.find(written).name == name


def test_a_misspelt_material_is_met_with_the_near_one() -> None:
    with pytest.raises(Refused) as refusal:
        MATERIALS.find("florocarbon")
    assert str(refusal.value) == ("no material is called 'florocarbon'; did you mean fluorocarbon?")


def test_an_own_material_is_found_beside_ours() -> None:
    own = {"code": "SK", "kind": "thread", "density": 1.3}
    assert materials_with_own({"silk": own}).find("silk").kind == "thread"


def test_an_own_modulus_replaces_ours() -> None:
    nylon = materials_with_own({"nylon": {"modulus": [2, 2.5]}}).find("nylon")
    assert nylon.modulus == (Fraction(2), Fraction(5, 2))
    assert nylon.density == MATERIALS.find("nylon").density


def test_broken_own_materials_are_refused_together() -> None:
    own = {
        "nylon": {"modulus": [3, 2]},
        "wire": {"density": "7.9"},
        "silk": {"code": "SK", "kind": "cloth"},
    }
    with pytest.raises(Refused) as refusal:
        materials_with_own(own)
    assert str(refusal.value).splitlines() == [
        "nylon, modulus: this range does not grow; write the lower figure first",
        "wire, density: '7.9' is no likely figure; write a number such as 1.14",
        "silk, kind: 'cloth' is not known; write one of: nylon, fluorocarbon, wire, "
        "stranded wire, thread",
    ]
