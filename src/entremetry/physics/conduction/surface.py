"""The patches: what air, wall, radiation and moisture do to the cells behind them."""

from __future__ import annotations

import math

from entremetry.physics.arrays import Floats
from entremetry.physics.conduction.cells import Cells, Fields, Patches, Surface
from entremetry.physics.conduction.compiled import compiled

STEFAN_BOLTZMANN = 5.670374419e-8  # CODATA 2018
# Columns of the array of boundaries, one row per face group
AIR, COEFFICIENT, CONTACT, EMISSIVITY, RADIANT, VAPOUR = range(6)
WETNESS, TRANSFER, EXPONENT, SPAN, PLAIN = range(6, 11)
COLUMNS = 11


@compiled
def prepare(
    cells: Cells,
    patches: Patches,
    boundaries: Floats,
    fields: Fields,
    surface: Surface,
    step: float,
) -> None:
    """Conductances and effective surroundings of all patches for one step."""
    fields.surface0[:] = 0.0
    fields.surface1[:] = 0.0
    fields.surface2[:] = 0.0
    for p in range(patches.cell.size):
        group = patches.group[p]
        film, air = boundaries[group, COEFFICIENT], boundaries[group, AIR]
        if boundaries[group, PLAIN] == 0.0:
            film, air = exchange(boundaries[group], surface.outside_temperature[p])
        contact = boundaries[group, CONTACT]
        c = patches.cell[p]
        outside = 0.0
        resistance = 0.0
        if film > 0.0:
            resistance = patches.outer[p] + (contact + 1.0 / film) / patches.spread[p]
            outside = patches.area[p] / resistance
        depth = patches.distance[p] * fields.resistivity[c]
        inner = patches.inner[p]
        surface.air[p] = air
        surface.outside[p] = outside
        if patches.heat[p] > 0.0:
            depth = max(depth, -0.5 * inner)
            inside = patches.area[p] / (inner + depth)
            store = patches.heat[p] * patches.area[p] / step
            total = store + outside
            surface.inside[p] = inside
            surface.conductance[p] = inside * total / (inside + total)
            held = store * surface.wall_temperature[p]
            surface.surroundings[p] = (held + outside * air) / total
        elif film > 0.0:
            whole = inner + resistance
            surface.conductance[p] = patches.area[p] / (whole + max(depth, -0.5 * whole))
            surface.surroundings[p] = air
        else:
            surface.conductance[p] = 0.0
            surface.surroundings[p] = air
        fields.surface0[c] += surface.conductance[p] * patches.share0[p]
        fields.surface1[c] += surface.conductance[p] * patches.share1[p]
        fields.surface2[c] += surface.conductance[p] * patches.share2[p]


@compiled
def find_pull(patches: Patches, fields: Fields, surface: Surface) -> None:
    """What the surroundings of each cell would bring to it at 0 K."""
    fields.pull[:] = 0.0
    for p in range(patches.cell.size):
        fields.pull[patches.cell[p]] += surface.conductance[p] * surface.surroundings[p]


@compiled
def exchange(boundary: Floats, skin: float) -> tuple[float, float]:
    """Film coefficient and effective air temperature at a skin temperature."""
    air = boundary[AIR]
    film = boundary[COEFFICIENT]
    if boundary[EXPONENT] > 0.0:
        span = max(abs(skin - air), 0.1)
        film *= (span / boundary[SPAN]) ** boundary[EXPONENT]
    pull = film * air
    if boundary[EMISSIVITY] > 0.0:
        far = boundary[RADIANT]
        glow = boundary[EMISSIVITY] * STEFAN_BOLTZMANN * (skin**2 + far**2) * (skin + far)
        film += glow
        pull += glow * far
    if boundary[TRANSFER] > 0.0:
        heat, slope = moisture(boundary, skin)
        film += slope
        pull += heat + slope * skin
    if film <= 0.0:
        return 0.0, air
    return film, pull / film


@compiled
def moisture(boundary: Floats, skin: float) -> tuple[float, float]:
    """Heat of condensing or evaporating water into the skin [W/m2], and its fall per kelvin."""
    t = skin - 273.15
    if t >= 0.0:
        a, b, latent = 17.62, 243.12, 2.501e6 - 2361.0 * t
    else:
        a, b, latent = 22.46, 272.62, 2.834e6
    t = max(t, -90.0)
    pressure = 611.2 * math.exp(a * t / (b + t))
    wetness = boundary[WETNESS]
    excess = boundary[VAPOUR] - pressure
    if excess <= 0.0 and wetness <= 0.0:
        return 0.0, 0.0
    if excess <= 0.0:
        excess = min(boundary[VAPOUR] - wetness * pressure, 0.0)
        pressure *= wetness
    strength = boundary[TRANSFER] * latent
    slope = pressure * a * b / (b + t) ** 2 if excess != 0.0 else 0.0
    return strength * excess, strength * slope


@compiled
def add_exchange(
    patches: Patches, fields: Fields, surface: Surface, balance: Floats, theta: float
) -> None:
    """Flow through each patch at the weighted temperature, added to its cell's balance."""
    for p in range(patches.cell.size):
        c = patches.cell[p]
        mean = (1.0 - theta) * fields.old_temperature[c] + theta * fields.temperature[c]
        flow = surface.conductance[p] * (surface.surroundings[p] - mean)
        surface.flow[p] = flow
        balance[c] += flow


@compiled
def correct(
    patches: Patches, surface: Surface, share: Floats, change: Floats, theta: float
) -> None:
    """Take off each patch's flow what the implicit step along one axis changed in it."""
    for p in range(patches.cell.size):
        felt = theta * share[p] * change[patches.cell[p]]
        surface.flow[p] -= surface.conductance[p] * felt


@compiled
def settle(patches: Patches, surface: Surface, step: float) -> float:
    """Move the walls on to the end of the step; heat that came in from outside. [J]"""
    heat = 0.0
    for p in range(patches.cell.size):
        flow = surface.flow[p]
        if patches.heat[p] > 0.0:
            store = patches.heat[p] * patches.area[p] / step
            total = store + surface.outside[p]
            held = store * surface.wall_temperature[p] + surface.outside[p] * surface.air[p]
            wall = (held - flow) / total
            surface.wall_temperature[p] = wall
            flow = surface.outside[p] * (surface.air[p] - wall)
            node = wall
            behind = patches.outer[p]
        else:
            node = surface.surroundings[p]
            behind = 0.0
        heat += flow * step
        if patches.heat[p] > 0.0:
            surface.outside_temperature[p] = node + flow * behind / patches.area[p]
        elif surface.outside[p] > 0.0:
            film = patches.area[p] / surface.outside[p] - patches.outer[p]
            surface.outside_temperature[p] = surface.air[p] - flow * film / patches.area[p]
    return heat
