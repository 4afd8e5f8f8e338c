"""The published JSON Schema of the documents."""

from __future__ import annotations

import json
from typing import Any, Literal

DIALECT = "https://json-schema.org/draft/2020-12/schema"


def schema(of: Literal["dessert", "kitchen"]) -> dict[str, Any]:
    """JSON Schema of the dessert or of the kitchen document."""
    from entremetry.dessert.document import DessertDocument
    from entremetry.kitchen.kitchen_document import KitchenDocument

    model = DessertDocument if of == "dessert" else KitchenDocument
    return {"$schema": DIALECT, **model.model_json_schema(by_alias=True)}


def schema_text(of: Literal["dessert", "kitchen"]) -> str:
    """The schema as it is committed: indented, keys in a fixed order, newline at the end."""
    return json.dumps(schema(of), indent=2, ensure_ascii=False) + "\n"
