"""How long what a step leaves may wait, in each place: as the document says, else as is usual."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from entremetry.agenda.component_flow import last_step
from entremetry.agenda.keeping import (
    BAKED,
    READY,
    WARM,
    Keeps,
    Limit,
    keeps,
    keeps_ready,
    limit_after,
    rests_cold,
)
from entremetry.dessert.dessert import Component, Dessert
from entremetry.errors import UnknownName
from entremetry.method.step import AnyStep
from entremetry.words import say

MOIST = 0.2  # water share from which a garnish spoils: our_own
FREEZER, FRIDGE, TABLE = "freezer", "fridge", "table"
PLACES = (FREEZER, FRIDGE, TABLE)
FILLED, FINISHED = "filled", "finished"


@dataclass(frozen=True, slots=True, kw_only=True)
class Kept:
    """A limit in one place: minutes, why not longer, whether the document states it.

    `minutes` is None where nothing tells; `because` is the reason, `write` where a time could be
    written that is not, `source` the key of who says so, `checks` the bench checks that decide;
    `is_dough` tells that it is the dough that waits, not what is baked of it.
    """

    where: str
    minutes: int | None
    limit: Limit = Limit.HABIT
    stated: bool = False
    because: str = ""
    write: str = ""
    source: str = "common_practice"
    checks: tuple[str, ...] = ()
    is_dough: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Waiting:
    """A part that may wait: its id, its name, and its limit in each place it may lie in."""

    id: str
    name: str
    kept: tuple[Kept, ...]

    @property
    def places(self) -> tuple[str, ...]:
        """Places in the order in which they are asked."""
        return tuple(each.where for each in self.kept)


def waitings(dessert: Dessert) -> tuple[Waiting, ...]:
    """Every component, the filled mould, the finished piece, then the steps that may not wait."""
    return (*_components(dessert), *_wholes(dessert), *_steps(dessert))


def waiting_named(dessert: Dessert, name: str) -> Waiting:
    """A part by its id or name; UnknownName, with the nearest, if there is none."""
    found = waitings(dessert)
    for each in found:
        if name.casefold() in (each.id.casefold(), each.name.casefold()):
            return each
    raise UnknownName("part that may wait", name, [each.id for each in found])


def _components(dessert: Dessert) -> Iterator[Waiting]:
    for component in dessert.components:
        yield Waiting(
            id=component.id,
            name=component.name,
            kept=(_in_freezer(component), _in_fridge(component), _on_table(component)),
        )


def _in_freezer(component: Component) -> Kept:
    frozen = [step for step in component.steps if step.step == "freeze-until"]
    if frozen:
        return _as_kept(FREEZER, frozen[-1], keeps(frozen[-1], component.kind))
    return Kept(
        where=FREEZER,
        minutes=None,
        because=say("its method does not freeze it, so nothing says how it comes out again"),
        write=say(
            "components.{component}.method: a step freeze-until with keeps", component=component.id
        ),
    )


def _in_fridge(component: Component) -> Kept:
    rested = [step for step in component.steps if rests_cold(step)]
    if rested:
        kept = _as_kept(FRIDGE, rested[-1], keeps(rested[-1], component.kind))
        return replace(kept, because=_dough(), is_dough=True) if component.kind in BAKED else kept
    if component.kind == "mousse":
        found = keeps_ready(None, component.kind)
        because = say("it sets in the cold, and what has set cannot be piped or poured any more")
        return Kept(
            where=FRIDGE,
            minutes=found.minutes,
            limit=found.limit,
            because=because,
            checks=("fold-temperature",),
        )
    if component.kind in BAKED:
        return Kept(
            where=FRIDGE,
            minutes=None,
            because=say("what is baked draws water in the fridge and goes soft: keep it dry"),
            write=_write(component),
            checks=("stays-crisp",),
        )
    if component.kind == "glaze":
        return Kept(
            where=FRIDGE,
            minutes=None,
            because=say("its method does not let it rest in the cold"),
            write=_write(component),
        )
    return _usual(FRIDGE, component)


def _dough() -> str:
    return say("it is the dough that rests in the cold, before it is baked")


def _on_table(component: Component) -> Kept:
    keeps_dry = component.kind in BAKED or (
        component.kind == "garnish" and not _is_moist(component)
    )
    if keeps_dry or READY[component.kind] <= WARM:
        return _usual(TABLE, component)
    return Kept(
        where=TABLE,
        minutes=WARM,
        limit=Limit.SAFETY,
        because=say("what is moist does not stand warm for more than two hours in all"),
        source="fda_food_code",
        checks=("hours-in-the-warm",),
    )


def _is_moist(component: Component) -> bool:
    """Whether it holds so much water, or so much nobody knows of, that it spoils in the warm."""
    whole = sum(line.mass for line in component.lines)
    dry = sum(
        line.mass * (1.0 - line.ingredient.composition.water)
        for line in component.lines
        if line.ingredient is not None
    )
    return whole - dry > MOIST * whole


def _usual(where: str, component: Component) -> Kept:
    steps = component.steps
    last = steps[last_step(component)[0]] if steps else None
    found = Keeps(minutes=READY[component.kind], limit=keeps_ready(None, component.kind).limit)
    if last is not None and last.keeps is not None and last.step != "freeze-until":
        return _as_kept(where, last, keeps(last, component.kind))
    because = say("usual for such a part")
    if component.kind in BAKED:
        because = say("usual for what is baked, closed up and dry")
    return Kept(
        where=where,
        minutes=found.minutes,
        limit=found.limit,
        because=because,
        write=_write(component),
    )


def _write(component: Component) -> str:
    return say("components.{component}.method: keeps at its last step", component=component.id)


def _wholes(dessert: Dessert) -> Iterator[Waiting]:
    steps = dessert.document.assembly
    frozen = [step for step in steps if step.step == "freeze-until"]
    if frozen:
        yield Waiting(
            id=FILLED,
            name=say("The filled mould"),
            kept=(_as_kept(FREEZER, frozen[-1], keeps(frozen[-1], "")), _thawing()),
        )
    yield Waiting(id=FINISHED, name=say("The finished dessert"), kept=tuple(_finished(steps)))


def _thawing() -> Kept:
    return Kept(
        where=FRIDGE,
        minutes=0,
        limit=Limit.CRAFT,
        because=say("it thaws there, and soft it does not come out of its mould"),
        checks=("unmould-temperature", "releases"),
    )


def _finished(steps: Sequence[AnyStep]) -> Iterator[Kept]:
    thaws = [step for step in steps if step.step == "thaw-until"]
    stated = [step for step in steps if step.keeps is not None and step.step != "freeze-until"]
    last = thaws[-1] if thaws else stated[-1] if stated else None
    yield Kept(
        where=FREEZER,
        minutes=None,
        because=say(
            "once thawed it may be frozen again only if it never came above 5 °C; the foam sinks a "
            "little and gels lose water each time: try it with one piece"
        ),
        source="from_memory",
        checks=("weeping",),
    )
    if last is not None:
        yield _as_kept(FRIDGE, last, keeps(last, "garnish"))
    else:
        minutes = READY["garnish"]
        yield Kept(
            where=FRIDGE,
            minutes=minutes,
            limit=Limit.SAFETY,
            checks=("chilled-life",),
            because=say("usual for what is moist and ready to eat"),
            write=say("assembly: keeps at the last step before it is served"),
        )
    yield Kept(
        where=TABLE,
        minutes=WARM,
        limit=Limit.SAFETY,
        because=say("what is moist does not stand warm for more than two hours in all"),
        source="fda_food_code",
        checks=("hours-in-the-warm",),
    )


def _steps(dessert: Dessert) -> Iterator[Waiting]:
    """What waits between two steps, where the later one states how soon it must come."""
    runs = [(c.id, c.name, c.steps) for c in dessert.components]
    runs.append(("assembly", dessert.document.name, tuple(dessert.document.assembly)))
    for prefix, name, steps in runs:
        for number in range(1, len(steps)):
            step, before = steps[number], steps[number - 1]
            if step.within is not None:
                yield Waiting(
                    id=step.id or f"{prefix}-{number + 1}",
                    name=say(
                        "{name}, between {before} and {step}",
                        name=name,
                        before=before.step,
                        step=step.step,
                    ),
                    kept=(_within(before, step.within),),
                )


def _within(before: AnyStep, seconds: float) -> Kept:
    return Kept(
        where=TABLE,
        minutes=int(seconds // 60.0),
        limit=Limit.SAFETY if limit_after(before) is Limit.SAFETY else Limit.CRAFT,
        stated=True,
        because=say("the document says how soon the next step must follow"),
        source="",
    )


def _as_kept(where: str, step: AnyStep, found: Keeps) -> Kept:
    stated = step.keeps is not None
    return Kept(
        where=where,
        minutes=found.minutes,
        limit=found.limit,
        stated=stated,
        because=say("the document says so") if stated else say("usual after such a step"),
        write="" if stated else say("keeps at the step {step}", step=step.step),
        source="" if stated else "common_practice",
        checks=CHECKS[where],
    )


CHECKS = {
    FREEZER: ("freezer-temperature",),
    FRIDGE: ("chilled-life", "fridge-temperature"),
    TABLE: ("hours-in-the-warm",),
}
