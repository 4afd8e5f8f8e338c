"""Put the parts of a dessert into its cavity and see what room each takes."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field

from entremetry.dessert.base_solid import cut_out_solid
from entremetry.dessert.fit import TOUCHING, insert_walls, overlap, require_no_overlap
from entremetry.dessert.placed import Filled, Inclusion, Placed, fluid
from entremetry.dessert.placement import (
    BasePlacement,
    FillingPlacement,
    InsertPlacement,
    LayerPlacement,
    Placement,
)
from entremetry.errors import FitError
from entremetry.kitchen.shape_building import build
from entremetry.shapes import Solid
from entremetry.words import decimal, say

NOTHING = 1e-9  # m3


@dataclass(slots=True)
class _Front:
    """How far the cavity is taken from one of its ends."""

    end: float
    direction: int
    cursor: float = field(init=False)
    taken: float = field(init=False)
    last: str = field(default_factory=lambda: say("the mould"))

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
        walls = insert_walls(self.cavity, self.inclusions)
        require_no_overlap(self.cavity, self.inclusions)
        if filling is not None:
            self._fill_rest(filling)
        return Placed(
            cavity=self.cavity,
            inclusions=tuple(sorted(self.inclusions, key=lambda part: part.low)),
            filled=tuple(sorted(self.filled, key=lambda part: part.low)),
            walls=walls,
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
        room = fluid(self.cavity, self.inclusions, *front.interval(far))
        if volume > room * (1.0 + 1e-9):
            raise self._too_much(placement.component, volume - room)
        near = front.taken
        for _ in range(80):
            middle = (near + far) / 2.0
            if fluid(self.cavity, self.inclusions, *front.interval(middle)) < volume:
                near = middle
            else:
                far = middle
        return (near + far) / 2.0

    def _too_much(self, component: str, excess: float) -> FitError:
        name = self._name(component)
        missing = excess / self.cavity.area_at(self.cavity.height / 2.0)
        return FitError(
            say(
                "{name} does not fit into the mould: {excess} ml too much, "
                "about {missing} mm of height; take less of it or a deeper mould",
                name=name,
                excess=decimal(f"{excess * 1e6:.0f}"),
                missing=decimal(f"{missing * 1e3:.1f}"),
            ),
            parts=(name, say("the mould")),
            missing=missing,
        )

    def _require_inside(self, component: str, level: float, front: _Front) -> None:
        other = self.top if front.direction > 0 else self.bottom
        missing = front.direction * (level - other.cursor)
        if missing > TOUCHING:
            raise overlap(self._name(component), other.last, missing)

    def _require_room(self) -> None:
        missing = self.bottom.cursor - self.top.cursor
        if missing > TOUCHING:
            raise overlap(self.bottom.last, self.top.last, missing)

    def _fill_rest(self, placement: FillingPlacement) -> None:
        low, high = self.bottom.taken, self.top.taken
        self._add_filled(placement.component, low, high)
        if self.filled[-1].volume <= NOTHING:
            name = self._name(placement.component)
            raise FitError(
                say("nothing is left for {name}: the other parts fill the mould", name=name),
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
                volume=fluid(self.cavity, self.inclusions, low, high),
            )
        )


def _is_fixed(insert: InsertPlacement) -> bool:
    return insert.below_rim is not None or insert.from_closed_end is not None


def _split(
    placements: Sequence[Placement],
) -> tuple[Sequence[Placement], FillingPlacement | None, Sequence[Placement]]:
    for index, placement in enumerate(placements):
        if isinstance(placement, FillingPlacement):
            return placements[:index], placement, placements[index + 1 :]
    return placements, None, ()
