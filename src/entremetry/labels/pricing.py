"""Prices of a document brought to the ingredients of a larder."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from entremetry.dessert.weighing import mass_of_amount
from entremetry.documents.tree import Path, Tree, field_text
from entremetry.errors import DocumentError, Fault, QuantityError, UnknownName
from entremetry.labels.price_document import PackPrice, PriceDocument
from entremetry.larder.ingredient import Ingredient
from entremetry.larder.larder import Larder
from entremetry.words import quoted, say


@dataclass(frozen=True, slots=True, kw_only=True)
class Price:
    """A pack of an ingredient: its mass [kg], what it costs, and the share that can be used."""

    ingredient: str
    pack: str
    pack_mass: float
    pack_price: float
    usable: float

    @property
    def per_kilogram(self) -> float:
        """Cost of one usable kilogram."""
        return self.pack_price / (self.pack_mass * self.usable)


def priced(
    document: PriceDocument, larder: Larder, *, measures: str, tree: Tree, file: str
) -> Mapping[str, Price]:
    """Price of each ingredient that the document names, by id.

    Raises
    ------
    DocumentError
        With every name nobody knows, every pack that cannot be weighed, every price given twice.
    """
    found: dict[str, Price] = {}
    faults: list[Fault] = []
    for name, entry in document.prices.items():
        try:
            ingredient = larder.find(name)
            if ingredient.id in found:
                faults.append(_second(name, ingredient, tree, file))
                continue
            found[ingredient.id] = _price(ingredient, entry, measures)
        except (UnknownName, QuantityError) as error:
            faults.append(_fault(name, error, tree, file))
    if faults:
        raise DocumentError(faults)
    return found


def _price(ingredient: Ingredient, entry: PackPrice, measures: str) -> Price:
    return Price(
        ingredient=ingredient.id,
        pack=entry.pack,
        pack_mass=mass_of_amount(entry.pack, ingredient, measures=measures),
        pack_price=entry.price,
        usable=1.0 - ingredient.refuse if entry.usable is None else entry.usable,
    )


def _second(name: str, ingredient: Ingredient, tree: Tree, file: str) -> Fault:
    path: Path = ("prices", name)
    return Fault(
        file=file,
        line=tree.line(path),
        field=field_text(path),
        found=say("a second price of {ingredient}", ingredient=ingredient.name),
        accepted=say("one price for each ingredient"),
    )


def _fault(name: str, error: UnknownName | QuantityError, tree: Tree, file: str) -> Fault:
    path: Path = ("prices", name, "pack")
    if isinstance(error, QuantityError):
        found, accepted = error.found, error.accepted
    elif error.thing == "ingredient":
        path = ("prices", name)
        found, accepted = quoted(name), say("an ingredient of the larder or of the dessert")
    else:
        found = quoted(error.name)
        accepted = say("a mass, a volume or a measure of this ingredient")
    return Fault(
        file=file,
        line=tree.line(path),
        field=field_text(path),
        found=found,
        accepted=accepted,
        nearest=error.nearest,
    )
