"""A place in the kitchen as the heat kernel meets it: its air and what a piece stands on."""

from __future__ import annotations

from dataclasses import dataclass

from entremetry.errors import QuantityError
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.physics.conduction.surroundings import Surroundings
from entremetry.physics.support import BOXED_AIR, Support, contact_coefficient
from entremetry.quantities import format_celsius
from entremetry.words import say, say_later

HOME_FREEZER = 255.15  # K
BLAST = 243.15  # K
HOME_FRIDGE = 277.15  # K
ROOM = 293.15  # K
COLDEST, WARMEST = 235.1, 333.2  # K: what is known of food ends at -40 °C
EMISSIVITY = 0.9
SPAN = 10.0  # K, the difference at which a still-air coefficient is given
STILL_AIR = 4.3  # W/(m2 K) at SPAN on a piece of 10 cm: churchill_1983, see the theory page
FAN_AIR = 11.0  # W/(m2 K), our_own
BLAST_AIR = 20.0  # W/(m2 K), our_own: blast freezers are "typically less than 50"
NAMES = {
    "freezer": say_later("freezer"),
    "blast freezer": say_later("blast freezer"),
    "fridge": say_later("fridge"),
    "room": say_later("room"),
}
ASSUMED = {
    "freezer": say_later(
        "A freezer of {temperature} is assumed, the piece {standing}; describe your kitchen to be "
        "exact."
    ),
    "blast freezer": say_later(
        "A blast freezer of {temperature} is assumed, the piece {standing}; describe your kitchen "
        "to be exact."
    ),
    "fridge": say_later(
        "A fridge of {temperature} is assumed, the piece {standing}; describe your kitchen to be "
        "exact."
    ),
    "room": say_later(
        "A room of {temperature} is assumed, the piece {standing}; describe your kitchen to be "
        "exact."
    ),
}
STANDING = {
    Support.METAL_SHELF: say_later("on a metal shelf"),
    Support.WIRE_SHELF: say_later("on a wire shelf"),
    Support.GLASS_SHELF: say_later("on a glass shelf"),
    Support.BOARD: say_later("on a board"),
    Support.BOX: say_later("on a box"),
}
HUMIDITY = {"freezer": None, "blast freezer": None, "fridge": 0.7, "room": 0.5}


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Air [K], how it moves, what a piece stands on, and what had to be taken for granted."""

    name: str
    kind: str
    temperature: float
    convection: float
    still: bool
    support: Support
    humidity: float | None
    assumptions: tuple[str, ...] = ()

    @property
    def air(self) -> Surroundings:
        """What a free face meets."""
        if self.support is Support.BOX:
            return Surroundings(temperature=self.temperature, coefficient=BOXED_AIR)
        return Surroundings(
            temperature=self.temperature,
            coefficient=self.convection,
            emissivity=EMISSIVITY,
            humidity=self.humidity,
            exponent=0.25 if self.still else 0.0,
            span=SPAN,
        )

    @property
    def foot(self) -> Surroundings:
        """What the face meets that the piece stands on."""
        return Surroundings(
            temperature=self.temperature, coefficient=contact_coefficient(self.support)
        )


def place(kind: str, support: Support | None, kitchen: KitchenDocument | None) -> Place:
    """The kitchen's place of a kind, or a usual one that says it is assumed.

    Raises
    ------
    QuantityError
        If its air is colder or warmer than food is tabled for.
    """
    if kind in ("freezer", "blast freezer"):
        found = _freezer(kind, support, kitchen)
    elif kind == "fridge":
        found = _fridge(support, kitchen)
    else:
        found = _room(support, kitchen)
    if not COLDEST <= found.temperature <= WARMEST:
        raise QuantityError(
            say(
                "the {place} at {temperature}",
                place=found.name,
                temperature=format_celsius(found.temperature),
            ),
            say(
                "air from {low} to {high}",
                low=format_celsius(COLDEST),
                high=format_celsius(WARMEST),
            ),
        )
    return found


def _freezer(kind: str, support: Support | None, kitchen: KitchenDocument | None) -> Place:
    blast = kind == "blast freezer"
    owned = [f for f in kitchen.freezers if f.blast == blast] if kitchen else []
    temperature, on, name = (BLAST if blast else HOME_FREEZER), Support.WIRE_SHELF, say(NAMES[kind])
    if owned:
        temperature, on, name = owned[0].temperature, owned[0].stands_on, owned[0].name
    return Place(
        name=name,
        kind=kind,
        temperature=temperature,
        convection=BLAST_AIR if blast else STILL_AIR,
        still=not blast,
        support=support or on,
        humidity=None,
        assumptions=() if owned else (_assumed(kind, temperature, support or on),),
    )


def _fridge(support: Support | None, kitchen: KitchenDocument | None) -> Place:
    owned = kitchen.fridges if kitchen else []
    temperature, on, name, fan = HOME_FRIDGE, Support.GLASS_SHELF, say(NAMES["fridge"]), False
    if owned:
        chosen = owned[0]
        temperature, on = chosen.temperature, chosen.stands_on
        name, fan = chosen.name, chosen.fan
    return Place(
        name=name,
        kind="fridge",
        temperature=temperature,
        convection=FAN_AIR if fan else STILL_AIR,
        still=not fan,
        support=support or on,
        humidity=HUMIDITY["fridge"],
        assumptions=() if owned else (_assumed("fridge", temperature, support or on),),
    )


def _room(support: Support | None, kitchen: KitchenDocument | None) -> Place:
    stated = kitchen.room_temperature if kitchen else None
    temperature = ROOM if stated is None else stated
    on = support or Support.BOARD
    assumed = () if stated is not None else (_assumed("room", temperature, on),)
    return Place(
        name=say(NAMES["room"]),
        kind="room",
        temperature=temperature,
        convection=STILL_AIR,
        still=True,
        support=on,
        humidity=HUMIDITY["room"],
        assumptions=assumed,
    )


def _assumed(kind: str, temperature: float, support: Support) -> str:
    return say(
        ASSUMED[kind],
        temperature=format_celsius(temperature),
        standing=say(STANDING[support]),
    )
