"""Backups: what is in one beside what is here, and one put in place of the library."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from entremetry.store import Kind, StoredDocument
from entremetry.usecases.library import KITCHEN, desserts, listed_name

if TYPE_CHECKING:
    from entremetry.store.library import Library


@dataclass(frozen=True, slots=True, kw_only=True)
class Holding:
    """What a library holds: names of its desserts and plans, and when it last changed."""

    desserts: tuple[str, ...]
    plans: tuple[str, ...]
    kitchen: bool
    changed_at: datetime | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Beside:
    """A backup beside the library: what each holds, and desserts that are not the same in both."""

    there: Holding
    here: Holding
    only_there: tuple[str, ...]
    only_here: tuple[str, ...]
    unlike: tuple[str, ...]


def look_into(library: Library, backup: Path, *, name: str) -> Beside:
    """Compare a backup with the library; nothing is changed.

    Raises
    ------
    StoreError
        If the file, which its owner calls `name`, is no library of ours.
    """
    from entremetry.store.incoming_library import opened_backup

    with opened_backup(backup, name=name) as other:
        return beside(other, library)


def bring_back(library: Library, backup: Path, *, name: str, aside: Path) -> None:
    """Put a backup in place of the library, which is in the new file `aside` from then on.

    Raises
    ------
    StoreError
        If either file is not as it has to be; nothing is changed then.
    """
    from entremetry.store.incoming_library import opened_backup

    with opened_backup(backup, name=name) as other:
        library.become(other, aside)


def beside(other: Library, library: Library) -> Beside:
    """Two libraries, by the ids and the newest texts of their desserts."""
    there, here = _by_id(other), _by_id(library)
    return Beside(
        there=holding(other),
        here=holding(library),
        only_there=_names(there, there.keys() - here.keys()),
        only_here=_names(here, here.keys() - there.keys()),
        unlike=_names(
            here, {key for key in here.keys() & there.keys() if here[key].text != there[key].text}
        ),
    )


def holding(library: Library) -> Holding:
    """What a library holds."""
    documents = [each for kind in Kind for each in library.documents(kind)]
    plans = library.plans.all()
    moments = [each.revision.changed_at for each in documents] + [each.made_at for each in plans]
    every = _by_id(library)
    return Holding(
        desserts=_names(every, every.keys()),
        plans=tuple(plan.name for plan in plans),
        kitchen=library.find(Kind.KITCHEN, KITCHEN) is not None,
        changed_at=max(moments, default=None),
    )


def _by_id(library: Library) -> Mapping[str, StoredDocument]:
    return {each.id: each for each in desserts(library)}


def _names(documents: Mapping[str, StoredDocument], ids: Collection[str]) -> tuple[str, ...]:
    wanted = (each for key, each in documents.items() if key in ids)
    return tuple(sorted((listed_name(each.id, each.text) for each in wanted), key=str.casefold))
