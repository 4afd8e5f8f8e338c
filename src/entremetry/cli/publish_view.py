"""What was published, as JSON and as text for a terminal."""

from __future__ import annotations

import json

from entremetry.usecases.publishing import Published


def as_json(published: Published) -> str:
    """One JSON object with the files written."""
    return json.dumps(
        {
            "id": published.sheet.id,
            "pieces": published.sheet.pieces,
            "files": [str(path) for path in published.files],
        },
        ensure_ascii=False,
        indent=2,
    )


def as_text(published: Published) -> str:
    """The files written, a line each."""
    return "\n".join(f"written: {path}" for path in published.files)
