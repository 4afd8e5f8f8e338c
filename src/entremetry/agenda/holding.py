"""What moulds, freezer and fridge are taken up by, round for round."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from entremetry.agenda.cold import Stay
from entremetry.agenda.equipment import FREEZER, Equipment, decilitres
from entremetry.agenda.moulding import Moulding
from entremetry.planning import Span

Rounds = Callable[[str], tuple[str, ...]]
"""Ids of a task in all its rounds."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Holding:
    """Makes spans of moulds and of what lies in the cold."""

    equipment: Equipment
    ids: Rounds

    def moulds(self, moulding: Moulding) -> Iterator[Span]:
        """A mould from its filling to its emptying, in each round."""
        filled, emptied = self.ids(moulding.filled_by), self.ids(moulding.emptied_by)
        for number, (first, last) in enumerate(zip(filled, emptied, strict=True), start=1):
            yield Span(
                id=f"{first} in its mould",
                resource=mould_id(moulding.mould),
                first=first,
                last=last,
                amount=moulding.trays(number),
            )

    def cold(self, stay: Stay) -> Iterator[Span]:
        """Room in the cold, from each round until it is taken up."""
        size = self.equipment.size(stay.place)
        if size is None:
            return
        firsts, lasts = self.ids(stay.first), self.ids(stay.last)
        for number, first in enumerate(firsts):
            yield Span(
                id=f"{first} in the {stay.place}",
                resource=stay.place,
                first=first,
                last=lasts[number] if len(lasts) == len(firsts) else lasts[-1],
                amount=min(size, self._wanted(stay)),
                reaching=stay.reaching,
            )

    def shortage(self, stay: Stay, name: str) -> Iterator[str]:
        """That something does not fit into the cold at all, or is too much to freeze at once."""
        rounds = len(self.ids(stay.first))
        yield from self.equipment.shortage(stay.place, stay.volume / rounds, name)
        if stay.place == FREEZER:
            yield from self.equipment.freezing_shortage(stay.mass / rounds, name)

    def _wanted(self, stay: Stay) -> int:
        return decilitres(stay.volume / len(self.ids(stay.first)))


def mould_id(mould: str) -> str:
    """Id of a mould among the resources."""
    return f"mould {mould}"
