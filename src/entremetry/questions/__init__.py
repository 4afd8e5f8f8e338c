"""What people ask of a dessert, answered from computed facts: typed questions, no free text."""

from entremetry.questions.answer import Answer, Fact, Reply
from entremetry.questions.question import (
    Contains,
    Instead,
    OtherMould,
    Question,
    Wait,
    WentWrong,
    Without,
)

__all__ = [
    "Answer",
    "Contains",
    "Fact",
    "Instead",
    "OtherMould",
    "Question",
    "Reply",
    "Wait",
    "WentWrong",
    "Without",
]
