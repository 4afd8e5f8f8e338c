"""A drafted document as JSON and as text for a terminal."""

from __future__ import annotations

import json
from collections.abc import Iterator

from entremetry.dessert.draft import Draft


def as_json(draft: Draft) -> str:
    """One JSON object with the document, remarks and the questions still open."""
    return json.dumps(
        {
            "complete": draft.complete,
            "document": draft.document,
            "remarks": list(draft.remarks),
            "questions": [
                {
                    "key": question.key,
                    "about": question.about,
                    "text": question.text,
                    "choices": [
                        {"answer": answer, "label": label} for answer, label in question.choices
                    ],
                    "example": question.example,
                }
                for question in draft.questions
            ],
        },
        ensure_ascii=False,
        indent=2,
    )


def questions_text(draft: Draft) -> str:
    """The questions still open, with how to answer them."""
    return "\n".join(_questions(draft))


def _questions(draft: Draft) -> Iterator[str]:
    count = len(draft.questions)
    yield f"{count} question{'s' if count > 1 else ''} still open; answer with --answer KEY=ANSWER"
    for question in draft.questions:
        yield ""
        yield f"{question.key}: {question.text}  ('{question.about}')"
        for answer, label in question.choices:
            yield f"    {question.key}={answer}" + (f"   {label}" if label != answer else "")
        if question.example:
            yield f"    or in your own words, such as {question.key}='{question.example}'"
