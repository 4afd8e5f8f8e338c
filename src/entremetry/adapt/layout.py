"""Where the parts of a dessert lie in another mould, and what each of them becomes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from entremetry.adapt.build import Build
from entremetry.adapt.form import Form
from entremetry.adapt.rebalanced import Change
from entremetry.adapt.servings import Portions, Servings
from entremetry.kitchen.mould import Mould

Entry = dict[str, Any]


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """What a dessert shall be: its mould with the form that gives, pieces, and how bars are cut."""

    build: Build
    mould: Mould
    form: Form
    servings: Servings
    portions: Portions

    @property
    def upright(self) -> bool:
        """Whether it is filled as it is served."""
        return not self.mould.fills_upside_down


@dataclass(slots=True, kw_only=True)
class Layout:
    """Placements as written, while they are found; components by what becomes of them.

    `volume` is what one cavity holds in the end. [m3]
    """

    entries: list[Entry] = field(default_factory=list)
    changes: list[Change] = field(default_factory=list)
    frozen: dict[str, Mapping[str, str]] = field(default_factory=dict)
    poured: list[str] = field(default_factory=list)
    glazes: list[str] = field(default_factory=list)
    cut: dict[str, Mapping[str, str]] = field(default_factory=dict)
    baked: list[str] = field(default_factory=list)
    crumbs: list[str] = field(default_factory=list)
    left_out: list[str] = field(default_factory=list)
    volume: float = 0.0

    def tell(self, component: str, text: str, because: str, kind: str = "placement") -> None:
        """Note a change with its reason."""
        self.changes.append(
            Change(component=component, line="", kind=kind, text=text, because=because)
        )


def from_base(wanted: Wanted, entries: list[Entry]) -> list[Entry]:
    """Entries from the base up, in the order in which the mould is filled."""
    return entries if wanted.upright else entries[::-1]
