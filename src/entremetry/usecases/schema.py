"""The published JSON Schema of the documents."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any, Literal

if TYPE_CHECKING:
    from pydantic import BaseModel

Kind = Literal["dessert", "kitchen", "price"]
DIALECT = "https://json-schema.org/draft/2020-12/schema"


def schema(of: Kind) -> dict[str, Any]:
    """JSON Schema of the dessert, of the kitchen or of the price document."""
    from entremetry.dessert.document import DessertDocument
    from entremetry.kitchen.kitchen_document import KitchenDocument
    from entremetry.labels.price_document import PriceDocument

    models: dict[Kind, type[BaseModel]] = {
        "dessert": DessertDocument,
        "kitchen": KitchenDocument,
        "price": PriceDocument,
    }
    return {"$schema": DIALECT, **models[of].model_json_schema(by_alias=True)}


def schema_text(of: Kind) -> str:
    """The schema as it is committed: indented, keys in a fixed order, newline at the end."""
    return json.dumps(schema(of), indent=2, ensure_ascii=False) + "\n"
