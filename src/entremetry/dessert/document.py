"""The dessert document: what the author decides, as written in YAML."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field

from entremetry.dessert.placement import Placement
from entremetry.documents.tree import shown
from entremetry.errors import QuantityError
from entremetry.kitchen.mould_document import MouldDocument
from entremetry.larder.own import OwnIngredient
from entremetry.method.step import Step
from entremetry.quantities.fields import Density, Length, LengthFromZero
from entremetry.words import say

VERSION = 1
MAX_PIECES = 10_000

Identifier = Annotated[
    str,
    Field(
        pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$",
        max_length=80,
        description="Lower-case words joined by hyphens: blackcurrant-mousse.",
    ),
]
Title = Annotated[str, Field(min_length=1, max_length=120)]
Prose = Annotated[str, Field(max_length=10_000)]
LanguageCode = Annotated[str, Field(pattern=r"^[a-z]{2,3}(_[A-Za-z]+)*$", max_length=20)]
ComponentKind = Literal["mousse", "insert", "base", "glaze", "soak", "crumble", "garnish"]


class _Frozen(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)


class LineDocument(_Frozen):
    """One line of a formula: an amount of an ingredient or of another component."""

    amount: str = Field(
        description="A mass, a volume or a count: 240 g, 100 ml, 1 1/2 us tbsp, 2 sheets.",
        examples=["240 g", "2 sheets", "1 us tbsp"],
        max_length=80,
    )
    ingredient: str | None = Field(
        default=None, max_length=120, description="Id or name; the line's own name if left out."
    )
    component: Identifier | None = Field(
        default=None, description="Another component of this dessert that goes in."
    )
    note: Prose = ""
    ask: str | None = Field(
        default=None,
        max_length=400,
        description="A question still open; the document cannot be computed until it is gone.",
    )


def _line(value: Any) -> Any:
    """Let a bare text stand for the amount; say what is wanted where neither stands."""
    if isinstance(value, str):
        return {"amount": value}
    if isinstance(value, dict | LineDocument):
        return value
    accepted = say("an amount with its unit, such as 240 g, or a mapping such as {amount: 240 g}")
    raise QuantityError(shown(value), accepted)


Line = Annotated[LineDocument, BeforeValidator(_line, json_schema_input_type=str | LineDocument)]


class ComponentDocument(_Frozen):
    """A formula with its method."""

    name: Title
    kind: ComponentKind
    formula: Annotated[dict[Identifier, Line], Field(min_length=1, max_length=60)]
    method: list[Step] = Field(default_factory=list, max_length=100)
    density: Density | None = Field(
        default=None, description="The author's own measurement of the finished component."
    )
    note: Prose = ""


class PortionsDocument(_Frozen):
    """How a frame is cut into pieces."""

    length: Length
    width: Length
    trim: LengthFromZero = 0.0


class DessertDocument(_Frozen):
    """One dessert: its components, its mould, how they are placed, how many pieces."""

    entremetry: Literal[1] = Field(description="Version of this format.")
    id: Identifier
    name: Title
    about: Prose = ""
    author: Annotated[str, Field(max_length=200)] = ""
    keywords: list[Annotated[str, Field(max_length=60)]] = Field(
        default_factory=list, max_length=30
    )
    measures: Literal["us", "metric", "au", "uk"] | None = Field(
        default=None, description="Whose cups and spoons the lines mean."
    )
    pieces: Annotated[int, Field(strict=True, ge=1, le=MAX_PIECES)]
    serves: Annotated[int, Field(strict=True, ge=1, le=1000)] = 1
    mould: Identifier | MouldDocument
    ingredients: dict[Identifier, OwnIngredient] = Field(default_factory=dict, max_length=200)
    components: Annotated[dict[Identifier, ComponentDocument], Field(min_length=1, max_length=30)]
    placement: Annotated[list[Placement], Field(max_length=60)]
    portions: PortionsDocument | None = None
    assembly: list[Step] = Field(default_factory=list, max_length=100)
    note: Prose = ""
    translations: dict[
        LanguageCode,
        Annotated[
            dict[
                Annotated[str, Field(max_length=10_000)],
                Annotated[str, Field(min_length=1, max_length=10_000)],
            ],
            Field(max_length=1000),
        ],
    ] = Field(
        default_factory=dict,
        max_length=20,
        description="Texts of this document in other languages: under the code of a language, "
        "each text exactly as it is written here and what it is called there.",
    )
    ask: list[Annotated[str, Field(max_length=400)]] = Field(
        default_factory=list,
        max_length=200,
        description="Questions still open; the document cannot be computed until they are gone.",
    )
