"""Answers of the use cases, kept while they are asked for again."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from entremetry.dessert.batch_sheet import BatchSheet
from entremetry.larder.larder import Larder
from entremetry.publish.drawing import section_svg
from entremetry.usecases.batch import batch_of_text, surroundings
from entremetry.web.speech import kept_by_language
from entremetry.words import say


@dataclass(frozen=True, slots=True, kw_only=True)
class Choices:
    """What a person chose on the dessert page; what is not chosen is as the document says."""

    pieces: int | None = None
    mould: str | None = None
    have: tuple[str, str] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """A batch sheet with its drawing."""

    sheet: BatchSheet
    drawing: Markup

    @property
    def total(self) -> float:
        """Mass to make of all components together. [kg]"""
        return sum(component.mass.value for component in self.sheet.components)


@kept_by_language(512)
def answer(text: str, file: str, choices: Choices, kitchen_text: str | None) -> Answer:
    """Batch sheet of a text for these choices; EntremetryError as the use case raises it."""
    sheet = batch_of_text(
        text,
        file=file,
        pieces=choices.pieces,
        mould=choices.mould,
        kitchen_text=kitchen_text,
        have=choices.have,
    )
    drawing = section_svg(
        sheet.section, title=say("{name}, cut through the middle", name=sheet.name)
    )
    return Answer(sheet=sheet, drawing=Markup(drawing))


def reckoned(text: str, file: str, kitchen_text: str | None) -> Answer:
    """The answer to a document as it stands; EntremetryError as the use case raises it."""
    return answer(text, file, Choices(), kitchen_text)


@kept_by_language(256)
def small_drawing(text: str, file: str, kitchen_text: str | None) -> Markup:
    """Drawing of a dessert without words, for a card."""
    sheet = answer(text, file, Choices(), kitchen_text).sheet
    return Markup(
        section_svg(sheet.section, title=say("{name} in section", name=sheet.name), labelled=False)
    )


@kept_by_language(4)
def larder(kitchen_text: str | None) -> Larder:
    """Larder with the kitchen's own ingredients."""
    return surroundings(kitchen_text, "kitchen").larder
