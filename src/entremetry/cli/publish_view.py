"""What was published, as JSON and as text for a terminal."""

from __future__ import annotations

import json

from entremetry.usecases.publishing import Published


def as_json(published: Published) -> str:
    """One JSON object with the files written and the texts that stand as the author wrote them."""
    return json.dumps(
        {
            "id": published.sheet.id,
            "pieces": published.sheet.pieces,
            "language": published.language,
            "untranslated": published.untranslated,
            "files": [str(path) for path in published.files],
        },
        ensure_ascii=False,
        indent=2,
    )


def as_text(published: Published) -> str:
    """The files written, a line each."""
    return "\n".join(f"written: {path}" for path in published.files)


def untranslated_text(published: Published) -> str:
    """Which of the author's texts have no translation; nothing if all have one."""
    missing = published.untranslated
    if not missing:
        return ""
    one = len(missing) == 1
    return (
        f"{len(missing)} {'text' if one else 'texts'} of yours "
        f"{'is' if one else 'are'} not under 'translations: {published.language}' of the document "
        f"and {'stays' if one else 'stay'} as written: {'; '.join(map(repr, missing))}"
    )
