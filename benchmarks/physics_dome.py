"""The reference problem of the conduction kernel: a mousse dome with a frozen fruit insert.

Mousse hemisphere of 35 mm, flat face below; fruit cylinder of 20 mm radius from 8 to 23 mm;
silicone shell of 2 mm on the round side, its rim insulated. Start 12 °C, insert and air -18 °C,
12 W/(m2 K). Asked: when the warmest of mousse and fruit is at -12 °C. Two codes that share only
materials and dimensions (fitted triangles; explicit cut cells) agree on 6521 s within 1 s.
"""

from __future__ import annotations

import numpy as np

from entremetry.physics import Material, constant_material, material
from entremetry.physics import conduction as heat

ZERO = 273.15
RADIUS, SHELL = 0.035, 0.002
REFERENCE = 6521.0
AIR = heat.Surroundings(temperature=ZERO - 18.0, coefficient=12.0)
TARGET = heat.Target(temperature=ZERO - 12.0)
SILICONE = constant_material("silicone", 0.24, 1150.0 * 1300.0)


def food(
    name: str,
    density: float,
    heat_capacity: float,
    ice: float,
    point: float,
    k: tuple[float, float],
) -> Material:
    """Constant heat capacities of food, water and ice; ice and conductivity with 1 - t_f / t."""

    def frozen(t: np.ndarray) -> np.ndarray:
        return 1.0 - point / np.minimum(t - ZERO, point)

    def enthalpy(t: np.ndarray) -> np.ndarray:
        c = t - ZERO
        return density * (heat_capacity * c - ice * frozen(t) * (2130.0 * c + 333600.0))

    return material(
        name,
        enthalpy,
        lambda t: k[0] + k[1] * frozen(t),
        freezing_point=point + ZERO,
        lowest=ZERO - 45.0,
        highest=ZERO + 45.0,
        steps=512,
    )


MOUSSE = food("mousse", 600.0, 3100.0, 0.534, -3.5, (0.23, 0.30))
FRUIT = food("fruit", 1080.0, 3520.0, 0.75, -1.8, (0.50, 1.20))
FRUIT_SECTION = heat.rectangle(0.0, 0.008, 0.020, 0.023)


def gridded(spacing: float) -> heat.Body:
    """The dome with its wall cut into cells."""
    outer = RADIUS + SHELL
    edge = heat.outline(
        ("flat", [(0.0, 0.0), (RADIUS, 0.0)]),
        ("rim", [(RADIUS, 0.0), (outer, 0.0)]),
        ("round", heat.arc((0.0, 0.0), outer, 0.0, np.pi / 2)),
        ("axis", [(0.0, outer), (0.0, 0.0)]),
    )
    section = np.vstack([[[0.0, 0.0]], heat.arc((0.0, 0.0), RADIUS, 0.0, np.pi / 2)])
    mousse = heat.Region(name="mousse", material=MOUSSE, points=section)
    fruit = heat.Region(name="fruit", material=FRUIT, points=FRUIT_SECTION, inside="mousse")
    return heat.round_body(edge, SILICONE, (mousse, fruit), spacing)


def walled(spacing: float) -> heat.Body:
    """The dome alone, for a wall of one node per patch."""
    edge = heat.outline(
        ("flat", [(0.0, 0.0), (RADIUS, 0.0)]),
        ("round", heat.arc((0.0, 0.0), RADIUS, 0.0, np.pi / 2)),
        ("axis", [(0.0, RADIUS), (0.0, 0.0)]),
    )
    fruit = heat.Region(name="fruit", material=FRUIT, points=FRUIT_SECTION)
    return heat.round_body(edge, MOUSSE, (fruit,), spacing)


WALL = heat.Wall(thickness=SHELL, conductivity=0.24, heat_capacity=1150.0 * 1300.0)
FREEZING = heat.Stage(surroundings={"flat": AIR, "round": AIR}, until=TARGET)
IN_MOULD = heat.Stage(surroundings={"flat": AIR, "round": AIR}, until=TARGET, walls={"round": WALL})
START = {"body": ZERO + 12.0, "mousse": ZERO + 12.0, "fruit": ZERO - 18.0}
BARE_START = {"body": ZERO + 12.0, "fruit": ZERO - 18.0}


def freeze_gridded(body: heat.Body) -> heat.History:
    """Run the reference problem on the gridded dome."""
    return heat.run(body, START, [FREEZING])


def freeze_walled(body: heat.Body) -> heat.History:
    """Run it with the wall as nodes."""
    return heat.run(body, BARE_START, [IN_MOULD])


def day(body: heat.Body) -> heat.History:
    """8 h freezer in the mould, 12 h fridge, 1 h room."""
    fridge = heat.Surroundings(temperature=ZERO + 4.0, coefficient=10.0)
    room = heat.Surroundings(temperature=ZERO + 20.0, coefficient=5.0, emissivity=0.95)
    stages = [
        heat.Stage(
            surroundings={"flat": AIR, "round": AIR}, duration=8 * 3600.0, walls={"round": WALL}
        ),
        heat.Stage(
            surroundings={"flat": fridge, "round": fridge},
            duration=12 * 3600.0,
            walls={"round": None},
        ),
        heat.Stage(surroundings={"flat": room, "round": room}, duration=3600.0),
    ]
    return heat.run(body, BARE_START, stages)


def frame(spacing: float) -> heat.Body:
    """Quarter of a frame of 160 x 100 x 40 mm with a fruit layer from 15 to 25 mm."""
    layer = heat.Block(
        name="fruit", material=FRUIT, low=(0.0, 0.0, 0.015), high=(0.08, 0.05, 0.025)
    )
    return heat.box_body((0.08, 0.05, 0.04), MOUSSE, (layer,), spacing)


def freeze_frame(body: heat.Body, layer: float = -18.0) -> heat.History:
    """Freeze the frame from 12 °C in the same air until its warmest is at -12 °C.

    The layer goes in frozen, as the dome's insert does, or at another temperature [°C].
    """
    faces = {"right": AIR, "back": AIR, "top": AIR, "bottom": AIR}
    stage = heat.Stage(surroundings=faces, until=TARGET)
    return heat.run(body, {"body": ZERO + 12.0, "fruit": ZERO + layer}, [stage])
