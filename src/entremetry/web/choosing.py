"""What a person chose on the dessert page, and what comes of it."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, replace

from markupsafe import Markup

from entremetry.dessert.batch_sheet import BatchSheet
from entremetry.errors import DocumentError, EntremetryError, Fault, QuantityError
from entremetry.publish.typography import millilitres
from entremetry.web.answers import Choices, answer
from entremetry.web.rendering import fragment
from entremetry.web.speech import kept_by_language
from entremetry.words import say, say_later

NO_DRAWING = Markup("")
PLAIN_NUMBER = re.compile(r"[0-9]+([.,][0-9]+)?")
MEND_DOCUMENT = say_later("Mend it in the document; nothing is lost meanwhile.")
MEND_CHOICE = say_later("Choose another mould or number of pieces, or change the document.")


@dataclass(frozen=True, slots=True, kw_only=True)
class View:
    """A sheet with its drawing, or the trouble that stands in its way. Total mass in kg."""

    sheet: BatchSheet | None = None
    total: float = 0.0
    drawing: Markup = NO_DRAWING
    chosen_mould: str = ""
    trouble: str = ""
    faults: tuple[Fault, ...] = ()
    advice: str = ""
    markup: Markup = Markup("")

    @property
    def names(self) -> dict[str, str]:
        """Name of each component by its id."""
        components = self.sheet.components if self.sheet else ()
        return {component.id: component.name for component in components}


def view(text: str, file: str, asked: Mapping[str, str], kitchen: str | None) -> View:
    """Show a dessert as asked for."""
    try:
        return _chosen_view(text, file, choices(asked), kitchen)
    except QuantityError as error:
        return _with_markup(View(trouble=str(error), advice=say(MEND_CHOICE)), file)


@kept_by_language(256)
def _chosen_view(text: str, file: str, chosen: Choices, kitchen: str | None) -> View:
    return _with_markup(_bare_view(text, file, chosen, kitchen), file)


def _with_markup(shown: View, file: str) -> View:
    return replace(shown, markup=fragment("sheet.html", id=file, view=shown))


def _bare_view(text: str, file: str, chosen: Choices, kitchen: str | None) -> View:
    try:
        found = answer(text, file, chosen, kitchen)
    except DocumentError as error:
        first = str(error).splitlines()[0]
        return View(trouble=first, faults=error.faults, advice=say(MEND_DOCUMENT))
    except EntremetryError as error:
        return View(trouble=str(error), advice=say(MEND_CHOICE))
    return View(
        sheet=found.sheet,
        total=found.total,
        drawing=found.drawing,
        chosen_mould=mould_words(found.sheet),
    )


def mould_words(sheet: BatchSheet) -> str:
    """Name of a mould and what it holds."""
    held = millilitres(sheet.mould.cavity_volume.value)
    return say("{mould}, {volume}", mould=sheet.mould.name, volume=held)


def choices(asked: Mapping[str, str]) -> Choices:
    """Choices in a query.

    Raises
    ------
    QuantityError
        If the number of pieces is no whole number.
    """
    mould = asked.get("mould", "").strip() or None
    have = _have(asked.get("have_of", "").strip(), asked.get("have_g", "").strip())
    pieces = None if have else _pieces(asked.get("pieces", "").strip())
    return Choices(pieces=pieces, mould=mould, have=have)


def _pieces(text: str) -> int | None:
    if not text:
        return None
    if not (text.isascii() and text.isdigit() and len(text) <= 9):
        raise QuantityError(
            say("'{found}' pieces", found=text[:40]), say("a whole number, such as 12")
        )
    return int(text)


def _have(ingredient: str, mass: str) -> tuple[str, str] | None:
    if not ingredient or not mass:
        return None
    plain = PLAIN_NUMBER.fullmatch(mass)
    return ingredient, f"{mass.replace(',', '.')} g" if plain else mass
