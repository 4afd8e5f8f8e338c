"""The published schema is the one of the program, and helps whoever writes a document."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from entremetry.usecases.schema import Kind, schema, schema_text

REFERENCE = Path(__file__).parents[3] / "docs" / "reference"
KINDS: tuple[Kind, ...] = ("dessert", "kitchen", "price")


def quantities(value: Any) -> Iterator[dict[str, Any]]:
    """Every part of a schema that has a pattern and examples: a quantity as written."""
    if isinstance(value, dict):
        if "pattern" in value and "examples" in value:
            yield value
        for inside in value.values():
            yield from quantities(inside)
    elif isinstance(value, list):
        for inside in value:
            yield from quantities(inside)


@pytest.mark.parametrize("kind", KINDS)
def test_the_committed_schema_is_current(kind: Kind) -> None:
    committed = (REFERENCE / f"{kind}.schema.json").read_text(encoding="utf-8")
    assert committed == schema_text(kind)
    assert json.loads(committed)["$schema"].endswith("2020-12/schema")


@pytest.mark.parametrize("kind", KINDS)
def test_every_quantity_has_a_description_and_fitting_examples(
    kind: Kind,
) -> None:
    found = list(quantities(schema(kind)))
    assert found
    for quantity in found:
        assert quantity["description"]
        assert all(re.search(quantity["pattern"], example) for example in quantity["examples"])


def test_keys_are_those_a_document_writes() -> None:
    definitions = schema("dessert")["$defs"]
    assert "as" in definitions["FillingPlacement"]["properties"]
    assert set(schema("dessert")["required"]) == {
        "entremetry", "id", "name", "pieces", "mould", "components", "placement",
    }  # fmt: skip


@pytest.mark.parametrize("kind", KINDS)
def test_unknown_keys_are_refused_by_the_schema_too(kind: Kind) -> None:
    for name, definition in {"document": schema(kind), **schema(kind)["$defs"]}.items():
        if "properties" in definition:
            assert definition.get("additionalProperties") is False, name
