"""How far the facts of a problem may give in a model: not at all, at a price, or one by one."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from entremetry.planning.fact import Change, Fact, FactKind

if TYPE_CHECKING:
    from ortools.sat.python import cp_model

    from entremetry.planning.linear import Linear, Truth

BROKEN = 1000
"""Price of giving up a fact at all, in minutes of giving it up."""


class Leeway:
    """Every fact holds as written."""

    bends = False
    optional = False

    def extra(self, fact: Fact, most: int, weight: int) -> Linear:
        """Return by how much a fact gives; here never."""
        return 0

    def needs(self, fact: Fact) -> list[Truth]:
        """Return what has to be true for a fact to be posted; here nothing."""
        return []


@dataclass(slots=True, kw_only=True)
class Slack(Leeway):
    """Facts give at a price: 1000 for each that does and one for each minute, times its weight.

    Only facts of the given kinds give, if any kinds are given.
    """

    model: cp_model.CpModel
    only: frozenset[FactKind] = frozenset()
    amounts: dict[Fact, tuple[cp_model.IntVar, int]] = field(default_factory=dict)
    bends = True

    def extra(self, fact: Fact, most: int, weight: int) -> Linear:
        """Return the variable by which a fact gives."""
        if most <= 0 or (self.only and fact.kind not in self.only):
            return 0
        if fact not in self.amounts:
            amount = self.model.new_int_var(0, most, f"slack {len(self.amounts)}")
            self.amounts[fact] = (amount, weight)
        return self.amounts[fact][0]

    def price(self) -> Linear:
        """Return the price of all that gives."""
        total: list[Linear] = []
        for amount, weight in self.amounts.values():
            broken = self.model.new_bool_var("broken")
            self.model.add(amount == 0).only_enforce_if(~broken)
            total.append(weight * (BROKEN * broken + amount))
        return sum(total)

    def hint_none(self) -> None:
        """Hint that nothing gives."""
        for amount, _ in self.amounts.values():
            self.model.add_hint(amount, 0)

    def changes(self, solver: cp_model.CpSolver) -> tuple[Change, ...]:
        """Return what gave in a solution, and by how much."""
        given = ((fact, solver.value(amount)) for fact, (amount, _) in self.amounts.items())
        return tuple(Change(fact=fact, by=by) for fact, by in given if by > 0)


@dataclass(slots=True, kw_only=True)
class Assumed(Leeway):
    """Each fact hangs on a literal, so that a set of facts that conflict can be named."""

    model: cp_model.CpModel
    literals: dict[Fact, Truth] = field(default_factory=dict)
    optional = True

    def needs(self, fact: Fact) -> list[Truth]:
        """Return the literal of a fact."""
        if fact not in self.literals:
            self.literals[fact] = self.model.new_bool_var(f"fact {len(self.literals)}")
        return [self.literals[fact]]
