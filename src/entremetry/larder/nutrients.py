"""What a label asks for beside the constituents: parts of the fat, added sugars, minerals."""

from __future__ import annotations

from dataclasses import dataclass, fields


@dataclass(frozen=True, slots=True, kw_only=True)
class Nutrients:
    """Mass fractions of an ingredient [kg/kg]; None where nobody reports the value."""

    saturates: float | None = None
    trans_fat: float | None = None
    cholesterol: float | None = None
    added_sugars: float | None = None
    vitamin_d: float | None = None
    calcium: float | None = None
    iron: float | None = None
    potassium: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """One of the ingredients that a compound ingredient is made of, and its share by mass."""

    id: str
    share: float


NUTRIENTS = tuple(field.name for field in fields(Nutrients))
BOUND_TO_FAT = ("saturates", "trans_fat", "cholesterol", "vitamin_d")
"""What goes with the fat where fat is taken out, or another fat content is stated."""
