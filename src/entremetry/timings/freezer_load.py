"""What a batch does to the freezer it goes into, and how much the freezer takes at once."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from entremetry.errors import OutsideRange
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.physics.appliance import Freezer, Load, greatest_load, load, power_for
from entremetry.timings.crossing import crossing
from entremetry.timings.piece_body import PieceBody, piece_body
from entremetry.timings.piece_run import run_piece
from entremetry.timings.place import ROOM
from entremetry.timings.setting import Setting
from entremetry.timings.step_temperatures import Fact
from entremetry.words import say

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
WATCHED = 2.0  # times as long as one piece alone needs, for the batch
FELT = 0.2  # K: warmer than this, the air makes the batch slower


@dataclass(frozen=True, slots=True, kw_only=True)
class FreezerLoad:
    """Set point and warmest air [K], the batch's time [s], pieces that would do no harm.

    `time` is None if the batch is not frozen in twice the time of one piece, `air` as well if
    it is far too much for this freezer.
    """

    set_point: float
    air: float | None
    time: float | None
    most_pieces: int


def freezer_load(
    setting: Setting, kitchen: KitchenDocument | None, pieces: int, duration: float
) -> FreezerLoad | None:
    """Follow the freezer's air while so many pieces freeze; None for a freezer in a colder room.

    `duration` is what one piece alone takes. [s]
    """
    coarse = piece_body(setting.placed, setting.materials, most_cells=FEW_CELLS)
    air = setting.stage.surroundings
    try:
        freezer = _freezer(setting, kitchen)
    except OutsideRange:  # no warmer outside than inside: nothing to model
        return None
    most = greatest_load(freezer, coarse.body, setting.start, air, duration, HARMED, most=MOST)
    try:
        done = load(freezer, coarse.body, setting.start, air, pieces, WATCHED * duration)
    except OutsideRange:
        return FreezerLoad(set_point=freezer.set_point, air=None, time=None, most_pieces=most)
    return FreezerLoad(
        set_point=freezer.set_point,
        air=float(done.air.max()),
        time=_time(setting, coarse, done, duration),
        most_pieces=most,
    )


def load_facts(found: FreezerLoad, pieces: int) -> Iterator[Fact]:
    """The load in numbers a cook can use."""
    together = say("with {pieces} at once", pieces=pieces) if pieces > 1 else say("with one in it")
    if found.air is not None:
        yield Fact(
            name=say("warmest air in the freezer"),
            value=found.air - 273.15,
            unit="°C",
            because=together,
        )
        if found.time is not None and found.air > found.set_point + FELT:
            yield Fact(
                name=say("time in the air so warmed"),
                value=found.time / 3600.0,
                unit="h",
                because=together,
            )
    yield Fact(
        name=say("pieces at once that do no harm"),
        value=float(found.most_pieces),
        unit="pieces",
        because=_harmless(found, pieces),
    )


def _harmless(found: FreezerLoad, pieces: int) -> str:
    if found.air is None:
        return say(
            "what is already in the freezer stays below -15 °C; {pieces} at once are far too much "
            "for it",
            pieces=pieces,
        )
    if found.most_pieces == MOST:
        return say("what is already in the freezer stays below -15 °C (not looked further)")
    return say("what is already in the freezer stays below -15 °C")


def _time(setting: Setting, coarse: PieceBody, done: Load, alone: float) -> float | None:
    """Time of the batch: that of one piece, times what the warmer air adds on coarse cells. [s]"""
    until = setting.stage.until
    if until is None or float(done.air.max()) < setting.place.temperature + FELT:
        return alone
    free = run_piece(coarse, setting.start, replace(setting.stage, walls={}))
    loaded = crossing(done.piece, "warmest", until.temperature, falling=True)
    if loaded is None or not free.reached:
        return None
    return alone * max(loaded / free.end, 1.0)


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
