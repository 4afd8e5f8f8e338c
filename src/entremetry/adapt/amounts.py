"""Another number of pieces, and what follows from it: hands, cautions on amounts."""

from __future__ import annotations

import math
from dataclasses import replace

from entremetry.adapt.assembly import scaled_hands
from entremetry.adapt.build import Build, build_of
from entremetry.adapt.cold_times import Reckon, with_times
from entremetry.adapt.layout import Layout, Wanted
from entremetry.adapt.methods import with_hands
from entremetry.adapt.rebalanced import Change
from entremetry.adapt.servings import Portions
from entremetry.documents import edited, read_tree
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.words import decimal, say

MANY_TIMES = 3.0  # as much, from which times on the hob are other ones: our_own


def pieces_text(
    text: str, pieces: int, reckon: Reckon, kitchen: KitchenDocument | None
) -> tuple[str, tuple[Change, ...]]:
    """Write a document for another number of pieces in the same mould."""
    build = build_of(reckon(text), read_tree(text, file="document").data)
    before = build.servings
    if pieces == before.pieces:
        return text, ()
    layout = Layout()
    now = replace(before, pieces=pieces)
    wanted = Wanted(
        build=build,
        mould=build.reckoning.dessert.mould,
        form=build.form,
        servings=now,
        portions=portions_of(build),
    )
    text = edited(text, ("pieces",), pieces)
    text = follow_amounts(text, wanted, layout, now.cavities / before.cavities)
    text = follow_pieces(text, wanted, pieces / before.pieces)
    told = say("{number} pieces, {before} before", number=pieces, before=before.pieces)
    layout.tell("", told, say("as asked for"), kind="pieces")
    caution_amount(layout, now.cavities / before.cavities)
    caution_rest(layout, wanted)
    text, times = with_times(text, build.reckoning, reckon, kitchen, frozen=(), pieces=False)
    return text, (*layout.changes, *times)


def follow_amounts(text: str, wanted: Wanted, layout: Layout, ratio: float) -> str:
    if abs(ratio - 1.0) < 0.05:
        return text
    layout.tell(
        "",
        say("hands of the components follow the amounts"),
        say(
            "{ratio} times as much is made; a fifth to four fifths of a stated time stay",
            ratio=decimal(f"{ratio:.2g}"),
        ),
        kind="time",
    )
    return with_hands(text, wanted, ratio)


def follow_pieces(text: str, wanted: Wanted, ratio: float) -> str:
    if ratio == 1.0:
        return text
    for number, step in enumerate(wanted.build.reckoning.dessert.document.assembly):
        if step.hands_on is not None:
            text = edited(text, ("assembly", number, "hands_on"), scaled_hands(step, ratio))
    return text


def portions_of(build: Build) -> Portions:
    found = build.reckoning.dessert.document.portions
    if found is None:
        return Portions()
    return Portions(length=found.length, width=found.width, trim=found.trim)


def caution_amount(layout: Layout, ratio: float) -> None:
    if ratio >= MANY_TIMES or ratio <= 1.0 / MANY_TIMES:
        layout.tell(
            "",
            say(
                "times on the hob and at the mixer are those of the batch before, and {ratio} "
                "times as much is made now: go by temperature and look",
                ratio=decimal(f"{ratio:.2g}"),
            ),
            "",
            kind="caution",
        )


def caution_rest(layout: Layout, wanted: Wanted) -> None:
    now, mould = wanted.servings, wanted.mould
    at_once = mould.cavities * mould.owned
    if now.cavities > at_once and not mould.vessel:
        goes = math.ceil(now.cavities / at_once)
        layout.tell(
            "",
            say(
                "{number} cavities are filled in {goes} goes: there are {there}",
                number=now.cavities,
                goes=goes,
                there=at_once,
            ),
            "",
            kind="caution",
        )
    rest = now.cavities * now.per_cavity - now.pieces
    if rest > 0:
        told = say("{number} pieces are left over: a frame is filled whole", number=rest)
        layout.tell("", told, "", kind="caution")
