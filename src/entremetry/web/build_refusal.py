"""A change that was not made: why, and everything that was typed for it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from entremetry.documents import field_text
from entremetry.errors import Conflict, DocumentError, EntremetryError, QuantityError
from entremetry.web.build_form import typed_values
from entremetry.web.forms import Form
from entremetry.web.part_path import path_at
from entremetry.words import say

TYPED = ("name", "kind", "as", "lines", "component", "holds", "cavities", "like")


@dataclass(frozen=True, slots=True, kw_only=True)
class Refused:
    """Why a change was refused, what was typed by the name of its field, which fields are at
    fault."""

    reasons: tuple[str, ...]
    typed: Mapping[str, str]
    faulty: tuple[str, ...] = ()


def refused_change(error: EntremetryError, form: Form) -> Refused:
    """What the page says of a change that was refused."""
    typed = dict(typed_values(form)) | {n: form.text(n) for n in TYPED if form.text(n)}
    if isinstance(error, DocumentError):
        reasons = tuple(
            say("Found {found}; accepted: {accepted}.", found=f.found, accepted=f.accepted)
            for f in error.faults
        )
        where = {fault.field for fault in error.faults}
        faulty = tuple(address for address in typed if _field(address) in where)
        return Refused(reasons=reasons, typed=typed, faulty=faulty)
    if isinstance(error, Conflict):
        told = say("This part was changed elsewhere meanwhile, and is shown as it is now.")
        yours = "; ".join(value for value in typed.values() if value)
        return Refused(reasons=(told, say("You had typed: {typed}", typed=yours)), typed={})
    return Refused(reasons=(str(error),), typed=typed)


def _field(address: str) -> str:
    """A place as faults name it; empty if it is none."""
    try:
        return field_text(path_at(address))
    except QuantityError:
        return ""
