"""The recipe page: one file that needs nothing else."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING

from entremetry.dessert.batch_sheet import BatchSheet
from entremetry.publish import typography
from entremetry.publish.colour import Colour, hex_colour, legible
from entremetry.publish.drawing import section_svg
from entremetry.publish.json_ld import fill_heading, recipe_json_ld, script_text, stretches
from entremetry.publish.markup import plain
from entremetry.publish.palette import KIND_COLOURS, flavour

if TYPE_CHECKING:
    from jinja2 import Environment

LIGHT_GROUND: Colour = (251, 246, 236)
DARK_GROUND: Colour = (28, 22, 20)
LARGEST = 500_000  # bytes; a page weighs far less


def recipe_page(
    sheet: BatchSheet,
    *,
    allergens: Sequence[str] = (),
    author: str = "",
    date_published: date | None = None,
    keywords: Sequence[str] = (),
    image: str = "section.svg",
) -> str:
    """Whole page as HTML: readable without scripts, printable, light and dark.

    The drawing stands in the page itself. Its structured data name `image`, the same drawing as
    a file beside the page: readers of structured data take an address, not a picture in text.
    `allergens` are in words, in the order of the list they follow.
    """
    from markupsafe import Markup

    structured = recipe_json_ld(
        sheet, image=image, author=author, date_published=date_published, keywords=keywords
    )
    drawing = section_svg(sheet.section, title=f"Section of {sheet.name}")
    template = environment().get_template("recipe_page.html")
    return template.render(
        sheet=sheet,
        author=author or sheet.author,
        date_published=date_published,
        allergens=allergens,
        accent=accent(sheet.name),
        style=Markup(stylesheet("recipe_page.css")),
        structured=Markup(script_text(structured)),
        drawing=Markup(drawing),
        stretches=stretches(sheet)[len([c for c in sheet.components if c.method]) :],
        fill_heading=fill_heading(sheet),
        named_by_size=any(letter.isdigit() for letter in sheet.mould.name),
    )


def accent(name: str) -> dict[str, str]:
    """Colour of headings on light and on dark paper: that of the flavour in a name."""
    own = flavour(name) or KIND_COLOURS["glaze"]
    return {
        "light": hex_colour(legible(own, LIGHT_GROUND)),
        "dark": hex_colour(legible(own, DARK_GROUND)),
    }


@cache
def stylesheet(name: str) -> str:
    """A style sheet that stands inside a page."""
    place = files("entremetry.publish") / "templates" / name
    return place.read_text(encoding="utf-8")


@cache
def environment() -> Environment:
    """Templates, with everything foreign escaped and stripped of control characters."""
    from jinja2 import Environment, PackageLoader, StrictUndefined

    templates = Environment(
        loader=PackageLoader("entremetry.publish", "templates"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        finalize=lambda value: plain(value) if type(value) is str else value,
    )
    templates.filters.update(
        grams=typography.grams,
        hours=typography.hours,
        millilitres=typography.millilitres,
        millimetres=typography.millimetres,
        per_cent=typography.per_cent,
        typeset=typography.typeset,
    )
    return templates
