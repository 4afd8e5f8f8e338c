"""The recipe page: one file that needs nothing else."""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Sequence
from datetime import date
from functools import cache
from hashlib import sha256
from importlib.resources import files
from typing import TYPE_CHECKING, Any

from entremetry.dessert.batch_sheet import BatchSheet
from entremetry.publish import typography
from entremetry.publish.colour import Colour, hex_colour, legible
from entremetry.publish.days_ahead import bar_svg, scale_svg
from entremetry.publish.drawing import section_svg
from entremetry.publish.json_ld import fill_heading, recipe_json_ld, script_text, stretches
from entremetry.publish.marked import marked_fill, marked_method
from entremetry.publish.markup import plain
from entremetry.publish.page_words import filled, page_words, spoken, spoken_as, spoken_count
from entremetry.publish.palette import KIND_COLOURS, flavour
from entremetry.publish.reader_model import MASS_ERROR, SYSTEMS, TIME_ERROR
from entremetry.publish.reader_page import Reader
from entremetry.words import current, full_date, say, say_later

if TYPE_CHECKING:
    from jinja2 import Environment

LIGHT_GROUND: Colour = (251, 246, 236)
DARK_GROUND: Colour = (28, 22, 20)
LARGEST = 500_000  # bytes; a page weighs far less
SHAPES = {
    "hemisphere": say_later("Half-sphere"),
    "cylinder": say_later("Ring or cylinder"),
    "cone": say_later("Cone or cup"),
    "box": say_later("Box, loaf or frame"),
    "log": say_later("Half-round log"),
    "glass": say_later("Straight glass"),
}
SIZES = (
    ("diameter", say_later("Across the rim, in mm"), 70),
    ("base", say_later("Across the closed end, in mm"), 50),
    ("length", say_later("Long, in mm"), 250),
    ("width", say_later("Wide, in mm"), 80),
    ("height", say_later("High, in mm"), 45),
)


def recipe_page(
    sheet: BatchSheet,
    *,
    allergens: Sequence[str] = (),
    author: str = "",
    date_published: date | None = None,
    keywords: Sequence[str] = (),
    image: str = "section.svg",
    reader: Reader | None = None,
) -> str:
    """Whole page as HTML: readable without scripts, printable, light and dark.

    The drawing stands in the page itself. Its structured data name `image`, the same drawing as
    a file beside the page: readers of structured data take an address, not a picture in text.
    `allergens` are in words, in the order of the list they follow. With a `reader` the page also
    tells how far ahead, what goes wrong and what is in it, and its script takes other moulds.
    """
    from markupsafe import Markup

    structured = recipe_json_ld(
        sheet, image=image, author=author, date_published=date_published, keywords=keywords
    )
    drawing = section_svg(sheet.section, title=say("Section of {name}", name=sheet.name))
    template = environment().get_template("recipe_page.html")
    return template.render(
        sheet=sheet,
        tag=current().tag,
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
        reader=reader,
        **(form_context(sheet, reader) if reader else {}),
    )


def form_context(sheet: BatchSheet, reader: Reader) -> dict[str, Any]:
    """What the reader's controls and the script start from."""
    from markupsafe import Markup

    script = stylesheet("reader.js")
    systems = [(key, SYSTEMS[key]) for key in reader.model["measures"]]
    return {
        "script": Markup(script),
        "script_digest": digest(script),
        "reader_data": Markup(script_text({**reader.model, **page_words()}, indent=None)),
        "signs": current(),
        "reader_shapes": shapes(reader),
        "reader_sizes": SIZES,
        "reader_systems": systems,
        "reader_measures": reader.measures,
        "mass_error": MASS_ERROR,
        "time_error": TIME_ERROR,
        "ahead_scale": Markup(scale_svg()),
    }


def shapes(reader: Reader) -> list[tuple[str, str]]:
    """Shapes that can be chosen: only frames where portions are cut, only vessels for a vessel."""
    if reader.model["portion"]:
        kinds = ["box"]
    elif reader.model["vessel"]:
        kinds = ["glass", "cone", "box"]
    else:
        kinds = list(SHAPES)
    return [(kind, SHAPES[kind]) for kind in kinds]


def digest(text: str) -> str:
    """Name of a script or style by its content, as a content security policy takes it."""
    return f"sha256-{b64encode(sha256(text.encode()).digest()).decode()}"


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
    from markupsafe import Markup

    templates = Environment(
        loader=PackageLoader("entremetry.publish", "templates"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        finalize=lambda value: plain(value) if type(value) is str else value,
    )
    templates.filters.update(
        filled=filled,
        full_date=full_date,
        ahead_bar=lambda row: Markup(bar_svg(row)),
        grams=typography.grams,
        hours=typography.hours,
        marked_fill=marked_fill,
        marked_method=marked_method,
        millilitres=typography.millilitres,
        millimetres=typography.millimetres,
        per_cent=typography.per_cent,
        typeset=typography.typeset,
    )
    templates.globals.update(say=spoken, say_as=spoken_as, say_count=spoken_count)
    return templates
