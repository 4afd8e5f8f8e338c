"""The numbers to say in a video: step by step as written, as shown and as said."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from entremetry.dessert.batch_sheet import BatchSheet, ComponentBatch, FillStep, IngredientAmount
from entremetry.publish.description_text import by_hand
from entremetry.publish.json_ld import fill_heading, recipe_yield, said
from entremetry.publish.spoken import in_both_scales, shown, spoken
from entremetry.publish.typesetting import line
from entremetry.publish.typography import NARROW, grams
from entremetry.quantities.mentions import mentions
from entremetry.quantities.unit import Kind

LEAD = (
    "Written is what the page says, with both scales of temperature; shown is for the picture; "
    "said is for the voice. The three never disagree."
)


def spoken_sheet(sheet: BatchSheet) -> str:
    """Text with every amount and every step three times over."""
    parts = [f"{line(sheet.name)}: numbers to say aloud\n{recipe_yield(sheet)}\n\n{LEAD}"]
    for component in sheet.components:
        weighed = "\n".join(_weighed(each) for each in component.lines)
        parts.append(f"{line(component.name).upper()}\n\nWeigh\n{weighed}")
        if component.method:
            parts.append(_steps("Make", component.method))
    densities = {component.id: component for component in sheet.components}
    filling = [filled(step, densities.get(step.component)) for step in sheet.fill_steps]
    if filling:
        parts.append(_steps(fill_heading(sheet), filling))
    if sheet.assembly:
        parts.append(_steps("Put together", sheet.assembly))
    if sheet.cautions:
        parts.append(_steps("Say this too", sheet.cautions))
    return "\n\n".join(parts) + "\n"


def filled(step: FillStep, component: ComponentBatch | None) -> str:
    """A fill step with the volume beside its mass."""
    text = said(line(step.text))
    mass = next((each for each in mentions(text) if each.kind is Kind.MASS), None)
    if step.mass is None or mass is None or component is None:
        return text
    volume = step.mass / component.density.value * 1e6
    millilitres = f"{volume:.0f}" if volume >= 10.0 else f"{volume:.1f}"
    return f"{text[: mass.end]} (about {millilitres} ml){text[mass.end :]}"


def _weighed(each: IngredientAmount) -> str:
    """One amount: grams, what a hand measures, and of what."""
    mass, name = _plain(grams(each.mass)), _plain(each.name)
    household = _plain(by_hand(each.household))
    beside = f" ({household})" if household else ""
    other = f", or {spoken(household)}" if household else ""
    return f"  shown    {mass}{beside} {name}\n  said     {spoken(mass)}{other}: {spoken(name)}"


def _steps(name: str, sentences: Sequence[str]) -> str:
    return "\n".join([name, *_told(sentences)])


def _told(sentences: Sequence[str]) -> Iterator[str]:
    for number, sentence in enumerate(sentences, start=1):
        written = in_both_scales(_plain(sentence))
        quantities = shown(written)
        yield f"{number}. written  {written}"
        if quantities:
            yield f"   shown    {' · '.join(quantities)}"
        yield f"   said     {spoken(written)}"


def _plain(text: str) -> str:
    """Text in one line with plain spaces, and none within a number."""
    return said(line(text.replace(NARROW, "")))
