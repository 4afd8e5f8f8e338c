"""The list of sources, made from the bibliography."""

from __future__ import annotations

from entremetry.sources import BIBLIOGRAPHY, Source, Standing

HEAD = """\
# Sources

<!-- Written by tools/reference from the program; change the program, then run `make fix`. -->

Who says so. The key is how the program and its pages cite a source. What we know of but could
not read in print stands under its own heading, and so does what the trade does without a source.
"""


def source_page() -> str:
    """Text of the page."""
    return "\n".join([HEAD, *(part for standing in Standing for part in section(standing))])


def section(standing: Standing) -> list[str]:
    """All sources of one standing."""
    entries = [source for source in BIBLIOGRAPHY.values() if source.standing is standing]
    if not entries:
        return []
    return [f"## {standing.value.capitalize()}\n", *map(entry, entries), ""]


def entry(source: Source) -> str:
    """One source as an item of a list."""
    return f"- `{source.key}`: {' '.join(source.text.split())}"
