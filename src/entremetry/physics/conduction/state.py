"""The changing part of a run: fields, walls, clock."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from entremetry.physics.arrays import Floats, Integers
from entremetry.physics.conduction import march as kernel
from entremetry.physics.conduction.body import Body
from entremetry.physics.conduction.cells import Cells, Fields, Patches, Surface, Tables
from entremetry.physics.conduction.history import Snapshot
from entremetry.physics.conduction.lookup import look_up
from entremetry.physics.conduction.surroundings import Wall
from entremetry.physics.conduction.variation import Variation, varied_cells, varied_patches


@dataclass(slots=True)
class State:
    """One body at one moment of one run."""

    cells: Cells
    tables: Tables
    patches: Patches
    fields: Fields
    surface: Surface
    probes: kernel.Probes
    clock: Floats
    begun_with: float  # J
    swapped: float = 0.0  # J that came and went with walls

    @property
    def now(self) -> float:
        """Time since the start. [s]"""
        return float(self.clock[kernel.NOW])

    def march(self, boundaries: Floats, goal: kernel.Goal, record: Floats) -> tuple[int, int]:
        """March on; what ended it and the rows it filled."""
        return kernel.march(
            self.cells,
            self.tables,
            self.patches,
            self.fields,
            self.surface,
            boundaries,
            self.probes,
            goal,
            self.clock,
            record,
        )

    @property
    def columns(self) -> int:
        """Numbers in a row of the record."""
        return kernel.GAINED + 1 + len(self.probes.cell)

    def row(self) -> Floats:
        """Time, warmest, coldest, mean, heat and points now."""
        row = np.zeros(self.columns)
        kernel.observe(self.cells, self.fields, self.probes, row)
        row[0] = self.now
        row[kernel.GAINED] = self.clock[kernel.HEAT]
        return row

    def extremes(self) -> tuple[float, float]:
        """Coldest and warmest temperature anywhere, walls included. [K]"""
        inside = self.fields.temperature[self.cells.volume > 0.0]
        walls = self.surface.wall_temperature[self.patches.heat > 0.0]
        everything = np.concatenate([inside, walls])
        return float(everything.min()), float(everything.max())

    def wall_energy(self) -> float:
        """Heat in the walls, from 273.15 K. [J]"""
        warmth = self.surface.wall_temperature - 273.15
        return float(np.sum(self.patches.heat * self.patches.area * warmth))

    def balance_error(self) -> float:
        """Heat that came in against the change of what is inside, relative.

        Relative to the larger, or to the heat of a microkelvin if next to nothing moved.
        """
        inside = float(self.fields.enthalpy.sum()) - self.begun_with
        walls = self.wall_energy() - self.swapped
        heat = float(self.clock[kernel.HEAT])
        microkelvin = 1e-6 * float(self.fields.capacity[self.cells.volume > 0.0].sum())
        scale = max(abs(inside), abs(walls), abs(heat), microkelvin)
        return abs(inside + walls - heat) / scale

    def snapshot(self, time: float) -> Snapshot:
        """Temperatures of all cells in the shape of their box."""
        pad = self.cells.pad
        inner = self.fields.temperature[pad:-pad].reshape(self.cells.shape)
        return Snapshot(time=time, temperatures=inner.copy())

    def skin(self, body: Body) -> Mapping[str, float]:
        """Mean temperature of the outermost surface of each face. [K]"""
        areas = np.bincount(self.patches.group, self.patches.area, len(body.faces))
        weighted = self.patches.area * self.surface.outside_temperature
        sums = np.bincount(self.patches.group, weighted, len(body.faces))
        return {f: float(sums[i] / areas[i]) for i, f in enumerate(body.faces) if areas[i] > 0.0}

    def dress(self, body: Body, walls: Mapping[str, Wall | None]) -> None:
        """Put walls on faces and take them off."""
        before = self.wall_energy()
        for face, wall in walls.items():
            on = np.flatnonzero(self.patches.group == body.face_number(face))
            behind = self.fields.temperature[self.patches.cell[on]]
            self._put(body, face, wall, on, behind)
        self.swapped += self.wall_energy() - before

    def _put(self, body: Body, face: str, wall: Wall | None, on: Integers, behind: Floats) -> None:
        p, s = self.patches, self.surface
        if wall is None:
            p.inner[on] = p.outer[on] = p.heat[on] = 0.0
            p.spread[on] = 1.0
            s.outside_temperature[on] = behind
            return
        spread = body.spread(face, wall.thickness)
        half = 0.5 * wall.thickness / wall.conductivity
        p.inner[on] = wall.contact + half / (0.75 + 0.25 * spread)
        p.outer[on] = half / (0.25 + 0.75 * spread)
        p.heat[on] = wall.heat_capacity * wall.thickness * 0.5 * (1.0 + spread)
        p.spread[on] = spread
        s.wall_temperature[on] = behind if wall.temperature is None else wall.temperature
        s.outside_temperature[on] = s.wall_temperature[on]


def new_state(
    body: Body, start: Mapping[str, float], probes: kernel.Probes, variation: Variation
) -> State:
    """A body at its starting temperatures, without walls."""
    cells = varied_cells(body.cells, variation)
    patches = varied_patches(_bare(body), variation)
    fields = _fields(body, cells, start, variation)
    look_up(cells, body.tables, fields)
    surface = Surface(*np.zeros((len(Surface._fields), patches.cell.size)))
    surface.outside_temperature[:] = fields.temperature[patches.cell]
    surface.wall_temperature[:] = fields.temperature[patches.cell]
    clock = np.zeros(kernel.CLOCK)
    begun = float(fields.enthalpy.sum())
    return State(cells, body.tables, patches, fields, surface, probes, clock, begun)


def _bare(body: Body) -> Patches:
    nought = np.zeros(body.skin.area.size)
    return Patches(
        cell=body.skin.cell + body.cells.pad,
        group=body.skin.face,
        area=body.skin.area,
        distance=body.distance,
        share0=body.shares[0],
        share1=body.shares[1],
        share2=body.shares[2],
        inner=nought.copy(),
        outer=nought.copy(),
        heat=nought.copy(),
        spread=nought + 1.0,
        axes=_axes(body.shares),
    )


def _axes(shares: Floats) -> tuple[bool, bool, bool]:
    """Along which axes any part of the surface faces."""
    faced = shares.sum(axis=1) > 0.0
    return (bool(faced[0]), bool(faced[1]), bool(faced[2]))


def _fields(body: Body, cells: Cells, start: Mapping[str, float], variation: Variation) -> Fields:
    """Working arrays, the enthalpy filled from the starting temperatures of the regions."""
    size = cells.volume.size
    blank = Fields(*np.zeros((len(Fields._fields), size)))
    whole = np.zeros((2, size), dtype=np.int64)
    fields = blank._replace(freed=whole[0], row=whole[1])
    for name in start:
        body.region_number(name)
    scale = variation.heat * variation.size**3
    for number, region in enumerate(body.regions):
        temperature = start[region] if region in start else start["body"]
        height = float(body.materials[number].enthalpy(temperature)) * scale
        fields.enthalpy[cells.pad : size - cells.pad] += height * body.volumes[number]
    empty = cells.volume == 0.0
    fields.capacity[empty] = 1.0
    fields.resistivity[empty] = 1.0
    fields.temperature[empty] = start.get("body", 273.15)
    return fields
