"""Steps on the stove as clauses: how hot, how long, and how much water goes."""

from __future__ import annotations

from entremetry.method.cooking import CookTo, Heated, Melt, Simmer
from entremetry.method.phrases import kept_at, lasting, taking, warmed
from entremetry.method.share import Part
from entremetry.quantities.printing import format_fraction, format_mass
from entremetry.words import decimal, say

SYRUP = 378.15  # K; from here on one boils rather than heats, and does not stir


def heated(step: Heated, what: str, factor: float) -> str:
    """One step on the stove, its masses times `factor`."""
    to, end = warmed(step.temperature), f"{taking(step.time)}{_end(step, factor)}"
    match step:
        case Melt():
            return say("melt{what}{to}{end}", what=what, to=to, end=end)
        case CookTo() if step.temperature >= SYRUP:
            return say("boil{what}{to}{end}", what=what, to=to, end=end)
        case CookTo():
            return say("heat{what}{to}, stirring{end}", what=what, to=to, end=end)
    return _simmered(step, what, factor)


def _simmered(step: Heated, what: str, factor: float) -> str:
    end = f"{kept_at(step.temperature)}{lasting(step.time)}"
    if end:
        return say("simmer{what}{end}", what=what, end=f"{end}{_end(step, factor)}")
    if step.evaporates is not None:
        return say("simmer{what} {until}", what=what, until=_lost(step.evaporates, factor))
    if until := _until(step, factor):
        return say("simmer{what} {until}", what=what, until=until)
    return say("simmer{what}{end}", what=what, end="")


def _end(step: Heated, factor: float) -> str:
    """What ends the step, behind all that was said before."""
    if until := _until(step, factor):
        return say(", {until}", until=until)
    return "" if step.evaporates is None else _gone(step.evaporates, factor)


def _until(step: Heated, factor: float) -> str:
    if step.to_mass is not None:
        return say("until {mass} is left", mass=format_mass(step.to_mass * factor))
    if isinstance(step, Simmer) and step.to_brix is not None:
        return say("until it has {number} °Brix", number=decimal(f"{step.to_brix:.4g}"))
    return ""


def _gone(part: Part, factor: float) -> str:
    if part.mass is not None:
        mass = format_mass(part.mass * factor)
        return say("; about {mass} of water boils away", mass=mass)
    share = format_fraction(part.fraction or 0.0)
    return say("; it loses about {share} of its weight", share=share)


def _lost(part: Part, factor: float) -> str:
    if part.mass is not None:
        mass = format_mass(part.mass * factor)
        return say("until {mass} of water has boiled away", mass=mass)
    share = format_fraction(part.fraction or 0.0)
    return say("until it has lost {share} of its weight", share=share)
