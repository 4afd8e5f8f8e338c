"""A rebalanced component told: lines and measures before and after, and all that changed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from types import MappingProxyType

from entremetry.adapt.asking import Asked
from entremetry.adapt.behaviour import Behaviour
from entremetry.adapt.rebalanced import Change, LineChange, MeasureChange, Rebalanced
from entremetry.adapt.swapping import Text
from entremetry.dessert.dessert import Line
from entremetry.formula.measures import MEASURES
from entremetry.formula.sweetness import mix_sweetness
from entremetry.formula.wish import Conflict, Wish
from entremetry.larder.spoken_name import ingredient_name
from entremetry.quantities import format_mass
from entremetry.words import say

UNCHANGED = 1e-9  # kg


def told(
    text: str,
    before: Behaviour,
    after: Behaviour,
    wishes: Sequence[Wish],
    swapped: Text,
    asked: Asked,
) -> Rebalanced:
    """Tell what came of it."""
    component = before.component
    lines = tuple(_lines(before, after, asked))
    return Rebalanced(
        component=component.id,
        name=component.name,
        text=text,
        lines=lines,
        measures=tuple(_measures(before, after, wishes)),
        changes=(*swapped.changes, *_masses(component.id, lines, swapped)),
        sweetness=MappingProxyType(
            {"before": mix_sweetness(before.made.mix), "after": mix_sweetness(after.made.mix)}
        ),
    )


def refused(text: str, before: Behaviour, wishes: Sequence[Wish], conflict: Conflict) -> Rebalanced:
    """Tell that there is no formula."""
    component = before.component
    sweet = mix_sweetness(before.made.mix)
    return Rebalanced(
        component=component.id,
        name=component.name,
        text=text,
        lines=tuple(_line(line.name, line, line, False) for line in component.lines),
        measures=tuple(_measures(before, before, wishes)),
        changes=(),
        sweetness=MappingProxyType({"before": sweet, "after": sweet}),
        conflict=conflict,
    )


def _lines(before: Behaviour, after: Behaviour, asked: Asked) -> Iterator[LineChange]:
    old = {line.name: line for line in before.component.lines}
    new = {line.name: line for line in after.component.lines}
    for name in dict.fromkeys([*old, *new]):
        there, here = old.get(name), new.get(name)
        if there and here and _made_of(there) != _made_of(here):
            yield _line(name, there, None, False)
            there = None
        yield _line(name, there, here, _is_pinned(here, asked))


def _line(name: str, before: Line | None, after: Line | None, pinned: bool) -> LineChange:
    known = after or before
    ingredient = known.ingredient if known is not None else None
    return LineChange(
        line=name,
        ingredient=ingredient.id if ingredient else str(known.component if known else name),
        name=ingredient_name(ingredient) if ingredient else name,
        before=before.mass if before else None,
        after=after.mass if after else None,
        pinned=pinned,
    )


def _made_of(line: Line) -> str:
    return line.ingredient.id if line.ingredient else str(line.component)


def _is_pinned(line: Line | None, asked: Asked) -> bool:
    return line is not None and bool({line.name, _made_of(line)} & set(asked.pins))


def _measures(
    before: Behaviour, after: Behaviour, wishes: Sequence[Wish]
) -> Iterator[MeasureChange]:
    wished = {wish.measure.name: wish for wish in wishes}
    was, is_ = before.measured(), after.measured()
    for name, measure in MEASURES.items():
        wish = wished.get(name)
        yield MeasureChange(
            measure=measure,
            before=was[name],
            after=is_[name],
            wish="" if wish is None else "asked" if wish.firm else "kept",
            low=None if wish is None else wish.low,
            high=None if wish is None else wish.high,
            held=wish is None or wish.holds(is_[name]),
        )


def _masses(component: str, lines: Sequence[LineChange], swapped: Text) -> Iterator[Change]:
    gone = {(each.line, each.old.id) for each in swapped.swapped}
    for line in lines:
        if line.after is None and (line.line, line.ingredient) in gone:
            continue
        if line.before is None and line.after is not None:
            text = say("{mass} of {name}", mass=format_mass(line.after), name=line.name)
        elif line.before is not None and line.after is None:
            was = format_mass(line.before)
            text = say("no {name} any more, {before} before", name=line.name, before=was)
        elif abs((line.after or 0.0) - (line.before or 0.0)) > UNCHANGED:
            after, was = format_mass(line.after or 0.0), format_mass(line.before or 0.0)
            text = say("{mass} of {name}, {before} before", mass=after, name=line.name, before=was)
        else:
            continue
        yield Change(
            component=component,
            line=line.line,
            kind="mass",
            text=text,
            before=line.before,
            after=line.after,
        )
