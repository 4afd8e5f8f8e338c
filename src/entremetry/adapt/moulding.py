"""A dessert document for another mould, vessel, frame or number of pieces."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from entremetry.adapt.amounts import (
    caution_amount,
    caution_rest,
    follow_amounts,
    follow_pieces,
    pieces_text,
    portions_of,
)
from entremetry.adapt.assembly import assembly
from entremetry.adapt.build import Build, build_of
from entremetry.adapt.cold_times import Reckon, with_times
from entremetry.adapt.form import Form, form_of
from entremetry.adapt.frame_layout import frame_layout
from entremetry.adapt.layout import Layout, Wanted
from entremetry.adapt.methods import with_methods
from entremetry.adapt.mould_layout import mould_layout
from entremetry.adapt.rebalanced import Change
from entremetry.adapt.servings import Portions, Servings, bars, servings
from entremetry.adapt.titles import with_titles
from entremetry.adapt.vessel_layout import vessel_layout
from entremetry.adapt.written import length
from entremetry.documents import edited, read_tree, removed
from entremetry.errors import FitError
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.kitchen.mould import Mould
from entremetry.words import decimal, say, say_as, say_count

ORDER = ("mould", "pieces", "placement", "method", "time", "text", "caution")
MOST_TRIED = 8
LAYOUTS: dict[bool, Callable[[Wanted], Layout]] = {True: vessel_layout, False: mould_layout}


def moulded_text(
    text: str,
    mould: Mould,
    reckon: Reckon,
    *,
    pieces: int | None,
    kitchen: KitchenDocument | None,
    others: Iterable[Mould] = (),
) -> tuple[str, tuple[Change, ...]]:
    """Write a document for another mould or vessel.

    `others` are moulds to name if this one does not do. The mould it has already changes nothing
    but the pieces.

    Raises
    ------
    FitError
        If it cannot be, with the reason and the nearest moulds that would do.
    """
    reckoning = reckon(text)
    build = build_of(reckoning, read_tree(text, file="document").data)
    if same_cavity(reckoning.dessert.mould, mould):
        return _renamed_mould(text, build, mould, reckon, pieces, kitchen)
    wanted = wanted_of(build, mould, pieces)
    try:
        layout = layout_of(wanted)
        after = reshaped(text, wanted, layout)
        reckon(after)
    except FitError as error:
        raise _with_nearest(error, build, mould, others) from None
    after, times = with_times(after, reckoning, reckon, kitchen, frozen=layout.frozen)
    return after, tuple(sorted((*layout.changes, *times), key=lambda c: ORDER.index(c.kind)))


def layout_of(wanted: Wanted) -> Layout:
    """Where everything lies in the mould that is wanted; FitError if it cannot."""
    if wanted.form is Form.FRAME:
        return frame_layout(wanted)
    return LAYOUTS[wanted.form.is_vessel](wanted)


def same_cavity(one: Mould, other: Mould) -> bool:
    """Whether two moulds make the same piece in the same way."""
    return (
        one.solid == other.solid
        and one.vessel == other.vessel
        and one.fills_upside_down == other.fills_upside_down
    )


def _renamed_mould(
    text: str,
    build: Build,
    mould: Mould,
    reckon: Reckon,
    pieces: int | None,
    kitchen: KitchenDocument | None,
) -> tuple[str, tuple[Change, ...]]:
    """The same cavity under another id, and another number of pieces if one is asked for."""
    changes: tuple[Change, ...] = ()
    if mould.id != build.reckoning.dessert.mould.id:
        text = edited(text, ("mould",), mould.id)
        told = say("{mould} ({id}), which has the same cavity", mould=mould.name, id=mould.id)
        because = say("as asked for")
        changes = (Change(component="", line="", kind="mould", text=told, because=because),)
    if pieces is None:
        return text, changes
    text, more = pieces_text(text, pieces, reckon, kitchen)
    return text, (*changes, *more)


def wanted_of(build: Build, mould: Mould, pieces: int | None) -> Wanted:
    """What a dessert shall be in a mould: as many served as before, unless pieces are asked for."""
    form = form_of(mould)
    cut = portions_of(build)
    if form is Form.FRAME and not bars(mould, cut):
        cut = Portions()
    own = build.portion if build.form.is_cut and form.is_cut else None
    return Wanted(
        build=build,
        mould=mould,
        form=form,
        portions=cut,
        servings=servings(build.servings.people, pieces, mould, form, portion=own, cut=cut),
    )


def reshaped(text: str, wanted: Wanted, layout: Layout) -> str:
    """The text with its parts laid out anew and all that follows, but for the times in the cold."""
    build, mould, now = wanted.build, wanted.mould, wanted.servings
    data = read_tree(text, file="document").data
    text = edited(text, ("mould",), mould.id)
    _tell_mould(layout, wanted)
    text = _pieces(text, wanted, layout)
    ratio = _amount_ratio(wanted, layout)
    text = follow_amounts(text, wanted, layout, ratio)
    text = with_methods(text, wanted, layout)
    text = edited(text, ("placement",), layout.entries)
    text = _portioned(text, wanted, layout)
    if wanted.form is build.form:
        text = follow_pieces(text, wanted, now.pieces / build.servings.pieces)
    else:
        text = edited(text, ("assembly",), assembly(wanted, layout, data.get("assembly") or []))
        _tell_assembly(layout, wanted)
        text = with_titles(text, wanted, layout)
    caution_amount(layout, ratio)
    caution_rest(layout, wanted)
    return text


def _tell_mould(layout: Layout, wanted: Wanted) -> None:
    before = wanted.build.reckoning.dessert.mould
    volumes = (before.solid.volume * 1e6, wanted.mould.solid.volume * 1e6)
    layout.tell(
        "",
        say("{mould} instead of {before}", mould=wanted.mould.name, before=before.name),
        say(
            "as asked for; {volume} ml each, {before} ml before",
            volume=f"{volumes[1]:.0f}",
            before=f"{volumes[0]:.0f}",
        ),
        kind="mould",
    )


def _pieces(text: str, wanted: Wanted, layout: Layout) -> str:
    now, before = wanted.servings, wanted.build.servings
    if now.pieces != before.pieces:
        text = edited(text, ("pieces",), now.pieces)
    if now.serves != before.serves:
        if now.serves == 1:
            text = removed(text, ("serves",))
        else:
            text = edited(text, ("serves",), now.serves)
    if (now.pieces, now.serves) != (before.pieces, before.serves):
        layout.tell(
            "",
            say("{pieces}, {before} before", pieces=_counted(now), before=_counted(before)),
            _why_so_many(now, before, wanted.form),
            kind="pieces",
        )
    return text


def _counted(servings: Servings) -> str:
    if servings.serves == 1:
        return say_count("{number} piece", "{number} pieces", servings.pieces)
    return say_count(
        "{number} piece that serves {people}",
        "{number} pieces that serve {people}",
        servings.pieces,
        people=servings.serves,
    )


def _why_so_many(now: Servings, before: Servings, form: Form) -> str:
    if form is Form.FRAME:
        return say(
            "a whole frame gives {number}, and {people} are to be served",
            number=now.per_cavity,
            people=before.people,
        )
    return say(
        "for {people} people; one of it serves {number}", people=before.people, number=now.serves
    )


def _amount_ratio(wanted: Wanted, layout: Layout) -> float:
    """How many times as much there is to make."""
    before, now = wanted.build.servings, wanted.servings
    each = wanted.build.portion * before.serves * before.per_cavity
    return layout.volume * now.cavities / (each * before.cavities)


def _portioned(text: str, wanted: Wanted, layout: Layout) -> str:
    """Portions of a frame, or none."""
    before, cut = wanted.build.reckoning.dessert.document.portions, wanted.portions
    if wanted.form is not Form.FRAME:
        if before is None:
            return text
        layout.tell("", say("no portions any more"), say("only a frame is cut into bars"))
        return removed(text, ("portions",))
    if before is not None and portions_of(wanted.build) == cut:
        return text
    written = {"length": length(cut.length), "width": length(cut.width), "trim": length(cut.trim)}
    layout.tell(
        "",
        say(
            "cut into bars of {sizes}",
            sizes=decimal(f"{written['length'].removesuffix(' mm')} × {written['width']}"),
        ),
        say("{number} come out of the frame, its edges trimmed", number=wanted.servings.per_cavity),
    )
    return edited(text, ("portions",), written)


def _tell_assembly(layout: Layout, wanted: Wanted) -> None:
    if wanted.form.is_vessel:
        because = say(
            "a vessel is filled layer by layer, each set before the next; nothing is frozen, "
            "unmoulded, glazed by pouring or thawed"
        )
    elif wanted.form is Form.FRAME:
        because = say("a frame is filled as it is served, frozen, glazed on top and cut")
    else:
        because = say("it is filled, frozen, turned out and thawed")
    layout.tell("", say("the assembly is written anew"), because, kind="method")


def _with_nearest(error: FitError, build: Build, mould: Mould, others: Iterable[Mould]) -> FitError:
    names = [f"{each.id} ({each.name})" for each in _that_fit(build, mould, others)]
    if not names:
        return FitError(str(error), parts=error.parts, missing=error.missing)
    told = say(
        "{problem}; the nearest that would do: {names}",
        problem=error,
        names=say_as("between two choices", " or ").join(names),
    )
    return FitError(told, parts=error.parts, missing=error.missing)


def _that_fit(build: Build, mould: Mould, others: Iterable[Mould]) -> Iterator[Mould]:
    """The two nearest in size, of the same form where there are any, in which all finds room."""
    form, volume = form_of(mould), mould.solid.volume
    near = sorted(
        (o for o in others if o.id != mould.id),
        key=lambda o: (form_of(o) is not form, abs(o.solid.volume / volume - 1.0)),
    )
    found = 0
    for other in near[:MOST_TRIED]:
        try:
            layout_of(wanted_of(build, other, None))
        except FitError:
            continue
        yield other
        found += 1
        if found == 2:
            return
