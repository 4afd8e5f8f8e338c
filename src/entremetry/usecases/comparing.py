"""Two desserts side by side: what a piece of each holds."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from entremetry.dessert.batch_sheet import BatchSheet
from entremetry.usecases.batch import batch_of_text


@dataclass(frozen=True, slots=True, kw_only=True)
class Beside:
    """One thing in both. Masses in kg for one piece, 0.0 where it is not in one."""

    name: str
    one: float
    other: float

    @property
    def differs(self) -> bool:
        """Whether a kitchen scale tells them apart: by a hundredth or a tenth of a gram."""
        return abs(self.other - self.one) > max(1e-4, 0.01 * max(self.one, self.other))


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparison:
    """Both sheets, and what one piece of each holds by component and by ingredient."""

    one: BatchSheet
    other: BatchSheet
    components: tuple[Beside, ...]
    ingredients: tuple[Beside, ...]


def compare(
    one: str, other: str, *, kitchen_text: str | None = None, files: tuple[str, str]
) -> Comparison:
    """Compare two documents at hand as text.

    Raises
    ------
    EntremetryError
        If no batch can be computed of one of them.
    """
    sheets = [
        batch_of_text(text, file=file, kitchen_text=kitchen_text)
        for text, file in zip((one, other), files, strict=True)
    ]
    return Comparison(
        one=sheets[0],
        other=sheets[1],
        components=_beside(_components(sheets[0]), _components(sheets[1])),
        ingredients=_beside(_ingredients(sheets[0]), _ingredients(sheets[1])),
    )


def _beside(one: Mapping[str, float], other: Mapping[str, float]) -> tuple[Beside, ...]:
    """Everything that is in one of them, in the order of the first, then of the second."""
    names = dict.fromkeys((*one, *other))
    return tuple(Beside(name=n, one=one.get(n, 0.0), other=other.get(n, 0.0)) for n in names)


def _components(sheet: BatchSheet) -> Mapping[str, float]:
    masses: dict[str, float] = {}
    for component in sheet.components:
        masses[component.name] = masses.get(component.name, 0.0) + component.per_piece.value
    return masses


def _ingredients(sheet: BatchSheet) -> Mapping[str, float]:
    """What is weighed for one piece; what a component takes from another is not counted twice."""
    masses: dict[str, float] = {}
    bought = {purchase.id for purchase in sheet.shopping}
    for component in sheet.components:
        for line in component.lines:
            if line.id in bought:
                masses[line.name] = masses.get(line.name, 0.0) + line.mass / sheet.pieces
    return masses
