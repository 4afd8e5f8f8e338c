"""What a batch does to the freezer it goes into, and how much the freezer takes at once."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from entremetry.errors import OutsideRange
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.physics.appliance import Freezer, greatest_load, load, power_for
from entremetry.timings.piece_body import piece_body
from entremetry.timings.place import ROOM
from entremetry.timings.setting import Setting
from entremetry.timings.step_temperatures import Fact

USUAL_CAPACITY = 10.0  # kg per 24 h: common_practice, domestic freezers freeze 10 to 15
BLAST_CAPACITY = 120.0  # kg per 24 h, our_own
LEAK = 1.0  # W/K through the walls of a domestic freezer, our_own
USUAL_VOLUME = 0.1  # m3
FILLED = 200.0  # kg of frozen food in each m3 of a freezer in use, our_own
FROZEN_HEAT = 2000.0  # J/(kg K), choi_okos_1986: ice and a little fat
EXCHANGE = 6.0  # W/K between the air and what lies in it, our_own
HARMED = 258.15  # K: 3 K above -18 °C is what EU rules allow in transport, eu_89_108
MOST = 48
FEW_CELLS = 160  # enough for the heat that a piece gives off


@dataclass(frozen=True, slots=True, kw_only=True)
class FreezerLoad:
    """Warmest air and contents with the batch [K], and the pieces that would do no harm."""

    air: float
    contents: float
    most_pieces: int


def freezer_load(
    setting: Setting, kitchen: KitchenDocument | None, pieces: int, duration: float
) -> FreezerLoad | None:
    """Follow the freezer's air while so many pieces freeze; None if they are far too many."""
    freezer = _freezer(setting, kitchen)
    coarse = piece_body(setting.placed, setting.materials, most_cells=FEW_CELLS)
    body, start = coarse.body, setting.start
    air = setting.stage.surroundings
    try:
        done = load(freezer, body, start, air, pieces, duration)
    except OutsideRange:
        return None
    return FreezerLoad(
        air=float(done.air.max()),
        contents=done.warmest_contents,
        most_pieces=greatest_load(freezer, body, start, air, duration, HARMED, most=MOST),
    )


def load_facts(found: FreezerLoad | None, pieces: int) -> Iterator[Fact]:
    """The load in numbers a cook can use."""
    if found is None:
        yield Fact(
            name="pieces at once that do no harm",
            value=0.0,
            unit="pieces",
            because=f"{pieces} at once are far too much for this freezer",
        )
        return
    yield Fact(
        name="warmest air in the freezer",
        value=found.air - 273.15,
        unit="°C",
        because=f"with {pieces} at once",
    )
    yield Fact(
        name="pieces at once that do no harm",
        value=float(found.most_pieces),
        unit="pieces",
        because="what is already in the freezer stays below -15 °C"
        + (" (not looked further)" if found.most_pieces == MOST else ""),
    )


def _freezer(setting: Setting, kitchen: KitchenDocument | None) -> Freezer:
    there = setting.place
    blast = there.kind == "blast freezer"
    owned = [f for f in kitchen.freezers if f.name == there.name] if kitchen else []
    rated = owned[0].freezes_per_day if owned else None
    volume = owned[0].volume if owned else None
    stated = kitchen.room_temperature if kitchen else None
    room = ROOM if stated is None else stated
    idle = LEAK * (room - there.temperature)
    return Freezer(
        set_point=there.temperature,
        power=power_for(rated or (BLAST_CAPACITY if blast else USUAL_CAPACITY), idle),
        leak=LEAK,
        room=room,
        contents=(volume or USUAL_VOLUME) * FILLED * FROZEN_HEAT,
        exchange=EXCHANGE,
    )
