"""The numbers to say in a video: step by step as written, as shown and as said."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from entremetry.dessert.batch_sheet import BatchSheet, ComponentBatch, FillStep, IngredientAmount
from entremetry.publish.description_text import by_hand
from entremetry.publish.json_ld import fill_heading, recipe_yield, said
from entremetry.publish.spoken import in_both_scales, shown, spoken
from entremetry.publish.typesetting import line
from entremetry.publish.typography import NARROW, grams
from entremetry.quantities.mentions import mentions
from entremetry.quantities.unit import Kind
from entremetry.words import decimal, say, say_later

LEAD = say_later(
    "Written is what the page says, with both scales of temperature; shown is for the picture; "
    "said is for the voice. The three never disagree."
)
LABELS = (say_later("written"), say_later("shown"), say_later("said"))
GROUP = re.compile(rf"(?<=\d){NARROW}(?=\d)")


def spoken_sheet(sheet: BatchSheet) -> str:
    """Text with every amount and every step three times over."""
    title = said(say("{name}: numbers to say aloud", name=line(sheet.name)))
    parts = [f"{title}\n{recipe_yield(sheet)}\n\n{said(say(LEAD))}"]
    for component in sheet.components:
        weigh = say("Weigh")
        weighed = "\n".join(_weighed(each) for each in component.lines)
        parts.append(f"{line(component.name).upper()}\n\n{weigh}\n{weighed}")
        if component.method:
            parts.append(_steps(say("Make"), component.method))
    densities = {component.id: component for component in sheet.components}
    filling = [filled(step, densities.get(step.component)) for step in sheet.fill_steps]
    if filling:
        parts.append(_steps(fill_heading(sheet), filling))
    if sheet.assembly:
        parts.append(_steps(say("Put together"), sheet.assembly))
    if sheet.cautions:
        parts.append(_steps(say("Say this too"), sheet.cautions))
    return "\n\n".join(parts) + "\n"


def filled(step: FillStep, component: ComponentBatch | None) -> str:
    """A fill step with the volume beside its mass."""
    text = said(line(step.text))
    mass = next((each for each in mentions(text) if each.kind is Kind.MASS), None)
    if step.mass is None or mass is None or component is None:
        return text
    volume = step.mass / component.density.value * 1e6
    millilitres = decimal(f"{volume:.0f}" if volume >= 10.0 else f"{volume:.1f}")
    about = say("(about {volume})", volume=f"{millilitres} ml")
    return f"{text[: mass.end]} {about}{text[mass.end :]}"


def _weighed(each: IngredientAmount) -> str:
    """One amount: grams, what a hand measures, and of what."""
    mass, name = _plain(grams(each.mass)), _plain(each.name)
    household = _plain(by_hand(each.household))
    beside = f" ({household})" if household else ""
    named = spoken(name)
    told = (
        say(
            "{mass}, or {measure}: {name}", mass=spoken(mass), measure=spoken(household), name=named
        )
        if household
        else say("{mass}: {name}", mass=spoken(mass), name=named)
    )
    _, picture, voice = (_label(say(each)) for each in LABELS)
    return f"  {picture}{mass}{beside} {name}\n  {voice}{said(told)}"


def _label(word: str) -> str:
    """A word in front of a line, so wide that what follows stands below what follows others."""
    widest = max(len(say(each)) for each in LABELS)
    return word.ljust(widest + 2)


def _steps(name: str, sentences: Sequence[str]) -> str:
    return "\n".join([name, *_told(sentences)])


def _told(sentences: Sequence[str]) -> Iterator[str]:
    pen, picture, voice = (_label(say(each)) for each in LABELS)
    for number, sentence in enumerate(sentences, start=1):
        written = in_both_scales(_plain(sentence))
        quantities = shown(written)
        yield f"{number}. {pen}{written}"
        if quantities:
            yield f"   {picture}{' · '.join(quantities)}"
        yield f"   {voice}{spoken(written)}"


def _plain(text: str) -> str:
    """Text in one line with plain spaces, and none within a number."""
    return said(line(GROUP.sub("", text)))
