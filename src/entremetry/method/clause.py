"""A step as an imperative sentence, as a cook would say it, in the language that is spoken.

What is put into a message may begin with a blank or be nothing: `{what}` are the names of what
enters, `{time}` how long it takes. So a language orders a sentence by its messages alone.
"""

from __future__ import annotations

from entremetry.method.cooking import CoolTo, Fold, Heated, Soak, Stir, Strain, Weigh, Whip
from entremetry.method.heating import heated
from entremetry.method.phrases import (
    capital,
    kept_at,
    lasting,
    listed,
    oven,
    soaked,
    spoken,
    taking,
)
from entremetry.method.shaping import Bake, Cut, Fill, Place, Pour, Roll
from entremetry.method.step import AnyStep
from entremetry.method.telling import Telling
from entremetry.method.waiting import FreezeUntil, GlazeAt, Hold, Rest, Serve, ThawUntil
from entremetry.quantities.printing import (
    format_fraction,
    format_length,
    format_mass,
    format_temperature,
)
from entremetry.words import decimal, say

ADDING_THEMSELVES = Stir | Fold | Fill | GlazeAt | Place


def told(step: AnyStep, telling: Telling) -> str:
    """One sentence for one step; the note of the author follows as it was written."""
    body = _body(step, telling)
    if step.within is not None:
        body = say("within {time}, {clause}", time=spoken(step.within), clause=body)
    keeps = "" if step.keeps is None else say("It keeps for {time}.", time=spoken(step.keeps))
    return " ".join(part for part in (f"{capital(body)}.", keeps, step.note) if part)


def _body(step: AnyStep, telling: Telling) -> str:
    what = f" {listed(telling.entering)}" if telling.entering else ""
    before = f" {soaked(telling.soaked)}" if telling.soaked else ""
    if before and what and isinstance(step, Heated):
        clause = _clause(step, what, telling)
        return say("{clause}; off the heat, stir in{soaked}", clause=clause, soaked=before)
    if before:
        both = say("{what} and{soaked}", what=what, soaked=before) if what else before
        return _clause(step, both, telling)
    if telling.adds and what and not isinstance(step, ADDING_THEMSELVES):
        return say("add{what} and {clause}", what=what, clause=_clause(step, "", telling))
    return _clause(step, what, telling)


def _clause(step: AnyStep, what: str, telling: Telling) -> str:
    match step:
        case Heated():
            return heated(step, what, telling.factor)
        case Whip():
            until, time = _whipped(step), lasting(step.time)
            return say("whip{what}{until}{time}", what=what, until=until, time=time)
        case Bake():
            return _baked(step, what, telling)
        case FreezeUntil():
            return say("freeze{what}{until}", what=what, until=_until(step))
        case ThawUntil():
            return say("thaw{what}{until}", what=what, until=_until(step))
        case Rest() | Hold():
            return _waiting(step, what)
    return _plain(step, what, telling)


def _plain(step: AnyStep, what: str, telling: Telling) -> str:
    match step:
        case Weigh():
            return say("weigh out{what}", what=what) if what else say("weigh out everything")
        case Soak():
            end = f"{_water(step, telling)}{lasting(step.time)}"
            return say("soak{what}{end}", what=what, end=end)
        case Stir():
            return _stirred(what, telling, lasting(step.time))
        case Fold():
            return say("fold in{what}", what=what) if telling.adds else _folded(what)
        case CoolTo():
            to = format_temperature(step.temperature)
            return say(
                "cool{what} to {temperature}{how}", what=what, temperature=to, how=_how(step)
            )
        case Strain():
            return say("strain{what}{without}", what=what, without=_without(telling))
    return _shaped(step, what, telling)


def _stirred(what: str, telling: Telling, time: str) -> str:
    if not what:
        return say("mix well{time}", time=time)
    if telling.adds:
        return say("stir in{what}{time}", what=what, time=time)
    return say("mix{what}{time}", what=what, time=time)


def _folded(what: str) -> str:
    return say("fold{what} together", what=what)


def _without(telling: Telling) -> str:
    if not telling.removed:
        return ""
    return say(", taking out {names}", names=listed(telling.removed))


def _shaped(step: AnyStep, what: str, telling: Telling) -> str:
    match step:
        case Roll():
            thick = format_length(step.thickness)
            return say("roll out{what} {thickness} thick", what=what, thickness=thick)
        case Cut():
            return say("cut{what} to shape{trimmed}", what=what, trimmed=_trimmed(step))
        case Pour():
            return say("pour{what}", what=what) if what else say("pour out, ready for use")
        case Place():
            return say("put{what} in place", what=what) if what else say("put it in place")
        case Fill():
            return _filled(telling.into, say(" with{what}", what=what) if what else "")
        case GlazeAt():
            glaze = say(" with{what}", what=what) if what else ""
            to = format_temperature(step.temperature)
            return say("glaze{glaze} at {temperature}", glaze=glaze, temperature=to)
        case Serve():
            return say("serve{what}{time}", what=what, time=lasting(step.time))
    return say("unmould{what}", what=what)


def _filled(into: str, content: str) -> str:
    match into:
        case "moulds":
            return say("fill the moulds{content}", content=content)
        case "glasses":
            return say("fill the glasses{content}", content=content)
        case "vessels":
            return say("fill the vessels{content}", content=content)
    return say("fill the mould{content}", content=content)


def _trimmed(step: Cut) -> str:
    if not step.trim:
        return ""
    return say(", trimming off about {share}", share=format_fraction(step.trim))


def _how(step: CoolTo) -> str:
    way = ""
    if step.ice_bath:
        way = say(" in ice water")
    elif step.where == "fridge":
        way = say(" in the fridge")
    covered = say(", covered") if step.covered else ""
    return f"{way}{covered}{taking(step.time)}"


def _whipped(step: Whip) -> str:
    if step.overrun is not None:
        times = decimal(f"{1.0 + step.overrun:.2g}")
        return say(" to {number} times the volume", number=times)
    if step.density is not None:
        return say(" until 100 ml weighs {mass}", mass=format_mass(step.density * 1e-4))
    return ""


def _baked(step: Bake, what: str, telling: Telling) -> str:
    setting = oven(step.at, written_for_fan=step.fan, oven_fan=telling.oven_fan)
    end = lasting(step.time)
    if step.loss:
        end += say(", until it weighs {share} less", share=format_fraction(step.loss))
    return say("bake{what} at {setting}{end}", what=what, setting=setting, end=end)


def _until(step: FreezeUntil | ThawUntil) -> str:
    if step.temperature is None:
        return lasting(step.time)
    centre = say(
        " until the centre is at {temperature}", temperature=format_temperature(step.temperature)
    )
    return f"{centre}{taking(step.time)}"


def _waiting(step: Rest | Hold, what: str) -> str:
    at = kept_at(step.temperature)
    if isinstance(step, Rest):
        return say("leave{what} to rest{end}", what=what, end=f"{at}{lasting(step.time)}")
    up_to = "" if step.time is None else say(" for up to {time}", time=spoken(step.time))
    if what:
        return say("keep{what}{end}", what=what, end=f"{at}{up_to}")
    return say("keep it{end}", end=f"{at}{up_to}")


def _water(step: Soak, telling: Telling) -> str:
    water = step.water * telling.factor if step.water is not None else telling.water
    return say(" in {mass} cold water", mass=format_mass(water)) if water else ""
