"""From a symptom to its likeliest causes in one dessert."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from entremetry.checks.diagnosis import Diagnosis, diagnose, find_symptom
from entremetry.checks.symptom import Symptom
from entremetry.checks.symptoms import SYMPTOMS
from entremetry.errors import UnknownName
from entremetry.usecases.checking import Checked, checks


@dataclass(frozen=True, slots=True, kw_only=True)
class Diagnosed:
    """A dessert and what most likely lies behind a symptom in it."""

    id: str
    name: str
    diagnosis: Diagnosis


def symptoms() -> tuple[Symptom, ...]:
    """All symptoms one can ask about."""
    return SYMPTOMS


def diagnosis(
    path: Path,
    *,
    symptom: str,
    component: str | None = None,
    kitchen: Path | None = None,
    times: bool = True,
) -> Diagnosed:
    """Causes of a symptom in a document in a file, the likeliest first.

    Raises
    ------
    EntremetryError
        If the document or the kitchen is refused, or symptom or component are unknown.
    """
    wanted = find_symptom(symptom)
    return diagnosed(checks(path, kitchen=kitchen, times=times), wanted, component)


def diagnosed(checked: Checked, symptom: Symptom, component: str | None = None) -> Diagnosed:
    """Causes of a symptom in a dessert that has been checked.

    Raises
    ------
    UnknownName
        With the nearest ids, if there is no such component.
    """
    if component is not None and component not in checked.names:
        raise UnknownName("component", component, list(checked.names))
    return Diagnosed(
        id=checked.id,
        name=checked.name,
        diagnosis=diagnose(symptom, checked.verdicts, component),
    )
