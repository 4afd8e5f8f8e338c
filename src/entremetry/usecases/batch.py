"""How much of everything: the batch sheet of a dessert document."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from entremetry.dessert.batch import batch_sheet
from entremetry.dessert.batch_sheet import BatchSheet
from entremetry.dessert.document import DessertDocument
from entremetry.dessert.household_amount import SPOONS
from entremetry.dessert.limiting import pieces_from
from entremetry.dessert.locating import located, refiled
from entremetry.dessert.reading import read_dessert
from entremetry.dessert.reckoning import Reckoning, reckon
from entremetry.dessert.resolving import resolve
from entremetry.dessert.translating import require_translations, translated
from entremetry.documents.tree import Tree
from entremetry.errors import DocumentError, QuantityError
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.kitchen.mould import Mould
from entremetry.kitchen.reading import moulds_of, read_kitchen_with_lines
from entremetry.larder.larder import Larder
from entremetry.larder.own import own_ingredients
from entremetry.quantities import parse_mass
from entremetry.store.files import read_text
from entremetry.store.larder_file import open_larder
from entremetry.store.mesh_file import read_mesh_beside
from entremetry.store.shelf import built_in_moulds, no_mesh
from entremetry.usecases.pieces import require_pieces
from entremetry.words import current, say, say_later

USUAL_MEASURES = "us"
MEASURES_OF_READERS = {"fr": SPOONS}
"""Measures of those who read a language and have no cups, whatever the author has."""


@dataclass(frozen=True)
class Surroundings:
    """What a document is read against: a kitchen if there is one, and where its files lie.

    `more` are moulds that are known beside the kitchen's and the built-in ones.
    """

    kitchen: KitchenDocument | None = None
    kitchen_file: str = "kitchen"
    kitchen_tree: Tree | None = None
    read_mesh: Callable[[str], bytes] = no_mesh
    own: tuple[Mould, ...] = ()

    @cached_property
    def larder(self) -> Larder:
        """The built-in larder with the kitchen's own ingredients."""
        larder = open_larder()
        if self.kitchen is None or not self.kitchen.ingredients:
            return larder
        try:
            return larder.with_own(own_ingredients(self.kitchen.ingredients, larder))
        except DocumentError as error:
            if self.kitchen_tree is None:
                raise
            tree, file = self.kitchen_tree, self.kitchen_file
            raise DocumentError(refiled(each, tree, file) for each in error.faults) from None

    @cached_property
    def moulds(self) -> Mapping[str, Mould]:
        """The built-in shelf with the kitchen's own moulds, and any beside them."""
        beside = {mould.id: mould for mould in self.own}
        if self.kitchen is None:
            return {**built_in_moulds(), **beside}
        own = moulds_of(
            self.kitchen,
            file=self.kitchen_file,
            read_mesh=self.read_mesh,
            tree=self.kitchen_tree,
        )
        return {**built_in_moulds(), **own, **beside}

    @property
    def fan(self) -> bool | None:
        """Whether the kitchen's oven has a fan; unknown without a kitchen."""
        if self.kitchen is None or not self.kitchen.ovens:
            return None
        return self.kitchen.ovens[0].fan

    def measures(self, document: DessertDocument) -> str:
        """Whose cups to print: the language's readers', the kitchen's, the author's, the usual."""
        if current().code in MEASURES_OF_READERS:
            return MEASURES_OF_READERS[current().code]
        if self.kitchen is not None:
            return self.kitchen.measures
        return document.measures or USUAL_MEASURES


def batch(
    path: Path,
    *,
    pieces: int | None = None,
    mould: str | None = None,
    kitchen: Path | None = None,
    have: tuple[str, str] | None = None,
) -> BatchSheet:
    """The batch sheet of a document in a file.

    `have` is an ingredient and the mass there is of it, which then decides how many pieces.

    Raises
    ------
    EntremetryError
        With one message that says what, where and how to mend it.
    """
    text = read_text(path, what=say_later("dessert document"))
    return _sheet(text, str(path), surroundings_of(path, kitchen), pieces, mould, have)


def batch_of_text(
    text: str,
    *,
    file: str = "document",
    pieces: int | None = None,
    mould: str | None = None,
    kitchen_text: str | None = None,
    have: tuple[str, str] | None = None,
) -> BatchSheet:
    """The batch sheet of a document at hand as text; see `batch`."""
    return _sheet(text, file, surroundings(kitchen_text, "kitchen"), pieces, mould, have)


def moulds(kitchen_text: str | None = None, *, file: str = "kitchen") -> tuple[Mould, ...]:
    """Moulds to choose from: the kitchen's own and the built-in shelf."""
    return tuple(surroundings(kitchen_text, file).moulds.values())


def surroundings_of(path: Path, kitchen: Path | None) -> Surroundings:
    """What a document in a file is read against: its folder, and the kitchen's file."""
    kitchen_text = (
        None if kitchen is None else read_text(kitchen, what=say_later("kitchen document"))
    )

    def read_mesh(name: str) -> bytes:
        return read_mesh_beside(path.parent, name)

    return surroundings(kitchen_text, str(kitchen), read_mesh=read_mesh)


def surroundings(
    kitchen_text: str | None,
    kitchen_file: str,
    *,
    read_mesh: Callable[[str], bytes] = no_mesh,
) -> Surroundings:
    """Read the kitchen, if there is one."""
    if kitchen_text is None:
        return Surroundings(read_mesh=read_mesh)
    kitchen, tree = read_kitchen_with_lines(kitchen_text, file=kitchen_file)
    return Surroundings(
        kitchen=kitchen, kitchen_file=kitchen_file, kitchen_tree=tree, read_mesh=read_mesh
    )


def _sheet(
    text: str,
    file: str,
    around: Surroundings,
    pieces: int | None,
    mould: str | None,
    have: tuple[str, str] | None,
) -> BatchSheet:
    if have is not None and pieces is not None:
        raise QuantityError(say("a number of pieces and what there is"), say("one of the two"))
    return reckoned_sheet(text, file, around, pieces=pieces, mould=mould, have=have)[1]


def reckoned_sheet(
    text: str,
    file: str,
    around: Surroundings,
    *,
    pieces: int | None = None,
    mould: str | None = None,
    have: tuple[str, str] | None = None,
) -> tuple[Reckoning, BatchSheet]:
    """A document read, looked up, made and placed, and its batch sheet, in the spoken language."""
    document, tree = _told(text, file)
    reckoning = _reckoned(document, tree, file, around, mould)
    if have is not None:
        pieces = pieces_from(reckoning, have[0], parse_mass(have[1]))
    number = _allowed(document.pieces if pieces is None else pieces)
    measures = around.measures(document)
    with located(document, tree, file=file):
        return reckoning, batch_sheet(reckoning, pieces=number, measures=measures, fan=around.fan)


def _told(text: str, file: str) -> tuple[DessertDocument, Tree]:
    document, tree = read_dessert(text, file=file)
    require_translations(document, tree, file=file)
    return translated(document, current().code), tree


def reckoned(text: str, file: str, around: Surroundings, mould: str | None = None) -> Reckoning:
    """A document read, looked up, made and placed, in the words of its author."""
    return _reckoned(*read_dessert(text, file=file), file, around, mould)


def reckoned_as_spoken(
    text: str, file: str, around: Surroundings, mould: str | None = None
) -> Reckoning:
    """A document read, looked up, made and placed, in the spoken language if it has that."""
    document, tree = read_dessert(text, file=file)
    return _reckoned(translated(document, current().code), tree, file, around, mould)


def _reckoned(
    document: DessertDocument, tree: Tree, file: str, around: Surroundings, mould: str | None
) -> Reckoning:
    dessert = resolve(
        document,
        tree,
        file=file,
        larder=around.larder,
        moulds=around.moulds,
        read_mesh=around.read_mesh,
        mould_id=mould,
        measures=around.kitchen.measures if around.kitchen else None,
    )
    with located(document, tree, file=file):
        return reckon(dessert, read_mesh=around.read_mesh)


def _allowed(pieces: int) -> int:
    require_pieces(pieces)
    return pieces
