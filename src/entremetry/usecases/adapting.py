"""Adapt a dessert: other ingredients, another mould or vessel, more or fewer pieces."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from pathlib import Path

from entremetry.adapt.adapting import adapted_text
from entremetry.adapt.amounts import pieces_text
from entremetry.adapt.cold_times import with_times
from entremetry.adapt.moulding import moulded_text
from entremetry.adapt.rebalanced import Adapted, Change
from entremetry.adapt.swap import Swap
from entremetry.dessert.reading import read_dessert
from entremetry.dessert.reckoning import Reckoning
from entremetry.dessert.translating import without_strangers
from entremetry.documents import edited, read_tree, validate
from entremetry.errors import DocumentError, Fault, OutsideRange, QuantityError, UnknownName
from entremetry.kitchen.mould import Mould
from entremetry.kitchen.mould import mould as mould_of
from entremetry.kitchen.shape_fault import shape_fault
from entremetry.physics.gelatine import BloomRule
from entremetry.store.files import read_text
from entremetry.store.kernel_cache import require_fresh_kernels
from entremetry.store.shelf import no_mesh
from entremetry.usecases.batch import Surroundings, reckoned, surroundings, surroundings_of
from entremetry.usecases.pieces import require_pieces
from entremetry.usecases.rebalancing import opener
from entremetry.words import say, say_later


@dataclass(frozen=True, slots=True, kw_only=True)
class Adaptation:
    """What a dessert is to be adapted to; a mould and a vessel exclude each other.

    `own` is a mould of one's own, written as in a document: it stands in for a name.
    """

    mould: str | None = None
    vessel: str | None = None
    own: str | None = None
    swaps: tuple[Swap, ...] = ()
    pieces: int | None = None
    rule: BloomRule = BloomRule.LINEAR


def adapt(path: Path, asked: Adaptation, *, kitchen: Path | None = None) -> Adapted:
    """Adapt a document in a file.

    Raises
    ------
    EntremetryError
        If the document is refused, something asked for is not there, or it cannot be.
    """
    text = read_text(path, what=say_later("dessert document"))
    return adapted(text, asked, str(path), surroundings_of(path, kitchen))


def adapt_of_text(
    text: str, asked: Adaptation, *, file: str = "document", kitchen_text: str | None = None
) -> Adapted:
    """Adapt a document at hand as text; see `adapt`."""
    return adapted(text, asked, file, surroundings(kitchen_text, "kitchen"))


def adapted(text: str, asked: Adaptation, file: str, around: Surroundings) -> Adapted:
    """Adapt a text that is read against what is given; see `adapt`."""
    return consistent(_adapted(text, asked, file, around))


def consistent(result: Adapted) -> Adapted:
    """Without translations of what the document says no longer."""
    document, _ = read_dessert(result.text, file="document")
    text, gone = without_strangers(result.text, document)
    if not gone:
        return result
    left_out = "; ".join(repr(each) for each in gone)
    change = Change(
        component="",
        line="",
        kind="text",
        text=say("translations left out: {texts}", texts=left_out),
        because=say("the document says this no longer, or says it in other words"),
    )
    return replace(result, text=text, changes=(*result.changes, change))


def _adapted(text: str, asked: Adaptation, file: str, around: Surroundings) -> Adapted:
    _require_something(asked, around)
    own = None if asked.own is None else own_mould(asked.own)
    around = around if own is None else replace(around, own=(own,))

    @lru_cache(maxsize=8)
    def reckon(new: str) -> Reckoning:
        return reckoned(new, file, around)

    result = Adapted(text=text, changes=(), components=())
    if asked.swaps:
        result = adapted_text(text, asked.swaps, opener(file, around), rule=asked.rule)
    named = asked.mould or asked.vessel
    require_fresh_kernels()
    if named is not None or own is not None:
        mould = own or _mould(named or "", reckon(text), around, vessel=asked.vessel is not None)
        new, changes = moulded_text(
            result.text,
            mould,
            reckon,
            pieces=asked.pieces,
            kitchen=around.kitchen,
            others=around.moulds.values(),
        )
        if asked.own is not None:
            new = edited(new, ("mould",), read_tree(asked.own, file="mould").data)
    elif asked.pieces is not None:
        new, changes = pieces_text(result.text, asked.pieces, reckon, around.kitchen)
    elif around.kitchen is not None:
        every = {component.id for component in reckon(text).dessert.components}
        before = reckon(text)
        new, changes = with_times(result.text, before, reckon, around.kitchen, frozen=every)
    else:
        return result
    return replace(result, text=new, changes=(*result.changes, *changes))


def own_mould(text: str) -> Mould:
    """A mould as a document writes it.

    Raises
    ------
    DocumentError
        If it is no mould, or its measures make no shape.
    """
    from entremetry.kitchen.mould_document import MouldDocument

    tree = read_tree(text, file="mould")
    document = validate(MouldDocument, tree, file="mould")
    try:
        return mould_of(document, read_mesh=no_mesh)
    except OutsideRange as error:
        found, accepted = shape_fault(error)
        raise DocumentError(
            [Fault(file=say("mould"), field="shape", found=found, accepted=accepted)]
        ) from None


def _require_something(asked: Adaptation, around: Surroundings) -> None:
    if asked.mould is not None and asked.vessel is not None:
        raise QuantityError(say("a mould and a vessel"), say("one of the two"))
    named = asked.mould or asked.vessel or asked.own or asked.swaps or around.kitchen
    if not (named or asked.pieces is not None):
        raise QuantityError(
            say("nothing to adapt to"),
            say("--mould ID, --vessel ID, --swap A=B, --pieces N or --kitchen FILE"),
        )
    if asked.pieces is not None:
        require_pieces(asked.pieces)


def _mould(name: str, before: Reckoning, around: Surroundings, *, vessel: bool) -> Mould:
    """The mould or vessel of a name: the document's own, the kitchen's or the built-in one."""
    own = before.dessert.mould
    known = {own.id: own, **around.moulds}
    fitting = {each.id: each for each in known.values() if each.vessel == vessel}
    if name in fitting:
        return own if name == own.id else fitting[name]
    if name in known:
        if vessel:
            raise QuantityError(say("'{name}', which is a mould", name=name), f"--mould {name}")
        raise QuantityError(say("'{name}', which is a vessel", name=name), f"--vessel {name}")
    raise UnknownName("vessel" if vessel else "mould", name, fitting)
