"""From a dessert document to a dessert: names looked up, amounts weighed, faults collected."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from contextlib import suppress
from graphlib import CycleError, TopologicalSorter

from entremetry.dessert.dessert import Component, Dessert, Line
from entremetry.dessert.document import ComponentDocument, DessertDocument, LineDocument
from entremetry.dessert.placement import FillingPlacement, InsertPlacement, SoakPlacement
from entremetry.dessert.weighing import mass_of_amount
from entremetry.documents.tree import Tree, field_text
from entremetry.errors import (
    DocumentError,
    EntremetryError,
    Fault,
    QuantityError,
    UnknownName,
    nearest_names,
)
from entremetry.kitchen.mould import Mould, mould
from entremetry.kitchen.shape_building import build
from entremetry.kitchen.shape_fault import shape_fault
from entremetry.larder.generic import Generic
from entremetry.larder.ingredient import Ingredient
from entremetry.larder.larder import Larder
from entremetry.larder.own import own_ingredients
from entremetry.words import quoted, say, say_later

Path = tuple[str | int, ...]

_A_COMPONENT = say_later("a component of this dessert")


def resolve(
    document: DessertDocument,
    tree: Tree,
    *,
    file: str,
    larder: Larder,
    moulds: Mapping[str, Mould],
    read_mesh: Callable[[str], bytes],
    mould_id: str | None = None,
    measures: str | None = None,
) -> Dessert:
    """Look up every name of the document.

    Raises
    ------
    DocumentError
        With all faults: unknown ingredients, components and moulds, units that do not fit,
        open questions, components made from one another in a circle.
    """
    resolving = _Resolving(document, tree, file, larder, measures, read_mesh)
    return resolving.run(moulds, mould_id)


class _Resolving:
    """Collects the faults of one document; used once."""

    def __init__(
        self,
        document: DessertDocument,
        tree: Tree,
        file: str,
        larder: Larder,
        measures: str | None,
        read_mesh: Callable[[str], bytes],
    ) -> None:
        self.document = document
        self.tree = tree
        self.file = file
        self.larder = larder
        self.measures = document.measures or measures
        self.read_mesh = read_mesh
        self.faults: list[Fault] = []

    def run(self, moulds: Mapping[str, Mould], mould_id: str | None) -> Dessert:
        self._take_own_ingredients()
        chosen = self._mould(moulds, mould_id)
        components = {
            component_id: self._component(component_id, component)
            for component_id, component in self.document.components.items()
        }
        self._check_placement()
        self._check_answered()
        order = self._order(components)
        if self.faults or chosen is None:
            raise DocumentError(self.faults)
        return Dessert(
            document=self.document,
            mould=chosen,
            larder=self.larder,
            components=tuple(components[component_id] for component_id in order),
        )

    def _take_own_ingredients(self) -> None:
        try:
            own = own_ingredients(self.document.ingredients, self.larder)
        except DocumentError as error:
            for fault in error.faults:
                path = tuple(fault.field.split("."))
                self._fault(path, fault.found, fault.accepted, fault.nearest)
            return
        self.larder = self.larder.with_own(own)

    def _fault(self, path: Path, found: str, accepted: str, nearest: tuple[str, ...] = ()) -> None:
        self.faults.append(
            Fault(
                file=self.file,
                line=self.tree.line(path),
                field=field_text(path),
                found=found,
                accepted=accepted,
                nearest=nearest,
            )
        )

    def _mould(self, moulds: Mapping[str, Mould], mould_id: str | None) -> Mould | None:
        wanted = self.document.mould if mould_id is None else mould_id
        if not isinstance(wanted, str):
            try:
                return mould(wanted, read_mesh=self.read_mesh)
            except EntremetryError as error:
                self._fault(("mould", "shape"), *shape_fault(error))
                return None
        if wanted not in moulds:
            if mould_id is not None:
                raise UnknownName("mould", wanted, moulds)
            accepted = say(
                "the id of a mould of the kitchen or the built-in shelf, or one written out"
            )
            self._fault(("mould",), quoted(wanted), accepted, nearest_names(wanted, moulds))
            return None
        return moulds[wanted]

    def _component(self, component_id: str, component: ComponentDocument) -> Component:
        path: Path = ("components", component_id, "formula")
        lines = [self._line((*path, name), name, line) for name, line in component.formula.items()]
        return Component(
            id=component_id,
            name=component.name,
            kind=component.kind,
            lines=tuple(line for line in lines if line is not None),
            steps=tuple(component.method),
            density=component.density,
        )

    def _line(self, path: Path, name: str, line: LineDocument) -> Line | None:
        if line.ask:
            found = say("an open question: {question}", question=line.ask)
            self._fault(path, found, self._answers(name, line))
            return None
        if line.component and line.ingredient:
            self._fault(path, say("an ingredient and a component"), say("one of the two"))
            return None
        if line.component:
            return self._component_line(path, name, line, line.component)
        return self._ingredient_line(path, name, line)

    def _answers(self, name: str, line: LineDocument) -> str:
        """What an open question can be answered with."""
        wanted = say("the answer written into this line, and its 'ask' taken out")
        with suppress(UnknownName):
            found = self.larder.resolve(line.ingredient or name)
            if isinstance(found, Generic):
                return say(
                    "{wanted}; the ingredient is one of: {names}",
                    wanted=wanted,
                    names=", ".join(found.choices),
                )
        return wanted

    def _component_line(
        self, path: Path, name: str, line: LineDocument, component: str
    ) -> Line | None:
        known = self.document.components
        if component not in known:
            nearest = nearest_names(component, known)
            self._fault(path, quoted(component), say(_A_COMPONENT), nearest)
            return None
        mass = self._weigh(path, line.amount, None)
        if mass is None:
            return None
        return Line(name=name, mass=mass, written=line.amount, component=component, note=line.note)

    def _ingredient_line(self, path: Path, name: str, line: LineDocument) -> Line | None:
        try:
            found = self.larder.resolve(line.ingredient or name)
        except UnknownName as unknown:
            accepted = say(
                "an ingredient of the larder, or one of your own under '{key}'", key="ingredients"
            )
            self._fault(path, quoted(unknown.name), accepted, unknown.nearest)
            return None
        if isinstance(found, Generic):
            accepted = say(
                "{question} one of: {names}",
                question=say(found.question),
                names=", ".join(found.choices),
            )
            self._fault(path, quoted(line.ingredient or name), accepted)
            return None
        mass = self._weigh(path, line.amount, found)
        if mass is None:
            return None
        return Line(name=name, mass=mass, written=line.amount, ingredient=found, note=line.note)

    def _weigh(self, path: Path, amount: str, ingredient: Ingredient | None) -> float | None:
        try:
            return mass_of_amount(amount, ingredient, measures=self.measures)
        except QuantityError as error:
            self._fault(path, error.found, error.accepted, error.nearest)
        except UnknownName as unknown:
            self._fault(path, quoted(amount), _weighable(ingredient), unknown.nearest)
        return None

    def _check_answered(self) -> None:
        for index, question in enumerate(self.document.ask):
            found = say("an open question: {question}", question=question)
            accepted = say("the answer written into the document, and this line taken out")
            self._fault(("ask", index), found, accepted)

    def _check_placement(self) -> None:
        known = self.document.components
        if not self.document.placement:
            accepted = say("at least one component, such as {component: ..., as: filling}")
            self._fault(("placement",), say("nothing placed"), accepted)
        fillings = 0
        for index, placement in enumerate(self.document.placement):
            path: Path = ("placement", index)
            if placement.component not in known:
                nearest = nearest_names(placement.component, known)
                self._fault(path, quoted(placement.component), say(_A_COMPONENT), nearest)
            fillings += isinstance(placement, FillingPlacement)
            if isinstance(placement, FillingPlacement) and fillings > 1:
                accepted = say("one filling at most: the others are layers")
                self._fault(path, say("a second filling"), accepted)
            if isinstance(placement, SoakPlacement):
                self._check_soaked(path, placement)
            if isinstance(placement, InsertPlacement):
                self._check_shape((*path, "shape"), placement)

    def _check_soaked(self, path: Path, placement: SoakPlacement) -> None:
        bases = [p.component for p in self.document.placement if p.role == "base"]
        if placement.on not in bases:
            nearest = nearest_names(placement.on, bases)
            accepted = (
                say("a base that is placed: {names}", names=", ".join(bases))
                if bases
                else say("a base; none is placed")
            )
            self._fault((*path, "on"), quoted(placement.on), accepted, nearest)

    def _check_shape(self, path: Path, placement: InsertPlacement) -> None:
        try:
            build(placement.shape, read_mesh=self.read_mesh)
        except EntremetryError as error:
            self._fault(path, *shape_fault(error))

    def _order(self, components: Mapping[str, Component]) -> tuple[str, ...]:
        made_from = {
            component.id: [line.component for line in component.lines if line.component]
            for component in components.values()
        }
        try:
            return tuple(TopologicalSorter(made_from).static_order())
        except CycleError as error:
            circle = list(reversed(error.args[1]))
            found = say("a circle: {circle}", circle=say(", which is made from ").join(circle))
            accepted = say("components that are not made from themselves")
            self._fault(("components", circle[0], "formula"), found, accepted)
            return ()


def _weighable(ingredient: Ingredient | None) -> str:
    """What an amount may be: a mass, a volume, or a count of what the larder can weigh."""
    units = [w.measure for w in ingredient.household] if ingredient else []
    counted = [measure for measure in units if not measure.startswith("us ")]
    if ingredient is None or not counted:
        return say("a mass or a volume")
    return say(
        "a measure of {ingredient} ({measures}), a mass or a volume",
        ingredient=ingredient.name,
        measures=", ".join(counted),
    )
