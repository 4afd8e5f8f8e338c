"""What a kitchen owns as resources of a plan, and how much of it each step takes up."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, field

from entremetry.agenda.keeping import rests_cold
from entremetry.agenda.menu import Thing
from entremetry.dessert.batch_sheet import ComponentBatch
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.method.cooking import CoolTo, Heated, Whip
from entremetry.method.shaping import Bake
from entremetry.method.step import AnyStep
from entremetry.planning import Need, Part, Resource
from entremetry.quantities import format_celsius, format_mass, format_volume
from entremetry.words import say

HOB, MIXER, BENCH = "hob", "mixer", "bench"
FREEZER, FRIDGE, FREEZING = "freezer", "fridge", "freezing"
DECILITRE, HECTOGRAM = 1e-4, 0.1  # m3, kg
DAY = 1440
PACKED = 2.5
"""Room that moulds and boxes take in the cold, for each volume of dessert: common practice."""
WASHED, HEATED = 5, 15
"""Minutes to wash a bowl and until an oven has another temperature: common practice."""
AT_THE_BENCH = ("roll", "cut", "pour", "place", "fill", "unmould", "glaze-at")
ASSUMED_HOBS = 4


@dataclass(frozen=True, kw_only=True)
class Equipment:
    """Ovens, mixers, hob and cold of a kitchen; without a kitchen, one of each is assumed."""

    kitchen: KitchenDocument | None = None
    oven_of: dict[float, int] = field(default_factory=dict)

    @property
    def ovens(self) -> tuple[tuple[str, int], ...]:
        """Name of each oven and the trays it takes."""
        owned = self.kitchen.ovens if self.kitchen else []
        return tuple((oven.name, oven.trays) for oven in owned) or ((say("Oven"), 1),)

    def resources(self) -> tuple[Resource, ...]:
        """Everything there is, moulds left out."""
        return tuple(self._resources())

    def things(self) -> Iterator[Thing]:
        """What each resource is called."""
        bowls = (
            self.kitchen.mixers[0].name if self.kitchen and self.kitchen.mixers else say("mixer")
        )
        yield Thing(id=HOB, name=say("ring of the hob"), place=say("hob"))
        yield Thing(id=MIXER, name=bowls, place=bowls)
        yield Thing(id=BENCH, name=say("place at the bench"), place=say("bench"))
        yield Thing(
            id=FREEZER, name=say("room in the freezer, in decilitres"), place=say("freezer")
        )
        yield Thing(id=FRIDGE, name=say("room in the fridge, in decilitres"), place=say("fridge"))
        power = say("what the freezer can freeze in a day, in units of 100 g")
        yield Thing(id=FREEZING, name=power, place="")
        for number, (name, _) in enumerate(self.ovens):
            yield Thing(
                id=oven_id(number), name=say("trays in the oven '{oven}'", oven=name), place=name
            )

    def assumptions(self) -> Iterator[str]:
        """What a kitchen does not say and is taken for granted."""
        if self.kitchen is None:
            yield say(
                "No kitchen is described: one oven with one tray, one mixer, a hob of four rings."
            )
            return
        if not self.kitchen.ovens:
            yield say("The kitchen lists no oven: one with one tray is assumed.")
        if not self.kitchen.mixers:
            yield say("The kitchen lists no mixer: one with one bowl is assumed.")
        if self.kitchen.hobs is None:
            yield say(
                "The kitchen does not say how many hob rings: {number} are assumed.",
                number=ASSUMED_HOBS,
            )
        if not any(freezer.volume for freezer in self.kitchen.freezers):
            yield say("The room in the freezer is not known, so it is not counted.")
        if not any(fridge.volume for fridge in self.kitchen.fridges):
            yield say("The room in the fridge is not known, so it is not counted.")

    def needs(self, step: AnyStep, batch: ComponentBatch | None) -> tuple[Need, ...]:
        """What a step takes up while it lasts; `batch` is its component, if it has one."""
        return tuple(self._needs(step, batch))

    def _needs(self, step: AnyStep, batch: ComponentBatch | None) -> Iterator[Need]:
        if isinstance(step, Heated):
            yield Need(resource=HOB)
        elif isinstance(step, Whip):
            yield Need(resource=MIXER)
        elif isinstance(step, Bake):
            yield Need(
                resource=oven_id(self.oven_of.get(step.at, 0)), state=format_celsius(step.at)
            )
        in_fridge = rests_cold(step) or (isinstance(step, CoolTo) and step.where == "fridge")
        if in_fridge and batch is not None:
            yield from self.room(FRIDGE, batch.volume.value)
        if step.step in AT_THE_BENCH and self.kitchen and self.kitchen.benches:
            yield Need(resource=BENCH, part=Part.OPENING)

    def room(self, place: str, volume: float) -> Iterator[Need]:
        """Room for so much dessert [m3] in the fridge or freezer, if its size is known."""
        size = self.size(place)
        if size is not None:
            yield Need(resource=place, amount=min(size, decilitres(volume)))

    def size(self, place: str) -> int | None:
        """Decilitres of the fridge or freezer, if known."""
        if self.kitchen is None:
            return None
        owned = self.kitchen.freezers if place == FREEZER else self.kitchen.fridges
        known = [each.volume for each in owned if each.volume]
        return max(1, math.floor(sum(known) / DECILITRE)) if known else None

    def freezing_load(self, mass: float) -> Iterator[Need]:
        """What freezing so much [kg] asks of the freezer for a day, if its power is known."""
        most = self.freezes_per_day
        if most is not None:
            units = max(1, math.ceil(mass / HECTOGRAM))
            yield Need(resource=FREEZING, amount=min(most, units), lasting=DAY)

    def shortage(self, place: str, volume: float, name: str) -> Iterator[str]:
        """That so much dessert [m3] does not fit into the fridge or freezer at all."""
        size, wanted = self.size(place), decilitres(volume)
        if size is not None and wanted > size:
            needs, has = (format_volume(room * DECILITRE) for room in (wanted, size))
            yield say(
                "{name} takes about {needs} of the {place}, which has {has}: not all of it fits.",
                name=name,
                needs=needs,
                place=say(place),
                has=has,
            )

    def freezing_shortage(self, mass: float, name: str) -> Iterator[str]:
        """That so much [kg] at once is more than the freezers freeze in a day."""
        most = self.freezes_per_day
        if most is not None and mass > most * HECTOGRAM:
            yield say(
                "{name}: {mass} to freeze at once, and the freezers freeze {most} in a day; "
                "it takes longer than planned.",
                name=name,
                mass=format_mass(mass),
                most=format_mass(most * HECTOGRAM),
            )

    @property
    def freezes_per_day(self) -> int | None:
        """Units of 100 g that the freezers freeze in a day, if known."""
        if self.kitchen is None:
            return None
        known = [each.freezes_per_day for each in self.kitchen.freezers if each.freezes_per_day]
        return max(1, math.floor(sum(known) / HECTOGRAM)) if known else None

    def _resources(self) -> Iterator[Resource]:
        kitchen = self.kitchen
        yield Resource(id=HOB, capacity=(kitchen and kitchen.hobs) or ASSUMED_HOBS)
        bowls = sum(mixer.bowls for mixer in kitchen.mixers) if kitchen else 0
        yield Resource(id=MIXER, capacity=bowls or 1, turnover=WASHED)
        for number, (_, trays) in enumerate(self.ovens):
            yield Resource(id=oven_id(number), capacity=trays, changeover=HEATED)
        if kitchen and kitchen.benches:
            yield Resource(id=BENCH, capacity=kitchen.benches)
        for place in (FREEZER, FRIDGE):
            size = self.size(place)
            if size is not None:
                yield Resource(id=place, capacity=size, spare=size)
        if self.freezes_per_day is not None:
            most = self.freezes_per_day
            yield Resource(id=FREEZING, capacity=most, spare=most)


def oven_id(number: int) -> str:
    """Id of an oven, counted from 0."""
    return f"oven-{number + 1}"


def decilitres(volume: float) -> int:
    """Room in the cold for a volume of dessert [m3], with what lies around it."""
    return max(1, math.ceil(volume * PACKED / DECILITRE))


def ovens_by_temperature(steps: list[AnyStep], ovens: int) -> dict[float, int]:
    """An oven for each temperature [K], so that as few as possible have to change."""
    wanted = sorted({step.at for step in steps if isinstance(step, Bake)})
    return {temperature: number % ovens for number, temperature in enumerate(wanted)}
