"""What comes of a rebalanced formula: lines and measures before and after, and what gave way."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from entremetry.formula.measure import Measure
from entremetry.formula.wish import Conflict
from entremetry.physics.sweetness import Sweetness


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One thing that is not as it was; masses in kg where it is about a mass.

    `kind` is 'swap' or 'mass' in a formula; 'mould', 'pieces', 'placement', 'method', 'time' or
    'text' in the rest of the document, 'gone' for what was left out; 'caution' for what the
    author has to look after. `because` is the reason, where the text does not hold it. A change
    of the whole has no component.
    """

    component: str
    line: str
    kind: str
    text: str
    before: float | None = None
    after: float | None = None
    because: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class LineChange:
    """One line before and after [kg]; nothing before if it came in, nothing after if it went."""

    line: str
    ingredient: str
    name: str
    before: float | None
    after: float | None
    pinned: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasureChange:
    """A measure before and after, and what was wished of it.

    `wish` is 'asked' for what must hold, 'kept' for what gives way if it has to, else empty;
    `low` and `high` are its ends. `held` is true where nothing was wished.
    """

    measure: Measure
    before: float | None
    after: float | None
    wish: str = ""
    low: float | None = None
    high: float | None = None
    held: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class Rebalanced:
    """A component rebalanced, and the whole document with it; or why no formula can do it.

    Without a formula, `conflict` names the fewest demands that exclude each other, and `text` is
    the document as it was.
    """

    component: str
    name: str
    text: str
    lines: tuple[LineChange, ...]
    measures: tuple[MeasureChange, ...]
    changes: tuple[Change, ...]
    sweetness: Mapping[str, Sweetness]
    conflict: Conflict | None = None

    @property
    def feasible(self) -> bool:
        """Tell whether there is a formula."""
        return self.conflict is None

    @property
    def gave_way(self) -> tuple[MeasureChange, ...]:
        """What could not be kept."""
        return tuple(each for each in self.measures if not each.held)

    @property
    def cautions(self) -> tuple[Change, ...]:
        """What the author has to look after."""
        return tuple(change for change in self.changes if change.kind == "caution")


@dataclass(frozen=True, slots=True, kw_only=True)
class Adapted:
    """A new dessert document with everything that was changed in it."""

    text: str
    changes: tuple[Change, ...]
    components: tuple[Rebalanced, ...]
