"""What a form of the building page asks for, as an alteration of the dessert."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from entremetry.dessert.alteration import (
    Alteration,
    adding,
    moving,
    part_at,
    setting,
    setting_on_line,
    taking_out,
    taking_out_component,
)
from entremetry.dessert.starting_place import starting_place, starting_shape
from entremetry.documents import Path
from entremetry.errors import QuantityError
from entremetry.usecases.building import (
    new_component,
    pasted_lines,
    room_in_mould,
    weighed_mould,
)
from entremetry.web.build_fields import kind_of, shown_value
from entremetry.web.forms import Form
from entremetry.web.part_path import path_at
from entremetry.words import say

if TYPE_CHECKING:
    from entremetry.dessert.starting_place import Room

SET, PICK = "set:", "pick:"
SHAPE = "shape"


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """What the person saw who filled in a form: the document, and the kitchen it is read in."""

    text: str
    kitchen: str | None

    @property
    def room(self) -> Room:
        """Extent of the mould."""
        return room_in_mould(self.text, self.kitchen)

    @property
    def measures(self) -> str | None:
        """Whose cups and spoons the document means."""
        said = part_at(self.text, ("measures",))
        return said if isinstance(said, str) else None

    @property
    def base(self) -> str | None:
        """The first component that lies in the mould as a base."""
        placed = part_at(self.text, ("placement",)) or []
        bases = (e.get("component") for e in placed if isinstance(e, dict) and e["as"] == "base")
        return next(bases, None)


def alteration_of(form: Form, seen: Seen) -> Alteration | None:
    """The change that a form asks for; None if it changes nothing.

    Raises
    ------
    EntremetryError
        If it asks for nothing that can be done.
    """
    asked = form.line("do") or "set"
    if asked not in DOING:
        raise QuantityError(f"'{asked[:40]}'", say("one of the things this page does"))
    return DOING[asked](form, seen)


def typed_values(form: Form) -> Iterator[tuple[str, str]]:
    """Yield every field that a form sets: its address, and its value as it was typed."""
    for name in form.fields:
        if name.startswith(SET):
            address = name.removeprefix(SET)
            picked = [n for n in form.fields if n.startswith(f"{PICK}{address}:")]
            names = [n.removeprefix(f"{PICK}{address}:") for n in picked]
            yield address, ", ".join(names) or form.text(name).strip()


def _set(form: Form, seen: Seen) -> Alteration | None:
    changes = list(_changes(form, seen))
    if len(changes) < 2:
        return changes[0] if changes else None

    def change(newest: str) -> str:
        for each in changes:
            newest = each.change(newest)
        return newest

    return Alteration(touches=_common([each.touches for each in changes]), change=change)


def _changes(form: Form, seen: Seen) -> Iterator[Alteration]:
    for address, typed in typed_values(form):
        path = path_at(address)
        before = _written(seen.text, path)
        if typed == shown_value(before) or _same_names(typed, before):
            continue
        yield _setting(path, typed, seen)


def _setting(path: Path, typed: str, seen: Seen) -> Alteration:
    if _is_of_line(path):
        return setting_on_line(str(path[1]), str(path[3]), str(path[4]), typed or None)
    if path[-1] == "as":
        place = part_at(seen.text, path[:-1])
        component = place.get("component", "") if isinstance(place, dict) else ""
        return setting(path[:-1], starting_place(component, typed, seen.room, seen.base))
    if path[-2:] == (SHAPE, "kind"):
        return setting(path[:-1], starting_shape(typed, seen.room))
    return setting(path, _value(path, typed))


def _value(path: Path, typed: str) -> Any:
    """The value as a document says it; what cannot be read is left to the document's faults."""
    kind = kind_of(str(path[-1]))
    if not typed:
        return None
    if kind == "yes":
        return True
    if kind == "names":
        return [name.strip() for name in typed.split(",") if name.strip()]
    whole = typed.isascii() and typed.isdigit() and len(typed) < 10
    return int(typed) if kind == "number" and whole else typed


def _written(text: str, path: Path) -> Any:
    """What a field held; the amount of a line that is written short is the line itself."""
    if _is_of_line(path):
        line = part_at(text, path[:-1])
        if isinstance(line, str):
            return line if path[-1] == "amount" else None
    return part_at(text, path)


def _is_of_line(path: Path) -> bool:
    return len(path) == 5 and path[0] == "components" and path[2] == "formula"


def _same_names(typed: str, before: Any) -> bool:
    return isinstance(before, list) and {n.strip() for n in typed.split(",") if n.strip()} == {
        str(name) for name in before
    }


def _common(paths: list[Path]) -> Path:
    """The part that holds all of these."""
    shortest = min(paths, key=len)
    for length in range(len(shortest), -1, -1):
        if all(path[:length] == shortest[:length] for path in paths):
            return shortest[:length]
    return ()


def _knob(form: Form, _seen: Seen) -> Alteration:
    """What the value of a pressed knob says: `move 2 placement/#0`, `take-out components/glaze`."""
    what, _, rest = form.line("knob").partition(" ")
    if what == "move":
        to, _, address = rest.partition(" ")
        if not (to.isascii() and to.isdigit() and len(to) <= 4):
            raise QuantityError(f"'{to[:20]}'", say("the number of a place, from 0"))
        return moving(path_at(address), int(to))
    if what != "take-out":
        raise QuantityError(f"'{what[:20]}'", say("move or take-out"))
    path = path_at(rest)
    if len(path) == 2 and path[0] == "components":
        return taking_out_component(str(path[1]))
    return taking_out(path)


def _add_step(form: Form, _seen: Seen) -> Alteration:
    path = path_at(form.line("path"))
    step: dict[str, Any] = {"step": form.line("kind")}
    for address, typed in typed_values(form):
        name = path_at(address)[-1]
        value = _value((name,), typed)
        if value is not None:
            step[str(name)] = value
    return adding(path, step)


def _add_item(form: Form, _seen: Seen) -> Alteration:
    """An item of a list, from the fields that are filled in."""
    typed = ((path_at(address)[-1], value) for address, value in typed_values(form))
    found = {str(name): _value((name,), value) for name, value in typed}
    item = {name: value for name, value in found.items() if value is not None}
    if not item:
        raise QuantityError(say("nothing filled in"), say("at least a name"))
    return adding(path_at(form.line("path")), item)


def _add_mould(form: Form, _seen: Seen) -> Alteration:
    """A mould of one's own, weighed full of water."""
    return adding(
        ("moulds",),
        weighed_mould(
            form.line("name"), form.line("holds"), form.line("like"), form.line("cavities")
        ),
    )


def _add_place(form: Form, seen: Seen) -> Alteration:
    place = starting_place(form.line("component"), form.line("as"), seen.room, seen.base)
    return adding(("placement",), place)


def _add_component(form: Form, seen: Seen) -> Alteration:
    place = starting_place("", form.line("as"), seen.room, seen.base)
    return new_component(
        form.line("name"), form.line("kind"), form.text("lines"), place, measures=seen.measures
    )


def _paste(form: Form, seen: Seen) -> Alteration:
    return pasted_lines(form.line("component"), form.text("lines"), measures=seen.measures)


DOING: Mapping[str, Callable[[Form, Seen], Alteration | None]] = {
    "set": _set,
    "knob": _knob,
    "add-step": _add_step,
    "add-item": _add_item,
    "add-mould": _add_mould,
    "add-place": _add_place,
    "add-component": _add_component,
    "paste": _paste,
}
