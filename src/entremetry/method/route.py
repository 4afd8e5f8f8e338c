"""Which lines and bowls enter at which step, worked out from names alone."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from entremetry.errors import DocumentError, Fault, nearest_names
from entremetry.method.step import AnyStep
from entremetry.method.work import MAIN
from entremetry.words import quoted, say

ASIDE = ("soak", "weigh")  # steps at which the lines that no step names do not enter yet


@dataclass(frozen=True, slots=True, kw_only=True)
class Stop:
    """What enters at one step: into which bowl, which lines, which other bowls.

    `soaked` are lines that stand in the bowl since they were soaked and meet the rest now; `adds`
    tells that the bowl holds something else before anything enters.
    """

    bowl: str
    lines: tuple[str, ...] = ()
    bowls: tuple[str, ...] = ()
    soaked: tuple[str, ...] = ()
    adds: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Route:
    """The stops of all steps, and the bowl in which everything ends."""

    stops: tuple[Stop, ...]
    last_bowl: str


@dataclass(slots=True, kw_only=True)
class _Survey:
    """State while the steps are walked through; faults are collected, not raised."""

    lines: tuple[str, ...]
    steps: tuple[AnyStep, ...]
    component: str
    used: set[str] = field(default_factory=set)
    holds: dict[str, set[str]] = field(default_factory=dict)
    soaked: dict[str, tuple[str, ...]] = field(default_factory=dict)
    removed: set[str] = field(default_factory=set)
    faults: list[Fault] = field(default_factory=list)

    def fault(
        self, index: int | None, key: str, found: str, name: str, accepted: Iterable[str]
    ) -> None:
        names = sorted(accepted)
        step = "" if index is None else f".{index}"
        self.faults.append(
            Fault(
                field=f"components.{self.component}.method{step}{key}",
                found=found,
                accepted=", ".join(names) or say("nothing is left to name here"),
                nearest=nearest_names(name, names),
            )
        )


def route(lines: Sequence[str], steps: Sequence[AnyStep], *, component: str) -> Route:
    """Follow every line from the scale to the last bowl.

    A name in `what` is a line the first time and afterwards the bowl of that name. A step that
    names a single line and no bowl sets it aside under its own name if a later step names it
    again. Lines that no step names enter the main bowl at its first step that is no soaking.

    Raises
    ------
    DocumentError
        With every name that is unknown, used twice or never joined.
    """
    survey = _Survey(lines=tuple(lines), steps=tuple(steps), component=component)
    bowls = _bowls(survey)
    unnamed = _unnamed(survey)
    first = _first_stop(survey, bowls)
    stops = []
    for index, step in enumerate(survey.steps):
        extra = unnamed if index == first else ()
        stops.append(_stop(survey, index, step, bowls[index], extra))
    last_bowl = _last_bowl(survey)
    if survey.faults:
        raise DocumentError(survey.faults)
    return Route(stops=tuple(stops), last_bowl=last_bowl)


def _bowls(survey: _Survey) -> tuple[str, ...]:
    return tuple(_bowl(survey, index, step) for index, step in enumerate(survey.steps))


def _bowl(survey: _Survey, index: int, step: AnyStep) -> str:
    if step.bowl is not None:
        return step.bowl
    if len(step.what) == 1 and step.what[0] in survey.lines:
        before = {name for other in survey.steps[:index] for name in other.what}
        after = {name for other in survey.steps[index + 1 :] for name in other.what}
        if step.what[0] in after - before:
            return step.what[0]
    return MAIN


def _unnamed(survey: _Survey) -> tuple[str, ...]:
    named = {name for step in survey.steps for name in step.what}
    return tuple(line for line in survey.lines if line not in named)


def _first_stop(survey: _Survey, bowls: Sequence[str]) -> int:
    in_main = [index for index, bowl in enumerate(bowls) if bowl == MAIN]
    working = [index for index in in_main if survey.steps[index].step not in ASIDE]
    return next(iter(working or in_main or [0]))


def _stop(survey: _Survey, index: int, step: AnyStep, bowl: str, extra: Sequence[str]) -> Stop:
    filled = bool(survey.holds.get(bowl))
    lines: list[str] = []
    bowls: list[str] = []
    for name in step.what:
        if name in survey.lines and name not in survey.used and name not in lines:
            lines.append(name)
        elif survey.holds.get(name) and name != bowl:
            bowls.append(name)
            survey.holds.setdefault(bowl, set()).update(survey.holds.pop(name))
        elif name != bowl or name in lines:
            _refuse(survey, index, name, bowl)
    lines.extend(extra)
    survey.used.update(lines)
    survey.holds.setdefault(bowl, set()).update(lines)
    _require_contents(survey, index, step, bowl)
    _remove(survey, index, step, bowl)
    soaked = survey.soaked.pop(bowl, ())
    if step.step == "soak" and (soaked or not filled):
        survey.soaked[bowl] = (*soaked, *lines)
        soaked = ()
    adds = filled and not soaked
    return Stop(bowl=bowl, lines=tuple(lines), bowls=tuple(bowls), soaked=soaked, adds=adds)


def _refuse(survey: _Survey, index: int, name: str, bowl: str) -> None:
    free = [line for line in survey.lines if line not in survey.used]
    bowls = [held for held, contents in survey.holds.items() if contents and held != bowl]
    twice = name in survey.lines
    used = say("'{name}', which has been used already", name=name)
    survey.fault(index, ".what", used if twice else quoted(name), name, [*free, *bowls])


def _require_contents(survey: _Survey, index: int, step: AnyStep, bowl: str) -> None:
    if survey.holds[bowl] or step.step == "weigh":
        return
    filled = [name for name, contents in survey.holds.items() if contents]
    found = say("'{bowl}', a bowl with nothing in it", bowl=bowl)
    survey.fault(index, ".bowl", found, bowl, filled)


def _remove(survey: _Survey, index: int, step: AnyStep, bowl: str) -> None:
    if step.step != "strain":
        return
    for name in step.removes:
        there = survey.holds[bowl] - survey.removed
        if name not in there:
            found = say("'{name}', which is not in this bowl", name=name)
            survey.fault(index, ".removes", found, name, there)
        survey.removed.add(name)


def _last_bowl(survey: _Survey) -> str:
    filled = [name for name, contents in survey.holds.items() if contents]
    last = MAIN if MAIN in filled or not filled else filled[-1]
    for name in filled:
        if name != last:
            found = say("'{name}', a bowl that never joins the others", name=name)
            survey.fault(
                None, "", found, name, [say("a later step with what: [{name}]", name=name)]
            )
    return last
