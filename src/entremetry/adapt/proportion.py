"""A dessert in another mould, all that lies in the mould keeping its share of it."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import cached_property

from entremetry.dessert.cut_outs import cut_area
from entremetry.dessert.dessert import Dessert
from entremetry.dessert.needs import coated_area
from entremetry.dessert.placement import (
    BasePlacement,
    CoatingPlacement,
    DiscCutOut,
    GarnishPlacement,
    InsertPlacement,
    LayerPlacement,
    Placement,
    RectangleCutOut,
    SoakPlacement,
)
from entremetry.dessert.reckoning import Reckoning
from entremetry.kitchen.mould import Mould
from entremetry.kitchen.shape_building import build
from entremetry.kitchen.shape_document import (
    Box,
    Cylinder,
    Ellipsoid,
    Hemisphere,
    Log,
    Measured,
    ShapeDocument,
)
from entremetry.shapes import Solid

SAME = 1e-6  # share by which two volumes may differ and count as one


def foot_area(mould: Mould) -> float:
    """Area of the face that a piece stands on. [m2]"""
    solid = mould.solid
    return solid.area_at(solid.height if mould.fills_upside_down else 0.0)


def in_proportion(reckoning: Reckoning, mould: Mould, shape: ShapeDocument) -> Dessert:
    """The dessert in a mould of a shape.

    Inserts, layers and bases inside keep their share of the cavity: stretched with it where that
    keeps the share, else similar to the mould itself. A base under the piece keeps its thickness
    and its share of the foot, and a garnish its mass in a millilitre, or on each portion.
    """
    change = _Change(reckoning=reckoning, mould=mould, shape=shape)
    document = reckoning.dessert.document
    placement = [change.placed(each) for each in document.placement]
    return replace(
        reckoning.dessert,
        mould=mould,
        document=document.model_copy(update={"placement": placement}),
    )


@dataclass(frozen=True, kw_only=True)
class _Change:
    """From one mould to another."""

    reckoning: Reckoning
    mould: Mould
    shape: ShapeDocument

    @property
    def old(self) -> Mould:
        return self.reckoning.dessert.mould

    @property
    def volume(self) -> float:
        return self.mould.solid.volume / self.old.solid.volume

    @property
    def foot(self) -> float:
        return foot_area(self.mould) / foot_area(self.old)

    @property
    def height(self) -> float:
        return self.mould.solid.height / self.old.solid.height

    @cached_property
    def stretch(self) -> tuple[float, float, float] | None:
        """Ratios of length, width and height if the one mould is the other one stretched."""
        new, old = self.mould.solid, self.old.solid
        ratios = (new.length / old.length, new.width / old.width, self.height)
        same = math.isclose(math.prod(ratios), self.volume, rel_tol=SAME)
        return ratios if type(new) is type(old) and same else None

    def placed(self, placement: Placement) -> Placement:
        """One placement in the other mould."""
        match placement:
            case InsertPlacement():
                return self._insert(placement)
            case LayerPlacement():
                return self._layer(placement)
            case BasePlacement():
                return self._base(placement)
            case CoatingPlacement(pour=float(pour)):
                return placement.model_copy(update={"pour": pour * self._coated()})
            case SoakPlacement(mass=float(mass)):
                return placement.model_copy(update={"mass": mass * self.foot})
            case GarnishPlacement() if self.reckoning.dessert.document.portions is None:
                return placement.model_copy(update={"mass": placement.mass * self.volume})
        return placement

    def _coated(self) -> float:
        dessert = self.reckoning.dessert
        in_portions = dessert.document.portions is not None
        film = next(p for p in dessert.document.placement if isinstance(p, CoatingPlacement))
        new, old = (coated_area(film, m, in_portions=in_portions) for m in (self.mould, self.old))
        return new / old

    def _insert(self, placement: InsertPlacement) -> InsertPlacement:
        depth = {
            name: value * self.height
            for name in ("below_rim", "from_closed_end")
            if (value := getattr(placement, name)) is not None
        }
        stretch = self.stretch or (1.0, 1.0, 1.0)
        stretched = _stretched(placement.shape, *stretch) if self.stretch else None
        if stretched:
            aside = placement.aside * stretch[0]
            return placement.model_copy(update={"shape": stretched, "aside": aside, **depth})
        body = _solid(placement.shape)
        similar = Measured(kind="measured", holds="1 ml", like=_like(self.shape)).model_copy(
            update={"holds": body.volume * self.volume}
        )
        free = dict.fromkeys(("below_rim", "from_closed_end"))
        return placement.model_copy(update={"shape": similar, "turned": False, **free})

    def _layer(self, placement: LayerPlacement) -> LayerPlacement:
        if self.stretch and placement.height is not None:
            return placement.model_copy(update={"height": placement.height * self.height})
        if placement.mass is not None:
            return placement.model_copy(update={"mass": placement.mass * self.volume})
        volume = placement.volume or self._volume_of(placement)
        update = {"height": None, "volume": volume * self.volume}
        return placement.model_copy(update=update)

    def _volume_of(self, placement: LayerPlacement) -> float:
        """Volume of a layer that is given by its height. [m3]"""
        parts = [p for p in self.reckoning.placed.filled if p.component == placement.component]
        return min(parts, key=lambda p: abs(p.high - p.low - (placement.height or 0.0))).volume

    def _base(self, placement: BasePlacement) -> BasePlacement:
        area = cut_area(placement) * self.foot
        thickness = placement.thickness
        if placement.sits == "inside":
            thickness *= self.volume / self.foot
        return placement.model_copy(
            update={
                "cut_out": self._cut_out(placement, area),
                "thickness": thickness,
                "sheet": None,
            }
        )

    def _cut_out(self, placement: BasePlacement, area: float) -> DiscCutOut | RectangleCutOut:
        cut, solid = placement.cut_out, self.mould.solid
        if isinstance(cut, DiscCutOut) and type(solid) is type(self.old.solid):
            ratio = math.sqrt(self.foot)
            return cut.model_copy(
                update={
                    "diameter": cut.diameter * ratio,
                    "hole_diameter": cut.hole_diameter * ratio,
                }
            )
        if isinstance(self.shape, Box | Log):
            width = math.sqrt(area * solid.width / solid.length)
            return RectangleCutOut.model_construct(
                kind="rectangle", length=area / width, width=width
            )
        diameter = math.sqrt(4.0 * area / math.pi)
        return DiscCutOut.model_construct(kind="disc", diameter=diameter, hole_diameter=0.0)


def _like(shape: ShapeDocument) -> ShapeDocument:
    return shape.like if isinstance(shape, Measured) else shape


def _solid(shape: ShapeDocument) -> Solid:
    return build(shape, read_mesh=_no_mesh)


def _no_mesh(name: str) -> bytes:
    raise LookupError(name)


def _stretched(
    shape: ShapeDocument, length: float, width: float, height: float
) -> ShapeDocument | None:
    """A shape stretched along three directions, if that is a shape of ours."""
    round_ = math.isclose(length, width, rel_tol=SAME)
    match shape:
        case Cylinder() if round_:
            update = {"diameter": shape.diameter * length, "height": shape.height * height}
            return shape.model_copy(update=update)
        case Box() if not (shape.taper or shape.corner_radius):
            update = {
                "length": shape.length * length,
                "width": shape.width * width,
                "height": shape.height * height,
            }
            return shape.model_copy(update=update)
        case Log(section="half-round", height=None) if math.isclose(width, height, rel_tol=SAME):
            update = {"length": shape.length * length, "width": shape.width * width}
            return shape.model_copy(update=update)
        case Hemisphere() if round_ and math.isclose(width, height, rel_tol=SAME):
            return shape.model_copy(update={"diameter": shape.diameter * length})
        case Hemisphere():
            return Ellipsoid.model_construct(
                kind="ellipsoid",
                length=shape.diameter * length,
                width=shape.diameter * width,
                height=shape.diameter / 2.0 * height,
            )
    return None
