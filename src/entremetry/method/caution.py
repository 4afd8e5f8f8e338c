"""What to beware of in a method, with its source; no promise that anything is harmless."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import reduce

from entremetry.method.peak import peaks, reached
from entremetry.method.portion import Portion
from entremetry.method.step import AnyStep
from entremetry.words import decimal, say, say_later

HOT_SUGAR = 383.15  # K
EGG_DONE = 344.15  # K, 71 °C (160 °F)
ENZYMES_GONE = 358.15  # K, 85 °C
COOLING_STARTS = 330.15  # K, 57 °C
MOIST = 0.4  # water share of the lines; our own rule


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    """One thing to beware of, and the key of who says so."""

    text: str
    source: str


DEFERENCE = Caution(
    text=say_later(
        "These cautions are worked out from the written steps alone and promise nothing: the "
        "food rules of your place, your thermometer and your senses decide, and when in doubt, "
        "throw it away. Take more care still for small children, pregnancy, old age and weak "
        "immune systems."
    ),
    source="our_own",
)
"""As it is written; `cautions` says it in the language that is spoken."""


def cautions(
    lines: Mapping[str, Portion], steps: Sequence[AnyStep], *, component: str
) -> tuple[Caution, ...]:
    """Cautions for one component; the last always defers to the rules of the place.

    Raises
    ------
    DocumentError
        With every name that is unknown, used twice or never joined.
    """
    highest = peaks(tuple(lines), steps, component=component)
    found = [
        *_hot_sugar(steps),
        *_raw_egg(lines, highest),
        *_raw_flour(lines, highest),
        *_enzymes(lines, highest),
        *_alcohol(lines),
        *_cooling(lines, highest),
    ]
    return (*found, _deference())


def gathered(groups: Iterable[Iterable[Caution]]) -> tuple[Caution, ...]:
    """Cautions of several components, each said once, the deference last."""
    once = dict.fromkeys(caution for group in groups for caution in group)
    once.pop(_deference(), None)
    return (*once, _deference())


def _deference() -> Caution:
    return replace(DEFERENCE, text=say(DEFERENCE.text))


def _hot_sugar(steps: Sequence[AnyStep]) -> list[Caution]:
    hottest = max((reached(step) for step in steps), default=0.0)
    if hottest < HOT_SUGAR:
        return []
    text = say(
        "Sugar above 110 °C (230 °F) sticks and burns deep: long sleeves, a deep pan, no "
        "children near it, no water onto it. Cool a burn under running water for 20 minutes, "
        "without ice."
    )
    return [Caution(text=text, source="from_memory")]


def _raw_egg(lines: Mapping[str, Portion], highest: Mapping[str, float]) -> list[Caution]:
    names = _names(lines, "raw-egg", highest, below=EGG_DONE)
    if not names:
        return []
    text = say(
        "The method does not say that {names} reaches 71 °C (160 °F): use pasteurised egg, "
        "which carries the same masses, or heat it and measure; and tell your guests.",
        names=names,
    )
    return [Caution(text=text, source="fda_food_code")]


def _raw_flour(lines: Mapping[str, Portion], highest: Mapping[str, float]) -> list[Caution]:
    names = _names(lines, "raw-flour", highest, below=EGG_DONE)
    if not names:
        return []
    text = say(
        "Raw {names} is eaten here: it is not cleaned of germs, so bake it first.", names=names
    )
    return [Caution(text=text, source="from_memory")]


def _enzymes(lines: Mapping[str, Portion], highest: Mapping[str, float]) -> list[Caution]:
    names = _names(lines, "proteolytic", highest, below=ENZYMES_GONE)
    if not names or not any(line.is_gelatine for line in lines.values()):
        return []
    text = say(
        "Raw {names} cuts gelatine to pieces and it never sets: bring the fruit to 85 °C "
        "(185 °F) right through and let it cool, use tinned fruit, or set it with agar or pectin.",
        names=names,
    )
    return [Caution(text=text, source="common_practice")]


def _alcohol(lines: Mapping[str, Portion]) -> list[Caution]:
    alcohol = sum(line.constituents.alcohol for line in lines.values())
    mass = sum(line.mass for line in lines.values())
    if not alcohol > 0.0:
        return []
    text = say(
        "Holds {percent} % alcohol by mass as weighed; cooking drives off "
        "only a part and freezing none. Not for children, in pregnancy, before driving or for "
        "whoever keeps from alcohol: tell your guests.",
        percent=decimal(f"{100.0 * alcohol / mass:.2g}"),
    )
    return [Caution(text=text, source="usda_retention_2007")]


def _cooling(lines: Mapping[str, Portion], highest: Mapping[str, float]) -> list[Caution]:
    delicate = [name for name, line in lines.items() if _keeps_badly(line)]
    if not _is_moist(lines) or not any(highest[name] >= COOLING_STARTS for name in delicate):
        return []
    text = say(
        "Cooked egg and dairy must pass quickly through the warm range: from 57 °C (135 °F) to "
        "21 °C (70 °F) within 2 hours, and to 5 °C (41 °F) within 6 hours in all, unless it is "
        "eaten at once or your rules ask for more."
    )
    return [Caution(text=text, source="fda_food_code")]


def _is_moist(lines: Mapping[str, Portion]) -> bool:
    """Whether it stays wetter than a biscuit or sponge, which keep without cold."""
    mass = sum(line.mass for line in lines.values())
    return sum(line.constituents.water for line in lines.values()) > MOIST * mass


def _keeps_badly(line: Portion) -> bool:
    parts = line.constituents
    moist = parts.water > 0.3 * line.mass
    return "raw-egg" in line.tags or (moist and (parts.lactose + parts.milk_fat) > 0.0)


def _names(
    lines: Mapping[str, Portion], tag: str, highest: Mapping[str, float], *, below: float
) -> str:
    names = [
        line.name[:1].lower() + line.name[1:]
        for key, line in lines.items()
        if tag in line.tags and highest[key] < below
    ]
    return reduce(_and, dict.fromkeys(names), "")


def _and(names: str, last: str) -> str:
    return say("{names} and {last}", names=names, last=last) if names else last
