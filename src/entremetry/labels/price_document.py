"""The price document: what ingredients, hands and power cost, as written in YAML.

This module alone of the room loads pydantic, so the room does not re-export it.
"""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

from entremetry.documents import Tree, at_current_version, read_tree, validate
from entremetry.quantities.fields import Fraction

Money = Annotated[float, Field(ge=0, le=1e9, allow_inf_nan=False)]


class _Priced(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)


class PackPrice(_Priced):
    """What a pack of an ingredient holds and costs."""

    pack: Annotated[str, Field(max_length=80)] = Field(
        description="What one pack holds: a mass, a volume, or things the larder can weigh.",
        examples=["1 kg", "500 ml", "10 large egg (EU)"],
    )
    price: Money = Field(description="Price of one pack, in the currency of the document.")
    usable: Fraction | None = Field(
        default=None,
        gt=0,
        le=1,
        description="Share of the pack that can be used; else what the larder knows of peel and "
        "stones.",
    )
    note: Annotated[str, Field(max_length=1000)] = ""


class PriceDocument(_Priced):
    """What things cost, in one currency."""

    entremetry_prices: Literal[1] = Field(description="Version of this format.")
    currency: Annotated[str, Field(pattern=r"^[A-Z]{3}$")] = Field(
        description="Code of the currency of all prices: EUR, USD, GBP.", examples=["EUR"]
    )
    prices: dict[Annotated[str, Field(min_length=1, max_length=120)], PackPrice] = Field(
        default_factory=dict,
        max_length=2000,
        description="Prices by the id or name of the ingredient.",
    )
    labour_per_hour: Money | None = Field(default=None, description="What an hour of hands costs.")
    energy_per_kwh: Money | None = Field(
        default=None, description="What a kilowatt hour costs; without it no energy is counted."
    )
    margin: Annotated[Fraction, Field(ge=0, lt=1)] | None = Field(
        default=None, description="Wanted share of the selling price that is not cost: 65 %."
    )
    note: Annotated[str, Field(max_length=10_000)] = ""


def read_prices(text: str, *, file: str) -> tuple[PriceDocument, Tree]:
    """Read a price document and where each part of it stands.

    Raises
    ------
    DocumentError
        With everything that is wrong in its form.
    """
    tree = at_current_version(read_tree(text, file=file), key="entremetry_prices", file=file)
    return validate(PriceDocument, tree, file=file), tree
