"""Sentences as markup in which a page's script finds the amounts that it may change."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from entremetry.dessert.batch_sheet import FillStep
from entremetry.publish.markup import escaped
from entremetry.publish.reader_text import Part
from entremetry.publish.typography import typeset
from entremetry.quantities import format_length, format_mass

if TYPE_CHECKING:
    from markupsafe import Markup


def marked_method(parts: Sequence[Part], component: int) -> Markup:
    """A sentence of a method; each amount knows its component and the mass of one formula."""
    from markupsafe import Markup

    return Markup(
        "".join(
            escaped(typeset(part.text))
            if part.mass is None
            else f'<span data-scaled="{component}" data-mass="{part.mass:.6g}">'
            f"{escaped(typeset(part.text))}</span>"
            for part in parts
        )
    )


def marked_fill(step: FillStep, number: int) -> Markup:
    """A step of filling; its mass knows its number, its level the millimetres as published."""
    from markupsafe import Markup

    text = escaped(typeset(step.text))
    if step.mass is not None:
        shown = escaped(typeset(format_mass(step.mass)))
        text = text.replace(shown, f'<span data-fill="{number}">{shown}</span>', 1)
    level = round((step.below_rim or 0.0) * 1e3)
    if level:
        before, shown, after = text.rpartition(escaped(typeset(format_length(level / 1e3))))
        text = f'{before}<span data-level="{level}">{shown}</span>{after}' if shown else text
    return Markup(text)
