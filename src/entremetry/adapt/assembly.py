"""The assembly of a dessert in another form, step by step as a document writes them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from entremetry.adapt.form import Form
from entremetry.adapt.layout import Entry, Layout, Wanted
from entremetry.adapt.written import minutes_of_hands
from entremetry.agenda.hands_on import BY_PIECES, FIXED
from entremetry.method.step import AnyStep
from entremetry.words import decimal, say, say_later

FROZEN, THAWED, FRIDGE = "-15 °C", "0 °C", "4 °C"
UNTIMED = "12 h"  # until the time is computed
SET_LAYER, SET_PIECE, CHILLED = "1 h", "4 h", "2 h"
"""Times for a thin layer and a whole vessel of gelatine to set in a fridge: common practice."""
GLAZE = {"temperature": "32 °C", "within": "3 min"}
TURN_OUT = {
    "silicone": say_later("Turn it out at the last moment."),
    "metal": say_later("Warm the metal with a cloth or a burner and lift it off."),
}
BACK = say_later("Back into the freezer until the glaze is ready.")
LIFT_FRAME = say_later("Run a hot knife along the frame and lift it off.")
SMALL = {Form.SINGLE, Form.GLASS}
HOT_KNIFE = say_later("Cut with a hot, dry knife.")
JUST_BEFORE = say_later("Only just before it goes to the table.")


def assembly(wanted: Wanted, layout: Layout, raw: Sequence[Mapping[str, Any]]) -> list[Entry]:
    """Steps of the assembly; `raw` are those of the document so far."""
    if wanted.form.is_vessel:
        return _vessel(wanted, layout, raw)
    return _released(wanted, layout, raw)


def _released(wanted: Wanted, layout: Layout, raw: Sequence[Mapping[str, Any]]) -> list[Entry]:
    steps = [*_filled(wanted, layout), {"step": "freeze-until", "temperature": FROZEN}]
    steps[-1]["time"] = UNTIMED
    steps.append({"step": "unmould", "note": _turn_out(wanted, layout)})
    if _of_role(layout, "coating"):
        steps.append(_glazed(wanted, raw))
    if wanted.form is Form.FRAME:
        note = say(
            "Trim {width} from each side and cut with a hot knife wiped after every cut.",
            width=decimal(f"{wanted.portions.trim * 1e3:g} mm"),
        )
        steps.append({"step": "cut", "note": note})
    put = [e["component"] for e in layout.entries if e.get("sits") == "under"]
    put += _of_role(layout, "garnish")
    if put:
        steps.append({"step": "place", "what": put})
    thawed: Entry = {"step": "thaw-until", "temperature": THAWED, "time": UNTIMED}
    steps.append({**thawed, "where": "fridge", "on": _stands_on(raw)})
    serve = {"note": say(HOT_KNIFE)} if wanted.form in (Form.LARGE, Form.LOG) else {}
    steps.append({"step": "serve", **serve})
    return _with_hands(steps, wanted)


def _vessel(wanted: Wanted, layout: Layout, raw: Sequence[Mapping[str, Any]]) -> list[Entry]:
    steps = _filled(wanted, layout)
    steps.append(
        {
            "step": "rest",
            "temperature": FRIDGE,
            "time": SET_PIECE,
            "note": say("Covered, in the fridge."),
        }
    )
    if layout.glazes:
        steps[-1] = {"step": "rest", "temperature": FRIDGE, "time": CHILLED}
        steps.append(
            {
                "step": "fill",
                "what": layout.glazes,
                "note": say("Over the back of a spoon, so that it makes no hole in the mousse."),
            }
        )
        steps.append(
            {"step": "rest", "temperature": FRIDGE, "time": CHILLED, "note": say("In the fridge.")}
        )
    on_top = [e["component"] for e in layout.entries if "mass" in e and e["as"] != "soak"]
    if on_top:
        note = say(JUST_BEFORE)
        steps.append({"step": "place", "what": on_top, "within": "10 min", "note": note})
    steps.append({"step": "serve"})
    return _with_hands(steps, wanted)


def _filled(wanted: Wanted, layout: Layout) -> list[Entry]:
    """Filling, in as many goes as there are layers that must set before the next one comes."""
    inside = [*layout.cut, *_of_role(layout, "soak")]
    inside = [c for c in inside if c not in _under(layout)]
    if len(layout.poured) < 2:
        return [{"step": "fill"}]
    steps: list[Entry] = []
    order = [e["component"] for e in layout.entries if e["as"] in ("layer", "filling")]
    order = [c for c in order if c in layout.poured]
    for number, component in enumerate(order):
        before = inside if not number else []
        steps.append({"step": "fill", "what": [*before, component]})
        if number < len(order) - 1:
            steps.append(
                {
                    "step": "rest",
                    "temperature": FRIDGE,
                    "time": SET_LAYER,
                    "note": say("Until it bears a fingertip; what comes on it must not be warm."),
                }
            )
    return steps


def _under(layout: Layout) -> set[str]:
    return {e["component"] for e in layout.entries if e.get("sits") == "under"}


def _of_role(layout: Layout, role: str) -> list[str]:
    return [entry["component"] for entry in layout.entries if entry["as"] == role]


def _turn_out(wanted: Wanted, layout: Layout) -> str:
    if wanted.form is Form.FRAME:
        return say(LIFT_FRAME)
    how = say(TURN_OUT.get(wanted.mould.material, TURN_OUT["silicone"]))
    return f"{how} {say(BACK)}" if _of_role(layout, "coating") else how


def _glazed(wanted: Wanted, raw: Sequence[Mapping[str, Any]]) -> Entry:
    """Glazing as the author does it, else as is usual."""
    before = next((step for step in raw if step["step"] == "glaze-at"), GLAZE)
    keys = ("temperature", "within")
    note = say("In one pass with a long palette knife.")
    if wanted.form is not Form.FRAME:
        note = "Wipe off the frost, glaze on a rack and take the drops off the foot."
    return {"step": "glaze-at", **{k: before[k] for k in keys if k in before}, "note": note}


def _stands_on(raw: Sequence[Mapping[str, Any]]) -> str:
    return next((str(step["on"]) for step in raw if "on" in step), "glass shelf")


def _with_hands(steps: list[Entry], wanted: Wanted) -> list[Entry]:
    """Steps with the author's hands for the same kind, shared out where there are several now.

    Work on one for several says nothing of work on many small ones: then no hands are stated.
    """
    if not {wanted.form, wanted.build.form} <= SMALL:
        return steps
    written = wanted.build.reckoning.dessert.document.assembly
    found = []
    for step in steps:
        kind = step["step"]
        before = next((s for s in written if s.step == kind and s.hands_on is not None), None)
        if before is not None:
            goes = sum(other["step"] == kind for other in steps)
            step = {**step, "hands_on": scaled_hands(before, _ratio(wanted), goes=goes)}
        found.append(step)
    return found


def _ratio(wanted: Wanted) -> float:
    """How many times as many pieces there are as before."""
    return wanted.servings.pieces / wanted.build.servings.pieces


def scaled_hands(step: AnyStep, ratio: float, *, goes: int = 1) -> str:
    """Hands for `ratio` times as many pieces, in one of several goes.

    Part of a stated time does not depend on the pieces.
    """
    fixed = FIXED[step.step in BY_PIECES]
    minutes = (step.hands_on or 0.0) / 60.0
    return minutes_of_hands(minutes * (fixed + (1.0 - fixed) * ratio) / goes)
