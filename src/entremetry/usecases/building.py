"""Build a dessert part by part: each change is kept at once, and none is lost to another."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from entremetry.dessert.alteration import (
    Alteration,
    adding_component,
    adding_lines,
    free_name,
    part_at,
)
from entremetry.dessert.translating import settled
from entremetry.errors import Conflict, DocumentError, EntremetryError, Fault, QuantityError
from entremetry.usecases.library import (
    KITCHEN,
    Reckon,
    Saved,
    dessert,
    dessert_at,
    dessert_name,
    kitchen_at,
    kitchen_text,
    open_kitchen,
    trouble_of,
)
from entremetry.words import say, say_as

LONGEST_NAME = 120

if TYPE_CHECKING:
    from entremetry.dessert.draft_question import Question
    from entremetry.dessert.starting_place import Room
    from entremetry.store.library import Library


def alter_dessert(
    library: Library,
    dessert_id: str,
    alteration: Alteration,
    *,
    started_from: int,
    reckon: Reckon | None = None,
) -> Saved:
    """Make one change and keep it; `reckon` as for `trouble_of`.

    Where somebody saved meanwhile, the change is made to the newest state, unless the part that
    it touches was changed as well.

    Raises
    ------
    DocumentError
        With all faults; the dessert is as it was.
    Conflict
        If the same part was changed meanwhile; the dessert is as that change left it.
    """
    from entremetry.store import Kind

    newest = dessert(library, dessert_id)
    number = newest.revision.number
    if number != started_from:
        before = dessert_at(library, dessert_id, started_from)
        _require_untouched(dessert_id, alteration, (started_from, before), (number, newest.text))
    text = settled(alteration.change(newest.text))
    if text == newest.text:
        return Saved(id=dessert_id, revision=number)
    trouble = trouble_of(text, kitchen_text(library), dessert_id, reckon)
    kept = library.save(Kind.DESSERT, dessert_id, text, started_from=number, drafts_too=False)
    return Saved(id=dessert_id, revision=kept.revision.number, trouble=trouble)


def alter_kitchen(
    library: Library, alteration: Alteration, *, started_from: int, starter: str
) -> Saved:
    """Make one change of the kitchen and keep it; `starter` is what a kitchen begins with.

    Raises
    ------
    DocumentError, Conflict
        As for `alter_dessert`.
    """
    from entremetry.store import Kind
    from entremetry.usecases.batch import moulds

    newest = open_kitchen(library, starter=starter)
    if newest.revision != started_from:
        before = kitchen_at(library, started_from) if started_from else starter
        _require_untouched(
            KITCHEN, alteration, (started_from, before), (newest.revision, newest.text)
        )
    text = alteration.change(newest.text)
    moulds(text)
    kept = library.put(Kind.KITCHEN, KITCHEN, text, started_from=newest.revision)
    return Saved(id=KITCHEN, revision=kept.revision.number)


def _require_untouched(
    name: str, alteration: Alteration, started: tuple[int, str], newest: tuple[int, str]
) -> None:
    """Refuse a change of a part that somebody else changed meanwhile."""
    before, after = (part_at(text, alteration.touches) for _, text in (started, newest))
    if before != after:
        raise Conflict(name, started_from=started[0], newest=newest[0])


def duplicate_dessert(library: Library, dessert_id: str) -> Saved:
    """Keep a copy of a dessert beside it, under a name and an id of its own."""
    from entremetry.documents import edited
    from entremetry.usecases.library import add_dessert, desserts

    text = dessert(library, dessert_id).text
    taken = {each.id: each for each in desserts(library)}
    name = say("{name}, a copy", name=dessert_name(dessert_id, text))
    copied = edited(text, ("id",), free_name(f"{dessert_id}-copy", taken))
    return add_dessert(library, settled(edited(copied, ("name",), name[:LONGEST_NAME])))


def pasted_lines(component: str, text: str, *, measures: str | None) -> Alteration:
    """Lines as one has them on paper, at the end of a formula.

    Raises
    ------
    DocumentError
        If there is no line, more than a document holds, or one whose meaning is not clear.
    """
    _, written = _drafted("Pasted", "mousse", text, measures=measures)
    return adding_lines(component, written["formula"])


def new_component(
    name: str, kind: str, text: str, place: dict[str, Any], *, measures: str | None
) -> Alteration:
    """A component with its lines, and where it lies in the mould.

    Raises
    ------
    DocumentError
        As for `pasted_lines`.
    QuantityError
        If it has no name.
    """
    if not name.strip():
        raise QuantityError(say("no name"), say("a name for the component"))
    component, written = _drafted(name.strip(), kind, text, measures=measures)
    return adding_component(component, {**written, "name": name.strip(), "kind": kind}, place)


def weighed_mould(name: str, holds: str, like: str, cavities: str) -> dict[str, Any]:
    """A mould of one's own as a kitchen writes it, weighed full of water.

    Raises
    ------
    EntremetryError
        If a measure is missing or cannot be read, or the shelf has no mould that it is like.
    """
    from entremetry.dessert.draft_line import identifier
    from entremetry.usecases.drafting import chosen_mould

    if not name.strip():
        raise QuantityError(say("no name"), say("a name for the mould"))
    bare = holds.strip().replace(",", ".")
    measured = chosen_mould(
        None, f"{bare} ml" if bare.replace(".", "", 1).isdigit() else bare, like
    )
    count = cavities.strip() or "1"
    if not (count.isascii() and count.isdigit() and 1 <= int(count[:6]) <= 500):
        found = say("'{text}' cavities", text=count[:20])
        raise QuantityError(found, say("a whole number from 1 to 500"))
    own = {"id": identifier(name), "name": name.strip(), "cavities": int(count)}
    return {**dict(measured), **own} if isinstance(measured, dict) else own


def _drafted(name: str, kind: str, text: str, *, measures: str | None) -> tuple[str, Any]:
    """Id and parts of one component, drafted from its lines; nothing is guessed."""
    from entremetry.dessert.draft import USUAL_MOUSSE, DraftRequest
    from entremetry.dessert.draft_line import identifier
    from entremetry.documents import read_tree
    from entremetry.usecases.drafting import draft_text

    component = identifier(name)
    answers = {f"{component}-kind": kind, f"{component}-density": USUAL_MOUSSE}
    drafted = draft_text(
        DraftRequest(
            name=name,
            pieces=1,
            mould="cylinder-60",
            text=f"{name}:\n{text}",
            measures=measures,
            answers=answers,
        )
    )
    if drafted.questions:
        raise DocumentError(
            Fault(
                file=say("pasted lines"),
                field=question.about,
                found=question.text,
                accepted=_answers(question),
            )
            for question in drafted.questions
        )
    parts: dict[str, Any] = read_tree(drafted.document, file=name).data["components"]
    return next(iter(parts.items()))


def _answers(question: Question) -> str:
    """What a line may say so that nothing is left open."""
    choices = [value for value, _ in question.choices]
    words = [say("a line that says so: {names}", names=", ".join(choices))] if choices else []
    words += [say("such as {example}", example=question.example)] if question.example else []
    told = say_as("between two choices", " or ").join(words)
    return told or say("the line written out with its amount and unit")


def room_in_mould(text: str, kitchen: str | None) -> Room:
    """Extent of the cavity of the dessert's mould; that of a small one if it has none yet."""
    from entremetry.dessert.starting_place import Room
    from entremetry.shapes import Box, Log
    from entremetry.usecases.rebalancing import dessert_of_text

    try:
        solid = dessert_of_text(text, kitchen_text=kitchen).mould.solid
    except EntremetryError:
        return Room()
    return Room(
        length=solid.length,
        width=solid.width,
        height=solid.height,
        is_round=not isinstance(solid, Box | Log),
    )
