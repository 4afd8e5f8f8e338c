"""Glazing a frozen piece: film, grams that stay and run off, and the pour window."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator

import numpy as np

from entremetry.dessert.dessert import Component
from entremetry.dessert.needs import coated_area, total
from entremetry.dessert.placement import CoatingPlacement
from entremetry.dessert.reckoning import Reckoning
from entremetry.errors import OutsideRange, QuantityError
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.method.waiting import GlazeAt
from entremetry.physics.glaze_film import Fluidity
from entremetry.physics.glaze_pour import Dome, Glaze, Pour, pour, pour_window
from entremetry.quantities import format_celsius, format_mass
from entremetry.timings.component_food import material_of
from entremetry.timings.piece_regions import main_part
from entremetry.timings.place import place
from entremetry.timings.step_temperatures import Fact, StepTemperatures
from entremetry.timings.timed_step import TimedStep
from entremetry.words import say, say_later

SURPLUS = 3.0  # poured over a piece, in masses of what stays, where the author states none
COOLEST, WARMEST = 296.15, 318.15  # K: between which pour temperatures are tried
HOTTEST = 323.15  # K: the flow of a hotter glaze is not known
APART = 2.0  # K between them, and half as much at the ends of what is good
USUAL_GLAZE = Fluidity(
    warm=308.15,
    warm_viscosity=1.0,
    cold=301.15,
    cold_viscosity=4.0,
    sets_at=295.15,
)
"""Flow of a gelatine and glucose glaze: from_memory, no measured curve was found. It sets at
22 °C, as gelatine of 200 Bloom at 1.5 % does."""
TOO_COOL = say_later("cooler, the film is thicker than 3 mm or does not run off")
LOOKED = say_later("warmer was not tried")
TOO_WARM = say_later(
    "warmer, it is thinner than 0.8 mm, melts the piece or does not set in 4 minutes"
)
SOURCES = ("lee_2016", "carslaw_jaeger_1959", "from_memory")


def glazing_answer(
    reckoning: Reckoning, timed: TimedStep, kitchen: KitchenDocument | None
) -> StepTemperatures:
    """What one pour at the step's temperature does, and which temperatures do it well.

    Raises
    ------
    QuantityError
        If the dessert has no coating, or the step no temperature at which a glaze can flow.
    """
    step = timed.step
    placement = _coating(reckoning)
    if placement is None or not isinstance(step, GlazeAt):
        raise QuantityError(say("a dessert without a coating"), say("a glaze placed as a coating"))
    component = _component(reckoning, placement.component)
    if not COOLEST - 1.0 < step.temperature <= HOTTEST:
        raise QuantityError(
            say("a pour at {temperature}", temperature=format_celsius(step.temperature)),
            say(
                "from {low} to {high}: cooler, the glaze sets in the jug; "
                "hotter, it runs off like water",
                low=format_celsius(COOLEST),
                high=format_celsius(HOTTEST),
            ),
        )
    cold = place("freezer", None, kitchen).temperature
    glaze, dome = _glaze(reckoning, component), _dome(reckoning, placement, cold)
    poured = placement.pour or SURPLUS * total(reckoning.needs, placement.component).mass
    room = place("room", None, kitchen)
    try:
        done = pour(glaze, dome, step.temperature, poured, air=room.temperature)
    except OutsideRange as error:
        found = say("a pour at {temperature}", temperature=format_celsius(step.temperature))
        raise QuantityError(found, str(error)) from error
    window = _window(glaze, dome, poured, step.temperature)
    return StepTemperatures(
        step=timed.id,
        name=timed.name,
        kind=timed.kind,
        sentence=timed.sentence,
        target=step.temperature,
        time=done.set_time,
        low=None if done.set_time is None else 0.5 * done.set_time,
        high=None if done.set_time is None else 2.0 * done.set_time,
        reason="" if done.set_time is not None else say("the film has not set within 5 minutes"),
        mostly=say("how thick this glaze is, which nobody has measured"),
        because=say("heat through film and piece, the film draining as it thickens"),
        sources=SOURCES,
        assumptions=_assumptions(poured, cold),
        written_time=timed.step.time,
        facts=tuple(_facts(done, window)),
    )


def _coating(reckoning: Reckoning) -> CoatingPlacement | None:
    placements = reckoning.dessert.document.placement
    return next((p for p in placements if isinstance(p, CoatingPlacement)), None)


def _component(reckoning: Reckoning, component_id: str) -> Component:
    return next(c for c in reckoning.dessert.components if c.id == component_id)


def _glaze(reckoning: Reckoning, component: Component) -> Glaze:
    made = reckoning.makings[component.id]
    return Glaze(
        material=material_of(reckoning, component.id),
        density=made.density.value,
        fluidity=USUAL_GLAZE,
    )


def _dome(reckoning: Reckoning, placement: CoatingPlacement, cold: float) -> Dome:
    """The piece as the dome of the same glazed area."""
    in_portions = reckoning.dessert.document.portions is not None
    area = coated_area(placement, reckoning.dessert.mould, in_portions=in_portions)
    return Dome(
        material=material_of(reckoning, main_part(reckoning.placed).component),
        temperature=cold,
        radius=math.sqrt(area / (2.0 * math.pi)),
    )


def _window(glaze: Glaze, dome: Dome, poured: float, own: float) -> tuple[float, float] | None:
    """Coolest and warmest pour whose film is good, to a kelvin; from the step's own if it is."""

    def good(temperature: float) -> bool:
        return pour_window(glaze, dome, poured, temperatures=[temperature])[0] is not None

    tried = np.arange(COOLEST, WARMEST + 0.5, APART)
    start = own if good(own) else next((float(t) for t in tried if good(float(t))), None)
    if start is None:
        return None
    return _edge(good, start, COOLEST), _edge(good, start, WARMEST)


def _edge(good: Callable[[float], bool], inside: float, limit: float) -> float:
    """Last good temperature on the way from a good one to a limit, to a kelvin."""
    if good(limit):
        return limit
    outside = limit
    while abs(outside - inside) > APART / 2.0:
        middle = (inside + outside) / 2.0
        inside, outside = (middle, outside) if good(middle) else (inside, middle)
    return inside


def _facts(done: Pour, window: tuple[float, float] | None) -> Iterator[Fact]:
    yield Fact(name=say("film on top"), value=done.pole * 1e3, unit="mm")
    yield Fact(name=say("film at the edge"), value=done.edge * 1e3, unit="mm")
    yield Fact(name=say("stays on one piece"), value=done.stays * 1e3, unit="g")
    yield Fact(name=say("runs off one piece"), value=done.runs_off * 1e3, unit="g")
    yield Fact(
        name=say("temperature where glaze and piece touch"),
        value=done.contact - 273.15,
        unit="°C",
        because=say("below about 20 °C the film sets where it lies, above it slides"),
    )
    yield Fact(name=say("depth that melts"), value=done.melt_depth * 1e3, unit="mm")
    if window is not None:
        yield Fact(
            name=say("pour from"),
            value=window[0] - 273.15,
            unit="°C",
            because=say(TOO_COOL),
        )
        yield Fact(
            name=say("pour up to"),
            value=window[1] - 273.15,
            unit="°C",
            because=say(LOOKED if window[1] >= WARMEST else TOO_WARM),
        )


def _assumptions(poured: float, cold: float) -> tuple[str, ...]:
    return (
        say(
            "The piece is at {temperature} and taken as a dome of the same area; {mass} is poured "
            "over it.",
            temperature=format_celsius(cold),
            mass=format_mass(poured),
        ),
        say(
            "The glaze is taken to flow like a usual gelatine and glucose glaze (1 Pa s at 35 °C, "
            "4 Pa s at 28 °C, set at 22 °C, from memory): no measured curve was found."
        ),
    )
