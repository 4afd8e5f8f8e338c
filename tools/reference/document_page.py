"""The reference pages of the documents, made from their JSON Schema."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from typing import Any

from entremetry.dessert.document import DessertDocument
from entremetry.kitchen.kitchen_document import KitchenDocument

DOCUMENTS = {"dessert": DessertDocument, "kitchen": KitchenDocument}


def schema_of(kind: str) -> dict[str, Any]:
    """JSON Schema of a kind of document."""
    return DOCUMENTS[kind].model_json_schema()


def schema_text(kind: str) -> str:
    """The schema as it is committed."""
    return json.dumps(schema_of(kind), indent=2, ensure_ascii=False) + "\n"


def document_page(kind: str) -> str:
    """Text of the page about one kind of document."""
    schema = schema_of(kind)
    parts = [
        f"# The {kind} document\n",
        "<!-- Written by tools/reference from the program; change the program, then run "
        "`make fix`. -->\n",
        f"{schema.get('description', '')}\n",
        f"The schema itself: {{download}}`{kind}.schema.json <{kind}.schema.json>`, or "
        f"`entremetry schema`.\n",
        *section("The document", schema),
    ]
    for name, definition in sorted(schema.get("$defs", {}).items()):
        if "properties" in definition:
            parts.extend(section(title_of(name), definition))
    return "\n".join(parts)


def section(title: str, definition: Mapping[str, Any]) -> Iterator[str]:
    """Yield one table of keys."""
    yield f"## {title}\n"
    if title != "The document":
        yield f"{one_line(definition.get('description', ''))}\n"
    yield "| key | value | needed | meaning |"
    yield "|---|---|---|---|"
    required = definition.get("required", [])
    for key, value in definition["properties"].items():
        needed = "yes" if key in required else ""
        meaning = one_line(value.get("description", ""))
        yield f"| `{key}` | {accepted(value)} | {needed} | {meaning} |"
    yield ""


def accepted(value: Mapping[str, Any]) -> str:
    """What a key accepts, in few words."""
    if "$ref" in value:
        return title_of(value["$ref"].rpartition("/")[2])
    if "const" in value:
        return f"`{value['const']}`"
    if "enum" in value:
        return ", ".join(f"`{choice}`" for choice in value["enum"])
    for several in ("anyOf", "oneOf", "allOf"):
        if several in value:
            kinds = [accepted(kind) for kind in value[several] if kind.get("type") != "null"]
            return " or ".join(dict.fromkeys(kinds))
    if value.get("type") == "array":
        return f"list of {accepted(value.get('items', {}))}"
    if "additionalProperties" in value and isinstance(value["additionalProperties"], Mapping):
        return f"names with {accepted(value['additionalProperties'])}"
    return {"string": "text", "integer": "whole number", "boolean": "yes or no"}.get(
        value.get("type", ""), value.get("type", "anything")
    )


def title_of(name: str) -> str:
    """Name of a class as words: OwnIngredient becomes Own ingredient."""
    spaced = "".join(f" {letter.lower()}" if letter.isupper() else letter for letter in name)
    return spaced.strip().removesuffix(" document").capitalize()


def one_line(text: str) -> str:
    """A text without line ends, safe in a table."""
    return " ".join(text.split()).replace("|", "\\|")
