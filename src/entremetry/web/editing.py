"""The page on which a document's text is edited, for desserts and kitchens alike."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import ClassVar

from entremetry.errors import Fault
from entremetry.store import Origin, Revision
from entremetry.usecases.library import Opened
from entremetry.web.comparing import ComparedLine, compared
from entremetry.words import say_later

ORIGINS: Mapping[Origin, str] = MappingProxyType(
    {
        Origin.DEMO: say_later("as the program brought it"),
        Origin.NEW: say_later("written new"),
        Origin.EDIT: say_later("edited"),
        Origin.UNDO: say_later("an undo"),
        Origin.RESTORED: say_later("brought back"),
    }
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Subject:
    """What is edited, where its forms go, and how the page speaks of it.

    `heading` is said already, for it may hold a name; the other words are messages.
    """

    id: str
    thing: str
    untouched: str
    heading: str
    lead: str
    label: str
    action: str
    revisions: str
    back: str
    back_words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class EditPage:
    """Context of edit.html."""

    template: ClassVar[str] = "edit.html"
    id: str
    thing: str
    untouched: str
    heading: str
    lead: str
    label: str
    action: str
    revisions: str
    back: str
    back_words: str
    text: str
    started_from: int
    newest: int
    faults: tuple[Fault, ...]
    conflict: str
    comparison: tuple[ComparedLine, ...]
    is_draft: bool
    can_undo: bool
    history: tuple[Revision, ...]
    origins: Mapping[Origin, str]


def opened_page(subject: Subject, opened: Opened) -> EditPage:
    """Page with the draft if there is one, else with the newest text."""
    draft = opened.draft
    if draft is None:
        return _page(subject, opened, opened.text, opened.revision)
    return _page(subject, opened, draft.text, draft.started_from, is_draft=True)


def faulty_page(
    subject: Subject, opened: Opened, text: str, started_from: int, faults: tuple[Fault, ...]
) -> EditPage:
    """Page with a text as it was sent, and what is wrong with it."""
    return _page(subject, opened, text, started_from, faults=faults)


def conflict_page(subject: Subject, opened: Opened, text: str, told: str) -> EditPage:
    """Page with a text as it was sent beside the newest, ready to be saved on purpose."""
    return _page(
        subject,
        opened,
        text,
        opened.revision,
        conflict=told,
        comparison=compared(opened.text, text),
    )


def _page(
    subject: Subject,
    opened: Opened,
    text: str,
    started_from: int,
    *,
    faults: tuple[Fault, ...] = (),
    conflict: str = "",
    comparison: tuple[ComparedLine, ...] = (),
    is_draft: bool = False,
) -> EditPage:
    return EditPage(
        id=subject.id,
        thing=subject.thing,
        untouched=subject.untouched,
        heading=subject.heading,
        lead=subject.lead,
        label=subject.label,
        action=subject.action,
        revisions=subject.revisions,
        back=subject.back,
        back_words=subject.back_words,
        text=text,
        started_from=started_from,
        newest=opened.revision,
        faults=faults,
        conflict=conflict,
        comparison=comparison,
        is_draft=is_draft,
        can_undo=opened.can_undo,
        history=opened.history,
        origins=ORIGINS,
    )
