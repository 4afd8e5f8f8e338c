from __future__ import annotations

from dataclasses import replace

import pytest

from entremetry.adapt.proportion import foot_area, in_proportion
from entremetry.dessert.placement import BasePlacement, InsertPlacement
from entremetry.dessert.reckoning import Reckoning, reckon
from entremetry.kitchen.mould import mould
from entremetry.kitchen.mould_document import MouldDocument
from entremetry.kitchen.shape_document import Ellipsoid, Hemisphere, Measured
from entremetry.store.demo import demo_texts
from entremetry.store.shelf import no_mesh
from entremetry.usecases.batch import reckoned, surroundings

HEMISPHERE = {"kind": "hemisphere", "diameter": "70 mm"}
CYLINDER = {"kind": "cylinder", "diameter": "60 mm", "height": "40 mm"}
OTHERS = [
    {"kind": "hemisphere", "diameter": "95 mm"},
    CYLINDER,
    {"kind": "cone", "diameter": "80 mm", "base_diameter": "45 mm", "height": "55 mm"},
    {"kind": "box", "length": "180 mm", "width": "60 mm", "height": "50 mm"},
    {"kind": "log", "length": "250 mm", "width": "80 mm"},
    {"kind": "measured", "holds": "75 ml", "like": CYLINDER},
]


@pytest.fixture(scope="module")
def dome() -> Reckoning:
    return reckoned(
        demo_texts()["blackcurrant-vanilla-dome"], "dome", surroundings(None, "kitchen")
    )


def moved(reckoning: Reckoning, shape: dict[str, object]) -> Reckoning:
    document = MouldDocument.model_validate({"id": "other", "name": "Other", "shape": shape})
    other = mould(document, read_mesh=no_mesh)
    return reckon(in_proportion(reckoning, other, document.shape), read_mesh=no_mesh)


def test_in_its_own_mould_a_dessert_stays_as_it_is(dome: Reckoning) -> None:
    same = moved(dome, HEMISPHERE)
    for new, old in zip(same.needs, dome.needs, strict=True):
        assert new.mass == pytest.approx(old.mass, rel=1e-9)
    assert [p.low for p in same.placed.inclusions] == pytest.approx(
        [p.low for p in dome.placed.inclusions]
    )


@pytest.mark.parametrize("shape", OTHERS, ids=lambda shape: str(shape["kind"]))
def test_what_lies_inside_keeps_its_share_and_the_rest_its_area(
    dome: Reckoning, shape: dict[str, object]
) -> None:
    other = moved(dome, shape)
    new, old = other.dessert.mould, dome.dessert.mould
    volume = new.solid.volume / old.solid.volume
    expected = {
        "vanilla-insert": volume,
        "blackcurrant-mousse": volume,
        "roasted-hazelnuts": volume,
        "blackcurrant-glaze": new.solid.wall_area / old.solid.wall_area,
        "hazelnut-shortcrust": foot_area(new) / foot_area(old),
    }
    for after, before in zip(other.needs, dome.needs, strict=True):
        assert after.mass / before.mass == pytest.approx(expected[after.component], rel=1e-3)


def test_an_insert_is_stretched_where_it_can_be_and_else_like_the_mould(dome: Reckoning) -> None:
    def insert(shape: dict[str, object]) -> object:
        placement = moved(dome, shape).dessert.document.placement
        return next(p.shape for p in placement if isinstance(p, InsertPlacement))

    assert isinstance(insert({"kind": "hemisphere", "diameter": "95 mm"}), Hemisphere)
    assert isinstance(insert(CYLINDER), Measured)


def test_a_half_sphere_in_a_cylinder_is_stretched_to_an_ellipsoid(dome: Reckoning) -> None:
    in_cylinder = moved(dome, CYLINDER)
    document = dome.dessert.document
    insert = next(p for p in document.placement if isinstance(p, InsertPlacement))
    placement = [insert if isinstance(p, InsertPlacement) else p for p in document.placement]
    cylinder = reckon(
        replace(in_cylinder.dessert, document=document.model_copy(update={"placement": placement})),
        read_mesh=no_mesh,
    )
    taller = moved(cylinder, {"kind": "cylinder", "diameter": "60 mm", "height": "60 mm"})
    shape = next(
        p.shape for p in taller.dessert.document.placement if isinstance(p, InsertPlacement)
    )
    assert isinstance(shape, Ellipsoid)
    assert shape.height == pytest.approx(0.030)
    assert shape.length == pytest.approx(0.040)


def test_a_base_under_the_piece_takes_the_form_of_the_foot(dome: Reckoning) -> None:
    log = moved(dome, {"kind": "log", "length": "250 mm", "width": "80 mm"})
    base = next(p for p in log.dessert.document.placement if isinstance(p, BasePlacement))
    assert base.cut_out.kind == "rectangle"
    assert base.thickness == pytest.approx(0.003)
    assert base.cut_out.length / base.cut_out.width == pytest.approx(250 / 80)
