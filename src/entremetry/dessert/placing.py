"""Put the parts of a dessert into its cavity and see what room each takes."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field

from entremetry.dessert.placement import (
    BasePlacement,
    DiscCutOut,
    FillingPlacement,
    InsertPlacement,
    LayerPlacement,
    Placement,
)
from entremetry.errors import FitError
from entremetry.kitchen.shape_building import build
from entremetry.shapes import (
    Box,
    Cylinder,
    Ring,
    Solid,
    gap_between,
    thinnest_wall,
    volume_within,
)

TOUCHING = 1e-6  # m
POINTS_ACROSS = 60  # an insert is measured at so many points along its longest side


@dataclass(frozen=True, slots=True, kw_only=True)
class Inclusion:
    """A solid part inside the cavity: an insert or a base. Levels in m above the closed end."""

    component: str
    name: str
    solid: Solid
    low: float
    aside: float = 0.0
    turned: bool = False
    is_base: bool = False

    @property
    def high(self) -> float:
        """Level of its upper face. [m]"""
        return self.low + self.solid.height

    def volume_between(self, low: float, high: float) -> float:
        """Its volume between two levels of the cavity. [m3]"""
        return volume_within(self.solid, self.low, self.turned, low, high)


@dataclass(frozen=True, slots=True, kw_only=True)
class Filled:
    """What a soft component takes up between two levels, around what is put in. SI units."""

    component: str
    name: str
    low: float
    high: float
    volume: float


@dataclass(frozen=True, slots=True, kw_only=True)
class InsertWall:
    """Thinnest place between an insert and the mould. [m]"""

    inclusion: Inclusion
    thinnest: float
    towards: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """One cavity with everything in it. SI units."""

    cavity: Solid
    inclusions: tuple[Inclusion, ...]
    filled: tuple[Filled, ...]
    walls: tuple[InsertWall, ...]
    free_height: float
    centred: tuple[str, ...]

    def fluid_between(
        self, low: float, high: float, around: Sequence[Inclusion] | None = None
    ) -> float:
        """Volume between two levels that none of the inclusions (all, if not said) takes. [m3]"""
        parts = self.inclusions if around is None else around
        return _fluid(self.cavity, parts, low, high)


@dataclass(slots=True)
class _Front:
    """How far the cavity is taken from one of its ends."""

    end: float
    direction: int
    cursor: float = field(init=False)
    taken: float = field(init=False)
    last: str = "the mould"

    def __post_init__(self) -> None:
        self.cursor = self.taken = self.end

    def interval(self, level: float) -> tuple[float, float]:
        return min(self.taken, level), max(self.taken, level)


def place(
    cavity: Solid,
    placements: Sequence[Placement],
    *,
    names: Mapping[str, str],
    density: Mapping[str, float],
    read_mesh: Callable[[str], bytes],
) -> Placed:
    """Place the components in the order of filling, closed end first.

    Raises
    ------
    FitError
        If two parts overlap or a part is larger than its room; names both and the millimetres.
    """
    placing = _Placing(cavity, names, density, read_mesh)
    return placing.run([p for p in placements if isinstance(p, _INSIDE)])


_INSIDE = (FillingPlacement, LayerPlacement, InsertPlacement, BasePlacement)


class _Placing:
    """The state of placing one cavity; used once."""

    def __init__(
        self,
        cavity: Solid,
        names: Mapping[str, str],
        density: Mapping[str, float],
        read_mesh: Callable[[str], bytes],
    ) -> None:
        self.cavity = cavity
        self.names = names
        self.density = density
        self.read_mesh = read_mesh
        self.inclusions: list[Inclusion] = []
        self.filled: list[Filled] = []
        self.bottom = _Front(0.0, 1)
        self.top = _Front(cavity.height, -1)

    def run(self, placements: Sequence[Placement]) -> Placed:
        inserts = [p for p in placements if isinstance(p, InsertPlacement)]
        for insert in inserts:
            if _is_fixed(insert):
                self._insert(insert)
        before, filling, after = _split(
            [p for p in placements if not isinstance(p, InsertPlacement)]
        )
        for placement in before:
            self._stack(placement, self.bottom)
        for placement in reversed(after):
            self._stack(placement, self.top)
        self._require_room()
        centred = [insert for insert in inserts if not _is_fixed(insert)]
        for insert in centred:
            self._insert(insert)
        if filling is not None:
            self._fill_rest(filling)
        self._require_no_overlap()
        return Placed(
            cavity=self.cavity,
            inclusions=tuple(sorted(self.inclusions, key=lambda part: part.low)),
            filled=tuple(sorted(self.filled, key=lambda part: part.low)),
            walls=self._walls(),
            free_height=0.0 if filling else self.top.cursor - self.bottom.cursor,
            centred=tuple(insert.component for insert in centred),
        )

    def _name(self, component: str) -> str:
        return self.names[component]

    def _insert(self, placement: InsertPlacement) -> None:
        solid = build(placement.shape, read_mesh=self.read_mesh)
        self.inclusions.append(
            Inclusion(
                component=placement.component,
                name=self._name(placement.component),
                solid=solid,
                low=self._insert_level(placement, solid),
                aside=placement.aside,
                turned=placement.turned,
            )
        )

    def _insert_level(self, placement: InsertPlacement, solid: Solid) -> float:
        if placement.below_rim is not None:
            return self.cavity.height - placement.below_rim - solid.height
        if placement.from_closed_end is not None:
            return placement.from_closed_end
        return (self.bottom.cursor + self.top.cursor - solid.height) / 2.0

    def _stack(self, placement: Placement, front: _Front) -> None:
        if isinstance(placement, BasePlacement):
            if placement.sits == "inside":
                self._base(placement, front)
        elif isinstance(placement, LayerPlacement):
            self._layer(placement, front)
        front.last = self._name(placement.component)

    def _base(self, placement: BasePlacement, front: _Front) -> None:
        thickness = placement.thickness
        low = front.cursor if front.direction > 0 else front.cursor - thickness
        self.inclusions.append(
            Inclusion(
                component=placement.component,
                name=self._name(placement.component),
                solid=cut_out_solid(placement),
                low=low,
                is_base=True,
            )
        )
        front.cursor += front.direction * thickness

    def _layer(self, placement: LayerPlacement, front: _Front) -> None:
        if placement.height is not None:
            level = front.cursor + front.direction * placement.height
        else:
            level = self._level_for(placement, self._layer_volume(placement), front)
        self._require_inside(placement.component, level, front)
        low, high = front.interval(level)
        self._add_filled(placement.component, low, high)
        front.cursor = front.taken = level

    def _layer_volume(self, placement: LayerPlacement) -> float:
        if placement.volume is not None:
            return placement.volume
        assert placement.mass is not None  # the document allows exactly one measure
        return placement.mass / self.density[placement.component]

    def _level_for(self, placement: LayerPlacement, volume: float, front: _Front) -> float:
        far = self.top.cursor if front.direction > 0 else self.bottom.cursor
        room = _fluid(self.cavity, self.inclusions, *front.interval(far))
        if volume > room * (1.0 + 1e-9):
            raise self._too_much(placement.component, volume - room)
        near = front.taken
        for _ in range(80):
            middle = (near + far) / 2.0
            if _fluid(self.cavity, self.inclusions, *front.interval(middle)) < volume:
                near = middle
            else:
                far = middle
        return (near + far) / 2.0

    def _too_much(self, component: str, excess: float) -> FitError:
        name = self._name(component)
        missing = excess / self.cavity.area_at(self.cavity.height / 2.0)
        return FitError(
            f"{name} does not fit into the mould: {excess * 1e6:.0f} ml too much, "
            f"about {missing * 1e3:.1f} mm of height; take less of it or a deeper mould",
            parts=(name, "the mould"),
            missing=missing,
        )

    def _require_inside(self, component: str, level: float, front: _Front) -> None:
        other = self.top if front.direction > 0 else self.bottom
        missing = front.direction * (level - other.cursor)
        if missing > TOUCHING:
            raise _overlap(self._name(component), other.last, missing)

    def _require_room(self) -> None:
        missing = self.bottom.cursor - self.top.cursor
        if missing > TOUCHING:
            raise _overlap(self.bottom.last, self.top.last, missing)

    def _fill_rest(self, placement: FillingPlacement) -> None:
        low, high = self.bottom.taken, self.top.taken
        self._add_filled(placement.component, low, high)
        if self.filled[-1].volume <= 0.0:
            name = self._name(placement.component)
            raise FitError(
                f"nothing is left for {name}: the other parts fill the mould",
                parts=(name, self.top.last),
                missing=max(0.0, low - high),
            )

    def _add_filled(self, component: str, low: float, high: float) -> None:
        self.filled.append(
            Filled(
                component=component,
                name=self._name(component),
                low=low,
                high=high,
                volume=_fluid(self.cavity, self.inclusions, low, high),
            )
        )

    def _walls(self) -> tuple[InsertWall, ...]:
        walls = []
        for part in self.inclusions:
            wall = thinnest_wall(
                self.cavity,
                part.solid,
                level=part.low,
                offset=(part.aside, 0.0),
                turned=part.turned,
                spacing=_spacing(part.solid),
            )
            if wall.thinnest < -TOUCHING:
                raise FitError(
                    f"{part.name} does not fit into the mould: it is "
                    f"{-wall.thinnest * 1e3:.1f} mm too large towards the {wall.towards}",
                    parts=(part.name, "the mould"),
                    missing=-wall.thinnest,
                )
            if not part.is_base:
                walls.append(
                    InsertWall(inclusion=part, thinnest=wall.thinnest, towards=wall.towards)
                )
        return tuple(walls)

    def _require_no_overlap(self) -> None:
        for part in self.inclusions:
            above = part.high - self.cavity.height
            if above > TOUCHING:
                raise _overlap(part.name, "the rim of the mould", above)
        for index, one in enumerate(self.inclusions):
            for two in self.inclusions[index + 1 :]:
                shared = min(one.high, two.high) - max(one.low, two.low)
                if shared > TOUCHING and _gap(one, two) < -TOUCHING:
                    raise _overlap(one.name, two.name, shared)


def cut_out_solid(placement: BasePlacement) -> Solid:
    """A base as a solid of its thickness."""
    cut, thickness = placement.cut_out, placement.thickness
    if isinstance(cut, DiscCutOut):
        if cut.hole_diameter:
            return Ring(
                diameter=cut.diameter,
                hole_diameter=cut.hole_diameter,
                height=thickness,
                cross_section="flat",
            )
        return Cylinder(diameter=cut.diameter, height=thickness)
    return Box(length=cut.length, width=cut.width, height=thickness)


def _spacing(solid: Solid) -> float:
    return max(solid.length, solid.width) / POINTS_ACROSS


def _gap(one: Inclusion, two: Inclusion) -> float:
    return gap_between(
        one.solid,
        one.low,
        (one.aside, 0.0),
        two.solid,
        two.low,
        (two.aside, 0.0),
        turned_a=one.turned,
        turned_b=two.turned,
        spacing=min(_spacing(one.solid), _spacing(two.solid)),
    )


def _overlap(one: str, two: str, missing: float) -> FitError:
    return FitError(
        f"{one} and {two} overlap: {missing * 1e3:.1f} mm are missing; "
        "make one of them thinner, move it, or take a deeper mould",
        parts=(one, two),
        missing=missing,
    )


def _fluid(cavity: Solid, inclusions: Sequence[Inclusion], low: float, high: float) -> float:
    whole = cavity.volume_below(high) - cavity.volume_below(low)
    return whole - sum(part.volume_between(low, high) for part in inclusions)


def _is_fixed(insert: InsertPlacement) -> bool:
    return insert.below_rim is not None or insert.from_closed_end is not None


def _split(
    placements: Sequence[Placement],
) -> tuple[Sequence[Placement], FillingPlacement | None, Sequence[Placement]]:
    for index, placement in enumerate(placements):
        if isinstance(placement, FillingPlacement):
            return placements[:index], placement, placements[index + 1 :]
    return placements, None, ()
