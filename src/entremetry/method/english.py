"""Steps in English: imperative sentences, as a cook would say them."""

from __future__ import annotations

from entremetry.method.cooking import (
    CookTo,
    CoolTo,
    Fold,
    Heated,
    Melt,
    Simmer,
    Soak,
    Stir,
    Strain,
    Weigh,
    Whip,
)
from entremetry.method.english_words import capital, listed, oven, spoken
from entremetry.method.shaping import Bake, Cut, Fill, Place, Pour, Roll
from entremetry.method.share import Part
from entremetry.method.step import AnyStep
from entremetry.method.telling import Telling
from entremetry.method.waiting import FreezeUntil, GlazeAt, Hold, Rest, Serve, ThawUntil
from entremetry.method.work import Work
from entremetry.quantities.printing import (
    format_fraction,
    format_length,
    format_mass,
    format_temperature,
)

SYRUP = 378.15  # K; from here on one boils rather than heats, and does not stir


def english(step: AnyStep, told: Telling) -> str:
    """One sentence for one step; the note of the author follows as it was written."""
    body = _body(step, told)
    if step.within is not None:
        body = f"within {spoken(step.within)}, {body}"
    keeps = "" if step.keeps is None else f"It keeps for {spoken(step.keeps)}."
    return " ".join(part for part in (f"{capital(body)}.", keeps, step.note) if part)


def _body(step: AnyStep, told: Telling) -> str:
    what = f" {listed(told.entering)}" if told.entering else ""
    soaked = f" the soaked {listed(told.soaked).removeprefix('the ')}" if told.soaked else ""
    if soaked and what and isinstance(step, Heated):
        return f"{_clause(step, what, told)}; off the heat, stir in{soaked}"
    if soaked:
        return _clause(step, f"{what} and{soaked}" if what else soaked, told)
    if told.adds and what and not isinstance(step, Stir | Fold | Fill | GlazeAt | Place):
        return f"add{what} and {_clause(step, '', told)}"
    return _clause(step, what, told)


def _clause(step: AnyStep, what: str, told: Telling) -> str:
    match step:
        case Heated():
            return _heated(step, what, told)
        case Whip():
            return f"whip{what}{_whipped(step)}{_for(step)}"
        case Bake():
            return _baked(step, what, told)
        case FreezeUntil() | ThawUntil():
            verb = "freeze" if isinstance(step, FreezeUntil) else "thaw"
            return f"{verb}{what}{_until(step)}"
        case Rest() | Hold():
            return _waiting(step, what)
    return _plain(step, what, told)


def _plain(step: AnyStep, what: str, told: Telling) -> str:
    match step:
        case Weigh():
            return f"weigh out{what or ' everything'}"
        case Soak():
            return f"soak{what}{_water(step, told)}{_for(step)}"
        case Stir():
            verb = "stir in" if told.adds and what else "mix"
            return f"{verb}{what or ' well'}{_for(step)}"
        case Fold():
            return f"fold in{what}" if told.adds else f"fold{what} together"
        case CoolTo():
            return f"cool{what} to {format_temperature(step.temperature)}{_cooled(step)}"
        case Strain():
            out = f", taking out {listed(told.removed)}" if told.removed else ""
            return f"strain{what}{out}"
    return _shaped(step, what, told)


def _shaped(step: AnyStep, what: str, told: Telling) -> str:
    match step:
        case Roll():
            return f"roll out{what} {format_length(step.thickness)} thick"
        case Cut():
            trim = f", trimming off about {format_fraction(step.trim)}" if step.trim else ""
            return f"cut{what} to shape{trim}"
        case Pour():
            return f"pour{what}" if what else "pour out, ready for use"
        case Place():
            return f"put{what or ' it'} in place"
        case Fill():
            return f"fill the {told.into}" + (f" with{what}" if what else "")
        case GlazeAt():
            with_ = f" with{what}" if what else ""
            return f"glaze{with_} at {format_temperature(step.temperature)}"
        case Serve():
            return f"serve{what}{_for(step)}"
    return f"unmould{what}"


def _heated(step: Heated, what: str, told: Telling) -> str:
    to = "" if step.temperature is None else f" to {format_temperature(step.temperature)}"
    end = _end(step, told.factor)
    match step:
        case Melt():
            return f"melt{what}{to}{_about(step)}{end}"
        case CookTo() if step.temperature >= SYRUP:
            return f"boil{what}{to}{_about(step)}{end}"
        case CookTo():
            return f"heat{what}{to}, stirring{_about(step)}{end}"
    at_for = f"{to.replace(' to ', ' at ', 1)}{_for(step)}"
    if step.evaporates is not None and not at_for:
        return f"simmer{what} until {_lost(step.evaporates, told.factor)}"
    return f"simmer{what}{at_for}{end if at_for else end.removeprefix(',')}"


def _end(step: Heated, factor: float) -> str:
    if step.to_mass is not None:
        return f", until {format_mass(step.to_mass * factor)} is left"
    if isinstance(step, Simmer) and step.to_brix is not None:
        return f", until it has {step.to_brix:.4g} °Brix"
    if step.evaporates is not None:
        return f"; {_gone(step.evaporates, factor)}"
    return ""


def _gone(part: Part, factor: float) -> str:
    if part.mass is not None:
        return f"about {format_mass(part.mass * factor)} of water boils away"
    return f"it loses about {format_fraction(part.fraction or 0.0)} of its weight"


def _lost(part: Part, factor: float) -> str:
    if part.mass is not None:
        return f"{format_mass(part.mass * factor)} of water has boiled away"
    return f"it has lost {format_fraction(part.fraction or 0.0)} of its weight"


def _cooled(step: CoolTo) -> str:
    way = " in ice water" if step.ice_bath else " in the fridge" if step.where == "fridge" else ""
    return f"{way}{', covered' if step.covered else ''}{_about(step)}"


def _whipped(step: Whip) -> str:
    if step.overrun is not None:
        return f" to {1.0 + step.overrun:.2g} times the volume"
    if step.density is not None:
        return f" until 100 ml weighs {format_mass(step.density * 1e-4)}"
    return ""


def _baked(step: Bake, what: str, told: Telling) -> str:
    setting = oven(step.at, written_for_fan=step.fan, oven_fan=told.oven_fan)
    loss = f", until it weighs {format_fraction(step.loss)} less" if step.loss else ""
    return f"bake{what} at {setting}{_for(step)}{loss}"


def _until(step: FreezeUntil | ThawUntil) -> str:
    if step.temperature is None:
        return _for(step)
    return f" until the centre is at {format_temperature(step.temperature)}{_about(step)}"


def _waiting(step: Rest | Hold, what: str) -> str:
    at = "" if step.temperature is None else f" at {format_temperature(step.temperature)}"
    if isinstance(step, Rest):
        return f"leave{what} to rest{at}{_for(step)}"
    up_to = "" if step.time is None else f" for up to {spoken(step.time)}"
    return f"keep{what or ' it'}{at}{up_to}"


def _water(step: Soak, told: Telling) -> str:
    water = step.water * told.factor if step.water is not None else told.water
    return f" in {format_mass(water)} cold water" if water else ""


def _for(step: Work) -> str:
    return "" if step.time is None else f" for {spoken(step.time)}"


def _about(step: Work) -> str:
    return "" if step.time is None else f", about {spoken(step.time)}"
