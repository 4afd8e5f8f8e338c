"""The batch on the wall of the kitchen: masses large, boxes to tick, steps short, as PDF."""

from __future__ import annotations

from datetime import date
from typing import Any

from entremetry.dessert.batch_sheet import BatchSheet, ComponentBatch
from entremetry.publish.json_ld import fill_heading, recipe_yield, stretches
from entremetry.publish.print_sheet import NOTHING_FOUND, PAPERS, cavities, cut_out, head, measure
from entremetry.publish.shortening import short
from entremetry.publish.typesetting import Paper, printed, set_in_type
from entremetry.publish.typography import grams
from entremetry.words import say


def wall_sheet(sheet: BatchSheet, *, paper: Paper = Paper.A4, on: date | None = None) -> bytes:
    """The batch as a PDF to be read from a step away, with hands full."""
    made = [component for component in sheet.components if component.method]
    told = {
        **head(sheet),
        "words": {
            "batch": printed(say("{name}: batch", name=sheet.name or say("Dessert"))),
            "shortened": printed(say("Steps are shortened; the print sheet has them in full.")),
            "cut-out": printed(say("Cut out")),
            "take-care": printed(say("Take care")),
        },
        "paper": PAPERS[paper],
        "makes": recipe_yield(sheet),
        "components": [component_words(component) for component in sheet.components],
        "stretches": [
            {
                "name": name,
                "note": cavities(sheet) if name == fill_heading(sheet) else "",
                "steps": [printed(short(sentence)) for sentence in sentences],
            }
            for name, sentences in stretches(sheet)[len(made) :]
        ],
        "cut-outs": [cut_out(cut) for cut in sheet.cut_outs],
        "cautions": [printed(caution) for caution in sheet.cautions or (say(NOTHING_FOUND),)],
    }
    return set_in_type("wall_sheet.typ", told, on=on)


def component_words(component: ComponentBatch) -> dict[str, Any]:
    """What to weigh and what to do."""
    return {
        "name": printed(component.name),
        "makes": grams(component.mass.value),
        "lines": [
            {
                "mass": grams(each.mass),
                "name": printed(each.name),
                "note": printed(each.note),
                "measure": measure(each),
            }
            for each in component.lines
        ],
        "steps": [printed(short(sentence)) for sentence in component.method],
    }
