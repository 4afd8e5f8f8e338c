"""Answers and what can be asked, as JSON and as text for a terminal."""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from dataclasses import asdict
from typing import Any

from entremetry.adapt.rebalanced import Change
from entremetry.questions.answer import Answer, Fact
from entremetry.questions.choices import Choice, Choices
from entremetry.questions.own_mould import SHAPES
from entremetry.sources import Standing, cite

FEW = 4
NO_PROMISE = (
    "Worked out from the document alone. No promise: your thermometer, your senses and the food "
    "rules of your place decide."
)


def as_json(answer: Answer) -> str:
    """One JSON object; masses of the changes in grams."""
    return _dumped(
        {
            "kind": answer.kind,
            "question": answer.question,
            "reply": answer.reply.value,
            "says": answer.says,
            "facts": [_fact(fact) for fact in answer.facts],
            "changes": [_change(change) for change in answer.changes],
            "checks": list(answer.checks),
            "document": answer.document or None,
        }
    )


def as_text(answer: Answer) -> str:
    """The answer first, then its facts with reason and source, then the changes."""
    return "\n".join(_lines(answer))


def choices_as_json(choices: Choices) -> str:
    """One JSON object with what can be asked of the dessert."""
    return _dumped({**asdict(choices), "shapes": {s.word: list(s.sizes) for s in SHAPES.values()}})


def choices_text(choices: Choices) -> str:
    """What can be asked, each with the option to ask it with."""
    return "\n".join(_choice_lines(choices))


def _lines(answer: Answer) -> Iterator[str]:
    yield answer.question
    yield answer.says
    for fact in answer.facts:
        yield ""
        yield f"  - {fact.text}"
        for more in (fact.because, _source(fact)):
            if more:
                yield f"    {more}"
    if answer.changes:
        yield ""
        yield "Changed:"
        for change in answer.changes:
            where = f"{change.component}: " if change.component else ""
            yield f"  - {where}{change.text}"
    if answer.checks:
        yield ""
        yield f"Bench checks that decide: {', '.join(answer.checks)}"
    if answer.document:
        yield "The adapted document: ask again with --to FILE."
    yield ""
    yield NO_PROMISE


def _source(fact: Fact) -> str:
    if not fact.source:
        return ""
    source = cite(fact.source)
    text = source.text.rstrip(".") if source.standing is Standing.PUBLISHED else source.standing
    return f"({text})"


def _choice_lines(choices: Choices) -> Iterator[str]:
    yield "Something else instead: --instead LINE --have INGREDIENT"
    for line in choices.instead:
        near = ", ".join(each.value for each in line.alike[:FEW])
        yield f"  {line.value}{f'  (such as {near})' if near else ''}"
    yield ""
    yield "Another mould: --mould ID, --holds '75 ml', or --shape with --size:"
    for shape in SHAPES.values():
        yield f"  {shape.word}  ({shape.asks})"
    yield from _listed("Can it wait? --wait PART, with --for or --until, and --where", choices.wait)
    yield from _listed("Can I leave it out? --without NAME", choices.without)
    yield from _listed("What went wrong? --symptom ID", choices.symptoms)
    yield ""
    yield "Does it contain that? --contains NAME"


def _listed(title: str, choices: Sequence[Choice]) -> Iterator[str]:
    yield ""
    yield title
    width = max(len(each.value) for each in choices)
    for each in choices:
        yield f"  {each.value:<{width}}  {each.words}"


def _fact(fact: Fact) -> dict[str, Any]:
    return {
        "text": fact.text,
        "because": fact.because,
        "source": fact.source or None,
        "source_text": cite(fact.source).text if fact.source else None,
    }


def _change(change: Change) -> dict[str, Any]:
    return {
        "component": change.component,
        "line": change.line,
        "kind": change.kind,
        "text": change.text,
        "because": change.because,
        "before_g": _grams(change.before),
        "after_g": _grams(change.after),
    }


def _grams(mass: float | None) -> float | None:
    return None if mass is None else float(f"{mass * 1e3:.7g}")


def _dumped(told: dict[str, Any]) -> str:
    return json.dumps(told, ensure_ascii=False, indent=2, allow_nan=False)
