"""One component of the batch: what to weigh, what comes of it, what one piece holds."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from entremetry.dessert.batch_sheet import ComponentBatch, IngredientAmount
from entremetry.dessert.dessert import Component, Dessert, Line
from entremetry.dessert.household_amount import household_amount
from entremetry.dessert.needs import total
from entremetry.dessert.reckoning import Reckoning
from entremetry.dessert.requirement import Requirement
from entremetry.dessert.telling import Teller
from entremetry.formula import brix
from entremetry.larder.ingredient import Ingredient
from entremetry.larder.spoken_name import ingredient_name
from entremetry.method.making import scaled_made
from entremetry.quantities import format_mass, format_volume
from entremetry.sources.figure import Figure
from entremetry.words import decimal, say


def component_batch(
    component: Component,
    reckoning: Reckoning,
    required: Requirement,
    pieces: int,
    measures: str,
    teller: Teller,
) -> ComponentBatch:
    """Scale one component to the batch and say where each number came from."""
    made = scaled_made(reckoning.makings[component.id], required.factor)
    need = total(reckoning.needs, component.id)
    error = made.density.relative_error
    return ComponentBatch(
        id=component.id,
        name=component.name,
        kind=component.kind,
        factor=required.factor,
        mass=_mass(required, made.mass_in, made.loss, error, made.density.sources),
        ready_mass=made.mix.mass,
        volume=_volume(made.mix.mass, made.density),
        per_piece=_per_piece(need.on_piece, need.because, reckoning, error),
        density=made.density,
        loss_fraction=made.loss / made.mass_in,
        changes=made.changes,
        lines=tuple(_amounts(component, reckoning.dessert, required.factor, measures))
        + tuple(_soaking(component, made.soaking_water)),
        method=teller.method(component),
        constituents=made.mix.constituents,
        brix=brix(made.mix),
        time=sum(step.time or 0.0 for step in component.steps),
        hands_on=sum(step.hands_on or 0.0 for step in component.steps),
    )


def weighed(
    dessert: Dessert, required: Mapping[str, Requirement]
) -> Iterator[tuple[Ingredient, float]]:
    """Every ingredient of the batch with its mass [kg], component by component."""
    for component in dessert.components:
        for line in component.lines:
            mass = line.mass * required[component.id].factor
            if line.ingredient is not None and mass > 0.0:
                yield line.ingredient, mass


def _mass(
    required: Requirement,
    mass_in: float,
    loss: float,
    error: float,
    sources: tuple[str, ...],
) -> Figure:
    ready = format_mass(required.ready)
    because = say("{because}: {mass} ready", because=required.because, mass=ready)
    if loss > 1e-9:
        because = say(
            "{because}; {loss} is lost on the way, so {mass} to weigh",
            because=because,
            loss=format_mass(loss),
            mass=format_mass(mass_in),
        )
    return Figure(value=mass_in, unit="kg", because=because, sources=sources, relative_error=error)


def _volume(ready: float, density: Figure) -> Figure:
    return Figure(
        value=ready / density.value,
        unit="m3",
        because=say(
            "{mass} ready ÷ {density} g/ml",
            mass=format_mass(ready),
            density=decimal(f"{density.value / 1e3:.2f}"),
        ),
        sources=density.sources,
        relative_error=density.relative_error,
    )


def _per_piece(mass: float, because: str, reckoning: Reckoning, error: float) -> Figure:
    if reckoning.per_cavity > 1:
        because = say(
            "{because}; one of {number} pieces, the trimmings left out",
            because=because,
            number=reckoning.per_cavity,
        )
    because = because or say("goes into other components")
    return Figure(value=mass, unit="kg", because=because, relative_error=error)


def _amounts(
    component: Component, dessert: Dessert, factor: float, measures: str
) -> Iterator[IngredientAmount]:
    for line in component.lines:
        if line.ingredient is None:
            yield _other_component(line, dessert, factor)
        else:
            yield _ingredient(line, line.ingredient, factor, measures)


def _other_component(line: Line, dessert: Dessert, factor: float) -> IngredientAmount:
    return IngredientAmount(
        line=line.name,
        id=str(line.component),
        name=dessert.names[str(line.component)],
        mass=line.mass * factor,
        household=say("from this recipe"),
        household_error=None,
        written=line.written,
        note=line.note,
    )


def _ingredient(
    line: Line, ingredient: Ingredient, factor: float, measures: str
) -> IngredientAmount:
    measured = household_amount(line.mass * factor, ingredient, measures)
    return IngredientAmount(
        line=line.name,
        id=ingredient.id,
        name=ingredient_name(ingredient),
        mass=line.mass * factor,
        household=measured.text,
        household_error=measured.relative_error,
        written=line.written,
        note=line.note,
        own=bool(ingredient.overridden),
    )


def _soaking(
    component: Component, water: tuple[tuple[str, float], ...]
) -> Iterator[IngredientAmount]:
    names = {
        line.name: ingredient_name(line.ingredient) for line in component.lines if line.ingredient
    }
    for line, mass in water:
        yield IngredientAmount(
            line=f"{line}-water",
            id="water",
            name=say("water to soak the {name}", name=names.get(line, line)),
            mass=mass,
            household=format_volume(mass / 1000.0),
            household_error=0.0,
            written=format_mass(mass),
        )
