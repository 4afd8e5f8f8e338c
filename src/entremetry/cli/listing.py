"""A heading with its texts, as every answer in a terminal shows them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence


def listed(title: str, texts: Sequence[str]) -> Iterator[str]:
    """A blank line, the title and a line for each text; nothing if there is none."""
    if texts:
        yield ""
        yield title
        for text in texts:
            yield f"  - {text}"
