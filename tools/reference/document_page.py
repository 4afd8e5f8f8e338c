"""The reference pages of the documents, made from their JSON Schema."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from typing import Any

from entremetry.usecases.schema import Kind
from entremetry.usecases.schema import schema as schema_of

WORDS = {"string": "text", "integer": "whole number", "boolean": "yes or no"}


def document_page(kind: Kind) -> str:
    """Text of the page about one kind of document."""
    schema = schema_of(kind)
    command = "entremetry schema" + ("" if kind == "dessert" else f" --{kind}")
    parts = [
        f"# The {kind} document\n",
        "<!-- Written by tools/reference from the program; change the program, then run "
        "`make fix`. -->\n",
        f"{schema.get('description', '')}\n",
        f"The schema itself: {{download}}`{kind}.schema.json <{kind}.schema.json>`, or "
        f"`{command}`.\n",
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
        meaning = " ".join(filter(None, [one_line(value.get("description", "")), default(value)]))
        yield f"| `{key}` | {accepted(value)} | {needed} | {meaning} |"
    yield ""


def default(value: Mapping[str, Any]) -> str:
    """What is taken if a key is left out, where that says anything."""
    taken = value.get("default")
    if taken in (None, "") or "const" in value or isinstance(taken, list | dict):
        return ""
    return f"Default: {json.dumps(taken, ensure_ascii=False)}."


def accepted(value: Mapping[str, Any]) -> str:
    """What a key accepts, in few words."""
    if "$ref" in value:
        return title_of(value["$ref"].rpartition("/")[2])
    if "const" in value:
        return f"`{value['const']}`"
    if "enum" in value:
        return ", ".join(f"`{choice}`" for choice in value["enum"])
    if "discriminator" in value:
        return f"any of the kinds below, told apart by `{value['discriminator']['propertyName']}`"
    for several in ("anyOf", "oneOf", "allOf"):
        if several in value:
            kinds = [accepted(kind) for kind in value[several] if kind.get("type") != "null"]
            return " or ".join(dict.fromkeys(kinds))
    if value.get("type") == "array":
        return f"list of {accepted(value.get('items', {}))}"
    if value.get("type") == "object":
        return f"names, each with {accepted(named_values(value))}"
    return WORDS.get(value.get("type", ""), value.get("type", "anything"))


def named_values(value: Mapping[str, Any]) -> Mapping[str, Any]:
    """Schema of the values of a mapping, whether its names follow a pattern or not."""
    patterns = list(value.get("patternProperties", {}).values())
    free = value.get("additionalProperties")
    return next(iter([*patterns, *([free] if isinstance(free, Mapping) else [])]), {})


def title_of(name: str) -> str:
    """Name of a class as words: OwnIngredient becomes Own ingredient."""
    spaced = "".join(f" {letter.lower()}" if letter.isupper() else letter for letter in name)
    return spaced.strip().removesuffix(" document").capitalize()


def one_line(text: str) -> str:
    """A text without line ends, safe in a table."""
    return " ".join(text.split()).replace("|", "\\|")
